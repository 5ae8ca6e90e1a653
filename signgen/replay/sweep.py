"""What a cutter leaves of the board."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.geometry.raster import Grid
from signgen.replay import fast, swept
from signgen.replay.boxes import Boxes, boxes_of
from signgen.replay.heights import HeightMap
from signgen.replay.motion import RAPID, Motions
from signgen.replay.pieces import Pieces, lowest, straight_pieces
from signgen.replay.swept import Block, Profile
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool

_CELLS_AT_ONCE = 1 << 17
"""Of one batch: few enough for its arrays to stay in the processor's cache."""


def cut(
    heights: HeightMap,
    motions: Motions,
    tool: Tool,
    zero: WorkZero,
    select: NDArray[np.bool_] | None = None,
    *,
    rapids: bool = False,
) -> HeightMap:
    """What is left after the motions (of a program whose zero lies at `zero`): exactly, at each cell's
    centre, but for arcs replaced by chords that stray by 0.002 mm.

    Only motions in `select` (n,) when given. Rapids cut only when `rapids` is true. The order of motions does
    not matter.
    """
    z = heights.z_mm.copy()
    chosen = np.ones(len(motions), bool) if select is None else np.array(select, bool)
    if not rapids:
        chosen &= motions.kind != RAPID
    carve(z, heights.grid, motions, np.nonzero(chosen)[0], tool, zero, float(z.max(initial=-math.inf)))
    z.setflags(write=False)
    return replace(heights, z_mm=z)


def undercut(heights: HeightMap, motions: Motions, tool: Tool, zero: WorkZero) -> HeightMap:
    """Down to where the head of a keyhole cutter takes the wood, seen from below: at each cell the lowest place of
    its end, and the height of `heights` where its head never comes. From there up `tool.head_mm` are gone for
    certain.
    """
    z = heights.z_mm.copy()
    chosen = np.nonzero(motions.kind != RAPID)[0]
    _carve(z, heights.grid, motions, chosen, Profile.of(tool), zero, float(z.max(initial=-math.inf)), None)
    z.setflags(write=False)
    return replace(heights, z_mm=z)


def carve(
    z: NDArray[np.float32],
    grid: Grid,
    motions: Motions,
    chosen: NDArray[np.intp],
    tool: Tool,
    zero: WorkZero,
    top_mm: float,
    compiled: bool | None = None,
) -> None:
    """Lowers `z` (on the grid of `grid`, nowhere above `top_mm`) in place by the chosen motions, rapids among
    them included.

    `compiled`: by the compiled extra, which gives the same result bit for bit; None: where it is installed and worth
    its start.

    A height map shows what can be seen from above: of a keyhole cutter that moves level, what its neck takes. Where
    it rises or falls its whole head comes through, and takes whatever is over it. `undercut` has what its head takes
    below.
    """
    if tool.kind == "keyhole":
        level = motions.start_mm[chosen, 2] == motions.end_mm[chosen, 2]
        _carve(z, grid, motions, chosen[level], Profile.flat_of(tool.neck_mm / 2), zero, top_mm, compiled)
        chosen = chosen[~level]
    _carve(z, grid, motions, chosen, Profile.of(tool), zero, top_mm, compiled)


def _carve(
    z: NDArray[np.float32],
    grid: Grid,
    motions: Motions,
    chosen: NDArray[np.intp],
    profile: Profile,
    zero: WorkZero,
    top_mm: float,
    compiled: bool | None,
) -> None:
    for boxes in _boxes(grid, motions, chosen, profile, zero, top_mm, lowest):
        if fast.pays(boxes.cells) if compiled is None else compiled:
            every = np.arange(len(boxes.pieces))
            fast.lower(
                z, boxes.first, boxes.size, boxes.from_start_mm(grid, every), boxes.moves(every), boxes.level,
                grid.cell_mm, profile,
            )  # fmt: skip
            continue
        for swaths in _swaths(grid, boxes, profile):
            h, w = swaths.z_mm.shape[1:]
            for block, j, i in zip(swaths.z_mm, swaths.row.tolist(), swaths.column.tolist(), strict=True):
                here = z[j : j + h, i : i + w]
                np.minimum(here, block, out=here)


class Swaths(Struct, frozen=True, kw_only=True):
    """n boxes of one size: z_mm (n, h, w) how low a piece of a motion cuts (infinite where it does not); row,
    column (n,) of the grid where each box begins; owner (n,) the motion."""

    z_mm: Block
    row: NDArray[np.intp]
    column: NDArray[np.intp]
    owner: NDArray[np.intp]


def sweeps(
    grid: Grid, motions: Motions, chosen: NDArray[np.intp], tool: Tool, zero: WorkZero, top_mm: float
) -> Iterator[Swaths]:
    """How low the chosen motions cut, box by box; what they do above `top_mm` is left out."""
    profile = Profile.of(tool)
    for boxes in _boxes(grid, motions, chosen, profile, zero, top_mm):
        yield from _swaths(grid, boxes, profile)


def _boxes(
    grid: Grid,
    motions: Motions,
    chosen: NDArray[np.intp],
    profile: Profile,
    zero: WorkZero,
    top_mm: float,
    sifted: Callable[[Pieces], Pieces] = lambda pieces: pieces,
) -> Iterator[Boxes]:
    offset = np.array([zero.x_mm, zero.y_mm, zero.z_mm])
    for pieces in straight_pieces(motions, chosen, offset):
        boxes = boxes_of(grid, sifted(pieces), profile, top_mm)
        if len(boxes.pieces):
            yield boxes


def _swaths(grid: Grid, boxes: Boxes, profile: Profile) -> Iterator[Swaths]:
    """Boxes of one size together, as many at once as stay in the processor's cache."""
    size = boxes.size
    key = (size[:, 1] * (grid.nx + 1) + size[:, 0]) * 2 + boxes.level
    order = np.argsort(key, kind="stable")
    breaks = np.concatenate(([0], np.nonzero(np.diff(key[order]))[0] + 1, [len(order)]))
    for a, b in zip(breaks[:-1].tolist(), breaks[1:].tolist(), strict=True):
        w, h = size[order[a]].tolist()
        kernel = swept.level if boxes.level[order[a]] else swept.sloped
        step = max(1, _CELLS_AT_ONCE // (w * h))
        for at in range(a, b, step):
            yield _box(grid, boxes, order[at : min(at + step, b)], (h, w), profile, kernel)


def _box(
    grid: Grid,
    boxes: Boxes,
    which: NDArray[np.intp],
    shape: tuple[int, int],
    profile: Profile,
    kernel: swept.Kernel,
) -> Swaths:
    """The swaths of pieces whose boxes have one shape. Distances are taken in double precision from each
    piece's start; what follows is small enough for single precision."""
    x, y = boxes.from_start_mm(grid, which)
    dx = (x[:, None] + grid.cell_mm * np.arange(shape[1])).astype(np.float32)
    dy = (y[:, None] + grid.cell_mm * np.arange(shape[0])).astype(np.float32)
    z = kernel(profile, boxes.moves(which), dx[:, None, :], dy[:, :, None])
    first = boxes.first[which]
    return Swaths(z_mm=z, row=first[:, 1], column=first[:, 0], owner=boxes.pieces.owner[which])
