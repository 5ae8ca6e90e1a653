"""What the checks say, for people at a terminal and for programs."""

from __future__ import annotations

from collections.abc import Iterator

from signgen.checks.check import Case, CheckReport, CheckResult, Finding
from signgen.job.judged import Judged
from signgen.job.survey import survey_data, survey_lines
from signgen.job.tally import Tally
from signgen.words.words import words_in

FORMAT, VERSION = "signgen-check", 1

LONGEST_LINE = 80
"""Characters of a program's line that are shown."""

CAUTION = (
    "Before you start: eyes and ears protected, dust extracted, the board fast, nothing in the cutter's way. Run it in",
    "the air once. These checks know neither your machine nor your clamps; its manual and your workshop's rules come",
    "first.",
)
"""For programs from elsewhere; a setup sheet has more."""


def verdict_text(judged: Judged) -> str:
    """The verdict in one line; what programs from elsewhere do; what was compared and how closely; then each finding
    with its place, the line of the program, what is wrong and what to do."""
    lines = [f"{judged.path}: {verdict_line(judged.report)}"]
    if judged.survey is not None:
        lines += ["", *survey_lines(judged.survey)]
    lines += ["", "What was compared", *(_compared(result) for result in judged.report.results)]
    found = list(judged.report.findings())
    if found:
        lines += ["", "What was found"]
    named = {finding.file for _, finding in found}
    texts = {program.file: _lines(program.text) for program in judged.case.programs if program.file in named}
    for number, (result, finding) in enumerate(found, 1):
        said = _line(texts.get(finding.file, []), finding.line)
        lines += _finding_lines(judged.case, number, result, finding, said)
    if judged.survey is not None and judged.report.passed:
        lines += ["", *CAUTION]
    return "\n".join(lines)


def verdict_line(report: CheckReport) -> str:
    """'all 22 checks passed.', 'do not run it: 2 of 22 checks failed.'"""
    return f"{Tally.of(report).words(words_in('en'), read_on=True)}."


def _compared(result: CheckResult) -> str:
    return f"  {result.code} {result.name:<18} {_word(result):<8} {result.detail}"


def _word(result: CheckResult) -> str:
    if result.passed:
        return "passed"
    if result.skipped:
        return "not run" if result.applies else "-"
    return "FAILED" if result.stops else "warning"


def _finding_lines(case: Case, number: int, result: CheckResult, finding: Finding, said: str) -> Iterator[str]:
    place = _place(case, finding)
    where = ", ".join(part for part in (finding.file, f"line {finding.line}" if finding.line else "", place) if part)
    grave = "" if result.severity == "error" and not finding.warns else " (warning)"
    yield f"  {number}. {result.code} {result.name}{grave}{f': {where}' if where else ''}"
    if said:
        yield f"       {said}"
    yield f"     {finding.message}"
    if finding.remedy:
        yield f"     To do: {finding.remedy}"


def _place(case: Case, finding: Finding) -> str:
    """The place on the sign or board, and as the programs count where that is not the same."""
    if finding.place_mm is None:
        return ""
    x, y = finding.place_mm
    said = f"at ({x:.2f}, {y:.2f}) on the {'sign' if case.drawn else 'board'}"
    if (case.zero.x_mm, case.zero.y_mm) == (0.0, 0.0):
        return said
    return f"{said}, which is X{x - case.zero.x_mm:.2f} Y{y - case.zero.y_mm:.2f} in the program"


def _lines(text: str) -> list[str]:
    """As the reader counts them."""
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def _line(lines: list[str], number: int | None) -> str:
    """A program's line as it stands there, or nothing."""
    if not number or number > len(lines):
        return ""
    line = "".join(c if c.isprintable() else "?" for c in lines[number - 1].strip())
    return line if len(line) <= LONGEST_LINE else line[: LONGEST_LINE - 3] + "..."


def finding_text(finding: Finding) -> str:
    """One finding as a sentence with its place and its remedy."""
    where = ", ".join(
        part
        for part in (
            finding.file,
            f"line {finding.line}" if finding.line else "",
            f"at X{finding.place_mm[0]:.2f} Y{finding.place_mm[1]:.2f} on the sign" if finding.place_mm else "",
        )
        if part
    )
    return " ".join(part for part in (f"{where}:" if where else "", finding.message, finding.remedy) if part)


def verdict_data(judged: Judged) -> dict[str, object]:
    """The same as data: the keys of a report's checks, the findings of each, and the survey."""
    data: dict[str, object] = {
        "format": FORMAT,
        "version": VERSION,
        "path": judged.path,
        "passed": judged.report.passed,
        "checks": [
            {
                "code": result.code,
                "name": result.name,
                "severity": result.severity,
                "passed": result.passed,
                "applies": result.applies,
                "skipped": result.skipped,
                "detail": result.detail,
                "findings": [_finding_data(finding) for finding in result.findings],
            }
            for result in judged.report.results
        ],
    }
    return data | ({"survey": survey_data(judged.survey)} if judged.survey is not None else {})


def _finding_data(finding: Finding) -> dict[str, object]:
    return {
        "file": finding.file,
        "line": finding.line,
        "place_mm": finding.place_mm and list(finding.place_mm),
        "message": finding.message,
        "remedy": finding.remedy,
        "warns": finding.warns,
    }
