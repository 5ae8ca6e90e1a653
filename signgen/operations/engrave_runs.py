"""The runs of a V-bit in one area, as chains of x, y and half width w at the surface, before any depth is
known."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from shapely.geometry import LineString, Point, Polygon

from signgen.geometry.arcs import fit_all
from signgen.geometry.clip import Part, clipped
from signgen.geometry.medial import grid_rings, medial_axis
from signgen.geometry.offsets import inward
from signgen.geometry.paths import FloatArray, Path, joined
from signgen.geometry.walk import Piece, Ring, Run, runs_along
from signgen.tolerances import GRID_MM, Tolerances


@dataclass(frozen=True, slots=True, kw_only=True)
class Widths:
    """What a V-bit can do in an area: `least_mm`, its half width at the surface when its tip touches it (half
    the tip), and `limit_mm`, the half width at the greatest depth; beyond that the floor is flat."""

    least_mm: float
    limit_mm: float


def shape_runs(polygon: Polygon, widths: Widths, lift_mm: float, tolerances: Tolerances) -> tuple[Path, ...]:
    """Fitted runs over a polygon; the third coordinate of each path is the half width w at the surface, at
    most `limit_mm`.

    Equal shapes give equal runs wherever they lie.
    """
    corner, rings = grid_rings(polygon)
    return tuple(path.moved(*corner) for path in _runs_of_rings(rings, widths, lift_mm, tolerances))


@lru_cache(maxsize=512)
def _runs_of_rings(
    rings: tuple[bytes, ...], widths: Widths, lift_mm: float, tolerances: Tolerances
) -> tuple[Path, ...]:
    arrays = [np.frombuffer(ring, np.int64).reshape(-1, 2) * GRID_MM for ring in rings]
    polygon = Polygon(arrays[0], arrays[1:])
    axis = medial_axis(polygon, tolerances)
    part = clipped(axis, widths.least_mm, widths.limit_mm)
    walls: tuple[Ring, ...] = ()
    if axis.nodes_mm[:, 2].max(initial=0.0) > widths.limit_mm or any(
        branch[:, 2].max() > widths.limit_mm for branch in axis.branches
    ):
        part, walls = _tied(part, wall_chains(polygon, widths.limit_mm, tolerances), widths.limit_mm)
    return _fitted(runs_along(part, walls, lift_mm), tolerances)


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


def _fitted(runs: tuple[Run, ...], tolerances: Tolerances) -> tuple[Path, ...]:
    """Each run as one path of lines and arcs; neighbouring stretches that are walked for the first time are
    fitted together."""
    chains: list[FloatArray] = []
    counts = []
    for run in runs:
        parts: list[list[Piece]] = []
        for piece in run:
            if parts and parts[-1][-1].again == piece.again:
                parts[-1].append(piece)
            else:
                parts.append([piece])
        chains += [np.concatenate([piece.points for piece in part]) for part in parts]
        counts.append(len(parts))
    paths = iter(fit_all(chains, tolerances.fit_mm))
    return tuple(joined([next(paths) for _ in range(count)]) for count in counts)
