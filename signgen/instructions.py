"""What the setup sheet tells a person to do, as figures: pages are rendered from these values, and the judge follows
them on a virtual machine.

Places are in program coordinates unless a field says otherwise; all lengths are millimetres as they are printed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from signgen.messages import Message, Sentence

PAPER_MM = 0.1
"""A slip of ordinary paper, 80 g per square metre (common practice)."""

MM_PER_INCH = 25.4

On = Literal["face", "spoilboard"]
Corner = Literal["front left", "front right"]
Begins = Literal["start", "pause", "changer"]
Point = tuple[float, float]


class Touch(Struct, frozen=True, kw_only=True):
    """A way to set Z: the cutter is lowered at (x, y) on to a slip of paper that lies on the board's upper face or on
    the bare spoilboard beside the board. `types_mm` is what is then typed as Z, the paper's thickness among it; with
    `plus_thickness` the board's own thickness, as measured, is added."""

    on: On
    x_mm: float
    y_mm: float
    paper_mm: float = PAPER_MM
    types_mm: float = PAPER_MM
    plus_thickness: bool = False


class LaidBoard(Struct, frozen=True, kw_only=True):
    """Its width lies from left to right. `face_up`: the better face."""

    width_mm: float
    height_mm: float
    thickness_mm: float
    face_up: bool = True


class Datum(Struct, frozen=True, kw_only=True):
    """X0 Y0: so far inside the board from one of its corners."""

    corner: Corner
    x_mm: float
    y_mm: float


class Holding(Struct, frozen=True, kw_only=True):
    """Screws by their middles, heads up to `head_mm` across that stand at most `stands_mm` over the board, at least
    `screw_mm` long; clamps up to `clamp_stands_mm` high anywhere outside a line, or none where it is ()."""

    screws_mm: tuple[Point, ...]
    head_mm: float
    stands_mm: float
    screw_mm: float
    clamp_line_mm: tuple[Point, ...]
    clamp_stands_mm: float


class Cutter(Struct, frozen=True, kw_only=True):
    """A cutter as it is fitted: `place` counts from 1, in a changer it is its place and the line of its length.
    `collet` is what the collet says, `grip_mm` the least of the shank that it holds."""

    place: int
    name: str
    kind: str
    diameter_mm: float
    angle_deg: float | None
    tip_mm: float
    shank_mm: float
    collet: str
    grip_mm: float
    stick_out_mm: float


class Step(Struct, frozen=True, kw_only=True):
    """A cutter goes in, zero is set, a program runs: from its start, on from its pause, or after the machine changed
    cutters by itself. `sets_z`: the ways to set Z, the first being the one to take where it can be done; () where Z
    stays. `fastest_mm_per_min`: of all feeds, a thin last pass
    among them. `lowest_z_mm` is the deepest place in the program's own figures; `passes` of at most `pass_mm` each."""

    file: str
    begins: Begins
    cutter: Cutter
    sets_xy: bool
    sets_z: tuple[Touch, ...]
    spindle_rpm: float
    feed_mm_per_min: float
    plunge_mm_per_min: float
    fastest_mm_per_min: float
    lowest_z_mm: float
    passes: int
    pass_mm: float


class SetUp(Struct, frozen=True, kw_only=True):
    """One lying of the board, the `number`th of the job: laid, held, zeroed, shown and cut. `outline`: the program that
    is run first, its spindle still; '' where there is none. Cuts go `into_spoilboard_mm` below the board, and no metal
    lies within `metal_free_mm` below it."""

    number: int
    board: LaidBoard
    datum: Datum
    holding: Holding
    into_spoilboard_mm: float
    metal_free_mm: float
    outline: str
    steps: tuple[Step, ...]


class Instructions(Struct, frozen=True, kw_only=True):
    """Of a whole job; the back, where there is one, comes first."""

    set_ups: tuple[SetUp, ...]


def typed(value_mm: float, inches: bool) -> str:
    """A figure as it is typed into a machine that counts in millimetres, or in inches: '110', '4.3307'."""
    text = f"{value_mm / MM_PER_INCH:.4f}" if inches else f"{value_mm:.4f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def place_typed(x_mm: float, y_mm: float, inches: bool) -> str:
    """'X110 Y12', or 'X4.3307 Y0.4724 inch'."""
    return f"X{typed(x_mm, inches)} Y{typed(y_mm, inches)}{' inch' if inches else ''}"


def set_at(touches: Sequence[Touch], inches: bool) -> Sentence:
    """Where Z is set, for a comment: 'on the spoilboard at X250 Y70, or on the face at X110 Y12'."""
    said: Sentence = ""
    for touch in touches:
        way = Message(f"heading.on_{touch.on}", place=place_typed(touch.x_mm, touch.y_mm, inches))
        said = Message("heading.one_or_other", one=said, other=way) if said else way
    return said
