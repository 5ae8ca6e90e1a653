"""The contract of a check: what it is given and what it says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, Protocol

from signgen.drawing.drawing import Drawing
from signgen.replay.motion import Replay
from signgen.replay.sweep import HeightMap
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

Severity = Literal["error", "warning"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgramUnderTest:
    """One program's text as it stands on disk (or is about to), with the tool that the sheet tells the operator to
    fit."""

    file: str
    text: str
    tool: Tool
    replay: Replay


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """Everything that a check may know. `boards[i]` is what is left of the stock after program i (sign
    coordinates)."""

    drawing: Drawing
    stock: Stock
    zero: WorkZero
    machine: Machine
    material: Material
    programs: tuple[ProgramUnderTest, ...]
    boards: tuple[HeightMap, ...]
    breakthrough_mm: float
    tolerance_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """What a check saw: where (file, line, place in sign coordinates), what, and what to do."""

    message: str
    file: str = ""
    line: int | None = None
    place_mm: tuple[float, float] | None = None
    remedy: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckResult:
    """`detail` says what was compared and how closely, in figures, whether it passed or not."""

    code: str
    name: str
    severity: Severity
    findings: tuple[Finding, ...]
    detail: str

    @property
    def passed(self) -> bool:
        return not self.findings


class Check(Protocol):
    """One file a check. `code` is opaque, stable and never used again ('C102'); `explanation` is what `signgen
    explain CODE` prints: what it looks at, what a failure means, what to do, the least error that it can see."""

    code: str
    name: str
    severity: Severity
    explanation: str

    def run(self, case: Case) -> CheckResult: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckReport:
    """Every check that ran, in order."""

    results: tuple[CheckResult, ...]

    @property
    def passed(self) -> bool:
        """No error failed; a warning does not stop a program."""
        return all(result.passed or result.severity == "warning" for result in self.results)
