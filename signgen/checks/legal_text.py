"""C103: the text of each program is legal, plain and complete."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.parts import cutters_in_turn

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

NOT_FOLLOWED = "not followed"
"""What the reader says of words whose effect on the way it does not know: the board is then cut otherwise than here."""

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
            findings.append(Finding(message="There is no program.", remedy="Make the programs again."))
        lines = sum({program.file: program.replay.line_count for program in case.programs}.values())
        motions = sum(len(program.replay.motions) for program in case.programs)
        files = len(seen)
        return verdict(
            self, findings, f"{files} file{'s' if files != 1 else ''}, {lines:,} lines and {motions:,} motions read"
        )


def _findings(program: ProgramUnderTest, drawn: bool, first_of_file: bool) -> Iterator[Finding]:
    """What is legal but not as careful as this project's own programs are is only a warning in others."""
    replay, file = program.replay, program.file
    for number, fault in enumerate(replay.faults, 1):
        said = f"'{fault.words}': " if fault.words else ""
        yield Finding(
            message=f"{said}{fault.message}",
            file=file,
            line=fault.line,
            remedy="Mend or remove this line.",
            warns=not drawn and replay.bad_end and number == replay.fault_count,
        )
    if replay.fault_count > len(replay.faults):
        yield Finding(message=f"{replay.fault_count - len(replay.faults)} more lines are refused.", file=file)
    for note in replay.notes:
        said = f"'{note.words}': " if note.words else ""
        yield Finding(
            message=f"{said}{note.message}",
            file=file,
            line=note.line,
            remedy="Remove this line." if drawn else "Make sure of it at the machine, or remove this line.",
            warns=not drawn and NOT_FOLLOWED not in note.message,
        )
    yield from _parameters(program, drawn)
    missing = [" or ".join(group[:2]) for group in REQUIRED if not replay.modes_before_motion.intersection(group)]
    if missing and first_of_file:
        yield Finding(
            message=f"Not stated before the first motion: {', '.join(missing)}.",
            file=file,
            line=int(replay.motions.line[0]) if len(replay.motions) else None,
            remedy="State every mode in the first lines."
            if drawn
            else "Make sure that the machine starts in the modes that the program was written for.",
            warns=not drawn,
        )
    if not len(replay.motions):
        yield Finding(message="The program moves nothing.", file=file, remedy="Make the programs again.")
    cutters = cutters_in_turn(replay)
    if len(cutters) > 1:
        line = int(replay.motions.line[np.flatnonzero(np.diff(replay.motions.tool))[-(len(cutters) - 1)] + 1])
        yield Finding(
            message=f"The cutter is changed to T{cutters[1]} after the program has moved.",
            file=file,
            line=line,
            remedy="Keep one program for each cutter.",
        )
    if first_of_file:
        yield from _by_line(program, drawn)


def _parameters(program: ProgramUnderTest, drawn: bool) -> Iterator[Finding]:
    """Parameters that are set: a sign's programs have none; among those of the control are the places of its zeros."""
    for event in program.replay.events:
        kept = event.kind == "stored" and STORED[0] <= event.value <= STORED[1]
        if event.kind == "stored" and (drawn or kept):
            what = "keeps work zeros, offsets and home places in it" if kept else "computes with it"
            yield Finding(
                message=f"'{event.words}': A parameter is set, and the control {what}; the effect is {NOT_FOLLOWED}.",
                file=program.file,
                line=event.line,
                remedy="Remove this line.",
            )


def _by_line(program: ProgramUnderTest, drawn: bool) -> Iterator[Finding]:
    """What is seen line by line: characters, length, and modes that must not change."""
    units: str | None = None
    for number, raw in enumerate(program.text.replace("\r\n", "\n").replace("\r", "\n").split("\n"), start=1):
        if not raw.isascii():
            strange = next(character for character in raw if not character.isascii())
            yield Finding(
                message=f"The character '{strange}' is not plain ASCII.",
                file=program.file,
                line=number,
                remedy="Write it in plain letters; some controllers stop at it, even in a comment.",
                warns=not drawn,
            )
        if len(raw) > MOST_LINE_CHARACTERS:
            yield Finding(
                message=f"The line has {len(raw)} characters; the language allows {MOST_LINE_CHARACTERS}.",
                file=program.file,
                line=number,
                remedy="Shorten it.",
            )
        for match in _MODE.finditer(_COMMENT.sub("", raw)) if "G" in raw or "g" in raw else ():
            code = match.group(1)
            if (drawn and code == "91") or (code in ("20", "21") and units not in (None, code)):
                what = "Distances become relative" if code == "91" else "The units change in the middle"
                yield Finding(
                    message=f"{what} (G{code}).",
                    file=program.file,
                    line=number,
                    remedy="Keep one unit and absolute distances (G90) throughout.",
                    warns=not drawn,
                )
            units = code if code in ("20", "21") else units
    if program.text and not program.text.endswith("\n"):
        yield Finding(
            message="The last line does not end, so the file may be cut short.",
            file=program.file,
            line=program.replay.line_count,
            remedy="Make the programs again.",
            warns=not drawn,
        )
