"""Rows on top of a sign file whose lines have tables of their own."""

from __future__ import annotations

from pathlib import Path

import pytest

from signgen.batching.recipe import make_recipe
from signgen.batching.records import Record
from signgen.batching.table import open_table
from signgen.errors import AskError
from signgen.pipeline import read_sign

SIGN = {"size": "220x140", "thickness": 12}
TABLES = [{"text": "{number}", "font": "rye"}, {"text": "{street}", "height-ratio": 0.4}]


def signs(folder: Path, text: str, base: dict[str, object]) -> dict[str, list[tuple[str, str]]]:
    """Folder of each row, and the words and the font of its lines."""
    path = folder / "list.csv"
    path.write_text(text, encoding="utf-8")
    _, *rows = (tuple(line.split(",")) for line in text.splitlines())
    recipe = make_recipe(open_table(path, None), SIGN | base)
    found = {}
    for number, cells in enumerate(rows, 2):
        task = recipe.task(Record(row=number, line=number, cells=cells))
        lines = read_sign(task.asked).text.rows
        found[task.folder] = [(line.text, line.font) for line in lines]
    return found


def test_places_in_tables_are_filled_and_name_the_folder(tmp_path: Path) -> None:
    made = signs(tmp_path, "number,street\n17,Larkspur Lane\n3,Mill Row\n", {"line": TABLES})
    assert made == {
        "0002-17": [("17", "rye"), ("Larkspur Lane", "barlow")],
        "0003-3": [("3", "rye"), ("Mill Row", "barlow")],
    }


def test_a_table_whose_words_are_empty_is_left_out(tmp_path: Path) -> None:
    assert signs(tmp_path, "number,street\n,Mill Row\n", {"line": TABLES}) == {
        "0002-mill-row": [("Mill Row", "barlow")]
    }


def test_a_column_of_text_takes_the_place_of_the_tables_words(tmp_path: Path) -> None:
    tables = [{"text": "x", "font": "rye"}, {"text": "y"}]
    assert signs(tmp_path, "text\n21\n", {"line": tables}) == {"0002-21": [("21", "rye")]}


def test_a_column_that_is_called_line_is_no_key(tmp_path: Path) -> None:
    assert signs(tmp_path, "line\nMill Row\n", {"text": ["{line}"]}) == {"0002-mill-row": [("Mill Row", "barlow")]}


def test_a_place_without_a_column_is_told_in_tables_too(tmp_path: Path) -> None:
    with pytest.raises(AskError, match=r"line: The list has no column 'steet' for \{steet\}"):
        signs(tmp_path, "street\nMill Row\n", {"line": [{"text": "{street} {steet}"}]})


def test_words_are_missed_where_neither_text_nor_tables_give_them(tmp_path: Path) -> None:
    with pytest.raises(AskError, match="text: It is missing"):
        signs(tmp_path, "align\nleft\n", {})
