"""For controllers whose G2 and G3 stay at one height."""

from __future__ import annotations

from signgen.dialects.chords import without_helices
from signgen.dialects.writing import Writing

FLAT_ARCS = Writing(
    name="flat-arcs",
    about="Plain RS-274 in millimetres without helices: arcs that rise or fall as straight lines within the tolerance.",
    simplify=without_helices,
)
