"""C142: the program fits the cutter, waits for it and turns it as the setup sheet says."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.stated import Stated
from signgen.checks.tip_path import TipPath
from signgen.messages import Message, Typed
from signgen.replay.motion import Event

SPEED_RATIO = 0.005
"""Of the speed, for its rounding to whole turns."""

HAIR_MM = 1e-6

CANCELLED = -1.0
"""What G49 is among the events of lengths."""

REMEDY = Message("as_stated.make_programs_again_nothing_here")


class AsStated:
    code = "C142"
    name = "as_stated"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
What a program tells the control beside where to go, against the setup sheet. In a file for one cutter there is no
tool change, no tool length and no stop. In a file for a changer each cutter in its turn is called by its number (T, M6)
and its length by the same number (G43 H), before anything moves, and nothing cancels it after. In a file for changes
by hand each change is followed by a stop that cannot be switched off (M0, not M1) and no other stop. Between the first
and the last cut the spindle turns at the speed on the sheet, and the extraction runs if the sheet says so.

A failure means the wrong cutter in the spindle, or a Z that is off by the difference of two cutters' lengths: a
cutter driven into the table.

What to do: make the programs again.

Least error seen: one word; half a percent of the speed."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        said: list[Message] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            if program.stated is None:
                continue
            findings += of_change(program, program.stated)
            findings += _stops(program, program.stated)
            findings += _speed(cuts.below(case.stock.thickness_mm - HAIR_MM), program, program.stated)
            findings += _extraction(cuts.below(case.stock.thickness_mm - HAIR_MM), program, program.stated)
            said.append(
                Message(
                    "as_stated.cutter_rpm",
                    number=program.stated.number,
                    spindle_rpm=round(program.stated.cutting.spindle_rpm),
                )
            )
        detail = Message("list.plain", these=tuple(said)) if said else Message("as_stated.no_sheet_goes_with_these")
        return verdict(self, findings, detail)


def of_change(program: ProgramUnderTest, stated: Stated) -> Iterator[Finding]:
    """Cutters and lengths, in the order in which they must come before the first motion."""
    events = program.replay.events
    changes = [event for event in events if event.kind == "change"]
    lengths = [event for event in events if event.kind == "length"]
    if stated.change == "none":
        for event in changes:
            yield _finding(
                program, event.line, Message("as_stated.changes_cutter_t_one_cutter", tool=Typed(event.value))
            )
        for number in program.replay.tool_numbers if not changes else ():
            yield _finding(program, None, Message("as_stated.names_tool_t_cutter_fitted", number=number))
        for event in lengths:
            if event.value == CANCELLED and event.motion:
                yield _finding(program, event.line, Message("as_stated.cancels_length_g49_in_middle"))
            elif event.value != CANCELLED:
                what = Message("as_stated.applies_length_tool_h_z", tool=Typed(event.value))
                yield _finding(program, event.line, what)
        return
    yield from _fitted(program, stated, changes)
    wanted = float(stated.number) if stated.change == "lengths" else CANCELLED
    moves = int(program.replay.motions.line[0]) if len(program.replay.motions) else program.replay.line_count
    begun = changes[0].line if changes else 0
    after = [event for event in lengths if event.line >= begun]
    in_time = any(event.value == wanted and event.line <= moves for event in after)
    if wanted != CANCELLED and not in_time and all(event.value == wanted for event in after):
        what = Message("as_stated.length_cutter_not_applied_g43", number=stated.number)
        yield _finding(program, after[0].line if after else moves, what)
    for event in after:
        if event.value != wanted or (wanted == CANCELLED and event.motion):
            name = "G49" if event.value == CANCELLED else f"H{event.value:g}"
            what = Message("as_stated.gives_cutter_another_length_than", name=name, number=stated.number)
            yield _finding(program, event.line, what)


def _fitted(program: ProgramUnderTest, stated: Stated, changes: list[Event]) -> Iterator[Finding]:
    """The cutter that the control fits, or asks for."""
    first = int(program.replay.motions.line[0]) if len(program.replay.motions) else None
    if not changes or (first is not None and changes[0].line > first):
        yield _finding(program, first, Message("as_stated.cutter_never_called_t_m6", number=stated.number))
    for event in changes:
        if event.value != stated.number:
            what = Message(
                "as_stated.fits_t_where_sheet_says",
                tool=Typed(event.value),
                number=stated.number,
                cutter=program.tool.called,
            )
            yield _finding(program, event.line, what)
    if len(changes) > 1 and all(event.value == stated.number for event in changes):
        yield _finding(program, changes[1].line, Message("as_stated.cutter_called_twice", number=stated.number))


def _stops(program: ProgramUnderTest, stated: Stated) -> Iterator[Finding]:
    """A pause for each change by hand but the first, and no other."""
    stops = [event for event in program.replay.events if event.kind == "stop"]
    first = int(program.replay.motions.line[0]) if len(program.replay.motions) else program.replay.line_count
    pauses = stated.change == "pause" and stated.number > 1
    change = next((event.line for event in program.replay.events if event.kind == "change"), 0)
    waited = [event for event in stops if pauses and event.value == 0 and change <= event.line < first]
    if pauses and not waited:
        what = Message("as_stated.does_not_wait_m0_fitted", cutter=program.tool.called)
        yield _finding(program, stops[0].line if stops else first, what)
    for event in stops:
        if event not in waited[:1]:
            yield _finding(program, event.line, Message("as_stated.stops_here_sheet_does_not", words=event.words))


def _speed(sunk: TipPath, program: ProgramUnderTest, stated: Stated) -> Iterator[Finding]:
    used = np.unique(sunk.motion)
    rpm = program.replay.motions.spindle_rpm[used]
    wanted = stated.cutting.spindle_rpm
    bad = (rpm > 0) & (np.abs(rpm - wanted) > SPEED_RATIO * wanted)
    if bad.any():
        k = int(used[int(np.argmax(bad))])
        turns = program.replay.motions.spindle_rpm[k]
        what = Message("as_stated.cuts_rpm_sheet_says", turns=round(turns), wanted=round(wanted))
        line = max(
            (e.line for e in program.replay.events if e.kind == "spindle" and e.line <= program.replay.motions.line[k]),
            default=int(program.replay.motions.line[k]),
        )
        yield _finding(program, line, what)


def _extraction(sunk: TipPath, program: ProgramUnderTest, stated: Stated) -> Iterator[Finding]:
    """On by the word that the sheet names before the first cut, off after the last."""
    if not len(sunk):
        return
    begins, ends = int(sunk.line[0]), int(sunk.line[-1])
    switched = [event for event in program.replay.events if event.kind == "coolant"]
    word = stated.manner.extraction
    if word == "none":
        for event in switched[:1]:
            yield _finding(
                program, event.line, Message("as_stated.switches_something_with_sheet_names", words=event.words)
            )
        return
    before = [event for event in switched if event.line <= begins]
    if not before or before[-1].value != float(word[1:]):
        yield _finding(program, begins, Message("as_stated.extraction_not_switched_on_before", upper=word.upper()))
    for event in switched:
        if begins < event.line <= ends:
            yield _finding(
                program, event.line, Message("as_stated.extraction_switched_before_last_cut", words=event.words)
            )


def _finding(program: ProgramUnderTest, line: int | None, message: Message) -> Finding:
    return Finding(message=message, file=program.file, line=line, remedy=REMEDY)
