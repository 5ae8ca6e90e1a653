"""Lines whose baseline is a circle: where each letter stands on it, turned as a whole and not bent.

The middle of a letter's room touches the circle, its baseline along the tangent there. Letters keep the distance that
they have in a straight line where they are nearest to the circle's middle, at their feet above it and at their heads
below, so none of them come closer than they are drawn to.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from signgen.geometry.paths import FloatArray
from signgen.lettering.line import Arc
from signgen.lettering.measure import LineMeasure


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """A line on its circle, whose middle is (0, 0). Of each of its n glyphs that show:

    `points_mm` (n, 2) where the middle of its letter's room touches the circle; `turns_rad` (n,) how far it is turned
    counter-clockwise; `middles_mm` (n,) where that middle lies on the line set straight, letter spaces included.
    `quads_mm` (n, 4, 2) corners of its ink box as turned. Seen from the baseline at the text's middle, `rise_mm` is how
    far up the heads of the capitals reach, and `drop_mm` how far down the feet.
    """

    points_mm: FloatArray
    turns_rad: FloatArray
    middles_mm: FloatArray
    spacing_mm: float
    quads_mm: FloatArray
    rise_mm: float
    drop_mm: float


def carried(measured: LineMeasure, arc: Arc, cap_height_mm: float) -> Carried | None:
    """The line as it stands on its circle; None when there is no room for it: it is longer than the circle, with a gap
    of a capital's height between its end and its beginning, or its heads meet in the circle's middle."""
    radius, scale, spacing = arc.radius_mm, measured.scale(cap_height_mm), measured.line.letter_spacing_mm
    tight = radius - cap_height_mm if arc.side == "below" else radius
    if tight <= 0 or not measured.shows:
        return None
    if arc.side == "ring":
        gaps = measured.shaped.gaps + 1  # one more between the last letter and the first
        even = (2 * math.pi * radius - measured.shaped.advance_em * scale) / gaps
        if even < spacing:
            return None
        spacing = even
    x = measured.x_em * scale + measured.gaps[:, None] * spacing
    middles = measured.middle_em * scale + measured.gaps * spacing
    low, high = float(x.min()), float(x.max())
    if arc.side != "ring" and (high - low + cap_height_mm) / tight > 2 * math.pi:
        return None
    origin = (low + high) / 2
    along = (middles - origin) / tight
    turns = along if arc.side == "below" else -along
    up = -1.0 if arc.side == "below" else 1.0
    points = up * radius * np.stack([-np.sin(turns), np.cos(turns)], axis=1)
    y = measured.y_em * scale
    across, above = x - middles[:, None], y
    corners = np.stack([across[:, [0, 1, 1, 0]], above[:, [0, 0, 1, 1]]], axis=2)
    body = np.stack(
        [across[:, [0, 1, 1, 0]], np.broadcast_to([0.0, 0.0, cap_height_mm, cap_height_mm], (len(x), 4))], 2
    )
    heights = (points[:, None, :] + turned(body, turns[:, None]))[:, :, 1] - up * radius
    return Carried(
        points_mm=points,
        turns_rad=turns,
        middles_mm=middles,
        spacing_mm=spacing,
        quads_mm=points[:, None, :] + turned(corners, turns[:, None]),
        rise_mm=max(cap_height_mm, float(heights.max())),
        drop_mm=max(0.0, -float(heights.min())),
    )


def turned(points: FloatArray, turns_rad: FloatArray) -> FloatArray:
    """Points (..., 2) turned counter-clockwise about (0, 0)."""
    cos, sin = np.cos(turns_rad), np.sin(turns_rad)
    x, y = points[..., 0], points[..., 1]
    return np.stack([x * cos - y * sin, x * sin + y * cos], axis=-1)
