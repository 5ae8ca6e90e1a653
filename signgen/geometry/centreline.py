"""The middle lines of strokes of even width: the medial axis without what corners and forks do to it.

The medial axis of a letter runs into every corner, rounds off where a stroke turns, and bends where strokes meet.
Here branches into corners are cut off, each arm is cut back to where its stroke is undisturbed, and the arms are led
on from there: straight through where two go the same way, and otherwise on until they meet.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct, field
from shapely.geometry import LineString, Point, Polygon

from signgen.geometry.arcs import fit_all
from signgen.geometry.medial import MedialAxis, medial_axis
from signgen.geometry.paths import LINE, FloatArray, Path
from signgen.geometry.smooth import arc_points, biarc, chained
from signgen.tolerances import Tolerances

TAPER_RATIO = 0.15
"""An arm's end that narrows by more than this part of its way runs into a corner, of 17 degrees or more: into one of
the angle A it narrows by sin(A / 2)."""

STUB_RATIO = 1.1
"""What is left of an arm before such an end, over the greater of the half width and the fork's: shorter ones are
corners, longer ones strokes."""

CORNER_RATIO = 0.93
"""An end that narrows by less than this, into an angle of 137 degrees or less, is a corner that the stroke has;
blunter ones are chords of a curve."""

FORK_RATIO, CALM_RATIO = 1.015, 0.8
FORK_REACH_RATIO = 3.0
"""Near a fork the strokes that an arm meets widen it: it is undisturbed from where it does not get narrower by more
than the first within a stretch of the second, over the half width; and from the third in any case."""

THROUGH_DEG = 30.0
"""Arms that come from opposite sides within this are one stroke."""

STEP_RATIO = 0.1
"""Places looked at along an arm, over the half width."""

LEAST_ARM_RATIO = 0.3
"""Arms between two forks that are shorter, over the half width, when cut back are part of the forks."""

FAR_RATIO = 4.0
"""Arms that would meet further away from their fork, over the half width, are led to its middle instead."""

ROOM_RATIO = 0.4
"""Clearance that a middle line keeps in a pointed corner, over the half width: so that letters stay about as high."""

FIT_RATIO = 0.01
"""How far lines and arcs may stray from the axis, over the half width: its own ripple is smaller."""

DOT_RATIO = 0.4
"""Radius of the little circle that stands for a dot, over that of the dot."""


class CentreLines(Struct, frozen=True, kw_only=True):
    """`lines`: (k, 2) each, closed where the ends agree. `half_widths_mm`: of the strokes along the arms, evenly
    sampled; empty for a dot."""

    lines: tuple[FloatArray, ...]
    half_widths_mm: FloatArray


class _Arm(Struct):
    """Rows (k, 3) x, y, r from node `ends[0]` to node `ends[1]`, evenly spaced."""

    rows: FloatArray
    ends: list[int]


class _Fork(Struct):
    """Where arms end at one place: (place, direction towards the fork) of each."""

    arms: list[tuple[FloatArray, FloatArray]] = field(default_factory=list)


def centrelines(polygon: Polygon, half_mm: float, tolerances: Tolerances) -> CentreLines:
    """The middle lines of a letter whose strokes are about 2 `half_mm` wide."""
    axis = medial_axis(polygon, tolerances)
    arms = _without_corners(_arms(axis, half_mm), half_mm)
    if not arms:
        return CentreLines(lines=(_dot(axis),), half_widths_mm=np.zeros(0))
    cut, forks = _cut_back(arms, half_mm)
    widths = np.concatenate([arm.rows[:, 2] for arm in cut]) if cut else np.zeros(0)
    lines = [arm.rows[:, :2] for arm in cut]
    for fork in forks:
        lines += _led_on(fork, [arm.rows[:, :2] for arm in cut], polygon, half_mm)
    fitted = fit_all([np.column_stack([line, np.zeros(len(line))]) for line in chained(lines)], FIT_RATIO * half_mm)
    return CentreLines(
        lines=tuple(_points_of(path, tolerances.chord_mm / 2) for path in fitted if len(path)), half_widths_mm=widths
    )


def _dot(axis: MedialAxis) -> FloatArray:
    """A little circle in the widest place."""
    rows = np.concatenate([axis.nodes_mm, *axis.branches])
    x, y, r = rows[int(rows[:, 2].argmax())]
    angles = np.linspace(0, 2 * math.pi, 65)
    circle: FloatArray = np.column_stack([x + DOT_RATIO * r * np.cos(angles), y + DOT_RATIO * r * np.sin(angles)])
    circle[-1] = circle[0]
    return circle


def _arms(axis: MedialAxis, half: float) -> list[_Arm]:
    return [
        _Arm(_even(branch, STEP_RATIO * half), ends.tolist())
        for branch, ends in zip(axis.branches, axis.ends, strict=True)
    ]


def _even(rows: FloatArray, step: float) -> FloatArray:
    """Rows resampled along their length."""
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(rows[:, :2], axis=0).T))])
    count = max(2, math.ceil(along[-1] / step) + 1)
    places = np.linspace(0.0, along[-1], count)
    even: FloatArray = np.column_stack([np.interp(places, along, column) for column in rows.T])
    even[0], even[-1] = rows[0], rows[-1]
    return even


def _degrees(arms: Sequence[_Arm]) -> dict[int, int]:
    counts: dict[int, int] = {}
    for arm in arms:
        for end in arm.ends:
            counts[end] = counts.get(end, 0) + 1
    return counts


def _without_corners(arms: list[_Arm], half: float) -> list[_Arm]:
    """The arms less those that only run into a corner, again and again until none is left; what they parted is one,
    but for strokes that turn a true corner there."""
    corners: set[int] = set()
    while True:
        degrees = _degrees(arms)
        gone = [arm for arm in arms if _is_corner(arm, degrees, half)]
        if not gone:
            return arms
        for arm in gone:
            for end, other, way in ((arm.ends[0], arm.ends[1], -1), (arm.ends[1], arm.ends[0], 1)):
                # A blunt apex has two corners, and a stub behind them.
                if degrees[end] == 1 and (end in corners or _fall(arm.rows[::way]) < CORNER_RATIO):
                    corners.add(other)
        # What the corners parted is one stroke again, before its own ends are looked at.
        arms = _merged([arm for arm in arms if not any(arm is each for each in gone)], corners)


def _is_corner(arm: _Arm, degrees: dict[int, int], half: float) -> bool:
    loose = [degrees[end] == 1 for end in arm.ends]
    if not any(loose) or arm.ends[0] == arm.ends[1]:
        return False
    rows = arm.rows if loose[1] else arm.rows[::-1]  # from the fork out
    steps = np.hypot(*np.diff(rows[:, :2], axis=0).T)
    calm = np.flatnonzero(-np.diff(rows[:, 2]) < TAPER_RATIO * steps)
    length = float(steps[: calm[-1] + 1].sum()) if len(calm) else 0.0
    return length < STUB_RATIO * max(half, float(rows[0, 2]))


def _fall(rows: FloatArray) -> float:
    """How much an arm narrows from its first row to its last, over its length."""
    length = float(np.hypot(*np.diff(rows[:, :2], axis=0).T).sum())
    return float(rows[0, 2] - rows[-1, 2]) / length if length else 1.0


def _merged(arms: list[_Arm], forks: set[int]) -> list[_Arm]:
    """Arms that meet two by two at a node where no true corner was, as one; the others as they are."""
    arms = list(arms)
    while True:
        degrees = _degrees(arms)
        joint = next((node for node, count in degrees.items() if count == 2 and node not in forks), None)
        if joint is None:
            return arms
        own = [arm for arm in arms if joint in arm.ends]
        if len(own) == 1:  # a loop that begins and ends there
            forks = forks | {joint}
            continue
        one, other = own
        first = one.rows if one.ends[1] == joint else one.rows[::-1]
        second = other.rows if other.ends[0] == joint else other.rows[::-1]
        start = one.ends[0] if one.ends[1] == joint else one.ends[1]
        end = other.ends[1] if other.ends[0] == joint else other.ends[0]
        arms = [arm for arm in arms if arm is not one and arm is not other]
        arms.append(_Arm(np.concatenate([first, second[1:]]), [start, end]))


def _cut_back(arms: list[_Arm], half: float) -> tuple[list[_Arm], list[_Fork]]:
    """The undisturbed part of every arm, and the forks between them."""
    degrees = _degrees(arms)
    leader = {node: node for node in degrees}

    def root(node: int) -> int:
        while leader[node] != node:
            node = leader[node]
        return node

    cut: list[tuple[_Arm, bool, bool]] = []
    for arm in arms:
        start, end = (degrees[node] >= 2 and not _is_loop(arm, degrees) for node in arm.ends)
        last = len(arm.rows) - 1
        low = _calm(arm.rows[:, 2]) if start else 0
        high = last - _calm(arm.rows[::-1, 2]) if end else last
        if (high - low) * STEP_RATIO < LEAST_ARM_RATIO and start and end:
            leader[root(arm.ends[0])] = root(arm.ends[1])
            continue
        if high <= low:
            low, high = (min(low, last - 1), last) if not end else (0, max(high, 1))
        cut.append((_Arm(arm.rows[low : high + 1], arm.ends), start, end))
    forks: dict[int, _Fork] = {}
    for arm, start, end in cut:
        for is_fork, node, rows in ((start, arm.ends[0], arm.rows), (end, arm.ends[1], arm.rows[::-1])):
            if is_fork:
                back = min(len(rows) - 1, round(1 / STEP_RATIO))
                direction = rows[0, :2] - rows[back, :2]
                forks.setdefault(root(node), _Fork()).arms.append((rows[0, :2], direction / np.hypot(*direction)))
    return [arm for arm, _, _ in cut], list(forks.values())


def _calm(radii: FloatArray) -> int:
    """From which place on an arm, which begins at a fork, is undisturbed: no less than the half width from it, and no
    more than FORK_REACH_RATIO, for strokes may swell of their own."""
    stretch, last = round(CALM_RATIO / STEP_RATIO), len(radii) - 1
    places = range(min(round(1 / STEP_RATIO), last), min(round(FORK_REACH_RATIO / STEP_RATIO), last) + 1)
    swell = [radii[i] / max(radii[min(i + stretch, last)], 1e-9) for i in places]
    calm = (i for i, ratio in zip(places, swell, strict=True) if ratio <= FORK_RATIO)
    return next(calm, places[int(np.argmin(swell))])


def _is_loop(arm: _Arm, degrees: dict[int, int]) -> bool:
    """Whether an arm is a whole ring that nothing else meets."""
    return arm.ends[0] == arm.ends[1] and degrees[arm.ends[0]] == 2


def _led_on(fork: _Fork, around: Sequence[FloatArray], polygon: Polygon, half: float) -> list[FloatArray]:
    """The lines from the arms' ends through the fork."""
    arms = fork.arms
    turns = sorted(
        (math.degrees(math.acos(float(np.clip(-np.dot(arms[i][1], arms[j][1]), -1, 1)))), i, j)
        for i, j in itertools.combinations(range(len(arms)), 2)
    )
    free = set(range(len(arms)))
    through: list[FloatArray] = []
    for turn, i, j in turns:
        if turn <= THROUGH_DEG and i in free and j in free:
            free -= {i, j}
            start, end = arms[i], arms[j]
            rest = biarc(start[0], start[1], end[0], -end[1], half * FIT_RATIO / 4)
            through.append(np.concatenate([start[0][None, :], rest]))
    rest_arms = [arms[i] for i in sorted(free)]
    if through:
        own = [line for line in around if any(np.array_equal(line[k], p) for k in (0, -1) for p, _ in arms)]
        return through + [_to_nearest(place, way, [*through, *own], half) for place, way in rest_arms]
    if len(rest_arms) < 2:
        return []
    return _to_meeting(rest_arms, polygon, half)


def _to_nearest(place: FloatArray, way: FloatArray, lines: Sequence[FloatArray], half: float) -> FloatArray:
    """A straight line on from an arm's end to the stroke that it runs into."""
    ray = LineString([place + 1e-6 * way, place + FAR_RATIO * half * way])
    hits = [shapely.intersection(ray, LineString(line)) for line in lines if not _touches(line, place)]
    points = [xy for hit in hits for xy in shapely.get_coordinates(hit)]
    if points:
        end = min(points, key=lambda xy: float(np.hypot(*(xy - place))))
    else:
        near = [line for line in lines if not _touches(line, place)]
        on = [shapely.get_coordinates(shapely.shortest_line(Point(place), LineString(line)))[1] for line in near]
        end = min(on, key=lambda xy: float(np.hypot(*(xy - place))))
    return np.stack([place, end])


def _touches(line: FloatArray, place: FloatArray) -> bool:
    return bool(np.array_equal(line[0], place) or np.array_equal(line[-1], place))


def _to_meeting(arms: Sequence[tuple[FloatArray, FloatArray]], polygon: Polygon, half: float) -> list[FloatArray]:
    """Straight lines from the arms' ends to where they meet, by least squares; in a pointed corner no nearer to the
    outline than a pen has room."""
    places = np.array([place for place, _ in arms])
    normals = np.array([(-way[1], way[0]) for _, way in arms])
    meeting, *_ = np.linalg.lstsq(normals, np.einsum("ij,ij->i", normals, places), rcond=None)
    middle = places.mean(axis=0)
    if not np.isfinite(meeting).all() or np.hypot(*(meeting - middle)) > FAR_RATIO * half:
        meeting = middle
    outline = polygon.boundary
    ends = []
    for place in places:
        shares = np.linspace(1.0, 0.0, 101)
        points = place + shares[:, None] * (meeting - place)
        room = shapely.distance(outline, shapely.points(points)) >= ROOM_RATIO * half
        room &= shapely.contains_xy(polygon, points[:, 0], points[:, 1])
        ends.append(points[int(np.argmax(room))] if room.any() else place)
    if all(np.array_equal(end, ends[0]) for end in ends):
        return [np.stack([place, ends[0]]) for place in places]
    if len(ends) == 2:
        return [np.array([places[0], ends[0], ends[1], places[1]])]
    middle_end = np.mean(ends, axis=0)
    return [np.array([place, end, middle_end]) for place, end in zip(places, ends, strict=True)]


def _points_of(path: Path, tolerance: float) -> FloatArray:
    """A flat path as chords."""
    rows = [path.points_mm[:1, :2]]
    sweeps = path.sweeps_rad
    for i in range(len(path)):
        end = path.points_mm[i + 1 : i + 2, :2]
        if path.kinds[i] == LINE:
            rows.append(end)
        else:
            points = arc_points(path.points_mm[i, :2], path.centres_mm[i], float(sweeps[i]), tolerance)
            rows.append(np.concatenate([points[1:-1], end]))
    return np.concatenate(rows)
