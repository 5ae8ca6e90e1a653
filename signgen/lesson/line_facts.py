"""What each line of a program does, as figures; all from its text."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.replay.measure import arc_frame, bounding_points
from signgen.replay.motion import ARC_CCW, ARC_CW, RAPID, FloatArray, Motions
from signgen.replay.steps import ReplayStep, Trace

STILL_MM = 1e-9
"""A shorter way is none."""
LEAST_PASS_RATIO = 0.1
"""Of the longest level way of a stretch: a shorter one leads on to a pass or off it."""
WITHIN = "- "
"""How a comment begins that tells what comes next of the stretch in which it stands."""
LEVEL_MM = 0.0005
"""Heights that differ by less are one level: half the last of three decimals."""


class ArcFacts(Struct, frozen=True, kw_only=True):
    """`turned_deg` is positive, 360 for a full circle."""

    centre_mm: tuple[float, float]
    radius_mm: float
    turned_deg: float


class LineFacts(Struct, frozen=True, kw_only=True):
    """One line. Places are millimetres as the program counts; None where nothing moves. `length_mm` is along the curve,
    `cut_mm` that of its feed moves alone, which get down to `lowest_mm`;
    `seconds` at the feed, without speeding up and slowing down, None for rapids. `under` is the comment under which
    the cutting stands; `level`: it cuts at one height, which is pass `pass_number` of `passes` in that stretch, counted
    from the top, 0 where it is none. `since`: the line of the motion word in force, 0 where the line has its own."""

    step: ReplayStep
    start_mm: tuple[float, float, float] | None = None
    end_mm: tuple[float, float, float] | None = None
    start_known: bool = True
    kind: int = RAPID
    arc: ArcFacts | None = None
    length_mm: float = 0.0
    cut_mm: float = 0.0
    lowest_mm: float | None = None
    seconds: float | None = None
    feed_mm_per_min: float = 0.0
    under: str = ""
    level: bool = False
    pass_number: int = 0
    passes: int = 0
    since: int = 0

    @property
    def count_of_words(self) -> int:
        return len(self.step.words)


def way_lengths_mm(motions: Motions) -> FloatArray:
    """(n,) the length of each motion, arcs and helices along the curve. Source: plane geometry."""
    lengths: FloatArray = np.linalg.norm(motions.end_mm - motions.start_mm, axis=1)
    frame = arc_frame(motions)
    lengths[frame.index] = np.hypot(np.abs(frame.sweep_rad) * frame.radius_mm, frame.rise_mm)
    return lengths


def facts_of(trace: Trace) -> tuple[LineFacts, ...]:
    """Every line in order."""
    motions = trace.motions
    lengths = way_lengths_mm(motions)
    frame = arc_frame(motions)
    arcs = {
        int(k): ArcFacts(
            centre_mm=(float(frame.centre_mm[i, 0]), float(frame.centre_mm[i, 1])),
            radius_mm=float(frame.radius_mm[i]),
            turned_deg=abs(math.degrees(float(frame.sweep_rad[i]))),
        )
        for i, k in enumerate(frame.index)
    }
    under, stretch = _stretches(trace)
    level = _is_level(motions)
    levels = _levels(motions, lengths, stretch)
    found = []
    moved_by = 0
    for step in trace.steps:
        own = any(name[0] == "G" and name in _MOTION_WORDS for name in step.words)
        moved_by = step.number if own else moved_by
        if not step.count:
            found.append(LineFacts(step=step, under=under.get(step.number, "")))
            continue
        first, last = step.first, step.first + step.count - 1
        passed = _pass(motions, last, levels.get(int(stretch[last]), ()))
        cuts = first + np.flatnonzero(motions.kind[first : last + 1] != RAPID)
        # of a canned cycle, whose way out is a rapid, the cut
        tells = int(cuts[-1]) if len(cuts) else last
        found.append(
            LineFacts(
                step=step,
                start_mm=_place(motions.start_mm[first]),
                end_mm=_place(motions.end_mm[last]),
                start_known=bool(motions.start_known[first].all()),
                kind=int(motions.kind[tells]),
                arc=arcs.get(last) if step.count == 1 else None,
                length_mm=float(lengths[first : last + 1].sum()),
                seconds=_seconds(motions, lengths, first, last),
                cut_mm=float(lengths[cuts].sum()),
                lowest_mm=float(motions.end_mm[cuts, 2].min()) if len(cuts) else None,
                feed_mm_per_min=float(motions.feed_mm_per_min[tells]),
                under=under.get(step.number, ""),
                pass_number=passed,
                level=bool(level[last]),
                passes=len(levels.get(int(stretch[last]), ())),
                since=0 if own else moved_by,
            )
        )
    return tuple(found)


_MOTION_WORDS = frozenset(
    ["G0", "G1", "G2", "G3", "G38.2", "G81", "G82", "G83", "G84", "G85", "G86", "G87", "G88", "G89"]
)


def _place(row: FloatArray) -> tuple[float, float, float]:
    x, y, z = (float(value) for value in row)
    return x, y, z


def _seconds(motions: Motions, lengths: FloatArray, first: int, last: int) -> float | None:
    chosen = np.arange(first, last + 1)
    chosen = chosen[motions.kind[chosen] != RAPID]
    feeds = motions.feed_mm_per_min[chosen]
    return float((lengths[chosen] / feeds).sum() * 60) if len(chosen) and (feeds > 0).all() else None


def _stretches(trace: Trace) -> tuple[dict[int, str], FloatArray]:
    """The comment under which each line stands, by its number, and (n,) the number of the stretch of each motion: a
    stretch begins at a comment on a line of its own behind the first motion (but for those that go on within one), and
    where nothing is said, at the start; stretches of one cutter under the same comment are one."""
    under: dict[int, str] = {}
    stretch = np.zeros(len(trace.motions))
    comment, begun = "", False
    numbers: dict[tuple[str, int], int] = {}
    for step in trace.steps:
        if step.comments and not step.words and begun and not step.comments[0].startswith(WITHIN):
            comment = step.comments[0]
        begun = begun or step.count > 0
        under[step.number] = comment
        if step.count:
            named = (comment, int(trace.motions.tool[step.first]))
            stretch[step.first : step.first + step.count] = numbers.setdefault(named, len(numbers))
    return under, stretch


def _is_level(motions: Motions) -> NDArray[np.bool_]:
    """(n,) which motions cut at one height."""
    level = (motions.kind != RAPID) & (np.abs(motions.end_mm[:, 2] - motions.start_mm[:, 2]) < LEVEL_MM)
    across = np.hypot(*(motions.end_mm - motions.start_mm)[:, :2].T) > STILL_MM
    return np.asarray(level & (across | (motions.kind == ARC_CW) | (motions.kind == ARC_CCW)))


class _Height(Struct):
    """One height of level cuts of a stretch: its way in all, and where it lies (least and greatest X and Y)."""

    z_mm: float
    from_above: bool
    length_mm: float = 0.0
    box_mm: tuple[float, float, float, float] = (math.inf, math.inf, -math.inf, -math.inf)


def _levels(motions: Motions, lengths: FloatArray, stretch: FloatArray) -> dict[int, tuple[float, ...]]:
    """The heights of the passes of each stretch, highest first: those of level cuts that are come to from above, one
    over the other. A short one is part of the way on to a pass; one that is come to from below leads over a tab; one
    somewhere else is another groove."""
    heights: dict[int, list[_Height]] = {}
    lowest, of = math.inf, -1
    level = _is_level(motions)
    boxes = _boxes_mm(motions, level)
    for k in np.flatnonzero((motions.kind == RAPID) | level).tolist():
        if motions.kind[k] == RAPID or int(stretch[k]) != of:
            lowest, of = math.inf, int(stretch[k])
        if not level[k]:
            continue
        z = float(motions.end_mm[k, 2])
        rows = heights.setdefault(of, [])
        one = next((row for row in rows if abs(row.z_mm - z) < LEVEL_MM), None)
        if one is None:
            one = _Height(z_mm=z, from_above=z < lowest)
            rows.append(one)
        lowest = min(lowest, z)
        one.length_mm += float(lengths[k])
        (x0, y0, x1, y1), (a, b, c, d) = boxes[k].tolist(), one.box_mm
        one.box_mm = (min(a, x0), min(b, y0), max(c, x1), max(d, y1))
    return {number: tuple(sorted(_passes(rows), reverse=True)) for number, rows in heights.items()}


def _boxes_mm(motions: Motions, select: NDArray[np.bool_]) -> FloatArray:
    """(n, 4) least X and Y, greatest X and Y of the selected motions, arcs with all that they go round."""
    points, owners = bounding_points(motions, select)
    boxes = np.tile([math.inf, math.inf, -math.inf, -math.inf], (len(motions), 1))
    np.minimum.at(boxes[:, :2], owners, points[:, :2])
    np.maximum.at(boxes[:, 2:], owners, points[:, :2])
    return boxes


def _passes(rows: list[_Height]) -> Iterator[float]:
    longest = max(rows, key=lambda row: row.length_mm)
    for row in rows:
        if row is longest or (
            row.from_above
            and row.length_mm >= LEAST_PASS_RATIO * longest.length_mm
            and _over_each_other(row.box_mm, longest.box_mm)
        ):
            yield row.z_mm


def _over_each_other(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    """Whether they have half of the larger in common both ways."""
    for low, high in ((0, 2), (1, 3)):
        common = min(one[high], other[high]) - max(one[low], other[low])
        if common < (max(one[high] - one[low], other[high] - other[low])) / 2 - STILL_MM:
            return False
    return True


def _pass(motions: Motions, k: int, levels: tuple[float, ...]) -> int:
    if motions.kind[k] == RAPID or abs(motions.end_mm[k, 2] - motions.start_mm[k, 2]) >= LEVEL_MM:
        return 0
    z = float(motions.end_mm[k, 2])
    return next((n for n, level in enumerate(levels, 1) if abs(level - z) < LEVEL_MM), 0)
