"""How long a program takes on a machine that must speed up and slow down."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from signgen.geometry.paths import CCW, CW, FloatArray
from signgen.messages import Sentence
from signgen.program.blocks import CUTTING, ENTRY, RAPID, TRAVEL, Moves, ToolProgram
from signgen.shop.materials import Machine

TINY = 1e-9


class Estimate(Struct, frozen=True, kw_only=True):
    """Minutes in all, without the operator's time; lengths of cutting and of rapid travel."""

    minutes: float
    cut_length_mm: float
    travel_length_mm: float


def estimate(moves: Moves, machine: Machine, start_mm: tuple[float, float, float], dwell_s: float) -> Estimate:
    """Time by the limits of each axis, with look-ahead.

    Corner speed: a circle that touches both moves and passes the corner at the machine's corner tolerance d is run at
    v^2 = a d sin(t/2) / (1 - sin(t/2)), t the inner angle. On an arc v^2 = a r, the weaker axis' acceleration turning
    it. Speeds that acceleration can reach: with S the running sum of 2 a L, backwards V^2 = reverse running minimum of
    (V^2 + S) - S, forwards the same with the sign turned.
    Source: equations of motion at constant acceleration; the scan is derived here.
    """
    seconds, lengths = _seconds_and_lengths(moves, machine, start_mm)
    rapid = moves.kinds == RAPID
    return Estimate(
        minutes=(float(seconds.sum()) + dwell_s) / 60,
        cut_length_mm=float(lengths[~rapid].sum()),
        travel_length_mm=float(lengths[rapid].sum()),
    )


class OperationTime(Struct, frozen=True, kw_only=True):
    """What one operation takes of a program's time: cutting, getting down into the work, and travelling to it."""

    description: Sentence
    cutting_s: float
    entry_s: float
    travel_s: float

    @property
    def seconds(self) -> float:
        return self.cutting_s + self.entry_s + self.travel_s


def times_by_operation(
    program: ToolProgram, machine: Machine, start_mm: tuple[float, float, float]
) -> tuple[OperationTime, ...]:
    """One for each operation, in the order in which they first do something; dwells belong to none."""
    seconds = seconds_of(program.moves, machine, start_mm)
    names = np.array(program.operations, dtype=object)[program.owners]
    return tuple(
        OperationTime(
            description=name,
            cutting_s=float(seconds[(names == name) & (program.roles == CUTTING)].sum()),
            entry_s=float(seconds[(names == name) & (program.roles == ENTRY)].sum()),
            travel_s=float(seconds[(names == name) & (program.roles == TRAVEL)].sum()),
        )
        for name in dict.fromkeys(program.operations)
    )


def seconds_of(moves: Moves, machine: Machine, start_mm: tuple[float, float, float]) -> FloatArray:
    """(n,) seconds that each move takes; `estimate` says how that is found."""
    return _seconds_and_lengths(moves, machine, start_mm)[0]


def _seconds_and_lengths(
    moves: Moves, machine: Machine, start_mm: tuple[float, float, float]
) -> tuple[FloatArray, FloatArray]:
    every, first, last = _lengths_and_directions(moves, start_mm)
    keep = every > TINY
    lengths, first, last = every[keep], first[keep], last[keep]
    rapid = (moves.kinds == RAPID)[keep]
    speed = np.where(rapid, np.inf, moves.feeds_mm_per_min[keep] / 60)
    accel = np.full(len(lengths), np.inf)
    arc = ((moves.kinds == CW) | (moves.kinds == CCW))[keep]
    level = np.hypot(first[:, 0], first[:, 1])
    radius = np.hypot(*(moves.ends_mm[keep, :2] - moves.centres_mm[keep]).T)
    turning = np.sqrt(min(machine.acceleration_mm_per_s2[:2]) * np.nan_to_num(radius)) / np.maximum(level, TINY)
    speed = np.where(arc, np.minimum(speed, turning), speed)
    for axis in range(3):
        share = np.maximum(np.abs(first[:, axis]), np.abs(last[:, axis]))
        if axis < 2:
            share = np.where(arc, level, share)  # an arc may go along either axis somewhere
        limit = np.where(rapid, machine.rapid_mm_per_min[axis], machine.top_feed_mm_per_min[axis]) / 60
        speed = np.minimum(speed, limit / np.maximum(share, TINY))
        accel = np.minimum(accel, machine.acceleration_mm_per_s2[axis] / np.maximum(share, TINY))

    cosine = np.einsum("ij,ij->i", last[:-1], first[1:])
    inner = np.sqrt(np.clip((1 + cosine) / 2, 0, 1))  # sin(t/2) of the inner angle t: cos t = -cosine
    with np.errstate(divide="ignore"):
        corner = np.minimum(accel[:-1], accel[1:]) * machine.corner_tolerance_mm * inner / np.maximum(1 - inner, TINY)
    node = np.zeros(len(lengths) + 1)
    node[1:-1] = np.minimum(corner, np.minimum(speed[:-1], speed[1:]) ** 2)

    gained = np.concatenate([[0.0], np.cumsum(2 * accel * lengths)])
    node = np.minimum.accumulate((node + gained)[::-1])[::-1] - gained
    node = np.minimum.accumulate(node - gained) + gained
    enter, leave = np.sqrt(np.maximum(node[:-1], 0)), np.sqrt(np.maximum(node[1:], 0))
    peak = np.minimum(speed, np.sqrt((2 * accel * lengths + enter**2 + leave**2) / 2))
    ramps = (2 * peak - enter - leave) / accel
    cruise = (lengths - (2 * peak**2 - enter**2 - leave**2) / (2 * accel)) / peak
    seconds = np.zeros(len(moves))
    seconds[keep] = ramps + np.maximum(cruise, 0)
    return seconds, every


def _lengths_and_directions(
    moves: Moves, start_mm: tuple[float, float, float]
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Lengths (n,) and unit directions at the start and the end of each move (n, 3)."""
    begin = np.vstack([np.array(start_mm), moves.ends_mm[:-1]])
    step = moves.ends_mm - begin
    lengths = np.sqrt((step**2).sum(axis=1))
    first = step / np.maximum(lengths, TINY)[:, None]
    last = first.copy()
    arc = (moves.kinds == CW) | (moves.kinds == CCW)
    if np.any(arc):
        sign = np.where(moves.kinds[arc] == CCW, 1.0, -1.0)
        out, home = begin[arc, :2] - moves.centres_mm[arc], moves.ends_mm[arc, :2] - moves.centres_mm[arc]
        turn = np.arctan2(out[:, 0] * home[:, 1] - out[:, 1] * home[:, 0], np.einsum("ij,ij->i", out, home)) * sign
        turn = np.where(np.all(out == home, axis=1), 2 * np.pi, np.mod(turn, 2 * np.pi))
        flat = turn * np.hypot(*out.T)
        lengths[arc] = np.hypot(flat, step[arc, 2])
        for direction, spoke in ((first, out), (last, home)):
            across = np.stack([-spoke[:, 1], spoke[:, 0]], axis=1) * sign[:, None] / np.hypot(*spoke.T)[:, None]
            direction[arc, :2] = across * (flat / lengths[arc])[:, None]
            direction[arc, 2] = step[arc, 2] / lengths[arc]
    return lengths, first, last
