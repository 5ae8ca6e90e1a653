"""The contract of a check: what it is given and what it says."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal, Protocol

from msgspec import Struct

from signgen.checks.engagement import Engagement
from signgen.checks.fixing import Fixing
from signgen.checks.ideal import Ideal
from signgen.checks.stated import Papers, Stated
from signgen.checks.tip_path import TipPath
from signgen.drawing.drawing import Drawing
from signgen.instructions import SetUp
from signgen.messages import Message, Sentence
from signgen.replay.heights import HeightMap
from signgen.replay.motion import Replay
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

Severity = Literal["error", "warning"]


class ProgramUnderTest(Struct, frozen=True, kw_only=True):
    """One program's text as it stands on disk (or is about to), with the tool that the sheet tells the operator to
    fit. Where a file is meant for several `cutters`, each has its own part of the replay, and the text is all of it.
    `stated`: what the sheet tells about it, where there is one."""

    file: str
    text: str
    tool: Tool
    replay: Replay
    cutters: int = 1
    stated: Stated | None = None


class Case(Struct, frozen=True, kw_only=True):
    """Everything that a check may know; made by `checks.case.make_case`.

    `boards[i]` is what the feed moves of programs 0 to i leave of the stock (sign coordinates; rapids cut nothing
    there, for C102 judges them). `cuts[i]` and `rapids[i]` are the ways of program i's tip with the spindle's feed
    and at rapid speed, `engagement[i]` how much it takes at once. `ideal` is the board as drawn, on the boards' cells.
    `tolerance_mm` is the job's for engraved walls; ridges of up to `cusp_height_mm` may stand on flat floors.

    `drawn` is false where nobody has drawn anything, for programs from elsewhere: `drawing` is then a bare board, and
    checks that need more say that they do not apply. `fixings` hold the board down. `outlines` and `lifted` are run
    before anything is cut, to prove the position. `face`: in a case of what is cut from behind, what the
    programs of the face leave of the board, in the coordinates of the face. `told`: what the setup sheet
    tells a person to do, None where there is no sheet; `told_of_face`: of the face, in a case of what is cut from
    behind.
    """

    drawing: Drawing
    stock: Stock
    zero: WorkZero
    machine: Machine
    material: Material
    programs: tuple[ProgramUnderTest, ...]
    boards: tuple[HeightMap, ...]
    cuts: tuple[TipPath, ...]
    rapids: tuple[TipPath, ...]
    engagement: tuple[Engagement, ...]
    ideal: Ideal
    breakthrough_mm: float
    tolerance_mm: float
    cusp_height_mm: float
    drawn: bool = True
    fixings: tuple[Fixing, ...] = ()
    outlines: tuple[ProgramUnderTest, ...] = ()
    lifted: tuple[ProgramUnderTest, ...] = ()
    face: HeightMap | None = None
    told: SetUp | None = None
    papers: Papers | None = None
    told_of_face: SetUp | None = None


class Finding(Struct, frozen=True, kw_only=True):
    """What a check saw: where (file, line, place in sign coordinates), what, and what to do. `warns`: nothing that
    must stop the program, although the check is one that can."""

    message: Sentence
    file: str = ""
    line: int | None = None
    place_mm: tuple[float, float] | None = None
    remedy: Sentence = ""
    warns: bool = False


class CheckResult(Struct, frozen=True, kw_only=True):
    """`detail` says what was compared and how closely, in figures, whether it passed or not. A check that could not be
    run is `skipped`, and has not passed; its `detail` says why. One that does not apply to the case (`applies` is
    false) has neither passed nor failed."""

    code: str
    name: str
    severity: Severity
    findings: tuple[Finding, ...]
    detail: Sentence
    skipped: bool = False
    applies: bool = True

    @property
    def passed(self) -> bool:
        return not self.findings and not self.skipped

    @property
    def stops(self) -> bool:
        """Whether the programs must not be run."""
        return not self.passed and self.applies and self.severity == "error"


class Check(Protocol):
    """One file a check. `code` is opaque, stable and never used again ('C102'); `explanation` is what `signgen
    explain CODE` prints: what it looks at, what a failure means, what to do, the least error that it can see.
    `needs_drawing`: without one it does not apply."""

    @property
    def code(self) -> str: ...
    @property
    def name(self) -> str: ...
    @property
    def severity(self) -> Severity: ...
    @property
    def explanation(self) -> str: ...
    @property
    def needs_drawing(self) -> bool: ...

    def run(self, case: Case) -> CheckResult: ...


MOST_FINDINGS = 12
"""A check that fails everywhere says so a dozen times; more would hide the next check's findings."""


def verdict(check: Check, findings: Sequence[Finding], detail: Sentence) -> CheckResult:
    """The check's result with its first MOST_FINDINGS findings, those that stop the program before those that warn;
    `detail` counts the rest. Where all of them warn, the result is a warning."""
    more = len(findings) - MOST_FINDINGS
    findings = sorted(findings, key=lambda finding: finding.warns)
    return CheckResult(
        code=check.code,
        name=check.name,
        severity="warning" if findings and findings[0].warns else check.severity,
        findings=tuple(findings[:MOST_FINDINGS]),
        detail=detail if more <= 0 else Message("checks.more_of_this_kind", detail=detail, count=more),
    )


class CheckReport(Struct, frozen=True, kw_only=True):
    """Every check that ran, in order."""

    results: tuple[CheckResult, ...]

    @property
    def passed(self) -> bool:
        """No error failed; a warning does not stop a program."""
        return not any(result.stops for result in self.results)

    def findings(self) -> Iterator[tuple[CheckResult, Finding]]:
        """Every finding with the result that it belongs to, errors first."""
        for severity in ("error", "warning"):
            for result in self.results:
                if result.severity == severity:
                    yield from ((result, finding) for finding in result.findings)
