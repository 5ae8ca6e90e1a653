"""What is wrong with a program that can be read: one change at a time is tried, and the programs judged again. The
change after which least is found names the likeliest cause.

The order in which causes are tried is that of how common they are (common practice of workshops, no count at hand).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import partial

import numpy as np
from msgspec import Struct, field
from msgspec.structs import replace

from signgen.checks import judge
from signgen.checks.case import make_case
from signgen.checks.check import Case, CheckReport
from signgen.messages.values import Typed
from signgen.messages.wording import Value
from signgen.replay.motion import RAPID, Motions
from signgen.replay.steps import Trace, trace
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool

STOPS, WARNS = 1.0, 0.15
"""What a finding weighs that stops the program, and one that warns."""
ENOUGH_RATIO = 0.6
"""A change explains what is wrong when at most this share of it is left."""
MOST_LINES = 8
"""Lines that are tried one by one for each kind of cause."""
LEAST_CUT_MM = 1.0
"""A shorter way across is no cut of its own."""
MOST_PROGRAM_LINES = 20_000
"""Longer programs are not judged again: nobody typed them by hand."""


class Trial(Struct, frozen=True, kw_only=True):
    """`kind` is the row of the tables; the rest is what is changed. `sure`: something else speaks for it already, so
    that it need only not make matters worse."""

    kind: str
    file: str = ""
    line: int | None = None
    values: dict[str, Value] = field(default_factory=dict)
    texts: dict[str, str] = field(default_factory=dict)
    zero: WorkZero | None = None
    tools: tuple[Tool, ...] | None = None
    order: tuple[int, ...] | None = None
    sure: bool = False


class Trials(Struct, frozen=True, kw_only=True):
    """The trial after which least is left, and the report of then; `best` None where no change explains enough."""

    best: Trial | None
    report: CheckReport


def with_texts(case: Case, texts: dict[str, str]) -> Case:
    """The case of other texts; the rest as it was."""
    return _case(case, Trial(kind="", texts=texts))


def weight(report: CheckReport) -> float:
    """How much is found: by checks, so that one fault that is found everywhere counts once."""
    return sum(
        STOPS if result.stops else WARNS * any(finding.warns for finding in result.findings)
        for result in report.results
    )  # fmt: skip


def tried(case: Case, report: CheckReport) -> Trials:
    """Raises nothing: a change that cannot be judged explains nothing."""
    before = weight(report)
    best, left, after = None, before, report
    if sum(program.replay.line_count for program in case.programs) > MOST_PROGRAM_LINES:
        return Trials(best=None, report=report)
    for trial in _trials(case):
        found = judge(_case(case, trial))
        now = weight(found)
        if (now < left - 1e-9 and now <= ENOUGH_RATIO * before) or (trial.sure and best is None and now <= left):
            best, left, after = trial, now, found
        if best is not None and left < WARNS:
            break
    return Trials(best=best, report=after)


def _case(case: Case, trial: Trial) -> Case:
    order = trial.order or tuple(range(len(case.programs)))
    tools = trial.tools or tuple(program.tool for program in case.programs)
    texts = [trial.texts.get(program.file, program.text) for program in case.programs]
    rows = [
        (case.programs[place].file, texts[source], tools[place]) for place, source in enumerate(order)
    ]  # fmt: skip
    stated = [program.stated for program in case.programs if program.stated is not None]
    made = make_case(
        drawing=case.drawing if case.drawn else None,
        stock=case.stock, zero=trial.zero or case.zero, machine=case.machine, material=case.material, programs=rows,
        stated=stated if len(stated) == len(rows) else (), breakthrough_mm=case.breakthrough_mm,
        tolerance_mm=case.tolerance_mm, cusp_height_mm=case.cusp_height_mm, cell_mm=case.ideal.grid.cell_mm,
    )  # fmt: skip
    return replace(
        made, fixings=case.fixings, outlines=case.outlines, lifted=case.lifted, face=case.face, told=case.told,
        papers=case.papers, told_of_face=case.told_of_face,
    )  # fmt: skip


def _trials(case: Case) -> Iterator[Trial]:
    traces = {program.file: trace(program.text) for program in case.programs}
    for family in (_spaces, _distances, _units, _minus, _faces, _swapped, _rapids, _corners, _points):
        yield from family(case, traces)


def _with_line(text: str, line: int, change: Callable[[str], str]) -> str:
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    lines[line - 1] = change(lines[line - 1])
    return "\n".join(lines)


def _spaces(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """A number without its letter: behind another number the rules read both as one."""
    for program in case.programs:
        for step in traces[program.file].steps:
            found = re.search(r"(?<=\d)[ \t]+([-+]?\d[\d.]*)", re.sub(r"\([^)]*\)|;.*", "", step.text))
            if found is not None and step.words:
                wrong = found.group(1)
                text = _with_line(program.text, step.number, partial(_left_out, found.group()))
                values: dict[str, Value] = {"wrong": wrong, "right": ""}
                yield Trial(
                    kind="no_letter", file=program.file, line=step.number, values=values, texts={program.file: text}
                )  # fmt: skip


def _left_out(part: str, line: str) -> str:
    return line.replace(part, "", 1)


def _distances(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """G91 where places were meant."""
    for program in case.programs:
        stated = [step for step in traces[program.file].steps if "G91" in step.words and "G28" not in step.words]
        if stated:
            text = re.sub(r"(?i)G\s*0*91(?![\d.])", "G90", program.text)
            yield Trial(kind="g91", file=program.file, line=stated[0].number, texts={program.file: text})


def _units(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """The other unit than was meant, written or not."""
    for program in case.programs:
        steps = traces[program.file].steps
        for word, other, kind in (("G20", "21", "inches"), ("G21", "20", "millimetres")):
            stated = [step for step in steps if word in step.words]
            if stated:
                text = re.sub(rf"(?i)G\s*0*{word[1:]}(?![\d.])", f"G{other}", program.text)
                yield Trial(kind=kind, file=program.file, line=stated[0].number, texts={program.file: text})
        if not any({"G20", "G21"} & step.words.keys() for step in steps):
            moves = next((step for step in steps if step.count), None)
            if moves is not None:
                text = _with_line(program.text, moves.number, lambda line: f"G20 {line}")
                yield Trial(kind="millimetres", file=program.file, line=moves.number, texts={program.file: text})


def _minus(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """A cut above the board that would be in it with a minus before Z."""
    top = case.stock.thickness_mm - case.zero.z_mm
    for program in case.programs:
        found = traces[program.file]
        motions = found.motions
        lines = [
            step.number for step in found.steps
            if step.count and step.values.get("Z", 0.0) * step.unit_mm > top
            and motions.kind[step.first] != RAPID and top < 1e-6 and _crosses(motions, step.first + step.count)
        ][:MOST_LINES]  # fmt: skip
        changed = program.text
        for line in lines:
            changed = _with_line(changed, line, _negative)
        if len(lines) > 1:
            yield _missing(found, program.file, lines[0], changed)
        for line in lines:
            yield _missing(found, program.file, line, _with_line(program.text, line, _negative))


def _missing(found: Trace, file: str, line: int, text: str) -> Trial:
    z = Typed(found.steps[line - 1].values["Z"], 4, True)
    return Trial(kind="missing_minus", file=file, line=line, values={"z": z}, texts={file: text}, sure=True)


def _crosses(motions: Motions, k: int) -> bool:
    """Whether motion k is a level cut: what follows a plunge, and not a way up."""
    if k >= len(motions) or motions.kind[k] == RAPID:
        return False
    across, up = np.split(np.abs(motions.end_mm[k] - motions.start_mm[k]), [2])
    return bool(np.hypot(*across) > LEAST_CUT_MM and up[0] < 1e-6)


def _negative(line: str) -> str:
    return re.sub(r"(?i)Z\s*\+?\s*(?=[\d.])", "Z-", line)


def _faces(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """Z zero at the board's other face than was said."""
    top = case.stock.thickness_mm
    at_top = case.zero.z_mm > top / 2
    zero = replace(case.zero, z_mm=0.0 if at_top else top)
    low = [int(cuts.line[int(cuts.low_z_mm.argmin())]) if len(cuts) else None for cuts in case.cuts]
    yield Trial(
        kind="z_zero_bottom" if at_top else "z_zero_top", file=case.programs[0].file, line=low[0], zero=zero
    )  # fmt: skip


def _swapped(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """Two files, each in the other's place."""
    for n in range(len(case.programs) - 1):
        order = [*range(len(case.programs))]
        order[n], order[n + 1] = order[n + 1], order[n]
        first, second = case.programs[n], case.programs[n + 1]
        if first.file != second.file:
            values: dict[str, Value] = {"first": first.file, "second": second.file}
            yield Trial(kind="swapped", file=first.file, values=values, order=tuple(order))


_MEASURE = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm")


def named_cutter(found: Trace) -> tuple[int, str, float] | None:
    """(line, comment, diameter in mm) of the cutter that a comment names."""
    for step in found.steps:
        for comment in step.comments:
            if re.search(r"(?i)tool|cutter|\bbit\b|mill|werkzeug|fr(?:ae|\u00e4|\u00c3\u00a4)ser", comment):
                size = _MEASURE.search(comment)
                if size is not None:
                    return step.number, comment, float(size.group(1).replace(",", "."))
    return None


def _rapids(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """G0 where G1 was meant, or a way across without lifting."""
    top = case.stock.thickness_mm
    for program, rapids in zip(case.programs, case.rapids, strict=True):
        sunk = sorted({int(line) for line in rapids.below(top - 1e-6).line})
        for line in sunk[:MOST_LINES]:
            step = traces[program.file].steps[line - 1]
            text = _with_line(program.text, line, partial(_fed, "" if step.feed else " F300"))
            if "G0" in step.words and text != program.text:
                kind = "rapid_down" if "Z" in step.values else "rapid_across"
                yield Trial(kind=kind, file=program.file, line=line, texts={program.file: text})


def _fed(feed: str, line: str) -> str:
    return re.sub(r"(?i)G\s*0*0(?![\d.])", "G1", line) + feed


def _corners(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """X0 Y0 at another corner than was said."""
    if case.drawn:
        return
    x0, y0, x1, y1 = case.stock.bounds_mm
    for kind, x, y in (
        ("zero_bottom_left", x0, y0), ("zero_middle", (x0 + x1) / 2, (y0 + y1) / 2), ("zero_bottom_right", x1, y0),
        ("zero_top_left", x0, y1), ("zero_top_right", x1, y1),
    ):  # fmt: skip
        if abs(case.zero.x_mm - x) + abs(case.zero.y_mm - y) > 1e-6:
            yield Trial(kind=kind, file=case.programs[0].file, zero=replace(case.zero, x_mm=x, y_mm=y))


def _points(case: Case, traces: dict[str, Trace]) -> Iterator[Trial]:
    """A decimal point that was left out: the number that is ten times what it should be."""
    x0, y0, x1, y1 = case.stock.bounds_mm
    low = np.array([x0 - case.zero.x_mm, y0 - case.zero.y_mm, -case.zero.z_mm - case.breakthrough_mm - 1])
    high = np.array([x1 - case.zero.x_mm, y1 - case.zero.y_mm, np.inf])
    for program in case.programs:
        tested = 0
        for step in traces[program.file].steps:
            for axis, least, most in zip("XYZ", low, high, strict=True):
                value = step.values.get(axis)
                if value is None or least <= value * step.unit_mm <= most or tested >= MOST_LINES:
                    continue
                tested += 1
                text = _with_line(program.text, step.number, _tenth(axis))
                values: dict[str, Value] = {
                    "wrong": f"{axis}{value:g}", "right": f"{axis}{value / 10:g}", "axis": axis
                }  # fmt: skip
                yield Trial(
                    kind="lost_point", file=program.file, line=step.number, values=values, texts={program.file: text}
                )  # fmt: skip


def _tenth(axis: str) -> Callable[[str], str]:
    def change(line: str) -> str:
        return re.sub(
            rf"(?i)({axis}\s*)([-+]?[\d.]+)", lambda m: f"{m.group(1)}{float(m.group(2)) / 10:g}", line, count=1
        )

    return change
