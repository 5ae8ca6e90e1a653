"""Motions as they are read, kept in arrays that grow by chunks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from signgen.replay.motion import FloatArray, Motions

ROW = np.dtype(
    [
        ("kind", "u1"),
        ("plane", "u1"),
        ("tool", "i4"),
        ("line", "i8"),
        ("start", "f8", 3),
        ("end", "f8", 3),
        ("centre", "f8", 2),
        ("feed", "f8"),
        ("rpm", "f8"),
        ("dwelt", "f8"),
    ]
)
_CHUNK = 8192
Row = tuple[int, int, int, int, Sequence[float], Sequence[float], Sequence[float], float, float, float]


class Recorder:
    """Collects rows one by one and blocks of rows, in the order of execution. NaN stands for a coordinate not
    known yet."""

    __slots__ = ("_blocks", "_rows", "count")

    def __init__(self) -> None:
        self._blocks: list[NDArray[np.void]] = []
        self._rows: list[Row] = []
        self.count = 0

    def add(self, row: Row) -> None:
        self._rows.append(row)
        self.count += 1
        if len(self._rows) >= _CHUNK:
            self._flush()

    def add_block(self, rows: NDArray[np.void]) -> None:
        self._flush()
        self._blocks.append(rows)
        self.count += len(rows)

    def _flush(self) -> None:
        if self._rows:
            self._blocks.append(np.array(self._rows, dtype=ROW))
            self._rows.clear()

    def motions(self) -> Motions:
        """Everything recorded, unknown coordinates filled in from the first known one after them (else
        before, else 0)."""
        self._flush()
        blocks = self._blocks or [np.empty(0, ROW)]

        def gathered(name: str) -> NDArray[np.generic]:
            return np.concatenate([block[name] for block in blocks])

        start: FloatArray = gathered("start").astype(np.float64, copy=False)
        end: FloatArray = gathered("end").astype(np.float64, copy=False)
        known = ~np.isnan(start)
        for axis in np.nonzero(np.isnan(start).any(axis=0) | np.isnan(end).any(axis=0))[0]:
            _fill(start[:, axis], end[:, axis])
        return Motions(
            kind=gathered("kind").astype(np.uint8, copy=False),
            start_mm=start,
            end_mm=end,
            centre_mm=gathered("centre").astype(np.float64, copy=False),
            plane=gathered("plane").astype(np.uint8, copy=False),
            feed_mm_per_min=gathered("feed").astype(np.float64, copy=False),
            spindle_rpm=gathered("rpm").astype(np.float64, copy=False),
            spindle_s=gathered("dwelt").astype(np.float64, copy=False),
            line=gathered("line").astype(np.int64, copy=False),
            tool=gathered("tool").astype(np.int32, copy=False),
            start_known=known,
        )


def _fill(start: FloatArray, end: FloatArray) -> None:
    """Replaces NaN in place by the next number in the order start 0, end 0, start 1, ..., or the last one, or
    0."""
    track = np.column_stack((start, end)).ravel()
    valid = ~np.isnan(track)
    if not valid.any():
        track[:] = 0.0
    else:
        nowhere = len(track)
        following = np.minimum.accumulate(np.where(valid, np.arange(nowhere), nowhere)[::-1])[::-1]
        last = int(np.nonzero(valid)[0][-1])
        track = track[np.where(following < nowhere, following, last)]
    start[:], end[:] = track[0::2], track[1::2]
