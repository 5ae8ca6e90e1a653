"""What `explain` says of the words of RS-274."""

import re

import pytest

from signgen.guide.pages import explained
from signgen.guide.rs274 import BEFORE, CODES, does
from signgen.messages.wording import Wording
from signgen.replay.codes import G_GROUPS, M_GROUPS, code_name
from signgen.replay.steps import trace


def test_every_code_and_letter_of_the_language_has_its_page() -> None:
    named = {word for code in CODES for word in code.words}
    assert {code_name(tenths) for tenths in G_GROUPS} <= named
    assert {f"M{code}" for code in M_GROUPS} <= named
    assert set("ABCDFHIJKLNPQRSTXYZ") <= named


@pytest.mark.parametrize("code", CODES, ids=lambda code: code.key)
def test_examples_are_legal_and_the_reader_says_what_they_do(code) -> None:
    """Alone G88, which no program can end by itself, and what only a machine knows may be noted."""
    before = "" if code.key == "percent" else f"{BEFORE}\n{code.given}\n"
    ending = "\n%\n" if code.key == "percent" else "\nM2\n"
    found = trace(before + code.example + ending)
    assert [fault.message for fault in found.replay.faults] == []
    assert does(code, Wording("en"))
    for language in ("en", "de"):
        text = explained(code.words[0], language)
        assert "NIST IR 6556" in text
        assert max(map(len, text.splitlines())) <= 79


def test_the_standards_arc_is_told_with_its_centre_and_radius() -> None:
    """IR 6556, 3.5.3.2 (from memory): from (7, 7) the centre is (10, 11) and the radius 5."""
    text = " ".join(explained("G2").split())
    assert "centre X10 Y11, radius 5 mm" in text
    assert re.search(r"Kreisbogen.*Uhrzeigersinn", " ".join(explained("G2", "de").split()))


@pytest.mark.parametrize(
    "word", ["pass", "tool change", "offset", "modal", "climb", "chip load", "dry run", "G1", "M3", "F", "I"]
)
def test_words_that_learners_meet_are_known(word) -> None:
    assert explained(word)
