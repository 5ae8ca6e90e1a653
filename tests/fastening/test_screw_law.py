"""Screws of random signs' real programs: a cylinder as wide as a head is never met by a cutter or the collet's nut."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import Point

from signgen.errors import CannotMakeError
from signgen.fastening.fastening import fastening_of
from signgen.fastening.screws import ROUNDING_MM
from signgen.job.facts import JobFacts
from signgen.pipeline import prove
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.stock import HEAD_STANDS_MM, SCREW_HEAD_MM
from tests.asking import spec_of
from tests.fastening.test_keep_out import walked

SIGNS = st.fixed_dictionaries(
    {
        "text": st.sampled_from(["7", "17", "Ada"]),
        "font": st.just("atkinson"),
        "size": st.tuples(st.integers(70, 160), st.integers(50, 110)).map(lambda s: f"{s[0]}x{s[1]}"),
        "thickness": st.sampled_from(["9", "12", "18"]),
        "origin": st.sampled_from(["sign", "stock"]),
        "z_zero": st.sampled_from(["bottom", "top"]),
    },
    optional={
        "board": st.sampled_from(["260x220", "300x180"]),
        "border": st.sampled_from(["oval", "rounded", "scalloped"]),
    },
)


def near_mm(facts: JobFacts, places: np.ndarray) -> np.ndarray:
    """How far each of (k, 2) places, in sign coordinates, is from the nearest flank of a cutter or the nut that comes
    as low as a head may stand; walked point by point, without any of the sheet's geometry."""
    nut = NUT_DIAMETER_MM[facts.spec.machine.collet_series] / 2
    least = np.full(len(places), np.inf)
    for program in facts.programs:
        alone, motions = replace(facts, programs=(program,)), program.replay.motions
        lowest = np.minimum(motions.start_mm, motions.end_mm)[:, 2].min() + facts.zero.z_mm - facts.drawing.thickness_mm
        for below, radius in (
            (HEAD_STANDS_MM, program.tool.radius_mm), (HEAD_STANDS_MM - program.tool.stickout_mm, nut)
        ):  # fmt: skip
            if lowest < below:
                ((points, _),) = walked(alone, below)
                far = [float(np.hypot(*(points - place).T).min()) - radius for place in places]
                least = np.minimum(least, far)
    return least


def made(asked: dict[str, str]) -> JobFacts | None:
    try:
        return prove(spec_of(holes="none", hole_diameter=None, inset=None, **asked))
    except CannotMakeError:
        return None


def holds(asked: dict[str, str], seed: int) -> bool:
    """Whether there was a sign to judge."""
    facts = made(asked)
    if facts is None:
        return False
    zero = np.array([facts.zero.x_mm, facts.zero.y_mm])
    radius = SCREW_HEAD_MM / 2
    suggested = np.array(facts.screws_mm).reshape(-1, 2) + zero
    left, front, right, back = facts.stock.bounds_mm
    random = np.random.default_rng(seed)
    anywhere = random.uniform((left, front), (right, back), (200, 2))
    swept = fastening_of(facts).swept.buffer(radius)
    free = np.array([place for place in anywhere if not swept.intersects(Point(*place))][:40]).reshape(-1, 2)
    for place in suggested:
        assert not swept.intersects(Point(*place))
    places = np.concatenate([suggested, free])
    assert (near_mm(facts, places) >= radius - ROUNDING_MM).all()
    return True


@settings(max_examples=4, deadline=None, suppress_health_check=list(HealthCheck))
@given(asked=SIGNS, seed=st.integers(0, 2**31))
def test_no_head_at_a_suggested_place_or_anywhere_outside_the_hatched_area_is_met(
    asked: dict[str, str], seed: int
) -> None:
    holds(asked, seed)


@pytest.mark.sweep
@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(asked=SIGNS, seed=st.integers(0, 2**31))
def test_no_head_is_met_in_many_signs(asked: dict[str, str], seed: int) -> None:
    holds(asked, seed)


def test_the_least_board_takes_screws_wherever_the_cutter_comes_in() -> None:
    facts = made({"text": "7", "font": "atkinson", "size": "120x80", "thickness": "12"})
    assert facts is not None
    assert len(facts.screws_mm) == 4
    assert holds({"text": "17", "font": "atkinson", "size": "120x80", "thickness": "12"}, 1)


def test_a_head_in_the_way_is_found() -> None:
    """What the law is measured by can say no."""
    facts = made({"text": "17", "font": "atkinson", "size": "120x80", "thickness": "12"})
    assert facts is not None
    assert near_mm(facts, np.array([[-3.0, 40.0], [-60.0, 40.0]]))[0] < 0
    assert near_mm(facts, np.array([[-60.0, 40.0]]))[0] > SCREW_HEAD_MM
