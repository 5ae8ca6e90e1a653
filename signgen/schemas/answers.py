"""What `signgen list`, `feeds` and `explain` print with --json, and how problems are told then; version 1 of each."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta, Struct

ListKind = Annotated[str, Meta(description="What was listed: fonts, tools, checks ...")]
Figure = float | str | bool | list[float] | None
"""Of a shop's row."""


class ListedRow(Struct, frozen=True, kw_only=True):
    """One thing to choose."""

    name: Annotated[str, Meta(description="The word to type.")]
    about: str
    more: Annotated[list[str], Meta(description="What --sources adds: further words, and where figures come from.")]
    figures: Annotated[dict[str, Figure], Meta(description="By the keys of the shop's data, with units in the names.")]


class Listed(Struct, frozen=True, kw_only=True):
    """A list of what there is to choose from."""

    format: Literal["signgen-list"] = "signgen-list"
    version: Literal[1] = 1
    kind: ListKind
    rows: list[ListedRow]


class FeedsStep(Struct, frozen=True, kw_only=True):
    """A line of the calculation: `working` is an expression whose value is `value`, `result` what becomes of it."""

    name: str
    working: str
    value: float
    result: str
    why: str


class FeedsCutting(Struct, frozen=True, kw_only=True):
    """How the cutter runs."""

    spindle_rpm: float
    chip_load_mm: float
    feed_mm_per_min: float
    plunge_mm_per_min: float
    ramp_mm_per_min: float
    stepdown_mm: float
    stepover_mm: float
    entry_deg: float


class Feeds(Struct, frozen=True, kw_only=True):
    """Speeds and feeds of a cutter in a material on a machine, step by step."""

    format: Literal["signgen-feeds"] = "signgen-feeds"
    version: Literal[1] = 1
    tool: str
    material: str
    machine: str
    cutting: FeedsCutting
    steps: list[FeedsStep]
    warnings: list[str]
    advice: list[str]
    sources: list[str]


class ExplainedPage(Struct, frozen=True, kw_only=True):
    """A page: its name is what to type behind `signgen explain`."""

    name: str
    text: str


class Explained(Struct, frozen=True, kw_only=True):
    """What a word, an option, a code or a question means."""

    format: Literal["signgen-explain"] = "signgen-explain"
    version: Literal[1] = 1
    question: str
    pages: list[ExplainedPage]
    see_also: Annotated[list[str], Meta(description="Names of other pages that it may mean.")]


class ToldProblem(Struct, frozen=True, kw_only=True):
    """One thing that is wrong."""

    where: Annotated[str, Meta(description="The word that was typed: an option without its dashes, a key, a file.")]
    what: str
    remedy: Annotated[str, Meta(description="What to do; empty where that is plain.")]


class ErrorReport(Struct, frozen=True, kw_only=True):
    """What --json makes of an error: one line on standard error."""

    format: Literal["signgen-error"] = "signgen-error"
    version: Literal[1] = 1
    exit_code: Annotated[
        int,
        Meta(description="2 what was asked is wrong, 3 the shop's data is, 4 it cannot be made, 5 a check failed."),
    ]
    problems: list[ToldProblem]
