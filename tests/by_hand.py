"""A finished job built by hand, so that the sheet is tested without the stages that come before it."""

from __future__ import annotations

import math

import numpy as np
import shapely
from msgspec.structs import replace
from shapely.geometry import LineString, MultiPolygon, Polygon, box

from signgen.checks.check import CheckReport, CheckResult, Finding
from signgen.drawing.drawing import Drawing, Plate
from signgen.fastening.telling import ToldRun, set_up_of
from signgen.fastening.touching import touches_of
from signgen.features.edge import Edge
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.geometry.raster import Grid
from signgen.job.facts import JobFacts, ProgramFacts
from signgen.operations.sense import sense_of
from signgen.program.estimate import OperationTime
from signgen.replay.heights import HeightMap
from signgen.replay.motion import ARC_CCW, ARC_CW, FEED, RAPID, Motions, Replay
from signgen.shop.feeds import cutting_data
from signgen.shop.load import load_shop
from signgen.shop.materials import Material
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool
from tests.asking import spec_of

SHOP = load_shop()
V_BIT = next(tool for tool in SHOP.tools if tool.name == "v-bit-90")
END_MILL = next(tool for tool in SHOP.tools if tool.name == "end-mill-6")
BIRCH = next(material for material in SHOP.materials if material.name == "birch-plywood")
MACHINE = SHOP.machines[0]

Step = tuple[int, tuple[float, float, float], tuple[float, float]]
NO_CENTRE = (math.nan, math.nan)


def replay_of(steps: list[Step]) -> Replay:
    """The replay of moves given as (kind, end, centre), begun at the safe height over the datum."""
    ends = np.array([end for _, end, _ in steps])
    n = len(steps)
    kinds = np.array([kind for kind, _, _ in steps], dtype=np.uint8)
    motions = Motions(
        kind=kinds,
        start_mm=np.vstack([[0.0, 0.0, 20.0], ends[:-1]]),
        end_mm=ends,
        centre_mm=np.array([centre for _, _, centre in steps]),
        plane=np.full(n, 17, np.uint8),
        feed_mm_per_min=np.where(kinds == RAPID, 0.0, 1500.0),
        spindle_rpm=np.full(n, 16000.0),
        spindle_s=np.full(n, 5.0),
        line=np.arange(1, n + 1),
        tool=np.zeros(n, np.int32),
        start_known=np.arange(3 * n).reshape(n, 3) >= 3,
    )
    return Replay(
        motions=motions,
        faults=(),
        ended=True,
        spindle_on_at_end=False,
        units_stated=True,
        modes_before_motion=frozenset({"G21"}),
        tool_numbers=(),
        line_count=n,
    )


def engraving(area: MultiPolygon | Polygon, top: float) -> list[Step]:
    """One short groove at each part's middle."""
    steps: list[Step] = []
    for part in getattr(area, "geoms", [area]):
        x, y = part.representative_point().coords[0]
        steps += [
            (RAPID, (x, y, top + 5), NO_CENTRE),
            (FEED, (x, y, top - 2), NO_CENTRE),
            (FEED, (x + 1, y, top - 2), NO_CENTRE),
        ]
        steps += [(RAPID, (x + 1, y, top + 5), NO_CENTRE)]
    return steps


def bores(holes: tuple[Hole, ...], cutter: Tool, top: float) -> list[Step]:
    """A helix of one turn and a full circle at the bottom."""
    steps: list[Step] = []
    for hole in holes:
        r = hole.diameter_mm / 2 - cutter.radius_mm
        at, centre = (hole.x_mm + r, hole.y_mm), (hole.x_mm, hole.y_mm)
        steps += [(RAPID, (*at, top + 5), NO_CENTRE), (FEED, (*at, top), NO_CENTRE)]
        steps += [
            (ARC_CCW, (*at, -0.3), centre),
            (ARC_CCW, (*at, -0.3), centre),
            (RAPID, (*at, top + 5), NO_CENTRE),
        ]
    return steps


def around(width: float, height: float, cutter: Tool, levels: tuple[float, ...], top: float) -> list[Step]:
    """Clockwise around a plain rectangle, corners rolled as arcs, once at each level."""
    r = cutter.radius_mm
    steps: list[Step] = [(RAPID, (0.0, -r, top + 5), NO_CENTRE)]
    for z in levels:
        steps += [
            (FEED, (0.0, -r, z), NO_CENTRE),
            (ARC_CW, (-r, 0.0, z), (0.0, 0.0)),
            (FEED, (-r, height, z), NO_CENTRE),
        ]
        steps += [(ARC_CW, (0.0, height + r, z), (0.0, height)), (FEED, (width, height + r, z), NO_CENTRE)]
        steps += [(ARC_CW, (width + r, height, z), (width, height)), (FEED, (width + r, 0.0, z), NO_CENTRE)]
        steps += [(ARC_CW, (width, -r, z), (width, 0.0)), (FEED, (0.0, -r, z), NO_CENTRE)]
    return [*steps, (RAPID, (0.0, -r, top + 5), NO_CENTRE)]


def board_of(drawing: Drawing, stock: Stock, cell: float, kerf: float, done: int) -> HeightMap:
    """The stock after `done` programs: 1 engraves, 2 bores and cuts out."""
    x_low, y_low, x_high, y_high = stock.bounds_mm
    xs = np.arange(x_low + 0.37 * cell, x_high, cell)
    ys = np.arange(y_low + 0.37 * cell, y_high, cell)
    x, y = (a.ravel() for a in np.meshgrid(xs, ys))
    z = np.full(x.shape, drawing.thickness_mm)
    for groove in drawing.of(Groove):
        inside = shapely.contains_xy(groove.area, x, y)
        r = shapely.distance(groove.area.boundary, shapely.points(x[inside], y[inside]))
        slope = math.tan(math.radians(groove.angle_deg) / 2)
        z[inside] -= np.minimum(r / slope, groove.max_depth_mm)
    if done > 1:
        for hole in drawing.of(Hole):
            z[np.hypot(x - hole.x_mm, y - hole.y_mm) < hole.diameter_mm / 2] = -0.3
        out = shapely.contains_xy(drawing.edge.buffer(kerf), x, y) & ~shapely.contains_xy(drawing.edge, x, y)
        z[out] = -0.3
        for tab in drawing.of(Tab):
            z[out & (np.hypot(x - tab.x_mm, y - tab.y_mm) < kerf)] = tab.height_mm
    return HeightMap(
        z_mm=z.reshape(len(ys), len(xs)).astype(np.float32),
        grid=Grid(nx=len(xs), ny=len(ys), x0_mm=float(xs[0]), y0_mm=float(ys[0]), cell_mm=cell),
    )


def one_and_seven(x: float, y: float, height: float) -> MultiPolygon:
    """The figures 1 and 7 as strokes with corners."""
    h, w = height, 0.16 * height
    one = LineString([(x, y + 0.72 * h), (x + 0.22 * h, y + h - w / 2), (x + 0.22 * h, y)])
    seven = LineString([(x + 0.5 * h, y + h - w / 2), (x + 1.05 * h, y + h - w / 2), (x + 0.65 * h, y)])
    return MultiPolygon([line.buffer(w / 2, cap_style="flat", join_style="mitre") for line in (one, seven)])


def build_facts(
    *,
    lines: tuple[str, ...] = ("17",),
    width: float = 200.0,
    height: float = 120.0,
    margin: float = 40.0,
    cell: float = 0.5,
    holes: tuple[tuple[float, float], ...] | None = None,
    area: MultiPolygon | Polygon | None = None,
    edge: Polygon | None = None,
    z_zero: str = "bottom",
    origin: str = "sign",
    material: Material = BIRCH,
    real_board: bool = False,
) -> JobFacts:
    """A job of two programs on a board that is `margin` larger than the sign all round."""
    thickness = 12.0
    inset = 14.0
    edge = edge if edge is not None else box(0, 0, width, height)
    places = (
        holes if holes is not None else tuple((x, y) for y in (inset, height - inset) for x in (inset, width - inset))
    )
    letters = Groove(
        name="17",
        source="text",
        text="17",
        area=area if area is not None else one_and_seven(60.0, 30.0, 60.0),
        angle_deg=90.0,
        tip_mm=0.0,
        max_depth_mm=6.0,
    )
    tabs = [(width / 2, 0.0, 1.0, 0.0), (width, height / 2, 0.0, 1.0)]
    tabs += [(width / 2, height, -1.0, 0.0), (0.0, height / 2, 0.0, -1.0)]
    drawing = Drawing(
        plate=Plate(width_mm=width, height_mm=height, thickness_mm=thickness),
        features=(
            Edge(name="edge", area=edge),
            letters,
            *(Hole(name=f"hole {i}", x_mm=x, y_mm=y, diameter_mm=7.0) for i, (x, y) in enumerate(places, 1)),
            *(
                Tab(name=f"tab {i}", x_mm=x, y_mm=y, along_x=ax, along_y=ay, width_mm=6.0, height_mm=3.0)
                for i, (x, y, ax, ay) in enumerate(tabs, 1)
            ),
        ),
        cap_height_mm=60.0,
    )
    stock = Stock(
        width_mm=width + 2 * margin,
        height_mm=height + 2 * margin,
        thickness_mm=thickness,
        sign_x_mm=margin,
        sign_y_mm=margin,
    )
    least = (
        replace(stock, width_mm=width + 20, height_mm=height + 20, sign_x_mm=10.0, sign_y_mm=10.0)
        if real_board
        else stock
    )
    zero = WorkZero(
        x_mm=-margin if origin == "stock" else 0.0,
        y_mm=-margin if origin == "stock" else 0.0,
        z_mm=thickness if z_zero == "top" else 0.0,
    )
    asked = spec_of()
    spec = replace(
        asked,
        width_mm=width,
        height_mm=height,
        thickness_mm=thickness,
        material=material,
        text=replace(asked.text, lines=lines, font="Example Sans", cap_height_mm=60.0),
        depth_mm=6.0,
        v_bit=V_BIT,
        tabs=replace(asked.tabs, count=4, width_mm=6.0, height_mm=3.0),
        board_mm=(stock.width_mm, stock.height_mm) if real_board else None,
        machine=MACHINE,
        origin=origin,
        z_zero=z_zero,
        breakthrough_mm=0.3,
        clearance_mm=5.0,
        shop=SHOP,
    )
    levels = (8.0, 4.0, -0.3)

    def shifted(steps: list[Step]) -> list[Step]:
        dx, dy, dz = zero.x_mm, zero.y_mm, zero.z_mm
        return [(kind, (x - dx, y - dy, z - dz), (cx - dx, cy - dy)) for kind, (x, y, z), (cx, cy) in steps]

    programs = (
        ProgramFacts(
            file="1-v-bit-90.nc",
            text="(test)\nM30\n",
            tool=V_BIT,
            cutting=cutting_data(V_BIT, material, MACHINE),
            description=("engraves the letters",),
            minutes=3.2,
            cut_length_mm=1234.5,
            travel_length_mm=321.0,
            replay=replay_of(shifted(engraving(drawing.of(Groove)[0].area, thickness))),
        ),
        ProgramFacts(
            file="2-end-mill-6.nc",
            text="(test)\nM30\n",
            tool=END_MILL,
            cutting=cutting_data(END_MILL, material, MACHINE),
            description=("bores the holes", "cuts the outside"),
            minutes=5.9,
            cut_length_mm=2234.5,
            travel_length_mm=421.0,
            times=(
                OperationTime(description="bores the holes", cutting_s=60.0, entry_s=0.0, travel_s=20.0),
                OperationTime(description="cuts the outside", cutting_s=240.0, entry_s=16.0, travel_s=14.0),
            ),
            replay=replay_of(
                shifted(
                    bores(drawing.of(Hole), END_MILL, thickness) + around(width, height, END_MILL, levels, thickness)
                )
            ),
        ),
    )
    checks = CheckReport(
        results=(
            CheckResult(
                code="C102",
                name="rapids_clear",
                severity="error",
                findings=(),
                detail="24 rapids, least height 5 mm over the board",
            ),
            CheckResult(
                code="C107",
                name="tabs_hold",
                severity="error",
                findings=(),
                detail="4 of 4 tabs stand, lowest 3.00 mm",
            ),
            CheckResult(
                code="C120",
                name="wood_left",
                severity="warning",
                detail="1 wall thinner than 1 mm",
                findings=(Finding(message="The wall between 1 and 7 is 0.8 mm thin.", place_mm=(10.0, 20.0)),),
            ),
        )
    )
    beside = margin / 2 + 2.5
    corners = ((-beside, -beside), (width + beside, -beside)) if margin >= 20 else ()
    screws = tuple((x - zero.x_mm, y - zero.y_mm) for x, y in corners)
    return JobFacts(
        name=" ".join(lines),
        spec=spec,
        drawing=drawing,
        stock=stock,
        least=least,
        zero=zero,
        programs=programs,
        boards=tuple(board_of(drawing, stock, cell, END_MILL.diameter_mm, done) for done in (1, 2)),
        checks=checks,
        screws_mm=screws,
        warnings=("The wall between 1 and 7 is thin.",),
        sense=sense_of(drawing, spec),
        set_up=set_up_of(
            spec=spec,
            drawing=drawing,
            stock=stock,
            zero=zero,
            runs=[
                ToldRun(
                    file=program.file, tool=program.tool, cutting=program.cutting, replay=program.replay, bite_mm=3.0
                )
                for program in programs
            ],
            touches=touches_of(drawing, stock, zero, (V_BIT, END_MILL), END_MILL.diameter_mm, MACHINE),
            screws_mm=screws,
            shown=(V_BIT, programs[0].replay),
            outline="0-outline.nc",
            number=1,
            face_down=False,
        ),
    )
