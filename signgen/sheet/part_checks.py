"""Section 8: what was proved about the programs before they were written. Section 9: the files."""

from __future__ import annotations

from signgen.checks.check import CheckReport, CheckResult
from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el

MOST_FINDINGS = 2
"""Of one check, on paper; the rest is in the report."""
FILES = (
    ("setup.html", "this sheet"),
    ("preview.svg, preview.png", "the picture, to scale"),
    ("report.json", "all figures for other programs"),
)


def verdict_words(report: CheckReport) -> str:
    """'All 12 checks passed', '11 of 12 checks passed, 1 warning', 'FAILED: C102 rapids_clear'."""
    failed = [result for result in report.results if not result.passed]
    errors = [result for result in failed if result.severity == "error"]
    count = len(report.results)
    if errors:
        return "FAILED: " + ", ".join(f"{result.code} {result.name}" for result in errors)
    if failed:
        return f"{count - len(failed)} of {count} checks passed, {len(failed)} warning{'s' if len(failed) > 1 else ''}"
    return f"All {count} checks passed"


def verdict(facts: JobFacts) -> Html:
    """One line for the head of the sheet."""
    passed = facts.checks.passed
    text = "Read back, simulated and compared with the drawing." if passed else "Do not run these programs."
    return el(
        "p",
        el("b", verdict_words(facts.checks)),
        " ",
        text,
        id="verdict",
        cls="verdict" if passed else "verdict failed",
    )


def _state(result: CheckResult) -> str:
    if result.passed:
        return "passed"
    if result.skipped:
        return "not run"
    return "warning" if result.severity == "warning" else "FAILED"


def checks(facts: JobFacts, *, brief: bool = False) -> Html:
    """Every check that ran with what it compared, and what it saw. `brief`: of those that passed the names only."""
    full = [result for result in facts.checks.results if not (brief and result.passed)]
    named = [result for result in facts.checks.results if brief and result.passed]
    table = el("table", *(_row(result) for result in full), cls="checks") if full else None
    names = [el("span", f"{result.code}\u00a0{_name(result)}; ", id=f"check-{result.code}") for result in named]
    ask = el(
        "p", el("b", verdict_words(facts.checks) + "."), " What a code means: ", el("code", "signgen explain CODE"), "."
    )
    return el(
        "section",
        el("h2", el("i", "8"), "What was checked"),
        ask,
        table,
        el("p", *names, "all passed.") if named else None,
        id="checks",
    )


def _row(result: CheckResult) -> Html:
    return el(
        "tr",
        el("td", result.code),
        el("td", _name(result)),
        el("td", _state(result), cls=None if result.passed else "seen"),
        el("td", _said(result)),
        id=f"check-{result.code}",
    )


def _name(result: CheckResult) -> str:
    return result.name.replace("_", " ")


def _said(result: CheckResult) -> str:
    """What was compared and, where something was found, the first of it."""
    seen = [finding.message for finding in result.findings[:MOST_FINDINGS]]
    more = len(result.findings) - MOST_FINDINGS
    return ". ".join(
        part.rstrip(".") for part in (result.detail, *seen, f"And {more} more" if more > 0 else "") if part
    )


def files(facts: JobFacts) -> Html:
    names = [el("span", el("code", program.file), ", ") for program in facts.programs]
    others = [el("span", el("code", name), f" {what}; ") for name, what in FILES]
    return el(
        "p",
        el("b", "Files in this folder: "),
        *names,
        "the programs; ",
        *others,
        el("code", "sign.toml"),
        " what was asked for: ",
        el("code", "signgen make --from sign.toml"),
        " makes the same again.",
        id="files",
    )
