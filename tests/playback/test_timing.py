"""Playback's seconds are those of the estimate."""

from __future__ import annotations

import pytest

from signgen.pipeline import make_job
from signgen.playback.timing import motion_seconds
from tests.asking import spec_of


def test_the_motions_of_a_program_take_as_long_as_its_estimate_less_the_spindles_start() -> None:
    facts = make_job(spec_of()).facts
    for program in facts.programs:
        seconds = motion_seconds(program.replay.motions, facts.spec.machine)
        assert len(seconds) == len(program.replay.motions)
        assert (seconds >= 0).all()
        assert 60 * program.minutes - seconds.sum() == pytest.approx(facts.spec.machine.spindle_start_s, abs=0.05)
