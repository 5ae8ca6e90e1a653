"""What can be asked for of the sign as a whole: its words, size and board."""

from __future__ import annotations

from signgen.option import Option
from signgen.units import Limits

SIGN: tuple[Option, ...] = (
    Option(
        name="text", kind="lines", metavar="TEXT", group="Sign", required=True,
        help="Lines of lettering.",
        write=lambda spec: None if spec.text.own_lines else spec.text.lines,
    ),
    Option(
        name="size", kind="size", metavar="WIDTHxHEIGHT", group="Sign", required=True,
        help="Size of the finished sign, as in 220x140 or 8.5x5.5in; a border of path:FILE has its own.",
        limits=Limits(least=10, greatest=5000),
        write=lambda spec: (spec.width_mm, spec.height_mm),
    ),
    Option(
        name="thickness", kind="length", metavar="LENGTH", group="Sign", required=True,
        help="Thickness of the board as you measured it, not as it is called.", limits=Limits(least=1, greatest=200),
        field="thickness_mm",
    ),
    Option(
        name="material", kind="word", metavar="NAME", group="Sign", default="birch-plywood",
        help="What the board is made of (signgen list materials).",
        write=lambda spec: spec.material.name,
    ),
    Option(
        name="board", kind="size", metavar="WIDTHxHEIGHT", group="Sign",
        help="Size of the board that you have.", otherwise="the least that will do",
        write=lambda spec: spec.board_mm, left_open="the least that will do",
    ),
)  # fmt: skip
