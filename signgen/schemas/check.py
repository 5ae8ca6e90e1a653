"""What `signgen check --json` prints of each board, version 1."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import UNSET, Meta, Struct, UnsetType

from signgen.schemas.parts import FormatExtent, Point, Range, Severity


class VerdictFinding(Struct, frozen=True, kw_only=True):
    """Something that a check found."""

    file: str | None
    line: Annotated[int | None, Meta(description="Of the file, the first being 1.")]
    place_mm: Annotated[Point | None, Meta(description="In the sign's coordinates, or the board's without a sign.")]
    message: str
    remedy: str
    warns: Annotated[bool, Meta(description="It is to be read; it stops nothing.")]


class VerdictCheck(Struct, frozen=True, kw_only=True):
    """A check that ran, or that there was nothing to run on."""

    code: str
    name: str
    severity: Severity
    passed: bool
    applies: bool
    skipped: bool
    detail: str
    findings: list[VerdictFinding]


class SurveyTool(Struct, frozen=True, kw_only=True):
    """The cutter that was said to be fitted, and the number by which the program calls it."""

    kind: str
    diameter_mm: float
    angle_deg: float | None
    tip_mm: float
    number: int


class SurveyCut(Struct, frozen=True, kw_only=True):
    """The part of the board that a cutter's whole width meets."""

    x_mm: Range
    y_mm: Range


class SurveyDeepest(Struct, frozen=True, kw_only=True):
    """How far below the board's top a tip goes at a feed."""

    depth_mm: float
    line: int
    place_mm: Point


class SurveyProgram(Struct, frozen=True, kw_only=True):
    """What one program does."""

    file: str
    tool: SurveyTool
    lines: int
    rapids: int
    straights: int
    arcs: int
    extent: FormatExtent | None
    cut: SurveyCut | None
    deepest: SurveyDeepest | None
    spindle_rpm: Range | None
    feed_mm_per_min: Range | None
    plunge_mm_per_min: Range | None
    minutes: float | None
    cut_length_mm: float
    travel_length_mm: float
    removed_cm3: float


class SurveyBoard(Struct, frozen=True, kw_only=True):
    """The board as it was said to lie."""

    width_mm: float
    height_mm: float
    thickness_mm: float
    datum_x_mm: float
    datum_y_mm: float
    z_zero: Literal["top", "bottom"]
    material: str


class SurveyMachine(Struct, frozen=True, kw_only=True):
    """The machine, and how far the programs go along its axes."""

    name: str
    way_mm: tuple[float, float, float]
    fits: bool


class VerdictSurvey(Struct, frozen=True, kw_only=True):
    """What programs from elsewhere do."""

    stock: SurveyBoard
    machine: SurveyMachine
    minutes: float | None
    least_left_mm: Annotated[float | None, Meta(description="Thinnest wood left where something was cut.")]
    through_mm2: Annotated[float, Meta(description="Area that was cut right through.")]
    programs: list[SurveyProgram]


class VerdictCause(Struct, frozen=True, kw_only=True):
    """What is likely wrong with a program, in words for those who wrote it."""

    kind: Annotated[str, Meta(description="Stays the same in every language, as in decimal_comma.")]
    file: Annotated[str | None, Meta(description="Without its folder.")]
    line: Annotated[int | None, Meta(description="Of the file, the first being 1.")]
    text: Annotated[str, Meta(description="The line as it stands; empty where the cause has no line.")]
    right: Annotated[str, Meta(description="The line as it was likely meant; empty where nobody can say.")]
    message: Annotated[str, Meta(description="What is wrong.")]
    would: Annotated[str, Meta(description="What a machine would have done.")]
    hints: Annotated[list[str], Meta(min_length=3, max_length=3, description="What to look at, where, and what it is.")]


class VerdictReport(Struct, frozen=True, kw_only=True):
    """What the checks say of the programs of one board."""

    format: Literal["signgen-check"]
    version: Literal[1]
    path: str
    passed: bool
    checks: list[VerdictCheck]
    survey: VerdictSurvey | UnsetType = UNSET
    causes: Annotated[list[VerdictCause], Meta(description="The likeliest first, each once; none where all is well.")]
