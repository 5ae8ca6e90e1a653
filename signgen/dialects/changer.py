"""For machines that change cutters by themselves and know how long each is."""

from __future__ import annotations

from signgen.dialects.writing import Writing

CHANGER = Writing(
    name="changer",
    about="All cutters in one file for a tool changer: T and M6, lengths from the control's table (G43 H).",
    change="lengths",
)
