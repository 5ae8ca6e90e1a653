"""Short cuts between the corners of a stroke's end."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
import shapely
from shapely.geometry import Polygon, box

from signgen.geometry.clip import clipped
from signgen.geometry.hops import with_hops
from signgen.geometry.medial import medial_axis
from signgen.geometry.walk import Run, runs_along
from signgen.tolerances import Tolerances
from tests.geometry.test_medial import L_SHAPE, T_SHAPE

TOLERANCES = Tolerances()
E_SHAPE = shapely.union_all([box(0, 0, 6, 40), box(0, 0, 25, 6), box(0, 17, 20, 23), box(0, 34, 25, 40)])


def rings(shape: Polygon) -> list[np.ndarray]:
    return [np.asarray(ring.coords)[:-1, :2] for ring in (shape.exterior, *shape.interiors)]


def runs(shape: Polygon, level: float) -> tuple[tuple[Run, ...], tuple[Run, ...]]:
    """Without and with short cuts."""
    plain = runs_along(clipped(medial_axis(shape, TOLERANCES), level, 100.0), (), 40.0)
    return plain, with_hops(plain, rings(shape), level)


def ways(found: tuple[Run, ...]) -> list[np.ndarray]:
    return [piece.points for run in found for piece in run]


def length_mm(found: tuple[Run, ...]) -> float:
    return sum(float(np.hypot(*np.diff(way[:, :2], axis=0).T).sum()) for way in ways(found))


@pytest.mark.parametrize("shape", [T_SHAPE, E_SHAPE])
@pytest.mark.parametrize("level", [0.0, 0.3])
def test_square_ends_are_walked_along_their_side(shape: Polygon, level: float) -> None:
    plain, hopping = runs(shape, level)
    assert len(ways(hopping)) < len(ways(plain))
    assert length_mm(hopping) < length_mm(plain)


@pytest.mark.parametrize("shape", [L_SHAPE, T_SHAPE, E_SHAPE])
@pytest.mark.parametrize("level", [0.0, 0.3])
def test_no_disc_on_the_way_reaches_beyond_the_outline(shape: Polygon, level: float) -> None:
    for way in ways(runs(shape, level)[1]):
        fine = np.concatenate([np.linspace(a, b, 40) for a, b in itertools.pairwise(way)])
        away = shapely.distance(shapely.points(fine[:, :2]), shape.boundary)
        assert shapely.covers(shape.buffer(1e-4), shapely.points(fine[:, :2])).all()
        assert (fine[:, 2] - away).max() < TOLERANCES.branch_mm + 1e-4


@pytest.mark.parametrize("shape", [L_SHAPE, T_SHAPE, E_SHAPE])
def test_every_branch_is_still_walked_and_every_run_in_one(shape: Polygon) -> None:
    plain, hopping = runs(shape, 0.0)
    for run in hopping:
        for before, after in itertools.pairwise(run):
            assert np.array_equal(before.points[-1], after.points[0])
    walked = shapely.union_all([shapely.LineString(way[:, :2]) for way in ways(hopping)])
    for way in ways(plain):
        assert walked.buffer(1e-6).covers(shapely.LineString(way[:, :2]))


def test_a_notch_between_the_corners_keeps_them_apart() -> None:
    # The end of the stroke has a swallow's tail: no one side joins its corners.
    forked = Polygon([(0, 0), (40, 0), (34, 5), (40, 10), (0, 10)])
    _, hopping = runs(forked, 0.0)
    tips = {(40.0, 0.0), (40.0, 10.0)}
    for way in ways(hopping):
        ends = {tuple(np.round(way[0, :2], 3)), tuple(np.round(way[-1, :2], 3))}
        assert ends != tips


def test_a_rounded_end_has_no_corners_to_join() -> None:
    plain, hopping = runs(box(0, 0, 40, 10).buffer(-2).buffer(2, quad_segs=64), 0.0)
    assert len(ways(hopping)) == len(ways(plain))
