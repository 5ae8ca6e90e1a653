"""What the checks say, for people at a terminal and for programs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from signgen.checks.check import Case, CheckReport, CheckResult, Finding
from signgen.job.judged import Judged
from signgen.job.survey import survey_data, survey_lines
from signgen.job.tally import Tally
from signgen.messages import Message, Sentence
from signgen.messages.language import LANGUAGES
from signgen.messages.values import Typed
from signgen.messages.wording import Wording, has_words
from signgen.words.words import words_in

FORMAT, VERSION = "signgen-check", 1

LONGEST_LINE = 80
"""Characters of a program's line that are shown."""


def verdict_text(judged: Judged, language: str | None = None) -> str:
    """The verdict in one line; what programs from elsewhere do; what was compared and how closely; then each finding
    with its place, the line of the program, what is wrong and what to do. In the sign's own language unless another
    is asked for; programs from elsewhere have none, and it is English."""
    wording = Wording(language or judged.language)
    code = wording.language.code
    lines = [f"{judged.path}: {verdict_line(judged.report, code)}"]
    if judged.survey is not None:
        lines += ["", *survey_lines(judged.survey, wording)]
    lines += ["", wording(Message("verdict.compared"))]
    lines += _compared(judged.report.results, wording)
    found = list(judged.report.findings())
    if found:
        lines += ["", wording(Message("verdict.found"))]
    named = {finding.file for _, finding in found}
    texts = {program.file: _lines(program.text) for program in judged.case.programs if program.file in named}
    for number, (result, finding) in enumerate(found, 1):
        said = _line(texts.get(finding.file, []), finding.line)
        lines += _finding_lines(judged.case, number, result, finding, said, wording)
    if judged.survey is not None and judged.report.passed:
        lines += ["", wording(Message("verdict.caution"))]
    return "\n".join((*lines, *wording.lines(())))


def verdict_line(report: CheckReport, language: str = "en") -> str:
    """'all 22 checks passed.', 'do not run it: 2 of 22 checks failed.'"""
    return f"{Tally.of(report).words(words_in(language), read_on=True)}."


def _called(result: CheckResult, wording: Wording) -> str:
    """A check's name: in English as it is typed behind `explain`."""
    if wording.language.code == LANGUAGES[0] or not has_words(f"check.{result.name}"):
        return result.name
    return wording(Message(f"check.{result.name}"))


def _compared(results: Sequence[CheckResult], wording: Wording) -> Iterator[str]:
    rows = [(result.code, _called(result, wording), wording(_word(result))) for result in results]
    names, words = (max((len(row[k]) for row in rows), default=0) for k in (1, 2))
    for (code, name, word), result in zip(rows, results, strict=True):
        yield f"  {code} {name:<{names}} {word:<{words}} {wording(result.detail)}"


def _word(result: CheckResult) -> Sentence:
    if result.passed:
        return Message("checks.passed")
    if result.skipped:
        return Message("checks.not_run") if result.applies else "-"
    return Message("verdict.word_failed" if result.stops else "verdict.word_warning")


def _finding_lines(
    case: Case, number: int, result: CheckResult, finding: Finding, said: str, wording: Wording
) -> Iterator[str]:
    where = tuple(part for part in (finding.file, _line_said(finding), _place(case, finding)) if part)
    grave = () if result.severity == "error" and not finding.warns else (Message("verdict.only_warns"),)
    told = " ".join((_called(result, wording), *map(wording, grave)))
    at = f": {wording(Message('list.plain', these=where))}" if where else ""
    yield f"  {number}. {result.code} {told}{at}"
    if said:
        yield f"       {said}"
    yield f"     {wording(finding.message)}"
    if finding.remedy:
        yield f"     {wording(Message('verdict.to_do', what=finding.remedy))}"


def _line_said(finding: Finding) -> Sentence:
    return Message("verdict.line", line=finding.line) if finding.line else ""


def _place(case: Case, finding: Finding) -> Sentence:
    """The place on the sign or board, and as the programs count where that is not the same."""
    if finding.place_mm is None:
        return ""
    x, y = finding.place_mm
    said = Message("verdict.on_sign" if case.drawn else "verdict.on_board", x=Typed(x, 2), y=Typed(y, 2))
    if (case.zero.x_mm, case.zero.y_mm) == (0.0, 0.0):
        return said
    there = {"x": Typed(x - case.zero.x_mm, 2), "y": Typed(y - case.zero.y_mm, 2)}
    return Message("verdict.which_is", place=said, **there)


def _lines(text: str) -> list[str]:
    """As the reader counts them."""
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def _line(lines: list[str], number: int | None) -> str:
    """A program's line as it stands there, or nothing."""
    if not number or number > len(lines):
        return ""
    line = "".join(c if c.isprintable() else "?" for c in lines[number - 1].strip())
    return line if len(line) <= LONGEST_LINE else line[: LONGEST_LINE - 3] + "..."


def finding_told(finding: Finding) -> Sentence:
    """One finding as a sentence with its place and its remedy."""
    x, y = finding.place_mm or (0.0, 0.0)
    place = Message("verdict.at", x=Typed(x, 2), y=Typed(y, 2)) if finding.place_mm else ""
    where = tuple(part for part in (finding.file, _line_said(finding), place) if part)
    told = Message("verdict.both", what=finding.message, remedy=finding.remedy) if finding.remedy else finding.message
    return Message("verdict.where", where=where, what=told) if where else told


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
                "detail": str(result.detail),
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
        "message": str(finding.message),
        "remedy": str(finding.remedy),
        "warns": finding.warns,
    }
