"""Connected pieces, held to scipy's labels."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import ndimage

from signgen.geometry.components import connected


@given(seed=st.integers(0, 2**32 - 1), ny=st.integers(1, 12), nx=st.integers(1, 12), share=st.floats(0, 1))
def test_agrees_with_scipy(seed: int, ny: int, nx: int, share: float) -> None:
    mask = np.random.default_rng(seed).random((ny, nx)) < share
    runs = connected(mask)
    labels, count = ndimage.label(mask)
    assert runs.count == count
    own = np.full(ny * nx, -1)
    for start, stop, piece in zip(runs.start, runs.stop, runs.piece, strict=True):
        own[start:stop] = piece
    # scipy numbers pieces by their first cell too.
    assert (own.reshape(ny, nx) == labels - 1).all()
    assert runs.sizes().tolist() == np.bincount(labels.ravel(), minlength=count + 1)[1:].tolist()


@pytest.mark.parametrize("shape", [(5, 7), (1, 1)])
def test_nothing_and_everything(shape: tuple[int, int]) -> None:
    assert connected(np.zeros(shape, dtype=np.bool_)).count == 0
    whole = connected(np.ones(shape, dtype=np.bool_))
    assert whole.count == 1
    assert whole.sizes().tolist() == [shape[0] * shape[1]]


def test_a_piece_does_not_run_on_from_row_to_row() -> None:
    mask = np.array([[0, 0, 1], [1, 0, 0]], dtype=np.bool_)
    assert connected(mask).count == 2
