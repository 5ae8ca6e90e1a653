"""Rows that can be made -> sheets: which go together, where each lies, and what cannot be.

Signs share a sheet when one setting-up cuts them all: the same board, cutters, machine and way of holding. Between two
signs lie both their outside cuts and a strip of wood that their tabs hang on; without tabs, one cut and a little more.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct

from signgen.batching.outcome import RowOutcome
from signgen.batching.shop import shop_of
from signgen.drawing.draw import draw
from signgen.errors import AskError, CannotMakeError
from signgen.features.edge import Bevel
from signgen.geometry.rectangles import Size, fits, nest
from signgen.messages import Message, Mm, Sides
from signgen.messages.figures import plain
from signgen.operations.bevel import bevel_beyond_mm
from signgen.pipeline import Wanted, read_sign
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import around_mm
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec
from signgen.whole_sheet import HoleSize, PieceAsked, SheetAsked, cutters_of

USUAL_BORDER_MM = 15.0
"""At the sheet's rim, untouched by any cutter: room for the heads of screws, or for a clamp's toe (common practice)."""

STRIP_MM = 3.0
"""Wood between two outside cuts, which tabs hang on; thinner, it breaks (common practice)."""

APART_MM = 1.0
"""Between a cut and the next sign where no tab needs a strip: what a board may lie askew."""

MOST_SAID = 40
"""Characters of a value that is named; what is longer is told by its key alone."""

MOST_SIGNS = 20_000
"""More on sheets at once than this would have to be kept in memory."""

FREE = frozenset(
    {
        "width_mm", "height_mm", "text", "border", "holes", "hole_form", "depth_mm", "tabs", "frame", "rule_width_mm",
        "ornament", "board_mm", "shop", "language",
    }
)  # fmt: skip
"""What may differ between signs of one sheet; everything else of a spec must be the same."""


class SheetHow(Struct, frozen=True, kw_only=True):
    """What was asked about sheets. `gap_mm` None: as little as will do. `turn`: signs may be turned by a quarter;
    `keep_grain`: not those of a material with a grain."""

    size_mm: Size
    border_mm: float = USUAL_BORDER_MM
    gap_mm: float | None = None
    turn: bool = True
    keep_grain: bool = False

    def may_turn(self, material: Material) -> bool:
        return self.turn and not (self.keep_grain and material.grain)

    def room_mm(self, cutter_mm: float) -> Size:
        """The area for signs: inside the border and the outside cut."""
        rim = 2 * (self.border_mm + cutter_mm)
        return self.size_mm[0] - rim, self.size_mm[1] - rim

    def must_reach(self, machine: Machine, cutter_mm: float) -> None:
        """Raises: AskError when the machine cannot reach all of the area for signs."""
        room = self.room_mm(cutter_mm)
        if min(room) <= 0:
            what = Message("batching.border_mm_cut_leave_no", border=Mm(self.border_mm))
            raise AskError.at("sheet", what, Message("batching.use_larger_sheet_smaller_clamp"))
        x, y = machine.travel_mm[:2]
        more = 2 * around_mm(cutter_mm)
        if room[0] + more > x or room[1] + more > y:
            what = Message(
                "batching.signs_would_lie_on_x",
                room=Sides((room[0], room[1])),
                more=Mm(more / 2),
                machine=machine.name,
                travel=Sides((x, y)),
            )
            turned = room[1] + more <= x and room[0] + more <= y
            remedy = (
                Message("batching.turn_sheet_give_width_along")
                if turned
                else Message("batching.use_smaller_sheet_another_machine")
            )
            raise AskError.at("sheet", what, remedy)

    def gap_for(self, cutter_mm: float, tabs: int) -> float:
        """Between two signs. Raises: AskError when the one that was asked for is too small."""
        least = 2 * cutter_mm + STRIP_MM if tabs else cutter_mm + APART_MM
        if self.gap_mm is None:
            return least
        if self.gap_mm < least - 1e-9:
            why = Message("batching.two_cuts_mm_mm_wood", cut=Mm(cutter_mm), strip=Mm(STRIP_MM))
            if not tabs:
                why = Message("batching.cut_mm_mm", cut=Mm(cutter_mm), apart=Mm(APART_MM))
            what = Message("batching.mm_too_little", gap=Mm(self.gap_mm), why=why)
            raise AskError.at("gap", what, Message("batching.use_mm_more_leave_out", least=Mm(least)))
        return self.gap_mm


def alike(spec: SignSpec) -> str:
    """What must be the same for signs to share a sheet, as a digest."""
    told = [(name, repr(getattr(spec, name))) for name in spec.__struct_fields__ if name not in FREE]
    told.append(("shop", repr(spec.shop.user_file)))
    return hashlib.sha256(repr(sorted(told)).encode()).hexdigest()[:16]


def shared_by_sheet(spec: SignSpec) -> dict[str, str]:
    """What must be the same, in words: of each option its value, so that two groups can be told apart."""
    names = (name for name in spec.__struct_fields__ if name not in FREE)
    return {name.removesuffix("_mm").replace("_", "-"): _in_words(getattr(spec, name)) for name in names}


def _in_words(value: object) -> str:
    if isinstance(value, float):
        return plain(value)
    if isinstance(value, Tool | Material | Machine):
        return value.name
    return str(value)[:MOST_SAID] if isinstance(value, str | int) else hashlib.sha256(repr(value).encode()).hexdigest()


def must_fit(spec: SignSpec, how: SheetHow, cutter_mm: float) -> None:
    """Raises: CannotMakeError when a sign is larger than the room on a sheet, or wants it turned over."""
    if spec.keyholes is not None:
        what = Message("batching.keyholes_are_cut_from_back")
        raise CannotMakeError.at("holes", what, Message("batching.make_sign_itself_without_sheet"))
    if spec.edge == "none":
        what = Message("batching.signs_on_sheet_are_cut")
        raise CannotMakeError.at("edge", what, Message("batching.make_sign_itself_without_sheet_2"))
    room = how.room_mm(cutter_mm)
    size = (spec.width_mm, spec.height_mm)
    if not fits(size, room, how.may_turn(spec.material)):
        what = Message(
            "batching.sign_x_mm_larger_than",
            sign=Sides((size[0], size[1])),
            room=Sides((room[0], room[1])),
        )
        if fits(size, room, True):
            raise CannotMakeError.at("size", what, Message("batching.let_signs_turned_give_width"))
        raise CannotMakeError.at("size", what, Message("batching.make_smaller_use_larger_sheet"))


def sheet_figures(
    spec: SignSpec, holes: Sequence[HoleSize], clear_with: Sequence[str], tabs: int, area_mm2: float
) -> dict[str, Any]:
    """What laying out needs to know of a row that was proved. `clear_with`: the end mills that could clear its
    recesses."""
    return {
        "alike": alike(spec),
        "size_mm": [spec.width_mm, spec.height_mm],
        "holes": sorted({(size[0], bool(size[1])) for size in holes}),
        "clear_with": list(clear_with),
        "tabs": tabs,
        "area_mm2": area_mm2,
        "shared": shared_by_sheet(spec),
    }


class Group(Struct, frozen=True, kw_only=True):
    """Rows that share sheets; `gap_mm` between their signs and `holds`: how many of the most frequent size go on an
    empty sheet. `apart`: why they do not share sheets with the first group, None of that one."""

    sheets: tuple[SheetAsked, ...]
    apart: Message | None
    gap_mm: float
    holds: int
    holds_size_mm: Size


def lay_out(made: Sequence[RowOutcome], asked: Mapping[int, Mapping[str, object]], how: SheetHow) -> tuple[Group, ...]:
    """Sheets for rows that were proved, group by group in the order of their first rows; `asked` by row.

    Raises: AskError, CannotMakeError for what is wrong with the sheets whatever the rows hold.
    """
    if sum(outcome.copies for outcome in made) > MOST_SIGNS:
        what = Message("batching.signs_are_too_many_lay", count=sum(outcome.copies for outcome in made))
        raise AskError.at("sheet", what, Message("batching.split_list_signs_most", most=MOST_SIGNS))
    grouped = list(_grouped(made))
    laid = [_group(outcomes, clear_with, asked, how) for outcomes, clear_with in grouped]
    apart = [None if n == 0 else _apart(grouped[0][0][0], each[0], names) for n, (each, names) in enumerate(grouped)]
    return tuple(_numbered(laid, apart))


def _apart(first: RowOutcome, other: RowOutcome, clear_with: tuple[str, ...]) -> Message:
    """Why a row does not share sheets with the first row of the first group."""
    one, two = (outcome.figures["sheet"]["shared"] for outcome in (first, other))
    keys = [key for key in two if one.get(key) != two[key]]
    if not keys:
        mills = clear_with or ("-",)
        return Message("batch.apart_by_mill", row=other.row, mills=mills)
    told = tuple(
        Message("batch.its_value", key=key, value=two[key]) if len(two[key]) <= MOST_SAID else key for key in keys
    )
    return Message("batch.apart", row=other.row, what=told)


def _grouped(made: Sequence[RowOutcome]) -> Iterator[tuple[list[RowOutcome], tuple[str, ...]]]:
    """Rows that one setting-up cuts, with the end mills that could clear the recesses of all of them."""
    groups: dict[str, list[tuple[list[RowOutcome], list[str]]]] = {}
    for outcome in made:
        figures = outcome.figures["sheet"]
        own = figures["clear_with"]
        known = groups.setdefault(figures["alike"], [])
        for outcomes, names in known:
            shared = [name for name in names if name in own]
            if bool(shared) == bool(names or own):
                outcomes.append(outcome)
                names[:] = shared
                break
        else:
            known.append(([outcome], list(own)))
    for known in groups.values():
        yield from ((outcomes, tuple(names)) for outcomes, names in known)


class _Pile(Struct, frozen=True):
    """A group before its sheets have numbers."""

    pieces: list[list[PieceAsked]]
    hole_sizes: tuple[HoleSize, ...]
    clear_with: tuple[str, ...]
    size_mm: Size
    gap_mm: float
    holds: int
    holds_size_mm: Size


def _group(
    outcomes: Sequence[RowOutcome],
    clear_with: tuple[str, ...],
    asked: Mapping[int, Mapping[str, object]],
    how: SheetHow,
) -> _Pile:
    spec = read_sign(asked[outcomes[0].row], shop_of)
    told = [outcome.figures["sheet"] for outcome in outcomes]
    hole_sizes = tuple(sorted({(float(size[0]), bool(size[1])) for figures in told for size in figures["holes"]}))
    drawing = draw(spec)
    edge = cutters_of(spec, drawing, hole_sizes, clear_with).edge
    assert edge is not None, "signs of a sheet are cut from it"
    cutter = max([edge.diameter_mm, *(bevel_beyond_mm(bevel, spec.v_bit) for bevel in drawing.of(Bevel))])
    how.must_reach(spec.machine, cutter)
    gap = how.gap_for(cutter, max(figures["tabs"] for figures in told))
    room, turn = how.room_mm(cutter), how.may_turn(spec.material)
    signs = [(outcome, figures) for outcome, figures in zip(outcomes, told, strict=True) for _ in range(outcome.copies)]
    sizes = [(float(figures["size_mm"][0]), float(figures["size_mm"][1])) for _, figures in signs]
    too_large = [outcome.row for (outcome, _), size in zip(signs, sizes, strict=True) if not fits(size, room, turn)]
    if too_large:
        raise CannotMakeError.at(
            "sheet",
            Message("batching.row_needs_another_cutter_edge", row=too_large[0]),
            Message("batching.use_larger_sheet"),
        )
    places = nest(sizes, room, gap, [turn] * len(sizes))
    rim = how.border_mm + cutter
    piles: list[list[tuple[float, float, bool, RowOutcome]]] = [[] for _ in range(max(p.sheet for p in places) + 1)]
    for (outcome, _), place in zip(signs, places, strict=True):
        piles[place.sheet].append((place.x_mm + rim, place.y_mm + rim, place.turned, outcome))
    usual = max(dict.fromkeys(sizes), key=sizes.count)
    return _Pile(
        pieces=[list(_named(pile, asked)) for pile in piles],
        hole_sizes=hole_sizes,
        clear_with=clear_with,
        size_mm=how.size_mm,
        gap_mm=gap,
        holds=_capacity(usual, room, gap, turn),
        holds_size_mm=usual,
    )


def _named(
    pile: list[tuple[float, float, bool, RowOutcome]], asked: Mapping[int, Mapping[str, object]]
) -> Iterator[PieceAsked]:
    """Pieces of a sheet numbered as one reads: from its back left corner, row by row."""
    for number, (x, y, turned, outcome) in enumerate(sorted(pile, key=lambda each: (-each[1], each[0])), 1):
        yield PieceAsked(name=str(number), row=outcome.row, asked=asked[outcome.row], x_mm=x, y_mm=y, turned=turned)


def _numbered(piles: Sequence[_Pile], apart: Sequence[Message | None]) -> Iterator[Group]:
    count = sum(len(pile.pieces) for pile in piles)
    number = 0
    for pile, why in zip(piles, apart, strict=True):
        sheets = []
        for pieces in pile.pieces:
            number += 1
            sheets.append(
                SheetAsked(
                    number=number,
                    count=count,
                    size_mm=pile.size_mm,
                    pieces=tuple(pieces),
                    hole_sizes=pile.hole_sizes,
                    clear_with=pile.clear_with,
                )
            )
        yield Group(
            sheets=tuple(sheets), apart=why, gap_mm=pile.gap_mm, holds=pile.holds, holds_size_mm=pile.holds_size_mm
        )


def _capacity(size: Size, room: Size, gap_mm: float, turn: bool) -> int:
    """How many of one size go on an empty sheet."""
    most = int((room[0] + gap_mm) * (room[1] + gap_mm) / ((size[0] + gap_mm) * (size[1] + gap_mm)) + 1e-9)
    places = nest([size] * max(1, most), room, gap_mm, [turn] * max(1, most))
    return sum(place.sheet == 0 for place in places)


def folder_of(sheet: SheetAsked) -> str:
    """The sheet's folder below the batch's own."""
    return f"sheet-{sheet.number:02}"


def digest_of(sheet: bytes, wanted: Wanted) -> str:
    """What tells one sheet, and which of its files were wanted, from another when a batch is resumed."""
    return hashlib.sha256(sheet if wanted == "all" else sheet + wanted.encode()).hexdigest()
