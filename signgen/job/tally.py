"""What a report of checks comes to, counted and worded once for the sheet, the summary and the terminal."""

from __future__ import annotations

from msgspec import Struct

from signgen.checks.check import CheckReport
from signgen.words.words import Words


class Tally(Struct, frozen=True, kw_only=True):
    """Of the checks that apply (`ran`): how many failed, could not be made, or found something that only warns.
    `left_out` do not apply."""

    ran: int
    failed: int
    not_run: int
    warned: int
    left_out: int

    @classmethod
    def of(cls, report: CheckReport) -> Tally:
        ran = [result for result in report.results if result.applies]
        not_run = sum(result.skipped for result in ran)
        failed = sum(result.stops and not result.skipped for result in ran)
        warned = len(ran) - failed - not_run - sum(result.passed for result in ran)
        left_out = len(report.results) - len(ran)
        return cls(ran=len(ran), failed=failed, not_run=not_run, warned=warned, left_out=left_out)

    def words(self, words: Words, *, read_on: bool = False) -> str:
        """'all 22 checks passed', '21 of 22 checks passed, 1 with a warning', 'do not run: 2 of 22 checks failed';
        `read_on`: the warnings follow."""
        if self.failed or self.not_run:
            text = words("verdict.failed", failed=self.failed, count=self.ran)
            text += words("verdict.not_run", count=self.not_run) if self.not_run else ""
        elif self.warned:
            text = words("verdict.warned", passed=self.ran - self.warned, count=self.ran, warned=self.warned)
            text += words("verdict.read_on") if read_on else ""
        else:
            text = words("verdict.passed", count=self.ran)
        return text + (words("verdict.left_out", count=self.left_out) if self.left_out else "")


def verdict_words(report: CheckReport, words: Words) -> str:
    """The tally as the beginning of a sentence, with the codes of what failed."""
    text = Tally.of(report).words(words)
    failed = ", ".join(f"{result.code} {result.name}" for result in report.results if result.stops)
    text = f"{text}: {failed}" if failed else text
    return text[0].upper() + text[1:]
