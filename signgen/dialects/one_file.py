"""For machines on which the cutter is changed by hand in a pause of the program."""

from __future__ import annotations

from signgen.dialects.writing import Writing

ONE_FILE = Writing(
    name="one-file",
    about="All cutters in one file: T and M6, then a pause (M0) to change the cutter by hand and set Z anew.",
    change="pause",
)
