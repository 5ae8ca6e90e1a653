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

from signgen.batching.outcome import Outcome
from signgen.batching.quote import Cost, Quote, Reckoner, quote_csv
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


def row(number: int, figures: Mapping[str, Any], copies: int = 1) -> Outcome:
    return Outcome(row=number, copies=copies, figures=figures)


def test_a_sign_pays_for_its_board_its_minutes_and_its_wear() -> None:
    reckoner = Reckoner(PRICES)
    ((_, cost),) = reckoner.rows([row(2, told(3, 4), copies=2)], None)
    # 0.2 x 0.1 m of 0.5 m2 at 50, half as thick: 1.00; 3 minutes at 1; 4 m at 0.1; twice
    assert (cost.board, cost.machine, cost.wear) == pytest.approx((2.0, 6.0, 0.8))
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
    sheet = Outcome(row=0, sheet=1, figures={**told(8, 6, (1000, 500)), "pieces": pieces})
    costs = {outcome.row: cost for outcome, cost in Reckoner(PRICES).rows(rows, [sheet])}
    # the sheet: 25.00 of board, 8.00 of minutes, 0.60 of wear; both rows are half of it in every way
    for cost in costs.values():
        assert (cost.board, cost.machine, cost.wear) == pytest.approx((12.5, 4.0, 0.3))


def test_a_sheet_that_failed_costs_nothing() -> None:
    failed = Outcome(row=0, sheet=1, exit_code=5, problems=(Problem(where="sheet", what="It failed."),))
    ((_, cost),) = Reckoner(PRICES).rows([row(2, told(1, 1))], [failed])
    assert cost == Cost()


@given(st.lists(st.tuples(st.floats(0, 99), st.floats(0, 99), st.floats(0, 9), st.integers(1, 9)), max_size=30))
def test_rounded_amounts_add_up_to_the_rounded_total(parts: list[tuple[float, float, float, int]]) -> None:
    costs = [
        (row(n, told(1, 1), copies), Cost(board=board, machine=machine, wear=wear))
        for n, (board, machine, wear, copies) in enumerate(parts, 2)
    ]
    quote = Quote("GBP", total=sum((cost for _, cost in costs), Cost()))
    text = b"".join(quote_csv(costs, quote)).decode("utf-8-sig")
    table = list(csv.DictReader(io.StringIO(text)))
    total = table.pop()
    for name in ("board", "machine", "cutters", "total"):
        assert sum(round(100 * float(each[name])) for each in table) == round(100 * float(total[name]))
    assert quote.to_json()["total"] == float(total["total"])


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
    assert batch(*words[:-3], "--workers", "1").exception is None  # without a quote none stays from before
    assert not (tmp_path / "out" / "quote.csv").exists()
