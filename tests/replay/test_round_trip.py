"""Random motions, written by a few lines of this test and read back, are the same motions."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.replay.measure import extents
from signgen.replay.motion import ARC_CCW, ARC_CW, FEED, RAPID
from signgen.replay.reader import read_program
from tests.measuring import cut_length_mm, sweeps_rad, travel_length_mm

COORDINATE = st.integers(-2_000_000, 2_000_000).map(lambda n: n / 10_000)
POINT = st.tuples(COORDINATE, COORDINATE, COORDINATE)
STRAIGHT = st.tuples(st.sampled_from([RAPID, FEED]), POINT)
ARC = st.tuples(
    st.sampled_from([ARC_CW, ARC_CCW]),
    st.tuples(st.floats(1.0, 90.0), st.floats(0.0, 6.28), st.floats(0.05, 6.2), COORDINATE),
)


@given(POINT, st.lists(st.one_of(STRAIGHT, ARC), min_size=1, max_size=40), st.booleans(), st.booleans())
def test_motions_survive(start, moves, modal, relative) -> None:
    """Absolute or relative, modes repeated or not: the reader sees what was meant, to the last decimal (4
    places)."""
    here, lines, expected = start, ["F500"], []
    if relative:
        lines.append("G91")
    mode = None
    for kind, what in moves:
        if kind in (RAPID, FEED):
            end, centre, sweep = what, None, 0.0
        else:
            radius, angle, turn, z = what
            centre = (here[0] - radius * math.cos(angle), here[1] - radius * math.sin(angle))
            sweep = turn if kind == ARC_CCW else -turn
            end = (centre[0] + radius * math.cos(angle + sweep), centre[1] + radius * math.sin(angle + sweep), z)
        end = tuple(round(value, 4) for value in end)
        written = [round(value - origin, 4) for value, origin in zip(end, here if relative else (0, 0, 0), strict=True)]
        words = [f"{letter}{value:.4f}" for letter, value in zip("XYZ", written, strict=True)]
        if centre:
            words += [f"I{centre[0] - here[0]:.4f}", f"J{centre[1] - here[1]:.4f}"]
        lines.append(" ".join([*([f"G{kind}"] if kind != mode or not modal else []), *words]))
        mode = kind
        expected.append((kind, here, end, sweep))
        here = end
    replay = read_program("\n".join([*lines, "M2"]), start_mm=start)
    assert replay.faults == ()
    motions = replay.motions
    assert motions.kind.tolist() == [kind for kind, *_ in expected]
    np.testing.assert_allclose(motions.start_mm, [begin for _, begin, _, _ in expected], atol=1e-9)
    np.testing.assert_allclose(motions.end_mm, [end for _, _, end, _ in expected], atol=1e-9)
    # Rounding ends and centre to 0.0001 mm turns a radius of 1 mm or more by some 0.0003 rad at most.
    np.testing.assert_allclose(sweeps_rad(motions), [sweep for *_, sweep in expected], atol=4e-4)
    assert travel_length_mm(motions) == pytest.approx(sum_of_rapids(motions))
    assert cut_length_mm(motions) > 0 or all(kind == RAPID or begin == end for kind, begin, end, _ in expected)
    bounds = extents(motions)
    ends = np.array([start, *(end for _, _, end, _ in expected)])
    for axis, (low, high) in enumerate((bounds.x_mm, bounds.y_mm, bounds.z_mm)):
        assert low <= ends[:, axis].min() + 1e-9
        assert high >= ends[:, axis].max() - 1e-9


def sum_of_rapids(motions) -> float:
    step = (motions.end_mm - motions.start_mm)[motions.kind == RAPID]
    return float(np.sqrt((step**2).sum(axis=1)).sum())
