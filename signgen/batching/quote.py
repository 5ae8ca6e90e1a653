"""What a batch costs, sign by sign and in all: board, the machine's time and the wear of cutters.

A sign that has a board of its own pays for it, for its minutes and for what its cutters wear. On sheets, whole sheets
are paid for, offcuts too: all sheets that the same setting-up cuts are one sum, of which each sign bears its share of
the board by its area, of the minutes and the wear by what it would take alone, so that equal signs cost the same
wherever they lie. Each sign's amounts are rounded, and the totals are the sums of rounded amounts.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct, field

from signgen.batching.guard import guarded
from signgen.batching.outcome import RowOutcome
from signgen.numbers import figure
from signgen.shop.prices import Price, Prices


class Cost(Struct, frozen=True, kw_only=True):
    """In the prices' currency, not rounded."""

    board: float = 0.0
    machine: float = 0.0
    wear: float = 0.0

    @property
    def rounded(self) -> tuple[float, float, float]:
        """Board, machine and wear in hundredths."""
        return round(self.board, 2), round(self.machine, 2), round(self.wear, 2)

    @property
    def whole(self) -> float:
        """All three, rounded."""
        return round(sum(self.rounded), 2)

    def __add__(self, other: Cost) -> Cost:
        return Cost(board=self.board + other.board, machine=self.machine + other.machine, wear=self.wear + other.wear)

    def times(self, board: float, machine: float, wear: float) -> Cost:
        """Shares of it."""
        return Cost(board=self.board * board, machine=self.machine * machine, wear=self.wear * wear)


class Quote(Struct):
    """The sum, which grows with the rows that it is told of. `not_priced` names what has no price and is not in it;
    `invented`: a price that ships with signgen was used."""

    currency: str
    total: Cost = field(default_factory=Cost)
    not_priced: set[str] = field(default_factory=set)
    invented: bool = False

    def to_json(self) -> dict[str, Any]:
        board, machine, wear = self.total.rounded
        return {
            "currency": self.currency,
            "total": round(board + machine + wear, 2),
            "board": board,
            "machine": machine,
            "cutters": wear,
            "not_priced": sorted(self.not_priced),
            "invented_prices": self.invented,
        }


class Reckoner:
    """Costs by the prices of a shop."""

    def __init__(self, prices: Prices) -> None:
        self._prices = prices
        self.quote = Quote(prices.currency)

    def rows(
        self, rows: Iterable[RowOutcome], sheets: Iterable[Sequence[RowOutcome]] | None
    ) -> Iterator[tuple[RowOutcome, Cost]]:
        """Each row that was made with the cost of one of its copies, rounded; the quote grows on the way. `sheets`,
        group by group, None when each sign has its own board. `rows` is gone through once then, and else kept."""
        if sheets is None:
            for outcome in rows:
                if outcome.made:
                    yield self._counted(outcome, self._job(outcome.figures, outcome.figures["board_mm"]))
            return
        made = {outcome.row: outcome for outcome in rows if outcome.made}
        on_sheets = {row: cost for group in sheets for row, cost in self._on_sheets(made, group)}
        for row, outcome in made.items():
            yield self._counted(outcome, on_sheets.get(row, Cost()))

    def _counted(self, outcome: RowOutcome, cost: Cost) -> tuple[RowOutcome, Cost]:
        board, machine, wear = cost.rounded
        each = Cost(board=board, machine=machine, wear=wear)
        times = outcome.copies
        self.quote.total += each.times(times, times, times)
        return outcome, each

    def _on_sheets(self, made: Mapping[int, RowOutcome], sheets: Sequence[RowOutcome]) -> Iterator[tuple[int, Cost]]:
        """Rows of one group, each with the cost of one of its signs."""
        whole = Cost()
        rows: list[int] = []
        for sheet in sheets:
            if sheet.made:
                whole += self._job(sheet.figures, (sheet.figures["width_mm"], sheet.figures["height_mm"]))
                rows += [piece["row"] for piece in sheet.figures["pieces"] if piece["row"] in made]
        alone = [made[row].figures for row in rows]
        areas = _shares([told["width_mm"] * told["height_mm"] for told in alone])
        minutes = _shares([told["minutes"] for told in alone])
        wear = _shares([self._wear(told["programs"]) for told in alone])
        for row, shares in dict(zip(rows, zip(areas, minutes, wear, strict=True), strict=True)).items():
            yield row, whole.times(*shares)

    def _job(self, told: Mapping[str, Any], board_mm: Iterable[float]) -> Cost:
        """What one job costs: a sign's, or a sheet's."""
        width, height = board_mm
        board = self._each(self._prices.board_mm3, told["material"])
        minute = self._each(self._prices.machine_min, told["machine"])
        return Cost(
            board=board * width * height * told["thickness_mm"],
            machine=minute * told["minutes"],
            wear=self._wear(told["programs"]),
        )

    def _wear(self, programs: Iterable[Mapping[str, Any]]) -> float:
        lengths = ((program["tool"], float(program["cut_length_mm"])) for program in programs)
        return sum(self._each(self._prices.tool_mm, tool) * length for tool, length in lengths)

    def _each(self, prices: Mapping[str, Price], name: str) -> float:
        price = prices.get(name)
        if price is None:
            self.quote.not_priced.add(name)
            return 0.0
        self.quote.invented |= price.invented
        return price.each


def _shares(values: list[float]) -> list[float]:
    """Each over their sum; alike when there is none."""
    whole = sum(values)
    return [value / whole if whole else 1 / len(values) for value in values]


def quote_csv(costs: Iterable[tuple[RowOutcome, Cost]], quote: Quote) -> Iterator[bytes]:
    """The quote as a table, line by line: amounts of all copies of a row, of one of them, and in all. The mark at its
    start makes spreadsheets read UTF-8."""
    yield "\ufeff".encode()
    yield line(["row", "lines", "copies", "board", "machine", "cutters", "each", "total", "currency"])
    for outcome, cost in costs:
        parts = [outcome.copies * part for part in cost.rounded]
        amounts = [*parts, cost.whole, outcome.copies * cost.whole]
        words = " / ".join(outcome.figures["lines"])
        yield line([str(outcome.row), words, str(outcome.copies), *(f"{amount:.2f}" for amount in amounts)])
    parts = [*quote.total.rounded]
    yield line(["total", "", "", *(f"{part:.2f}" for part in parts), "", f"{sum(parts):.2f}", quote.currency])


class _Same(Struct):
    """Signs that are charged on one line."""

    rows: list[int]
    count: int = 0


def invoice_csv(costs: Iterable[tuple[RowOutcome, Cost]], quote: Quote, policy: str) -> Iterator[bytes]:
    """Lines for an invoice: equal signs together, how many, what one costs and what they come to, and at the end how
    boards are charged. The same sums as the quote's."""
    yield "\ufeff".encode()
    yield line(["position", "rows", "words", "size_mm", "material", "copies", "each", "total", "currency"])
    same: dict[tuple[str, str, str, float], _Same] = {}
    for outcome, cost in costs:
        told = outcome.figures
        size = f"{figure(told['width_mm'])} x {figure(told['height_mm'])} x {figure(told['thickness_mm'])}"
        key = (" / ".join(told["lines"]), size, told["material"], cost.whole)
        group = same.setdefault(key, _Same(rows=[]))
        group.rows.append(outcome.row)
        group.count += outcome.copies
    for position, ((words, size, material, each), group) in enumerate(same.items(), 1):
        rows = " ".join(map(str, group.rows))
        amounts = [f"{each:.2f}", f"{group.count * each:.2f}", quote.currency]
        yield line([str(position), rows, words, size, material, str(group.count), *amounts])
    yield line(["total", "", "", "", "", "", "", f"{sum(quote.total.rounded):.2f}", quote.currency])
    yield line(["note", "", policy])


def line(cells: list[str], delimiter: str = ",") -> bytes:
    """A line of a table for spreadsheets."""
    stream = io.StringIO(newline="")
    csv.writer(stream, delimiter=delimiter).writerow([guarded(cell) for cell in cells])
    return stream.getvalue().encode("utf-8", "replace")
