"""What cutters sweep around the sign, against the same question asked point by point."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.fastening.keep_out import CHORD_MM, swept_outside, tip_lines
from signgen.job.facts import JobFacts
from signgen.replay.motion import ARC_CCW, ARC_CW

Make = Callable[..., JobFacts]


def walked(facts: JobFacts, below_mm: float) -> list[tuple[np.ndarray, float]]:
    """(k, 2) places of each low enough cutter in sign coordinates, every 0.2 mm of its way, with its radius."""
    result = []
    for program in facts.programs:
        motions = program.replay.motions
        points = []
        for i in range(len(motions)):
            start, end, centre = motions.start_mm[i], motions.end_mm[i], motions.centre_mm[i]
            if motions.kind[i] in (ARC_CW, ARC_CCW):
                a = math.atan2(*(start[:2] - centre)[::-1])
                b = math.atan2(*(end[:2] - centre)[::-1])
                turn = 1 if motions.kind[i] == ARC_CCW else -1
                sweep = (turn * (b - a)) % (2 * math.pi) or 2 * math.pi
                r = math.hypot(*(start[:2] - centre))
                share = np.linspace(0, 1, 2 + int(sweep * r / 0.2))
                angle = a + turn * sweep * share
                xy = centre + r * np.stack([np.cos(angle), np.sin(angle)], axis=1)
            else:
                share = np.linspace(0, 1, 2 + int(math.dist(start[:2], end[:2]) / 0.2))
                xy = start[:2] + (end - start)[:2] * share[:, None]
            if min(start[2], end[2]) + facts.zero.z_mm < facts.drawing.thickness_mm + below_mm:
                points.append(xy + np.array([facts.zero.x_mm, facts.zero.y_mm]))
        result.append((np.concatenate(points), program.tool.radius_mm))
    return result


def cutters(facts: JobFacts) -> list[tuple[object, object]]:
    return [(program.tool, program.replay) for program in facts.programs]


@pytest.mark.parametrize("origin", ["sign", "stock"])
@pytest.mark.parametrize("z_zero", ["bottom", "top"])
def test_no_place_that_a_low_cutter_touches_is_left_out(make_facts: Make, origin: str, z_zero: str) -> None:
    facts = make_facts(origin=origin, z_zero=z_zero, cell=5.0)
    swept = swept_outside(facts.drawing, facts.zero, cutters(facts), 2.0)  # type: ignore[arg-type]
    for places, radius in walked(facts, 2.0):
        rim = shapely.buffer(shapely.points(places[::7]), radius - 0.01)
        assert swept.contains(shapely.union_all(rim))


def test_nothing_far_from_a_cutter_is_claimed(facts: JobFacts) -> None:
    swept = swept_outside(facts.drawing, facts.zero, cutters(facts), 2.0)  # type: ignore[arg-type]
    assert swept.bounds == pytest.approx((-6, -6, 206, 126), abs=2 * CHORD_MM)
    assert not swept.contains(shapely.Point(-6.1, -6.1))


def test_the_nut_sweeps_wider_once_the_stick_out_is_short(facts: JobFacts) -> None:
    long = cutters(facts)
    short = [(replace(tool, stickout_mm=12.0), replay) for tool, replay in long]  # type: ignore[type-var]
    areas = [
        swept_outside(facts.drawing, facts.zero, pairs, 2.0, nut_mm=28.0).area  # type: ignore[arg-type]
        for pairs in (long, short)
    ]
    assert areas[0] == pytest.approx(facts.drawing.edge.area)
    assert areas[1] > areas[0] + 10_000


def test_a_shank_that_comes_low_sweeps_wider_than_its_cutter(facts: JobFacts) -> None:
    thick = [(replace(tool, shank_mm=tool.diameter_mm + 4), replay) for tool, replay in cutters(facts)]  # type: ignore[type-var]
    high, low = (
        swept_outside(
            facts.drawing,
            facts.zero,
            [(replace(tool, cutting_length_mm=length), replay) for tool, replay in thick],
            2.0,  # type: ignore[type-var]
        )
        for length in (30.0, 5.0)
    )
    assert high.bounds == pytest.approx((-6, -6, 206, 126), abs=2 * CHORD_MM)
    assert low.bounds == pytest.approx((-8, -8, 208, 128), abs=2 * CHORD_MM)


@settings(max_examples=40, deadline=None)
@given(st.floats(0.3, 80), st.floats(-math.pi, math.pi), st.floats(0.01, 2 * math.pi), st.booleans())
def test_chords_of_an_arc_stay_within_their_tolerance(radius: float, start: float, sweep: float, ccw: bool) -> None:
    from signgen.replay.motion import Motions

    turn = 1 if ccw else -1
    ends = [(radius * math.cos(a), radius * math.sin(a), 0.0) for a in (start, start + turn * sweep)]
    motions = Motions(
        kind=np.array([ARC_CCW if ccw else ARC_CW], np.uint8), start_mm=np.array([ends[0]]), end_mm=np.array([ends[1]]),
        centre_mm=np.zeros((1, 2)), plane=np.array([17], np.uint8), feed_mm_per_min=np.ones(1), spindle_rpm=np.ones(1),
        spindle_s=np.ones(1), line=np.array([1]), tool=np.zeros(1, np.int32), start_known=np.ones((1, 3), bool),
    )  # fmt: skip
    lines = tip_lines(motions)
    middles = np.hypot(*lines[:, :, :2].mean(axis=1).T)
    assert np.all(middles >= radius - CHORD_MM - 1e-9)
    length = np.hypot(*(lines[:, 1] - lines[:, 0])[:, :2].T).sum()
    assert length == pytest.approx(radius * sweep, rel=0.05, abs=1e-6)
