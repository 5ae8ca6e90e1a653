"""What a batch comes to: signs, sheets, minutes, board and the cutters' distance."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from msgspec import Struct, field

from signgen.batching.outcome import RowOutcome
from signgen.numbers import rounded


class Board(Struct):
    """Boards of one material and thickness."""

    count: int = 0
    area_mm2: float = 0.0


class Wear(Struct):
    """How long and how far a cutter runs."""

    minutes: float = 0.0
    cut_length_mm: float = 0.0


class Totals(Struct):
    """Sums over the rows, each as often as it has copies, or over the sheets that hold them."""

    made: int = 0
    failed: int = 0
    signs: int = 0
    sheets: int = 0
    minutes: float = 0.0
    boards: dict[tuple[str, float], Board] = field(default_factory=dict)
    cutters: dict[str, Wear] = field(default_factory=dict)

    def add_row(self, outcome: RowOutcome, *, alone: bool) -> None:
        """One more row; `alone`: its sign has a board and programs of its own, and is not on a sheet."""
        if not outcome.made:
            self.failed += 1
            return
        self.made += 1
        self.signs += outcome.copies
        if alone:
            self._add_board(outcome.figures, outcome.figures["board_mm"], outcome.copies)

    def add_sheet(self, outcome: RowOutcome) -> None:
        """One more sheet that was made."""
        self.sheets += 1
        self._add_board(outcome.figures, (outcome.figures["width_mm"], outcome.figures["height_mm"]), 1)

    def _add_board(self, told: Mapping[str, Any], size_mm: Iterable[float], times: int) -> None:
        board = self.boards.setdefault((told["material"], told["thickness_mm"]), Board())
        width, height = size_mm
        board.count += times
        board.area_mm2 += times * width * height
        for program in told["programs"]:
            wear = self.cutters.setdefault(program["tool"], Wear())
            wear.minutes += times * program["minutes"]
            wear.cut_length_mm += times * program["cut_length_mm"]
            self.minutes += times * program["minutes"]

    def to_json(self) -> dict[str, Any]:
        """Plain values, in an order that depends on nothing but the rows."""
        return {
            "made": self.made,
            "failed": self.failed,
            "signs": self.signs,
            "sheets": self.sheets,
            "minutes": rounded(self.minutes, 2),
            "boards": [
                {
                    "material": material,
                    "thickness_mm": thickness,
                    "count": board.count,
                    "area_m2": rounded(board.area_mm2 / 1e6, 4),
                }
                for (material, thickness), board in sorted(self.boards.items())
            ],
            "cutters": [
                {"tool": tool, "minutes": rounded(wear.minutes, 2), "cut_m": rounded(wear.cut_length_mm / 1000, 2)}
                for tool, wear in sorted(self.cutters.items())
            ],
        }


def totals_of(rows: Iterable[RowOutcome], sheets: Iterable[RowOutcome] | None) -> Totals:
    """The sums over outcomes, which are gone through once; `sheets` None when every sign has its own board."""
    totals = Totals()
    for outcome in rows:
        totals.add_row(outcome, alone=sheets is None)
    for outcome in sheets or ():
        if outcome.made:
            totals.add_sheet(outcome)
    return totals
