"""Straight pieces of motions, before they are swept."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from signgen.replay.pieces import Pieces, lowest

PLACE = st.tuples(st.integers(0, 2), st.integers(0, 1), st.integers(0, 3))
"""Few places, so that ways are walked again."""


def pieces_of(ends: list[tuple[tuple[float, ...], tuple[float, ...]]]) -> Pieces:
    array = np.array(ends, float).reshape(-1, 2, 3)
    return Pieces(start_mm=array[:, 0], end_mm=array[:, 1], owner=np.arange(len(array)))


def lies_over(piece: tuple[tuple[float, ...], tuple[float, ...]], other: tuple[tuple[float, ...], ...]) -> bool:
    """Whether a piece goes the other's way, nowhere lower."""
    return all(mine[:2] == its[:2] and mine[2] >= its[2] for mine, its in zip(piece, other, strict=True))


@given(st.lists(st.tuples(PLACE, PLACE), max_size=40))
def test_what_is_left_out_lies_over_something_that_is_kept(ends: list) -> None:
    kept = lowest(pieces_of(ends)).owner.tolist()
    assert kept == sorted(set(kept))
    for number in set(range(len(ends))) - set(kept):
        assert any(lies_over(ends[number], ends[other]) for other in kept)


def test_of_a_way_walked_deeper_and_deeper_only_the_last_is_kept() -> None:
    ends = [((0, 0, z), (5, 1, z - 1)) for z in (9, 7, 5)] + [((5, 1, 4), (0, 0, 4))]
    assert lowest(pieces_of(ends)).owner.tolist() == [2, 3]


def test_ways_that_cross_in_height_are_both_kept() -> None:
    ends = [((0, 0, 3), (5, 0, 1)), ((0, 0, 1), (5, 0, 3))]
    assert lowest(pieces_of(ends)).owner.tolist() == [0, 1]
