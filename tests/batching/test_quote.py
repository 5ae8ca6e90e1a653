"""Quotes: every cent of the total is some row's, and hand-reckoned cases come out."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.batching.outcome import RowOutcome
from signgen.batching.quote import Cost, Reckoner, invoice_csv, quote_csv
from signgen.errors import Problem
from signgen.shop.prices import Price, Prices
from tests.batching.making import SIGN, batch, write_list
from tests.shop.test_prices import OWN

PRICES = Prices(
    currency="GBP",
    board_mm3={"mdf": Price(each=50 / (1000 * 500 * 10), invented=False)},
    machine_min={"router": Price(each=1.0, invented=False)},
    tool_mm={"mill": Price(each=0.1 / 1000, invented=True)},
)


def told(minutes: float, metres: float, board: tuple[float, float] = (200, 100), tool: str = "mill") -> dict[str, Any]:
    return {
        "lines": ["A"], "width_mm": board[0], "height_mm": board[1], "thickness_mm": 5, "material": "mdf",
        "machine": "router", "board_mm": list(board), "minutes": minutes,
        "programs": [{"tool": tool, "minutes": minutes, "cut_length_mm": 1000 * metres}],
    }  # fmt: skip


def row(number: int, figures: Mapping[str, Any], copies: int = 1) -> RowOutcome:
    return RowOutcome(row=number, copies=copies, figures=figures)


def test_a_sign_pays_for_its_board_its_minutes_and_its_wear() -> None:
    reckoner = Reckoner(PRICES)
    ((_, cost),) = reckoner.rows([row(2, told(3, 4), copies=2)], None)
    # 0.2 x 0.1 m of 0.5 m2 at 50, half as thick: 1.00; 3 minutes at 1; 4 m at 0.1; in all twice
    assert (cost.board, cost.machine, cost.wear) == pytest.approx((1.0, 3.0, 0.4))
    assert reckoner.quote.to_json()["total"] == pytest.approx(8.8)
    assert reckoner.quote.invented


def test_what_has_no_price_is_named_and_not_reckoned() -> None:
    reckoner = Reckoner(PRICES)
    ((_, cost),) = reckoner.rows([row(2, {**told(3, 4, tool="file"), "material": "slate"})], None)
    assert (cost.board, cost.machine, cost.wear) == pytest.approx((0, 3.0, 0))
    assert reckoner.quote.not_priced == {"file", "slate"}
    assert not reckoner.quote.invented


def test_a_sheet_is_paid_for_by_its_signs_as_they_share_in_it() -> None:
    rows = [row(2, told(1, 1, (200, 100)), copies=2), row(3, told(2, 2, (400, 100)))]
    pieces = [{"row": 2}, {"row": 3}, {"row": 2}]
    sheet = RowOutcome(row=0, sheet=1, figures={**told(8, 6, (1000, 500)), "pieces": pieces})
    costs = {outcome.row: cost for outcome, cost in Reckoner(PRICES).rows(rows, [[sheet]])}
    # the sheet: 25.00 of board, 8.00 of minutes, 0.60 of wear; both rows are half of it in every way, the first by two
    assert (costs[2].board, costs[2].machine, costs[2].wear) == pytest.approx((6.25, 2.0, 0.15))
    assert (costs[3].board, costs[3].machine, costs[3].wear) == pytest.approx((12.5, 4.0, 0.3))


def test_equal_signs_cost_the_same_on_a_full_sheet_and_on_the_last_one() -> None:
    rows = [row(number, told(1, 1)) for number in (2, 3, 4)]
    full = RowOutcome(row=0, sheet=1, figures={**told(8, 6, (1000, 500)), "pieces": [{"row": 2}, {"row": 3}]})
    last = RowOutcome(row=0, sheet=2, figures={**told(4, 3, (1000, 500)), "pieces": [{"row": 4}]})
    reckoner = Reckoner(PRICES)
    costs = [cost for _, cost in reckoner.rows(rows, [[full, last]])]
    # both sheets: 50.00 of board, 12.00 of minutes, 0.90 of wear, in three parts; each rounded to a cent
    assert costs == [Cost(board=16.67, machine=4.0, wear=0.3)] * 3
    assert reckoner.quote.to_json()["total"] == pytest.approx(3 * 20.97)


def test_a_sheet_that_failed_costs_nothing() -> None:
    failed = RowOutcome(row=0, sheet=1, exit_code=5, problems=(Problem(where="sheet", what="It failed."),))
    ((_, cost),) = Reckoner(PRICES).rows([row(2, told(1, 1))], [[failed]])
    assert cost == Cost()


@given(st.lists(st.tuples(st.floats(0, 99), st.floats(0, 9), st.integers(1, 9)), max_size=30), st.booleans())
def test_lines_add_up_to_the_total(parts: list[tuple[float, float, int]], equal: bool) -> None:
    """In the quote and in the invoice, which charges equal signs on one line."""
    rows = [
        row(n, told(*((1, 1) if equal else (minutes, metres))), copies)
        for n, (minutes, metres, copies) in enumerate(parts, 2)
    ]
    reckoner = Reckoner(PRICES)
    costs = list(reckoner.rows(rows, None))
    quote = reckoner.quote
    table = list(csv.DictReader(io.StringIO(b"".join(quote_csv(costs, quote)).decode("utf-8-sig"))))
    total = table.pop()
    for name in ("board", "machine", "cutters", "total"):
        assert sum(round(100 * float(each[name])) for each in table) == round(100 * float(total[name]))
    assert quote.to_json()["total"] == float(total["total"])
    text = b"".join(invoice_csv(costs, quote, "whole boards")).decode("utf-8-sig")
    *lines, in_all, note = csv.DictReader(io.StringIO(text))
    assert float(in_all["total"]) == float(total["total"])
    assert sum(round(100 * float(each["total"])) for each in lines) == round(100 * float(total["total"]))
    assert sum(int(each["copies"]) for each in lines) == sum(copies for _, _, copies in parts)
    assert note["words"] == "whole boards"
    if equal:
        assert len(lines) <= 1


@pytest.mark.parametrize("more", [[], ["--sheet", "200x160"]])
def test_a_batch_with_a_quote(tmp_path: Path, more: list[str]) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(OWN + "\n[prices.tool.v-bit-90]\nprice = 20\nlife = 500\n")
    path = write_list(tmp_path / "n.csv", ["A,2", "B,1", "C,x"], "name,copies")
    words = [path, *SIGN, *more, "--shop", shop, "--out", tmp_path / "out", "--quote", "--workers", "1"]
    result = batch(*words)
    assert result.exception is None
    report = json.loads((tmp_path / "out" / "batch.json").read_text())
    quote = report["quote"]
    (board,) = report["totals"]["boards"]
    assert quote["board"] == pytest.approx(board["area_m2"] * 1e6 * 6 * 50 / (1000 * 500 * 10), abs=0.05)
    assert quote["machine"] == pytest.approx(report["totals"]["minutes"], abs=0.05)
    by_tool = {"v-bit-90": 0.04, "end-mill-6": 0.1}
    wear = sum(cutter["cut_m"] * by_tool[cutter["tool"]] for cutter in report["totals"]["cutters"])
    assert quote["cutters"] == pytest.approx(wear, abs=0.05)
    assert quote["invented_prices"] is False
    assert f"cost      {quote['total']:.2f} GBP" in result.output
    table = list(csv.DictReader(io.StringIO((tmp_path / "out" / "quote.csv").read_text("utf-8-sig"))))
    assert [each["row"] for each in table] == ["2", "3", "total"]
    assert [each["copies"] for each in table] == ["2", "1", ""]
    assert batch(*words[:-3], "--resume", "--workers", "1").exception is None  # without a quote none stays from before
    assert not (tmp_path / "out" / "quote.csv").exists()
    assert not (tmp_path / "out" / "invoice.csv").exists()
