"""The likeliest causes in words: whole, or as hints for those who look for themselves."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from pathlib import Path

from signgen.checks.check import CheckReport
from signgen.job.judged import Judged
from signgen.job.tally import Tally
from signgen.lesson.likely import Cause, Likely, likely, short
from signgen.messages import Message, Sentence
from signgen.messages.wording import Wording
from signgen.words.words import words_in

WIDTH = 100
MOST_MORE = 4
"""Causes that are told behind the first."""
MOST_REST = 10
"""Findings that are named in a line each; the rest is counted."""

LEAST_ROOM = 30
"""Characters for the cause in a table, however long the files' names are."""

_WOULD = {
    "arc": ("arc_no_centre", "arc_absolute", "arc_ends", "sign_of_i"),
    "step": ("no_motion_word", "no_feed", "dwell_no_time", "centre_no_arc", "unknown_code", "words_group"),
    "astray": (
        "g91", "wrong_place", "off_machine", "off_board", "lost_point", "zero_bottom_left", "zero_middle",
        "zero_bottom_right", "zero_top_left", "zero_top_right", "fixing",
    ),
    "size": ("inches", "millimetres"),
    "air": ("missing_minus",),
    "height": ("z_zero_bottom", "z_zero_top", "too_deep", "wrong_height"),
    "still": ("no_spindle", "no_speed", "spindle_stopped", "backwards", "spindle_ready"),
    "crash": ("rapid_down", "rapid_across", "rapid_in_wood", "feed_speed_swapped", "pass_too_deep", "plunge"),
    "cutter": ("swapped", "wrong_cutter", "cutter_short", "order"),
    "stays": ("no_end", "starts_ends"),
    "nothing": ("empty",),
    "other": ("feed_odd", "heading", "other", "false_comment", "wrong_speed"),
}  # fmt: skip
_FAMILY = {kind: family for family, kinds in _WOULD.items() for kind in kinds}
"""Every other kind is a slip of the pen."""


def what(cause: Cause) -> Message:
    """What is wrong, in a sentence."""
    return Message(f"cause.{cause.kind}", **cause.values)


def look(cause: Cause) -> Message:
    """What to look at, without saying what is wrong."""
    return Message(f"cause.{cause.kind}.look")


def would(cause: Cause) -> Message:
    """What a machine would have done."""
    return Message(f"cause.would.{_FAMILY.get(cause.kind, 'text')}")


def advice(judged: Judged, wording: Wording) -> str:
    """The likeliest cause first and once, what else may be wrong, then the rest folded; '' where nothing is wrong."""
    found = likely(judged.case, judged.report)
    if not found.causes:
        return ""
    verdict = Tally.of(judged.report).words(words_in(wording.language.code), read_on=True)
    parts = [f"{judged.path}: {verdict}.", ""]
    for number, cause in enumerate(found.causes[: 1 + MOST_MORE]):
        parts += [*_cause_lines(cause, wording, first=number == 0), ""]
    parts += _rest(judged.report, found, wording)
    return "\n".join(parts).rstrip()


def hints(judged: Judged, number: int, wording: Wording) -> str:
    """One hint on the likeliest cause: 1 says what to look at, 2 where, 3 what it is."""
    found = likely(judged.case, judged.report).causes
    if not found:
        return wording(Message("cause.fine", path=judged.path))
    return wording(Message("cause.hint", number=number, hint=hint(found[0], number)))


def hint(cause: Cause, number: int) -> Sentence:
    """One of three hints on a cause."""
    if number == 1:
        return look(cause)
    if number == 2:
        if cause.line:
            return Message("cause.hint_line", line=cause.line, file=short(cause.file))
        return Message("cause.hint_file", file=short(cause.file))
    return what(cause)


def table(judged: Sequence[Judged], wording: Wording) -> str:
    """A row for each file: what it is called, whether it may run, and what is likeliest wrong."""
    rows = []
    for one in judged:
        causes = likely(one.case, one.report).causes
        verdict = wording(Message("cause.table_fine" if one.report.passed else "cause.table_stop"))
        line = f"{causes[0].line or ''}" if causes else ""
        rows.append((Path(one.path).name, verdict, line, wording(what(causes[0])) if causes else ""))
    head = tuple(wording(Message(f"cause.table_{name}")) for name in ("file", "verdict", "line", "cause"))
    wide = [max(len(row[n]) for row in (head, *rows)) for n in range(3)]
    room = max(WIDTH - sum(wide) - 6, LEAST_ROOM)
    shown = []
    for row in (head, *rows):
        first, *more = textwrap.wrap(row[3], room) or [""]
        start = "  ".join(f"{text:<{width}}" for text, width in zip(row[:3], wide, strict=True))
        shown += [f"{start}  {first}".rstrip(), *(f"{'':<{sum(wide) + 6}}{text}" for text in more)]
    passed = sum(one.report.passed for one in judged)
    shown += ["", wording(Message("cause.each_sum", passed=passed, count=len(judged)))]
    return "\n".join(shown)


def _cause_lines(cause: Cause, wording: Wording, *, first: bool) -> Iterator[str]:
    where = _where(cause)
    yield wording(Message("cause.head" if first else "cause.next", where=where))
    yield from _indented(wording(what(cause)))
    if cause.text:
        yield f"  {wording(Message('cause.stands', text=cause.text))}"
    if cause.right and cause.right != cause.text:
        yield f"  {wording(Message('cause.meant', text=cause.right))}"
    if first:
        yield from _indented(wording(Message("cause.would", would=would(cause))))
        yield from _indented(wording(Message("cause.look", look=look(cause))))


def _where(cause: Cause) -> Sentence:
    if cause.line:
        return Message("cause.where", file=short(cause.file), line=cause.line)
    return Message("cause.where_file", file=short(cause.file))


def _rest(report: CheckReport, found: Likely, wording: Wording) -> list[str]:
    """A line for each further finding. Where lines could not be read, those of the other checks without them."""
    told = {(cause.file, cause.line) for cause in found.causes}
    after = found.after
    if after is not None:
        stops = [(r, f) for r, f in after.findings() if r.stops and not f.warns]
        if not stops:
            return [wording(Message("cause.clear"))]
        return [
            wording(Message("cause.after")),
            *(_folded(r.code, f.line, f.message, wording) for r, f in stops[:MOST_REST]),
        ]
    rest = [(r, f) for r, f in report.findings() if (f.file, f.line) not in told]
    if not rest:
        return []
    head = _indented(wording(Message("cause.rest", count=len(rest))), "")
    return [*head, *(_folded(r.code, f.line, f.message, wording) for r, f in rest[:MOST_REST])]


def _folded(code: str, line: int | None, message: Sentence, wording: Wording) -> str:
    said = wording(message)
    text = f"  {code}{f' {line}' if line else ''}: {said}"
    return text if len(text) <= WIDTH else f"{text[: WIDTH - 3]}..."


def _indented(text: str, by: str = "  ") -> Sequence[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=by, subsequent_indent=by, break_on_hyphens=False)
