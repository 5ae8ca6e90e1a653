"""Lettering asked for: lines that are alike, lines with a table each, and what cannot stand together."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.shop.load import load_shop
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.sign_file import dump_sign_file, load_sign_file
from signgen.spec.sign_spec import ArcSpec

SHOP = load_shop()
SIGN = {"size": "220x140", "thickness": "12"}


def text_of(**keys):
    return read_spec(SIGN | {name.replace("_", "-"): value for name, value in keys.items()}, SHOP).text


def problems_of(**keys):
    with pytest.raises(AskError) as caught:
        text_of(**keys)
    return [str(problem) for problem in caught.value.problems]


def test_a_line_takes_from_the_sign_what_its_table_leaves_out():
    text = text_of(
        font="rye", cap_height=20, letter_spacing=1, line_spacing=2,
        line=[{"text": "17", "font": "barlow", "cap-height": "3in"}, {"text": "Lane", "align": "right"}],
    )  # fmt: skip
    one, two = text.rows
    assert (one.text, one.font, one.cap_height_mm, one.align) == ("17", "barlow", 76.2, "centre")
    assert (two.text, two.font, two.cap_height_mm, two.align) == ("Lane", "rye", 20, "right")
    assert {(row.letter_spacing_mm, row.line_spacing) for row in text.rows} == {(1, 2)}
    assert text.lines == ("17", "Lane")


def test_tables_that_say_nothing_of_their_own_are_plain_lines():
    tables = text_of(line=[{"text": "17"}, {"text": "Lane", "align": "centre"}])
    assert tables == text_of(text=["17", "Lane"])
    assert tables.own_lines == ()


def test_a_ratio_is_of_the_height_given_or_of_the_fitted_one():
    line = [{"text": "17"}, {"text": "Lane", "height-ratio": 0.3}]
    given, fitted, digits = (
        text_of(line=line, **keys).rows[1] for keys in ({"cap_height": 50}, {}, {"digit_height": 7})
    )
    assert (given.cap_height_mm, given.height_ratio) == (15, 1)
    assert (fitted.cap_height_mm, fitted.height_ratio) == (None, 0.3)
    assert (digits.cap_height_mm, digits.digit_height_mm) == (None, 2.1)


def test_a_height_of_figures_takes_the_place_of_the_height_of_capitals():
    (row,) = text_of(line=[{"text": "17", "digit-height": "4in"}], cap_height=20).rows
    assert (row.cap_height_mm, row.digit_height_mm) == (None, 101.6)


def test_axes_are_read_by_tag_and_go_with_their_font():
    text = text_of(
        font="/tmp/own.ttf", font_axes="wdth=90, wght = 612.5",
        line=[
            {"text": "a"}, {"text": "b", "font": "rye"}, {"text": "c", "font-axes": "wght=1/2"},
            {"text": "d", "font": "/tmp/own.ttf"},
        ],
    )  # fmt: skip
    whole = (("wdth", 90), ("wght", 612.5))
    assert [row.font_axes for row in text.rows] == [whole, (), (("wght", 0.5),), whole]


@pytest.mark.parametrize("axes", ["wght", "wght=", "=600", "wght=x", "toolong=1", "wght=1,wght=2", "wght=1,,", "w=1e9"])
def test_axes_that_make_no_sense_are_told(axes):
    (problem,) = problems_of(text="17", font_axes=axes)
    assert problem.startswith("font-axes: ")


def test_a_ring_lies_about_the_sign_and_other_arcs_in_their_line():
    assert text_of(text="17", arc=80).arc == ArcSpec(radius_mm=80, side="above", centre="line")
    assert text_of(text="17", arc=80, arc_side="ring").arc == ArcSpec(radius_mm=80, side="ring", centre="sign")
    below = text_of(line=[{"text": "a"}, {"text": "b", "arc-side": "below", "arc": 90}], arc=80, arc_centre="sign")
    assert below.rows[0].arc == ArcSpec(radius_mm=80, side="above", centre="sign")
    assert below.rows[1].arc == ArcSpec(radius_mm=90, side="below", centre="line")


@pytest.mark.parametrize(
    ("keys", "problem"),
    [
        ({"text": "17", "line": [{"text": "18"}]}, "text: Every line table has its own."),
        ({"line": []}, "line: It is no table of keys."),
        ({"line": "17"}, "line: It is no table of keys."),
        ({"line": [{"text": "a"}, {"font": "rye"}]}, "line 2.text: It is missing."),
        ({"line": [{"text": "a\nb"}]}, "line 1.text: It holds 2 lines."),
        ({"line": [{"text": "a", "size": "1x1"}]}, "line 1.size: There is no such key."),
        ({"line": [{"text": "a", "aling": "left"}]}, "line 1.aling: There is no such key. Did you mean align?"),
        ({"line": [{"text": "a", "cap-height": -1}]}, "line 1.cap-height: -1 mm is not more than zero."),
        ({"line": [{"text": "a", "cap-height": 9, "digit-height": 9}]}, "line 1.digit-height: The height of capitals"),
        ({"line": [{"text": "a", "cap-height": 9, "height-ratio": 2}]}, "line 1.height-ratio: The line's height is"),
        ({"line": [{"text": "a", "arc": 9, "align": "left"}]}, "line 1.align: Text on a circle is centred on it."),
        ({"line": [{"text": "a", "arc-side": "below"}]}, "line 1.arc-side: There is no arc for it."),
        ({"text": "a", "arc-centre": "sign"}, "arc-centre: There is no arc for it."),
        ({"text": "a", "arc": 9, "arc-side": "ring", "arc-centre": "line"}, "arc-centre: A ring lies round the middle"),
        ({"text": "a", "arc": 9, "wrap": 90}, "wrap: Text on a circle is not broken."),
        ({"text": "a", "fit": "each", "wrap": 90}, "wrap: Lines that are fitted each to the same width"),
        ({"text": "a", "fit": "each", "cap-height": 9}, "fit: The height is given, so there is nothing to fit."),
        ({"line": [{"text": "a", "height-ratio": 2}], "fit": "each"}, "fit: Lines of the same width have no ratio"),
        ({"text": "a", "cap-height": 9, "digit-height": 9}, "digit-height: The height of capitals is given too."),
    ],
)  # fmt: skip
def test_what_cannot_stand_together_is_told_by_the_word_that_was_typed(keys, problem):
    (found,) = problems_of(**{name.replace("-", "_"): value for name, value in keys.items()})
    assert found.startswith(problem)


def test_problems_of_all_tables_come_at_once():
    found = problems_of(line=[{"text": "a", "align": "middle"}, {"text": "b", "arc": "wide"}], size="1x1")
    assert [problem.split(":")[0] for problem in found] == ["line 1.align", "line 2.arc", "size"]


def mm(least, greatest):
    return st.floats(least, greatest).map(lambda value: round(value, 4))


ARCS = st.fixed_dictionaries(
    {"arc": mm(10, 900)},
    optional={"arc-side": st.sampled_from(["above", "below"]), "arc-centre": st.sampled_from(["line", "sign"])},
)  # fmt: skip
PLACES = st.one_of(st.just({}), st.fixed_dictionaries({"align": st.sampled_from(["left", "right", "centre"])}), ARCS)
HEIGHTS = st.one_of(st.just({}), *(mm(5, 90).map(lambda h, k=k: {k: h}) for k in ("cap-height", "digit-height")))
FONTS = st.one_of(
    st.just({}),
    st.fixed_dictionaries(
        {"font": st.sampled_from(["rye", "/tmp/own.ttf", "/tmp/many.ttc#2"])},
        optional={"font-axes": st.sampled_from(["wght=600", "wdth=90.25,wght=1"])},
    ),
)
SPACINGS = st.fixed_dictionaries({}, optional={"line-spacing": mm(0.5, 5), "letter-spacing": mm(-5, 5)})
STYLES = st.tuples(PLACES, HEIGHTS, FONTS, SPACINGS).map(
    lambda parts: {key: value for part in parts for key, value in part.items()}
)
WORDS = st.text("ab7 é'\"\\", min_size=1).filter(str.strip)
RATIO = mm(0.1, 9).map(lambda ratio: {"height-ratio": ratio})


@settings(max_examples=200)
@given(
    usual=STYLES,
    tables=st.lists(st.tuples(WORDS, STYLES, st.one_of(st.just({}), RATIO)), min_size=1, max_size=4),
    more=st.fixed_dictionaries({}, optional={"font-fallback": st.booleans()}),
)  # fmt: skip
def test_resolved_tables_read_back_as_the_same_lettering(usual, tables, more):
    lines = []
    for text, style, ratio in tables:
        own = style if "arc" not in usual else {key: value for key, value in style.items() if key != "align"}
        taken = {} if own.keys() & {"cap-height", "digit-height"} else ratio
        lines.append({"text": text, **own, **taken})
    spec = read_spec(SIGN | usual | more | {"line": lines}, SHOP)
    written = dump_sign_file(spec)
    again = read_spec(tomllib.loads(written), SHOP)
    assert again == spec
    assert dump_sign_file(again) == written


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (["19"], [("19", "rye")]),
        (["19", "Mill", "Wayfield"], [("19", "rye"), ("Mill", "pacifico"), ("Wayfield", "barlow")]),
        ("19\nMill", [("19", "rye"), ("Mill", "pacifico")]),
    ],
)
def test_words_of_the_command_line_take_the_place_of_the_tables_words(words, expected):
    file = SIGN | {"line": [{"text": "17", "font": "rye"}, {"text": "Lane", "font": "pacifico"}]}
    text = read_spec(merged(file, {"text": words}), SHOP).text
    assert [(row.text, row.font) for row in text.rows] == expected


@pytest.mark.parametrize(
    ("file", "asked", "kept"),
    [
        ({"font": "/a.ttf", "font-axes": "wght=1"}, {"font": "rye"}, {"font": "rye"}),
        ({"cap-height": 9}, {"digit-height": "8"}, {"digit-height": "8"}),
        ({"digit-height": 9, "fit": "each"}, {"cap-height": "8"}, {"cap-height": "8"}),
        ({"cap-height": 9}, {"fit": "each"}, {"fit": "each"}),
    ],
)
def test_a_height_or_font_given_anew_says_all_about_it(file, asked, kept):
    assert merged(file, asked) == kept


def test_fonts_of_tables_are_seen_from_the_files_folder(tmp_path):
    path = tmp_path / "sign.toml"
    path.write_text('[[line]]\ntext = "17"\nfont = "own.ttc#2"\n[[line]]\ntext = "a"\nfont = "rye"\n')
    lines = load_sign_file(path)["line"]
    assert [line["font"] for line in lines] == [str(Path(tmp_path / "own.ttc#2").resolve()), "rye"]
