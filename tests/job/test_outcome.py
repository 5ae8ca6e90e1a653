"""What the sheet tells the operator to look for is what the simulation shows."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, box

from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.job.facts import JobFacts
from signgen.job.outcome import outcomes
from signgen.replay.heights import HeightMap


def test_the_first_program_engraves_and_the_second_bores_and_cuts_out(facts: JobFacts) -> None:
    first, second = outcomes(facts)
    # strokes of the fixture are 9.6 mm wide: 4.8 mm deep at 90 degrees, and 6 mm, the limit, where they meet
    assert first.engraved_mm == pytest.approx(6.0, abs=0.01)
    assert (first.holes, first.cut_out) == ((), False)
    assert second.engraved_mm == 0
    assert len(second.holes) == 4
    assert second.cut_out


def test_a_hole_that_stays_shut_is_not_promised(facts: JobFacts) -> None:
    hole = facts.drawing.of(Hole)[0]
    last = facts.boards[-1]
    z = last.z_mm.copy()
    i, j = round((hole.x_mm - last.x0_mm) / last.cell_mm), round((hole.y_mm - last.y0_mm) / last.cell_mm)
    z[j - 12 : j + 13, i - 12 : i + 13] = np.float32(0.4)
    shut = HeightMap(z_mm=z, grid=last.grid)
    changed = replace(facts, boards=(facts.boards[0], shut))
    assert [h.name for h in outcomes(changed)[1].holes] == [h.name for h in facts.drawing.of(Hole)[1:]]


def test_an_outside_that_is_not_through_is_not_promised(facts: JobFacts) -> None:
    same = replace(facts, boards=(facts.boards[0], facts.boards[0]))
    assert not outcomes(same)[1].cut_out


def test_a_sign_without_holes_or_letters_has_none(make_facts: Callable[..., JobFacts]) -> None:
    facts = make_facts(holes=(), cell=2.0)
    bare = replace(facts, drawing=facts.drawing.having(Groove, ()))
    assert all(outcome.holes == () and outcome.engraved_mm == 0 for outcome in outcomes(bare))


def test_what_is_cut_beside_a_wide_groove_is_not_cut_into_it(facts: JobFacts) -> None:
    # like a frame that goes round all the sign: tabs stand within its bounds, but not on it
    width, height = facts.drawing.width_mm, facts.drawing.height_mm
    ends = MultiPolygon([box(-3, -3, -2, -2), box(width + 2, height + 2, width + 3, height + 3)])
    wide = replace(facts.drawing.of(Groove)[0], area=ends)
    assert outcomes(replace(facts, drawing=facts.drawing.having(Groove, (wide,))))[1].engraved_mm == 0
