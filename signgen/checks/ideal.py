"""The board as drawn, on the cells of a height map."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry import LineString, MultiPolygon, Point, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.features.edge import Bevel
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.features.tab import Tab
from signgen.geometry.distance import FloatArray, IntArray, distance_to_segments, segments_of
from signgen.geometry.raster import Grid, cells_inside, fill
from signgen.tolerances import CHECK_MM

WASTE, KERF, BODY, HOLE, GROOVE, RIM, RECESS = range(7)
"""What a cell may be: board beyond the cutter's way round the edge, that way itself, the sign's untouched face, a
hole, a groove, or so near to an upright wall (or on a countersink or a bevel) that only the exact checks can tell; or
a recess."""

CORNER_RATIO, LEAD_ROOM_MM = 1.25, 0.6
"""How far outside the edge a cutter may reach: in its diameters, where it turns a square corner on a square path (which
goes (1 + sqrt 2) / 2 = 1.21 of them out); and beyond one diameter, where it is led on to the edge and off it."""

TAB_SIDE_MM = 0.2
"""How much narrower than drawn a tab's cells are taken; the exact check measures the width."""


class Ideal(Struct, frozen=True, kw_only=True):
    """zone (ny nx,) uint8 by flat index. groove_cell (k,) flat indices of cells in grooves, groove_of (k,) which
    groove, and two surfaces between which each must lie, as depths: with a flat tip the corner of two walls is blunt,
    which a cell cannot follow. hole_cell (h,) and hole_of likewise; tab_cell, tab_of: where each tab must stand.
    kerf_mm: how far outside the edge material may be gone."""

    grid: Grid
    zone: NDArray[np.uint8]
    groove_cell: IntArray
    groove_of: IntArray
    shallowest_mm: FloatArray
    deepest_mm: FloatArray
    hole_cell: IntArray
    hole_of: IntArray
    tab_cell: IntArray
    tab_of: IntArray
    kerf_mm: float


def kerf_allowed_mm(diameter_mm: float, finish_mm: float) -> float:
    """How far outside the edge a cutter may take the board away; `finish_mm` is left on the edge for a last pass."""
    return max(CORNER_RATIO * (diameter_mm + finish_mm), diameter_mm + finish_mm + LEAD_ROOM_MM)


def ideal_board(drawing: Drawing, grid: Grid, kerf_mm: float) -> Ideal:
    """The drawing at the cells' centres. `kerf_mm`: greatest reach of a cutter outside the edge, 0 when nothing is
    cut there."""
    zone = np.full(grid.nx * grid.ny, WASTE, np.uint8)
    edge = drawing.edge
    if kerf_mm > 0:
        fill(zone, _grown(edge, kerf_mm), grid, KERF)
    fill(zone, edge.buffer(CHECK_MM), grid, RIM)
    bevel = max((each.width_mm for each in drawing.of(Bevel)), default=0.0)
    fill(zone, edge.buffer(-CHECK_MM - bevel, join_style="mitre"), grid, BODY)
    for recess in drawing.of(Recess):
        fill(zone, recess.area.buffer(CHECK_MM), grid, RIM)
        fill(zone, recess.area.buffer(-CHECK_MM), grid, RECESS)
    hole_cells = []
    for hole in drawing.of(Hole):
        fill(zone, _swept(hole, hole.face_radius_mm + CHECK_MM), grid, RIM)
        hole_cells.append(cells_inside(_swept(hole, hole.diameter_mm / 2 - CHECK_MM), grid))
        zone[hole_cells[-1]] = HOLE
    groove_cells = [cells_inside(groove.area, grid) for groove in drawing.of(Groove)]
    for cells in groove_cells:
        zone[cells] = GROOVE
    tab_cells = [cells_inside(_stand(tab, kerf_mm), grid) for tab in drawing.of(Tab)]
    tab_cells = [cells[zone[cells] == KERF] for cells in tab_cells]
    groove_cell, groove_of = _gathered(groove_cells)
    hole_cell, hole_of = _gathered(hole_cells)
    tab_cell, tab_of = _gathered(tab_cells)
    shallowest, deepest = groove_depths(drawing.of(Groove), grid.centres_mm(groove_cell), groove_of)
    zone.setflags(write=False)
    return Ideal(
        grid=grid,
        zone=zone,
        groove_cell=groove_cell,
        groove_of=groove_of,
        shallowest_mm=shallowest,
        deepest_mm=deepest,
        hole_cell=hole_cell,
        hole_of=hole_of,
        tab_cell=tab_cell,
        tab_of=tab_of,
        kerf_mm=kerf_mm,
    )


def groove_depths(
    grooves: Sequence[Groove], points_mm: FloatArray, groove_of: IntArray
) -> tuple[FloatArray, FloatArray]:
    """(least, greatest) depth of the surface at points inside grooves, which differ by what a flat tip leaves open.

    A bit whose flat tip is t wide reaches the outline from a place at distance R with depth (R - t / 2) / k, k =
    tan(A / 2). At distance q of that place it leaves (R - max(q, t / 2)) / k: so a wall falls as r / k from the
    outline, and within t / 2 of the ridge where walls meet the floor is flat at (R - t / 2) / k. Hence (r - t / 2) /
    k <= depth <= r / k everywhere. Source: check-values section 8 (depth = (w - t) / (2 tan a)).
    """
    if not len(grooves) or not len(points_mm):
        return np.zeros(0), np.zeros(0)
    slope = np.array([np.tan(np.radians(groove.angle_deg) / 2) for groove in grooves])[groove_of]
    half_tip = np.array([groove.tip_mm / 2 for groove in grooves])[groove_of]
    limit = np.array([groove.max_depth_mm for groove in grooves])[groove_of]
    # Inside one groove no outline is nearer than its own, so one search serves all.
    outline = np.concatenate([segments_of(groove.area) for groove in grooves])
    farthest = max(groove.limit_radius_mm for groove in grooves) + 1e-6
    radius = distance_to_segments(points_mm, outline, farthest)
    least, most = np.clip((radius - half_tip) / slope, 0.0, limit), np.minimum(radius / slope, limit)
    for number, groove in enumerate(grooves):
        own = groove_of == number
        if isinstance(groove, Stroke) and own.any():
            # What a cone leaves of whose tip follows a line: exact, whatever its tip.
            away = distance_to_segments(points_mm[own], segments_of(groove.lines))
            least[own] = most[own] = np.clip((groove.limit_radius_mm - away) / slope[own], 0.0, limit[own])
    return least, most


def _grown(edge: Polygon | MultiPolygon, by_mm: float) -> BaseGeometry:
    grown: BaseGeometry = edge.buffer(by_mm, quad_segs=16)
    return grown


def _swept(hole: Hole, radius_mm: float) -> Polygon:
    """What a disc covers on a hole's middle line."""
    middle = LineString(hole.ends_mm) if hole.span_mm else Point(hole.x_mm, hole.y_mm)
    swept: Polygon = middle.buffer(max(radius_mm, 0.0), quad_segs=64)
    return swept


def _stand(tab: Tab, kerf_mm: float) -> Polygon:
    """The rectangle outside the edge in which a tab stands, a little narrower than drawn."""
    half = max(tab.width_mm / 2 - TAB_SIDE_MM / 2, 0.0)
    along, out = np.array([tab.along_x, tab.along_y]), np.array([tab.along_y, -tab.along_x])
    middle = np.array([tab.x_mm, tab.y_mm])
    corners = [middle - half * along, middle + half * along]
    return Polygon([*corners, corners[1] + kerf_mm * out, corners[0] + kerf_mm * out])


def _gathered(cells: Sequence[IntArray]) -> tuple[IntArray, IntArray]:
    """All cells, and for each the number of the list that it came from."""
    if not cells:
        return np.zeros(0, np.intp), np.zeros(0, np.intp)
    return np.concatenate(cells), np.repeat(np.arange(len(cells)), [len(own) for own in cells])
