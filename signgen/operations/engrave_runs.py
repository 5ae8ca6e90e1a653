"""The runs of a V-bit in one area, as chains of x, y and half width w at the surface, before any depth is
known."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

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
    # Where the area is hardly wider than the limit its wall is too thin to be walked round: there the axis
    # serves.
    hardly = widths.limit_mm + tolerances.branch_mm / 2
    part = clipped(axis, widths.least_mm, hardly)
    walls: tuple[Ring, ...] = ()
    if max((branch[:, 2].max() for branch in axis.branches), default=axis.nodes_mm[0, 2]) > hardly:
        chains = wall_chains(polygon, widths.limit_mm, tolerances)
        part, walls = _tied(part, chains, hardly, 4 * tolerances.branch_mm)
    return runs_along(_at_most(part, widths.limit_mm), walls, lift_mm)


def _at_most(part: Part, limit_mm: float) -> Part:
    """No clearance above the limit."""
    cap = np.array([np.inf, np.inf, limit_mm])
    branches = tuple(np.minimum(branch, cap) for branch in part.branches)
    return Part(nodes=np.minimum(part.nodes, cap), branches=branches, ends=part.ends, lone=part.lone)


def wall_chains(polygon: Polygon, limit_mm: float, tolerances: Tolerances) -> list[FloatArray]:
    """Closed chains (k, 3) at exactly `limit_mm` from the outline, the wall on the right (shells
    counter-clockwise)."""
    chains = []
    thin = tolerances.branch_mm / 2
    for inner in inward(polygon, limit_mm, tolerances.branch_mm / 4):
        if not inward(inner, thin, thin):
            continue
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


def _tied(part: Part, chains: Sequence[FloatArray], limit_mm: float, near_mm: float) -> tuple[Part, tuple[Ring, ...]]:
    """The branches' ends at the limit laid onto the wall chains, and the chains with a point there.

    Ends that lie further than `near_mm` from every chain stay where they are: the wall there is narrower than
    that.
    """
    loose = [node for node in dict.fromkeys(n for pair in part.ends for n in pair) if part.nodes[node][2] >= limit_mm]
    nodes = part.nodes.copy()
    stops: list[list[tuple[int, int]]] = [[] for _ in chains]
    extra: list[list[tuple[float, int]]] = [[] for _ in chains]
    lines = [LineString(chain[:, :2]) for chain in chains]
    gone = [np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(chain[:, :2], axis=0).T))]) for chain in chains]
    for node in loose:
        place = Point(nodes[node][:2])
        distances = [line.distance(place) for line in lines]
        best = int(np.argmin(distances)) if distances else -1
        if best < 0 or distances[best] > near_mm:
            continue
        along = lines[best].project(place)
        corner = int(np.argmin(np.abs(gone[best] - along)))
        if abs(gone[best][corner] - along) <= near_mm:
            nodes[node] = chains[best][corner]
            stops[best].append((corner % (len(chains[best]) - 1), node))
        else:
            nodes[node, :2] = shapely.get_coordinates(lines[best].interpolate(along))[0]
            extra[best].append((along, node))
    nodes[loose, 2] = limit_mm
    branches = []
    for branch, (a, b) in zip(part.branches, part.ends, strict=True):
        own = branch.copy()
        own[0], own[-1] = nodes[a], nodes[b]
        branches.append(own)
    rings = tuple(map(_with_stops, chains, gone, stops, extra, [nodes] * len(chains)))
    return Part(nodes=nodes, branches=tuple(branches), ends=part.ends, lone=part.lone), rings


def _with_stops(
    chain: FloatArray,
    gone: FloatArray,
    stops: list[tuple[int, int]],
    extra: list[tuple[float, int]],
    nodes: FloatArray,
) -> Ring:
    """The chain with stops at rows of its own and, inserted, at distances along it."""
    extra = sorted(extra)
    places = np.array([along for along, _ in extra])
    before = np.searchsorted(gone, places, side="left")
    rows = [(row + int(np.sum(before <= row)), node) for row, node in stops]
    rows += [(int(at) + i, node) for i, (at, (_, node)) in enumerate(zip(before, extra, strict=True))]
    points = np.insert(chain, before, nodes[[node for _, node in extra]].reshape(-1, 3), axis=0)
    return Ring(points=points, stops=tuple(sorted(rows)))


def _fitted(runs: Sequence[Run], tolerances: Tolerances) -> list[Path]:
    """Each run as one path of lines and arcs.

    Where a way back is shorter to say a little above the groove's bottom, with a step up and a step down, it
    goes there.
    """
    exact = tolerances.fit_mm
    grouped = [[list(group) for _, group in groupby(run, key=lambda piece: piece.again)] for run in runs]
    back = [(i, j) for i, groups in enumerate(grouped) for j, group in enumerate(groups) if group[0].again]
    ways = [np.concatenate([piece.points for piece in grouped[i][j]]) for i, j in back]
    close = fit_counts([Stretch(way, exact, exact) for way in ways])
    above = fit_counts([Stretch(way, exact, RETURN_MM) for way in ways])
    eased = {place for place, near, far in zip(back, close, above, strict=True) if far + 2 < near}

    fitted: list[list[Stretch]] = []
    for i, groups in enumerate(grouped):
        own: list[Stretch] = []
        # Stretches walked alike are fitted as one, so that no step is needed between them.
        for apart, numbered in groupby(enumerate(groups), key=lambda item: (i, item[0]) in eased and item[0]):
            points = np.concatenate([piece.points for _, group in numbered for piece in group])
            own.append(Stretch(points, exact, exact if apart is False else RETURN_MM))
        fitted.append(own)
    return fit_loosely(fitted)
