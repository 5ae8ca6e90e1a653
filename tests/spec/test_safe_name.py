"""Folders' names: safe everywhere, and different for different letters."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.spec.safe_name import DEVICES, LONGEST, safe_name

OF_SCRIPTS = {
    "Larkspur Lane": "larkspur-lane",
    "Мила": "mila",
    "Иван": "ivan",
    "Щукин": "shchukin",
    "Ψυχή": "psychi",
    "Übergröße": "ubergrosse",
    "Øresund": "oeresund",
    "Ελλάδα 7": "ellada-7",
}


@pytest.mark.parametrize(("text", "name"), OF_SCRIPTS.items())
def test_letters_are_written_in_latin(text: str, name: str) -> None:
    assert safe_name(text) == name


@pytest.mark.parametrize(("one", "other"), [("東京", "大阪"), ("שלום", "דלת"), ("7 号", "7 番"), ("ก", "ข")])
def test_other_scripts_get_digits_that_stand_for_the_text(one: str, other: str) -> None:
    assert safe_name(one) != safe_name(other)


@given(st.text())
def test_any_text_gives_a_plain_name(text: str) -> None:
    name = safe_name(text)
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", name)
    assert len(name) <= LONGEST + 9
    assert name not in DEVICES
