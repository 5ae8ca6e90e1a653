"""Figures that a pupil can find in a program, each with the line that it comes from; all from the text."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from msgspec import Struct

from signgen.lesson.line_facts import LEVEL_MM, LineFacts
from signgen.lesson.source import ProgramRead, Source
from signgen.replay.motion import ARC_CCW, ARC_CW, RAPID

SAME_PLACE_MM = 0.02
TAB_APART_MM = 5.0
"""Plateaus nearer to each other are one tab, gone over again where the path closes."""
LONG_RATIO = 0.3
"""Of the longest straight on that side: a shorter one may be a notch's."""
FINISH_MM = 2.0
"""A finishing pass takes less than this."""
ROUND_DEG = 359.0
"""Once round, less what four decimals lose."""
EASY_ARC_DEG = (20.0, 330.0)


class CountedFigure(Struct, frozen=True, kw_only=True):
    """A value and the line of the program that gives it."""

    value: float
    line: int


def deepest(program: ProgramRead) -> CountedFigure:
    """The lowest Z of a feed move."""
    rows = [row for row in program.lines if _cuts(row)]
    row = min(rows, key=lambda row: (_lowest(row), row.step.number))
    return CountedFigure(value=_lowest(row), line=row.step.number)


def letters_by_depth(source: Source, program: ProgramRead) -> tuple[tuple[str, CountedFigure], ...]:
    """(comment, lowest Z) of each stretch under a comment that cuts, deepest first."""
    found: dict[str, CountedFigure] = {}
    for row in program.lines:
        if not row.under or not _cuts(row):
            continue
        z = _end(row)[2]
        if z < source.top_mm - LEVEL_MM and (row.under not in found or z < found[row.under].value):
            found[row.under] = CountedFigure(value=z, line=row.step.number)
    return tuple(sorted(found.items(), key=lambda each: each[1].value))


class CountedHole(Struct, frozen=True, kw_only=True):
    """A hole that arcs round one centre make, from the first of its lines."""

    x_mm: float
    y_mm: float
    line: int


def holes(source: Source, program: ProgramRead) -> tuple[CountedHole, ...]:
    """Middles of arcs that follow each other, turn at least once round, and go through the board; of a drill, where it
    goes through."""
    if program.tool.kind == "drill":
        return _drilled(source, program)
    found: list[CountedHole] = []
    centre, degrees, low, first = (math.inf, math.inf), 0.0, math.inf, 0
    for row in program.lines:
        if not _cuts(row):
            continue
        if row.arc is None or math.dist(centre, row.arc.centre_mm) > SAME_PLACE_MM:
            centre, degrees, low, first = (math.inf, math.inf), 0.0, math.inf, row.step.number
            if row.arc is None:
                continue
            centre = row.arc.centre_mm
        degrees, low = degrees + row.arc.turned_deg, min(low, _end(row)[2])
        known = any(math.dist(centre, (hole.x_mm, hole.y_mm)) < SAME_PLACE_MM for hole in found)
        if degrees >= ROUND_DEG and low <= source.bottom_mm + LEVEL_MM and not known:
            found.append(CountedHole(x_mm=centre[0], y_mm=centre[1], line=first))
    return tuple(found)


def _drilled(source: Source, program: ProgramRead) -> tuple[CountedHole, ...]:
    found: list[CountedHole] = []
    for row in program.lines:
        if not _cuts(row) or _lowest(row) > source.bottom_mm + LEVEL_MM:
            continue
        x, y, _ = _end(row)
        if all(math.dist((x, y), (hole.x_mm, hole.y_mm)) >= SAME_PLACE_MM for hole in found):
            found.append(CountedHole(x_mm=x, y_mm=y, line=row.step.number))
    return tuple(found)


def levels(program: ProgramRead) -> tuple[tuple[CountedFigure, ...], str]:
    """The heights of the passes of the stretch that has most of them, highest first, and its comment."""
    stretches: dict[str, list[CountedFigure]] = {}
    for row in program.lines:
        if row.pass_number:
            found, z = stretches.setdefault(row.under, []), _end(row)[2]
            if all(abs(z - other.value) >= LEVEL_MM for other in found):
                found.append(CountedFigure(value=z, line=row.step.number))
    under = max(stretches, key=lambda name: len(stretches[name]), default="")
    return tuple(sorted(stretches.get(under, ()), key=lambda each: -each.value)), under


def easy_arc(program: ProgramRead, clockwise: bool) -> LineFacts | None:
    """An arc of theirs for working on paper: of those that stay level, the one of the greatest radius below 100 mm."""
    rows = [
        row for row in program.lines
        if row.arc is not None and row.kind == (ARC_CW if clockwise else ARC_CCW)
        and EASY_ARC_DEG[0] <= row.arc.turned_deg <= EASY_ARC_DEG[1] and row.arc.radius_mm < 100
        and {"X", "Y", "I", "J"} <= row.step.values.keys()
    ]  # fmt: skip
    return max(
        rows, key=lambda row: (round(row.arc.radius_mm, 3), -row.step.number) if row.arc else (0, 0), default=None
    )


class CountedTab(Struct, frozen=True, kw_only=True):
    """A place where the cutter rises over a bridge."""

    x_mm: float
    y_mm: float
    z_mm: float
    line: int


def tabs(source: Source, program: ProgramRead) -> tuple[CountedTab, ...]:
    """Level stretches between two of the lowest: straight up, across, and down again, in the part of the board below
    its middle."""
    low = deepest(program).value
    found: list[CountedTab] = []
    for before, row in zip(program.lines, program.lines[1:], strict=False):
        rises = _cuts(before) and _across(before) < LEVEL_MM and _end(before)[2] - _start(before)[2] > LEVEL_MM
        if not (rises and abs(_start(before)[2] - low) < LEVEL_MM and _cuts(row) and row.level):
            continue
        if _end(row)[2] > (source.top_mm + source.bottom_mm) / 2:
            continue
        (x0, y0, _), (x1, y1, z) = _start(row), _end(row)
        middle = ((x0 + x1) / 2, (y0 + y1) / 2)
        if all(math.dist(middle, (tab.x_mm, tab.y_mm)) > TAB_APART_MM for tab in found):
            found.append(CountedTab(x_mm=middle[0], y_mm=middle[1], z_mm=z, line=before.step.number))
    return tuple(found)


def leftmost(program: ProgramRead) -> CountedFigure:
    """The least X at an end of a feed move."""
    row = min((row for row in program.lines if _cuts(row)), key=lambda row: (_end(row)[0], row.step.number))
    return CountedFigure(value=_end(row)[0], line=row.step.number)


def sides(program: ProgramRead) -> tuple[LineFacts | None, LineFacts | None]:
    """Lines that cut straight along the right and along the top of what the program cuts last, at its lowest Z: of the
    long ones those nearest to it, for a finishing pass goes nearer than the one before. None where nothing is straight
    there."""
    under = next((row.under for row in reversed(program.lines) if _cuts(row)), "")
    rows = [row for row in program.lines if row.under == under and row.level]
    low = min((_end(row)[2] for row in rows), default=0.0)
    rows = [row for row in rows if _end(row)[2] - low < LEVEL_MM]
    return _outermost_straight(rows, 0), _outermost_straight(rows, 1)


def _outermost_straight(rows: Sequence[LineFacts], axis: int) -> LineFacts | None:
    outmost = max((_end(row)[axis] for row in rows), default=0.0)
    straights = [
        row
        for row in rows
        if row.arc is None and _end(row)[axis] == _start(row)[axis] and outmost - _end(row)[axis] < FINISH_MM
    ]
    longest = max((row.length_mm for row in straights), default=0.0)
    long = [row for row in straights if row.length_mm >= LONG_RATIO * longest]
    return min(long, key=lambda row: (_end(row)[axis], row.step.number), default=None)


def speed(program: ProgramRead) -> CountedFigure:
    """The greatest S that the program gives."""
    step = max((step for step in program.steps if "S" in step.values), key=lambda step: step.values["S"])
    return CountedFigure(value=step.values["S"], line=step.number)


def feed(program: ProgramRead) -> CountedFigure:
    """The greatest F of a level cut, mm/min."""
    rows = [row for row in program.lines if row.level and _cuts(row)] or [row for row in program.lines if _cuts(row)]
    row = max(rows, key=lambda row: (row.feed_mm_per_min, -row.step.number))
    return CountedFigure(value=row.feed_mm_per_min, line=row.step.number)


def first_place(program: ProgramRead) -> LineFacts:
    """The first rapid move that names X and Y."""
    return next(
        row for row in program.lines if row.kind == RAPID and row.end_mm and {"X", "Y"} <= row.step.values.keys()
    )


def cut_mm(program: ProgramRead) -> float:
    """The way of all feed moves."""
    return sum(row.cut_mm for row in program.lines)


def seconds_at_feed(program: ProgramRead) -> float:
    """Length over feed of every feed move, without speeding up and slowing down."""
    return sum(row.seconds or 0.0 for row in program.lines)


def words_used(programs: Sequence[ProgramRead]) -> tuple[str, ...]:
    """Exactly the words that the programs use, G first, then M, then the letters."""
    names = {name for program in programs for step in program.steps for name in step.words}
    return tuple(sorted(names, key=_order))


def _order(name: str) -> tuple[int, float, str]:
    if len(name) > 1:
        return ("GM".index(name[0]), float(name[1:]), name)
    return (2, 0.0, name)


def _cuts(row: LineFacts) -> bool:
    return row.end_mm is not None and row.start_mm is not None and row.kind != RAPID


def _end(row: LineFacts) -> tuple[float, float, float]:
    assert row.end_mm is not None
    return row.end_mm


def _lowest(row: LineFacts) -> float:
    assert row.lowest_mm is not None
    return row.lowest_mm


def _start(row: LineFacts) -> tuple[float, float, float]:
    assert row.start_mm is not None
    return row.start_mm


def _across(row: LineFacts) -> float:
    return float(np.hypot(_end(row)[0] - _start(row)[0], _end(row)[1] - _start(row)[1]))
