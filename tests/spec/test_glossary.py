"""Words of the trade."""

import pytest

from signgen.errors import AskError
from signgen.spec.glossary import TERMS, find_term


def test_every_word_leads_to_one_term():
    words = [word.casefold() for term in TERMS for word in (term.name, *term.also)]
    assert len(set(words)) == len(words)
    assert len(TERMS) >= 25


@pytest.mark.parametrize("term", TERMS, ids=lambda term: term.name)
def test_explains_in_whole_sentences(term):
    assert len(term.meaning) > 30
    assert term.meaning[0].isupper()
    assert term.meaning.endswith(".")
    assert "  " not in term.meaning


@pytest.mark.parametrize(
    "word",
    [
        "datum", "tab", "climb", "stepdown", "chip load", "collet", "V-bit", "v bit", "spoilboard", "breakthrough",
        "z-zero", "COLLET", " ramp ", "G0",
    ],
)  # fmt: skip
def test_finds_a_word_however_it_is_written(word):
    assert find_term(word) in TERMS


def test_offers_close_words():
    with pytest.raises(AskError, match=r"^explain: There is no term 'colet'\. Did you mean collet\?$"):
        find_term("colet")
