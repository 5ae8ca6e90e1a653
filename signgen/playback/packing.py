"""Moves made small, for a page that plays them: whole numbers as differences, deflated, in letters."""

from __future__ import annotations

import base64
import zlib
from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.replay.motion import ARC_CCW, ARC_CW, FEED, FloatArray, Motions
from signgen.shop.stock import WorkZero

PER_MM, PER_S = 1000, 1000
"""Steps of the packed places and times: half a micrometre and half a millisecond off at the most."""
CHANGE = 4
"""Kind of the pseudo-move that stands before each program, while the cutter is changed and runs up to speed."""
DEFLATE_LEVEL = 6

IntArray = NDArray[np.int64]


class Packed(Struct, frozen=True, kw_only=True):
    """`text`: the moves in base64. `firsts`: index of each program's first move, its pseudo-move. `moves`, `arcs`:
    how many there are."""

    text: str
    firsts: tuple[int, ...]
    moves: int
    arcs: int


def pack(programs: Sequence[tuple[Motions, FloatArray, float]], zero: WorkZero) -> Packed:
    """Programs as (motions, seconds (n,) of each, seconds before the first), in the order in which they run.

    After inflation the columns follow each other: kind (a byte each), then X, Y and Z of the ends in sign coordinates
    (times PER_MM), line, time at the end (times PER_S), and for arcs only I and J from start to centre (times
    PER_MM). Numbers are differences to the one before, folded (0, -1, 1, -2 ... are 0, 1, 2, 3 ...), in four planes
    of bytes.
    """
    shift = np.array([zero.x_mm, zero.y_mm, zero.z_mm])
    kinds, ends, lines, times, centres, firsts = [], [], [], [], [], []
    count, now = 0, 0.0
    for motions, seconds, before in programs:
        firsts.append(count)
        kind = np.where((motions.plane == 17) | (motions.kind < ARC_CW), motions.kind, FEED).astype(np.uint8)
        arc = (kind == ARC_CW) | (kind == ARC_CCW)
        kinds += [np.array([CHANGE], np.uint8), kind]
        ends += [motions.start_mm[:1] + shift, motions.end_mm + shift]
        lines += [motions.line[:1], motions.line]
        times += [np.array([now + before]), now + before + np.cumsum(seconds)]
        centres.append(motions.centre_mm[arc] - motions.start_mm[arc, :2])
        count += 1 + len(motions)
        now = float(times[-1][-1]) if len(motions) else now + before
    places = _whole(np.concatenate(ends), PER_MM)
    offsets = _whole(np.concatenate(centres), PER_MM)
    columns = [*places.T, np.concatenate(lines), _whole(np.concatenate(times), PER_S), *offsets.T]
    raw = np.concatenate(kinds).tobytes() + b"".join(_planes(column) for column in columns)
    text = base64.b64encode(zlib.compress(raw, DEFLATE_LEVEL)).decode("ascii")
    return Packed(text=text, firsts=tuple(firsts), moves=count, arcs=len(offsets))


def _whole(values: FloatArray, per_unit: int) -> IntArray:
    return np.rint(values * per_unit).astype(np.int64)


def _planes(values: IntArray) -> bytes:
    """Folded differences, all first bytes, then all second bytes and so on: the upper planes are mostly zeros."""
    step = np.diff(values, prepend=0)
    folded = ((step << 1) ^ (step >> 63)).astype("<u4")
    return folded.view(np.uint8).reshape(-1, 4).T.tobytes()
