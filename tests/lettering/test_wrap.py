"""Breaking long text: as few lines as can be, as even as can be, by trying all of them."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.lettering.wrap import words, wrapped

texts = st.lists(st.text("abc", min_size=1, max_size=7), min_size=1, max_size=8).map(" ".join)


def by_trying(text: str, most: int) -> list[list[str]]:
    """Every way of breaking the text into lines of at most so many characters."""
    parts = text.split()
    found = []
    for cuts in itertools.product((False, True), repeat=len(parts) - 1):
        lines = [[parts[0]]]
        for part, cut in zip(parts[1:], cuts, strict=True):
            if cut:
                lines.append([part])
            else:
                lines[-1].append(part)
        joined = [" ".join(line) for line in lines]
        if max(map(len, joined)) <= most:
            found.append(joined)
    return found


@given(texts, st.integers(1, 30))
def test_no_way_has_fewer_lines_or_as_few_that_are_more_even(text: str, most: int) -> None:
    got = wrapped(text, most, len)
    ways = by_trying(text, most)
    if got is None:
        assert ways == []
        return
    assert list(got) in ways
    assert (len(got), max(map(len, got))) == min((len(way), max(map(len, way))) for way in ways)


def test_lines_above_are_filled_first() -> None:
    assert wrapped("aa b cc", 4, len) == ("aa b", "cc")


def test_text_that_fits_stays_as_it_is() -> None:
    assert wrapped("No.  17", 7, len) == ("No.  17",)
    assert wrapped("No.  17", 6, len) == ("No. 17",)


@pytest.mark.parametrize("space", ["\u00a0", "\u202f", "\u2007"])
def test_spaces_that_hold_words_together_do_not_break(space: str) -> None:
    assert words(f"a 17{space}b") == ("a", f"17{space}b")


def test_a_word_too_wide_is_told() -> None:
    assert wrapped("a larkspur", 7, len) is None
