"""The rings of a pocket, level by level from the walls inwards, and the links that make one piece of them.

Every link lies within the area where the cutter's centre may be. From a ring to the nearest ring of the level outside
it that is so by itself: nothing else lies between. Rings of one polygon that no chain of such links joins (both sides
of a channel, an island in it) are linked across.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
import shapely
from msgspec import Struct, field
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.geometry.offsets import inward, polygons
from signgen.geometry.paths import FloatArray
from signgen.geometry.rings import Ring, RingPlace, by_distance

_SAMPLES = 16
"""Points of a ring that are tried for a link across before the exact nearest is looked for."""

_SLACK_MM = 1e-6
"""By how much a link may leave the area: noise of the arithmetic, for its ends lie on the outline."""


class Node(Struct):
    """One polygon of one level: its rings (shell first) by their number, and the polygons of the next level in it."""

    polygon: Polygon
    level: int
    rings: list[int]
    parent: int
    children: list[int] = field(default_factory=list)


class Link(Struct, frozen=True):
    """A straight way from one ring to another."""

    ring: int
    place: RingPlace
    other: int
    other_place: RingPlace


class RingTree(Struct):
    """Rings, and for each the links that leave it; links never close a circle.

    `free`: where the cutter's centre may be; `room_mm`: how far from its outline all rings but the walls are.
    """

    free: Polygon
    room_mm: float
    rings: list[Ring] = field(default_factory=list)
    nodes: list[Node] = field(default_factory=list)
    links: list[list[Link]] = field(default_factory=list)
    _group: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.free = self.free.buffer(_SLACK_MM, quad_segs=1, join_style="mitre")
        shapely.prepare(self.free)

    def is_free(self, start: tuple[float, float], end: tuple[float, float]) -> bool:
        """Whether the cutter's centre may go straight from one point to another."""
        return bool(shapely.covers(self.free, shapely.linestrings([start, end])))

    def furthest_free(self, chain: FloatArray, start: int) -> int:
        """Index of a point of a chain, the next or a later one, to which the centre may go straight from another."""
        steps = np.unique(np.minimum(start + 2 ** np.arange(1, 16), len(chain) - 1))
        lines = shapely.linestrings(np.stack([np.broadcast_to(chain[start], (len(steps), 2)), chain[steps]], axis=1))
        free = steps[shapely.covers(self.free, lines)]
        return int(free[-1]) if len(free) else start + 1

    def lines(self, rings: Iterable[int]) -> BaseGeometry:
        """Some of the rings as one geometry."""
        parts: BaseGeometry = shapely.multilinestrings([shapely.linestrings(self.rings[i].points_mm) for i in rings])
        return parts

    def add(self, polygon: Polygon, level: int, parent: int) -> int:
        """One polygon of a level; returns its number."""
        first = len(self.rings)
        rings = [Ring.of(ring.coords, level) for ring in (polygon.exterior, *polygon.interiors)]
        self.rings += rings
        self.links += [[] for _ in rings]
        self._group += range(first, len(self.rings))
        self.nodes.append(Node(polygon, level, list(range(first, len(self.rings))), parent))
        if parent >= 0:
            self.nodes[parent].children.append(len(self.nodes) - 1)
        return len(self.nodes) - 1

    def root_of(self, ring: int) -> int:
        """The representative of all rings that links join with this one."""
        while self._group[ring] != ring:
            self._group[ring] = self._group[self._group[ring]]
            ring = self._group[ring]
        return ring

    def join(self, ring: int, place: RingPlace, other: int, other_place: RingPlace) -> None:
        self.links[ring].append(Link(ring, place, other, other_place))
        self.links[other].append(Link(other, other_place, ring, place))
        self._group[self.root_of(ring)] = self.root_of(other)


def ring_tree(outermost: Polygon, first_step_mm: float, step_mm: float, tolerance_mm: float) -> RingTree:
    """Levels of one polygon: itself (exactly), then `first_step_mm` further in, then by `step_mm`, linked."""
    tree = RingTree(outermost, first_step_mm - 2 * tolerance_mm)
    grow(tree, tree.add(outermost, 0, -1), first_step_mm, step_mm, tolerance_mm)
    return tree


def grow(tree: RingTree, node: int, first_step_mm: float, step_mm: float, tolerance_mm: float) -> None:
    """All levels inside one polygon of the tree."""
    waiting = [(node, first_step_mm)]
    while waiting:
        at, step = waiting.pop()
        parent = tree.nodes[at]
        outline = parent.polygon if parent.level else _simpler(parent.polygon, tolerance_mm)
        for part in inward(outline, step, tolerance_mm, roughly=True):
            waiting.append((tree.add(_simpler(part, tolerance_mm), parent.level + 1, at), step_mm))


def _simpler(polygon: Polygon, tolerance_mm: float) -> Polygon:
    """The polygon with fewer points, as many rings and an outline within the tolerance."""
    quick = shapely.simplify(polygon, tolerance_mm, preserve_topology=False)
    same = isinstance(quick, Polygon) and len(quick.interiors) == len(polygon.interiors)
    if same and not quick.is_empty and quick.is_valid:
        return polygons(quick)[0]
    return polygons(polygon.simplify(tolerance_mm))[0]


def link_all(tree: RingTree) -> None:
    """Links between levels, then across where rings are still apart, innermost first."""
    for node in tree.nodes:
        if node.parent >= 0:
            for ring in node.rings:
                _link_outwards(tree, ring, tree.nodes[node.parent].rings)
    for node in sorted(tree.nodes, key=lambda node: -node.level):
        _link_across(tree, node)


def _link_outwards(tree: RingTree, ring: int, around: Sequence[int]) -> None:
    place = tree.rings[ring].at_point(0)
    _, other, there = next(by_distance(tree.rings, around, place.xy))
    tree.join(ring, place, other, there)


def _link_across(tree: RingTree, node: Node) -> None:
    """Join all rings of a polygon, directly or over the rings of the next level in it, where that is possible."""
    if len(node.rings) == 1:
        return
    near = node.rings + [ring for child in node.children for ring in tree.nodes[child].rings]
    for ring in node.rings[1:]:
        if tree.root_of(ring) != tree.root_of(node.rings[0]):
            _link_nearest(tree, ring, near)
    for ring in node.rings[1:]:
        if tree.root_of(ring) != tree.root_of(node.rings[0]):
            _link_exactly(tree, ring, near)


def _link_nearest(tree: RingTree, ring: int, near: Sequence[int]) -> None:
    """The shortest free link from some points of a ring to rings that it is not yet joined with."""
    mine = tree.rings[ring]
    candidates = [other for other in near if tree.root_of(other) != tree.root_of(ring)]
    found = []
    for index in np.unique(np.linspace(0, len(mine.points_mm) - 2, _SAMPLES).astype(int)):
        place = mine.at_point(int(index))
        found.append((*next(by_distance(tree.rings, candidates, place.xy)), place))
    for _, other, there, place in sorted(found, key=lambda each: each[0]):
        if tree.is_free(place.xy, there.xy):
            tree.join(ring, place, other, there)
            return


def _link_exactly(tree: RingTree, ring: int, near: Sequence[int]) -> None:
    """The shortest link of all between what this ring is joined with and the rest."""
    here = [other for other in near if tree.root_of(other) == tree.root_of(ring)]
    rest = [other for other in near if tree.root_of(other) != tree.root_of(ring)]
    shortest = shapely.shortest_line(tree.lines(here), tree.lines(rest))
    (x0, y0), (x1, y1) = shapely.get_coordinates(shortest).tolist()
    if tree.is_free((x0, y0), (x1, y1)):
        _, start, place = next(by_distance(tree.rings, here, (x0, y0)))
        _, end, other_place = next(by_distance(tree.rings, rest, (x1, y1)))
        tree.join(start, place, end, other_place)
