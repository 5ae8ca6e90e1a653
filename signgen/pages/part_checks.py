"""Section 8: what was proved about the programs before they were written. Section 9: the files."""

from __future__ import annotations

from signgen.checks.check import CheckResult
from signgen.job.back_names import PNG, back_names
from signgen.job.facts import JobFacts
from signgen.job.tally import verdict_words
from signgen.markup.markup import Html, Part, el, joined
from signgen.spec.keys.papers import NO_TEMPLATE
from signgen.template.template import template_names
from signgen.words.words import Words, words_of

MOST_FINDINGS = 2
"""Of one check, on paper; the rest is in the report."""
FILES = (
    (("preview.svg", "preview.png"), "files.picture"),
    (("preview.html",), "files.moves"),
)


def verdict(facts: JobFacts) -> Html:
    """One line for the head of the sheet."""
    words, passed = words_of(facts), facts.checks.passed
    return el(
        "p",
        el("b", verdict_words(facts.checks, words)),
        " ",
        words("verdict.proved" if passed else "verdict.stop"),
        id="verdict",
        cls="verdict" if passed else "verdict failed",
    )


def checks(facts: JobFacts, *, brief: bool = False) -> Html:
    """Every check that ran with what it compared, and what it saw. `brief`: of those that passed the names only."""
    words = words_of(facts)
    full = [result for result in facts.checks.results if not (brief and result.passed)]
    named = [result for result in facts.checks.results if brief and result.passed]
    table = el("table", *(_row(result, words) for result in full), cls="checks") if full else None
    names = [el("span", f"{result.code}\u00a0{_name(result, words)}; ", id=f"check-{result.code}") for result in named]
    explain = el("code", "signgen explain CODE")
    ask = [el("b", verdict_words(facts.checks, words) + "."), " ", words("checks.meaning"), " ", explain, "."]
    return el(
        "section",
        el("h2", el("i", "8"), words("checks.heading")),
        el("p", *ask),
        table,
        el("p", *names, words("checks.all_passed")) if named else None,
        id="checks",
    )


def _row(result: CheckResult, words: Words) -> Html:
    return el(
        "tr",
        el("td", result.code),
        el("td", _name(result, words)),
        el("td", _state(result, words), cls=None if result.passed else "seen"),
        el("td", _said(result, words)),
        id=f"check-{result.code}",
    )


def _name(result: CheckResult, words: Words) -> str:
    """By the table of words; a check without a row in it goes by its own name."""
    return words(f"check.{result.name}") if words.knows(f"check.{result.name}") else result.name.replace("_", " ")


def _state(result: CheckResult, words: Words) -> str:
    if result.passed:
        return words("checks.passed")
    if result.skipped:
        return words("checks.not_run")
    return words("checks.warning" if result.severity == "warning" else "checks.failed")


def _said(result: CheckResult, words: Words) -> Html:
    """What was compared and, where something was found, the first of it."""
    seen = [finding.message for finding in result.findings[:MOST_FINDINGS]]
    parts: list[Part] = [words.told(result.detail), "." if seen else None]
    for message in seen:
        parts += [" ", words.told(message)]
    more = len(result.findings) - MOST_FINDINGS
    if more > 0:
        parts += [" ", words("checks.more", count=more), "."]
    return joined(*parts)


def files(facts: JobFacts) -> Html:
    words = words_of(facts)
    named: list[tuple[tuple[str, ...], str]] = []
    if facts.outline is not None:
        named.append(((facts.outline.file,), "files.outline"))
    if facts.lifted:
        named.append((tuple(program.file for program in facts.lifted), "files.lifted"))
    named.append((tuple(program.file for program in facts.programs), "files.programs"))
    sheets = {"html": ("setup.html",), "pdf": ("setup.pdf",), "both": ("setup.html", "setup.pdf")}
    named.append((sheets[facts.spec.sheet_format], "files.setup"))
    named += [(names, key) for names, key in FILES]
    if facts.spec.steps:
        named.append((("steps.png",), "files.steps"))
    if facts.back is not None:
        named.append((tuple(program.file for program in facts.back.programs), "files.programs.back"))
        back = back_names(facts.spec.sheet_format)
        named.append(((*back, PNG), "files.back"))
    if facts.spec.template != NO_TEMPLATE:
        named.append((template_names(facts), "files.template"))
    named.append((("report.json",), "files.report"))
    if facts.pieces:
        asked = joined(el("code", "sheet.json"), f" {words('files.sheet')}")
    else:
        again = el("code", "signgen make --from sign.toml")
        asked = joined(el("code", "sign.toml"), f" {words('files.sign')} ", again, f" {words('files.again')}")
    listed = (joined(*_files(names), " ", words(key), ";") for names, key in named)
    return el("p", el("b", words("files.heading")), *listed, " ", asked, id="files")


def _files(names: tuple[str, ...]) -> list[Part]:
    """Each name once, with what stands before it."""
    parts: list[Part] = []
    for name in dict.fromkeys(names):
        parts += [", " if parts else " ", el("code", name)]
    return parts
