"""Lines as they are typed, with their settings behind them."""

import pytest

from signgen.errors import AskError
from signgen.shop.load import load_shop
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.typed_lines import asked_lines

SIGN = {"size": "220x140", "thickness": 12}


@pytest.mark.parametrize(
    ("words", "asked"),
    [
        ([], {}),
        (["17", "Larkspur Lane"], {"text": ["17", "Larkspur Lane"]}),
        (["17", "+font=pacifico"], {"line": [{"text": "17", "font": "pacifico"}]}),
        (
            ["17", "+digit-height=70mm", "+align=left", "Lane"],
            {"line": [{"text": "17", "digit-height": "70mm", "align": "left"}, {"text": "Lane"}]},
        ),
        (["A", "+font-axes=wght=600,wdth=90"], {"line": [{"text": "A", "font-axes": "wght=600,wdth=90"}]}),
        (["a\nb", "+arc=90"], {"line": [{"text": "a"}, {"text": "b", "arc": "90"}]}),
        (["+1", "1+1=2", "+ = plus"], {"text": ["+1", "1+1=2", "+ = plus"]}),
        (["++font=pacifico"], {"text": ["+font=pacifico"]}),
    ],
)
def test_words_become_lines(words, asked):
    assert asked_lines(words) == asked


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["+font=x", "17"], '+font: It stands before any line. Type the text first, as in "17" +font=x.'),
        (["17", "+font=a", "+font=b"], "+font: The line has it twice. Leave one of them out."),
    ],
)
def test_settings_without_a_line_of_their_own_are_refused(words, message):
    with pytest.raises(AskError) as caught:
        asked_lines(words)
    assert str(caught.value) == message


def test_they_say_the_same_as_tables_of_a_sign_file():
    asked = asked_lines(["17", "+digit-height=60", "Larkspur Lane", "+font=pacifico", "+height-ratio=0.4"])
    big, small = read_spec(asked | SIGN, load_shop(None)).text.rows
    assert (big.text, big.digit_height_mm) == ("17", 60)
    assert (small.text, small.font, small.height_ratio) == ("Larkspur Lane", "pacifico", 0.4)


def test_they_take_the_place_of_a_file_s_text_and_a_wrong_one_is_named_with_its_line():
    file = SIGN | {"text": ["18"]}
    whole = merged(file, asked_lines(["17", "+font=pacifico"]))
    assert [row.text for row in read_spec(whole, load_shop(None)).text.rows] == ["17"]
    with pytest.raises(AskError, match=r"^line 1\.colour: There is no such key"):
        read_spec(SIGN | asked_lines(["17", "+colour=red"]), load_shop(None))
