"""Parts that several formats have in common."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import UNSET, Meta, Struct, UnsetType

Point = tuple[float, float]
Range = tuple[float, float]
Severity = Literal["error", "warning"]


class FormatTool(Struct, frozen=True, kw_only=True):
    """A cutter."""

    name: str
    kind: Annotated[str, Meta(description="v-bit, end-mill, ball-nose, drill, or another kind of the shop's cutters.")]
    diameter_mm: float
    angle_deg: Annotated[float | None, Meta(description="Full angle of a V-bit's cone; null where there is none.")]
    tip_mm: Annotated[float, Meta(description="Across the flat at a V-bit's tip.")]
    shank_mm: float


class FormatExtent(Struct, frozen=True, kw_only=True):
    """Where the tip goes, least and greatest, in program coordinates; without keys where it goes nowhere."""

    x_mm: Range | UnsetType = UNSET
    y_mm: Range | UnsetType = UNSET
    z_mm: Range | UnsetType = UNSET


class FormatShares(Struct, frozen=True, kw_only=True):
    """Shares of the time in which the machine moves, which add up to 1."""

    cutting: float
    entry: Annotated[float, Meta(description="Getting down into the work.")]
    travel: float


class FormatOperation(Struct, frozen=True, kw_only=True):
    """What a program does one after the other."""

    does: str
    minutes: float
    shares: FormatShares


class FormatProgram(Struct, frozen=True, kw_only=True):
    """One program: a file, the cutter that it wants, and figures of what it does."""

    file: str
    does: list[str]
    tool: FormatTool
    spindle_rpm: float
    feed_mm_per_min: float
    plunge_mm_per_min: float
    minutes: Annotated[float, Meta(description="By an estimate that knows the machine's acceleration.")]
    shares: FormatShares
    operations: list[FormatOperation]
    cut_length_mm: float
    travel_length_mm: float
    extent: FormatExtent


class FormatOutline(Struct, frozen=True, kw_only=True):
    """The program that shows where the sign will lie, the spindle still."""

    file: str
    spindle: bool
    extent: FormatExtent


class FormatAirCut(Struct, frozen=True, kw_only=True):
    """Programs that run in the air, and how much higher they do."""

    lifted_mm: float
    files: list[str]


class FormatFinding(Struct, frozen=True, kw_only=True):
    """Something that a check found."""

    message: str
    file: str | None
    line: Annotated[int | None, Meta(description="Of the file, the first being 1.")]
    remedy: str


class FormatCheck(Struct, frozen=True, kw_only=True):
    """A check that ran, or that there was nothing to run on."""

    code: str
    name: str
    severity: Severity
    passed: bool
    skipped: bool
    detail: str
    findings: list[FormatFinding]


class BatchProgram(Struct, frozen=True, kw_only=True):
    """A program of a row or a sheet."""

    file: str
    tool: Annotated[str, Meta(description="The cutter's name in the shop.")]
    minutes: float
    cut_length_mm: float
