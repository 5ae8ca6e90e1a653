"""What a program changed on the simulated board, so that the sheet can say what to look for afterwards."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.job.facts import JobFacts
from signgen.replay.heights import HeightMap

SEEN_MM = 0.05
"""Less than this is not engraving but the map's own grain."""
BESIDE_MM = 0.6
"""How far outside the edge a place is looked at to see whether the outside is cut."""


class Outcome(Struct, frozen=True, kw_only=True):
    """`engraved_mm`: the deepest place cut into grooves that does not go through, 0 for none; `floor_mm`: the same of
    recesses. `letters_through`: whether letters went through. `holes`: those that went through in this program.
    `cut_out`: whether the outside went through."""

    engraved_mm: float
    floor_mm: float
    letters_through: bool
    holes: tuple[Hole, ...]
    cut_out: bool


def outcomes(facts: JobFacts) -> tuple[Outcome, ...]:
    """One for each program, in order."""
    result = []
    before: HeightMap | None = None
    for board in facts.boards:
        result.append(_outcome(facts.drawing, before, board))
        before = board
    return tuple(result)


def _outcome(drawing: Drawing, before: HeightMap | None, after: HeightMap) -> Outcome:
    rings = [outline.buffer(BESIDE_MM).exterior.coords for outline in drawing.outlines]
    ring = np.concatenate([np.asarray(coords) for coords in rings])
    now, then = _heights(after, ring), _before(before, drawing, ring)
    fresh = (now <= 0) & (then > 0)
    centres = np.array([(hole.x_mm, hole.y_mm) for hole in drawing.of(Hole)]).reshape(-1, 2)
    through = [recess.area for recess in drawing.of(Recess) if drawing.is_through(recess)]
    inside = shapely.get_coordinates(shapely.point_on_surface(through)).reshape(-1, 2)
    bored = (_heights(after, centres) <= 0) & (_before(before, drawing, centres) > 0)
    return Outcome(
        engraved_mm=_cut_into([groove.area for groove in drawing.of(Groove)], drawing, before, after),
        floor_mm=_cut_into([recess.area for recess in drawing.of(Recess)], drawing, before, after),
        letters_through=bool(((_heights(after, inside) <= 0) & (_before(before, drawing, inside) > 0)).any()),
        holes=tuple(hole for hole, through in zip(drawing.of(Hole), bored.tolist(), strict=True) if through),
        cut_out=bool(fresh.mean() > 0.5),
    )


def _heights(board: HeightMap, points: np.ndarray) -> np.ndarray:
    """(k,) heights at the cells nearest to (k, 2) points; a point beyond the map takes the cell at its rim."""
    ny, nx = board.z_mm.shape
    i = np.clip(np.rint((points[:, 0] - board.x0_mm) / board.cell_mm).astype(np.intp), 0, nx - 1)
    j = np.clip(np.rint((points[:, 1] - board.y0_mm) / board.cell_mm).astype(np.intp), 0, ny - 1)
    return board.z_mm[j, i]


def _before(board: HeightMap | None, drawing: Drawing, points: np.ndarray) -> np.ndarray:
    return np.full(len(points), drawing.thickness_mm) if board is None else _heights(board, points)


def _cut_into(areas: Sequence[BaseGeometry], drawing: Drawing, before: HeightMap | None, after: HeightMap) -> float:
    """Deepest fresh place within the areas that is not a hole right through."""
    deepest = 0.0
    for area in areas:
        low_x, low_y, high_x, high_y = area.bounds
        columns = slice(*_cells(low_x, high_x, after.x0_mm, after.cell_mm, after.z_mm.shape[1]))
        rows = slice(*_cells(low_y, high_y, after.y0_mm, after.cell_mm, after.z_mm.shape[0]))
        now = after.z_mm[rows, columns]
        then = np.float32(drawing.thickness_mm) if before is None else before.z_mm[rows, columns]
        depth = np.where((then - now > SEEN_MM) & (now > 0), drawing.thickness_mm - now, 0.0)
        row, column = np.nonzero(depth > deepest)
        x = after.x0_mm + (columns.start + column) * after.cell_mm
        y = after.y0_mm + (rows.start + row) * after.cell_mm
        # a frame has all the sign within its bounds, and on a round one the cut outside too
        within = shapely.contains_xy(area, x, y)
        deepest = max(deepest, float(depth[row, column][within].max(initial=0.0)))
    return deepest


def _cells(low: float, high: float, origin: float, cell: float, count: int) -> tuple[int, int]:
    """First cell, and one past the last, between two coordinates."""
    return max(0, int((low - origin) / cell)), min(count, int((high - origin) / cell) + 2)
