"""What can be asked for of the sign as a whole: its words, size and board."""

from __future__ import annotations

from signgen.option import Option
from signgen.units import Limits

SIGN: tuple[Option, ...] = (
    Option(
        name="text", kind="lines", metavar="TEXT", group="Sign", required=True,
        help="Lines of lettering.",
        write=lambda spec: None if spec.text.own_lines else spec.text.lines,
        words=("words", "letters", "name", "title", "number", "writing", "lines", "wording"),
        example='"17" "Larkspur Lane"',
    ),
    Option(
        name="size", kind="size", metavar="WIDTHxHEIGHT", group="Sign", required=True,
        help="Size of the finished sign, as in 220x140 or 8.5x5.5in; a border of path:FILE has its own.",
        limits=Limits(least=10, greatest=5000),
        write=lambda spec: (spec.width_mm, spec.height_mm),
        words=("width", "height of the sign", "height", "length", "dimensions", "how big", "large",
            "bigger sign", "sign too small"), example="220x140", often=True,
    ),
    Option(
        name="thickness", kind="length", metavar="LENGTH", group="Sign", required=True,
        help="Thickness of the board as you measured it, not as it is called.", limits=Limits(least=1, greatest=200),
        field="thickness_mm",
        words=("thick", "board thickness", "caliper", "thin", "thinner than it says", "depth of the board"),
        example="11.8", often=True,
    ),
    Option(
        name="material", kind="word", metavar="NAME", group="Sign", default="birch-plywood",
        help="What the board is made of (signgen list materials).",
        write=lambda spec: spec.material.name,
        words=("wood", "species", "timber", "stuff", "plastic", "oak", "pine", "plywood", "which wood", "metal"),
        example="oak", often=True,
    ),
    Option(
        name="board", kind="size", metavar="WIDTHxHEIGHT", group="Sign",
        help="Size of the board that you have.", otherwise="the least that will do",
        write=lambda spec: spec.board_mm, left_open="the least that will do",
        words=("stock", "sheet", "offcut", "blank size", "plank", "panel size", "scrap", "left over"),
        example="300x200",
    ),
)  # fmt: skip
