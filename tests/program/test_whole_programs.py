"""Whole programs as a machinist reads them: replayed from their text, example by example, in every dialect, on every
machine. The rules are written here once more, from the motions alone.

Everyday runs take two examples; the sweep takes all of them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from shapely.geometry import Point, Polygon

from signgen.checks.parts import parts_of
from signgen.dialects import DIALECTS, dialect_named
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.operations.plan import make_plan
from signgen.operations.warnings import run_warnings
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.replay.motion import ARC_CCW, ARC_CW, RAPID, Motions
from signgen.replay.reader import read_program
from signgen.shop.load import load_shop
from signgen.shop.manner import USUAL
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec
from tests.asking import english, spec_of
from tests.dialects.jobs import example

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
MACHINES = [machine.name for machine in load_shop(None).machines]
NAMES = [dialect.name for dialect in DIALECTS]
EVERYDAY = [
    pytest.param(path, dialect, machine, id=f"{path.stem}-{dialect}-{machine}")
    for path, dialect, machine in (
        (EXAMPLES[0], "plain", MACHINES[0]), (EXAMPLES[0], "flat-arcs", MACHINES[1]),
        (EXAMPLES[-1], "one-file", MACHINES[1]), (EXAMPLES[-1], "inch", MACHINES[0]),
    )
]  # fmt: skip
SWEEP = [
    pytest.param(path, dialect, machine, id=f"{path.stem}-{dialect}-{machine}", marks=pytest.mark.sweep)
    for path in EXAMPLES
    for dialect in NAMES
    for machine in MACHINES
]
ALL = pytest.mark.parametrize(("path", "dialect", "machine"), [*EVERYDAY, *SWEEP])


@dataclass(frozen=True)
class Ran:
    """One cutter's part of what was written and read back; `level`, `down`: (n,) feed moves that keep their height
    below the board's top, and that go down there; `length_mm` (n,) along the way."""

    tool: Tool
    motions: Motions
    zero_z_mm: float
    zero_xy_mm: tuple[float, float]
    top_mm: float
    length_mm: np.ndarray

    @property
    def low_mm(self) -> np.ndarray:
        return self.motions.end_mm[:, 2] + self.zero_z_mm

    @property
    def high_mm(self) -> np.ndarray:
        return self.motions.start_mm[:, 2] + self.zero_z_mm

    @property
    def feeding(self) -> np.ndarray:
        return (self.motions.kind != RAPID) & (self.length_mm > 1e-3)

    @property
    def level(self) -> np.ndarray:
        return self.feeding & (np.abs(self.low_mm - self.high_mm) < 1e-3) & (self.low_mm < self.top_mm - 1e-3)

    @property
    def down(self) -> np.ndarray:
        return self.feeding & (self.low_mm < self.high_mm - 1e-6) & (self.low_mm < self.top_mm - 1e-3)


@cache
def job(
    path: Path, dialect: str, machine: str, milling: str = "climb"
) -> tuple[SignSpec, Drawing, tuple[Ran, ...], tuple[str, ...]]:
    spec = example(path, machine=machine, dialect=dialect, milling=milling)
    (side,) = sides_of(spec)
    drawing, plan, setup, programs = side.drawing, side.plan, side.setup, written(side).made
    texts = dialect_named(dialect).write(programs, USUAL)
    replays = [read_program(text, tool_lengths_mm=dict.fromkeys(range(1, 10), 0.0)) for text in texts]
    if len(replays) < len(programs):
        replays = list(parts_of(replays[0], len(programs)))
    zero = setup.zero
    ran = tuple(
        Ran(program.tool, replay.motions, zero.z_mm, (zero.x_mm, zero.y_mm), spec.thickness_mm, lengths(replay.motions))
        for program, replay in zip(programs, replays, strict=True)
    )
    return spec, drawing, ran, tuple(english(run_warnings(plan.runs, spec.material, spec.machine)))


def lengths(motions: Motions) -> np.ndarray:
    """Of each motion along its way, helices included."""
    step = motions.end_mm - motions.start_mm
    flat = np.hypot(step[:, 0], step[:, 1])
    arcs = np.isin(motions.kind, (ARC_CW, ARC_CCW))
    a, b = (ends[:, :2] - motions.centre_mm for ends in (motions.start_mm, motions.end_mm))
    turn = np.arctan2(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0], (a * b).sum(axis=1))
    turn = np.mod(np.where(motions.kind == ARC_CW, -turn, turn), 2 * math.pi)
    turn = np.where(turn < 1e-12, 2 * math.pi, turn)
    flat = np.where(arcs, turn * np.hypot(a[:, 0], a[:, 1]), flat)
    return np.hypot(flat, step[:, 2])


@ALL
def test_no_axis_is_fed_faster_than_the_machine_can(path: Path, dialect: str, machine: str) -> None:
    spec, _, programs, _ = job(path, dialect, machine)
    top = np.array(spec.machine.top_feed_mm_per_min)
    for ran in programs:
        step = np.abs(ran.motions.end_mm - ran.motions.start_mm) / np.maximum(ran.length_mm, 1e-9)[:, None]
        arcs = np.isin(ran.motions.kind, (ARC_CW, ARC_CCW))
        # Somewhere on an arc the whole speed across goes along one axis.
        step[arcs, :2] = np.sqrt(1 - np.minimum(step[arcs, 2:], 1) ** 2)
        asked = step * ran.motions.feed_mm_per_min[:, None]
        assert np.all(asked[ran.feeding] <= top * 1.001 + 0.6)  # a short move's grid tilts it a little
        assert np.all(ran.motions.feed_mm_per_min[ran.feeding] > 0)


@ALL
def test_end_mills_go_down_no_steeper_than_the_material_wants(path: Path, dialect: str, machine: str) -> None:
    spec, _, programs, _ = job(path, dialect, machine)
    mills = [ran for ran in programs if ran.tool.kind == "end-mill"]
    assert mills
    for ran in mills:
        fall = (ran.high_mm - ran.low_mm) / np.maximum(ran.length_mm, 1e-9)
        # 0.002 mm of an inch's grid at both ends of a short move.
        slack = 0.002 / np.maximum(ran.length_mm, 0.01)
        steepest = math.sin(math.radians(spec.material.entry_deg))
        assert np.all(fall[ran.down] <= steepest + slack[ran.down])
        assert ran.down.any()


@ALL
def test_no_pass_is_deeper_than_the_material_lets_it_be(path: Path, dialect: str, machine: str) -> None:
    spec, drawing, programs, _ = job(path, dialect, machine)
    seen = 0
    for ran in programs:
        if ran.tool.kind != "end-mill":
            continue
        most = spec.material.stepdown_ratio * ran.tool.diameter_mm + 0.011
        places = ran.motions.start_mm[:, :2] + ran.zero_xy_mm
        bored = np.zeros(len(places), bool)
        for hole in drawing.of(Hole):
            apart = np.hypot(*(places - (hole.x_mm, hole.y_mm)).T)
            inside = apart < hole.diameter_mm / 2
            bored |= inside
            # A helix takes at each place what it goes down in a turn.
            turning = ran.down & inside
            share = (ran.high_mm - ran.low_mm)[turning] / ran.length_mm[turning]
            pitch = 2 * math.pi * apart[turning] * share / np.sqrt(1 - share**2)
            assert np.all(pitch <= most)
            seen += len(pitch)
        levels = np.unique(np.round(ran.low_mm[ran.level & ~bored], 2))[::-1]
        if len(levels):
            assert -np.diff(levels, prepend=ran.top_mm).min() > 0
            assert (-np.diff(levels, prepend=ran.top_mm)).max() <= most
            assert levels[-1] < 0
            seen += len(levels)
    assert seen >= 3


@ALL
def test_milling_is_climb_round_holes_and_round_the_sign(path: Path, dialect: str, machine: str) -> None:
    # The spindle turns clockwise seen from above (M3): what stays must lie on the right of the way, so round the sign
    # clockwise (a negative area by the shoelace formula) and inside a hole counter-clockwise.
    spec, drawing, programs, _ = job(path, dialect, machine)
    assert spec.climb
    rounds = {"edge": 0, "holes": 0}
    for ran in programs:
        if ran.tool.kind != "end-mill":
            continue
        assert np.all(ran.motions.spindle_rpm[ran.feeding] > 0)
        for points in runs_of(ran):
            ring = Polygon(points) if len(points) > 3 else Polygon()
            if ring.is_empty or ring.area < 0.1:
                continue
            inside = any(math.dist(points[0], (hole.x_mm, hole.y_mm)) < hole.diameter_mm for hole in drawing.of(Hole))
            area = signed_area(points)
            assert (area > 0) == inside, (path.stem, points[0], area)
            rounds["holes" if inside else "edge"] += 1
    assert rounds["edge"]
    assert rounds["holes"] or not drawing.of(Hole) or any(ran.tool.kind == "drill" for ran in programs)


def runs_of(ran: Ran) -> list[list[tuple[float, float]]]:
    """The way across, in sign coordinates, of each run below the board's top between two lifts, arcs by their
    middles too."""
    runs: list[list[tuple[float, float]]] = []
    dx, dy = ran.zero_xy_mm
    open_run = False
    for n in range(len(ran.motions)):
        if not ran.feeding[n] or ran.low_mm[n] >= ran.top_mm - 1e-3:
            open_run = False
            continue
        if not open_run:
            runs.append([tuple(ran.motions.start_mm[n, :2] + (dx, dy))])
            open_run = True
        if ran.motions.kind[n] in (ARC_CW, ARC_CCW):
            runs[-1] += [(x + dx, y + dy) for x, y in middles(ran.motions, n)]
        runs[-1].append(tuple(ran.motions.end_mm[n, :2] + (dx, dy)))
    return runs


def middles(motions: Motions, n: int) -> list[tuple[float, float]]:
    """Seven places on an arc between its ends."""
    a, b = motions.start_mm[n, :2] - motions.centre_mm[n], motions.end_mm[n, :2] - motions.centre_mm[n]
    way = 1 if motions.kind[n] == ARC_CCW else -1
    turn = way * math.atan2(a[0] * b[1] - a[1] * b[0], a @ b) % (2 * math.pi) or 2 * math.pi
    found = []
    for part in range(1, 8):
        t = way * turn * part / 8
        x, y = motions.centre_mm[n]
        found.append((x + a[0] * math.cos(t) - a[1] * math.sin(t), y + a[0] * math.sin(t) + a[1] * math.cos(t)))
    return found


def signed_area(points: list[tuple[float, float]]) -> float:
    """Shoelace; several rounds count several times."""
    x, y = np.array(points).T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)


@ALL
def test_chips_are_in_their_range_except_where_it_is_said(path: Path, dialect: str, machine: str) -> None:
    spec, _, programs, warnings = job(path, dialect, machine)
    for ran in programs:
        if ran.tool.kind not in ("end-mill", "ball-nose"):
            continue
        # The fastest is the full feed in a slot; arcs and ramps are slower, a thin finishing cut may be faster.
        feed, rpm = ran.motions.feed_mm_per_min[ran.level].max(), np.abs(ran.motions.spindle_rpm[ran.level]).max()
        chip = feed / (rpm * ran.tool.flutes)
        least, most = spec.material.least_chip_mm, spec.material.most_chip_ratio
        assert least is not None
        assert most is not None
        within = 0.9 * least <= chip <= most * ran.tool.diameter_mm
        assert within or any(f"Each edge of the {ran.tool.label} takes" in text for text in warnings)


def test_a_chip_outside_its_range_is_told() -> None:
    # Small cutters in metal take less than an edge needs, and the sign says so.
    assert not any("Each edge" in text for text in job(EXAMPLES[-1], "plain", MACHINES[0])[3])
    spec = spec_of(material="aluminium", thickness="3", depth="0.5", end_mill="1", hole_diameter="5")
    plan = make_plan(draw(spec), spec)
    assert any(
        "Each edge of the 1 mm end mill takes" in text
        for text in english(run_warnings(plan.runs, spec.material, spec.machine))
    )


def test_conventional_milling_goes_the_other_way_round() -> None:
    areas = {}
    for way in ("climb", "conventional"):
        _, drawing, programs, _ = job(EXAMPLES[0], "plain", MACHINES[0], way)
        middle = (drawing.width_mm / 2, drawing.height_mm / 2)
        runs = [points for ran in programs if ran.tool.kind == "end-mill" for points in runs_of(ran)]
        areas[way] = [
            signed_area(points) > 0 for points in runs if len(points) > 3 and Polygon(points).convex_hull.area > 1
        ]
        assert any(Polygon(points).convex_hull.contains(Point(middle)) for points in runs)
    assert areas["climb"] == [not left for left in areas["conventional"]]
