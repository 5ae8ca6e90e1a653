"""Programs of whole signs, written in any dialect, and what a machine would do with them."""

from __future__ import annotations

from functools import cache

import numpy as np

from signgen.dialects import dialect_named
from signgen.pipeline import gather, read_sign
from signgen.program.blocks import ToolProgram
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.replay.motion import ARC_CCW, ARC_CW, RAPID, Motions
from signgen.replay.reader import read_program
from signgen.shop.manner import USUAL, Manner
from signgen.spec.sign_spec import SignSpec
from tests.asking import spec_of


@cache
def house_number(dialect: str = "plain") -> tuple[ToolProgram, ...]:
    """The README's house number with holes that a drill makes: a V-bit, a drill and an end mill."""
    return programs_of(spec_of(hole_diameter=5, dialect=dialect))


def programs_of(spec: SignSpec) -> tuple[ToolProgram, ...]:
    (side,) = sides_of(spec)
    return written(side).made


def example(path, **changes: object) -> SignSpec:  # type: ignore[no-untyped-def]
    return read_sign(gather(changes, path))


def motions_of(dialect: str, programs: tuple[ToolProgram, ...], manner: Manner = USUAL) -> list[Motions]:
    """Of each file, as the published rules read it. A changer's control knows the lengths of its cutters."""
    found = []
    for text in dialect_named(dialect).write(programs, manner):
        replay = read_program(text, tool_lengths_mm=dict.fromkeys(range(1, 10), 0.0))
        assert not replay.faults, replay.faults[:3]
        assert not replay.notes
        assert replay.ended
        assert not replay.spindle_on_at_end
        found.append(replay.motions)
    return found


def moving(motions: Motions) -> list[tuple[int, np.ndarray, np.ndarray, np.ndarray, float, float]]:
    """(kind, start, end, centre, feed, speed) of every motion of some length."""
    rows = zip(
        motions.kind.tolist(), motions.start_mm, motions.end_mm, motions.centre_mm,
        motions.feed_mm_per_min.tolist(), motions.spindle_rpm.tolist(), strict=True,
    )  # fmt: skip
    return [row for row in rows if row[0] in (ARC_CW, ARC_CCW) or np.abs(row[2] - row[1]).max() > 1e-9]


def first_difference(one: Motions, other: Motions, within_mm: float) -> str:
    """Where the second does something else than the first; '' when nowhere. Straight pieces may stand for an arc when
    neither their ends nor their middles leave it by more than `within_mm`. A coarser grid tilts short moves by a
    little, and their feeds follow the tilt."""
    here, there = moving(one), moving(other)
    k = 0
    for n, (kind, start, end, centre, feed, speed) in enumerate(here):
        if k >= len(there):
            return f"motion {n} is missing"
        other_kind, _, other_end, other_centre, other_feed, other_speed = there[k]
        short = kind not in (ARC_CW, ARC_CCW) and np.abs(end - start).max() <= within_mm
        if short and (other_kind != kind or np.abs(other_end - end).max() > within_mm):
            continue  # on a coarser grid it is no move at all
        tilted = (
            feed * (0.01 + 2 * within_mm / max(float(np.abs(end - start).max()), 1e-3)) if within_mm > 1e-6 else 0.0
        )
        if abs(other_feed - feed) > 0.3 + tilted or other_speed != speed:
            return f"motion {n}: feed {feed} became {other_feed}, speed {speed} became {other_speed}"
        if other_kind == kind:
            if np.abs(other_end - end).max() > within_mm:
                return f"motion {n}: end {end} became {other_end}"
            if kind in (ARC_CW, ARC_CCW) and np.abs(other_centre - centre).max() > within_mm:
                return f"motion {n}: centre {centre} became {other_centre}"
            k += 1
            continue
        if kind == RAPID or other_kind == RAPID:
            return f"motion {n}: kind {kind} became {other_kind}"
        k, said = _along(there, k, kind, start, end, centre, within_mm)
        if said:
            return f"motion {n}: {said}"
    return "" if k == len(there) else f"{len(there) - k} motions more"


def _along(there, k, kind, start, end, centre, within_mm):  # type: ignore[no-untyped-def]
    """The place after the straight pieces that stand for an arc."""
    if kind not in (ARC_CW, ARC_CCW):
        return k, f"kind {kind} became {there[k][0]}"
    radius = np.hypot(*(start[:2] - centre))
    turned = _turn(kind, start, end, centre)
    while k < len(there):
        _, _, at, *_ = there[k]
        if there[k][0] in (ARC_CW, ARC_CCW, RAPID):
            return k, "the straight pieces stop before the arc's end"
        for place in (at, (there[k][1] + at) / 2):
            if abs(np.hypot(*(place[:2] - centre)) - radius) > within_mm:
                return k, f"{place} leaves the arc"
            share = _turn(kind, start, place, centre) / turned
            if (
                abs(start[2] + share * (end[2] - start[2]) - place[2]) > within_mm
                and np.abs(at - end).max() > within_mm
            ):
                return k, f"{place} leaves the helix"
        k += 1
        if np.abs(at - end).max() <= within_mm:
            return k, ""
    return k, "the straight pieces stop before the arc's end"


def _turn(kind, start, end, centre):  # type: ignore[no-untyped-def]
    a, b = start[:2] - centre, end[:2] - centre
    angle = np.arctan2(a[0] * b[1] - a[1] * b[0], a @ b)
    if kind == ARC_CW:
        angle = -angle
    turn = np.mod(angle, 2 * np.pi)
    return 2 * np.pi if turn < 1e-12 else turn
