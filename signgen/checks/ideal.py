"""The board as drawn, on the cells of a height map."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.features.edge import Edge
from signgen.features.feature import Feature
from signgen.geometry.distance import FloatArray, IntArray
from signgen.geometry.raster import Grid, cells_inside, fill
from signgen.tolerances import CHECK_MM

WASTE, KERF, BODY, UNTOLD = -4, -3, -2, -1
"""What a cell may be where no feature says how deep it lies: board beyond the cutter's way round the edge, that way
itself, the sign's untouched face, or so near to an upright wall that only the exact checks can tell."""

CORNER_RATIO, LEAD_ROOM_MM = 1.25, 0.6
"""How far outside the edge a cutter may reach: in its diameters, where it turns a square corner on a square path (which
goes (1 + sqrt 2) / 2 = 1.21 of them out); and beyond one diameter, where it is led on to the edge and off it."""


class DrawnFeature(Struct, frozen=True):
    """A feature on the board's cells: cell (k,) ascending flat indices of those within its footprint, clear of an
    upright wall; least_mm, most_mm (k,) between which the surface must lie there, nan where only the exact check of its
    kind can tell, infinite where it goes through."""

    feature: Feature
    cell: IntArray
    least_mm: FloatArray
    most_mm: FloatArray


class Ideal(Struct, frozen=True, kw_only=True):
    """zone (ny nx,) int16 by flat index: WASTE, KERF, BODY, UNTOLD, or the number in `drawn` of the feature whose depth
    the cell has, the deepest of those that lie there. kerf_mm: how far outside the edge material may be gone."""

    grid: Grid
    zone: NDArray[np.int16]
    drawn: tuple[DrawnFeature, ...]
    kerf_mm: float

    def of(self, feature: Feature) -> DrawnFeature:
        """Raises: KeyError for a feature that takes no wood of this side."""
        for each in self.drawn:
            if each.feature is feature:
                return each
        raise KeyError(feature.name)

    def own(self, number: int) -> NDArray[np.bool_]:
        """(k,) which of a feature's cells have its depth, because nothing deeper lies there."""
        drawn = self.drawn[number]
        return np.asarray(self.zone[drawn.cell] == number)


def kerf_allowed_mm(diameter_mm: float, finish_mm: float) -> float:
    """How far outside the edge a cutter may take the board away; `finish_mm` is left on the edge for a last pass."""
    return max(CORNER_RATIO * (diameter_mm + finish_mm), diameter_mm + finish_mm + LEAD_ROOM_MM)


def ideal_board(drawing: Drawing, grid: Grid, kerf_mm: float) -> Ideal:
    """The drawing at the cells' centres. `kerf_mm`: greatest reach of a cutter outside the edge, 0 when nothing is
    cut there."""
    zone = np.full(grid.nx * grid.ny, WASTE, np.int16)
    edge = drawing.edge
    if kerf_mm > 0:
        fill(zone, _grown(edge, kerf_mm), grid, KERF)
    fill(zone, edge.buffer(CHECK_MM), grid, UNTOLD)
    fill(zone, edge.buffer(-CHECK_MM, join_style="mitre"), grid, BODY)
    drawn = _drawn([each for each in drawing.upward if each.takes and not isinstance(each, Edge)], grid)
    outside = np.flatnonzero(zone != BODY)
    kept = zone[outside]
    # Deeper things lie in shallower ones: their depth is what is seen.
    for number in sorted(range(len(drawn)), key=lambda k: _deepest(drawn[k])):
        feature = drawn[number].feature
        if feature.rim_mm:
            fill(zone, feature.footprint.buffer(feature.rim_mm), grid, UNTOLD)
        zone[drawn[number].cell] = np.where(np.isnan(drawn[number].most_mm), UNTOLD, number)
    zone[outside] = kept
    zone.setflags(write=False)
    return Ideal(grid=grid, zone=zone, drawn=tuple(drawn), kerf_mm=kerf_mm)


def _drawn(features: Sequence[Feature], grid: Grid) -> list[DrawnFeature]:
    """The features on the cells, those of a kind told of together."""
    cells = [cells_inside(_clear_of_wall(feature), grid) for feature in features]
    found: dict[int, DrawnFeature] = {}
    for kind in dict.fromkeys(type(feature) for feature in features):
        own = [k for k, feature in enumerate(features) if type(feature) is kind]
        ends = np.cumsum([0, *(len(cells[k]) for k in own)])
        places = grid.centres_mm(np.concatenate([cells[k] for k in own]))
        owner = np.repeat(np.arange(len(own)), np.diff(ends))
        least, most = kind.depths_of([features[k] for k in own], places, owner)
        for k, start, stop in zip(own, ends[:-1], ends[1:], strict=True):
            found[k] = DrawnFeature(features[k], cells[k], least[start:stop], most[start:stop])
    return [found[k] for k in range(len(features))]


def _clear_of_wall(feature: Feature) -> Polygon | MultiPolygon:
    if not feature.rim_mm:
        return feature.footprint
    clear: Polygon | MultiPolygon = feature.footprint.buffer(-feature.rim_mm)
    return clear


def _deepest(drawn: DrawnFeature) -> float:
    return float(np.nanmax(drawn.most_mm, initial=0.0))


def _grown(edge: Polygon | MultiPolygon, by_mm: float) -> BaseGeometry:
    grown: BaseGeometry = edge.buffer(by_mm, quad_segs=16)
    return grown
