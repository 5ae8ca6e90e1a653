"""A file with several cutters, taken apart where the cutter changes, so that each part is judged with its cutter."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.replay.motion import RAPID, Event, Motions, Replay


def parts_of(replay: Replay, count: int) -> tuple[Replay, ...]:
    """`count` replays, one for each cutter that a file is meant to hold, in the order of use.

    The motions after the last change belong to the last part; parts that the file does not reach are empty. What is
    wrong with the text is the first part's. Source: NIST IR 6556, 3.6.3: M6 stops the spindle.
    """
    motions = replay.motions
    stretch = _stretch_of(motions)
    part = np.minimum(stretch, count - 1)
    happens = [min(own, count - 1) for own in _stretches_of(replay.events, stretch)]
    return tuple(
        replace(
            replay,
            motions=_some(motions, np.flatnonzero(part == number)),
            faults=replay.faults if number == 0 else (),
            fault_count=replay.fault_count if number == 0 else 0,
            bad_end=replay.bad_end and number == 0,
            notes=replay.notes if number == 0 else (),
            events=tuple(event for event, own in zip(replay.events, happens, strict=True) if own == number),
            spindle_on_at_end=replay.spindle_on_at_end and number == count - 1,
        )
        for number in range(count)
    )


def cutters_in_turn(replay: Replay) -> tuple[int, ...]:
    """The T numbers of the stretches between changes of cutter, in order; (0,) when there is no change."""
    motions = replay.motions
    if not len(motions):
        return (0,)
    first = np.flatnonzero(np.diff(_stretch_of(motions), prepend=-1))
    # What goes before the first change, if that cuts nothing, is part of the stretch after it.
    last = np.append(first[1:], len(motions)) - 1
    return tuple(int(number) for number in motions.tool[last])


def _stretch_of(motions: Motions) -> NDArray[np.intp]:
    """(n,) the stretch that each motion is in, from 0. Rapids before the first change make no stretch of their own."""
    changed = np.diff(motions.tool, prepend=motions.tool[:1]) != 0
    first = int(np.argmax(changed)) if changed.any() else 0
    if first and (motions.kind[:first] == RAPID).all() and motions.tool[0] == 0:
        changed[first] = False
    return np.cumsum(changed)


def _stretches_of(events: Sequence[Event], stretch: NDArray[np.intp]) -> list[int]:
    """The stretch that each event is in. Between the last motion of one and the first of the next, what comes before
    the change of cutter belongs to the one, the change and what follows it to the other."""
    found: list[int] = []
    changed = -1
    for event in events:
        if event.kind == "change":
            changed = event.motion
        before = int(stretch[event.motion - 1]) if event.motion else 0
        after = int(stretch[event.motion]) if event.motion < len(stretch) else before
        found.append(after if changed == event.motion else before)
    return found


def _some(motions: Motions, chosen: NDArray[np.intp]) -> Motions:
    return Motions(**{name: getattr(motions, name)[chosen] for name in motions.__struct_fields__})
