"""What is said of the board, the cutters and the machine when programs are judged that were written elsewhere."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import partial

from msgspec import Struct

from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import Option, pick
from signgen.shop.materials import Machine, Material
from signgen.shop.named import material_named
from signgen.shop.shop import Shop
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked
from signgen.spec.keys.machine import CELL
from signgen.spec.tool_words import tool_in_words
from signgen.units import Limits, length_mm, points_mm, size_mm

PLACES = {
    "bottom-left": (0.0, 0.0),
    "bottom-right": (1.0, 0.0),
    "top-left": (0.0, 1.0),
    "top-right": (1.0, 1.0),
    "centre": (0.5, 0.5),
}
"""Names of places on the board, as shares of its width and height."""

_BOARD = Limits(least=0.1, greatest=5000)

STOCK = Option(
    name="stock", kind="word", metavar="WIDTHxHEIGHTxTHICKNESS", group="Board", required=True,
    help="The board that lies on the machine, as in 300x200x12, width along X.",
)  # fmt: skip
OF_PROGRAMS = (
    STOCK,
    Option(
        name="zero", kind="word", metavar="PLACE", group="Board", default="bottom-left",
        help="Where X0 Y0 lies on the board: bottom-left, bottom-right, top-left, top-right, centre, or X,Y measured "
        "from its bottom left corner.",
    ),
    Option(
        name="z-zero", kind="choice", metavar="FACE", group="Board", choices=("bottom", "top"), default="bottom",
        help="Where Z0 lies: the board's bottom, which is the spoilboard's top, or the board's top.",
    ),
    Option(
        name="material", kind="word", metavar="NAME", group="Board", default="birch-plywood",
        help="What the board is made of (signgen list materials).",
    ),
    Option(
        name="machine", kind="word", metavar="NAME", group="Machine",
        help="The machine that cuts (signgen list machines).", otherwise="the shop's first",
    ),
    Option(
        name="breakthrough", kind="length", metavar="LENGTH", group="Board", default=0.3,
        help="How far cuts may go into the spoilboard below.", limits=Limits(least=0, greatest=25),
    ),
)  # fmt: skip
"""What is asked about programs from elsewhere; a folder that `make` wrote knows it by itself."""

OF_FIXINGS = (
    Option(
        name="screws", kind="word", metavar="X,Y;X,Y", group="Board",
        help="Where hold-down screws are, as the programs count.",
        otherwise="those of the setup sheet in a folder that make wrote, else none",
    ),
    Option(
        name="clamps", kind="word", metavar="X,Y,WIDTHxHEIGHT;...", group="Board",
        help="Where clamps are, as the programs count: the lower left corner of each, and its size.",
        otherwise="none",
    ),
    Option(
        name="clamp-height", kind="length", metavar="LENGTH", group="Board", default=30,
        help="How high clamps stand over the board.", limits=Limits(least=0, greatest=500),
    ),
    CELL,
)  # fmt: skip
"""What holds the board down, and how finely to look, whoever wrote the programs."""


class FixingSpec(Struct, frozen=True, kw_only=True):
    """Places in program coordinates. `screws_mm` None: not said; clamps as (low x, low y, high x, high y). `cell_mm`:
    the simulation's cells, None for the usual ones."""

    screws_mm: tuple[tuple[float, float], ...] | None
    clamps_mm: tuple[tuple[float, float, float, float], ...]
    clamp_height_mm: float
    cell_mm: float | None = None


NONE_SAID = FixingSpec(screws_mm=None, clamps_mm=(), clamp_height_mm=0.0)


class CheckSpec(Struct, frozen=True, kw_only=True):
    """The board lies with its bottom left corner at the origin of sign coordinates; one tool for each stretch between
    changes of cutter, in the order of use."""

    stock: Stock
    zero: WorkZero
    material: Material
    machine: Machine
    tools: tuple[Tool, ...]
    breakthrough_mm: float


def read_check_spec(asked: Mapping[str, object], tools: Sequence[str], shop: Shop) -> CheckSpec:
    """Raises: AskError with every problem at once, each with the option that the user typed."""
    a = Asked(asked, {option.name: option for option in OF_PROGRAMS})
    said, place, face = a.text("stock"), a.text("zero"), a.text("z-zero")
    board = a.attempt(lambda: board_mm(said)) if said else None
    share = a.attempt(lambda: _place(place, board)) if place and board else None
    machines = {row.name: row for row in shop.machines}
    wood, router = a.text("material"), a.text("machine") if a.has("machine") else shop.machines[0].name
    material = a.attempt(lambda: material_named(shop, wood)) if wood else None
    machine = a.attempt(lambda: machines[pick(router, machines, "machine")]) if router else None
    breakthrough = a.number("breakthrough")
    if not tools:
        a.wrong("tool", Message("spec.missing"), Message("spec.give_tool_each_cutter_tool"))
    fitted = [a.attempt(partial(tool_in_words, each, shop)) for each in tools]
    a.raise_problems()
    assert board is not None
    assert share is not None
    assert material is not None
    assert machine is not None
    assert breakthrough is not None
    return CheckSpec(
        stock=Stock(width_mm=board[0], height_mm=board[1], thickness_mm=board[2], sign_x_mm=0.0, sign_y_mm=0.0),
        zero=WorkZero(x_mm=share[0], y_mm=share[1], z_mm=board[2] if face == "top" else 0.0),
        material=material,
        machine=machine,
        tools=tuple(tool for tool in fitted if tool),
        breakthrough_mm=breakthrough,
    )


def read_fixing_spec(asked: Mapping[str, object]) -> FixingSpec:
    """Raises: AskError with every problem at once."""
    a = Asked(asked, {option.name: option for option in OF_FIXINGS})
    said, rectangles, height = a.text("screws"), a.text("clamps"), a.number("clamp-height")
    screws = a.attempt(lambda: points_mm(said, "screws")) if said else None
    clamps = (
        a.attempt(lambda: tuple(_clamp(each) for each in rectangles.split(";") if each.strip())) if rectangles else ()
    )
    cell = a.number("cell")
    a.raise_problems()
    assert height is not None
    return FixingSpec(screws_mm=screws, clamps_mm=clamps or (), clamp_height_mm=height, cell_mm=cell)


def _clamp(raw: str) -> tuple[float, float, float, float]:
    """A rectangle from 'X,Y,WIDTHxHEIGHT'."""
    x_y, _, size = raw.rpartition(",")
    if "," not in x_y:
        raise AskError.at(
            "clamps", Message("spec.not_clamp", text=raw.strip()), Message("spec.write_x_y_widthxheight_20")
        )
    (x, y), *_ = points_mm(x_y, "clamps")
    width, height = size_mm(size, "clamps")
    return x, y, x + width, y + height


def board_mm(raw: str) -> tuple[float, float, float]:
    """(width, height, thickness) from '300x200x12' or '12x8x0.5in'; a unit at the end holds for bare numbers before.

    Raises: AskError.
    """
    advice = Message("spec.write_widthxheightxthickness_300x200x12_12x8x0_5in")
    parts = [part.strip() for part in re.split("[xX×]", raw)]
    if len(parts) != 3 or not all(parts):
        raise AskError.at("stock", Message("spec.not_board_s_three_measures", text=raw), advice)
    unit = re.search(r"[^\d\s./-]*$", parts[2])
    bare = [re.fullmatch(r"[\d\s./-]+", part) for part in parts]
    if not (unit and unit.group()) and not all(bare):
        raise AskError.at("stock", Message("spec.gives_unit_but_none_after", text=raw), advice)
    whole = [part + unit.group() if match and unit else part for part, match in zip(parts, bare, strict=True)]
    width, height, thickness = (length_mm(part, "stock", _BOARD) for part in whole)
    return width, height, thickness


def _place(raw: str, board: tuple[float, float, float]) -> tuple[float, float]:
    """A place on the board by its name or its distances from the bottom left corner."""
    width, height, _ = board
    if "," not in raw:
        share = PLACES[pick(raw, PLACES, "zero", "place")]
        return share[0] * width, share[1] * height
    points = points_mm(raw, "zero")
    if len(points) > 1:
        raise AskError.at("zero", Message("spec.places", text=raw, count=len(points)), Message("spec.give_one_10_10"))
    return points[0]
