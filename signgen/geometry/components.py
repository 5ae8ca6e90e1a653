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
    # One column of nothing at the end of each row keeps a run from going on in the next; one cell before all of them.
    padded = np.zeros(ny * (nx + 1) + 1, dtype=np.bool_)
    padded[1:].reshape(ny, nx + 1)[:, :nx] = mask
    change = np.flatnonzero(padded[1:] != padded[:-1])
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
    root = _joined(len(start), below, above)
    _, piece = np.unique(root, return_inverse=True)
    row = start // width
    return Runs(start=start - row, stop=stop - row, piece=piece.astype(np.intp), count=int(piece.max()) + 1)


def _joined(count: int, one: IntArray, other: IntArray) -> IntArray:
    """(count,) the least index among those that pairs join, directly or through others."""
    root = np.arange(count, dtype=np.intp)
    while True:
        a, b = root[one], root[other]
        apart = a != b
        if not apart.any():
            return root
        # The least of each is its root: so every root that meets a lower one joins it, and all behind it follow.
        np.minimum.at(root, np.maximum(a, b)[apart], np.minimum(a, b)[apart])
        while (root[root] != root).any():
            root = root[root]
