"""How long each motion of a program takes, for playback in time."""

from __future__ import annotations

import numpy as np

from signgen.geometry.paths import CCW, CW, LINE, FloatArray
from signgen.program.blocks import RAPID, Moves
from signgen.program.estimate import seconds_of
from signgen.replay.motion import ARC_CW, Motions
from signgen.shop.materials import Machine

UNKNOWN_FEED_MM_PER_MIN = 600.0
"""Where a program gives no feed: it is played all the same, and the checks say what is missing."""
KINDS = np.array([RAPID, LINE, CW, CCW], np.uint8)
"""A replay's kinds as a program's."""


def motion_seconds(motions: Motions, machine: Machine) -> FloatArray:
    """(n,) seconds of each motion on a machine that must speed up and slow down. An arc in an upright plane counts as
    the straight way between its ends."""
    kinds = np.where((motions.plane == 17) | (motions.kind < ARC_CW), KINDS[motions.kind], LINE).astype(np.uint8)
    flat = motions.plane == 17
    moves = Moves(
        kinds=kinds,
        ends_mm=motions.end_mm,
        centres_mm=np.where(flat[:, None], motions.centre_mm, np.nan),
        feeds_mm_per_min=np.where(motions.feed_mm_per_min > 0, motions.feed_mm_per_min, UNKNOWN_FEED_MM_PER_MIN),
    )
    return seconds_of(moves, machine, tuple(motions.start_mm[0].tolist()))
