"""Options read their values by kind and speak of themselves by name."""

import pytest

from signgen.errors import AskError
from signgen.option import Option, did_you_mean, lines, pick, read_option, word

FLAG = Option(name="sharp", kind="flag", metavar="true", help="Whether it is sharp.", group="Test")


def test_full_help_says_the_default_or_that_it_is_required():
    plain = {"kind": "length", "metavar": "LENGTH", "group": "Sign", "help": "How wide."}
    assert Option(name="a", default=4, **plain).full_help == "How wide. Default: 4."
    assert Option(name="a", otherwise="as it comes", **plain).full_help == "How wide. Default: as it comes."
    assert Option(name="a", required=True, **plain).full_help == "How wide. Required."
    assert Option(name="a", **plain).full_help == "How wide."


def test_a_choice_ignores_case_and_offers_the_near_ones():
    option = Option(
        name="align", kind="choice", metavar="SIDE", group="Lettering", help="", choices=("left", "centre", "right")
    )
    assert read_option(option, "Centre") == "centre"
    with pytest.raises(AskError, match=r"^align: There is no align 'center'\. Did you mean centre\?$"):
        read_option(option, "center")
    with pytest.raises(AskError, match=r"Choose from: left, centre, right\."):
        read_option(option, "x")


@pytest.mark.parametrize(
    ("raw", "got"),
    [
        ("17", ("17",)), (["17", "Larkspur Lane"], ("17", "Larkspur Lane")), (("a", " b "), ("a", "b")),
        ("17\nLarkspur Lane\n", ("17", "Larkspur Lane")), (["Ærø"], ("Ærø",)),
    ],
)  # fmt: skip
def test_reads_lines_of_lettering(raw, got):
    assert lines(raw, "text") == got


@pytest.mark.parametrize(
    ("raw", "what"),
    [
        ("", "There is no text."), ([], "There is no text."), ("  ", "There is no text."),
        (["", " "], "There is no text."),
        (["17", ""], "Line 2 is empty."), (17, "17 is not a text."), ([17], "17 is not a text."),
        (["x"] * 41, "41 lines are too many."), ("x" * 201, "Line 1 has 201 characters."),
        ("a\tb", r"'a\tb' holds a control character."), ("a\x00", r"'a\x00' holds a control character."),
        ("a\ud800", r"'a\ud800' holds a control character."),
    ],
)  # fmt: skip
def test_refuses_what_is_no_lettering(raw, what):
    with pytest.raises(AskError) as caught:
        lines(raw, "text")
    assert caught.value.problems[0].where == "text"
    assert str(caught.value.problems[0].what) == what
    assert caught.value.problems[0].remedy


def test_a_word_is_trimmed_and_never_empty():
    assert word(" oak ", "material") == "oak"
    assert word(17, "font") == "17"
    for bad in ("", "  ", None, True, 1.5, ["oak"], "a\nb"):
        with pytest.raises(AskError, match=r"^material: "):
            word(bad, "material")


def test_offers_all_names_when_none_is_close():
    assert str(did_you_mean("zzz", ("oak", "ash"))) == "Choose from: oak, ash."
    assert str(did_you_mean("aok", ("oak", "ash"))) == "Did you mean oak?"
    assert did_you_mean("oak", ()) == ""
    with pytest.raises(AskError, match=r"There is no tree 'elm'\."):
        pick("elm", ("oak", "ash"), "material", "tree")


@pytest.mark.parametrize(
    ("raw", "wanted"),
    [(True, True), (False, False), ("true", True), ("Yes", True), (" on ", True), ("no", False), ("0", False)],
)
def test_a_flag_is_wanted_or_not(raw, wanted):
    assert read_option(FLAG, raw) is wanted


@pytest.mark.parametrize("raw", ["maybe", "", 1, 0.0, None, []])
def test_a_flag_is_nothing_else(raw):
    with pytest.raises(AskError, match=r"^sharp: .* is neither yes nor no\. Write true or false\.$"):
        read_option(FLAG, raw)
