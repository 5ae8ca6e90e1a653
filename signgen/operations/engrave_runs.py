"""The runs of a V-bit in one area, as chains of x, y and half width w at the surface, before any depth is
known."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import LineString, Point, Polygon

from signgen.geometry.clip import Part, clipped
from signgen.geometry.loose_fit import Stretch, fit_counts, fit_loosely
from signgen.geometry.medial import grid_rings, medial_axis
from signgen.geometry.offsets import inward
from signgen.geometry.paths import FloatArray, Path
from signgen.geometry.walk import Ring, Run, runs_along
from signgen.tolerances import GRID_MM, Tolerances

RETURN_MM = 0.25
"""How far above the groove's bottom, in half widths, the bit may come back where it has been already: enough
for long straight moves, and the least that still counts as staying in the groove."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Widths:
    """What a V-bit can do in an area: `least_mm`, its half width at the surface when its tip touches it (half
    the tip), and `limit_mm`, the half width at the greatest depth; beyond that the floor is flat."""

    least_mm: float
    limit_mm: float


Key = tuple[tuple[bytes, ...], Widths, float, Tolerances]

_KEPT = 1024
_known: OrderedDict[Key, tuple[Path, ...]] = OrderedDict()
"""Runs of shapes met before, least recently used first. A letter costs its work once, wherever it stands."""


def shape_runs(
    shapes: Sequence[tuple[Polygon, Widths]], lift_mm: float, tolerances: Tolerances
) -> list[tuple[Path, ...]]:
    """Fitted runs over each polygon; the third coordinate of a path is the half width w at the surface.

    w is at most `limit_mm`, and may be less than `least_mm` by the fit tolerance where the tip is at the
    surface. Equal shapes give equal runs wherever they lie, and whatever was asked for before.
    """
    placed = [grid_rings(polygon) for polygon, _ in shapes]
    keys: list[Key] = [
        (rings, widths, lift_mm, tolerances) for (_, rings), (_, widths) in zip(placed, shapes, strict=True)
    ]
    found = {key: _known[key] for key in keys if key in _known}
    fresh = [key for key in dict.fromkeys(keys) if key not in found]
    # All at once, for the fit is far quicker on many chains than on few.
    walked = [_walked(key) for key in fresh]
    paths = iter(_fitted([run for runs in walked for run in runs], tolerances))
    for key, runs in zip(fresh, walked, strict=True):
        found[key] = tuple(next(paths) for _ in runs)
    for key in keys:
        _known[key] = found[key]
        _known.move_to_end(key)
    while len(_known) > _KEPT:
        _known.popitem(last=False)
    return [tuple(path.moved(*corner) for path in found[key]) for key, (corner, _) in zip(keys, placed, strict=True)]


def _walked(key: Key) -> tuple[Run, ...]:
    rings, widths, lift_mm, tolerances = key
    arrays = [np.frombuffer(ring, np.int64).reshape(-1, 2) * GRID_MM for ring in rings]
    polygon = Polygon(arrays[0], arrays[1:])
    axis = medial_axis(polygon, tolerances)
    part = clipped(axis, widths.least_mm, widths.limit_mm)
    walls: tuple[Ring, ...] = ()
    if max((branch[:, 2].max() for branch in axis.branches), default=axis.nodes_mm[0, 2]) > widths.limit_mm:
        part, walls = _tied(part, wall_chains(polygon, widths.limit_mm, tolerances), widths.limit_mm)
    return runs_along(part, walls, lift_mm)


def wall_chains(polygon: Polygon, limit_mm: float, tolerances: Tolerances) -> list[FloatArray]:
    """Closed chains (k, 3) at exactly `limit_mm` from the outline, the wall on the right (shells
    counter-clockwise)."""
    chains = []
    for inner in inward(polygon, limit_mm, tolerances.branch_mm / 4):
        for ring in (inner.exterior, *inner.interiors):
            chains.append(_at_distance(shapely.get_coordinates(ring), polygon, limit_mm))
    return chains


def _at_distance(points: FloatArray, polygon: Polygon, limit_mm: float) -> FloatArray:
    """The closed chain with every point moved to exactly the distance from the outline: shapely's buffer is
    off by more than the tolerance."""
    nearest = shapely.get_coordinates(shapely.shortest_line(shapely.points(points), polygon.boundary))[1::2]
    away = points - nearest
    distance = np.hypot(away[:, 0], away[:, 1])
    moved = nearest + away * (limit_mm / np.maximum(distance, GRID_MM))[:, None]
    return np.column_stack([moved, np.full(len(moved), limit_mm)])


def _tied(part: Part, chains: list[FloatArray], limit_mm: float) -> tuple[Part, tuple[Ring, ...]]:
    """The branches' ends at the limit laid onto the wall chains, and the chains with a point there."""
    loose = [node for node in dict.fromkeys(n for pair in part.ends for n in pair) if part.nodes[node][2] == limit_mm]
    nodes = part.nodes.copy()
    lines = [LineString(chain[:, :2]) for chain in chains]
    stops: list[list[tuple[float, int]]] = [[] for _ in chains]
    for node in loose:
        place = Point(nodes[node][:2])
        distances = [line.distance(place) for line in lines]
        if not distances:
            continue
        best = int(np.argmin(distances))
        along = lines[best].project(place)
        nodes[node, :2] = shapely.get_coordinates(lines[best].interpolate(along))[0]
        stops[best].append((along, node))
    branches = []
    for branch, (a, b) in zip(part.branches, part.ends, strict=True):
        own = branch.copy()
        own[0], own[-1] = nodes[a], nodes[b]
        branches.append(own)
    rings = tuple(_with_stops(chain, sorted(found), nodes) for chain, found in zip(chains, stops, strict=True))
    return Part(nodes=nodes, branches=tuple(branches), ends=part.ends, lone=part.lone), rings


def _with_stops(chain: FloatArray, stops: list[tuple[float, int]], nodes: FloatArray) -> Ring:
    step = np.diff(chain[:, :2], axis=0)
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(step[:, 0], step[:, 1]))])
    points, rows = [chain[:1]], []
    last = 0
    for along, node in stops:
        # The first row at or beyond the stop; the stop itself becomes the row before it.
        row = int(np.searchsorted(gone, along, side="left"))
        points += [chain[last + 1 : row], nodes[node][None, :]]
        last = max(last, row - 1)
        rows.append((sum(len(part) for part in points) - 1, node))
    points.append(chain[last + 1 :])
    return Ring(points=np.concatenate(points), stops=tuple(rows))


def _fitted(runs: Sequence[Run], tolerances: Tolerances) -> list[Path]:
    """Each run as one path of lines and arcs; neighbouring stretches that are walked for the first time are
    fitted together."""
    fit_mm = tolerances.fit_mm
    fitted: list[list[Stretch]] = []
    for run in runs:
        own: list[Stretch] = []
        again = False
        for piece in run:
            if own and again == piece.again:
                own[-1] = Stretch(np.concatenate([own[-1].points, piece.points]), fit_mm, fit_mm)
            else:
                own.append(Stretch(piece.points, fit_mm, fit_mm))
            again = piece.again
        fitted.append(own)
    _ease_returns(fitted, runs)
    return fit_loosely(fitted)


def _ease_returns(fitted: list[list[Stretch]], runs: Sequence[Run]) -> None:
    """Where the way back is shorter to say a little above the groove's bottom, with a step up and a step
    down, it goes there."""
    back = []
    for i, run in enumerate(runs):
        again = [piece.again for n, piece in enumerate(run) if not n or piece.again != run[n - 1].again]
        back += [(i, j) for j, flag in enumerate(again) if flag]
    exact = [fitted[i][j] for i, j in back]
    eased = [Stretch(stretch.points, stretch.above_mm, RETURN_MM) for stretch in exact]
    for (i, j), full, less, stretch in zip(back, fit_counts(exact), fit_counts(eased), eased, strict=True):
        if less + 2 < full:
            fitted[i][j] = stretch
