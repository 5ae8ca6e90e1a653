"""What `signgen explain PROGRAM.nc --json` prints, version 1: what every line of a program does."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta, Struct

from signgen.schemas.parts import Point

Place = tuple[float, float, float]


class ProgramLine(Struct, frozen=True, kw_only=True, rename={"pass_": "pass"}):
    """One line. Places are X, Y and Z in program coordinates, null where the program has not said them."""

    line: Annotated[int, Meta(description="The first being 1.")]
    text: str
    does: Annotated[list[str], Meta(description="Whole sentences.")]
    from_mm: Place | None
    to_mm: Place | None
    centre_mm: Annotated[Point | None, Meta(description="Of an arc, in its plane.")]
    radius_mm: float | None
    turned_deg: float | None
    length_mm: float
    feed_mm_per_min: Annotated[float, Meta(description="0 of a rapid.")]
    seconds: float | None
    under: Annotated[str, Meta(description="The comment that it stands under.")]
    pass_: int
    passes: int
    modal: Annotated[list[str], Meta(description="Words in force after it.")]


class ProgramLines(Struct, frozen=True, kw_only=True):
    """A program, line by line."""

    format: Literal["signgen-lines"]
    version: Literal[1]
    file: str
    lines: list[ProgramLine]
