"""The runs of a V-bit in one area, as chains of x, y and half width w at the surface, before any depth is
known."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from shapely.geometry import Polygon

from signgen.geometry.clip import AxisPart, clipped
from signgen.geometry.hops import with_hops
from signgen.geometry.medial import grid_rings, medial_axis
from signgen.geometry.paths import Path
from signgen.geometry.walk import Run, WalkRing, runs_along
from signgen.operations.engrave_fit import Leeway, fitted
from signgen.operations.engrave_walls import linked, tied, wall_chains
from signgen.tolerances import GRID_MM, Tolerances

_KEPT = 1024


class RunRecipe(Struct, frozen=True, kw_only=True):
    """What to walk in an area, in half widths of the bit at the surface, mm.

    Where the axis is wider than `least_mm`, up to `limit_mm`, the half width at the greatest depth; beyond
    that the floor is flat and its wall is walked. Nothing is cut wider than `cap_mm`: a roughing pass has
    less there than the limit. Lines and arcs may leave `fit_mm` uncut and go `deeper_mm` too wide; `lift_mm` is the
    walking that a lift is worth.
    """

    least_mm: float
    limit_mm: float
    cap_mm: float
    fit_mm: float
    deeper_mm: float
    lift_mm: float

    @property
    def leeway(self) -> Leeway:
        # A roughing pass does not come so near to the walls that strokes run out.
        tip = self.least_mm if self.least_mm < self.cap_mm else -1.0
        return Leeway(deeper_mm=self.deeper_mm, short_mm=self.fit_mm, most_mm=self.cap_mm, tip_mm=tip)


class ShapeRun(Struct, frozen=True, kw_only=True):
    """A run whose third coordinate is the half width w; `either_way` when no wall in it has a direction to
    keep to."""

    path: Path
    either_way: bool


Key = tuple[tuple[bytes, ...], RunRecipe, Tolerances]

_known: OrderedDict[Key, tuple[ShapeRun, ...]] = OrderedDict()
"""Runs of shapes met before, least recently used first. A letter costs its work once, wherever it stands."""


def shape_runs(shapes: Sequence[tuple[Polygon, RunRecipe]], tolerances: Tolerances) -> list[tuple[ShapeRun, ...]]:
    """Fitted runs over each polygon.

    w is at most `cap_mm`, and nowhere is `least_mm` reached before the stroke's end. Equal shapes give equal runs
    wherever they lie, and whatever was asked for before.
    """
    placed = [grid_rings(polygon) for polygon, _ in shapes]
    keys: list[Key] = [(rings, recipe, tolerances) for (_, rings), (_, recipe) in zip(placed, shapes, strict=True)]
    found = {key: _known[key] for key in keys if key in _known}
    fresh = [key for key in dict.fromkeys(keys) if key not in found]
    # All at once, for the fit is far quicker on many chains than on few.
    walked = [_walked(key) for key in fresh]
    paths = iter(
        fitted(
            [run for runs, _ in walked for run in runs],
            [key[1].leeway for key, (runs, _) in zip(fresh, walked, strict=True) for _ in runs],
        )
    )
    for key, (runs, either_way) in zip(fresh, walked, strict=True):
        found[key] = tuple(ShapeRun(path=next(paths), either_way=either_way) for _ in runs)
    for key in keys:
        _known[key] = found[key]
        _known.move_to_end(key)
    while len(_known) > _KEPT:
        _known.popitem(last=False)
    return [
        tuple(ShapeRun(path=run.path.moved(*corner), either_way=run.either_way) for run in found[key])
        for key, (corner, _) in zip(keys, placed, strict=True)
    ]


def _walked(key: Key) -> tuple[tuple[Run, ...], bool]:
    """The runs of a shape, and whether they may be walked from either end."""
    rings, recipe, tolerances = key
    arrays = [np.frombuffer(ring, np.int64).reshape(-1, 2) * GRID_MM for ring in rings]
    polygon = Polygon(arrays[0], arrays[1:])
    axis = medial_axis(polygon, tolerances)
    # Where the area is hardly wider than the limit its wall is too thin to be walked round: there the axis
    # serves.
    hardly = recipe.limit_mm + tolerances.branch_mm / 2
    part = clipped(axis, recipe.least_mm, hardly)
    walls: tuple[WalkRing, ...] = ()
    if axis.widest_mm > hardly:
        chains = wall_chains(polygon, recipe.limit_mm, tolerances)
        part, walls = tied(part, chains, hardly, 4 * tolerances.branch_mm)
        part, walls = linked(part, walls, recipe.limit_mm)
    part, walls = _at_most(part, walls, recipe.cap_mm)
    runs = runs_along(part, walls, recipe.lift_mm)
    # A roughing pass has no end at the surface.
    return (runs if recipe.cap_mm < recipe.limit_mm else with_hops(runs, arrays, recipe.least_mm)), not walls


def _at_most(part: AxisPart, walls: tuple[WalkRing, ...], cap_mm: float) -> tuple[AxisPart, tuple[WalkRing, ...]]:
    """Nothing wider than the cap."""
    cap = np.array([np.inf, np.inf, cap_mm])
    branches = tuple(np.minimum(branch, cap) for branch in part.branches)
    return (
        AxisPart(nodes=np.minimum(part.nodes, cap), branches=branches, ends=part.ends, lone=part.lone),
        tuple(WalkRing(points=np.minimum(wall.points, cap), stops=wall.stops) for wall in walls),
    )
