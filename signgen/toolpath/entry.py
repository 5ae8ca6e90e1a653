"""Ways for an end mill to go down into the work, never steeper than the material allows.

Both end with a whole round (or the whole way) at the new depth, so that the slope cut on the way down is gone.
"""

from __future__ import annotations

import math

import numpy as np

from signgen.geometry.paths import CCW, CW, LINE, FloatArray, Path, joined
from signgen.toolpath.loop import Loop

ZIGZAG_MM = 30.0
"""Longest leg of a zigzag down an open path: long enough to turn seldom, short enough to stay in one place."""


def _run_down_mm(z_from: float, z_to: float, entry_deg: float) -> float:
    """Way across XY that a descent needs: drop / tan(angle). Raises: ValueError for a climb or an odd angle."""
    if not 0 < entry_deg < 90:
        raise ValueError(f"an entry angle lies between 0 and 90 degrees, not {entry_deg}")
    if z_to > z_from:
        raise ValueError(f"an entry goes down, not from {z_from} up to {z_to}")
    return (z_from - z_to) / math.tan(math.radians(entry_deg))


def helix_into(
    x_mm: float,
    y_mm: float,
    radius_mm: float,
    z_from: float,
    z_to: float,
    entry_deg: float,
    *,
    clockwise: bool = False,
) -> Path:
    """Equal half turns down around (x, y), then one full turn at `z_to`; starts and ends at the side of +X.

    Counter-clockwise is climb milling inside a pocket with a spindle that turns clockwise (M3). A radius above the
    cutter's own would leave a core standing; that is the caller's business.

    Raises: ValueError for a climb, an angle outside (0, 90) or a radius of 0.

    Source: a half turn goes down pi r tan(angle); plane geometry (helical bore).
    """
    if not radius_mm > 0:
        raise ValueError(f"a helix needs a radius, not {radius_mm}")
    run = _run_down_mm(z_from, z_to, entry_deg)
    halves = 2 * max(1, math.ceil(run / (2 * math.pi * radius_mm) - 1e-9)) if z_from > z_to else 0
    z = np.concatenate([np.linspace(z_from, z_to, halves + 1), [z_to, z_to]])
    n = len(z) - 1
    side = np.where(np.arange(n + 1) % 2 == 0, radius_mm, -radius_mm)
    return Path(
        points_mm=np.column_stack([x_mm + side, np.full(n + 1, y_mm), z]),
        kinds=np.full(n, CW if clockwise else CCW, np.uint8),
        centres_mm=np.tile([float(x_mm), float(y_mm)], (n, 1)),
    )


def ramp_into(path: Path, z_from: float, z_to: float, entry_deg: float) -> Path:
    """Down along a path, then the whole of it at `z_to`; the path's own heights do not matter.

    A closed path is walked in its own direction only, as many rounds as the descent needs, and the result ends where
    the path starts. An open one is walked to and fro near its start, and the result ends at its end.

    Raises: ValueError for a climb, an angle outside (0, 90) or a path of no length that would have to go down.
    """
    run = _run_down_mm(z_from, z_to, entry_deg)
    flat = at_height(path, z_to)
    if run == 0:
        return flat
    if not flat.length_mm > 0:
        raise ValueError("a path of no length leaves no room to ramp")
    if np.array_equal(flat.points_mm[0], flat.points_mm[-1]):
        return Loop.of(flat).walk([(-run, z_from), (0.0, z_to), (flat.length_mm, z_to)])
    legs = 2 * math.ceil(run / (2 * min(ZIGZAG_MM, flat.length_mm)) - 1e-9)
    out = beginning(flat, run / legs)
    heights = np.linspace(z_from, z_to, legs + 1)
    pieces = [sloped(out if leg % 2 == 0 else out.reversed(), heights[leg], heights[leg + 1]) for leg in range(legs)]
    return joined([*pieces, flat])


def at_height(path: Path, z: float) -> Path:
    """The path with every point at one height."""
    points = path.points_mm.copy()
    points[:, 2] = z
    return Path(points_mm=points, kinds=path.kinds.copy(), centres_mm=path.centres_mm.copy())


def sloped(path: Path, z_from: float, z_to: float) -> Path:
    """A flat path tilted evenly by the way gone, from one height to another; its first and last height are exact."""
    share = np.concatenate([[0.0], np.cumsum(path.lengths_mm)])
    points = path.points_mm.copy()
    points[:, 2] = z_from + (z_to - z_from) * share / share[-1]
    points[-1, 2] = z_to
    return Path(points_mm=points, kinds=path.kinds.copy(), centres_mm=path.centres_mm.copy())


def beginning(path: Path, length_mm: float) -> Path:
    """The first `length_mm` of a flat path: whole segments, and part of one."""
    gone = np.cumsum(path.lengths_mm)
    last = int(np.searchsorted(gone, length_mm - 1e-9))
    if last >= len(path):
        return path
    left = length_mm - (gone[last - 1] if last else 0.0)
    end = _partway(path, last, min(1.0, left / float(path.lengths_mm[last])))
    return Path(
        points_mm=np.vstack([path.points_mm[: last + 1], end]),
        kinds=path.kinds[: last + 1].copy(),
        centres_mm=path.centres_mm[: last + 1].copy(),
    )


def _partway(path: Path, segment: int, share: float) -> FloatArray:
    """The point at a share of one segment's length."""
    start, end = path.points_mm[segment], path.points_mm[segment + 1]
    if path.kinds[segment] == LINE or share == 1.0:
        return np.asarray(start + share * (end - start))
    turn = share * float(path.sweeps_rad[segment])
    centre = path.centres_mm[segment]
    x, y = start[:2] - centre
    c, s = math.cos(turn), math.sin(turn)
    return np.array([centre[0] + c * x - s * y, centre[1] + s * x + c * y, start[2]])
