"""What is told of lists is true: the example runs, and every column is one."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.batching.recipe import make_recipe
from signgen.batching.shop import shop_of
from signgen.batching.table import open_table
from signgen.cli import group
from signgen.drawing.draw import draw
from signgen.guide.batch_page import COPIES, columns_page, reference
from signgen.guide.pages import explained
from signgen.pipeline import read_sign
from signgen.spec.keys import KEYS
from signgen.spec.placeholders import placeholders


def said(*words: str) -> str:
    result = CliRunner().invoke(group, ["batch", *words])
    assert result.exit_code == 0, result.exception
    return result.output


def test_the_page_fits_a_terminal_and_is_found() -> None:
    assert max(len(line) for line in reference()) <= 79
    assert explained("batch").startswith("A list for signgen batch")
    assert "results.csv" in explained("which columns has a list")


def test_every_key_is_told_as_a_column() -> None:
    names = {line.split()[0] for line in columns_page() if line}
    assert names >= {key.name for key in KEYS} | {"out", COPIES}
    assert said("--columns").splitlines() == list(columns_page())


@pytest.mark.parametrize(
    ("words", "header"),
    [
        (["--size", "200x100", "--thickness", "9"], "text,copies"),
        (["--text", "{name}", "--text", "No {serial:03}"], "name,size,thickness,copies"),
        (["--text", "{name}", "--text", "{lane}", "--size", "200x100", "--thickness", "9"], "name,lane,copies"),
    ],
)
def test_the_example_is_a_list_that_can_be_made(tmp_path: Path, words: list[str], header: str) -> None:
    text = said("--example", *words)
    assert text.splitlines()[0] == header
    path = tmp_path / "list.csv"
    path.write_text(text, encoding="utf-8")
    table = open_table(path)
    pairs = list(zip(words[::2], words[1::2], strict=True))
    texts = [value for name, value in pairs if name == "--text"]
    base = {name.removeprefix("--"): value for name, value in pairs if name != "--text"}
    recipe = make_recipe(table, {**base, **({"text": texts} if texts else {})})
    tasks = [recipe.task(record) for record in table.rows()]
    assert [task.copies for task in tasks] == [1, 2]
    for task in tasks:
        draw(read_sign(task.asked, shop_of))


def test_placeholders_come_in_their_order_and_once() -> None:
    assert placeholders({"text": ["{b} {a}", "{row} {{x}} {b}"], "font": "{face}"}) == ("b", "a", "face")
