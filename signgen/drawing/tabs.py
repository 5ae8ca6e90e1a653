"""Where the tabs stand: spread evenly round the edge, on straight stretches, away from corners and holes."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from shapely.geometry import Polygon

from signgen.errors import CannotMakeError
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.messages import Message, Mm

STEP_MM = 0.5
"""How finely places along the edge are tried."""

ROOM_MM = 8.0
"""Straight edge wanted on both sides of a tab: a cutter's width, so that the path's gap is straight too (common
practice)."""

OWN_BEND_DEG, HOLLOW_BEND_DEG, BOW_BEND_DEG = 30.0, 36.0, 60.0
"""How far the edge may turn over the tab itself: a corner in it would leave one side of the tab thin. On a wavy edge
that has no better place a hollow or a bow without a corner may turn further, for the outside cut leaves each tab as
wide as it is drawn; in a deeper hollow it would not reach the edge beside the tab."""

BENDS = (
    (12.0, ROOM_MM, OWN_BEND_DEG, OWN_BEND_DEG),
    (12.0, ROOM_MM / 2, OWN_BEND_DEG, OWN_BEND_DEG),
    (12.0, ROOM_MM / 4, OWN_BEND_DEG, OWN_BEND_DEG),
    (30.0, ROOM_MM, OWN_BEND_DEG, OWN_BEND_DEG),
    (60.0, ROOM_MM, OWN_BEND_DEG, OWN_BEND_DEG),
    (60.0, ROOM_MM / 4, HOLLOW_BEND_DEG, HOLLOW_BEND_DEG),
    (80.0, ROOM_MM / 4, HOLLOW_BEND_DEG, BOW_BEND_DEG),
)
"""How far the edge may turn over a tab and its room on both sides, and over the tab alone in hollows and in bows
(degrees, mm, degrees, degrees): the straightest stretches are tried first, then short ones; a round sign has only bent
ones, a wavy one short bent ones, and those must bend one way only."""

ONE_WAY_DEG = 0.5
"""Turning back by no more is a polyline's chords."""

STRAIGHT = 1e-9
"""Cross product of unit directions below which two pieces of the edge are one straight stretch."""


def place_tabs(
    edge: Polygon, holes: tuple[Hole, ...], count: int, width_mm: float, height_mm: float, foot_mm: float = 0.0
) -> tuple[Tab, ...]:
    """`count` tabs on the edge, named 'tab 1', ... counter-clockwise from the lowest left one.

    Even spacing is kept as far as the straight stretches allow; among equally even placings the one furthest from
    corners wins; one that comes to lie in the middle of its straight stretch lies there exactly. `foot_mm`: how far
    sides that fall run out at both ends. Raises: CannotMakeError when the edge has no room for them.
    """
    if count == 0:
        return ()
    length = edge.exterior.length
    chosen: list[int] = []
    for bend, room, hollow, bow in BENDS:
        places, direction, free_mm = _free_room(edge, holes, width_mm + 2 * foot_mm, bend, room, hollow, bow)
        chosen = _spread(free_mm, count, (width_mm + 2 * foot_mm + ROOM_MM) / STEP_MM)
        if chosen:
            break
    if count * (width_mm + 2 * foot_mm + 2 * ROOM_MM) > length or not chosen:
        raise CannotMakeError.at(
            "tabs",
            Message("drawing.tabs_find_no_straight_stretches", count=count, width=Mm(width_mm), length=Mm(length, 0)),
            Message("drawing.use_fewer_narrower_tabs"),
        )
    tabs = []
    for number, i in enumerate(sorted(chosen), start=1):
        (x, y), (along_x, along_y) = _in_the_middle(edge, places[i], width_mm), direction[i]
        tabs.append(
            Tab(
                name=f"tab {number}",
                title=Message("name.tab", number=number),
                x_mm=float(x),
                y_mm=float(y),
                along_x=float(along_x),
                along_y=float(along_y),
                width_mm=width_mm,
                height_mm=height_mm,
                foot_mm=foot_mm,
            )
        )
    return tuple(tabs)


def _free_room(
    edge: Polygon,
    holes: tuple[Hole, ...],
    width_mm: float,
    bend_deg: float,
    room_mm: float,
    hollow_deg: float,
    bow_deg: float,
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Places (k, 2) along the edge, unit directions (k, 2), and how far each lies inside a stretch that could take a
    tab (0: not in one)."""
    ring = np.asarray(edge.exterior.coords)[:, :2]
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))])
    count = max(8, round(gone[-1] / STEP_MM))
    s = (np.arange(count) + 0.5) * gone[-1] / count
    places = np.column_stack([np.interp(s, gone, ring[:, 0]), np.interp(s, gone, ring[:, 1])])
    steps = np.diff(ring, axis=0)[np.clip(np.searchsorted(gone, s, side="right") - 1, 0, len(ring) - 2)]
    direction = steps / np.hypot(*steps.T)[:, None]

    heading = np.unwrap(np.arctan2(direction[:, 1], direction[:, 0]))
    total_turn = 2 * np.pi
    around = np.concatenate([heading - total_turn, heading, heading + total_turn])

    def windows(reach_mm: float) -> NDArray[np.float64]:
        reach = min(max(1, round(reach_mm / STEP_MM)), count)
        return np.lib.stride_tricks.sliding_window_view(around, 2 * reach + 1)[count - reach : 2 * count - reach]

    wide, own = windows(width_mm / 2 + room_mm), windows(width_mm / 2 + STEP_MM)
    straight = np.ptp(wide, axis=1) <= np.radians(bend_deg)
    turn = np.ptp(own, axis=1)
    if (hollow_deg, bow_deg) == (OWN_BEND_DEG, OWN_BEND_DEG):
        straight &= turn <= np.radians(OWN_BEND_DEG)
    else:
        # Shells are counter-clockwise: a bow turns left, a hollow right.
        steps = np.diff(wide, axis=1)
        bow, hollow = (np.all(way * steps >= -np.radians(ONE_WAY_DEG), axis=1) for way in (1, -1))
        straight &= (bow & (turn <= np.radians(bow_deg))) | (hollow & (turn <= np.radians(hollow_deg)))
    for hole in holes:
        away = np.hypot(*(places - (hole.x_mm, hole.y_mm)).T)
        near_hole = (hole.diameter_mm + hole.span_mm) / 2 + width_mm
        if np.any(straight & (away > near_hole)):
            straight &= away > near_hole
    return places, direction, _inside_mm(straight)


def _in_the_middle(edge: Polygon, place: NDArray[np.float64], width_mm: float) -> NDArray[np.float64]:
    """The middle of the straight stretch that a place lies on, where it is no further than places are apart."""
    ring = np.asarray(edge.exterior.coords)[:, :2]
    steps = np.diff(ring, axis=0)
    unit = steps / np.hypot(*steps.T)[:, None]
    n = len(steps)
    along = np.einsum("ij,ij->i", place - ring[:-1], unit)
    off = np.hypot(*(place - ring[:-1] - along[:, None] * unit).T)
    outside = (along < -STRAIGHT) | (along > np.hypot(*steps.T) + STRAIGHT)
    here = int(np.argmin(np.where(outside, np.inf, off)))
    bends = np.abs(unit[here, 0] * unit[:, 1] - unit[here, 1] * unit[:, 0]) + (unit @ unit[here] < 0)
    ends = []
    for way in (-1, 1):
        last = here
        while bends[(last + way) % n] < STRAIGHT and (last + way) % n != here:
            last = (last + way) % n
        ends.append(ring[last if way < 0 else last + 1])
    middle = (ends[0] + ends[1]) / 2
    near = np.hypot(*(middle - place)) <= STEP_MM and np.hypot(*(ends[1] - ends[0])) >= width_mm
    return np.asarray(middle if near else place)


def _inside_mm(free: NDArray[np.bool_]) -> NDArray[np.float64]:
    """For each place on the ring, how far away the nearest place that is not free lies (0 where it is not free
    itself)."""
    if free.all():
        return np.full(len(free), np.inf)
    taken = np.flatnonzero(~free)
    behind = np.arange(len(free)) - taken[np.searchsorted(taken, np.arange(len(free)), side="right") - 1]
    ahead = taken[np.searchsorted(taken, np.arange(len(free))) % len(taken)] - np.arange(len(free))
    nearest = np.minimum(np.mod(behind, len(free)), np.mod(ahead, len(free)))
    return np.where(free, nearest * STEP_MM, 0.0)


def _spread(free_mm: NDArray[np.float64], count: int, least_steps: float) -> list[int]:
    """Indices of `count` places at least `least_steps` apart, or none when there is no room.

    For every phase of an even spacing, each place is moved to the nearest free one; the phase with the least sum of
    squared moves wins, then the one whose places lie deepest inside their stretches.
    """
    n = len(free_mm)
    free = np.flatnonzero(free_mm > 0)
    if len(free) < count:
        return []
    phases = np.arange(max(1, n // count))
    wanted = (phases[:, None] + np.arange(count)[None, :] * n / count) % n
    right = free[np.searchsorted(free, wanted) % len(free)]
    left = free[np.searchsorted(free, wanted) - 1]
    move_right, move_left = np.mod(right - wanted, n), np.mod(wanted - left, n)
    moved = np.where(move_right <= move_left, right, left)
    moves = np.minimum(move_right, move_left)
    in_order = np.sort(moved, axis=1)
    apart = np.diff(in_order, axis=1, append=in_order[:, :1] + n).min(axis=1) >= least_steps
    depth = np.minimum(free_mm[moved].min(axis=1), n)
    cost = np.where(apart, (moves**2).sum(axis=1), np.inf)
    best = np.lexsort((-depth, np.round(cost, 6)))[0]
    if not apart[best]:
        return []
    return [int(i) for i in moved[best]]
