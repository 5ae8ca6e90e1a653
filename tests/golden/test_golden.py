"""The examples give what was accepted, to the last decimal that is written."""

from __future__ import annotations

import re

import pytest

from tests.golden.golden import EXAMPLES, FOLDER, texts

NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
LAST_PLACE = 0.00025
"""Two units of the last written place: another build of GEOS or Boost may round the last one the other way."""


@pytest.mark.parametrize("example", EXAMPLES)
def test_gives_what_was_accepted(example: str) -> None:
    found = texts(example)
    accepted = {path.name: path.read_text(encoding="utf-8") for path in (FOLDER / example).iterdir()}
    assert set(found) == set(accepted)
    for name, text in accepted.items():
        differences = [
            f"{name}:{line}: {one} became {other}"
            for line, (one, other) in enumerate(zip(text.splitlines(), found[name].splitlines(), strict=False), 1)
            if not alike(one, other)
        ]
        advice = "If this is meant: python -m tests.golden.accept, and read the difference."
        assert not differences, "\n".join([*differences[:5], advice])
        assert len(text.splitlines()) == len(found[name].splitlines()), f"{name}: another number of lines. {advice}"


def alike(one: str, other: str) -> bool:
    """Whether two lines have the same words and, within the last place, the same numbers."""
    if one == other:
        return True
    if NUMBER.sub("#", one) != NUMBER.sub("#", other):
        return False
    return all(
        abs(float(a) - float(b)) <= LAST_PLACE for a, b in zip(NUMBER.findall(one), NUMBER.findall(other), strict=True)
    )


def test_likeness_sees_one_ten_thousandth_too_many() -> None:
    assert alike("G1 X1.0001", "G1 X1.0002")
    assert not alike("G1 X1.0001", "G1 X1.0005")
    assert not alike("G1 X1", "G2 X1")
