"""Whole programs against an integration of the same limits at one millisecond, and what the time goes into.

The reference knows nothing of the scan: it walks along the moves in steps of 1 ms, and at each step takes the fastest
speed from which every limit ahead can still be met by braking.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

from signgen.geometry.paths import CCW, CW
from signgen.program.blocks import CUTTING, ENTRY, RAPID, TRAVEL, Moves
from signgen.program.estimate import estimate, seconds_of, times_by_operation
from signgen.shop.load import load_shop
from signgen.shop.materials import Machine
from tests.asking import english, spec_of
from tests.dialects.jobs import example, programs_of

STEP_S = 1e-3
AHEAD_MM = 25.0
"""Nothing further ahead than this can make a router of 0.1 m/s brake: v^2 / 2 a = 0.1^2 / 0.3 = 17 mm."""


def stepped(moves: Moves, machine: Machine) -> float:
    """Seconds, by steps of 1 ms."""
    length, first, last, speed, accel = limits(moves, machine)
    corner = [0.0]
    for one, other, a, b in zip(last[:-1], first[1:], accel[:-1], accel[1:], strict=True):
        # The circle that touches both moves within the machine's deviation d of their corner has the radius
        # d s / (1 - s), s the sine of half the angle between them. Derived here.
        s = math.sqrt(max(0.0, (1 + float(one @ other)) / 2))
        corner.append(math.sqrt(min(a, b) * machine.corner_tolerance_mm * s / max(1 - s, 1e-9)))
    corner.append(0.0)
    ends = np.cumsum(length)
    i, at, v, t = 0, 0.0, 0.0, 0.0
    n = len(length)
    while i < n:
        allowed, braking, j = speed[i], 0.0, i
        while j < n and (j == i or ends[j - 1] - at < AHEAD_MM):
            braking += 2 * accel[j] * (ends[j] - (at if j == i else ends[j - 1]))
            ahead = min(corner[j + 1], speed[j], speed[j + 1] if j + 1 < n else 0.0)
            allowed = min(allowed, math.sqrt(max(0.0, ahead**2 + braking)))
            j += 1
        v = max(min(v + accel[i] * STEP_S, allowed), 0.05)
        at += v * STEP_S
        t += STEP_S
        while i < n and at >= ends[i] - 1e-9:
            i += 1
    return t


def limits(moves: Moves, machine: Machine):  # type: ignore[no-untyped-def]
    """Of each move of some length: length, direction at its start and its end, top speed and acceleration along it."""
    rows = []
    at = moves.ends_mm[0]
    for kind, end, centre, feed in zip(
        moves.kinds, moves.ends_mm, moves.centres_mm, moves.feeds_mm_per_min, strict=True
    ):
        rapid = kind == RAPID
        top = machine.rapid_mm_per_min if rapid else machine.top_feed_mm_per_min
        if kind in (CW, CCW):
            a, b = at[:2] - centre, end[:2] - centre
            turn = math.atan2(a[0] * b[1] - a[1] * b[0], a @ b) * (1 if kind == CCW else -1) % (2 * math.pi)
            radius, rise = math.hypot(*a), end[2] - at[2]
            turn = turn or 2 * math.pi
            flat = turn * radius
            whole = math.hypot(flat, rise)
            way = 1 if kind == CCW else -1
            tangent = [
                np.array([-s[1] * way / radius * flat, s[0] * way / radius * flat, rise]) / whole for s in (a, b)
            ]
            share = np.array([flat / whole, flat / whole, abs(rise) / whole])
            # Centripetal: the speed across the board at which v^2 / r is what the weaker axis can do.
            most = math.sqrt(min(machine.acceleration_mm_per_s2[:2]) * radius) / max(flat / whole, 1e-9)
        else:
            step = end - at
            whole = float(np.sqrt(step @ step))
            if whole <= 1e-9:
                continue
            tangent = [step / whole] * 2
            share, most = np.abs(step / whole), math.inf
        if whole > 1e-9:
            speed = min(
                most,
                math.inf if rapid else feed / 60,
                *(limit / 60 / part for limit, part in zip(top, share, strict=True) if part > 1e-9),
            )
            accel = min(a / part for a, part in zip(machine.acceleration_mm_per_s2, share, strict=True) if part > 1e-9)
            rows.append((whole, tangent[0], tangent[1], speed, accel))
        at = end
    return tuple(list(column) for column in zip(*rows, strict=True))


def agreed(moves: Moves, machine: Machine) -> None:
    x, y, z = moves.ends_mm[0].tolist()
    found = 60 * estimate(moves, machine, (x, y, z), 0.0).minutes
    assert found == pytest.approx(stepped(moves, machine), rel=0.01)


@pytest.mark.parametrize("machine", load_shop(None).machines, ids=lambda m: m.name)
def test_a_small_sign_takes_what_the_integration_says_within_one_per_cent(machine: Machine) -> None:
    spec = spec_of(text="7", size="70x60", machine=machine.name, hole_diameter=5, inset=8, holes="top-pair")
    programs = programs_of(spec)
    assert len(programs) == 3
    for program in programs:
        agreed(program.moves, machine)


@pytest.mark.sweep
@pytest.mark.parametrize("machine", load_shop(None).machines, ids=lambda m: m.name)
@pytest.mark.parametrize("path", sorted((Path(__file__).parents[2] / "examples").glob("*.toml")), ids=lambda p: p.stem)
def test_every_example_takes_what_the_integration_says_within_one_per_cent(path: Path, machine: Machine) -> None:
    for program in programs_of(example(path, machine=machine.name)):
        agreed(program.moves, machine)


def test_every_second_belongs_to_one_operation_and_one_purpose() -> None:
    spec = spec_of(hole_diameter=7)
    for program in programs_of(spec):
        x, y, z = program.moves.ends_mm[0].tolist()
        times = times_by_operation(program, spec.machine, (x, y, z))
        whole = seconds_of(program.moves, spec.machine, (x, y, z)).sum()
        assert sum(time.seconds for time in times) == pytest.approx(whole)
        assert [english(time.description) for time in times] == list(dict.fromkeys(map(english, program.operations)))
        assert min(time.cutting_s for time in times) > 0
        assert set(program.roles[program.moves.kinds == RAPID].tolist()) == {TRAVEL}
        assert set(program.roles[program.moves.kinds != RAPID].tolist()) <= {ENTRY, CUTTING}


def test_the_ways_down_of_the_edge_are_no_cutting_and_the_helix_of_a_bore_is() -> None:
    program = programs_of(spec_of(hole_diameter=7))[-1]
    falls = np.diff(program.moves.ends_mm[:, 2], prepend=program.moves.ends_mm[0, 2]) < 0
    feeding = program.moves.kinds != RAPID
    holes, edge = (program.owners == n for n in range(2))
    turning = np.isin(program.moves.kinds, (CW, CCW))
    assert set(program.roles[holes & falls & turning].tolist()) == {CUTTING}
    assert set(program.roles[edge & falls & feeding].tolist()) == {ENTRY}


def test_an_arc_is_no_faster_than_its_bend_allows() -> None:
    # v^2 / r = a: 250 mm/s2 on a circle of 1 mm are 15.8 mm/s, whatever the feed; 2 pi mm then take 0.4 s.
    machine = load_shop(None).machines[0]
    rounds = 40
    moves = Moves(
        kinds=np.full(rounds, CCW, np.uint8),
        ends_mm=np.tile([1.0, 0.0, 0.0], (rounds, 1)),
        centres_mm=np.zeros((rounds, 2)),
        feeds_mm_per_min=np.full(rounds, 2000.0),
    )
    seconds = seconds_of(moves, machine, (1.0, 0.0, 0.0))
    assert seconds[20] == pytest.approx(2 * math.pi / math.sqrt(250 * 1.0))
