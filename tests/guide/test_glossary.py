"""Words of the trade."""

import pytest

from signgen.errors import AskError
from signgen.guide.glossary import terms
from signgen.guide.pages import explained
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording

TERMS = tuple(terms())


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_word_leads_to_one_term(language):
    words = [word.casefold() for term in TERMS for word in term.names(Wording(language))]
    assert len(set(words)) == len(words)
    assert len(TERMS) >= 25


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("term", TERMS, ids=lambda term: term.key)
def test_explains_in_whole_sentences(term, language):
    meaning = Wording(language)(term.meaning)
    assert len(meaning) > 30
    assert meaning[0].isupper()
    assert meaning.endswith(".")
    assert "  " not in meaning


@pytest.mark.parametrize("word", ["tab", "chip load", "collet", "v bit", "spoilboard", "COLLET", " ramp ", "G0"])
def test_finds_a_word_however_it_is_written(word):
    assert explained(word) == explained(word.strip().lower())


@pytest.mark.parametrize(
    ("word", "says"),
    [("Steg", "Ein kurzes Stück"), ("steg", "Ein kurzes Stück"), ("collet", "geschlitzte"), ("G0", "Luft")],
)
def test_explains_in_german_by_german_and_by_english_words(word, says):
    assert says in explained(word, "de")


def test_offers_close_words():
    with pytest.raises(AskError, match=r"colet.*Did you mean collet"):
        explained("colet")
    with pytest.raises(AskError) as wrong:
        explained("Spanzange", "de")
    wrong.value.language = "de"
    assert "Spannzange" in str(list(wrong.value.lines()))
