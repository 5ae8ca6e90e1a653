"""A small plate and its two programs, written by hand: one square groove, one bored hole, an edge with two tabs.

Plate 60 x 40 x 9 mm on a board of 84 x 64 mm; XY zero at the plate's corner, Z zero at the board's bottom.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace
from shapely.geometry import box

from signgen.checks.case import make_case
from signgen.checks.check import Case
from signgen.checks.fixing import Fixing
from signgen.drawing.drawing import Drawing
from signgen.drawing.drawing import Plate as PlateOf
from signgen.fastening.telling import cutter_of
from signgen.features.edge import Bevel, Edge
from signgen.features.groove import Groove
from signgen.features.hole import Countersink, Hole
from signgen.features.recess import Panel, Recess
from signgen.features.tab import Tab
from signgen.instructions import Datum, Holding, LaidBoard, SetUp, Step, Touch
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

V_BIT = Tool(
    name="v-bit-90",
    kind="v-bit",
    diameter_mm=12,
    shank_mm=6,
    cutting_length_mm=6,
    flutes=2,
    angle_deg=90,
    stickout_mm=18,
    source="test",
)
END_MILL = Tool(
    name="end-mill-6",
    kind="end-mill",
    diameter_mm=6,
    shank_mm=6,
    cutting_length_mm=22,
    flutes=2,
    stickout_mm=26,
    source="test",
)
MACHINE = Machine(
    name="table",
    label="Table",
    travel_mm=(300, 300, 80),
    top_feed_mm_per_min=(2000, 2000, 800),
    rapid_mm_per_min=(3000, 3000, 1000),
    acceleration_mm_per_s2=(250, 250, 150),
    corner_tolerance_mm=0.02,
    spindle_min_rpm=8000,
    spindle_max_rpm=24000,
    spindle_start_s=4,
    collet_series=16,
    source="test",
)
MATERIAL = Material(
    name="wood",
    label="Wood",
    chip_load_ratio=0.015,
    spindle_rpm=16000,
    stepdown_ratio=0.5,
    stepover_ratio=0.4,
    v_step_mm=3,
    peck_ratio=1,
    entry_deg=10,
    plunge_ratio=0.33,
    ramp_ratio=0.5,
    colour_rgb=(200, 180, 140),
    ground_rgb=(170, 130, 90),
    grain=True,
    cautions=(),
    source="test",
)
STOCK = Stock(width_mm=84, height_mm=64, thickness_mm=9, sign_x_mm=12, sign_y_mm=12)
ZERO = WorkZero(x_mm=0, y_mm=0, z_mm=0)
BREAKTHROUGH_MM = 0.3
DRAWING = Drawing(
    plate=PlateOf(width_mm=60, height_mm=40, thickness_mm=9),
    features=(
        Edge(name="edge", area=box(0, 0, 60, 40)),
        Groove(name="ornament 1", source="ornament", area=box(10, 15, 15, 20), angle_deg=90, tip_mm=0, max_depth_mm=3),
        Hole(name="hole right", x_mm=45, y_mm=20, diameter_mm=8),
        Tab(name="tab 1", x_mm=30, y_mm=0, along_x=1, along_y=0, width_mm=5, height_mm=1.5),
        Tab(name="tab 2", x_mm=30, y_mm=40, along_x=-1, along_y=0, width_mm=5, height_mm=1.5),
    ),
    cap_height_mm=8,
)

_HEAD = """\
(plate 60 x 40 x 9)
(Z0 bottom of the board)
G17 G21 G40 G49 G54 G80 G90 G94
"""
_TAIL = """\
G0 Z40
M5
G0 X0 Y52
M2
"""

ENGRAVE = f"""\
{_HEAD}G0 Z40
M3 S16000
G4 P4
G0 X10 Y15
G0 Z10
G1 Z9 F300
G1 X12.5 Y17.5 Z6.5 F800
G1 X15 Y20 Z9
G0 Z14
G0 X15 Y15
G0 Z10
G1 Z9 F300
G1 X12.5 Y17.5 Z6.5 F800
G1 X10 Y20 Z9
{_TAIL}"""


def _bore() -> str:
    turns = "".join(f"G3 X46 Y20 Z{z:g} I-1 J0\n" for z in (*range(8, -1, -1), -0.3))
    return f"G0 X46 Y20\nG0 Z10\nG1 Z9 F300\nF500\n{turns}G3 X46 Y20 I-1 J0\nG1 X45 Y20 F800\nG0 Z14\n"


def _loop(z: float, tabs: bool) -> str:
    """Clockwise round the edge from (-3, 20): climbing, for the work lies to the right of the way."""

    def gap(first: float, last: float, y: float) -> str:
        if not tabs:
            return ""
        return f"G1 X{first:g} Y{y:g}\nG1 Z1.5 F300\nG1 X{last:g} Y{y:g} F800\nG1 Z{z:g} F300\nF800\n"

    return (
        "G1 X-3 Y40 F800\nG2 X0 Y43 I3 J0\n"
        + gap(24.5, 35.5, 43)
        + "G1 X60 Y43\nG2 X63 Y40 I0 J-3\nG1 X63 Y0\nG2 X60 Y-3 I-3 J0\n"
        + gap(35.5, 24.5, -3)
        + "G1 X0 Y-3\nG2 X-3 Y0 I0 J3\nG1 X-3 Y20\nG1 X-3 Y35\n"
    )


def _edge() -> str:
    passes = "".join(f"G1 X-3 Y20 Z{z:g} F400\n{_loop(z, z < 1.5)}" for z in (6.675, 4.35, 2.025, -0.3))
    return f"G0 X-3 Y35\nG0 Z10\nG1 Z9 F300\n{passes}"


CUT_OUT = f"""\
{_HEAD}G0 Z40
M3 S16000
G4 P4
{_bore()}{_edge()}{_TAIL}"""


TOUCH = Touch(on="face", x_mm=30, y_mm=20, plus_thickness=True)
"""Both cutters are touched off in the middle of the plate, where nothing is cut."""


def _step(file: str, place: int, tool: Tool, **figures: Any) -> Step:
    return Step(
        file=file,
        begins="start",
        cutter=cutter_of(tool, place, MACHINE.collet_series),
        sets_xy=place == 1,
        sets_z=(TOUCH,),
        spindle_rpm=16000,
        fastest_mm_per_min=800,
        **figures,
    )


TOLD = SetUp(
    number=1,
    board=LaidBoard(width_mm=84, height_mm=64, thickness_mm=9),
    datum=Datum(corner="front left", x_mm=12, y_mm=12),
    holding=Holding(
        screws_mm=(), head_mm=9, stands_mm=2, screw_mm=20, clamp_line_mm=(), clamp_stands_mm=30,
    ),
    into_spoilboard_mm=0.3,
    metal_free_mm=1.3,
    outline="0-outline.nc",
    steps=(
        _step(
            "1-v-bit-90.nc", 1, V_BIT, feed_mm_per_min=800, plunge_mm_per_min=300, lowest_z_mm=6.5, passes=1,
            pass_mm=2.5,
        ),
        _step(
            "2-end-mill-6.nc", 2, END_MILL, feed_mm_per_min=800, plunge_mm_per_min=300, lowest_z_mm=-0.3, passes=4,
            pass_mm=2.33,
        ),
    ),
)  # fmt: skip
"""What a setup sheet of the plate tells."""

Edit = tuple[int, str | None]
"""A line's number and its new text, which may be several lines."""


class Plate(Struct, frozen=True):
    """The plate's case, ready to be spoilt."""

    engrave: str = ENGRAVE
    cut_out: str = CUT_OUT
    drawing: Drawing = DRAWING
    stock: Stock = STOCK
    zero: WorkZero = ZERO
    machine: Machine = MACHINE
    tools: tuple[Tool, Tool] = (V_BIT, END_MILL)
    files: tuple[str, str] = ("1-v-bit-90.nc", "2-end-mill-6.nc")
    order: tuple[int, int] = (0, 1)
    v_step_mm: float = 3
    extra: dict[str, float] = field(default_factory=dict)
    fixings: tuple[Fixing, ...] = ()
    told: SetUp | None = None

    def case(self) -> Case:
        texts = (self.engrave, self.cut_out)
        case = make_case(
            drawing=self.drawing,
            stock=self.stock,
            zero=self.zero,
            machine=self.machine,
            material=replace(MATERIAL, v_step_mm=self.v_step_mm),
            programs=[(self.files[k], texts[k], self.tools[k]) for k in self.order],
            breakthrough_mm=BREAKTHROUGH_MM,
            tolerance_mm=0.01,
            **self.extra,
        )
        return replace(case, fixings=self.fixings, told=self.told)

    def telling(self, **changes: Any) -> Plate:
        """With something else told than is right."""
        return replace(self, told=replace(self.told or TOLD, **changes))

    def step(self, number: int, **changes: Any) -> Plate:
        """With something else told of one step; what is said of `cutter_` or `touch_` goes for those."""
        steps = list((self.told or TOLD).steps)
        cutter = {name[7:]: value for name, value in changes.items() if name.startswith("cutter_")}
        touch = {name[6:]: value for name, value in changes.items() if name.startswith("touch_")}
        rest = {name: value for name, value in changes.items() if not name.startswith(("cutter_", "touch_"))}
        old = steps[number]
        ways = (replace(old.sets_z[0], **touch),) if touch else old.sets_z
        changed = {"cutter": replace(old.cutter, **cutter), "sets_z": ways, **rest}
        steps[number] = replace(old, **changed)
        return self.telling(steps=tuple(steps))

    def holding(self, **changes: Any) -> Plate:
        return self.telling(holding=replace((self.told or TOLD).holding, **changes))

    def with_hole(self, **changes: Any) -> Plate:
        """With another hole drawn."""
        (hole,) = self.drawing.of(Hole)
        return replace(self, drawing=self.drawing.having(Hole, (replace(hole, **changes),)))

    def engraving(self, *edits: Edit) -> Plate:
        """With lines of the engraving program replaced, or left out where the new text is None."""
        return replace(self, engrave=edited(self.engrave, edits))

    def cutting(self, *edits: Edit) -> Plate:
        """The same in the program that bores the hole and cuts the edge."""
        return replace(self, cut_out=edited(self.cut_out, edits))


def edited(text: str, edits: tuple[Edit, ...]) -> str:
    lines = text.splitlines()
    for number, new in sorted(edits, reverse=True):
        lines[number - 1 : number] = [] if new is None else new.splitlines()
    return "\n".join(lines) + "\n"


_SEAT = """\
G1 X10 Y20 Z9
G0 Z14
G0 X49.75 Y20
G0 Z10
G1 Z8.25 F300
G3 X49.75 Y20 I-4.75 J0 F800
G1 X49 Y20 Z7.5 F300
G3 X49 Y20 I-4 J0 F800"""

SUNK = replace(
    Plate().with_hole(sink=Countersink(diameter_mm=11, angle_deg=90)), engrave=edited(ENGRAVE, ((17, _SEAT),))
)
"""The plate with its hole sunk for a head of 11 mm: rings of radius 4.75 and 4, 0.75 and 1.5 mm deep."""


LETTERED = replace(
    Plate(),
    drawing=DRAWING.having(
        Groove,
        (
            replace(DRAWING.of(Groove)[0], name="line 1 letter 1 'D'", source="text", text="D"),
            Groove(
                name="line 1 letter 2 'I'",
                source="text",
                text="I",
                area=box(22, 13, 24, 22),
                angle_deg=90,
                tip_mm=0,
                max_depth_mm=3,
            ),
        ),
    ),
    engrave=edited(
        ENGRAVE,
        (
            (
                18,
                "G0 Z14\nG0 X22 Y13\nG0 Z10\nG1 Z9 F300\nG1 X23 Y14 Z8 F800\nG1 X22 Y13 Z9\nG1 X24\nG1 X23 Y14 Z8\n"
                "G1 Y21\nG1 X22 Y22 Z9\nG1 X24\nG1 X23 Y21 Z8\nG0 Z40",
            ),
        ),
    ),
)
"""The plate with two letters: the square for a D, and beside it an I of 2 x 9 mm."""


def tipped(tip_mm: float) -> Plate:
    """The plate with the I alone, cut with a bit that has a flat tip, as deep as its strokes let it go."""
    letter = replace(LETTERED.drawing.of(Groove)[1], name="line 1 letter 1 'I'", tip_mm=tip_mm)
    way = f"G0 X23 Y{13 + tip_mm / 2:g}\nG0 Z10\nG1 Z9 F300\nG1 X23 Y14 Z{8 + tip_mm / 2:g} F300\n"
    way += f"G1 Y21 F800\nG1 Y{22 - tip_mm / 2:g} Z9\nG0 Z14"
    return replace(
        Plate(),
        drawing=DRAWING.having(Groove, (letter,)),
        tools=(replace(V_BIT, tip_mm=tip_mm), END_MILL),
        engrave=edited(ENGRAVE, ((7, way), *((number, None) for number in range(8, 18)))),
    )


SKINNED = replace(
    Plate(),
    drawing=DRAWING.having(Tab, ()).having(Edge, (replace(DRAWING.of(Edge)[0], skin_mm=0.4),)),
    cut_out="\n".join(
        line.replace("Y20 Z-0.3 F400", "Y20 Z0.4 F400")
        for line in CUT_OUT.splitlines()
        if line not in ("G1 Z1.5 F300", "G1 Z-0.3 F300")
    )
    + "\n",
)
"""The plate held by a skin instead of tabs."""


def _slot() -> str:
    rounds = "".join(
        f"G1 X46 Y22 Z{(z + over) / 2:g}\nG3 X44 Y22 I-1 J0\nG1 X44 Y18 Z{z:g}\nG3 X46 Y18 I1 J0\n"
        for over, z in pairwise((*range(9, -1, -1), -0.3, -0.3))
    )
    return f"G0 X46 Y18\nG0 Z10\nG1 Z9 F300\nF500\n{rounds}G1 X45 Y18 F800\nG0 Z14\n"


SLOTTED = replace(Plate().with_hole(span_mm=4, angle_deg=90), cut_out=CUT_OUT.replace(_bore(), _slot()))
"""The plate with an upright slot of 8 x 12 mm."""


def _sunk() -> str:
    return "G0 X23 Y29\nG0 Z10\nG1 Z9 F300\nG1 X31 Z8 F400\nG1 X23 Z7\nG1 X31 F800\nG1 Y31\nG1 X23\nG1 Y29\nG0 Z14\n"


RECESSED = replace(
    Plate(),
    drawing=DRAWING.having(Recess, (Panel(name="panel", source="panel", area=box(20, 26, 34, 34), depth_mm=2),)),
    cut_out=CUT_OUT.replace(_bore(), _sunk() + _bore()),
)
"""The plate with a flat floor of 14 x 8 mm, 2 mm deep, whose corners stay round."""

BEVELLED = replace(
    Plate(),
    drawing=DRAWING.having(Bevel, (Bevel(name="bevel", edge=box(0, 0, 60, 40), width_mm=2, angle_deg=90),)),
    engrave=edited(
        ENGRAVE,
        (
            (
                18,
                "G0 Z14\nG0 X0 Y20\nG0 Z10\nG1 Z9 F300\nG1 X0 Y40 Z7 F400\nG1 X60 Y40 F800\nG1 X60 Y0\nG1 X0 Y0\n"
                "G1 X0 Y40\nG0 Z40",
            ),
        ),
    ),
)
"""The plate with its edge bevelled by 2 mm: the tip goes along the edge itself, 2 mm deep."""


def floored(apart_mm: float) -> Plate:
    """The plate with its square 1 mm deep, so that it has a floor of 3 x 3 mm, which the V-bit clears in lines so far
    apart: ridges half as high stand between them. Ridges of 0.1 mm were asked for."""
    rounds = "G1 X10 Y15 Z9 F300\nG1 X11 Y16 Z8 F800\nG1 X14\nG1 Y19\nG1 X11\nG1 Y16\n"
    for x, y in ((14, 16), (14, 19), (11, 19)):
        rounds += f"G1 X{x} Y{y} Z8\nG1 X{10 if x == 11 else 15} Y{15 if y == 16 else 20} Z9\nG1 X{x} Y{y} Z8\n"
    rounds += "G1 X11 Y16\n"
    count = round(3 / apart_mm)
    for n in range(1, count):
        y, there = 16 + 3 * n / count, (14, 11)[n % 2 == 0]
        rounds += f"G1 Y{y:.4f}\nG1 X{there}\n"
    features = tuple(replace(each, max_depth_mm=1) if isinstance(each, Groove) else each for each in DRAWING.features)
    text = ENGRAVE.splitlines()
    head, tail = text[:6], text[17:]
    return replace(
        Plate(),
        drawing=replace(DRAWING, features=features),
        engrave="\n".join([*head, "G0 X10 Y15", "G0 Z10", *rounds.splitlines(), *tail]) + "\n",
        extra={"cusp_height_mm": 0.1},
    )
