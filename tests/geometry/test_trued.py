"""Offsets that GEOS makes askew are put right."""

import numpy as np
import pytest
import shapely
from shapely.geometry import MultiPolygon, Polygon

from signgen.geometry.offsets import inward, outward
from signgen.geometry.trued import trued


def farthest(parts, from_, distance):
    lines = shapely.segmentize(MultiPolygon(parts).boundary, 0.02)
    away = shapely.distance(shapely.points(shapely.get_coordinates(lines)), from_)
    return float(np.abs(away - distance).max())


CORNER = Polygon([(30, 0), (15.562, 0.015), (15.567, 0), (0, 0), (0, 20)])
"""A long edge that ends at one of 0.016 mm, less than a hundredth of 2 mm: GEOS drops the corner between them."""


def test_the_library_drops_the_corner():
    # If this fails the library has been mended, and `trued` may go.
    assert farthest([shapely.buffer(CORNER, -2, quad_segs=64)], CORNER.boundary, 2) > 0.005


@pytest.mark.parametrize("distance", [1.0, 2.0, 4.0])
def test_an_offset_past_a_corner_with_a_tiny_edge_is_right(distance):
    assert farthest(inward(CORNER, distance, 0.001), CORNER.boundary, distance) <= 0.001
    board = Polygon([(-20, -20), (60, -20), (60, 45), (-20, 45)], [CORNER.exterior.coords])
    assert farthest(outward(board, distance, 0.001), board, distance) <= 0.001


def test_an_offset_that_is_right_is_left_alone():
    square = Polygon([(0, 0), (40, 0), (40, 25), (0, 25)])
    made = shapely.buffer(square, -3)
    assert trued(square, [made], -3, 0.001, 16).equals_exact(MultiPolygon([made]), 0)
