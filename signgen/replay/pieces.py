"""Motions cut into short straight pieces, ready to be swept over a grid."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.replay.measure import arc_frame
from signgen.replay.motion import FEED, RAPID, FloatArray, Motions

CHORD_MM = 0.002
"""How far a chord may stray from its arc: a twentieth of what the checks see."""
MOST_CHORDS = 4096
"""Of one arc; reached at a radius of some 7 m, where it keeps a strange program from filling the memory."""
G17 = 17
_MOTIONS_AT_ONCE = 16384
_WEIGHTS = np.array([1.0, 2**0.5, 3**0.5, 5**0.5])
"""Of the two places that make a way: without a common measure, so that different ways seldom get one number."""


class Pieces(Struct, frozen=True, kw_only=True):
    """n straight moves of a cutter's tip: start_mm, end_mm (n, 3), and owner (n,), the motion that each is
    part of."""

    start_mm: FloatArray
    end_mm: FloatArray
    owner: NDArray[np.intp]

    def __len__(self) -> int:
        return len(self.owner)

    def taken(self, which: NDArray[np.bool_] | NDArray[np.intp]) -> Pieces:
        """Some of them."""
        return Pieces(start_mm=self.start_mm[which], end_mm=self.end_mm[which], owner=self.owner[which])


def straight_pieces(motions: Motions, chosen: NDArray[np.intp], offset_mm: FloatArray) -> Iterator[Pieces]:
    """The chosen motions, moved by `offset_mm` (3,), as straight pieces, some thousand motions at a time;
    arcs become chords that stray by CHORD_MM at most."""
    for at in range(0, len(chosen), _MOTIONS_AT_ONCE):
        part = chosen[at : at + _MOTIONS_AT_ONCE]
        pieces = chorded(motions, part, CHORD_MM)
        yield Pieces(start_mm=pieces.start_mm + offset_mm, end_mm=pieces.end_mm + offset_mm, owner=pieces.owner)


def chorded(motions: Motions, chosen: NDArray[np.intp], chord_mm: float, *, upright_only: bool = False) -> Pieces:
    """The chosen motions as straight pieces in their order; arcs become chords that stray by `chord_mm` at most, or
    only those do that do not lie in the plane of G17.

    Source: the sagitta R (1 - cos h) of half a chord's angle h; h = 2 asin sqrt(e / 2 R) keeps its digits when small.
    """
    round_ones = (motions.kind[chosen] != FEED) & (motions.kind[chosen] != RAPID)
    if upright_only:
        round_ones &= motions.plane[chosen] != G17
    at = np.flatnonzero(round_ones)
    if not len(at):
        return Pieces(start_mm=motions.start_mm[chosen], end_mm=motions.end_mm[chosen], owner=chosen)
    frame = arc_frame(motions, chosen[at])
    half = 2 * np.arcsin(np.sqrt(np.clip(chord_mm / np.maximum(2 * frame.radius_mm, chord_mm), 0, 0.5)))
    turned = np.abs(frame.sweep_rad)
    # Three at least: two chords of a full circle no wider than the chord error would be one line walked twice.
    chords = np.clip(np.ceil(turned / (2 * half)), np.where(turned > 4, 3, 1), MOST_CHORDS)
    count = np.ones(len(chosen), np.intp)
    count[at] = chords.astype(np.intp)
    which = np.repeat(np.arange(len(chosen)), count)
    number = np.arange(len(which)) - (np.cumsum(count) - count)[which]
    start, end = motions.start_mm[chosen[which]], motions.end_mm[chosen[which]]
    later = np.flatnonzero(number > 0)
    arc_of = np.zeros(len(chosen), np.intp)
    arc_of[at] = np.arange(len(at))
    joints = frame.points_mm(arc_of[which[later]], number[later] / count[which[later]])
    start[later] = joints
    end[later - 1] = joints
    return Pieces(start_mm=start, end_mm=end, owner=chosen[which])


def lowest(pieces: Pieces) -> Pieces:
    """The pieces without those that lie over another of exactly the same way across the board, nowhere lower: they
    cut nothing that it does not cut. A helix and an edge are walked again and again, a little deeper each time."""
    way = np.hstack([pieces.start_mm[:, :2], pieces.end_mm[:, :2]])
    z0, z1 = pieces.start_mm[:, 2], pieces.end_mm[:, 2]
    # One number for each way, so that equal ones come together; chance neighbours are told apart below.
    order = np.lexsort((z0 + z1, (way * _WEIGHTS).sum(axis=1)))
    way, z0, z1 = way[order], z0[order], z1[order]
    begins = np.ones(len(order), bool)
    begins[1:] = (way[1:] != way[:-1]).any(axis=1)
    low = np.maximum.accumulate(np.where(begins, np.arange(len(order)), 0))
    shadowed = ~begins & (z0 >= z0[low]) & (z1 >= z1[low])
    return pieces.taken(np.sort(order[~shadowed])) if shadowed.any() else pieces


def clipped(pieces: Pieces, low: FloatArray, high: FloatArray) -> Pieces:
    """The parts of the pieces that lie in a rectangle: low, high (n, 2) or (2,) mm; the others are gone."""
    start, way = pieces.start_mm, pieces.end_mm - pieces.start_mm
    enter, leave = np.zeros(len(pieces)), np.ones(len(pieces))
    outside = np.zeros(len(pieces), bool)
    low, high = np.broadcast_to(low, (len(pieces), 2)), np.broadcast_to(high, (len(pieces), 2))
    for axis in range(2):
        still = np.abs(way[:, axis]) < 1e-12
        outside |= still & ((start[:, axis] < low[:, axis]) | (start[:, axis] > high[:, axis]))
        step = np.where(still, 1.0, way[:, axis])
        one, other = (low[:, axis] - start[:, axis]) / step, (high[:, axis] - start[:, axis]) / step
        enter = np.where(still, enter, np.maximum(enter, np.minimum(one, other)))
        leave = np.where(still, leave, np.minimum(leave, np.maximum(one, other)))
    kept = ~outside & (enter <= leave)
    if kept.all() and not (enter > 0).any() and not (leave < 1).any():
        return pieces
    return Pieces(
        start_mm=(start + enter[:, None] * way)[kept],
        end_mm=np.where((leave < 1)[:, None], start + leave[:, None] * way, pieces.end_mm)[kept],
        owner=pieces.owner[kept],
    )


def split(pieces: Pieces, count: NDArray[np.intp]) -> tuple[Pieces, NDArray[np.intp]]:
    """Each piece in `count` (n,) equal parts, and (k,) which of the pieces each part comes from."""
    which = np.repeat(np.arange(len(pieces)), count)
    if len(which) == len(pieces):
        return pieces, which
    step = np.arange(len(which)) - np.repeat(np.cumsum(count) - count, count)
    start, way = pieces.start_mm[which], (pieces.end_mm - pieces.start_mm)[which]
    one, other = step / count[which], (step + 1) / count[which]
    return (
        Pieces(
            start_mm=start + one[:, None] * way,
            end_mm=np.where((step + 1 == count[which])[:, None], pieces.end_mm[which], start + other[:, None] * way),
            owner=pieces.owner[which],
        ),
        which,
    )
