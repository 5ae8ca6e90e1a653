"""Path data by SVG 1.1 section 8.3, against fontTools' own drawing of the same data and against closed forms."""

import math

import numpy as np
import pytest
import shapely
from fontTools.misc.bezierTools import splitCubicAtT
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from signgen.artwork.matrix import IDENTITY
from signgen.borders.svg_chain import MOST_SEGMENTS, chain_of
from signgen.borders.svg_file import SvgPath
from signgen.errors import AskError


def chain(data, matrix=IDENTITY):
    return chain_of(SvgPath(data=data, where="outline.svg:1", matrix=matrix))


def area(data, chord=1e-4):
    return Polygon(chain(data).points(chord))


@pytest.mark.parametrize(
    ("data", "points"),
    [
        ("M0 0 H10 V10 H0 Z", [(0, 0), (10, 0), (10, -10), (0, -10)]),
        ("m5,5 10,0 0,10 z", [(5, -5), (15, -5), (15, -15)]),
        ("M0 0l10 0 0 10-10 0z", [(0, 0), (10, 0), (10, -10), (0, -10)]),
        ("M1.5.5L11.5.5 11.5-9.5Z", [(1.5, -0.5), (11.5, -0.5), (11.5, 9.5)]),
        ("M0 0 10 0 10 10 0 0", [(0, 0), (10, 0), (10, -10)]),
        ("M00.5 1. L 1e1 1.\nL10 007Z", [(0.5, -1), (10, -1), (10, -7)]),
    ],
)
def test_reads_lines_in_every_spelling_with_y_up(data, points):
    assert np.array(chain(data).points(0.01)) == pytest.approx(np.array(points))


@pytest.mark.parametrize(
    ("data", "exact"),
    [
        ("M10 0A10 10 0 0 1 -10 0A10 10 0 0 1 10 0Z", math.pi * 100),
        ("M10 0A10 10 0 1 1 10 -0.0001Z", math.pi * 100),
        ("M10 0a10 5 0 01-20 0a10 5 0 0120 0z", math.pi * 50),
        ("M0 0A10 10 0 0 1 20 0Z", math.pi * 50),
        ("M0 0A1 1 0 0 1 20 0Z", math.pi * 50),  # radii too small grow until they reach (F.6.6)
        ("M0 0A10 10 0 0 0 10 10H0Z", 100 - 100 * math.pi / 4),
        ("M0 0A10 10 0 1 0 10 10L10 0Z", 100 * math.pi * 3 / 4 + 100),
        ("M0 0Q10 20 20 0Z", 2 / 3 * 20 * 10),  # a parabola's segment: two thirds of its box (Archimedes)
        ("M0 0Q5 10 10 0T20 0L20 10 0 10Z", 200),
    ],
)
def test_areas_of_curves_agree_with_their_closed_forms(data, exact):
    assert area(data).area == pytest.approx(exact, rel=5e-5)


@settings(max_examples=60)
@given(
    rx=st.floats(5, 50), ry=st.floats(5, 50), turn=st.floats(-180, 180), large=st.booleans(), sweep=st.booleans(),
    x=st.floats(-60, 60), y=st.floats(10, 60),
)  # fmt: skip
def test_arcs_agree_with_fonttools_cubics(rx, ry, turn, large, sweep, x, y):
    """A cubic for each quarter strays from the circle by 2.73e-4 of the radius at most (Goldapp 1991)."""
    data = f"M0 0A{rx:f} {ry:f} {turn:f} {large:d} {sweep:d} {x:f} {y:f}L{x - 100:f} {y + 80:f}Z"
    pen = RecordingPen()
    parse_path(data, pen)
    points = [(0.0, 0.0)]
    for name, to in pen.value:
        if name == "curveTo":
            parts = splitCubicAtT(points[-1], *to, *[i / 50 for i in range(1, 50)])
            points += [part[3] for part in parts]
        elif name == "lineTo":
            points += list(to)
    reference = shapely.LineString([(px, -py) for px, py in points])
    own = chain(data).points(1e-3)
    ours = shapely.LineString([*own, own[0]])
    scale = max(rx, ry, math.hypot(x, y))
    assert ours.hausdorff_distance(reference) <= 1.5e-3 * scale


def test_curves_stay_curves_under_any_affine_map():
    turned = chain("M10 0A10 10 0 0 1 -10 0A10 10 0 0 1 10 0Z", matrix=(1, 2, 0.5, 3, 7, 8))
    assert Polygon(turned.points(1e-4)).area == pytest.approx(math.pi * 100 * abs(1 * 3 - 2 * 0.5), rel=1e-4)


def test_chords_get_finer_with_the_tolerance():
    circle = chain("M10 0A10 10 0 0 1 -10 0A10 10 0 0 1 10 0Z")
    for chord in (0.5, 0.05, 0.005):
        ring = shapely.LinearRing(circle.points(chord))
        assert ring.distance(shapely.Point(0, 0)) >= 10 - chord
    assert len(circle.points(0.005)) > 5 * len(circle.points(0.5))


@pytest.mark.parametrize(
    ("data", "what"),
    [
        ("M0 0L10 0L10 10", "open: its ends are 1 of its size apart"),
        ("M0 0H10V10H0ZM20 0h5v5z", "2 parts"),
        ("M0 0H10V10H0Zh5", "2 parts"),
        ("L10 10Z", "break off or make no sense"),
        ("M0 0L10", "break off or make no sense"),
        ("M0 0A10 10 0 2 0 5 5Z", "break off or make no sense"),
        ("M0 0A10 10 0Z", "break off or make no sense"),
        ("M0 0 C 1 2 3 Z", "break off or make no sense"),
        ("M0 0 L 5 five Z", "hold 'f'"),
        ("M0 0Z", "encloses nothing"),
        ("M0 0 L0 0 L0 0 L1 1Z", "encloses nothing"),
        ("M0 0L1e999 0L0 9Z", "further than anybody can draw"),
        ("M0 0L1e12 0L0 9Z", "further than anybody can draw"),
        ("M0 0" + "l1 1 1-1" * (MOST_SEGMENTS // 2 + 1) + "v99z", "504 lines and curves"),
    ],
)
def test_refuses_what_is_not_one_closed_path(data, what):
    with pytest.raises(AskError) as caught:
        chain(data)
    (problem,) = caught.value.problems
    assert problem.where == "outline.svg:1"
    assert what in str(problem.what)
    assert problem.remedy
