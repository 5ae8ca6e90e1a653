"""Closed rings to walk along: where they come nearest to a point, whole laps, stretches of them."""

from __future__ import annotations

import heapq
import math
from collections.abc import Iterator, Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from signgen.geometry.paths import FloatArray

_AT_POINT = 1e-12
"""A stretch shorter than this part of an edge is no stretch."""


class RingPlace(Struct, frozen=True):
    """A point on a ring: on edge `edge`, at `share` in [0, 1) of it."""

    edge: int
    share: float
    x_mm: float
    y_mm: float

    @property
    def xy(self) -> tuple[float, float]:
        return self.x_mm, self.y_mm


class Ring(Struct, frozen=True, kw_only=True):
    """A closed chain of straight edges, walked in the order of its points.

    points_mm: (n + 1, 2), the last equal to the first, no two neighbours equal. `level`: 0 for a wall, more for rings
    further from it.
    """

    points_mm: FloatArray
    level: int
    _step: FloatArray
    _square: FloatArray
    _gone: FloatArray
    box: tuple[float, float, float, float]

    @classmethod
    def of(cls, coordinates: ArrayLike, level: int) -> Ring:
        """From a closed list of coordinates, which may repeat points."""
        points = np.array(coordinates, dtype=np.float64)[:, :2]
        keep = np.ones(len(points), dtype=bool)
        keep[1:] = np.any(points[1:] != points[:-1], axis=1)
        points = points[keep]
        points.setflags(write=False)
        step = np.diff(points, axis=0)
        square = np.einsum("ij,ij->i", step, step)
        return cls(
            points_mm=points,
            level=level,
            _step=step,
            _square=square,
            _gone=np.concatenate([[0.0], np.cumsum(np.sqrt(square))]),
            box=(*points.min(axis=0).tolist(), *points.max(axis=0).tolist()),
        )

    @property
    def length_mm(self) -> float:
        return float(self._gone[-1])

    def nearest(self, xy: tuple[float, float]) -> tuple[RingPlace, float]:
        """The place nearest to a point, and how far it is."""
        toward = np.asarray(xy) - self.points_mm[:-1]
        share = np.clip(np.einsum("ij,ij->i", toward, self._step) / self._square, 0.0, 1.0)
        off = toward - share[:, None] * self._step
        square = np.einsum("ij,ij->i", off, off)
        edge = int(np.argmin(square))
        away = float(np.sqrt(square[edge]))
        if share[edge] == 1.0:
            return self.at_point(edge + 1), away
        x, y = self.points_mm[edge] + share[edge] * self._step[edge]
        return RingPlace(edge, float(share[edge]), float(x), float(y)), away

    def away_at_least(self, xy: tuple[float, float]) -> float:
        """A lower bound of the distance to a point: that of the ring's bounding box."""
        x, y = xy
        left, bottom, right, top = self.box
        return math.hypot(max(left - x, x - right, 0.0), max(bottom - y, y - top, 0.0))

    def at_point(self, index: int) -> RingPlace:
        """The place at one of its points."""
        x, y = self.points_mm[index]
        return RingPlace(index % (len(self.points_mm) - 1), 0.0, float(x), float(y))

    def lap(self, place: RingPlace) -> FloatArray:
        """(k, 2) once round from a place back to it, both included."""
        between = np.roll(self.points_mm[:-1], -(place.edge + 1), axis=0)
        if place.share <= _AT_POINT:
            between = between[:-1]
        elif place.share >= 1 - _AT_POINT:
            between = between[1:]
        here = np.array([place.xy])
        return np.concatenate([here, between, here])

    def between(self, start: RingPlace, end: RingPlace) -> FloatArray:
        """(k, 2) from one place to another the shorter way round, forward or backward, both included."""
        ahead = (self._distance(end) - self._distance(start)) % self.length_mm
        if ahead <= self.length_mm / 2:
            return self._forward(start, end)
        return self._forward(end, start)[::-1]

    def _distance(self, place: RingPlace) -> float:
        return float(self._gone[place.edge] + place.share * (self._gone[place.edge + 1] - self._gone[place.edge]))

    def _forward(self, start: RingPlace, end: RingPlace) -> FloatArray:
        n = len(self.points_mm) - 1
        if start.edge == end.edge and start.share <= end.share:
            return np.array([start.xy, end.xy])
        index = np.arange(start.edge + 1, start.edge + 1 + (end.edge - start.edge - 1) % n + 1) % n
        return np.concatenate([[start.xy], self.points_mm[index], [end.xy]])


def by_distance(
    rings: Sequence[Ring], among: Sequence[int], xy: tuple[float, float]
) -> Iterator[tuple[float, int, RingPlace]]:
    """Some of the rings, nearest to a point first: distance, number, and the place nearest to the point.

    Each is measured only when its bounding box could be nearest, so that taking the first few is cheap.
    """
    waiting: list[tuple[float, int, RingPlace | None]] = [(rings[i].away_at_least(xy), i, None) for i in among]
    heapq.heapify(waiting)
    while waiting:
        away, ring, place = heapq.heappop(waiting)
        if place is not None:
            yield away, ring, place
        else:
            place, away = rings[ring].nearest(xy)
            heapq.heappush(waiting, (away, ring, place))
