"""Laws that hold for every kind of feature, also for those to come: a kind in `KINDS` needs a sample."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import affinity

from signgen.features import KINDS
from signgen.features.feature import Feature, told
from signgen.features.keyhole import Keyhole
from signgen.geometry.motion import Motion, quarter_turn, turned_page
from tests.features.samples import HEIGHT_MM, SAMPLES, WIDTH_MM

MOTIONS = {
    "shifted": Motion(x_mm=31.0, y_mm=-7.5),
    "turned": quarter_turn(HEIGHT_MM),
    "over": turned_page(WIDTH_MM),
    "turned over": Motion(xx=0.0, xy=1.0, yx=1.0, yy=0.0),
}
EVERY = [pytest.param(sample, id=sample.name) for sample in SAMPLES]


def matrix(motion: Motion) -> list[float]:
    return [motion.xx, motion.xy, motion.yx, motion.yy, motion.x_mm, motion.y_mm]


def places_in(feature: Feature) -> np.ndarray:
    """Places all over a footprint, not nearer to its outline than a rounding could move them."""
    area = feature.footprint.buffer(-0.01)
    x0, y0, x1, y1 = area.bounds
    grid = np.stack(np.meshgrid(np.linspace(x0, x1, 41), np.linspace(y0, y1, 37)), axis=-1).reshape(-1, 2)
    return grid[shapely.contains_xy(area, grid[:, 0], grid[:, 1])]


def test_every_kind_has_a_sample_and_a_word_of_its_own() -> None:
    assert {type(sample) for sample in SAMPLES} == set(KINDS)
    assert len({kind.kind for kind in KINDS}) == len(KINDS)


@pytest.mark.parametrize("motion", MOTIONS.values(), ids=MOTIONS)
@pytest.mark.parametrize("feature", EVERY)
def test_moved_and_drawn_is_drawn_and_moved(feature: Feature, motion: Motion) -> None:
    if isinstance(feature, Keyhole) and motion.direction(0, 1) != (0, 1):
        with pytest.raises(ValueError, match="upright"):
            feature.moved(motion)
        return
    moved = feature.moved(motion)
    expected = affinity.affine_transform(feature.footprint, matrix(motion))
    assert moved.footprint.symmetric_difference(expected).area < 1e-3
    for part in shapely.get_parts(moved.footprint):
        assert shapely.is_ccw(part.exterior)
    places = places_in(feature)
    there = np.array([motion.point(x, y) for x, y in places.tolist()])
    for before, after in zip(feature.depths(places), moved.depths(there), strict=True):
        np.testing.assert_allclose(after, before, atol=1e-6)
    assert (moved.name, moved.source, moved.text) == (feature.name, feature.source, feature.text)


@pytest.mark.parametrize("feature", EVERY)
def test_least_is_no_more_than_most_and_neither_is_negative(feature: Feature) -> None:
    least, most = feature.depths(places_in(feature))
    assert len(least) > 100
    known = ~np.isnan(least) & ~np.isnan(most)
    assert (least[known] <= most[known] + 1e-12).all()
    assert not (least < -1e-9).any()
    assert not (most < -1e-9).any()


@pytest.mark.parametrize("feature", EVERY)
def test_what_is_told_names_the_feature_and_where_it_comes_from(feature: Feature) -> None:
    facts = told(feature)
    assert facts["kind"] == feature.kind
    assert facts["name"] == feature.name
    assert facts["source"] == feature.source
    assert facts.get("text", "") == feature.text


@given(angle=st.floats(0, 360), x=st.floats(-100, 100), y=st.floats(-100, 100), mirrored=st.booleans())
def test_directions_turn_as_points_do(angle: float, x: float, y: float, mirrored: bool) -> None:
    cos, sin = np.cos(np.radians(angle)), np.sin(np.radians(angle))
    motion = Motion(xx=cos, xy=sin if mirrored else -sin, yx=sin, yy=-cos if mirrored else cos, x_mm=x, y_mm=y)
    assert motion.is_mirrored == mirrored
    for way in (0.0, 30.0, 135.0):
        turned = motion.direction(np.cos(np.radians(way)), np.sin(np.radians(way)))
        found = np.radians(motion.angle_deg(way))
        assert np.allclose(turned, (np.cos(found), np.sin(found)), atol=1e-9)
