"""Lengths, angles and extents against hand values and dense sampling."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.replay.measure import arc_frame, bounding_points, extents
from signgen.replay.motion import RAPID
from signgen.replay.reader import read_program
from tests.measuring import cut_length_mm, lengths_mm, sweeps_rad, travel_length_mm
from tests.replay.making import motions_of


def test_chord_of_60_degrees() -> None:
    """R 50, 60 degrees: chord 50, sagitta 6.6987. Source: plane geometry, derived here."""
    motions = motions_of("G3 X50 Y0 R50")
    assert math.degrees(sweeps_rad(motions)[0]) == pytest.approx(60)
    assert lengths_mm(motions)[0] == pytest.approx(50 * math.pi / 3)
    assert extents(motions).y_mm == pytest.approx((-6.6987, 0), abs=5e-5)


def test_extent_of_a_full_circle_is_its_square() -> None:
    bounds = extents(motions_of("G2 X0 Y0 I3 J4 Z-1"))
    assert bounds.x_mm == pytest.approx((-2, 8))
    assert bounds.y_mm == pytest.approx((-1, 9))
    assert bounds.z_mm == (-1, 0)


def test_extent_of_no_motion_is_none() -> None:
    assert extents(read_program("M2").motions) is None


def test_extent_of_selected_motions_only() -> None:
    motions = motions_of("G0 X100", "G1 X90 Y5", "G3 X80 I-5")
    cutting = motions.kind != RAPID
    assert extents(motions, cutting).x_mm == (80, 100)
    assert extents(motions, motions.line == 3).y_mm == (0, 5)
    assert extents(motions, motions.line == 4).y_mm == pytest.approx((5, 10))


def test_lengths_of_cutting_and_travel() -> None:
    motions = motions_of("G0 X3 Y4", "G1 Z-2", "G1 X6 Y8", "G0 Z10")
    assert cut_length_mm(motions) == 7
    assert travel_length_mm(motions) == 17


def test_quarter_arcs_of_the_other_planes() -> None:
    """Seen from +Y, Z lies to the left of X: G3 from +Z goes towards +X."""
    motions = motions_of("G18 G3 X5 Z0 I0 K-5", start_mm=(0, 0, 5))
    assert sweeps_rad(motions)[0] == pytest.approx(math.pi / 2)
    middle = arc_frame(motions).points_mm(np.array([0]), np.array([0.5]))[0]
    assert middle.tolist() == pytest.approx([math.sqrt(12.5), 0, math.sqrt(12.5)])
    motions = motions_of("G19 G3 Y0 Z5 J-5 K0", start_mm=(0, 5, 0))
    middle = arc_frame(motions).points_mm(np.array([0]), np.array([0.5]))[0]
    assert middle.tolist() == pytest.approx([0, math.sqrt(12.5), math.sqrt(12.5)])


ANGLE = st.floats(-7, 7)


@given(
    st.sampled_from(["G17", "G18", "G19"]),
    st.sampled_from(["G2", "G3"]),
    ANGLE,
    ANGLE,
    st.floats(1, 50),
    st.floats(-5, 5),
)
def test_bounding_points_agree_with_a_densely_sampled_arc(plane, code, one, other, radius, rise) -> None:
    letters, offsets = {"G17": ("XY", "IJ"), "G18": ("XZ", "IK"), "G19": ("YZ", "JK")}[plane]
    third = ({"X", "Y", "Z"} - set(letters)).pop()
    start = [0.0, 0.0, 0.0]
    p = (radius * math.cos(one), radius * math.sin(one))
    q = (radius * math.cos(other), radius * math.sin(other))
    for letter, value in zip(letters, p, strict=True):
        start["XYZ".index(letter)] = round(value, 6)
    ends = " ".join(f"{letter}{value:.6f}" for letter, value in zip(letters, q, strict=True))
    centre = " ".join(f"{letter}{-value:.6f}" for letter, value in zip(offsets, p, strict=True))
    line = f"{plane} {code} {ends} {third}{rise:.6f} {centre}"
    motions = motions_of(line, start_mm=tuple(start))
    frame = arc_frame(motions)
    part = np.linspace(0, 1, 2001)
    dense = frame.points_mm(np.zeros(len(part), np.intp), part)
    points, owners = bounding_points(motions)
    assert (owners == 0).all()
    np.testing.assert_allclose(points.min(axis=0), dense.min(axis=0), atol=2e-3)
    np.testing.assert_allclose(points.max(axis=0), dense.max(axis=0), atol=2e-3)
    assert lengths_mm(motions)[0] == pytest.approx(
        np.sqrt((np.diff(dense, axis=0) ** 2).sum(axis=1)).sum(), rel=1e-4, abs=1e-4
    )
    # Ends as written, and every point at the radius from the centre.
    np.testing.assert_allclose(dense[0], motions.start_mm[0], atol=1e-5)
    np.testing.assert_allclose(dense[-1], motions.end_mm[0], atol=1e-5)
