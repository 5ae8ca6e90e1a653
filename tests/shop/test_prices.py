"""Prices: per cubic millimetre, minute and millimetre of cut; the user's own before those that ship."""

from __future__ import annotations

from pathlib import Path

import pytest

from signgen.errors import ShopError
from signgen.shop.load import load_shop
from signgen.shop.prices import load_prices

OWN = """
[prices]
currency = "GBP"

[prices.material.birch-plywood]
sheet = "1000x500"
thickness = 10
price = 50

[prices.machine.desktop-router]
hour = 60

[prices.tool.end-mill-6]
price = 10
life = 100
"""


@pytest.fixture
def own(tmp_path: Path) -> Path:
    path = tmp_path / "mine.toml"
    path.write_text(OWN)
    return path


def test_everything_that_ships_has_a_price_that_says_it_is_invented() -> None:
    shop, prices = load_shop(None), load_prices(None)
    assert {material.name for material in shop.materials} == set(prices.board_mm3)
    assert {machine.name for machine in shop.machines} == set(prices.machine_min)
    assert {tool.name for tool in shop.tools} == set(prices.tool_mm)
    every = [*prices.board_mm3.values(), *prices.machine_min.values(), *prices.tool_mm.values()]
    assert all(price.invented and price.each > 0 for price in every)


def test_units_are_reckoned_from_sheets_hours_and_lives(own: Path) -> None:
    prices = load_prices(own)
    assert prices.currency == "GBP"
    assert prices.board_mm3["birch-plywood"].each == pytest.approx(50 / (1000 * 500 * 10))
    assert prices.machine_min["desktop-router"].each == pytest.approx(1.0)
    assert prices.tool_mm["end-mill-6"].each == pytest.approx(0.1 / 1000)


def test_own_prices_are_not_invented_and_the_others_still_are(own: Path) -> None:
    prices = load_prices(own)
    assert not prices.board_mm3["birch-plywood"].invented
    assert prices.board_mm3["mdf"].invented


def test_a_shop_file_with_prices_is_a_shop_file(own: Path) -> None:
    assert load_shop(own).user_file == str(own)


def test_every_problem_of_the_prices_is_said_at_once(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text(
        "[prices]\ncurency = 'EUR'\n[prices.material.mdf]\nsheet = '12'\nthickness = -1\n"
        "[prices.machine.desktop-router]\nhour = 'dear'\nminute = 3\n[prices.tool]\nend-mill-6 = 3\n"
    )
    with pytest.raises(ShopError) as error:
        load_prices(path)
    places = {problem.where.removeprefix("mine.toml: ") for problem in error.value.problems}
    assert places == {
        "prices.curency", "prices.material.mdf.sheet", "prices.material.mdf.thickness", "prices.material.mdf.price",
        "prices.machine.desktop-router.hour", "prices.machine.desktop-router.minute", "prices.tool",
    }  # fmt: skip
