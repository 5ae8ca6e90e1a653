"""Clamps outside the line are never met: by a cutter on its way, the nut, or the head that goes out."""

from __future__ import annotations

import numpy as np
import pytest
from shapely import linestrings

from signgen.fastening.fastening import CLAMP_GRIP_MM, fastening_of
from signgen.fastening.keep_out import tip_lines
from signgen.job.facts import JobFacts
from signgen.pipeline import make_job
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.stock import CLAMP_STANDS_MM
from tests.asking import spec_of


@pytest.fixture(scope="module", params=[{}, {"board": "400x300"}, {"origin": "stock", "board": "320x260"}])
def facts(request: pytest.FixtureRequest) -> JobFacts:
    return make_job(spec_of(**request.param)).facts


def test_no_cutter_and_no_nut_comes_low_outside_the_line(facts: JobFacts) -> None:
    line = fastening_of(facts).clamp_line
    assert facts.outline is not None
    shift = np.array([facts.zero.x_mm, facts.zero.y_mm, facts.zero.z_mm])
    nut = NUT_DIAMETER_MM[facts.spec.machine.collet_series] / 2
    limit = facts.drawing.thickness_mm + CLAMP_STANDS_MM
    for tool, replay in [(program.tool, program.replay) for program in (facts.outline, *facts.programs)]:
        ways = tip_lines(replay.motions) + shift
        for lift, radius in ((0.0, tool.radius_mm), (tool.stickout_mm, nut)):
            low = ways[ways[:, :, 2].min(axis=1) + lift < limit - 1e-6, :, :2]
            swept = linestrings(low)
            assert all(line.buffer(0.1).covers(way.buffer(radius)) for way in swept[:: max(1, len(swept) // 400)])


def test_a_board_that_is_larger_has_room_for_clamps_at_its_back_too() -> None:
    """The head goes out over them."""
    facts = make_job(spec_of(board="400x300")).facts
    found = fastening_of(facts)
    back = facts.stock.bounds_mm[3] - found.clamp_line.bounds[3]
    assert back > 5 * CLAMP_GRIP_MM
    assert found.takes_clamps


def test_programs_end_higher_than_clamps(facts: JobFacts) -> None:
    for program in facts.programs:
        high = program.replay.motions.end_mm[-1, 2] + facts.zero.z_mm
        assert high >= facts.drawing.thickness_mm + CLAMP_STANDS_MM


def test_where_the_machine_is_low_programs_end_as_high_as_it_goes() -> None:
    spec = spec_of(thickness="18", clearance="70")
    facts = make_job(spec).facts
    assert facts.checks.passed
    for program in facts.programs:
        z = program.replay.motions.end_mm[:, 2]
        assert z.max() - min(z.min(), -spec.breakthrough_mm) <= spec.machine.travel_mm[2] + 1e-9
        assert z.max() + facts.zero.z_mm == pytest.approx(spec.machine.travel_mm[2] - spec.breakthrough_mm)
