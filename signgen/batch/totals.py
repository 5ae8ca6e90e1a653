"""What a batch comes to: signs, minutes, board and the cutters' distance."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from signgen.batch.outcome import Outcome
from signgen.sheet.numbers import rounded


@dataclass(slots=True)
class Board:
    """Boards of one material and thickness."""

    count: int = 0
    area_mm2: float = 0.0


@dataclass(slots=True)
class Wear:
    """How long and how far a cutter runs."""

    minutes: float = 0.0
    cut_length_mm: float = 0.0


@dataclass(slots=True)
class Totals:
    """Sums over the rows, each as often as it has copies; it grows with the rows that it is told of."""

    made: int = 0
    failed: int = 0
    signs: int = 0
    minutes: float = 0.0
    boards: dict[tuple[str, float], Board] = field(default_factory=dict)
    cutters: dict[str, Wear] = field(default_factory=dict)

    def add(self, outcome: Outcome) -> None:
        """One more row."""
        if not outcome.made:
            self.failed += 1
            return
        self.made += 1
        self.signs += outcome.copies
        told = outcome.figures
        board = self.boards.setdefault((told["material"], told["thickness_mm"]), Board())
        board.count += outcome.copies
        board.area_mm2 += outcome.copies * told["board_mm"][0] * told["board_mm"][1]
        self.add_programs(told["programs"], outcome.copies)

    def add_programs(self, programs: Iterable[Mapping[str, Any]], times: int) -> None:
        """Programs that are run so many times."""
        for program in programs:
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


def totals_of(outcomes: Iterable[Outcome]) -> Totals:
    """The sums over outcomes, which are gone through once."""
    totals = Totals()
    for outcome in outcomes:
        totals.add(outcome)
    return totals
