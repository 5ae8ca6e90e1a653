"""A table of lists, each a file as somebody might send it, with what must become of it.

The files lie in `lists/` to the byte. A row is taken as far as its drawing; making programs is for other tests.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

import pytest

from signgen.batching.outcome import RowOutcome, failed
from signgen.batching.recipe import make_recipe
from signgen.batching.shop import shop_of
from signgen.batching.table import open_table
from signgen.drawing.draw import draw
from signgen.errors import AskError, SignGenError
from signgen.pipeline import read_sign

LISTS = Path(__file__).parent / "lists"


@dataclass(frozen=True)
class Expected:
    """`made`: folder and lines of each good row. `bad`: row, field, and words of the message. `refused`: words of the
    errors, in order, when the list as a whole is."""

    made: dict[str, tuple[str, ...]] = field(default_factory=dict)
    bad: dict[int, tuple[str, str]] = field(default_factory=dict)
    refused: tuple[str, ...] = ()
    text: tuple[str, ...] = ("{name}",)
    encoding: str | None = None
    ignore_columns: bool = False
    copies: tuple[int, ...] = ()


BOTH = ("{name}", "{number}")
ANNA_AND_BO = {"0002-anna": ("Anna", "3"), "0003-bo": ("Bo", "4")}
QUOTES = "write a quote inside a quoted text twice"

TABLE: dict[str, Expected] = {
    # How it is written
    "plain.csv": Expected(text=BOTH, made=ANNA_AND_BO),
    "no-last-newline.csv": Expected(made={"0002-anna": ("Anna",), "0003-bo": ("Bo",)}),
    "crlf.csv": Expected(text=BOTH, made=ANNA_AND_BO),
    "carriage-returns.csv": Expected(text=BOTH, made=ANNA_AND_BO),
    "bom.csv": Expected(text=BOTH, made={"0002-anna": ("Anna", "3")}),
    "utf-16-le.csv": Expected(text=BOTH, made={"0002-zoe": ("Zoë", "3")}),
    "utf-16-be.csv": Expected(text=BOTH, made={"0002-zoe": ("Zoë", "3")}),
    "utf-16-no-mark.csv": Expected(refused=("not UTF-8 text",)),
    "windows-1252.csv": Expected(refused=("windows-1252.csv:3: Byte 0xEB is not utf-8 text.",)),
    "workbook.csv": Expected(refused=("a spreadsheet's own file",)),
    "semicolons.csv": Expected(text=BOTH, made={"0002-anna-the-first": ("Anna, the first", "3")}),
    "tabs.tsv": Expected(text=BOTH, made={"0002-anna-bo-cy": ("Anna; Bo, Cy", "3")}),
    # Quotes
    "quoted-newline.csv": Expected(text=BOTH, made={"0002-rose": ("Rose", "Cottage", "3"), "0003-bo": ("Bo", "4")}),
    "quoted-comma.csv": Expected(text=BOTH, made={"0002-smith-anna": ("Smith, Anna", "3")}),
    "doubled-quotes.csv": Expected(made={"0002-the-old-mill": ('The "Old" Mill',)}),
    "blank-before-quote.csv": Expected(text=BOTH, made={"0002-anna": ("Anna", "3")}),
    "inch-mark.csv": Expected(made={"0002-5-pipe": ('5" pipe',)}),
    "unclosed-quote.csv": Expected(
        text=BOTH, made={"0002-anna": ("Anna", "3"), "0004-cy": ("Cy", "5")}, bad={3: ("row", "never closed")}
    ),
    "unclosed-quote-last.csv": Expected(text=BOTH, made=ANNA_AND_BO, bad={4: ("row", "never closed")}),
    "text-after-quote.csv": Expected(text=BOTH, made={"0003-bo": ("Bo", "4")}, bad={2: ("row", QUOTES)}),
    # Rows and columns
    "empty.csv": Expected(refused=("The list is empty.",)),
    "header-only.csv": Expected(refused=("The list has no rows.",)),
    "blank-header.csv": Expected(refused=("The list has no header.",)),
    "empty-rows.csv": Expected(text=BOTH, made={"0004-anna": ("Anna", "3"), "0007-bo": ("Bo", "4")}),
    "short-rows.csv": Expected(text=BOTH, made={"0002-anna": ("Anna",), "0003-bo": ("Bo", "4")}),
    "long-rows.csv": Expected(
        text=BOTH, made={"0003-bo": ("Bo", "4")}, bad={2: ("row", "It has 3 cells, and the list has 2 columns.")}
    ),
    "trailing-commas.csv": Expected(text=BOTH, made={"0002-anna": ("Anna", "3")}),
    "unnamed-column.csv": Expected(text=BOTH, refused=("Column 2 has no name.",)),
    "same-columns.csv": Expected(refused=("2 columns are called 'cap-height'.",)),
    "unknown-column.csv": Expected(refused=("colour: This column is no key of a sign file.",)),
    "misspelt-key.csv": Expected(refused=("This column is no key of a sign file. Did you mean hole-diameter",)),
    "thousand-columns.csv": Expected(made={"0002-anna": ("Anna", "7")}, text=("{name}", "{c7}"), ignore_columns=True),
    "semicolon-in-header-quotes.csv": Expected(text=("{name;of}", "{number}"), made={"0002-anna": ("Anna", "3")}),
    # Cells
    "keys.csv": Expected(
        made={"0002-anna": ("Anna",), "0004-cy": ("Cy",)},
        bad={3: ("size", "'120' is not a size."), 5: ("inset", "leaves no wood between the holes")},
    ),
    "two-problems.csv": Expected(bad={2: ("size; thickness", "size: 0 mm is too little.")}),
    "decimal-comma.csv": Expected(made={"0003-bo": ("Bo",)}, bad={2: ("thickness", "after a point, not a comma")}),
    "capital-headers.csv": Expected(made={"0002-anna": ("Anna",)}),
    "braces.csv": Expected(text=BOTH, made={"0002-number": ("{number}", "3"), "0003-x": ("{{x}}", "4")}),
    "copies.csv": Expected(
        made={"0002-anna": ("Anna",), "0003-bo": ("Bo",)},
        copies=(3, 1),
        bad={4: ("copies", "0 is too little."), 5: ("copies", "'many' is not a whole number.")},
    ),
    "blank-name.csv": Expected(text=BOTH, made={"0002-3": ("3",), "0004-bo": ("Bo", "4")}),
    "long-name.csv": Expected(made={"0003-bo": ("Bo",)}, bad={2: ("text", "Line 1 has 300 characters.")}),
    "mended-errors.csv": Expected(made={"0003-a1": ("=A1",), "0004-bo": ("Bo",)}),
    # Names
    "same-names.csv": Expected(
        made={"0002-anna": ("Anna",), "0003-anna": ("Anna",), "0004-anna": ("anna",), "0005-anna": ("Ánna",)}
    ),
    "formulas.csv": Expected(
        made={
            "0002-cmd-c-calc-a0": ("=cmd|' /C calc'!A0",),
            "0003-1-1": ("+1+1",),
            "0004-2": ("-2",),
            "0005-sum-1": ("@SUM(1)",),
        }
    ),
    "paths.csv": Expected(
        made={
            "0002-x": ("../../x",),
            "0003-etc-passwd": ("/etc/passwd",),
            "0004-c-windows-x": ("C:\\Windows\\x",),
            "0005-sign-con": ("con",),
            "0006-nul-txt": ("nul.txt",),
            "0007-sign": ("...",),
            "0008-x": ("~/x",),
        }
    ),
    "out-column.csv": Expected(made={"0002-y": ("Anna",), "0003-front-door": ("Bo",), "0004-cy": ("Cy",)}),
    "control-characters.csv": Expected(
        made={"0005-di": ("Di",)},
        bad={
            2: ("text", r"'A\x07nna' holds a control character."),
            3: ("text", r"'B\x00o' holds a control character."),
            4: ("text", r"'\x1b[31mCy' holds a control character."),
        },
    ),
    "line-separator.csv": Expected(made={"0002-rose": ("Rose", "Cottage")}),
    "right-to-left.csv": Expected(
        made={"0002-sign-b7ac0398": ("שלום",), "0003-sign-5ff239a8": ("أحمد",), "0005-anna": ("Anna",)},
        bad={4: ("text", "Faces that have them: noto-kufi-arabic;")},
    ),
    "emoji.csv": Expected(made={"0003-bo": ("Bo",)}, bad={2: ("text", "(U+1F600 GRINNING FACE)")}),
    "decomposed.csv": Expected(made={"0002-zoe": ("Zoe\u0308",)}),
    "markup.csv": Expected(made={"0002-b-anna-b-amp": ("<b>Anna</b>&amp;",)}),
}


def base(expected: Expected) -> dict[str, object]:
    return {"text": list(expected.text), "size": "160x60", "thickness": 9}


def test_every_list_has_its_place_in_the_table() -> None:
    assert {path.name for path in LISTS.iterdir()} - {".gitattributes"} == set(TABLE)


@pytest.mark.parametrize("file", [file for file, expected in TABLE.items() if not expected.refused])
def test_rows_become_signs_or_say_why_not(file: str) -> None:
    expected = TABLE[file]
    table = open_table(LISTS / file, expected.encoding)
    recipe = make_recipe(table, base(expected), ignore_columns=expected.ignore_columns)
    made: dict[str, tuple[str, ...]] = {}
    copies: list[int] = []
    bad: dict[int, RowOutcome] = {}
    for record in table.rows():
        try:
            task = recipe.task(record)
            spec = read_sign(task.asked, shop_of)
            draw(spec)
        except SignGenError as error:
            bad[record.row] = failed(record.row, error)
            continue
        made[task.folder] = spec.text.lines
        copies.append(task.copies)
    assert made == expected.made
    assert {row: outcome.field_named for row, outcome in bad.items()} == {
        row: where for row, (where, _) in expected.bad.items()
    }
    for row, (_, words) in expected.bad.items():
        assert words in bad[row].message
    assert table.count == len(made) + len(bad)
    assert not expected.copies or tuple(copies) == expected.copies


@pytest.mark.parametrize("file", [file for file, expected in TABLE.items() if expected.refused])
def test_a_list_that_cannot_be_understood_is_refused_as_a_whole(file: str) -> None:
    expected = TABLE[file]
    with pytest.raises(AskError) as refused:
        make_recipe(open_table(LISTS / file, expected.encoding), base(expected))
    problems = [str(problem) for problem in refused.value.problems]
    assert len(problems) == len(expected.refused)
    for problem, words in zip(problems, expected.refused, strict=True):
        assert words in problem


def test_an_encoding_that_was_named_is_taken() -> None:
    table = open_table(LISTS / "windows-1252.csv", "windows-1252")
    assert [record.cells for record in table.rows()] == [("Anna",), ("Zoë",)]


@pytest.mark.parametrize("name", ["klingon", "base64", "rot13", "a\0b"])
def test_an_encoding_that_is_none_is_refused(name: str) -> None:
    with pytest.raises(AskError) as refused:
        open_table(LISTS / "plain.csv", name)
    assert refused.value.problems[0].where == "encoding"


def test_a_thousand_unknown_columns_are_told_in_a_few_lines() -> None:
    table = open_table(LISTS / "thousand-columns.csv")
    with pytest.raises(AskError) as refused:
        make_recipe(table, {"text": ["{name}"], "size": "160x60", "thickness": 9})
    assert len(refused.value.problems) == 13
    assert "987 more columns" in str(refused.value.problems[-1])


def test_everything_wrong_whatever_the_rows_hold_is_said_at_once() -> None:
    table = open_table(LISTS / "plain.csv")
    asked = {"text": ["{nmae}", "{number", "}"], "thickness": "-1", "materail": "mdf"}
    with pytest.raises(AskError) as refused:
        make_recipe(table, asked)
    found = {(problem.where, str(problem.what).split(".")[0]) for problem in refused.value.problems}
    assert found == {
        ("text", "The list has no column 'nmae' for {nmae}"),
        ("text", "A lone '{'"),
        ("text", "A lone '}'"),
        ("name", "This column is no key of a sign file"),
        ("number", "This column is no key of a sign file"),
        ("size", "It is missing"),
        ("thickness", "-1 mm is too little"),
        ("materail", "There is no such key"),
    }


def test_doubled_braces_in_the_sign_file_stand_for_braces() -> None:
    table = open_table(LISTS / "plain.csv")
    recipe = make_recipe(table, {"text": "{{{name}}} {number}", "size": "160x60", "thickness": 9})
    assert [recipe.task(record).asked["text"] for record in table.rows()] == [["{Anna} 3"], ["{Bo} 4"]]


def test_placeholders_work_in_every_text_of_the_sign_file(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text("name,width,face\nAnna,100,cinzel\nBo,120,\n")
    table = open_table(tmp_path / "list.csv")
    recipe = make_recipe(table, {"text": "{name}", "size": "{width}x50", "thickness": 9, "font": "{face}"})
    first, second = (recipe.task(record).asked for record in table.rows())
    assert (first["size"], first["font"]) == ("100x50", "cinzel")
    assert second["size"] == "120x50"
    assert "font" not in second


def test_a_row_goes_before_the_sign_file_with_what_depends_on_it(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text("text,holes,inset\nAnna,none,\nBo,,20\n")
    table = open_table(tmp_path / "list.csv")
    asked = {"size": "160x60", "thickness": 9, "holes": "corners", "hole-diameter": 5, "inset": 9}
    first, second = (make_recipe(table, asked).task(record).asked for record in table.rows())
    assert "inset" not in first
    assert "hole-diameter" not in first
    assert second["inset"] == "20"
    assert second["hole-diameter"] == 5


def test_paths_in_cells_are_seen_from_the_lists_folder(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text("text,font,shop\nAnna,faces/mine.ttf,mine.toml\n")
    table = open_table(tmp_path / "list.csv")
    recipe = make_recipe(table, {"size": "160x60", "thickness": 9})
    (asked,) = (recipe.task(record).asked for record in table.rows())
    assert asked["font"] == str(tmp_path / "faces" / "mine.ttf")
    assert asked["shop"] == str(tmp_path / "mine.toml")
