"""Reading in batches gives what reading line by line gives, to the last bit."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from signgen.replay import batch
from signgen.replay.reader import read_program
from tests.replay.making import assert_same

NUMBERS = st.one_of(
    st.integers(-3, 3).map(str),
    st.decimals(-50, 50, places=4).map(str),
    st.sampled_from(
        [
            "+1.",
            "-.5",
            "0",
            "-0",
            "007",
            "1.50000000001",
            "3.14159265358979323846",
            ".",
            "-",
            "1..2",
            "1e3",
            "99999999999",
        ]
    ),
)
WORDS = st.one_of(
    st.tuples(st.sampled_from("XYZIJF"), NUMBERS).map("".join),
    st.sampled_from(["G0", "G1", "G2", "G3", "g01", "G1.0", "G00", "N5", "N00012", "N123456", "n1.", "x1", "f50"]),
    st.sampled_from(
        [
            "G90",
            "G91",
            "G20",
            "G21",
            "G17",
            "G18",
            "G80",
            "M3",
            "S9",
            "G93",
            "G94",
            "R5",
            "K1",
            "G92 X0",
            "G28",
            "(n)",
            "G4 P1",
        ]
    ),
)
LINES = st.one_of(
    st.lists(WORDS, max_size=6).map("".join),
    st.lists(WORDS, max_size=6).map(" ".join),
    st.sampled_from(["", " ", "%", "M2", "X1Y1", "G1X1F9", "G2X1I.5", "X2", "Y3", "Z-1", ";", "é", "G1 X 1 . 5", "\t"]),
)


def both(text: str) -> None:
    assert_same(read_program(text), read_program(text, in_batches=False))


@given(st.lists(LINES, max_size=60), st.sampled_from(["\n", "\r\n"]))
@example(["F1"] + ["G1 X1 Y2"] * 40 + ["G2 X3 Y2 I1 J0"] * 30, "\n")
def test_random_lines(lines: list[str], end: str) -> None:
    both(end.join(lines))


@st.composite
def mostly_ordinary(draw: st.DrawFn) -> str:
    """Long stretches of ordinary lines with a few strange ones among them: short ones are read line by line."""
    seed = draw(st.integers(0, 2**32 - 1))
    strange = draw(st.lists(LINES, max_size=8))
    dice = random.Random(seed)
    x = y = 0.0
    lines = ["F100 S1000 M3", "G0 Z5 X0 Y0"]
    for _ in range(dice.randrange(30, 200)):
        kind = dice.random()
        if kind < 0.7:
            x, y = round(dice.uniform(-50, 50), 4), round(dice.uniform(-50, 50), 4)
            lines.append(
                dice.choice(
                    [f"G1 X{x} Y{y} Z{dice.uniform(-3, 5):.4f}", f"X{x} Y{y}", f"G1X{x:+}Y{y}F{dice.randrange(1, 999)}"]
                )
            )
        elif kind < 0.9:
            radius, one, other = dice.uniform(1, 20), dice.uniform(0, 6), dice.uniform(0, 6)
            i, j = -radius * math.cos(one), -radius * math.sin(one)
            ex, ey = round(x + i + radius * math.cos(other), 4), round(y + j + radius * math.sin(other), 4)
            lines.append(f"{dice.choice(['G2', 'G3'])} X{ex} Y{ey} I{i:.4f} J{j:.4f}")
            x, y = ex, ey
            lines.append(f"G1 X{x} Y{y}")
        else:
            lines.append(dice.choice(["G0 Z5", "Z-1", "N10 G0 Z3", "", "F250", "g1 z-2", "G1 X1 Y1"]))
            x, y = (1.0, 1.0) if lines[-1] == "G1 X1 Y1" else (x, y)
    for line in strange:
        lines.insert(dice.randrange(len(lines)), line)
    return "\n".join([*lines, "M2"])


@given(mostly_ordinary())
def test_long_stretches(text: str) -> None:
    both(text)


@pytest.mark.sweep
@pytest.mark.parametrize("seed", range(20))
def test_many_long_programs(seed: int) -> None:
    dice = random.Random(seed)
    lines = ["F100"]
    for _ in range(20_000):
        lines.append(
            dice.choice(["X{:.4f}", "G1 X{:.3f} Y{:.4f}", "G0 Z{:.2f}", "Y{:.4f} F{:.0f}"]).format(
                dice.uniform(-9, 9), abs(dice.gauss(0, 99))
            )
        )
        if dice.random() < 0.001:
            lines.append(dice.choice(["G91", "G90", "G20", "G21", "G0", "M5", "G2 X1", "X1 X2"]))
    both("\n".join([*lines, "M2"]))


@given(st.lists(st.tuples(st.integers(-(10**13), 10**13), st.integers(0, 13)), min_size=1, max_size=30))
def test_numbers_are_those_of_float(cases: list[tuple[int, int]]) -> None:
    """Correctly rounded, as `float` reads them."""
    texts = [f"{'-' if n < 0 else ''}{abs(n) // 10**d}.{abs(n) % 10**d:0{d}d}" if d else str(n) for n, d in cases]
    table = batch.scan("".join(f"X{text}\n" for text in texts))
    plain = [len(text) <= 14 and abs(float(text)) <= 1e9 for text in texts]
    assert table.plain.tolist() == plain
    got = table.values[:, 1][table.plain]
    assert got.tolist() == [float(text) for text, ok in zip(texts, plain, strict=True) if ok]


@pytest.mark.parametrize(
    ("line", "plain"),
    [
        ("G1 X1 Y-2.5 Z.5 F100", True),
        ("N5G2X1Y1I1J0", True),
        ("", True),
        ("  \t", True),
        ("g 0 1 x 1", True),
        ("X1 X2", False),
        ("G1 G1 X1", False),
        ("X1 N5", False),
        ("N5. X1", False),
        ("N-5 X1", False),
        ("N123456 X1", False),
        ("N X1", False),
        ("G4 X1", False),
        ("G1.5 X1", False),
        ("X", False),
        ("X-", False),
        ("X.", False),
        ("X1.2.3", False),
        ("X1-2", False),
        ("1X1", False),
        ("X1(a)", False),
        ("X1 M3", False),
        ("X1é", False),
        ("X1" + " " * 254, True),
        ("X1" + " " * 255, False),
    ],
)
def test_knows_an_ordinary_line(line: str, plain: bool) -> None:
    table = batch.scan(f"X1\n{line}\nX1\n")
    assert table.plain.tolist() == [True, plain, True]
    assert np.isnan(table.values[0, 2:]).all()
