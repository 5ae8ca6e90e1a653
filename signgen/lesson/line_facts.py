"""What each line of a program does, as figures; all from its text."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct

from signgen.replay.measure import arc_frame
from signgen.replay.motion import ARC_CCW, ARC_CW, RAPID, FloatArray, Motions
from signgen.replay.steps import ReplayStep, Trace

STILL_MM = 1e-9
"""A shorter way is none."""
LEVEL_MM = 0.0005
"""Heights that differ by less are one level: half the last of three decimals."""


class ArcFacts(Struct, frozen=True, kw_only=True):
    """`turned_deg` is positive, 360 for a full circle."""

    centre_mm: tuple[float, float]
    radius_mm: float
    turned_deg: float


class LineFacts(Struct, frozen=True, kw_only=True):
    """One line. Places are millimetres as the program counts; None where nothing moves. `length_mm` is along the curve;
    `seconds` at the feed, without speeding up and slowing down, None for rapids. `under` is the comment under which
    the cutting stands, `pass_number` of `passes` the level in that stretch, counted from the top, 0 where it is
    not level or no cut. `since`: the line of the motion word in force, 0 where the line has its own."""

    step: ReplayStep
    start_mm: tuple[float, float, float] | None = None
    end_mm: tuple[float, float, float] | None = None
    start_known: bool = True
    kind: int = RAPID
    arc: ArcFacts | None = None
    length_mm: float = 0.0
    seconds: float | None = None
    feed_mm_per_min: float = 0.0
    under: str = ""
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
    levels = _levels(motions, stretch)
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
        found.append(
            LineFacts(
                step=step,
                start_mm=_place(motions.start_mm[first]),
                end_mm=_place(motions.end_mm[last]),
                start_known=bool(motions.start_known[first].all()),
                kind=int(motions.kind[last]),
                arc=arcs.get(last) if step.count == 1 else None,
                length_mm=float(lengths[first : last + 1].sum()),
                seconds=_seconds(motions, lengths, first, last),
                feed_mm_per_min=float(motions.feed_mm_per_min[last]),
                under=under.get(step.number, ""),
                pass_number=passed,
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
    stretch begins at a comment on a line of its own behind the first motion, and where nothing is said, at
    the start."""
    under: dict[int, str] = {}
    stretch = np.zeros(len(trace.motions))
    comment, number, begun = "", 0, False
    for step in trace.steps:
        if step.comments and not step.words and begun:
            comment, number = step.comments[0], number + 1
        begun = begun or step.count > 0
        under[step.number] = comment
        stretch[step.first : step.first + step.count] = number
    return under, stretch


def _levels(motions: Motions, stretch: FloatArray) -> dict[int, tuple[float, ...]]:
    """The heights of level cuts of each stretch, highest first."""
    level = (motions.kind != RAPID) & (np.abs(motions.end_mm[:, 2] - motions.start_mm[:, 2]) < LEVEL_MM)
    across = np.hypot(*(motions.end_mm - motions.start_mm)[:, :2].T) > STILL_MM
    chosen = level & (across | (motions.kind == ARC_CW) | (motions.kind == ARC_CCW))
    found: dict[int, list[float]] = {}
    for number, z in zip(stretch[chosen], motions.end_mm[chosen, 2], strict=True):
        heights = found.setdefault(int(number), [])
        if all(abs(z - other) >= LEVEL_MM for other in heights):
            heights.append(float(z))
    return {number: tuple(sorted(heights, reverse=True)) for number, heights in found.items()}


def _pass(motions: Motions, k: int, levels: tuple[float, ...]) -> int:
    if motions.kind[k] == RAPID or abs(motions.end_mm[k, 2] - motions.start_mm[k, 2]) >= LEVEL_MM:
        return 0
    z = float(motions.end_mm[k, 2])
    return next((n for n, level in enumerate(levels, 1) if abs(level - z) < LEVEL_MM), 0)
