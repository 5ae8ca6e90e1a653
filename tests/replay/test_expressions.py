"""Expressions of words. Source: NIST IR 6556, 3.3.2.2 to 3.3.2.4; values are those of trigonometry and
arithmetic."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.replay.expressions import Parameters, real_value
from signgen.replay.refusal import RefusedError


def value_of(text: str, **parameters: float) -> float:
    known = Parameters()
    known.values = {int(name[1:]): value for name, value in parameters.items()}
    value, rest = real_value(text, 0, known)
    assert rest == len(text)
    return value


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("5", 5.0),
        ("-.5", -0.5),
        ("+3.", 3.0),
        ("[1+2*3]", 7.0),
        ("[[1+2]*3]", 9.0),
        ("[2**3**2]", 64.0),  # equal operators from left to right
        ("[8/2/2]", 2.0),
        ("[2*3**2]", 18.0),
        ("[1-2-3]", -4.0),
        ("[7MOD4]", 3.0),
        ("[-1MOD4]", 3.0),
        ("[1OR0]", 1.0),
        ("[1AND0]", 0.0),
        ("[1XOR1]", 0.0),
        ("[1-+2]", -1.0),
        ("#5", 2.5),
        ("#[2+3]", 2.5),
        ("##6", 2.5),
        ("ABS[-3]", 3.0),
        ("ACOS[0]", 90.0),
        ("ASIN[0.5]", 30.0),
        ("ATAN[1]/[1]", 45.0),
        ("ATAN[1]/[-1]", 135.0),
        ("COS[60]", 0.5),
        ("EXP[0]", 1.0),
        ("FIX[2.8]", 2.0),
        ("FIX[-2.8]", -3.0),
        ("FUP[2.8]", 3.0),
        ("FUP[-2.8]", -2.0),
        ("LN[1]", 0.0),
        ("ROUND[2.5]", 3.0),
        ("ROUND[-2.5]", -3.0),
        ("SIN[30]", 0.5),
        ("SQRT[16]", 4.0),
        ("TAN[45]", 1.0),
        ("[1+SIN[30]]", 1.5),
    ],
)
def test_value(text: str, expected: float) -> None:
    assert value_of(text, p5=2.5, p6=5.0) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[",
        "[]",
        "[1",
        "[1 2]",
        "SIN30",
        "SIN[30",
        "#",
        "#[1",
        "-[1]",
        "-#5",
        "[1^2]",
        "[1//2]",
        "LOG[1]",
        "ATAN[1]",
    ],
)
def test_refuses(text: str) -> None:
    with pytest.raises(RefusedError):
        value_of(text)


@given(
    st.recursive(
        st.integers(-9, 9).map(str),
        lambda inner: st.tuples(inner, st.sampled_from("+-*"), inner).map(lambda t: f"[{t[0]}{t[1]}{t[2]}]"),
        max_leaves=12,
    )
)
def test_agrees_with_python_where_both_have_the_same_rules(text: str) -> None:
    expected = eval(text.replace("[", "(").replace("]", ")"))
    if abs(expected) <= 1e9:
        assert value_of(text) == pytest.approx(expected)


@given(st.floats(-1e6, 1e6, allow_nan=False))
def test_sine_and_cosine_belong_together(angle: float) -> None:
    text = f"{angle:.6f}"
    assert math.hypot(value_of(f"SIN[{text}]"), value_of(f"COS[{text}]")) == pytest.approx(1.0)
