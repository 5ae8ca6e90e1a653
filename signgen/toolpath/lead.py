"""Ways on to a wall and off it again on an arc, so that the cutter never stands still against it."""

from __future__ import annotations

import math

import numpy as np

from signgen.geometry.paths import CCW, CW, Path

Place = tuple[float, float, float]


def lead_in(at: Place, along: tuple[float, float], away_mm: float, radius_mm: float, *, left: bool) -> Path:
    """An arc that ends at a place in the direction `along` (a unit vector), and begins `away_mm` beside it, to the left
    of the way or to its right. Level. Its centre lies on that side, `radius_mm` away.

    Source: a tangent arc of radius r has left its tangent by a = r (1 - cos t) after r sin t.
    """
    turn = math.acos(1 - away_mm / radius_mm)
    out = _beside(along, left)
    back = radius_mm * math.sin(turn)
    start = (at[0] - back * along[0] + away_mm * out[0], at[1] - back * along[1] + away_mm * out[1], at[2])
    return _arc(start, at, (at[0] + radius_mm * out[0], at[1] + radius_mm * out[1]), left)


def lead_out(at: Place, along: tuple[float, float], away_mm: float, radius_mm: float, *, left: bool) -> Path:
    """The same off a place: begins there in the direction `along` and ends `away_mm` beside the way."""
    turn = math.acos(1 - away_mm / radius_mm)
    out = _beside(along, left)
    on = radius_mm * math.sin(turn)
    end = (at[0] + on * along[0] + away_mm * out[0], at[1] + on * along[1] + away_mm * out[1], at[2])
    return _arc(at, end, (at[0] + radius_mm * out[0], at[1] + radius_mm * out[1]), left)


def _beside(along: tuple[float, float], left: bool) -> tuple[float, float]:
    return (-along[1], along[0]) if left else (along[1], -along[0])


def _arc(start: Place, end: Place, centre: tuple[float, float], left: bool) -> Path:
    return Path(
        points_mm=np.array([start, end]),
        kinds=np.full(1, CCW if left else CW, np.uint8),
        centres_mm=np.array([centre]),
    )
