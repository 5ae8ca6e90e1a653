"""What is most likely wrong with programs, first and once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
from msgspec import Struct, field
from msgspec.structs import replace

from signgen.checks import judge
from signgen.checks.check import Case, CheckReport, Finding, ProgramUnderTest
from signgen.lesson.actions import missteps
from signgen.lesson.slips import decoded, slip_in
from signgen.lesson.trials import named_cutter, tried, with_texts
from signgen.messages.values import Typed
from signgen.messages.wording import Value
from signgen.replay.extras import without_extras
from signgen.replay.motion import RAPID
from signgen.replay.steps import trace

SAME_MM = 0.05
"""Diameters that differ by less are the same cutter: 6.35 and 1/4 inch."""
SWAPPED_RPM, SWAPPED_FEED = 4000, 7000
"""A feed above and a speed below these have likely changed places: routers turn faster and feed slower (common
practice)."""


class Cause(Struct, frozen=True, kw_only=True):
    """`kind` is the row of the tables (`cause.kind`, and `.look` behind it); `values` what its words name; `text` the
    line as it stands, `right` as it was likely meant, '' where nobody can say."""

    kind: str
    file: str = ""
    line: int | None = None
    text: str = ""
    right: str = ""
    values: dict[str, Value] = field(default_factory=dict)


class Likely(Struct, frozen=True, kw_only=True):
    """`causes`: the likeliest first, each once. `after`: the programs judged again with every slip of the pen mended or
    its line left out, None where all lines could be read."""

    causes: tuple[Cause, ...]
    after: CheckReport | None


def likely(case: Case, report: CheckReport) -> Likely:
    """What is likely wrong with programs that were judged; nothing where all is well."""
    causes: list[Cause] = []
    texts: dict[str, str] = {}
    for program in _files(case):
        mended, found = _readable(program)
        causes += found
        if mended != program.text:
            texts[program.file] = mended
    if texts:
        case = with_texts(case, texts)
        report = judge(case)
    causes += _cutters(case)
    causes += _acts(case)
    if not report.passed or _suspicious(case, report):
        trials = tried(case, report)
        if trials.best is not None:
            best = trials.best
            cause = _with_line(case, Cause(kind=best.kind, file=best.file, line=best.line, values=best.values))
            # a wrong unit or manner of counting makes arcs look wrong that are right
            alone = best.kind in ("g91", "inches", "millimetres") and not texts
            causes = [cause] if alone else [*causes, cause]
            report = trials.report
        causes += _by_state(case)
        if not causes:
            causes += _by_checks(case, report)
    return Likely(causes=tuple(_once(causes)), after=judge(case) if texts else None)


def _files(case: Case) -> list[ProgramUnderTest]:
    return list({program.file: program for program in case.programs}.values())


def _once(causes: list[Cause]) -> Iterator[Cause]:
    """The first of each kind in each file."""
    seen = set()
    for cause in causes:
        if (cause.kind, cause.file) not in seen:
            seen.add((cause.kind, cause.file))
            yield cause


def _readable(program: ProgramUnderTest) -> tuple[str, list[Cause]]:
    """The text with its slips mended, those that nobody can mend left out as comments; and the slips."""
    text = decoded(program.text).replace("\r\n", "\n").replace("\r", "\n")
    lines, bare = text.split("\n"), without_extras(text)[0].split("\n")
    causes = []
    if program.text.count("\x00") or text.lstrip().startswith(("{\\rtf", "PK\x03", "<html", "<!DOCTYPE", "%PDF")):
        return program.text, [Cause(kind="no_text_file", file=program.file, line=1)]
    for number, line in enumerate(bare, 1):
        slip = slip_in(line, number)
        if slip is not None:
            causes.append(
                Cause(
                    kind=slip.kind, file=program.file, line=number, text=lines[number - 1].strip(),
                    right=slip.mended.strip(), values={"wrong": slip.wrong, "right": slip.right},
                )
            )  # fmt: skip
            lines[number - 1] = slip.mended
    return ("\n".join(lines) if causes else program.text), causes


def _cutters(case: Case) -> Iterator[Cause]:
    """Another cutter than a comment of the heading names; of two files that name each other's, that they are
    swapped."""
    if case.drawn:
        return
    wrong = []
    for program in case.programs:
        named = named_cutter(trace(program.text)) if program.cutters == 1 else None
        if named is not None and abs(named[2] - program.tool.diameter_mm) > SAME_MM:
            wrong.append((program, named))
    if len(wrong) == 2 and all(
        abs(named[2] - other.tool.diameter_mm) <= SAME_MM
        for (_, named), (other, _) in zip(wrong, wrong[::-1], strict=True)
    ):
        first, second = (short(program.file) for program, _ in wrong)
        yield Cause(kind="swapped", file=wrong[0][0].file, values={"first": first, "second": second})
        return
    for program, (line, said, _) in wrong:
        values: dict[str, Value] = {"said": said, "fitted": program.tool.called}
        yield _with_line(case, Cause(kind="wrong_cutter", file=program.file, line=line, values=values))


def _acts(case: Case) -> list[Cause]:
    """Readable lines that cannot be carried out, and programs without an end."""
    causes = []
    for program in _files(case):
        found = trace(program.text)
        lines = [step.text for step in found.steps]
        causes += [
            Cause(kind=one.kind, file=program.file, line=one.line, text=lines[one.line - 1], values=one.values)
            for one in missteps(found)
        ]
        if not len(found.motions) and not causes:
            causes.append(Cause(kind="empty", file=program.file))
        elif program.replay.bad_end and program.replay.fault_count == 1 and not causes:
            causes.append(Cause(kind="no_end", file=program.file, line=len([*filter(None, lines)])))
    # a program that merely lacks its end runs all the same: whatever else is found comes first
    return sorted(causes, key=lambda cause: cause.kind == "no_end")


def _suspicious(case: Case, report: CheckReport) -> bool:
    """Nothing stops the programs, and still they do hardly what was meant: a cut in the air, another unit."""
    warned = any(result.code == "C123" and result.findings for result in report.results)
    return not case.drawn and (warned or any(_cuts_air(case, n) for n in range(len(case.programs))))


def _cuts_air(case: Case, n: int) -> bool:
    """Whether a level cut of some length goes through the air."""
    motions, top = case.programs[n].replay.motions, case.stock.thickness_mm - case.zero.z_mm
    step = motions.end_mm - motions.start_mm
    level = (motions.kind != RAPID) & (np.abs(step[:, 2]) < 1e-6) & (np.hypot(step[:, 0], step[:, 1]) > 1)
    return bool((level & (motions.end_mm[:, 2] > top + 1e-6)).any())


def _by_state(case: Case) -> Iterator[Cause]:
    """The spindle and the feed at the first cut."""
    for n, program in enumerate(case.programs):
        cuts = case.cuts[n].below(case.stock.thickness_mm - 1e-6)
        if not len(cuts):
            continue
        motions, first = program.replay.motions, int(cuts.motion[0])
        rpm, line = float(motions.spindle_rpm[first]), int(cuts.line[0])
        words = {name for step in trace(program.text).steps if step.number <= line for name in step.words}
        speeds = [step.speed for step in trace(program.text).steps if step.speed]
        fastest = float(motions.feed_mm_per_min.max())
        if speeds and max(speeds) < SWAPPED_RPM and fastest > SWAPPED_FEED:
            values: dict[str, Value] = {"feed": Typed(fastest), "rpm": Typed(max(speeds))}
            yield _with_line(case, Cause(kind="feed_speed_swapped", file=program.file, line=line, values=values))
        elif rpm < 0:
            turned = next((event.line for event in program.replay.events if event.kind == "spindle"), line)
            yield _with_line(case, Cause(kind="backwards", file=program.file, line=turned))
        elif rpm == 0:
            kind = "spindle_stopped" if "M5" in words else "no_speed" if "M3" in words else "no_spindle"
            yield _with_line(case, Cause(kind=kind, file=program.file, line=line))


_OF_CHECKS = {
    "C101": "off_machine", "C104": "off_board", "C102": "rapid_in_wood", "C105": "spindle_ready", "C141": "starts_ends",
    "C106": "feed_odd", "C107": "too_deep", "C117": "cutter_short", "C118": "pass_too_deep", "C113": "order",
    "C114": "plunge", "C124": "fixing", "C140": "other", "C144": "heading", "C142": "other",
}  # fmt: skip


def _by_checks(case: Case, report: CheckReport) -> Iterator[Cause]:
    """The first finding of each check that stops the programs, where nothing else explains it."""
    for result in report.results:
        if not result.stops:
            continue
        finding = next((each for each in result.findings if not each.warns), None)
        if finding is not None:
            yield _with_line(case, _of_finding(result.code, finding))


def _of_finding(code: str, finding: Finding) -> Cause:
    values: dict[str, Value] = {"code": code, "finding": finding.message, "remedy": finding.remedy}
    return Cause(kind=_OF_CHECKS.get(code, "other"), file=finding.file, line=finding.line, values=values)


def _with_line(case: Case, cause: Cause) -> Cause:
    """With its line as it stands there."""
    text = next((program.text for program in case.programs if program.file == cause.file), "")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    shown = lines[cause.line - 1].strip() if cause.line and cause.line <= len(lines) else ""
    return replace(cause, text=shown)


def short(file: str) -> str:
    """A file's name without its folder."""
    return Path(file).name
