"""The questions of each page, from one sign's own programs."""

from __future__ import annotations

import math
from collections.abc import Iterator

from signgen.lesson import numbers
from signgen.lesson.questions import Question
from signgen.lesson.source import ProgramRead, Source
from signgen.messages import Mm, MmPerMin, Num
from signgen.messages.values import Typed
from signgen.messages.wording import Value

PLACE_MM, LENGTH_MM, WIDTH_MM, CHIP_MM = 0.01, 0.05, 0.05, 0.002
"""Tolerances: what is read from a line, what is measured on a drawing or computed with a pocket calculator."""
MOST_HOLES = 3
ANGLES_DEG = (60.0, 90.0, 120.0)
THICKER_MM = 0.5
"""How much thicker the board of the question is than was said."""
MINUTES_RATIO = 0.02


def asked(source: Source) -> dict[str, tuple[Question, ...]]:
    """By the names of the pages."""
    pages = {
        "coordinates": _coordinates, "zero": _zero, "cutter": _cutter, "feeds": _feeds, "depth": _depth,
        "passes": _passes, "arcs": _arcs, "tabs": _tabs, "time": _time, "thickness": _thickness,
    }  # fmt: skip
    return {name: tuple(questions(source)) for name, questions in pages.items()}


def v_bit(source: Source) -> ProgramRead | None:
    """The first program of a V-bit."""
    return next((program for program in source.programs if program.tool.kind == "v-bit"), None)


def _coordinates(source: Source) -> Iterator[Question]:
    for program in source.programs:
        for n, hole in enumerate(numbers.holes(source, program)[:MOST_HOLES], 1):
            for axis, value in (("X", hole.x_mm), ("Y", hole.y_mm)):
                yield Question(
                    kind="hole", about=f"{n} {axis}", value=value, tolerance=PLACE_MM, unit="mm", file=program.file,
                    line=hole.line, values={"number": n, "axis": axis, "file": program.called, "line": hole.line},
                )  # fmt: skip
    last = source.programs[-1]
    left = numbers.leftmost(last)
    yield Question(
        kind="leftmost", value=left.value, tolerance=PLACE_MM, unit="mm", file=last.file, line=left.line,
        values={"file": last.called},
    )  # fmt: skip
    for along, row in enumerate(numbers.sides(last)) if source.spec.edge == "cut" else ():
        if row is not None and row.end_mm is not None:
            yield Question(
                kind=("right_side", "top_side")[along], value=row.end_mm[along] - last.tool.radius_mm,
                tolerance=PLACE_MM, unit="mm", file=last.file, line=row.step.number,
                values={"file": last.called, "line": row.step.number, "diameter": Mm(last.tool.diameter_mm)},
            )  # fmt: skip


def _zero(source: Source) -> Iterator[Question]:
    sides = {program.behind: program for program in reversed(source.programs)}
    for first in sorted(sides.values(), key=lambda program: not program.behind):
        row = numbers.first_place(first)
        for axis in "XY":
            yield Question(
                kind="first", about=axis, value=row.step.values[axis] * row.step.unit_mm, tolerance=PLACE_MM,
                unit="mm", file=first.file, line=row.step.number, values={"axis": axis, "file": first.called},
            )  # fmt: skip
    for program in source.programs:
        low = numbers.deepest(program)
        yield Question(
            kind="lowest", value=low.value, tolerance=PLACE_MM, unit="mm", file=program.file, line=low.line,
            values={"file": program.called},
        )  # fmt: skip


def _cutter(source: Source) -> Iterator[Question]:
    for program in source.programs:
        line = next((step.number for step in program.steps if "S" in step.values), 1)
        yield Question(
            kind="shank", value=program.tool.shank_mm, tolerance=0.0, unit="mm", file=program.file, line=line,
            values={"file": program.called, "tool": program.tool.called},
        )  # fmt: skip


def _feeds(source: Source) -> Iterator[Question]:
    for program in source.programs:
        turns, feed = numbers.speed(program), numbers.feed(program)
        values: dict[str, Value] = {"file": program.called, "tool": program.tool.called}
        yield Question(
            kind="speed", value=turns.value, tolerance=0.0, unit="rpm", file=program.file, line=turns.line,
            values={"file": program.called}, places=0,
        )  # fmt: skip
        yield Question(
            kind="feed", value=feed.value, tolerance=0.0, unit="mm/min", file=program.file, line=feed.line,
            values={"file": program.called}, places=1,
        )  # fmt: skip
        yield Question(
            kind="turn", value=feed.value / turns.value, tolerance=CHIP_MM, unit="mm", file=program.file,
            line=feed.line, values={"file": program.called},
        )  # fmt: skip
        yield Question(
            kind="chip", value=feed.value / turns.value / 2, tolerance=CHIP_MM, unit="mm", file=program.file,
            line=feed.line, values={"file": program.called},
        )  # fmt: skip
        if program.tool.kind == "end-mill":
            yield Question(
                kind="surface", value=math.pi * program.tool.diameter_mm * turns.value / 1000, tolerance=1.0,
                unit="m/min", file=program.file, line=turns.line, values=dict(values), places=1,
            )  # fmt: skip


def _depth(source: Source) -> Iterator[Question]:
    program = v_bit(source)
    if program is None:
        return
    letters = numbers.letters_by_depth(source, program)
    chosen = [("widest", letters[0])] if letters else []
    if len(letters) > 1 and letters[-1][1].value > letters[0][1].value:
        chosen.append(("narrowest", letters[-1]))
    slope, tip = program.tool.slope, program.tool.tip_mm
    for which, (under, low) in chosen:
        depth = source.top_mm - low.value
        values: dict[str, Value] = {
            "under": under,
            "line": low.line,
            "file": program.called,
            "angle": Num(program.tool.angle_deg or 0),
        }
        yield Question(
            kind="depth", about=which, value=depth, tolerance=PLACE_MM, unit="mm", file=program.file, line=low.line,
            values=dict(values),
        )  # fmt: skip
        yield Question(
            kind="width", about=which, value=2 * depth * slope + tip, tolerance=WIDTH_MM, unit="mm", file=program.file,
            line=low.line, values=dict(values), places=2,
        )  # fmt: skip
        for angle in ANGLES_DEG if which == "widest" else ():
            across = 2 * depth * slope + tip
            yield Question(
                kind="other_angle", about=f"{angle:g}", value=across / 2 / math.tan(math.radians(angle / 2)),
                tolerance=WIDTH_MM, unit="mm", file=program.file, line=low.line, places=2,
                values={"other": Num(angle), "width": Mm(across, 2)},
            )  # fmt: skip


def _passes(source: Source) -> Iterator[Question]:
    program = max(source.programs, key=lambda program: len(numbers.levels(program)[0]))
    found, under = numbers.levels(program)
    if len(found) < 2:
        return
    values: dict[str, Value] = {"file": program.called, "under": under}
    yield Question(
        kind="passes", value=len(found), tolerance=0.0, unit="", file=program.file, line=found[0].line, places=0,
        values=dict(values),
    )  # fmt: skip
    yield Question(
        kind="step", value=found[0].value - found[1].value, tolerance=PLACE_MM, unit="mm", file=program.file,
        line=found[1].line, values=dict(values),
    )  # fmt: skip
    yield Question(
        kind="last_pass", value=found[-1].value, tolerance=PLACE_MM, unit="mm", file=program.file,
        line=found[-1].line, values=dict(values),
    )  # fmt: skip


def _arcs(source: Source) -> Iterator[Question]:
    for clockwise in (True, False):
        rows = [(program, numbers.easy_arc(program, clockwise)) for program in source.programs]
        program, row = max(
            ((p, r) for p, r in rows if r is not None and r.arc is not None),
            key=lambda each: each[1].arc.radius_mm if each[1].arc else 0, default=(None, None),
        )  # fmt: skip
        if program is None or row is None or row.arc is None or row.start_mm is None:
            continue
        x, y, _ = row.start_mm
        values: dict[str, Value] = {
            "file": program.called, "line": row.step.number, "text": row.step.text,
            "x": Typed(x / row.step.unit_mm, 4, True), "y": Typed(y / row.step.unit_mm, 4, True),
        }  # fmt: skip
        word = "G2" if clockwise else "G3"
        (cx, cy), radius = row.arc.centre_mm, row.arc.radius_mm
        for kind, value in (("centre_x", cx), ("centre_y", cy), ("radius", radius)):
            yield Question(
                kind=kind, about=word, value=value, tolerance=PLACE_MM, unit="mm", file=program.file,
                line=row.step.number, values=dict(values),
            )  # fmt: skip


def _tabs(source: Source) -> Iterator[Question]:
    program = source.programs[-1]
    found = numbers.tabs(source, program)
    if not found:
        return
    values: dict[str, Value] = {"file": program.called}
    yield Question(
        kind="tabs", value=len(found), tolerance=0.0, unit="", file=program.file, line=found[0].line, places=0,
        values=dict(values),
    )  # fmt: skip
    yield Question(
        kind="tab_top", value=found[0].z_mm, tolerance=PLACE_MM, unit="mm", file=program.file, line=found[0].line,
        values=dict(values),
    )  # fmt: skip
    yield Question(
        kind="tab_thick", value=found[0].z_mm - source.bottom_mm, tolerance=PLACE_MM, unit="mm", file=program.file,
        line=found[0].line, values=dict(values),
    )  # fmt: skip


def _time(source: Source) -> Iterator[Question]:
    for program in source.programs:
        length, feed = numbers.cut_mm(program), numbers.feed(program)
        yield Question(
            kind="minutes", value=length / feed.value, tolerance=max(0.05, MINUTES_RATIO * length / feed.value),
            unit="min", file=program.file, line=feed.line, places=2,
            values={"file": program.called, "length": Mm(length, 0), "feed": MmPerMin(feed.value)},
        )  # fmt: skip


def _thickness(source: Source) -> Iterator[Question]:
    program, last = v_bit(source), source.programs[-1]
    low = numbers.deepest(last)
    at_bottom = source.top_mm > source.bottom_mm == 0.0
    extra = Mm(THICKER_MM)
    if program is not None and at_bottom:
        deep = numbers.deepest(program)
        yield Question(
            kind="thicker_width", value=2 * THICKER_MM * program.tool.slope, tolerance=WIDTH_MM, unit="mm", places=2,
            file=program.file, line=deep.line, values={"extra": extra, "angle": Num(program.tool.angle_deg or 0)},
        )  # fmt: skip
    left = low.value - source.bottom_mm if at_bottom else low.value - source.bottom_mm + THICKER_MM
    yield Question(
        kind="thicker_bottom" if at_bottom else "thicker_top", value=left, tolerance=PLACE_MM, unit="mm",
        file=last.file, line=low.line, values={"extra": extra, "file": last.called},
    )  # fmt: skip
