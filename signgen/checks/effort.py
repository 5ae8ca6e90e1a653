"""How much programs ask of whoever judges them, before anything is simulated: what would take minutes, or more memory
than a small computer has, is refused.

The three bounds were measured on two cores: at each of them a check takes some seconds and stays below a gigabyte.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from signgen.errors import AskError
from signgen.messages import Message, Num, Sentence
from signgen.replay.measure import arc_frame
from signgen.replay.motion import RAPID, Motions, Replay
from signgen.replay.swept import Profile
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

MOST_MOTIONS = 250_000
MOST_CELLS_ALONG = 15_000_000
"""Length of all feeds, in cells: two days of cutting where cells are 0.1 mm."""
MOST_CELLS_UNDER = 3_000_000_000
"""Cells that lie under the cutter, each as often as it comes by."""


def must_be_bearable(
    files: Sequence[str],
    replays: Sequence[Replay],
    tools: Sequence[Tool],
    stock: Stock,
    zero: WorkZero,
    cell_mm: float,
) -> None:
    """Raises: AskError with the program that is too much."""
    across = 2 * (stock.width_mm + stock.height_mm)
    motions = along = under = 0.0
    for file, replay, tool in zip(files, replays, tools, strict=True):
        lengths = np.minimum(np.nan_to_num(_lengths_mm(replay.motions), nan=across, posinf=across), across)
        is_feed = replay.motions.kind != RAPID
        feeds, wide = lengths[is_feed], _widths_mm(replay.motions, tool, stock.thickness_mm - zero.z_mm)[is_feed]
        motions += len(lengths)
        along += float(feeds.sum()) / cell_mm
        under += float(((feeds + wide) * wide).sum()) / cell_mm**2
        if motions > MOST_MOTIONS:
            raise _too_much(file, Message("effort.motions", count=Num(motions), most=Num(MOST_MOTIONS)))
        if along > MOST_CELLS_ALONG or under > MOST_CELLS_UNDER:
            most = MOST_CELLS_ALONG * cell_mm / 1000
            raise _too_much(file, Message("effort.length", metres=Num(round(along * cell_mm / 1000)), most=Num(most)))


def _too_much(file: str, what: Sentence) -> AskError:
    error = AskError.at(file, what, Message("effort.in_parts"))
    assert isinstance(error, AskError)
    return error


def _widths_mm(motions: Motions, tool: Tool, top_mm: float) -> NDArray[np.float64]:
    """(n,) how wide the cutter is, at most, where the board's top crosses it: a V-bit goes in by its tip only."""
    low = np.minimum(motions.start_mm[:, 2], motions.end_mm[:, 2])
    return 2 * Profile.of(tool).reach_mm(top_mm - np.nan_to_num(low, nan=-np.inf))


def _lengths_mm(motions: Motions) -> NDArray[np.float64]:
    """Of each motion along its way; of an arc round its middle."""
    with np.errstate(over="ignore", invalid="ignore"):
        lengths: NDArray[np.float64] = np.linalg.norm(motions.end_mm - motions.start_mm, axis=1)
        frame = arc_frame(motions)
        lengths[frame.index] = np.hypot(frame.radius_mm * np.abs(frame.sweep_rad), frame.rise_mm)
    return lengths
