"""What a job is called at the head of a page."""

from __future__ import annotations

from signgen.job.facts import JobFacts
from signgen.words.words import words_of

LONGEST_TITLE = 60


def title(facts: JobFacts) -> str:
    """The sign's lines as one, short enough for the head of a page."""
    lines = " / ".join(line.strip() for line in facts.spec.text.lines if line.strip())
    if facts.pieces:  # a whole sheet is called by its number
        lines = words_of(facts).said(lines) or lines
    return lines if len(lines) <= LONGEST_TITLE else lines[: LONGEST_TITLE - 1] + "…"
