"""Packed moves come out again as they went in."""

from __future__ import annotations

import base64
import zlib

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.playback.packing import CHANGE, PER_MM, PER_S, Packed, pack
from signgen.replay.motion import ARC_CCW, ARC_CW
from signgen.shop.stock import WorkZero
from tests.by_hand import NO_CENTRE, Step, replay_of

AT_SIGN = WorkZero(x_mm=0.0, y_mm=0.0, z_mm=0.0)
place = st.tuples(*[st.floats(-2000, 2000, allow_nan=False)] * 3)
steps = st.lists(
    st.tuples(st.integers(0, 3), place, st.tuples(*[st.floats(-2000, 2000, allow_nan=False)] * 2)),
    min_size=1, max_size=40,
)  # fmt: skip


def unpacked(packed: Packed) -> tuple[np.ndarray, list[np.ndarray]]:
    """Kinds, and the columns behind them: x, y, z, line, time of every move, i and j of every arc."""
    raw = zlib.decompress(base64.b64decode(packed.text))
    n, at = packed.moves, packed.moves
    columns = []
    for count in [n] * 5 + [packed.arcs] * 2:
        planes = np.frombuffer(raw[at : at + 4 * count], np.uint8).reshape(4, count).astype(np.int64)
        folded = sum(planes[k] << (8 * k) for k in range(4))
        columns.append(np.cumsum(np.where(folded % 2, -(folded // 2) - 1, folded // 2)))
        at += 4 * count
    assert at == len(raw)
    return np.frombuffer(raw[:n], np.uint8), columns


@settings(deadline=None, max_examples=60)
@given(programs=st.lists(steps, min_size=1, max_size=3), x=st.floats(-300, 300), top=st.floats(0, 40))
def test_places_and_times_come_back_within_half_a_step(programs: list[list[Step]], x: float, top: float) -> None:
    replays = [
        replay_of([(kind, end, centre if kind >= ARC_CW else NO_CENTRE) for kind, end, centre in rows]).motions
        for rows in programs
    ]
    seconds = [np.linspace(0.1, 1.0, len(motions)) for motions in replays]
    packed = pack(
        [(motions, each, 5.0) for motions, each in zip(replays, seconds, strict=True)],
        WorkZero(x_mm=x, y_mm=0.0, z_mm=top),
    )
    kinds, (px, _, pz, lines, times, i, _) = unpacked(packed)
    assert [int(kinds[first]) for first in packed.firsts] == [CHANGE] * len(replays)
    moved = np.delete(np.arange(packed.moves), packed.firsts)
    half = 0.5 + 1e-3
    ends = np.concatenate([motions.end_mm for motions in replays])
    assert np.abs(px[moved] - (ends[:, 0] + x) * PER_MM).max() <= half
    assert np.abs(pz[moved] - (ends[:, 2] + top) * PER_MM).max() <= half
    assert lines[moved].tolist() == np.concatenate([motions.line for motions in replays]).tolist()
    whole = sum(5.0 + each.sum() for each in seconds)
    assert abs(times[-1] - whole * PER_S) <= half
    arcs = [m for m in replays for _ in [0] if np.isin(m.kind, (ARC_CW, ARC_CCW)).any()]
    offsets = [m.centre_mm[m.kind >= ARC_CW, 0] - m.start_mm[m.kind >= ARC_CW, 0] for m in arcs]
    if offsets:
        assert np.abs(i - np.concatenate(offsets) * PER_MM).max() <= half


def test_a_change_of_cutter_lasts_as_long_as_the_spindle_takes() -> None:
    motions = replay_of([(0, (0.0, 0.0, 20.0), NO_CENTRE), (1, (10.0, 0.0, 20.0), NO_CENTRE)]).motions
    seconds = np.array([0.0, 2.0])
    packed = pack([(motions, seconds, 4.0), (motions, seconds, 3.0)], AT_SIGN)
    _, columns = unpacked(packed)
    assert packed.firsts == (0, 3)
    assert columns[4].tolist() == [4000, 4000, 6000, 9000, 9000, 11000]


def test_fifty_thousand_moves_take_little_room() -> None:
    """As measured before: 57,000 moves pack into 53 kB; these are of a long smooth groove."""
    turn = np.linspace(0, 400, 57_000)
    ends = np.stack([100 + turn * np.cos(turn) / 4, 100 + turn * np.sin(turn) / 4, 10 - np.abs(np.sin(turn))], axis=1)
    motions = replay_of([(1, tuple(end), NO_CENTRE) for end in ends.tolist()]).motions
    packed = pack([(motions, np.full(len(motions), 0.02), 4.0)], AT_SIGN)
    assert len(packed.text) < 400_000
