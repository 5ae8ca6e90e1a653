"""What the tests of this folder build from: motions, cutters, boards, and comparison of two readings."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from signgen.replay.motion import FEED, Motions, Replay
from signgen.replay.reader import read_program
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool, ToolKind

AT_ZERO = WorkZero(x_mm=0.0, y_mm=0.0, z_mm=0.0)


def a_tool(kind: ToolKind, diameter_mm: float, angle_deg: float | None = None, tip_mm: float = 0.0) -> Tool:
    return Tool(
        name=f"{kind} {diameter_mm}",
        kind=kind,
        diameter_mm=diameter_mm,
        shank_mm=6.0,
        cutting_length_mm=25.0,
        flutes=2,
        angle_deg=angle_deg,
        tip_mm=tip_mm,
        stickout_mm=35.0,
        source="made up for a test",
    )


def a_board(width_mm: float, height_mm: float, thickness_mm: float = 10.0) -> Stock:
    return Stock(width_mm=width_mm, height_mm=height_mm, thickness_mm=thickness_mm, sign_x_mm=0.0, sign_y_mm=0.0)


def straight_motions(
    points: Sequence[Sequence[float]] | NDArray[np.float64], kind: int | Sequence[int] = FEED
) -> Motions:
    """Straight motions through the points; `kind` one for all, or one each."""
    track = np.array(points, dtype=np.float64)
    n = len(track) - 1
    return Motions(
        kind=np.broadcast_to(np.array(kind, np.uint8), n).copy(),
        start_mm=track[:-1].copy(),
        end_mm=track[1:].copy(),
        centre_mm=np.full((n, 2), np.nan),
        plane=np.full(n, 17, np.uint8),
        feed_mm_per_min=np.full(n, 1000.0),
        spindle_rpm=np.full(n, 10000.0),
        spindle_s=np.full(n, 5.0),
        line=np.arange(1, n + 1),
        tool=np.zeros(n, np.int32),
        start_known=np.ones((n, 3), bool),
    )


def motions_of(*lines: str, start_mm: tuple[float, float, float] = (0.0, 0.0, 0.0)) -> Motions:
    """Motions of a faultless program: feed rate and spindle are set before the lines, the end after them."""
    replay = read_program("\n".join(("F100 S1000 M3", *lines, "M2")), start_mm=start_mm)
    assert replay.faults == ()
    return replay.motions


def steps(motions: Motions, digits: int = 4) -> list[tuple[Any, ...]]:
    """(kind, x, y, z) of every motion's end."""
    ends = np.round(motions.end_mm, digits) + 0.0
    return [(int(kind), *end) for kind, end in zip(motions.kind, ends.tolist(), strict=True)]


def assert_same(one: Replay, other: Replay) -> None:
    """Both readings agree in everything, to the last bit."""
    for name in Motions.__slots__:
        np.testing.assert_array_equal(getattr(one.motions, name), getattr(other.motions, name), err_msg=name)
    for name in Replay.__slots__:
        if name != "motions":
            assert getattr(one, name) == getattr(other, name), name
