"""The examples as an outside witness sees them: their programs, read and cut by means that share nothing with signgen.

What is wanted comes from the drawing; the reader and the simulation are the witness's own (witness.py).
"""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import shapely

from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.pipeline import gather, make_job, read_sign
from tests.witness.witness import Board, Cutter, steps

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = ("heron-weir-9", "tannery-workshop", "quince-cottage")
CELL_MM = 0.2
GOUGE_MM = 0.05
"""Least gouge that matters, and least error in place and size; the witness's own steps make a tenth of it."""


@dataclass(frozen=True)
class Seen:
    """A job's texts and report, its drawing, and the board as the witness has cut it."""

    report: dict[str, Any]
    texts: tuple[str, ...]
    drawing: Drawing
    board: Board
    wrong: tuple[str, ...]

    @property
    def through(self) -> list[tuple[float, np.ndarray]]:
        """Of each program, the cutter's radius and (n, 3) places of the tip at the board's bottom or lower."""
        every = [np.concatenate([step.points for step in steps(text, 0.1)]) for text in self.texts]
        radii = [cutter(program).diameter_mm / 2 for program in self.report["programs"]]
        return [(radius, points[points[:, 2] <= 0]) for radius, points in zip(radii, every, strict=True)]


@cache
def seen(name: str) -> Seen:
    job = make_job(read_sign(gather({}, EXAMPLES / f"{name}.toml")))
    report = json.loads(job.files["report.json"])
    stock, sign = report["stock"], report["sign"]
    assert report["fastening"]["datum"] == "sign"
    board = Board(
        -stock["datum_x_mm"], -stock["datum_y_mm"], stock["min_width_mm"], stock["min_height_mm"],
        sign["thickness_mm"], CELL_MM,
    )  # fmt: skip
    wrong: list[str] = []
    texts = tuple(job.files[program["file"]].decode("ascii") for program in report["programs"])
    for program, text in zip(report["programs"], texts, strict=True):
        tool = cutter(program)
        apart = 0.03 if tool.kind == "v-bit" else 0.1
        wrong += [f"{program['file']}, {said}" for said in board.run(text, tool, (0.0, 0.0, 0.0), apart)]
    return Seen(report=report, texts=texts, drawing=job.facts.drawing, board=board, wrong=tuple(wrong))


def cutter(program: dict[str, Any]) -> Cutter:
    tool = program["tool"]
    return Cutter(tool["kind"], tool["diameter_mm"], tool.get("angle_deg"), tool.get("tip_mm") or 0.0)


def cells(one: Seen) -> np.ndarray:
    """(rows, columns, 2) centres."""
    return np.stack(np.meshgrid(one.board.x, one.board.y), axis=-1)


def distance(points: np.ndarray, area: shapely.Geometry) -> np.ndarray:
    """(n,) from points to an outline."""
    ends = [np.array(ring.coords) for part in shapely.get_parts(area) for ring in (part.exterior, *part.interiors)]
    sides = shapely.linestrings(np.concatenate([np.stack([ring[:-1], ring[1:]], axis=1) for ring in ends]))
    tree = shapely.STRtree(sides)
    which, away = tree.query_nearest(shapely.points(points), return_distance=True, all_matches=False)
    return away[np.argsort(which[0])]


@cache
def wanted(name: str) -> np.ndarray:
    """(rows, columns) heights as drawn: the face, grooves as deep as the distance to their outline over the tangent of
    half the angle, nothing in holes. Not a number where that is not drawn or an upright wall is too near to tell."""
    one = seen(name)
    centres = cells(one).reshape(-1, 2)
    top = one.drawing.thickness_mm
    height = np.full(len(centres), np.nan)
    height[shapely.contains_xy(one.drawing.edge.buffer(-CELL_MM), *centres.T)] = top
    for groove in one.drawing.of(Groove):
        x0, y0, x1, y1 = groove.area.bounds
        box = np.flatnonzero(((centres >= (x0, y0)) & (centres <= (x1, y1))).all(axis=1))
        own = box[shapely.contains_xy(groove.area, *centres[box].T)]
        away = distance(centres[own], groove.area)
        depth = np.minimum(away / math.tan(math.radians(groove.angle_deg) / 2), groove.max_depth_mm)
        height[own] = top - depth
    for hole in one.drawing.of(Hole):
        away = np.hypot(*(centres - (hole.x_mm, hole.y_mm)).T) - hole.diameter_mm / 2
        height[np.abs(away) <= CELL_MM] = np.nan
        height[away < -CELL_MM] = 0.0
    return height.reshape(one.board.z.shape)


@pytest.mark.parametrize("name", NAMES)
def test_no_rapid_is_in_material_and_nothing_is_cut_with_the_spindle_off(name: str) -> None:
    assert seen(name).wrong == ()


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_gouged_and_nothing_left(name: str) -> None:
    one = seen(name)
    assert not any(hole.sink for hole in one.drawing.of(Hole))
    error = one.board.z - wanted(name)
    blunt = max((groove.tip_mm / 2 for groove in one.drawing.of(Groove)), default=0.0)
    assert blunt == 0.0
    face = wanted(name) > 0
    assert np.nanmin(error[face]) > -GOUGE_MM
    assert np.nanmax(error[face]) < GOUGE_MM + 0.1  # ridges of 0.1 mm were asked for on flat floors
    assert one.board.z.min() >= -0.3 - 1e-9


@pytest.mark.parametrize("name", NAMES)
def test_every_hole_is_at_its_place_and_through(name: str) -> None:
    one = seen(name)
    assert one.drawing.of(Hole)
    for hole in one.drawing.of(Hole):
        away = np.hypot(cells(one)[..., 0] - hole.x_mm, cells(one)[..., 1] - hole.y_mm)
        assert (one.board.z[away < hole.diameter_mm / 2 - CELL_MM] <= 0).all()
        through = (one.board.z <= 0) & (away < hole.diameter_mm / 2 + 1)
        centre = cells(one)[through].mean(axis=0)
        assert centre == pytest.approx((hole.x_mm, hole.y_mm), abs=GOUGE_MM)
        widest = [
            reach + np.hypot(*(low[near, :2] - (hole.x_mm, hole.y_mm)).T).max()
            for reach, low in one.through
            if (near := np.hypot(*(low[:, :2] - (hole.x_mm, hole.y_mm)).T) < hole.diameter_mm / 2).any()
        ]
        assert 2 * max(widest) == pytest.approx(hole.diameter_mm, abs=GOUGE_MM)


@pytest.mark.parametrize("name", NAMES)
def test_four_tabs_stand(name: str) -> None:
    one = seen(name)
    reach = cutter(one.report["programs"][-1]).diameter_mm / 2
    ring = shapely.segmentize(one.drawing.edge.buffer(reach, quad_segs=32).exterior, CELL_MM)
    x, y = np.array(ring.coords)[:-1].T
    z = one.board.z[np.searchsorted(one.board.y, y) - 1, np.searchsorted(one.board.x, x) - 1]
    stands = z > 0.5
    rises = np.flatnonzero(stands & ~np.roll(stands, 1))
    assert len(rises) == one.report["sign"]["tabs"] == 4
    for first in rises:
        run = np.roll(stands, -first)
        length = int(np.argmin(run))
        assert length * CELL_MM > 6 - 3 * CELL_MM
        middle = z[(first + length // 2) % len(z)]
        assert middle >= min(1.5, one.drawing.thickness_mm / 4) - GOUGE_MM


@pytest.mark.parametrize("name", NAMES)
def test_the_outside_has_its_size(name: str) -> None:
    """From the tip's places alone: outside the sign and low, nearest to each side."""
    one = seen(name)
    program, text = one.report["programs"][-1], one.texts[-1]
    reach = cutter(program).diameter_mm / 2
    points = np.concatenate([step.points for step in steps(text, 0.05) if not step.rapid])
    width, height = one.report["sign"]["width_mm"], one.report["sign"]["height_mm"]
    points = points[points[:, 2] < one.drawing.thickness_mm]
    outside = points[~shapely.contains_xy(one.drawing.edge, points[:, 0], points[:, 1])]
    x, y = outside[:, 0], outside[:, 1]
    # The middle half of each side, which is straight: at the corners the cutter rolls round.
    beside, along = np.abs(y - height / 2) < height / 4, np.abs(x - width / 2) < width / 4
    left, right = (x[beside & (x < 0)] + reach).max(), (x[beside & (x > width)] - reach).min()
    low, high = (y[along & (y < 0)] + reach).max(), (y[along & (y > height)] - reach).min()
    assert (left, low) == pytest.approx((0, 0), abs=GOUGE_MM)
    assert (right - left, high - low) == pytest.approx((width, height), abs=GOUGE_MM)


SPOILT = {
    "a rapid in the wood": ("G1 X", "G0 X", "rapid"),
    "the spindle off": ("M3", "M5", "stands still"),
}


@pytest.mark.parametrize(("old", "new", "words"), SPOILT.values(), ids=SPOILT.keys())
def test_the_witness_sees_what_is_wrong(old: str, new: str, words: str) -> None:
    one = seen(NAMES[0])
    program, text = one.report["programs"][0], one.texts[0]
    stock = one.report["stock"]
    board = Board(
        -stock["datum_x_mm"],
        -stock["datum_y_mm"],
        stock["min_width_mm"],
        stock["min_height_mm"],
        one.drawing.thickness_mm,
        0.5,
    )
    head, body = text[: text.index("M3") - 8], text[text.index("M3") - 8 :]
    wrong = board.run(head + body.replace(old, new, 3), cutter(program), (0.0, 0.0, 0.0), 0.2)
    assert any(words in said for said in wrong)


def test_the_witness_stops_at_words_that_it_does_not_know() -> None:
    with pytest.raises(ValueError, match="G91"):
        list(steps("G21 G91\nG0 X1 Y1 Z1\n", 0.1))
