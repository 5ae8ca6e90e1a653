"""The exact medial axis of a polygon with its clearance, from the segment Voronoi diagram."""

from __future__ import annotations

import contextlib
import os
from collections import deque
from collections.abc import Sequence
from functools import lru_cache
from threading import Thread
from typing import cast

import numpy as np
import shapely
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon

from signgen.geometry.branches import branches_of
from signgen.geometry.paths import FloatArray, frozen
from signgen.geometry.prune import pruned
from signgen.geometry.skeleton import OpenDiagramError, Skeleton, inner_skeleton
from signgen.geometry.voronoi import IntArray
from signgen.tolerances import GRID_MM, Tolerances

_TURNS_DEG = (0.0, 0.37, -1.13, 2.71, 11.3)
"""How far the polygon is turned before each attempt at its diagram: the first good one counts."""

_WORTH_THREADS = 16 * 400
"""Bytes of rings, 16 for each segment: below them starting threads costs more than they save."""


class MedialAxis(Struct, frozen=True, kw_only=True):
    """Where discs that touch the outline at least twice have their centres: a graph.

    nodes_mm (n, 3): x, y and clearance r of its nodes (ends, forks, and one point of each loop that has
    neither). branches: one array (k, 3) for each branch, k >= 2, from node ends[i, 0] to node ends[i, 1],
    both included. ends (b, 2). A shape that is round within the tolerance has a node and no branch.
    """

    nodes_mm: FloatArray
    branches: tuple[FloatArray, ...]
    ends: IntArray

    @property
    def widest_mm(self) -> float:
        """The greatest clearance anywhere."""
        return max(float(rows[:, 2].max()) for rows in (self.nodes_mm, *self.branches))

    def moved(self, dx_mm: float, dy_mm: float) -> MedialAxis:
        """The axis of the shape shifted as a whole."""
        shift = np.array([dx_mm, dy_mm, 0.0])
        return MedialAxis(
            nodes_mm=cast(FloatArray, frozen(self.nodes_mm + shift)),
            branches=tuple(cast(FloatArray, frozen(branch + shift)) for branch in self.branches),
            ends=self.ends,
        )


def medial_axis(polygon: Polygon, tolerances: Tolerances) -> MedialAxis:
    """The medial axis of a polygon, less what `tolerances.prune_mm` allows to be pruned from its ends.

    The discs along the branches cover the polygon but for a rim of at most pruning + branch tolerance, and stick
    out by no more than the branch tolerance. A polygon that falls apart on the diagram's grid has the axes of
    its parts.

    Raises: ValueError for an empty or invalid polygon; ArithmeticError when no diagram of it is sound (not
    seen so far).
    """
    if polygon.is_empty or not polygon.is_valid:
        raise ValueError(f"no medial axis of an invalid polygon: {shapely.is_valid_reason(polygon)}")
    corner, rings = grid_rings(polygon)
    return _axis_of_rings(rings, tolerances).moved(*corner)


def medial_axes(polygons: Sequence[Polygon], tolerances: Tolerances) -> list[MedialAxis]:
    """The medial axis of each polygon.

    Those not met before are found side by side, the largest first: Boost, which takes half of the time, leaves the
    interpreter to others meanwhile. Raises: as `medial_axis`.
    """
    new = {rings: sum(map(len, rings)) for rings in (grid_rings(polygon)[1] for polygon in polygons)}
    todo = deque(sorted(new, key=lambda rings: -new[rings]))

    def find() -> None:
        # What goes wrong goes wrong again below, where the caller hears of it.
        with contextlib.suppress(IndexError, ArithmeticError, MemoryError):
            while True:
                _axis_of_rings(todo.popleft(), tolerances)

    if sum(new.values()) > _WORTH_THREADS:
        helpers: list[Thread] = []
        for _ in range(min(len(new), _cores()) - 1):
            helper = Thread(target=find)
            try:
                helper.start()
            except RuntimeError:  # no room for another: one does it alone
                break
            helpers.append(helper)
        find()
        for helper in helpers:
            helper.join()
    return [medial_axis(polygon, tolerances) for polygon in polygons]


def _cores() -> int:
    """Of this machine, as far as this process may use them: OMP_NUM_THREADS (OpenMP's variable for how many threads) is
    1 for the workers of a batch, which fill the cores by themselves."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    told = os.environ.get("OMP_NUM_THREADS", "")
    return min(cores, int(told)) if told.isdigit() and int(told) else cores


@lru_cache(maxsize=256)
def grid_rings(polygon: Polygon) -> tuple[tuple[float, float], tuple[bytes, ...]]:
    """The polygon's lower left corner, and its rings relative to that in grid units (int64 bytes, inside on
    the left).

    Each ring starts at its least point, so that the same shape anywhere gives the same rings.
    """
    min_x, min_y, _, _ = polygon.bounds
    rings = []
    for ring, sign in ((polygon.exterior, 1), *((hole, -1) for hole in polygon.interiors)):
        points = np.rint((shapely.get_coordinates(ring)[:-1] - (min_x, min_y)) / GRID_MM).astype(np.int64)
        points = points[np.any(points != np.roll(points, 1, axis=0), axis=1)]
        if ring.is_ccw != (sign > 0):
            points = points[::-1]
        if len(points) > 2:
            least = np.lexsort((points[:, 1], points[:, 0]))[0]
            rings.append(np.roll(points, -least, axis=0).tobytes())
    return (min_x, min_y), (*rings[:1], *sorted(rings[1:]))


@lru_cache(maxsize=512)
def _axis_of_rings(rings: tuple[bytes, ...], tolerances: Tolerances) -> MedialAxis:
    arrays = [np.frombuffer(ring, np.int64).reshape(-1, 2) for ring in rings]
    # The library gives a wrong diagram for a polygon that touches itself, so this cannot be left out.
    snapped = Polygon(arrays[0], arrays[1:])
    if snapped.is_valid:
        return _sound_axis(arrays, tolerances)
    parts = shapely.set_precision(snapped.buffer(0), 1.0)
    whole = [part for part in (parts.geoms if isinstance(parts, MultiPolygon) else [parts]) if part.area > 0]
    return _together([_sound_axis(_int_rings(part), tolerances) for part in whole])


def _int_rings(polygon: Polygon) -> list[IntArray]:
    turned = shapely.orient_polygons(polygon)
    return [
        np.rint(shapely.get_coordinates(ring)[:-1]).astype(np.int64) for ring in (turned.exterior, *turned.interiors)
    ]


def _sound_axis(rings: list[IntArray], tolerances: Tolerances) -> MedialAxis:
    points = np.concatenate(rings)
    firsts = np.cumsum([0, *(len(ring) for ring in rings)])
    following = np.arange(1, len(points) + 1)
    following[firsts[1:] - 1] = firsts[:-1]
    for turn_deg in _TURNS_DEG:
        cos, sin = np.cos(np.radians(turn_deg)), np.sin(np.radians(turn_deg))
        turn = np.array([[cos, -sin], [sin, cos]])
        try:
            skeleton = inner_skeleton(np.rint(points @ turn.T).astype(np.int64), following)
            _refuse_defects(skeleton, holes=len(rings) - 1)
        except OpenDiagramError:
            continue
        axis = _pruned_axis(skeleton, tolerances)
        return axis if turn_deg == 0 else _turned(axis, turn)
    raise ArithmeticError(f"no sound Voronoi diagram of a polygon with {len(points)} points")


def _refuse_defects(skeleton: Skeleton, holes: int) -> None:
    """The axis shrinks from the polygon, so it is connected and has as many loops as there are holes: nodes -
    edges = 1 - holes."""
    if len(skeleton.nodes) - len(skeleton.ends) != 1 - holes:
        raise OpenDiagramError(f"{len(skeleton.nodes)} nodes and {len(skeleton.ends)} edges with {holes} holes")


def _pruned_axis(skeleton: Skeleton, tolerances: Tolerances) -> MedialAxis:
    nodes, branches, ends = branches_of(skeleton, _keep(skeleton, tolerances), tolerances.branch_mm / GRID_MM)
    return MedialAxis(
        nodes_mm=cast(FloatArray, frozen(nodes * GRID_MM)),
        branches=tuple(cast(FloatArray, frozen(branch * GRID_MM)) for branch in branches),
        ends=cast(IntArray, frozen(ends)),
    )


def _keep(skeleton: Skeleton, tolerances: Tolerances) -> NDArray[np.bool_]:
    gap = np.diff(skeleton.nodes[skeleton.ends], axis=1)[:, 0]
    length = np.hypot(gap[:, 0], gap[:, 1])
    bow = np.flatnonzero(skeleton.bent == 1)
    if len(bow):
        # Arc length of y = (x^2 + p^2) / (2 p), p twice the least clearance: s(x) = (x sqrt(1 + (x / p)^2) +
        # p asinh(x / p)) / 2.
        p = 2 * skeleton.reach[bow][:, None]
        away = skeleton.nodes[skeleton.ends[bow], :2] - skeleton.focus[bow][:, None]
        x = np.einsum("ijk,ik->ij", away, skeleton.along[bow])
        s = (x * np.sqrt(1 + (x / p) ** 2) + p * np.arcsinh(x / p)) / 2
        length[bow] = np.abs(s[:, 1] - s[:, 0])
    return pruned(skeleton.nodes[:, 2], skeleton.ends, length, tolerances.prune_mm / GRID_MM)


def _turned(axis: MedialAxis, turn: FloatArray) -> MedialAxis:
    """The axis turned back from where `turn` had brought it."""

    def back(rows: FloatArray) -> FloatArray:
        return cast(FloatArray, frozen(np.column_stack([rows[:, :2] @ turn, rows[:, 2]])))

    return MedialAxis(
        nodes_mm=back(axis.nodes_mm), branches=tuple(back(branch) for branch in axis.branches), ends=axis.ends
    )


def _together(axes: list[MedialAxis]) -> MedialAxis:
    shifts = np.cumsum([0, *(len(axis.nodes_mm) for axis in axes)])
    return MedialAxis(
        nodes_mm=np.concatenate([np.zeros((0, 3)), *(axis.nodes_mm for axis in axes)]),
        branches=tuple(branch for axis in axes for branch in axis.branches),
        ends=np.concatenate(
            [np.zeros((0, 2), np.int64), *(axis.ends + shift for axis, shift in zip(axes, shifts, strict=False))]
        ),
    )
