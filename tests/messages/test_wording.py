"""Messages in words: numbers, lengths, forms and lists by language and units; English where there are no words."""

from __future__ import annotations

import pickle

import pytest

from signgen.messages import Message, Mm, Mm2, MmPerMin, Num, Sides, Typed
from signgen.messages.figures import Units
from signgen.messages.language import Language, language
from signgen.messages.wording import Value, WordedPiece, Wording

ENGLISH = language("en")
TRIAL = {
    "t.holes": "{count:,} {count:hole|holes} of {diameter}",
    "t.span": "{least:bare} to {most}",
    "t.list": "{names}; {names:or}; {names:plain}; {names:name|names}",
    "t.pair": "{first} beside {second}",
    "t.value": "{value}",
    "t.brace": "{{{value}}}",
}


def trial(code: str = "en", units: Units = "mm", **words: str) -> Wording:
    base = language("de" if code == "de" else "en")
    table = {**base.table, **TRIAL, **words}
    return Wording(Language(code=code, table=table, point=base.point, thousands=base.thousands), units)


def test_a_message_is_frozen_equal_by_its_values_and_travels_between_processes() -> None:
    made = Message("t.holes", count=4, diameter=Mm(7))
    assert made == Message("t.holes", count=4, diameter=Mm(7)) != Message("t.holes", count=5, diameter=Mm(7))
    assert hash(made) == hash(Message("t.holes", count=4, diameter=Mm(7)))
    assert pickle.loads(pickle.dumps(made)) == made
    with pytest.raises(AttributeError, match="frozen"):
        made.key = "t.list"


def test_a_message_prints_in_english() -> None:
    assert str(Message("words.lacking", language="xx", count=2)).startswith("2 of these messages have no words")


@pytest.mark.parametrize(
    ("code", "count", "says"),
    [
        ("en", 1, "1 hole of 7.25 mm"), ("en", 1200, "1,200 holes of 7.25 mm"), ("en", 0, "0 holes of 7.25 mm"),
        ("de", 1200, "1.200 holes of 7,25 mm"),
    ],
)  # fmt: skip
def test_counts_choose_their_form_and_numbers_are_written_by_language(code: str, count: int, says: str) -> None:
    assert trial(code)(Message("t.holes", count=count, diameter=Mm(7.25))) == says


def test_a_language_with_three_forms_chooses_among_them() -> None:
    def plural(count: int) -> int:
        """Polish. Source: Unicode CLDR, language plural rules (one, few, many)."""
        if count == 1:
            return 0
        return 1 if 2 <= count % 10 <= 4 and not 12 <= count % 100 <= 14 else 2

    table = {"t.holes": "{count} {count:otwór|otwory|otworów}"}
    wording = Wording(Language(code="pl", table=table, plural=plural))
    said = [wording(Message("t.holes", count=count)) for count in (1, 3, 5, 12, 22)]
    assert said == ["1 otwór", "3 otwory", "5 otworów", "12 otworów", "22 otwory"]


@pytest.mark.parametrize(
    ("value", "in_mm", "in_inches"),
    [
        (Mm(6.35), "6.35 mm", "0.25 in (1/4)"),
        (Mm(88.9), "88.9 mm", "3.5 in (3 1/2)"),
        (Mm(25.4), "25.4 mm", "1 in"),
        (Mm(6.0), "6 mm", "0.236 in"),
        (Mm(0.396875, 3), "0.397 mm", "0.0156 in (1/64)"),
        (Mm(0.002, 3), "0.002 mm", "0.0001 in"),
        (Mm(12.5, 2), "12.50 mm", "0.492 in"),
        (Mm(12.5, 2, trim=True), "12.5 mm", "0.492 in"),
        (Mm2(645.16), "645.16 mm2", "1 in2"),
        (MmPerMin(1270), "1270 mm/min", "50 in/min"),
        (Sides((254, 127)), "254 x 127 mm", "10 x 5 in"),
        (Num(0.25), "0.25", "0.25"),
        (0.25, "0.25", "0.25"),
        (Typed(12.5, 3), "12.500", "12.500"),
    ],
)
def test_lengths_are_said_in_the_units_asked_for(value: Value, in_mm: str, in_inches: str) -> None:
    """25.4 mm to the inch, exactly (international yard and pound agreement, 1959)."""
    assert trial()(Message("t.value", value=value)) == in_mm
    assert trial(units="in")(Message("t.value", value=value)) == in_inches


def test_what_is_typed_into_a_machine_keeps_its_point() -> None:
    assert trial("de")(Message("t.pair", first=Typed(1.5), second=Mm(1.5))) == "1.5 beside 1,5 mm"


def test_a_unit_may_stand_once_behind_two_lengths() -> None:
    assert trial()(Message("t.span", least=Mm(2), most=Mm(3))) == "2 to 3 mm"
    assert trial(units="in")(Message("t.span", least=Mm(25.4), most=Mm(38.1))) == "1 to 1.5 in (1 1/2)"


def test_lists_are_joined_by_the_language() -> None:
    names = ("a", "b", "c")
    assert trial()(Message("t.list", names=names)) == "a, b and c; a, b or c; a, b, c; names"
    assert trial("de")(Message("t.list", names=names)) == "a, b und c; a, b oder c; a, b, c; names"
    assert trial()(Message("t.list", names=("a",))) == "a; a; a; name"


def test_messages_stand_in_messages() -> None:
    inner = Message("t.holes", count=2, diameter=Mm(3.5))
    assert trial("de")(Message("t.pair", first=inner, second=(inner, "x"))) == (
        "2 holes of 3,5 mm beside 2 holes of 3,5 mm und x"
    )


def test_braces_of_a_user_are_text() -> None:
    assert trial()(Message("t.brace", value="{count}")) == "{{count}}"


TEN_WORDS = Language(
    code="eo",
    point=",",
    table={
        "list.and": "kaj",
        "list.or": "aŭ",
        "units.a_length": "longo",
        "units.a_number": "nombro",
        "units.a_whole_number": "tuta nombro",
        "units.an_angle": "angulo",
        "units.not_positive": "{value} ne estas pli ol nulo.",
        "units.use_positive": "Uzu pozitivan nombron.",
        "units.too_little": "{value} estas tro malmulte.",
        "units.use_at_least": "Uzu almenaŭ {least}.",
    },
)
"""A third language, with ten words."""


def test_a_language_of_ten_words_says_the_rest_in_english_and_says_so() -> None:
    wording = Wording(TEN_WORDS)
    known = Message("units.too_little", value=Mm(0.5))
    unknown = Message("units.too_much", value=Mm(0.5))
    assert list(wording.lines([known])) == ["0,5 mm estas tro malmulte."]
    said = list(wording.lines([known, unknown]))
    assert said[:2] == ["0,5 mm estas tro malmulte.", "0.5 mm is too much."]
    assert said[2] == "1 of these messages has no words in this language (eo) yet: in English."
    assert next(iter(wording.pieces(unknown))) == WordedPiece("0.5 mm", "en")
