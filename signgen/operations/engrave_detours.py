"""Floors cut on the way: a run along the walls turns off on to the floor beside it and comes back, instead of lifting
out, moving on and plunging again."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import LineString, Point

from signgen.geometry.offsets import Area
from signgen.geometry.paths import FloatArray, Path, joined
from signgen.operations.engrave_runs import ShapeRun

SAME_WIDTH_MM = 1e-6
"""Widths that differ by less are the floor's: a tenth of the grid that runs lie on."""

TRIES = 12
"""Places that a run may turn off at which are looked at for each floor, nearest first."""


def with_detours(
    runs: Sequence[ShapeRun], floors: Sequence[ShapeRun], room: Area, most_mm: float
) -> tuple[list[ShapeRun], list[ShapeRun]]:
    """(the runs, with every floor in them that one of them can turn off to; the floors that none can).

    Both have the half width w for their third coordinate, and floors are level. A run turns off where it is as wide as
    the floor, goes straight to it and straight back, inside `room` (where the bit may stand at the floor's depth), and
    both ways together are no longer than `most_mm`.
    """
    done, left = list(runs), list(floors)
    shapely.prepare(room)
    # A floor that is reached can be the way to the next.
    waiting, found = left, True
    while waiting and found:
        left, found = [], False
        for floor in waiting:
            place = _turning_off(done, floor.path, room, most_mm)
            if place is None:
                left.append(floor)
                continue
            n, at = place
            done[n] = ShapeRun(
                path=_inserted(done[n].path, at, floor.path), either_way=done[n].either_way and floor.either_way
            )
            found = True
        waiting = left
    return done, left


def _turning_off(runs: Sequence[ShapeRun], floor: Path, room: Area, most_mm: float) -> tuple[int, int] | None:
    """(run, point of it) that is nearest to both ends of a floor and from where both can be reached."""
    head, tail = floor.points_mm[0], floor.points_mm[-1]
    places = []
    for n, run in enumerate(runs):
        points = run.path.points_mm
        at = np.flatnonzero(np.abs(points[:, 2] - head[2]) <= SAME_WIDTH_MM)
        ways = np.hypot(*(points[at, :2] - head[:2]).T) + np.hypot(*(points[at, :2] - tail[:2]).T)
        near = np.argsort(ways, kind="stable")[:TRIES]
        places += [(float(ways[i]), n, int(at[i])) for i in near if ways[i] <= most_mm]
    for _, n, place in sorted(places)[:TRIES]:
        here = runs[n].path.points_mm[place, :2]
        if all(_inside(room, here, end[:2]) for end in (head, tail)):
            return n, place
    return None


def _inside(room: Area, start: FloatArray, end: FloatArray) -> bool:
    way = Point(start) if np.array_equal(start, end) else LineString([start, end])
    return bool(shapely.covers(room, way))


def _inserted(path: Path, at: int, floor: Path) -> Path:
    """The path as far as a point of it, the floor, and back from that point on."""
    before = Path(
        points_mm=path.points_mm[: at + 1].copy(), kinds=path.kinds[:at].copy(), centres_mm=path.centres_mm[:at].copy()
    )
    after = Path(
        points_mm=path.points_mm[at:].copy(), kinds=path.kinds[at:].copy(), centres_mm=path.centres_mm[at:].copy()
    )
    return joined([before, floor, after])
