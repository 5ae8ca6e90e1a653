"""Names that no row can mend are refused before any row is made."""

from __future__ import annotations

from pathlib import Path

import pytest

from signgen.batching.recipe import make_recipe
from signgen.batching.table import Table, open_table
from signgen.errors import AskError, ShopError

BASE: dict[str, object] = {"text": "{name}", "size": "160x60", "thickness": 9}


def table_of(tmp_path: Path, columns: str = "name", row: str = "Anna") -> Table:
    path = tmp_path / "names.csv"
    path.write_text(f"{columns}\n{row}\n")
    return open_table(path, None)


@pytest.mark.parametrize(
    ("key", "name", "offer"),
    [
        ("font", "barlo", "barlow"),
        ("ornament-font", "pacificoo", "pacifico"),
        ("border", "ovall", "oval"),
        ("holes", "conrers", "corners"),
        ("dialect", "one-fil", "one-file"),
        ("material", "birch-plywod", "birch-plywood"),
        ("machine", "desktop-routr", "desktop-router"),
        ("end-mill-name", "end-mil-6", "end-mill-6"),
    ],
)
def test_a_misspelt_name_is_refused_at_once_with_a_close_one(tmp_path: Path, key: str, name: str, offer: str) -> None:
    with pytest.raises(AskError) as caught:
        make_recipe(table_of(tmp_path), BASE | {key: name})
    (problem,) = caught.value.problems
    assert (problem.where, name in str(problem.what), offer in str(problem.remedy)) == (key, True, True)


def test_all_names_are_told_at_once(tmp_path: Path) -> None:
    with pytest.raises(AskError) as caught:
        make_recipe(table_of(tmp_path), BASE | {"font": "barlo", "material": "birch-plywod", "thickness": "thick"})
    assert {problem.where for problem in caught.value.problems} == {"font", "material", "thickness"}


def test_names_that_rows_may_change_are_left_to_the_rows(tmp_path: Path) -> None:
    make_recipe(table_of(tmp_path, "name,face", "Anna,barlow"), BASE | {"font": "{face}"})
    make_recipe(table_of(tmp_path, "name,font", "Anna,barlow"), BASE | {"font": "barlo"})


def test_names_of_a_shop_that_differs_by_row_are_left_to_the_rows(tmp_path: Path) -> None:
    make_recipe(table_of(tmp_path, "name,shop", "Anna,mine.toml"), BASE | {"material": "my-oak"})
    make_recipe(table_of(tmp_path, "name,own", "Anna,mine.toml"), BASE | {"shop": "{own}", "material": "my-oak"})


def test_names_of_ones_own_shop_are_known_and_its_faults_told_at_once(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(
        "[tool.my-mill]\nkind = 'end-mill'\ndiameter = 5\nshank = 6\ncutting-length = 20\nflutes = 2\n"
        "stick-out = 25\nsource = 'measured'\n"
    )
    make_recipe(table_of(tmp_path), BASE | {"shop": str(shop), "end-mill-name": "my-mill"})
    shop.write_text("[tool.my-mill]\nkind = 'end-mill'\n")
    with pytest.raises(ShopError):
        make_recipe(table_of(tmp_path), BASE | {"shop": str(shop)})
    with pytest.raises(AskError, match="shop"):
        make_recipe(table_of(tmp_path), BASE | {"shop": str(tmp_path / "none.toml")})
