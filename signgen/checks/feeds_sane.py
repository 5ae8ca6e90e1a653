"""C106: feeds stay within the machine and the cutter."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from signgen.checks.bites import Bites
from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.way import Way
from signgen.geometry.distance import FloatArray
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
        feeds: list[str] = []
        for program, cuts, bites in zip(case.programs, case.cuts, case.bites, strict=True):
            findings += _findings(case, program, cuts, bites)
            used = program.replay.motions.feed_mm_per_min[cuts.motion]
            if len(used):
                feeds.append(f"{used.min():.0f} to {used.max():.0f} in {program.file}")
        top = " x ".join(f"{feed:g}" for feed in case.machine.top_feed_mm_per_min)
        return verdict(self, findings, f"mm/min: {', '.join(feeds) or 'none'}; the machine's axes reach {top}")


def _findings(case: Case, program: ProgramUnderTest, cuts: Way, bites: Bites) -> list[Finding]:
    """The worst move of each kind of fault."""
    feed = program.replay.motions.feed_mm_per_min[cuts.motion]
    step = cuts.end_mm - cuts.start_mm
    length = np.sqrt(np.einsum("ij,ij->i", step, step))
    moving = length > 1e-9
    direction = step / np.where(moving, length, 1.0)[:, None]
    axis_feed = np.abs(direction) * feed[:, None]
    none = np.where(moving, -feed, -1.0)
    found = _worst(program, cuts, none, -1e-9, "A feed move has no feed.", "Give it an F word.")
    for axis, most in enumerate(case.machine.top_feed_mm_per_min):
        found += _worst(
            program,
            cuts,
            axis_feed[:, axis],
            most * SLACK,
            f"The move asks for {{value:.0f}} mm/min along {'XYZ'[axis]}; the machine reaches {most:g}.",
            "Lower the feed.",
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
            f"Each tooth would take {{value:.3f}} mm; {most:.3f} is the most for this cutter in {case.material.label}.",
            "Lower the feed or raise the speed.",
            tolerated,
        )
    sinking, most = driven_down(case, program, cuts)
    found += _worst(
        program,
        cuts,
        np.where(sinking & ~in_air(bites, len(cuts)), feed, 0.0),
        most * SLACK,
        f"The cutter is driven straight down at {{value:.0f}} mm/min; {most:.0f} is the most.",
        "Lower the feed of this plunge.",
        tolerated,
    )
    return found


def _slowest(case: Case, program: ProgramUnderTest, cuts: Way, direction: FloatArray) -> list[Finding]:
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
            message=f"The cutter creeps at {feed[k]:.0f} mm/min through the wood; {usual[k]:.0f} is usual for this "
            f"move, and under {LEAST_FEED_RATIO * usual[k]:.0f} it rubs and burns.",
            file=program.file,
            line=int(cuts.line[k]),
            place_mm=(float(cuts.start_mm[k, 0]), float(cuts.start_mm[k, 1])),
            remedy="Raise the feed.",
            warns=not case.drawn,
        )
    ]


def driven_down(case: Case, program: ProgramUnderTest, cuts: Way) -> tuple[NDArray[np.bool_], float]:
    """(k,) which pieces go straight down in the board faster than any cutter is driven into wood; and that feed."""
    most = MOST_PLUNGE_RATIO * cutting_data(program.tool, case.material, case.machine).plunge_mm_per_min
    feed = program.replay.motions.feed_mm_per_min[cuts.motion]
    step = cuts.end_mm - cuts.start_mm
    steep = -step[:, 2] > np.sin(np.radians(STEEP_DEG)) * np.sqrt(np.einsum("ij,ij->i", step, step))
    return steep & (cuts.low_z_mm < case.stock.thickness_mm - 1e-6) & (feed > most * SLACK), most


def in_air(bites: Bites, count: int) -> NDArray[np.bool_]:
    """(count,) the pieces at whose places the tip was as deep before. Whether the flanks meet nothing either, C102
    tries: such a way down is a rapid to it."""
    deepest = np.zeros(count)
    np.maximum.at(deepest, bites.piece, bites.depth_mm)
    return deepest <= 0


def _worst(
    program: ProgramUnderTest,
    cuts: Way,
    values: FloatArray,
    most: float,
    message: str,
    remedy: str,
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
            message=message.format(value=values[k]),
            file=program.file,
            line=int(cuts.line[k]),
            place_mm=(float(cuts.start_mm[k, 0]), float(cuts.start_mm[k, 1])),
            remedy=remedy,
            warns=bool(tolerated > 1 and values.max() <= tolerated * most),
        )
    ]
