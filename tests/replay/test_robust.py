"""No text makes the reader crash, hang or lose count."""

from __future__ import annotations

import random
import tracemalloc

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.replay.measure import extents
from signgen.replay.reader import MOST_FAULTS, read_program
from tests.measuring import lengths_mm

ALPHABET = "GMXYZIJKRFSTPQLHDNABC0123456789.-+#[]=()/%; \n\rgxyabcsinatanmod*E\t\u00e9"
TOKENS = st.sampled_from(
    [
        "G0",
        "G1",
        "G2",
        "G3",
        "G4",
        "G10",
        "G28",
        "G38.2",
        "G41",
        "G43",
        "G53",
        "G54",
        "G80",
        "G81",
        "G83",
        "G90",
        "G91",
        "G92",
        "G93",
    ]
    + [
        "G17",
        "G18",
        "G19",
        "G20",
        "G98",
        "G99",
        "M2",
        "M3",
        "M5",
        "M6",
        "M30",
        "X1",
        "Y-2",
        "Z3.5",
        "I1",
        "J0",
        "K2",
        "R5",
        "R-5",
    ]
    + [
        "F100",
        "F0",
        "S5",
        "T1",
        "P1",
        "Q1",
        "L2",
        "H1",
        "D1",
        "A3",
        "#1=2",
        "#1",
        "X#1",
        "[1",
        "X[1+2]",
        "Ysin[30]",
        "(a",
        "(a)",
        ")",
    ]
    + [
        "/",
        "%",
        "N5",
        ";",
        "\n",
        "\n",
        "\n",
        " ",
        "1e9",
        "99999999999999999999",
        "X999999999",
        "Q.000001",
        "L999999999",
        "\r\n",
    ]
)


def holds(text: str) -> None:
    replay = read_program(text)
    n = len(replay.motions)
    lines = text.replace("\r\n", "\n").replace("\r", "\n")
    assert replay.line_count == lines.count("\n") + (not lines.endswith("\n") and lines != "")
    assert all(1 <= fault.line <= max(1, replay.line_count) for fault in replay.faults + replay.notes)
    assert all(str(fault.message) for fault in replay.faults)
    assert len(replay.faults) == min(replay.fault_count, MOST_FAULTS)
    for name in ("start_mm", "end_mm", "feed_mm_per_min", "spindle_rpm", "spindle_s"):
        assert np.isfinite(getattr(replay.motions, name)).all(), name
    assert (np.diff(replay.motions.line) >= 0).all()
    assert np.isfinite(lengths_mm(replay.motions)).all()
    assert (extents(replay.motions) is None) == (n == 0)


@given(st.text(max_size=300))
def test_any_text(text: str) -> None:
    holds(text)


@given(st.text(alphabet=ALPHABET, max_size=400))
def test_any_text_of_the_languages_own_characters(text: str) -> None:
    holds(text)


@given(st.lists(TOKENS, max_size=60).map("".join))
def test_any_string_of_words(text: str) -> None:
    holds(text)


@pytest.mark.sweep
@settings(max_examples=30_000)
@given(st.one_of(st.text(alphabet=ALPHABET, max_size=400), st.lists(TOKENS, max_size=60).map("".join)))
def test_a_great_many_texts(text: str) -> None:
    holds(text)


@pytest.mark.sweep
def test_70000_damaged_programs() -> None:
    """Deterministic damage: characters of a good program replaced, dropped, doubled; lines swapped."""
    dice = random.Random(20)
    good = "%\nG21 G90 G17 G94\nS9000 M3\nG4 P2\nG0 Z5\nG0 X1 Y2\nG1 Z-1 F200\n"
    good += "G3 X3 Y2 I1 J0\nG1 X5.25 Y-3.5\nG0 Z5\nM5\nM2\n%\n"
    for _ in range(70_000):
        text = list(good)
        for _ in range(dice.randrange(1, 6)):
            at = dice.randrange(len(text))
            text[at] = dice.choice(["", text[at] * 2, dice.choice(ALPHABET), dice.choice(text)])
        holds("".join(text))


def test_nesting_and_length_without_end() -> None:
    for text in (
        "[" * 100_000,
        "G1 X" + "[" * 250,
        "#" * 250,
        "X" + "9" * 1_000_000,
        "(" * 200,
        "G1" * 125,
        "\n" * 100_000,
    ):
        holds(text)


def test_keeps_a_thousand_faults_and_counts_the_rest() -> None:
    replay = read_program("G1 X-\n" * 5000 + "M2")
    assert (len(replay.faults), replay.fault_count) == (1000, 5000)


def test_notes_each_kind_once() -> None:
    assert len(read_program("G28\n" * 5000 + "M2").notes) == 1


@pytest.mark.sweep
def test_a_million_lines_in_bounded_memory() -> None:
    """Peak below three times the text and the motions' own arrays together."""
    dice = random.Random(1)
    text = "F1\n" + "".join(f"G1 X{dice.random():.4f} Y{dice.random():.4f}\n" for _ in range(1_000_000)) + "M2\n"
    tracemalloc.start()
    replay = read_program(text)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    own = sum(getattr(replay.motions, name).nbytes for name in replay.motions.__slots__)
    assert len(replay.motions) == 1_000_000
    assert peak < 3 * (own + len(text))
