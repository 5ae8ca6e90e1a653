"""Lines that are well written and cannot be carried out: arcs that do not close, no feed, no motion word."""

from __future__ import annotations

import math

from msgspec import Struct

from signgen.messages import Num
from signgen.messages.values import Typed
from signgen.messages.wording import Value
from signgen.replay.steps import ReplayStep, Trace

SAME_MM = 0.01
"""Radii that agree so far: a centre found by hand is rounded to hundredths."""
_ARC = ("G2", "G3")


class Misstep(Struct, frozen=True, kw_only=True):
    """`kind` is the row of the tables, `values` what its words name; `mended` the line as it was
    likely meant, or ''."""

    kind: str
    line: int
    values: dict[str, Value]
    mended: str = ""


def missteps(trace: Trace) -> list[Misstep]:
    """Of every readable line that the rules refuse, in order."""
    found = []
    for before, step in zip((None, *trace.steps), trace.steps, strict=False):
        if step.fault is not None and step.words and step.ran:
            one = _misstep(trace, before, step)
            if one is not None:
                found.append(one)
    return found


def _misstep(trace: Trace, before: ReplayStep | None, step: ReplayStep) -> Misstep | None:
    words = step.words.keys()
    motion = next((name for name in ("G0", "G1", *_ARC) if name in words), before.modal[0] if before else "G80")
    if motion in _ARC and words & {"X", "Y", "Z", "I", "J", "R"}:
        return _arc(trace, step, motion)
    if motion == "G80" and words & {"X", "Y", "Z"}:
        return Misstep(kind="no_motion_word", line=step.number, values={})
    if motion in ("G1", *_ARC) and not step.feed:
        return Misstep(kind="no_feed", line=step.number, values={"word": motion})
    if "G4" in words and "P" not in words:
        return Misstep(kind="dwell_no_time", line=step.number, values={})
    if words & {"I", "J", "K", "R"} and motion in ("G0", "G1"):
        return Misstep(kind="centre_no_arc", line=step.number, values={"word": motion})
    return None


def _arc(trace: Trace, step: ReplayStep, motion: str) -> Misstep:
    """Where the centre was likely given as a place, or is missing, or does not fit."""
    start = _before(trace, step)
    unit, values = step.unit_mm, step.values
    end = tuple(values.get(axis, at / unit) * unit for axis, at in zip("XY", start, strict=True))
    if not values.keys() & {"I", "J", "K", "R"}:
        return Misstep(kind="arc_no_centre", line=step.number, values={"word": motion})
    if not step.feed:
        return Misstep(kind="no_feed", line=step.number, values={"word": motion})
    centre = tuple(values.get(letter, 0.0) * unit for letter in "IJ")
    if abs(math.dist(start, centre) - math.dist(end, centre)) < SAME_MM and math.dist(start, centre) > SAME_MM:
        i, j = ((c - s) / unit for c, s in zip(centre, start, strict=True))
        given = {letter: Typed(values.get(letter, 0.0), 4, True) for letter in "IJ"}
        return Misstep(
            kind="arc_absolute", line=step.number,
            values={"word": motion, "i": Typed(i, 4, True), "j": Typed(j, 4, True), "x": given["I"], "y": given["J"]},
        )  # fmt: skip
    own = (start[0] + centre[0], start[1] + centre[1])
    return Misstep(
        kind="arc_ends", line=step.number,
        values={
            "word": motion, "first": Num(math.dist(start, own) / unit, 3), "second": Num(math.dist(end, own) / unit, 3)
        },
    )  # fmt: skip


def _before(trace: Trace, step: ReplayStep) -> tuple[float, float]:
    """Where the tool stands when the line begins."""
    if step.first == 0 or not len(trace.motions):
        return 0.0, 0.0
    x, y, _ = trace.motions.end_mm[step.first - 1]
    return float(x), float(y)
