"""Short cuts at the surface between the two corners of a stroke's straight end."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray
from signgen.geometry.walk import Run, WalkPiece
from signgen.tolerances import GRID_MM


def with_hops(runs: tuple[Run, ...], rings: Sequence[NDArray[np.floating]], level_mm: float) -> tuple[Run, ...]:
    """The runs with fork - corner - fork - corner - fork made fork - corner - corner - fork wherever one straight side
    of the outline joins both corners. `rings` (k, 2) are the outline's; at its corners the clearance is `level_mm`.

    Nothing is gouged: every disc on both ways touches that side, so the small disc of radius `level_mm` that touches
    it at the same place lies within a disc that is inside the outline; and these small discs are the short cut's.
    """
    starts = np.concatenate(rings)
    ends = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])
    return tuple(_hopping(run, starts, ends, level_mm) for run in runs)


def _hopping(run: Run, starts: FloatArray, ends: FloatArray, level: float) -> Run:
    out: list[WalkPiece] = []
    at = 0
    while at < len(run):
        four = run[at : at + 4]
        if len(four) == 4 and _returns(four[0], four[1]) and _returns(four[2], four[3]):
            there, back = four[0].points, four[2].points[::-1]
            if _share_a_side(there, back, starts, ends, level):
                hop = np.array([there[-1], back[0]])
                out += [four[0], WalkPiece(hop, False), WalkPiece(back, False)]
                at += 4
                continue
        out.append(run[at])
        at += 1
    return tuple(out)


def _returns(there: WalkPiece, back: WalkPiece) -> bool:
    return not there.again and back.again and np.array_equal(there.points, back.points[::-1])


def _share_a_side(there: FloatArray, back: FloatArray, starts: FloatArray, ends: FloatArray, level: float) -> bool:
    """Whether all discs of both ways touch one and the same side, and both ways end at the level."""
    near = 2 * GRID_MM
    if max(there[-1, 2], back[0, 2]) > level + near:
        return False
    corners = np.array([there[-1], back[0]])
    off = np.abs(_distances(corners, starts, ends) - corners[:, 2:3]).max(axis=0)
    side = int(off.argmin())
    if off[side] > near:
        return False
    discs = np.concatenate([there, back])
    away = _distances(discs, starts[side : side + 1], ends[side : side + 1])[:, 0]
    return bool(np.abs(away - discs[:, 2]).max() <= near)


def _distances(places: FloatArray, starts: FloatArray, ends: FloatArray) -> FloatArray:
    """(n, m) from n places to m sides."""
    way = ends - starts
    square = np.maximum((way * way).sum(axis=1), 1e-300)
    gap = places[:, None, :2] - starts
    share = np.clip((gap * way).sum(axis=2) / square, 0.0, 1.0)
    away = gap - share[:, :, None] * way
    found: FloatArray = np.hypot(away[:, :, 0], away[:, :, 1])
    return found
