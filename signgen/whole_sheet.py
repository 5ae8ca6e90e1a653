"""A whole sheet of signs: pieces at their places -> one drawing -> one verified job with its own plan.

A sheet's folder holds `sheet.json` in place of a sign file: what was asked for each piece, and where it lies.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path

import msgspec
from msgspec import Struct
from msgspec.structs import replace

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.nested import Placement, nested
from signgen.errors import AskError
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.job.facts import PieceFacts
from signgen.messages import Message
from signgen.messages.wording import Wording, english
from signgen.operations.choose import Cutters, choose_cutters
from signgen.operations.plan import make_plan
from signgen.pages.nested_page import nested_html
from signgen.pipeline import MadeJob, Wanted, drawn, read_sign
from signgen.proving.prove import proved
from signgen.proving.sides import Setup, Side, may_fit_twice, with_chords, zero_of
from signgen.shop.load import load_shop
from signgen.shop.shop import Shop
from signgen.shop.stock import Stock
from signgen.spec.keys.papers import NO_TEMPLATE
from signgen.spec.sign_spec import SignSpec
from signgen.template.template import NAME, template_files
from signgen.user_file import read_json

SHEET = "sheet.json"
FORMAT, VERSION = "signgen-sheet", 1

HoleSize = tuple[float, bool]
"""Its diameter, and whether it is a slot."""

ShopOf = Callable[[Path | None], Shop]


class PieceAsked(Struct, frozen=True, kw_only=True):
    """A sign and its place: (x, y) from the sheet's bottom-left corner to that of the sign's bounds as it lies,
    `turned` by a quarter to the left. `name`: its number on the plan; `row`: of the list that it comes from."""

    name: str
    row: int
    x_mm: float
    y_mm: float
    turned: bool
    asked: Mapping[str, object]


class SheetAsked(Struct, frozen=True, kw_only=True):
    """The `number`th of `count` sheets. `hole_sizes`: of all signs that are cut in the same setting-up, on this sheet
    or another, for all sheets are cut with the same cutters; `clear_with`: the end mills that could clear the recesses
    of all of them, by name."""

    number: int
    count: int
    size_mm: tuple[float, float]
    hole_sizes: tuple[HoleSize, ...]
    clear_with: tuple[str, ...] = ()
    pieces: tuple[PieceAsked, ...]

    @property
    def title(self) -> str:
        """'Sheet 1 of 3: 24 signs'."""
        return english(self.called)

    @property
    def called(self) -> Message:
        return Message("sheet.called", number=self.number, sheets=self.count, count=len(self.pieces))


def make_sheet(asked: SheetAsked, shop_of: ShopOf = load_shop, wanted: Wanted = "all") -> MadeJob:
    """Every file of a sheet's job, verified. Raises: as `make_job`; CheckFailedError for the sheet as a whole."""
    sides = laid_out(asked, shop_of)
    facts = replace(proved(sides), pieces=tuple(_pieces(asked, sides[0].drawing)))
    return drawn(facts, nested_html, _templates(asked, shop_of), {SHEET: dump_sheet(asked)}, wanted)


def _templates(asked: SheetAsked, shop_of: ShopOf) -> dict[str, bytes]:
    """A drilling template for each different sign, called by the number of the first of them, where one was asked
    for."""
    files: dict[str, bytes] = {}
    for piece in _firsts(asked).values():
        spec = read_sign(piece.asked, shop_of)
        if spec.template != NO_TEMPLATE:
            files |= template_files(spec, draw(spec), f"{NAME}-{piece.name}")
    return files


def _firsts(asked: SheetAsked) -> dict[str, PieceAsked]:
    """The first piece of each different sign, by what was asked for it."""
    firsts: dict[str, PieceAsked] = {}
    for piece in asked.pieces:
        firsts.setdefault(json.dumps(dict(piece.asked), sort_keys=True), piece)
    return firsts


def cutters_of(
    spec: SignSpec, drawing: Drawing, hole_sizes: Iterable[HoleSize], clear_with: Sequence[str] = ()
) -> Cutters:
    """The cutters for signs like this one with holes of all these sizes, and recesses that one of `clear_with` is to
    clear; each hole is called by its size.

    Raises: CannotMakeError.
    """
    holes = tuple(
        Hole(name=f"{size}", x_mm=0.0, y_mm=0.0, diameter_mm=size[0], span_mm=1.0 if size[1] else 0.0)
        for size in hole_sizes
    )
    return choose_cutters(drawing.having(Hole, holes), spec, clear_with or None)


def size_of(hole: Hole) -> HoleSize:
    """What decides which cutter makes it."""
    return hole.diameter_mm, hole.span_mm > 0


def laid_out(asked: SheetAsked, shop_of: ShopOf = load_shop) -> tuple[Side, ...]:
    """The sheet's only side: its drawing and how it is cut; the spec is its first sign's but for size and name."""
    drawn: dict[str, tuple[SignSpec, Drawing]] = {}
    signs: list[tuple[Drawing, Placement]] = []
    for piece in asked.pieces:
        key = json.dumps(dict(piece.asked), sort_keys=True)  # copies are drawn once
        if key not in drawn:
            spec = read_sign(piece.asked, shop_of)
            drawn[key] = spec, draw(spec)
        place = Placement(name=piece.name, x_mm=piece.x_mm, y_mm=piece.y_mm, turned=piece.turned)
        signs.append((drawn[key][1], place))
    drawing = nested(signs)
    first, pattern = next(iter(drawn.values()))
    cutters = cutters_of(first, pattern.having(Recess, drawing.of(Recess)), asked.hole_sizes, asked.clear_with)
    by_size = dict(cutters.holes)
    cutters = replace(cutters, holes=tuple((hole.name, by_size[f"{size_of(hole)}"]) for hole in drawing.of(Hole)))
    head = min(asked.pieces, key=lambda piece: piece.row)  # the sheet speaks the language of its first row
    language = drawn[json.dumps(dict(head.asked), sort_keys=True)][0].language
    spec = replace(
        first,
        language=language,
        width_mm=drawing.width_mm,
        height_mm=drawing.height_mm,
        board_mm=asked.size_mm,
        text=replace(first.text, lines=(Wording(language)(asked.called),), own_lines=()),
    )
    stock = Stock(
        width_mm=asked.size_mm[0],
        height_mm=asked.size_mm[1],
        thickness_mm=spec.thickness_mm,
        sign_x_mm=min(piece.x_mm for piece in asked.pieces),
        sign_y_mm=min(piece.y_mm for piece in asked.pieces),
    )
    setup = Setup(stock=stock, least=stock, zero=zero_of(spec, stock))
    spec = with_chords(spec)
    plan = make_plan(drawing, spec, cutters, twice=may_fit_twice(spec))
    return (Side(spec=spec, drawing=drawing, plan=plan, setup=setup),)


def _pieces(asked: SheetAsked, drawing: Drawing) -> Iterable[PieceFacts]:
    for piece, outline in zip(asked.pieces, drawing.outlines, strict=True):
        x0, y0, x1, y1 = outline.bounds
        yield PieceFacts(
            name=piece.name,
            lines=_lines(piece.asked),
            row=piece.row,
            x_mm=x0,
            y_mm=y0,
            width_mm=x1 - x0,
            height_mm=y1 - y0,
            turned=piece.turned,
        )


def _lines(asked: Mapping[str, object]) -> tuple[str, ...]:
    """The lines of lettering as they were asked for."""
    text = asked.get("text")
    parts = text if isinstance(text, list | tuple) else [text]
    return tuple(line.strip() for part in parts for line in str(part or "").splitlines() if line.strip())


def dump_sheet(asked: SheetAsked) -> bytes:
    """The sheet file: reading it gives an equal sheet."""
    told = {"format": FORMAT, "version": VERSION, **msgspec.to_builtins(asked)}
    return (json.dumps(told, indent=1, ensure_ascii=False, allow_nan=False) + "\n").encode()


def load_sheet(path: Path) -> SheetAsked:
    """Raises: AskError when it cannot be read or is no sheet file."""
    advice = "Make the sheet again."
    try:
        told = read_json(path, str(path), remedy=advice)
        if told["format"] != FORMAT:
            raise ValueError(f"its format is {told['format']!r}")
        return msgspec.convert(told, SheetAsked)
    except (ValueError, KeyError, TypeError, OverflowError) as error:
        raise AskError.at(str(path), f"This is no sheet file: {error}.", advice) from None
