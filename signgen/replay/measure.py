"""Lengths, turned angles and extents of motions, computed from the motions alone."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.replay.motion import ARC_CCW, ARC_CW, FloatArray, Motions

SAME_PLACE_MM = 1e-6
"""Ends of an arc nearer than this in its plane are one place, so the arc is a full circle. A hundredth of the
finest decimal that programs are written with; sums of increments stray by less."""
_TURN = 2 * math.pi
_PLANE_AXES = {17: (0, 1, 2), 18: (2, 0, 1), 19: (1, 2, 0)}


def same_place(p: tuple[float, float], q: tuple[float, float]) -> bool:
    """Whether two points are one within SAME_PLACE_MM."""
    return max(abs(p[0] - q[0]), abs(p[1] - q[1])) <= SAME_PLACE_MM


def arc_sweep_rad(p: tuple[float, float], q: tuple[float, float], clockwise: bool) -> float:
    """Angle turned from p to q, both seen from the arc's centre; negative when clockwise, never 0."""
    if same_place(p, q):
        turned = _TURN
    else:
        turned = math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1])
        turned = (-turned if clockwise else turned) % _TURN or _TURN
    return -turned if clockwise else turned


class ArcFrame(Struct, frozen=True, kw_only=True):
    """The arcs among some motions, each in its own plane's axes (first turns towards second,
    counter-clockwise).

    index (n,): which motions; axes (n, 3): first, second and upright axis; centre, start (n, 2) and radius
    (n,) mm in the plane; start_angle_rad, sweep_rad (n,): sweep positive counter-clockwise, never 0, at most
    a full turn; rise_mm (n,) along the upright.
    """

    index: NDArray[np.intp]
    axes: NDArray[np.intp]
    centre_mm: FloatArray
    radius_mm: FloatArray
    start_angle_rad: FloatArray
    sweep_rad: FloatArray
    start_height_mm: FloatArray
    rise_mm: FloatArray

    def points_mm(self, which: NDArray[np.intp], part: FloatArray) -> FloatArray:
        """(k, 3) points at the fractions `part` (0 to 1) of the arcs `which` (places in `index`)."""
        angle = self.start_angle_rad[which] + part * self.sweep_rad[which]
        radius = self.radius_mm[which]
        points = np.empty((len(which), 3))
        rows = np.arange(len(which))
        points[rows, self.axes[which, 0]] = self.centre_mm[which, 0] + radius * np.cos(angle)
        points[rows, self.axes[which, 1]] = self.centre_mm[which, 1] + radius * np.sin(angle)
        points[rows, self.axes[which, 2]] = self.start_height_mm[which] + part * self.rise_mm[which]
        return points


def arc_frame(motions: Motions, index: NDArray[np.intp] | None = None) -> ArcFrame:
    """The arcs of `motions` in the axes of their planes; those at `index` (all of them arcs) when given."""
    if index is None:
        index = np.nonzero((motions.kind == ARC_CW) | (motions.kind == ARC_CCW))[0]
    table = np.zeros((20, 3), np.intp)
    for plane, triple in _PLANE_AXES.items():
        table[plane] = triple
    axes = table[motions.plane[index]]
    rows = np.arange(len(index))[:, None]
    start, end = motions.start_mm[index][rows, axes], motions.end_mm[index][rows, axes]
    centre = motions.centre_mm[index]
    centre = np.where((axes[:, 0] > axes[:, 1])[:, None], centre[:, ::-1], centre)
    p, q = start[:, :2] - centre, end[:, :2] - centre
    turned = np.arctan2(p[:, 0] * q[:, 1] - p[:, 1] * q[:, 0], p[:, 0] * q[:, 0] + p[:, 1] * q[:, 1])
    clockwise = motions.kind[index] == ARC_CW
    turned = np.mod(np.where(clockwise, -turned, turned), _TURN)
    full = (np.abs(p - q).max(axis=1, initial=0.0) <= SAME_PLACE_MM) | (turned == 0)
    turned = np.where(full, _TURN, turned)
    return ArcFrame(
        index=index,
        axes=axes,
        centre_mm=centre,
        radius_mm=np.hypot(p[:, 0], p[:, 1]),
        start_angle_rad=np.arctan2(p[:, 1], p[:, 0]),
        sweep_rad=np.where(clockwise, -turned, turned),
        start_height_mm=start[:, 2],
        rise_mm=end[:, 2] - start[:, 2],
    )


class Extent(Struct, frozen=True, kw_only=True):
    """Least and greatest of each axis, mm."""

    x_mm: tuple[float, float]
    y_mm: tuple[float, float]
    z_mm: tuple[float, float]


def extents(motions: Motions, select: NDArray[np.bool_] | None = None) -> Extent | None:
    """Where the tool's tip goes, quadrant crossings of arcs included; of the selected motions only when
    `select` (n,) is given. None when there is no motion. Source: plane geometry, derived here (the ends alone do not
    bound an arc)."""
    points, _ = bounding_points(motions, select)
    if not len(points):
        return None
    low, high = points.min(axis=0), points.max(axis=0)
    x, y, z = ((float(low[axis]), float(high[axis])) for axis in range(3))
    return Extent(x_mm=x, y_mm=y, z_mm=z)


def bounding_points(motions: Motions, select: NDArray[np.bool_] | None = None) -> tuple[FloatArray, NDArray[np.intp]]:
    """(k, 3) points whose bounding box is that of the motions, and (k,) which motion each belongs to: every
    start, every end, and the places where an arc crosses a quadrant."""
    chosen = np.arange(len(motions)) if select is None else np.nonzero(select)[0]
    frame = arc_frame(motions)
    quarter = math.pi / 2
    low = np.minimum(frame.start_angle_rad, frame.start_angle_rad + frame.sweep_rad)
    first = np.ceil(low / quarter)
    points, owners = [motions.start_mm[chosen], motions.end_mm[chosen]], [chosen, chosen]
    for k in range(4):
        part = ((first + k) * quarter - frame.start_angle_rad) / frame.sweep_rad
        inside = (part > 0) & (part < 1)
        if select is not None:
            inside &= select[frame.index]
        which = np.nonzero(inside)[0]
        points.append(frame.points_mm(which, part[which]))
        owners.append(frame.index[which])
    return np.concatenate(points), np.concatenate(owners)
