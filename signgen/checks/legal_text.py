"""C103: the text of each program is legal, plain and complete."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.parts import cutters_in_turn
from signgen.messages import Message, Sentence
from signgen.replay.motion import Fault

REQUIRED = (
    ("G17",),
    ("G20", "G21"),
    ("G40",),
    ("G49",),
    ("G54", "G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3"),
    ("G80",),
    ("G90",),
    ("G94",),
)
"""One mode of each group must be stated before the first motion, for a machine may come from another job's modes."""

MOST_LINE_CHARACTERS = 256
"""Longest line that the language has. Source: NIST IR 6556 section 3.3."""


STORED = (5161, 5399)
"""Parameters in which a control keeps its home places, offsets and work zeros. Source: NIST IR 6556 table 2, from
memory."""

_COMMENT = re.compile(r"\([^)]*\)|;.*")
_MODE = re.compile(r"G\s*0*(20|21|90|91)(?![\d.])", re.IGNORECASE)


class LegalText:
    code = "C103"
    name = "legal_text"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Each program is read word by word by the published rules of RS-274 (NIST IR 6556). It must be plain ASCII with lines
of 256 characters or fewer, hold no word that the rules refuse, state plane, units, work zero, distance and feed mode
and the cancelling of compensation, length offset and cycles before its first motion, keep one unit and absolute
distances throughout, use one cutter (or as many as a file of a dialect with changes of cutter is meant for), and end
with M2 or M30.

A failure means that a controller may stop in the middle or, worse, do something else than was meant. The other checks
are not run on a text with refused words, because nobody knows what it makes a machine do.

What to do: make the programs again. If a program was edited by hand, mend the line that is named.

Least error seen: a single wrong character."""

    def run(self, case: Case) -> CheckResult:
        seen: set[str] = set()
        findings: list[Finding] = []
        for program in case.programs:
            findings += _findings(program, case.drawn, program.cutters == 1 or program.file not in seen)
            seen.add(program.file)
        if not case.programs:
            findings.append(
                Finding(message=Message("legal_text.there_no_program"), remedy=Message("checks.make_programs_again"))
            )
        lines = sum({program.file: program.replay.line_count for program in case.programs}.values())
        motions = sum(len(program.replay.motions) for program in case.programs)
        files = len(seen)
        return verdict(
            self,
            findings,
            Message(
                "legal_text.file_lines_motions_read",
                files=files,
                lines=lines,
                motions=motions,
            ),
        )


def _of_words(fault: Fault) -> Sentence:
    return Message("legal_text.said", words=fault.words, what=fault.message) if fault.words else fault.message


def _findings(program: ProgramUnderTest, drawn: bool, first_of_file: bool) -> Iterator[Finding]:
    """What is legal but not as careful as this project's own programs are is only a warning in others."""
    replay, file = program.replay, program.file
    for number, fault in enumerate(replay.faults, 1):
        yield Finding(
            message=_of_words(fault),
            file=file,
            line=fault.line,
            remedy=Message("legal_text.mend_remove_line"),
            warns=not drawn and replay.bad_end and number == replay.fault_count,
        )
    if replay.fault_count > len(replay.faults):
        yield Finding(
            message=Message("legal_text.more_lines_are_refused", fault_count=replay.fault_count - len(replay.faults)),
            file=file,
        )
    for note in replay.notes:
        yield Finding(
            message=_of_words(note),
            file=file,
            line=note.line,
            remedy=Message("legal_text.remove_line") if drawn else Message("legal_text.make_sure_machine_remove_line"),
            warns=not drawn and note.followed,
        )
    yield from _parameters(program, drawn)
    missing = [
        Message("list.any", these=group[:2]) for group in REQUIRED if not replay.modes_before_motion.intersection(group)
    ]
    if missing and first_of_file:
        yield Finding(
            message=Message("legal_text.not_stated_before_first_motion", missing=tuple(missing)),
            file=file,
            line=int(replay.motions.line[0]) if len(replay.motions) else None,
            remedy=Message("legal_text.state_every_mode_in_first")
            if drawn
            else Message("legal_text.make_sure_that_machine_starts"),
            warns=not drawn,
        )
    if not len(replay.motions):
        yield Finding(
            message=Message("legal_text.program_moves_nothing"),
            file=file,
            remedy=Message("checks.make_programs_again"),
        )
    cutters = cutters_in_turn(replay)
    if len(cutters) > 1:
        line = int(replay.motions.line[np.flatnonzero(np.diff(replay.motions.tool))[-(len(cutters) - 1)] + 1])
        yield Finding(
            message=Message("legal_text.cutter_changed_t_after_program", cutters=cutters[1]),
            file=file,
            line=line,
            remedy=Message("legal_text.keep_one_program_each_cutter"),
        )
    if first_of_file:
        yield from _by_line(program, drawn)


def _parameters(program: ProgramUnderTest, drawn: bool) -> Iterator[Finding]:
    """Parameters that are set: a sign's programs have none; among those of the control are the places of its zeros."""
    for event in program.replay.events:
        kept = event.kind == "stored" and STORED[0] <= event.value <= STORED[1]
        if event.kind == "stored" and (drawn or kept):
            what = Message("legal_text.keeps_work_zeros_offsets_home") if kept else Message("legal_text.computes_with")
            yield Finding(
                message=Message(
                    "legal_text.parameter_set_control_effect",
                    words=event.words,
                    what=what,
                ),
                file=program.file,
                line=event.line,
                remedy=Message("legal_text.remove_line"),
            )


def _by_line(program: ProgramUnderTest, drawn: bool) -> Iterator[Finding]:
    """What is seen line by line: characters, length, and modes that must not change."""
    units: str | None = None
    for number, raw in enumerate(program.text.replace("\r\n", "\n").replace("\r", "\n").split("\n"), start=1):
        if not raw.isascii():
            strange = next(character for character in raw if not character.isascii())
            yield Finding(
                message=Message("legal_text.character_not_plain_ascii", strange=strange),
                file=program.file,
                line=number,
                remedy=Message("legal_text.write_in_plain_letters_some"),
                warns=not drawn,
            )
        if len(raw) > MOST_LINE_CHARACTERS:
            yield Finding(
                message=Message(
                    "legal_text.line_has_characters_language_allows",
                    count=len(raw),
                    most_line_characters=MOST_LINE_CHARACTERS,
                ),
                file=program.file,
                line=number,
                remedy=Message("legal_text.shorten"),
            )
        for match in _MODE.finditer(_COMMENT.sub("", raw)) if "G" in raw or "g" in raw else ():
            code = match.group(1)
            if (drawn and code == "91") or (code in ("20", "21") and units not in (None, code)):
                what = (
                    Message("legal_text.distances_become_relative")
                    if code == "91"
                    else Message("legal_text.units_change_in_middle")
                )
                yield Finding(
                    message=Message("legal_text.g", what=what, code=code),
                    file=program.file,
                    line=number,
                    remedy=Message("legal_text.keep_one_unit_absolute_distances"),
                    warns=not drawn,
                )
            units = code if code in ("20", "21") else units
    if program.text and not program.text.endswith("\n"):
        yield Finding(
            message=Message("legal_text.last_line_does_not_end"),
            file=program.file,
            line=program.replay.line_count,
            remedy=Message("checks.make_programs_again"),
            warns=not drawn,
        )
