"""Walls at the depth limit: closed chains round the floor, tied to the branches that end there and to each
other."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import LineString, Point, Polygon

from signgen.geometry.clip import AxisPart
from signgen.geometry.offsets import inward
from signgen.geometry.paths import FloatArray
from signgen.geometry.walk import WalkRing
from signgen.tolerances import GRID_MM, Tolerances


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


def tied(
    part: AxisPart, chains: Sequence[FloatArray], limit_mm: float, near_mm: float
) -> tuple[AxisPart, tuple[WalkRing, ...]]:
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
    return AxisPart(nodes=nodes, branches=tuple(branches), ends=part.ends, lone=part.lone), rings


def _with_stops(
    chain: FloatArray,
    gone: FloatArray,
    stops: list[tuple[int, int]],
    extra: list[tuple[float, int]],
    nodes: FloatArray,
) -> WalkRing:
    """The chain with stops at rows of its own and, inserted, at distances along it."""
    extra = sorted(extra)
    places = np.array([along for along, _ in extra])
    before = np.searchsorted(gone, places, side="left")
    rows = [(row + int(np.sum(before <= row)), node) for row, node in stops]
    rows += [(int(at) + i, node) for i, (at, (_, node)) in enumerate(zip(before, extra, strict=True))]
    points = np.insert(chain, before, nodes[[node for _, node in extra]].reshape(-1, 3), axis=0)
    return WalkRing(points=points, stops=tuple(sorted(rows)))


def linked(part: AxisPart, rings: Sequence[WalkRing], limit_mm: float) -> tuple[AxisPart, tuple[WalkRing, ...]]:
    """Rings of one floor joined by straight ways across it, the shortest that reach them all.

    A ring inside another that is nearest to it has no third one between them, so these ways stay on the
    floor.
    """
    floors = [Polygon(ring.points[:, :2]) for ring in rings]
    shells = [i for i, ring in enumerate(rings) if shapely.is_ccw(shapely.linearrings(ring.points[:, :2]))]
    nodes, branches, ends = list(part.nodes), list(part.branches), list(part.ends)
    chains = [ring.points for ring in rings]
    stops = [list(ring.stops) for ring in rings]
    for shell in shells:
        inner = [i for i in range(len(rings)) if i not in shells and floors[shell].contains(floors[i])]
        joined, waiting = [shell], inner
        while waiting:
            pairs = [(shapely.distance(floors[a].exterior, floors[b].exterior), a, b) for a in joined for b in waiting]
            _, a, b = min(pairs)
            way = shapely.get_coordinates(shapely.shortest_line(floors[a].exterior, floors[b].exterior))
            found = []
            for ring, place in ((a, way[0]), (b, way[1])):
                row, chains[ring], stops[ring] = _stop_at(chains[ring], stops[ring], place, limit_mm)
                node = next((node for at, node in stops[ring] if at == row), len(nodes))
                if node == len(nodes):
                    nodes.append(chains[ring][row])
                    stops[ring] = sorted([*stops[ring], (row, node)])
                found.append(node)
            branches.append(np.array([nodes[found[0]], nodes[found[1]]]))
            ends.append((found[0], found[1]))
            joined.append(b)
            waiting = [i for i in waiting if i != b]
    whole = AxisPart(nodes=np.array(nodes).reshape(-1, 3), branches=tuple(branches), ends=tuple(ends), lone=part.lone)
    return whole, tuple(WalkRing(points=chain, stops=tuple(own)) for chain, own in zip(chains, stops, strict=True))


def _stop_at(
    chain: FloatArray, stops: list[tuple[int, int]], place: FloatArray, limit_mm: float
) -> tuple[int, FloatArray, list[tuple[int, int]]]:
    """The row of a chain at a place on it, inserted if there is none: (row, chain, stops moved along)."""
    closing = len(chain) - 1
    away = np.hypot(*(chain[:, :2] - place).T)
    nearest = int(np.argmin(away))
    if away[nearest] <= GRID_MM:
        return nearest % closing, chain, stops
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(chain[:, :2], axis=0).T))])
    row = int(np.searchsorted(gone, LineString(chain[:, :2]).project(Point(place))))
    row = min(max(row, 1), closing)
    moved = [(at + (at >= row), node) for at, node in stops]
    return row, np.insert(chain, row, [*place, limit_mm], axis=0), moved
