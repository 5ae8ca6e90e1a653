"""The contract of a dialect."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from signgen.program.blocks import ToolProgram
from signgen.shop.manner import Change, Manner


class Dialect(Protocol):
    """One way of writing programs. `about` is one sentence for `signgen list dialects`; `grid_mm` the step of its
    numbers, on which programs must lie; `one_file` whether all programs of a job come in one file."""

    @property
    def name(self) -> str: ...

    @property
    def about(self) -> str: ...

    @property
    def grid_mm(self) -> float: ...

    @property
    def straight(self) -> bool:
        """Whether arcs, or those that rise and fall, are written as chords."""
        ...

    @property
    def inches(self) -> bool:
        """Whether the machine counts in inches."""
        ...

    @property
    def change(self) -> Change:
        """How cutters are changed within a file: 'none', 'pause', or 'lengths' for a changer that knows each one's."""
        ...

    @property
    def one_file(self) -> bool: ...

    def write(self, programs: Sequence[ToolProgram], manner: Manner) -> tuple[str, ...]:
        """The text of each file, in the order to run them: ASCII, ends with a newline, the same every time."""
        ...
