"""Every sentence that the source says has words in every language, and every word of a table is said somewhere."""

from __future__ import annotations

import importlib
import re
import string

import pytest

from signgen.messages.language import LANGUAGES, Language, language
from tests.messages.keys import all_made, made_in

ENGLISH = language("en")
OTHERS = [language(code) for code in LANGUAGES if code != "en"]

SAID_BY_THE_WORDING = {"list.and", "list.or", "list.these", "words.lacking"}
SAID_BY_THE_PAPERS = importlib.import_module("signgen.messages.en.sheet").WORDS.keys()
"""`tests/words` watches them: papers choose keys from tables of their own."""


def names_in(template: str) -> frozenset[str]:
    return frozenset(name for _, name, _, _ in string.Formatter().parse(template) if name)


def faults(language: Language, source: str | None = None) -> list[str]:
    """What the source asks of a table and does not find there."""
    found = []
    for made in all_made() if source is None else made_in(source, "trial.py"):
        keys = [key for key in language.table if made.key.fullmatch(key)]
        if not keys:
            found.append(f"{made.where}: {language.code} has no words for '{made.key.pattern}'")
        if made.values is not None and not made.loose:
            found += [
                f"{made.where}: '{key}' wants {sorted(names_in(language.table[key]))}, gets {sorted(made.values)}"
                for key in keys
                if not names_in(language.table[key]) <= made.values
            ]
    return found


def test_every_message_has_its_words_and_all_values_that_they_want() -> None:
    assert faults(ENGLISH) == []


@pytest.mark.parametrize("other", OTHERS, ids=lambda each: each.code)
def test_every_language_has_every_message(other: Language) -> None:
    assert sorted(ENGLISH.table.keys() - other.table.keys()) == [], f"{other.code} lacks these"
    assert sorted(other.table.keys() - ENGLISH.table.keys()) == [], f"nobody says these; {other.code} has them"


@pytest.mark.parametrize("other", OTHERS, ids=lambda each: each.code)
def test_every_language_names_the_same_values(other: Language) -> None:
    wrong = {
        key: (sorted(names_in(words)), sorted(names_in(other.table[key])))
        for key, words in ENGLISH.table.items()
        if key in other.table and names_in(words) != names_in(other.table[key])
    }
    assert wrong == {}


def test_every_word_is_said_somewhere() -> None:
    made = [each.key for each in all_made()]
    literal = {each.pattern.replace("\\", "") for each in made}
    open_ended = [each for each in made if ".+" in each.pattern]
    unsaid = {
        key
        for key in ENGLISH.table.keys() - literal - SAID_BY_THE_WORDING - SAID_BY_THE_PAPERS
        if not any(pattern.fullmatch(key) for pattern in open_ended)
    }
    assert unsaid == set()


@pytest.mark.parametrize(
    ("source", "says"),
    [
        ("Message('list.adn')", "no words for 'list"),
        ("Message('words.lacking', count=1)", "wants ['count', 'language'], gets ['count']"),
        ("Message(f'lsit.{how}')", "no words for"),
        ("Message('list.and' if x else 'list.xor')", "no words for 'list"),
    ],
)
def test_a_slip_in_a_key_or_a_missing_value_is_found(source: str, says: str) -> None:
    (fault,) = faults(ENGLISH, source)
    assert says in fault


def test_a_key_that_cannot_be_read_from_the_source_is_refused() -> None:
    with pytest.raises(AssertionError, match="must be written out"):
        faults(ENGLISH, "Message(key)")


@pytest.mark.parametrize("each", [ENGLISH, *OTHERS], ids=lambda each: each.code)
def test_every_place_in_a_table_is_well_formed(each: Language) -> None:
    for key, words in each.table.items():
        assert re.fullmatch(r"[a-z0-9_.-]+", key), key
        assert words.strip(), key
        for _, name, how, conversion in string.Formatter().parse(words):
            assert conversion is None, key
            assert name is None or name.isidentifier(), key
            assert how in {None, "", ",", "bare", "or", "plain", "apart"} or "|" in how, f"{key}: {how}"
