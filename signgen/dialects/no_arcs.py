"""For controllers without G2 and G3."""

from __future__ import annotations

from signgen.dialects.chords import without_arcs
from signgen.dialects.writing import Writing

NO_ARCS = Writing(
    name="no-arcs",
    about="Plain RS-274 in millimetres without G2 and G3: arcs as straight lines within the tolerance.",
    simplify=without_arcs,
)
