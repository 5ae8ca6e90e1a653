"""Where cutters and the collet's nut pass low over the board, and so where nothing may stand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from signgen.drawing.drawing import Drawing
from signgen.replay.motion import Motions, Replay
from signgen.replay.pieces import chorded
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

FloatArray = NDArray[np.float64]
Cutters = Sequence[tuple[Tool, Replay]]
"""Each program's cutter with what its text makes the machine do."""

CHORD_MM = 0.02
"""How far a chord may leave its arc here; added to every distance."""
CONVEX_RATIO = 1e-9
INNER_STEP_MM = 4.0
"""Moves up to this long that start and end deep inside the sign stay inside it, whatever its shape."""

OVER_MM = 1.0
"""Shank and nut keep at least this far above what stands beside them."""

QUAD_SEGS = 12
"""Straight pieces of a quarter circle: 0.2 % too wide at the most, 0.03 mm for a nut."""


def swept_outside(
    drawing: Drawing,
    zero: WorkZero,
    cutters: Cutters,
    below_mm: float,
    *,
    nut_mm: float | None = None,
) -> BaseGeometry:
    """The sign with everything around it that a cutter touches below `below_mm` over the board's top; of a blank, on
    whose rim clamps may stand, only that. Sign coordinates.

    A cutter counts with its full radius even where only its tip is so low. With `nut_mm`, the nut's diameter,
    it is the nut
    that is asked for instead: where it comes lower than that, `stickout_mm` above the tip.
    """
    from shapely.geometry import Polygon
    from shapely.ops import unary_union

    limit = drawing.thickness_mm + below_mm
    swept: BaseGeometry = Polygon() if drawing.is_blank else drawing.edge
    inner: list[tuple[FloatArray, float]] = []
    for tool, replay in cutters:
        lines = tip_lines(replay.motions) + np.array([zero.x_mm, zero.y_mm, zero.z_mm])
        lift = 0.0 if nut_mm is None else tool.stickout_mm
        radius = (_width_mm(tool, lines, limit) if nut_mm is None else nut_mm) / 2 + CHORD_MM
        low = lines[np.min(lines[:, :, 2], axis=1) + lift < limit + (OVER_MM if lift else 0.0), :, :2]
        outside, inside = (low, low[:0]) if drawing.is_blank else _apart(low, drawing)
        swept = unary_union([swept, _brushed(outside, radius)])
        inner.append((inside, radius))
    for lines, radius in inner:
        # a way inside the edge sweeps at most its radius beyond it, and the cut around the sign has mostly done so
        if len(lines) and not swept.contains(drawing.edge.buffer(radius)):
            swept = unary_union([swept, _brushed(_near_edge(lines, drawing, radius), radius)])
    return swept


def _width_mm(tool: Tool, lines: FloatArray, limit: float) -> float:
    """Of the cutter, or of its shank where that is thicker and comes below the limit."""
    shank_is_low = bool((lines[:, :, 2] + tool.cutting_length_mm < limit + OVER_MM).any())
    return max(tool.diameter_mm, tool.shank_mm) if shank_is_low else tool.diameter_mm


def _brushed(ways: FloatArray, radius: float) -> BaseGeometry:
    """The area within `radius` of (k, 2, 2) straight ways; passes one below the other are one way from above."""
    keys = np.rint(ways.reshape(-1, 4) * 1000).astype(np.int64)
    _, first = np.unique(keys, axis=0, return_index=True)
    return _widened(ways[np.sort(first)].tobytes(), radius)


@lru_cache(maxsize=16)
def _widened(ways: bytes, radius: float) -> BaseGeometry:
    """The same of ways that are all different; several drawings of a sheet ask for it, and all signs of a batch that
    have the same edge."""
    from shapely import buffer, linestrings, union_all

    # a circle becomes a polygon inside it: widened so that it lies outside
    wide = radius / math.cos(math.pi / (4 * QUAD_SEGS))
    lines = linestrings(np.frombuffer(ways).reshape(-1, 2, 2))
    # Widened one by one and joined: widening all of them as one takes time by the square of their number.
    widened: BaseGeometry = union_all(buffer(lines, wide, quad_segs=QUAD_SEGS))
    return widened


def tip_lines(motions: Motions) -> FloatArray:
    """(m, 2, 3) straight pieces of the tip's way in program coordinates; arcs become chords within CHORD_MM."""
    pieces = chorded(motions, np.arange(len(motions)), CHORD_MM)
    return np.stack([pieces.start_mm, pieces.end_mm], axis=1)


def _apart(flat: FloatArray, drawing: Drawing) -> tuple[FloatArray, FloatArray]:
    """(k, 2, 2) pieces that may leave the sign's edge, and those that surely stay inside: with both ends
    deep in, and short unless the sign has no bays."""
    from shapely import contains_xy

    core = drawing.edge.buffer(-INNER_STEP_MM / 2)
    inside = contains_xy(core, flat[:, :, 0], flat[:, :, 1]).all(axis=1)
    if drawing.edge.convex_hull.area > drawing.edge.area * (1 + CONVEX_RATIO):
        inside &= np.hypot(*(flat[:, 1] - flat[:, 0]).T) <= INNER_STEP_MM
    return flat[~inside], flat[inside]


def _near_edge(flat: FloatArray, drawing: Drawing, radius: float) -> FloatArray:
    """Those of the inner pieces that sweep something outside the edge."""
    from shapely import contains_xy

    core = drawing.edge.buffer(-(radius + INNER_STEP_MM / 2))
    deep = contains_xy(core, flat[:, :, 0], flat[:, :, 1]).all(axis=1)
    near: FloatArray = flat[~deep]
    return near
