"""The contract of a dialect."""

from __future__ import annotations

from typing import Protocol

from signgen.program.blocks import Program


class Dialect(Protocol):
    """One way of writing programs. `about` is one sentence for `signgen list dialects`."""

    @property
    def name(self) -> str: ...

    @property
    def about(self) -> str: ...

    def write(self, program: Program) -> str:
        """The program's text: ASCII, ends with a newline, the same for the same program every time."""
        ...
