"""Walking the rings of a pocket: in which order, and how to get from one to the next.

A ring is ready when the rings inside it have been cut; walls are ready when everything else has been. From the end of
one lap the walk goes on to the nearest ready ring that can be reached in a straight line. If there is none it follows
the tree of links, cutting corners where it may; and if that way would be long, it lifts.
"""

from __future__ import annotations

import math
from collections import deque

import numpy as np
import shapely
from msgspec import Struct, field

from signgen.geometry.paths import FloatArray
from signgen.geometry.pocket_tree import Link, RingTree
from signgen.geometry.rings import RingPlace, by_distance

_SAME_MM = 1e-9
_STRAIGHT_TRIES = 8
"""Nearest ready rings that are tried for a straight way before the tree is followed."""


class WalkedRun(Struct):
    """A run while it grows: where the cutter goes down, whether in cleared floor, and its chains so far.

    A chain is (k, 2) points, and the level of the ring that it goes round, or None for a way between rings; each starts
    where the last one ends.
    """

    start: tuple[float, float]
    in_the_clear: bool
    chains: list[tuple[FloatArray, int | None]] = field(default_factory=list)

    def add(self, points: FloatArray, level: int | None) -> None:
        """Go on along (k, 2) points, the first of which is where the run is."""
        keep = np.ones(len(points), dtype=bool)
        keep[1:] = np.any(np.abs(np.diff(points, axis=0)) > _SAME_MM, axis=1)
        if keep.sum() > 1:
            self.chains.append((points[keep], level))


def walk(tree: RingTree, walk_mm: float) -> list[WalkedRun]:
    """Runs that lap every ring once, each going on for as long as the next way is not longer than `walk_mm`."""
    return _Walk(tree, walk_mm).all_runs()


class _Walk:
    """A walk as far as it has come: on which ring, where, and which rings are ready."""

    def __init__(self, tree: RingTree, walk_mm: float) -> None:
        self.tree, self.walk_mm = tree, walk_mm
        self.runs: list[WalkedRun] = []
        self.cut = [False] * len(tree.rings)
        self.node_of = {ring: node for node in tree.nodes for ring in node.rings}
        self.walls = [i for i, ring in enumerate(tree.rings) if ring.level == 0]
        self.inner_left = len(tree.rings) - len(self.walls)
        self.awaits = {i: self._inside(i) for i, ring in enumerate(tree.rings) if ring.level > 0}
        self.outside: dict[int, list[int]] = {}
        for ring, inside in self.awaits.items():
            for inner in inside:
                self.outside.setdefault(inner, []).append(ring)
        self.ready = [ring for ring, inside in self.awaits.items() if not inside] or list(self.walls)

    def _inside(self, ring: int) -> set[int]:
        """Rings to be cut before this one: those of the next level linked to it, or if there are none, all in it."""
        rings = self.tree.rings
        linked = {link.other for link in self.tree.links[ring] if rings[link.other].level > rings[ring].level}
        return linked or {other for child in self.node_of[ring].children for other in self.tree.nodes[child].rings}

    def all_runs(self) -> list[WalkedRun]:
        self._enter(max(self.ready, key=lambda ring: self.tree.rings[ring].level))
        while self.ready:
            ring, straight = self._nearest_ready()
            if straight is not None:
                self._go_on(np.array([self.here.xy, straight.xy]), ring, straight)
                continue
            way, there = self._way(ring)
            if 0 < _length(way) <= self.walk_mm:
                self._go_on(way, ring, there)
            else:
                self._lift_to(ring)
        return self.runs

    def _enter(self, ring: int) -> None:
        """A new run that goes down in the middle of what this ring goes round, or on the ring itself."""
        circle = shapely.get_coordinates(shapely.maximum_inscribed_circle(self.node_of[ring].polygon))
        middle = (float(circle[0, 0]), float(circle[0, 1]))
        place, _ = self.tree.rings[ring].nearest(middle)
        start = middle if self.tree.is_free(middle, place.xy) else place.xy
        self.runs.append(WalkedRun(start, False))
        self._lap(ring, place)

    def _lift_to(self, ring: int) -> None:
        """A new run for a ring out of reach: from a ring beside it that has been cut, if there is one."""
        link = next((link for link in self.tree.links[ring] if self.cut[link.other]), None)
        if link is None:
            self._enter(ring)
        else:
            self.runs.append(WalkedRun(link.other_place.xy, True))
            self._go_on(np.array([link.other_place.xy, link.place.xy]), ring, link.place)

    def _go_on(self, way: FloatArray, ring: int, there: RingPlace) -> None:
        self.runs[-1].add(way, None)
        self._lap(ring, there)

    def _lap(self, ring: int, place: RingPlace) -> None:
        self.runs[-1].add(self.tree.rings[ring].lap(place), self.tree.rings[ring].level)
        self._arrive(ring, place)

    def _arrive(self, ring: int, place: RingPlace) -> None:
        """Note that a ring has been lapped from this place."""
        self.at, self.here = ring, place
        self.cut[ring] = True
        self.ready.remove(ring)
        if self.tree.rings[ring].level == 0:
            return
        self.inner_left -= 1
        for outer in self.outside.get(ring, []):
            self.awaits[outer].discard(ring)
            if not self.awaits[outer]:
                self.ready.append(outer)
        if self.inner_left == 0:
            self.ready = list(self.walls)

    def _nearest_ready(self) -> tuple[int, RingPlace | None]:
        """The nearest ready ring in a straight line, and where on it; or the nearest one, and None."""
        first = -1
        for tries, (away, ring, place) in enumerate(by_distance(self.tree.rings, self.ready, self.here.xy)):
            first = ring if first < 0 else first
            if away > self.walk_mm or tries == _STRAIGHT_TRIES:
                break
            if self.tree.is_free(self.here.xy, place.xy):
                return ring, place
        return first, None

    def _way(self, to: int) -> tuple[FloatArray, RingPlace]:
        """How to get to another ring along the tree, cutting corners, and where it arrives; broken off when it
        gets longer than `walk_mm`, empty when no links lead there."""
        links = self._links_to(to)
        if not links:
            return np.empty((0, 2)), self.here
        parts, place = [], self.here
        for link in links:
            across, _ = self.tree.rings[link.other].nearest(place.xy)
            if self.tree.is_free(place.xy, across.xy):
                parts.append(np.array([place.xy]))
                place = across
            else:
                parts.append(self._along(link.ring, place, link.place))
                place = link.other_place
        way = np.concatenate([*parts, [place.xy]])
        stations, gone = [0], 0.0
        while stations[-1] < len(way) - 1 and gone <= self.walk_mm:
            stations.append(self.tree.furthest_free(way, stations[-1]))
            gone += math.dist(way[stations[-2]], way[stations[-1]])
        return way[stations], place

    def _along(self, ring: int, start: RingPlace, end: RingPlace) -> FloatArray:
        """From place to place along a ring. Away from walls corners may be cut: there is room on both sides."""
        points = self.tree.rings[ring].between(start, end)
        if self.tree.rings[ring].level == 0 or len(points) < 3:
            return points
        return np.asarray(shapely.simplify(shapely.linestrings(points), self.tree.room_mm / 2).coords)

    def _links_to(self, to: int) -> list[Link]:
        """The chain of links from where the walk is to another ring; () when there is none."""
        came: dict[int, Link | None] = {self.at: None}
        waiting = deque([self.at])
        while waiting and to not in came:
            for onward in self.tree.links[waiting.popleft()]:
                if onward.other not in came:
                    came[onward.other] = onward
                    waiting.append(onward.other)
        chain: list[Link] = []
        while (link := came.get(to)) is not None:
            chain.append(link)
            to = link.ring
        return chain[::-1]


def _length(way: FloatArray) -> float:
    return float(np.hypot(*np.diff(way, axis=0).T).sum())
