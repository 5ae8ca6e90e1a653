"""What `check --json` prints of one board: the verdict, and what is likeliest wrong, with its hints."""

from __future__ import annotations

from signgen.job import verdict
from signgen.job.judged import Judged
from signgen.lesson.advice import hint, what, would
from signgen.lesson.likely import Cause, likely, short
from signgen.messages.wording import Wording

HINTS = (1, 2, 3)
"""What to look at, where, and what it is."""


def checked_data(judged: Judged, language: str = "en") -> dict[str, object]:
    """The verdict's data, and the likeliest cause first; no causes where nothing seems wrong. Causes and hints are in
    the language."""
    wording = Wording(language)
    causes = likely(judged.case, judged.report).causes
    return verdict.verdict_data(judged) | {"causes": [_cause_data(cause, wording) for cause in causes]}


def _cause_data(cause: Cause, wording: Wording) -> dict[str, object]:
    return {
        "kind": cause.kind,
        "file": short(cause.file) if cause.file else None,
        "line": cause.line,
        "text": cause.text,
        "right": cause.right,
        "message": wording(what(cause)),
        "would": wording(would(cause)),
        "hints": [wording(hint(cause, number)) for number in HINTS],
    }
