"""The sweep compiled, where the extra `signgen[fast]` is installed: the same heights bit for bit, sooner.

`_lower` does what `swept.level` and `swept.sloped` do, cell by cell instead of array by array: the same operations on
the same single-precision numbers in the same order, so that rounding is the same. It is plain Python; numba makes
machine code of it, without leave to reorder anything.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import cache
from importlib.util import find_spec
from typing import Any

import numpy as np
from numpy.typing import NDArray

from signgen.replay.swept import FAR, STEEP_RATIO, Block, Profile, SweptMoves

PAYS_CELLS = 60_000_000
"""From so many cells on the compiled sweep saves more than it takes to load (measured: tests/bench/bench_replay.py)."""

_FLAT, _CONE, _BALL = 0, 1, 2


@cache
def is_there() -> bool:
    """Whether the extra is installed."""
    return find_spec("numba") is not None


def pays(cells: int) -> bool:
    """Whether it is there and worth loading for so many cells; once loaded it always is."""
    return "numba" in sys.modules or (cells >= PAYS_CELLS and is_there())


def lower(
    z: NDArray[np.float32],
    first: NDArray[np.intp],
    size: NDArray[np.intp],
    from_start_mm: tuple[NDArray[np.float64], NDArray[np.float64]],
    moves: SweptMoves,
    level: NDArray[np.bool_],
    cell_mm: float,
    profile: Profile,
    *,
    compiled: bool = True,
) -> None:
    """Lowers z (ny, nx) in place by n moves, each in its box of cells (see `Boxes`); `compiled=False` runs the same
    function as plain Python, for tests."""
    shape = _FLAT if profile.flat else _BALL if profile.ball else _CONE
    single = np.float32
    (_compiled() if compiled else _lower)(
        z, first, size, from_start_mm[0], from_start_mm[1],
        moves.tx.ravel(), moves.ty.ravel(), moves.length.ravel(), moves.z.ravel(), moves.rise.ravel(),
        level, float(cell_mm), shape, single(profile.radius_mm**2), single(profile.radius_mm),
        single(profile.tip_mm), single(profile.tip_mm**2), single(profile.rise),
    )  # fmt: skip


def load() -> bool:
    """Load it now, where it is installed: for a process that will cut many boards. Returns whether it is there."""
    if is_there():
        _compiled()
    return is_there()


@cache
def _compiled() -> Callable[..., None]:
    import numba

    made: Callable[..., None]
    try:
        made = numba.njit(cache=True, nogil=True)(_lower)
    except RuntimeError:  # there is nowhere to keep the machine code: it is made anew in every process
        made = numba.njit(nogil=True)(_lower)
    return made


def _lower(
    z: Block, first: Any, size: Any, from_x: Any, from_y: Any, tx: Any, ty: Any, length: Any, z0: Any, rise: Any,
    level: Any, cell: Any, shape: Any, radius2: Any, radius: Any, tip: Any, tip2: Any, slope: Any,
) -> None:  # fmt: skip
    """Row by row. Every constant is single precision, since one in double would change the rounding of all that
    follows; nothing in the rows' loops branches, so that several cells are done at once. Where numpy has a case of its
    own for pointed bits, the general one gives the same: a tip of 0 takes nothing away and is never the greater.
    """
    zero, one, nowhere = np.float32(0), np.float32(1), np.float32(np.inf)
    far, steep_ratio = np.float32(FAR), np.float32(STEEP_RATIO)
    for k in range(len(tx)):
        m, long, high, ahead, aside = rise[k], length[k], z0[k], tx[k], ty[k]
        turn = zero  # minus the sign of the rise: the best place lies behind where the way falls
        if m > zero:
            turn = -one
        if m < zero:
            turn = one
        factor, beyond = zero, zero
        if not level[k] and shape == 2:
            factor = -(m / np.sqrt(one + m * m))
        if not level[k] and shape == 1:
            margin = slope * slope - m * m
            if margin <= steep_ratio * slope * slope:
                beyond = far
            else:
                factor = np.abs(m) / np.sqrt(margin)
        begin, wide = first[k, 0], size[k, 0]
        for j in range(size[k, 1]):
            dy = np.float32(from_y[k] + cell * j)
            up, over = dy * aside, dy * ahead
            cells = z[first[k, 1] + j, begin : begin + wide]
            if level[k]:
                for i in range(wide):
                    dx = np.float32(from_x[k] + cell * i)
                    u = dx * ahead + up
                    d = dx * aside - over
                    held = u if u < long else long
                    held = held if held > zero else zero
                    u = u - held
                    r2 = u * u + d * d
                    height = high
                    if shape == 1:
                        r = np.sqrt(r2) - tip
                        r = r if r > zero else zero
                        height = r * slope + high
                    elif shape == 2:
                        depth = radius * radius - r2
                        depth = depth if depth > zero else zero
                        height = radius - np.sqrt(depth) + high
                    height = nowhere if r2 > radius2 else height
                    cells[i] = height if height < cells[i] else cells[i]
            else:
                for i in range(wide):
                    dx = np.float32(from_x[k] + cell * i)
                    u = dx * ahead + up
                    d = dx * aside - over
                    d2 = d * d
                    w2 = radius2 - d2
                    w = np.sqrt(w2 if w2 > zero else zero)
                    least, most = u - w, u + w
                    out = (w2 < zero) | (least > long) | (most < zero)
                    least = least if least > zero else zero
                    most = most if most < long else long
                    if shape == 0:
                        s = turn * w
                    elif shape == 2:
                        s = factor * w
                    else:
                        away = factor * np.abs(d) + beyond
                        rim = tip2 - d2
                        rim = np.sqrt(rim if rim > zero else zero)
                        s = turn * (away if away > rim else rim)
                    s = s + u
                    s = s if s > least else least
                    s = s if s < most else most
                    height = m * s + high
                    s = s - u
                    r2 = s * s + d2
                    if shape == 1:
                        r = np.sqrt(r2) - tip
                        r = r if r > zero else zero
                        height = height + r * slope
                    elif shape == 2:
                        depth = radius * radius - r2
                        depth = depth if depth > zero else zero
                        height = height + (radius - np.sqrt(depth))
                    height = nowhere if out else height
                    cells[i] = height if height < cells[i] else cells[i]
