"""C106: feeds stay within the machine and the cutter."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

import numpy as np
from numpy.typing import NDArray

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.engagement import Engagement
from signgen.checks.tip_path import TipPath
from signgen.geometry.distance import FloatArray
from signgen.messages import Message, Mm, MmPerMin, Num
from signgen.shop.feeds import chip_load_mm, cutting_data

MOST_CHIP_RATIO = 2.0
"""How many times the material's chip load a tooth may take before a small cutter breaks (common practice: data for one
cutter and material scatter by about that much)."""

MOST_PLUNGE_RATIO = 1.5
"""How many times the plunge feed of the shop's data a cutter may be driven straight down."""

FAR_TOO_MUCH = 2.0
"""Programs from elsewhere are made with data of their own, which differ by about that much (common practice): up to
this many times what is allowed is a warning in them."""

STEEP_DEG = 80.0
"""From here on a move counts as going straight down; V-bits climb and fall at up to 75 degrees along their grooves."""

LEAST_FEED_RATIO = 0.25
"""Of the feed that the data give for a move: a tooth that takes less than a quarter of its chip rubs, which heats the
cutter and burns the wood (common practice: chips are not thinned to less than a third)."""

SLACK = 1.001
"""For feeds that were rounded."""


class FeedsSane:
    code = "C106"
    name = "feeds_sane"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Every feed move needs a feed above zero that no axis of the machine is too slow for. In the board, the feed of each
tooth (feed / (speed x teeth)) may be twice what the material's data say for this cutter at most, and a move straight
down one and a half times the plunge feed at most; faster only where the cutter meets no wood, for it has been there
before.

In the board no move may be slower than a quarter of what the data give for its direction: such a cutter rubs.

A failure means a stalled axis, a broken cutter or burnt wood.

What to do: lower the feed (F) of the line named, or mend the shop's data when they are wrong.

Least error seen: 0.1 % against the machine, a factor of 2 against the chip load."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        feeds: list[Message] = []
        for program, cuts, engagement in zip(case.programs, case.cuts, case.engagement, strict=True):
            findings += _findings(case, program, cuts, engagement)
            used = program.replay.motions.feed_mm_per_min[cuts.motion]
            if len(used):
                feeds.append(
                    Message("feeds_sane.in", least=Num(used.min(), 0), most=Num(used.max(), 0), file=program.file)
                )
        top = " x ".join(f"{feed:g}" for feed in case.machine.top_feed_mm_per_min)
        return verdict(
            self,
            findings,
            Message("feeds_sane.mm_min_machine_s_axes", feeds=tuple(feeds) or Message("list.none"), top=top),
        )


def _findings(case: Case, program: ProgramUnderTest, cuts: TipPath, engagement: Engagement) -> list[Finding]:
    """The worst move of each kind of fault."""
    feed = program.replay.motions.feed_mm_per_min[cuts.motion]
    step = cuts.end_mm - cuts.start_mm
    length = np.sqrt(np.einsum("ij,ij->i", step, step))
    moving = length > 1e-9
    direction = step / np.where(moving, length, 1.0)[:, None]
    axis_feed = np.abs(direction) * feed[:, None]
    none = np.where(moving, -feed, -1.0)
    found = _worst(
        program,
        cuts,
        none,
        -1e-9,
        lambda _: Message("feeds_sane.feed_move_has_no_feed"),
        Message("feeds_sane.give_f_word"),
    )
    for axis, most in enumerate(case.machine.top_feed_mm_per_min):
        found += _worst(
            program,
            cuts,
            axis_feed[:, axis],
            most * SLACK,
            partial(_too_fast, "XYZ"[axis], most),
            Message("feeds_sane.lower_feed"),
            np.inf if not case.drawn else 1.0,
        )
    found += _slowest(case, program, cuts, direction)
    tolerated = 1.0 if case.drawn else FAR_TOO_MUCH
    in_board = cuts.low_z_mm < case.stock.thickness_mm - 1e-6
    rpm = program.replay.motions.spindle_rpm[cuts.motion]
    if program.tool.kind != "drill":
        most = MOST_CHIP_RATIO * chip_load_mm(program.tool, case.material)
        chip = np.where(in_board & moving & (rpm > 0), feed / np.maximum(rpm * program.tool.flutes, 1.0), 0.0)
        found += _worst(
            program,
            cuts,
            chip,
            most * SLACK,
            lambda value: Message(
                "feeds_sane.each_tooth_would_take_mm",
                value=Mm(value, 3),
                most=Mm(MOST_CHIP_RATIO * chip_load_mm(program.tool, case.material), 3),
                material=case.material.label,
            ),
            Message("feeds_sane.lower_feed_raise_speed"),
            tolerated,
        )
    sinking, most = driven_down(case, program, cuts)
    found += _worst(
        program,
        cuts,
        np.where(sinking & ~in_air(engagement, len(cuts)), feed, 0.0),
        most * SLACK,
        lambda value: Message(
            "feeds_sane.cutter_driven_straight_down_mm", value=MmPerMin(value, 0), most=MmPerMin(most, 0)
        ),
        Message("feeds_sane.lower_feed_plunge"),
        tolerated,
    )
    return found


def _too_fast(axis: str, most: float, value: float) -> Message:
    return Message("feeds_sane.move_asks_mm_min_along", value=MmPerMin(value, 0), axis=axis, most=MmPerMin(most))


def _slowest(case: Case, program: ProgramUnderTest, cuts: TipPath, direction: FloatArray) -> list[Finding]:
    """The first move in the board that is far slower than what the data give: across as fast as they say, down along a
    ramp no faster than a ramp's feed and straight down than the plunge feed, up as the Z axis can. In programs from
    elsewhere this only warns."""
    data = program.stated.cutting if program.stated else cutting_data(program.tool, case.material, case.machine)
    feed = program.replay.motions.feed_mm_per_min[cuts.motion]
    falling = direction[:, 2] < 0
    upright = np.where(falling, data.plunge_mm_per_min, case.machine.top_feed_mm_per_min[2])
    along = np.where(falling, min(data.ramp_mm_per_min, data.feed_mm_per_min), data.feed_mm_per_min)
    usual = np.minimum(along, upright / np.maximum(np.abs(direction[:, 2]), 1e-9))
    in_board = (cuts.low_z_mm < case.stock.thickness_mm - 1e-6) & (np.abs(direction).sum(axis=1) > 0)
    ratio = np.where(in_board & (feed > 0), feed / usual, np.inf)
    if not len(ratio) or ratio.min() >= LEAST_FEED_RATIO / SLACK:
        return []
    k = int(np.argmax(ratio < LEAST_FEED_RATIO / SLACK))
    return [
        Finding(
            message=Message(
                "feeds_sane.cutter_creeps_through_wood_usual",
                feed=MmPerMin(feed[k], 0),
                usual=MmPerMin(usual[k], 0),
                least=MmPerMin(LEAST_FEED_RATIO * usual[k], 0),
            ),
            file=program.file,
            line=int(cuts.line[k]),
            place_mm=(float(cuts.start_mm[k, 0]), float(cuts.start_mm[k, 1])),
            remedy=Message("feeds_sane.raise_feed"),
            warns=not case.drawn,
        )
    ]


def driven_down(case: Case, program: ProgramUnderTest, cuts: TipPath) -> tuple[NDArray[np.bool_], float]:
    """(k,) which pieces go straight down in the board faster than any cutter is driven into wood; and that feed."""
    most = MOST_PLUNGE_RATIO * cutting_data(program.tool, case.material, case.machine).plunge_mm_per_min
    feed = program.replay.motions.feed_mm_per_min[cuts.motion]
    step = cuts.end_mm - cuts.start_mm
    steep = -step[:, 2] > np.sin(np.radians(STEEP_DEG)) * np.sqrt(np.einsum("ij,ij->i", step, step))
    return steep & (cuts.low_z_mm < case.stock.thickness_mm - 1e-6) & (feed > most * SLACK), most


def in_air(engagement: Engagement, count: int) -> NDArray[np.bool_]:
    """(count,) the pieces at whose places the tip was as deep before. Whether the flanks meet nothing either, C102
    tries: such a way down is a rapid to it."""
    deepest = np.zeros(count)
    np.maximum.at(deepest, engagement.piece, engagement.depth_mm)
    return deepest <= 0


def _worst(
    program: ProgramUnderTest,
    cuts: TipPath,
    values: FloatArray,
    most: float,
    message: Callable[[float], Message],
    remedy: Message,
    tolerated: float = 1.0,
) -> list[Finding]:
    """The worst of the values over the most allowed; up to `tolerated` times as much only warns."""
    bad: NDArray[np.bool_] = values > most
    if not bad.any():
        return []
    # The first line of those that are as bad as the worst is where the feed was set.
    k = int(np.argmax(values >= values.max() * (1 - 1e-6))) if values.max() > 0 else int(np.argmax(bad))
    return [
        Finding(
            message=message(float(values[k])),
            file=program.file,
            line=int(cuts.line[k]),
            place_mm=(float(cuts.start_mm[k, 0]), float(cuts.start_mm[k, 1])),
            remedy=remedy,
            warns=bool(tolerated > 1 and values.max() <= tolerated * most),
        )
    ]
