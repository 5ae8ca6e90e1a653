"""What a job is called at the head of a page."""

from __future__ import annotations

from signgen.job.facts import JobFacts

LONGEST_TITLE = 60


def title(facts: JobFacts) -> str:
    """The sign's lines as one, short enough for the head of a page."""
    lines = " / ".join(line.strip() for line in facts.spec.text.lines if line.strip())
    return lines if len(lines) <= LONGEST_TITLE else lines[: LONGEST_TITLE - 1] + "…"
