"""Drilling a hole straight down in pecks that clear their chips."""

from __future__ import annotations

import math

import numpy as np

from signgen.geometry.paths import FloatArray, Path, polyline
from signgen.toolpath.cut import FAST

BACK_MM = 0.254
"""How far above the depth reached the next peck begins: 0.010 in. Source: NIST IR 6556 section 3.5.16.3, as the
published reader's G83 does it."""

GRID_MM = 1e-4
"""Pecks are whole multiples of this, so that a program can say their size exactly."""


def pecks(
    x_mm: float, y_mm: float, clear_z: float, bottom_z: float, most_mm: float, feed: float
) -> tuple[Path, FloatArray, float]:
    """(path, feeds, peck): down from `clear_z` to `bottom_z` in equal pecks of at most `most_mm` (the last takes what
    is left), all the way out and back down at full speed between them; ends at the bottom.

    The way is that of the drilling cycle G83. Source: NIST IR 6556, 3.5.16.3.
    """
    count = math.ceil((clear_z - bottom_z) / most_mm - 1e-9)
    peck = math.ceil((clear_z - bottom_z) / count / GRID_MM - 1e-6) * GRID_MM
    heights, feeds = [clear_z], []
    for n in range(1, count):
        reached = clear_z - n * peck
        heights += [reached, clear_z, reached + BACK_MM]
        feeds += [feed, FAST, FAST]
    heights.append(bottom_z)
    feeds.append(feed)
    return polyline([(x_mm, y_mm, z) for z in heights]), np.array(feeds), peck
