"""The bidirectional order against the Unicode character database and the examples of its annex."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from signgen.lettering import bidi
from signgen.lettering.bidi_classes import _bracket_partners

UNICODE = Path("/usr/share/unicode")
needs_unicode_data = pytest.mark.skipif(
    not (UNICODE / "BidiCharacterTest.txt").exists(), reason="Debian's package unicode-data is not installed"
)


def seen(text: str) -> str:
    """The characters from left to right."""
    return "".join(text[run.start : run.end][:: -1 if run.right_to_left else 1] for run in bidi.runs(text))


@pytest.mark.parametrize(
    ("text", "left_to_right"),
    [
        ("Larkspur Lane 17", "Larkspur Lane 17"),
        ("רחוב 17", "17 בוחר"),
        ("רחוב 17 א", "א 17 בוחר"),
        ("שדרה 3-5", "3-5 הרדש"),
        ("شارع 17", "17 عراش"),
        ("No. 17 רחוב", "No. 17 בוחר"),
        ("רחוב Lane 17", "Lane 17 בוחר"),
        ("בית (17)", "(17) תיב"[::1].replace("(17)", ")17(")),
        ("", ""),
    ],
)
def test_letters_stand_in_the_order_in_which_they_are_read(text: str, left_to_right: str) -> None:
    """By hand from UAX #9; brackets come here unmirrored, as the characters are."""
    assert seen(text) == left_to_right


def cases(step: int) -> Iterator[tuple[str, int | None, int, list[int | None], list[int]]]:
    """Every step-th row of BidiCharacterTest.txt: text, base asked, base, levels, visual order."""
    rows = (UNICODE / "BidiCharacterTest.txt").read_text(encoding="utf-8").splitlines()
    for row in [row for row in rows if row and not row.startswith("#")][::step]:
        codes, asked, base, levels, order = row.split(";")
        yield (
            "".join(chr(int(code, 16)) for code in codes.split()),
            {"0": 0, "1": 1, "2": None}[asked],
            int(base),
            [None if level == "x" else int(level) for level in levels.split()],
            [int(index) for index in order.split()],
        )


def hold_against_unicode(step: int) -> int:
    count = 0
    for text, asked, base, levels, order in cases(step):
        classes = list(map(bidi.bidi_class, text))
        resolved = bidi.paragraph_level(classes) if asked is None else asked
        got = bidi.levels(text, classes, resolved)
        singles = [bidi.BidiRun(start=i, end=i + 1, level=level) for i, level in enumerate(got) if level is not None]
        assert (resolved, got, [run.start for run in bidi.visual_order(singles)]) == (base, levels, order), text
        count += 1
    return count


@needs_unicode_data
def test_a_sample_of_the_unicode_test_file_comes_out_right() -> None:
    """Source: Unicode character database, BidiCharacterTest.txt."""
    assert hold_against_unicode(step=17) > 5000


@pytest.mark.sweep
@needs_unicode_data
def test_the_whole_unicode_test_file_comes_out_right() -> None:
    assert hold_against_unicode(step=1) > 91_000


@needs_unicode_data
def test_knows_every_pair_of_brackets() -> None:
    """Source: Unicode character database, BidiBrackets.txt."""
    pairs = {}
    for row in (UNICODE / "BidiBrackets.txt").read_text(encoding="utf-8").splitlines():
        if row and not row.startswith("#"):
            one, other, kind = (part.strip() for part in row.partition("#")[0].split(";"))
            if kind == "o":
                pairs[chr(int(one, 16))] = chr(int(other, 16))
    assert len(pairs) >= 60
    assert _bracket_partners() == pairs
