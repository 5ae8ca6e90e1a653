"""Connected pieces of a mask."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.distance import IntArray


class Runs(Struct, frozen=True, kw_only=True):
    """A mask's cells in runs along its rows, with the piece that each belongs to: start, stop (k,) flat indices (stop
    is the one after the last cell) and piece (k,) numbered 0 to count - 1 in the order of their first cells."""

    start: IntArray
    stop: IntArray
    piece: IntArray
    count: int

    def sizes(self) -> IntArray:
        """(count,) cells of each piece."""
        return np.bincount(self.piece, weights=self.stop - self.start, minlength=self.count).astype(np.intp)


def connected(mask: NDArray[np.bool_]) -> Runs:
    """The pieces of a (ny, nx) mask whose cells touch by their sides."""
    ny, nx = mask.shape
    padded = np.zeros((ny, nx + 1), dtype=np.bool_)
    padded[:, :nx] = mask
    # One column of nothing at the end of each row keeps a run from going on in the next.
    change = np.flatnonzero(np.diff(padded.ravel().view(np.int8), prepend=np.int8(0)))
    start, stop = change[::2], change[1::2]
    if not len(start):
        return Runs(start=start, stop=stop, piece=np.zeros(0, np.intp), count=0)
    width = nx + 1
    # Runs are sorted, so those of the row above that meet a run are next to each other.
    first = np.searchsorted(stop, start - width, side="right")
    last = np.searchsorted(start, stop - width, side="left")
    meets = np.maximum(last - first, 0)
    below = np.repeat(np.arange(len(start)), meets)
    above = first[below] + np.arange(len(below)) - (np.cumsum(meets) - meets)[below]
    root = _joined(len(start), below.tolist(), above.tolist())
    _, piece = np.unique(root, return_inverse=True)
    row = start // width
    return Runs(start=start - row, stop=stop - row, piece=piece.astype(np.intp), count=int(piece.max()) + 1)


def _joined(count: int, one: list[int], other: list[int]) -> IntArray:
    """(count,) the least index among those that pairs join, directly or through others."""
    parent = list(range(count))

    def top(k: int) -> int:
        while parent[k] != k:
            parent[k] = parent[parent[k]]
            k = parent[k]
        return k

    for a, b in zip(one, other, strict=True):
        a, b = top(a), top(b)
        if a != b:
            parent[max(a, b)] = min(a, b)
    return np.array([top(k) for k in range(count)], dtype=np.intp)
