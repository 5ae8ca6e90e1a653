"""Many small drawings filled at once, as a face's glyphs are: the arithmetic of all in one go.

What `nesting.fill_nonzero` says of one drawing holds here for each. Contours that are simple and meet nowhere, as those
of most glyphs, are nested together; those that are simple and overlap, as strokes that were drawn one over the other,
are united together; a drawing with any other goes to `fill_nonzero` by itself.
"""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon

from signgen.geometry.nesting import fill_crossing, fill_nonzero
from signgen.geometry.offsets import Area, area_of
from signgen.geometry.paths import FloatArray

IntArray = NDArray[np.int64]

MOST_PAIRED = 200
"""Contours of one drawing that are compared each with each; above it a tree in `fill_nonzero` is quicker."""


def fill_each(points: FloatArray, starts: IntArray, owners: IntArray, count: int) -> tuple[Area, ...]:
    """The areas that `count` drawings fill by the non-zero rule; see `fill_nonzero`.

    points: (m, 2) of all contours one after the other, without repeated first points. starts: (k + 1,) where each
    contour starts, and m. owners: (k,) the drawing of each contour, ascending.

    Raises: ValueError for a coordinate that is not a finite number.
    """
    if not np.isfinite(points).all():
        raise ValueError("a contour has a coordinate that is not a finite number")
    points, starts, owners = _without_repeats(points, starts, owners)
    if not len(owners):
        return (MultiPolygon(),) * count
    loops = shapely.linearrings(points, indices=np.repeat(np.arange(len(owners)), np.diff(starts)))
    odd = np.bincount(owners, minlength=count) > MOST_PAIRED
    odd[owners[~shapely.is_simple(loops)]] = True
    one, other = _pairs(loops, owners, odd)
    once = one < other
    meet = np.zeros(len(one), dtype=bool)
    meet[once] = shapely.intersects(loops[one[once]], loops[other[once]])
    crossed = np.zeros(count, dtype=bool)
    crossed[owners[one[meet]]] = True

    areas: list[Area] = [MultiPolygon()] * count
    for drawing, parts in _nested(loops, owners, one, other, odd | crossed).items():
        areas[drawing] = area_of(tuple(parts))
    for drawing, parts in _united(loops, owners, one, other, meet, crossed).items():
        areas[drawing] = area_of(tuple(parts))
        crossed[drawing] = False
    odd |= crossed
    for drawing in np.flatnonzero(odd).tolist():
        mine = np.flatnonzero(owners == drawing)
        contours = [points[starts[i] : starts[i + 1]] for i in mine]
        # Those that are odd for their number alone may cross nowhere, which `fill_nonzero` finds out.
        areas[drawing] = fill_nonzero(contours) if len(mine) > MOST_PAIRED else fill_crossing(contours, loops[mine])
    return tuple(areas)


def _without_repeats(points: FloatArray, starts: IntArray, owners: IntArray) -> tuple[FloatArray, IntArray, IntArray]:
    """Contours without points equal to the one before, those with fewer than three points left out."""
    sizes = np.diff(starts)
    before = np.arange(len(points)) - 1
    before[starts[:-1][sizes > 0]] = starts[1:][sizes > 0] - 1
    kept = np.any(points != points[before], axis=1)
    contour = np.repeat(np.arange(len(sizes)), sizes)
    left = np.bincount(contour[kept], minlength=len(sizes))
    solid = left >= 3
    kept &= solid[contour]
    return points[kept], np.concatenate([[0], np.cumsum(left[solid])]), owners[solid]


def _pairs(loops: NDArray[np.object_], owners: IntArray, odd: NDArray[np.bool_]) -> tuple[IntArray, IntArray]:
    """Pairs (one, other) of loops of one drawing, not odd, where the boxes of both meet; both ways round."""
    first = np.searchsorted(owners, owners, side="left")
    size = np.where(odd[owners], 0, np.searchsorted(owners, owners, side="right") - first)
    one = np.repeat(np.arange(len(owners)), size)
    other = np.arange(len(one)) - np.repeat(np.cumsum(size) - size, size) + first[one]  # counts up from the first
    x0, y0, x1, y1 = shapely.bounds(loops).T
    meet = (x0[one] <= x1[other]) & (x0[other] <= x1[one]) & (y0[one] <= y1[other]) & (y0[other] <= y1[one])
    meet &= one != other
    return one[meet], other[meet]


def _nested(
    loops: NDArray[np.object_], owners: IntArray, one: IntArray, other: IntArray, odd: NDArray[np.bool_]
) -> dict[int, list[Polygon]]:
    """The polygons of every drawing that is not odd, by counting which loops lie in which."""
    usual = ~odd[owners[one]]
    one, other = one[usual], other[usual]
    discs = shapely.polygons(loops)
    within = shapely.contains_properly(discs[one], discs[other])
    outer, inner = one[within], other[within]
    ccw = shapely.is_ccw(loops)
    turn = np.where(ccw, 1, -1)
    outside = np.zeros(len(loops), dtype=np.int64)  # winding number just outside each loop
    np.add.at(outside, inner, turn[outer])
    inside = outside + turn
    is_shell = (inside != 0) & (outside == 0) & ~odd[owners]
    is_hole = (inside == 0) & (outside != 0) & ~odd[owners]

    turned = np.where(is_shell & ~ccw | is_hole & ccw, shapely.reverse(loops), loops)
    sizes = shapely.area(discs)
    holes: dict[int, list[object]] = {int(shell): [] for shell in np.flatnonzero(is_shell)}
    parent: dict[int, int] = {}
    for shell, hole in zip(outer.tolist(), inner.tolist(), strict=True):
        if is_shell[shell] and is_hole[hole] and (hole not in parent or sizes[shell] < sizes[parent[hole]]):
            parent[hole] = shell
    for hole, shell in parent.items():
        holes[shell].append(turned[hole])
    found: dict[int, list[Polygon]] = {}
    for shell, inward in holes.items():
        found.setdefault(int(owners[shell]), []).append(shapely.polygons(turned[shell], inward or None))
    return found


def _united(
    loops: NDArray[np.object_],
    owners: IntArray,
    one: IntArray,
    other: IntArray,
    meet: NDArray[np.bool_],
    crossed: NDArray[np.bool_],
) -> dict[int, list[Polygon]]:
    """The polygons of those crossed drawings whose holes each lie inside a shell and away from that shell's others.

    Such a drawing is a sum of shells without their own holes, none of which winds less than 0 anywhere: the winding
    number is not 0 where any of them lies, and their union is what they fill.
    """
    mine = crossed[owners[one]]
    one, other, meet = one[mine], other[mine], meet[mine]
    discs = shapely.polygons(loops)
    sizes = shapely.area(discs)
    ccw = shapely.is_ccw(loops)
    largest = np.full(len(crossed), -1, dtype=np.int64)
    ascending = np.argsort(sizes, kind="stable")
    largest[owners[ascending]] = ascending  # the last one written, which is the largest, stays
    is_hole = ccw != ccw[largest[owners]]  # shells turn as the largest contour does, TrueType's and CFF's alike

    around = np.flatnonzero(is_hole[other] & ~is_hole[one])
    around = around[shapely.contains_properly(discs[one[around]], discs[other[around]])]
    around = around[np.argsort(-sizes[one[around]], kind="stable")]
    parent = np.full(len(loops), -1, dtype=np.int64)
    parent[other[around]] = one[around]  # the smallest shell around it
    siblings = np.flatnonzero(is_hole[one] & is_hole[other] & (parent[one] == parent[other]))
    nested = shapely.contains_properly(discs[one[siblings]], discs[other[siblings]])
    unsure = np.zeros(len(crossed), dtype=bool)
    unsure[owners[is_hole & (parent < 0)]] = True
    unsure[owners[one[siblings[meet[siblings] | nested]]]] = True

    holes: dict[int, list[object]] = {}
    for hole in np.flatnonzero(is_hole & (parent >= 0)).tolist():
        holes.setdefault(int(parent[hole]), []).append(loops[hole])
    sure = crossed & ~unsure
    drawings = np.flatnonzero(sure)
    if not len(drawings):
        return {}
    shells = np.flatnonzero(~is_hole & sure[owners])
    for shell, inside in holes.items():
        discs[shell] = shapely.polygons(loops[shell], inside)
    row = np.searchsorted(drawings, owners[shells])
    column = np.arange(len(row)) - np.searchsorted(row, row)
    table = np.full((len(drawings), column.max() + 1), None, dtype=object)
    table[row, column] = discs[shells]
    parts, row = shapely.get_parts(shapely.union_all(table, axis=1), return_index=True)
    turned = np.where(shapely.is_ccw(shapely.get_exterior_ring(parts)), parts, shapely.reverse(parts))
    found: dict[int, list[Polygon]] = {}
    for drawing, part in zip(drawings[row].tolist(), turned, strict=True):
        found.setdefault(drawing, []).append(part)
    return found
