"""`batch.json`, version 1: what became of a list."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import UNSET, Meta, Struct, UnsetType

from signgen.schemas.parts import BatchProgram, Point


class BatchBoards(Struct, frozen=True, kw_only=True):
    """Boards of one material and thickness."""

    material: str
    thickness_mm: float
    count: int
    area_m2: float


class BatchCutter(Struct, frozen=True, kw_only=True):
    """How long and how far a cutter runs."""

    tool: str
    minutes: float
    cut_m: float


class BatchTotals(Struct, frozen=True, kw_only=True):
    """Sums over all rows, each as often as it has copies, or over the sheets that hold them."""

    made: Annotated[int, Meta(description="Rows.")]
    failed: Annotated[int, Meta(description="Rows.")]
    signs: int
    sheets: int
    minutes: float
    boards: list[BatchBoards]
    cutters: list[BatchCutter]


class BatchQuote(Struct, frozen=True, kw_only=True):
    """What it costs by the shop's prices, in their currency."""

    currency: str
    total: float
    board: float
    machine: float
    cutters: float
    not_priced: Annotated[list[str], Meta(description="What has no price and is not in the sum.")]
    invented_prices: Annotated[bool, Meta(description="Whether a price that ships with signgen was used.")]


class SheetPiece(Struct, frozen=True, kw_only=True):
    """A sign's place on a sheet, by its corner as it lies."""

    name: str
    row: int
    x_mm: float
    y_mm: float
    turned: bool


class BatchSheet(Struct, frozen=True, kw_only=True):
    """A whole sheet of signs. One that was made has figures, one that was not says why."""

    sheet: int
    folder: str
    made: bool
    gap_mm: float
    holds: Annotated[int, Meta(description="Signs of the most frequent size that go on an empty sheet.")]
    holds_size_mm: Point
    digest: str | UnsetType = UNSET
    width_mm: float | UnsetType = UNSET
    height_mm: float | UnsetType = UNSET
    thickness_mm: float | UnsetType = UNSET
    material: str | UnsetType = UNSET
    machine: str | UnsetType = UNSET
    signs: int | UnsetType = UNSET
    minutes: float | UnsetType = UNSET
    programs: list[BatchProgram] | UnsetType = UNSET
    used_ratio: float | UnsetType = UNSET
    offcut_mm: Point | UnsetType = UNSET
    waste_ratio: float | UnsetType = UNSET
    pieces: list[SheetPiece] | UnsetType = UNSET
    message: str | UnsetType = UNSET
    exit_code: int | UnsetType = UNSET


class BatchRow(Struct, frozen=True, kw_only=True):
    """A row whose sign was made."""

    row: Annotated[int, Meta(description="As spreadsheets count, the first row of names being 1.")]
    folder: Annotated[str, Meta(description="Empty where the sign is on a sheet.")]
    copies: int
    lines: list[str]
    width_mm: float
    height_mm: float
    thickness_mm: float
    material: str
    machine: str
    board_mm: Point
    minutes: float
    programs: list[BatchProgram]


class BatchFailure(Struct, frozen=True, kw_only=True):
    """A row whose sign was not made."""

    row: int
    field: Annotated[str, Meta(description="The keys that are wrong, with semicolons between.")]
    message: str
    exit_code: Annotated[int, Meta(description="What make would have ended with; 70 where its worker was lost.")]


class BatchReport(Struct, frozen=True, kw_only=True):
    """A list that was worked off."""

    format: Literal["signgen-batch"]
    version: Literal[1]
    list: Annotated[str, Meta(description="The list's file.")]
    rows: int
    totals: BatchTotals
    rows_made: tuple[BatchRow, ...]
    rows_failed: tuple[BatchFailure, ...]
    quote: BatchQuote | UnsetType = UNSET
    sheets: tuple[BatchSheet, ...] | UnsetType = UNSET
