"""A file with several cutters, taken apart where the cutter changes, so that each part is judged with its cutter."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from signgen.replay.motion import Motions, Replay


def parts_of(replay: Replay, count: int) -> tuple[Replay, ...]:
    """`count` replays, one for each cutter that a file is meant to hold, in the order of use.

    The motions after the last change belong to the last part; parts that the file does not reach are empty. What is
    wrong with the text is the first part's. Source: check-values section 1.10, T2: M6 stops the spindle.
    """
    motions = replay.motions
    changes = np.cumsum(np.diff(motions.tool, prepend=motions.tool[:1]) != 0)
    part = np.minimum(changes, count - 1)
    return tuple(
        replace(
            replay,
            motions=_some(motions, np.flatnonzero(part == number)),
            faults=replay.faults if number == 0 else (),
            fault_count=replay.fault_count if number == 0 else 0,
            notes=replay.notes if number == 0 else (),
            spindle_on_at_end=replay.spindle_on_at_end and number == count - 1,
        )
        for number in range(count)
    )


def _some(motions: Motions, chosen: NDArray[np.intp]) -> Motions:
    return Motions(**{name: getattr(motions, name)[chosen] for name in motions.__slots__})
