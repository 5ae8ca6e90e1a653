"""Where a motion meets what is left of the board at its time."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.raster import Grid
from signgen.replay.heights import HeightMap
from signgen.replay.motion import RAPID, Motions
from signgen.replay.sweep import Swaths, carve, sweeps
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool

TOUCH_MM = 0.005
"""A cutter that returns to where it was lies against its own walls: chords of arcs and single precision make
that up to some thousandths of a millimetre of wood that is not there."""


class Contact(Struct, frozen=True, kw_only=True):
    """A motion (its index) whose cutter goes `depth_mm` below what is left, at worst at `place_mm` (a cell's
    centre, sign coordinates)."""

    motion: int
    depth_mm: float
    place_mm: tuple[float, float]


def rapid_contacts(
    heights: HeightMap,
    motions: Motions,
    tool: Tool,
    zero: WorkZero,
    *,
    touch_mm: float = TOUCH_MM,
    most: int | None = None,
) -> tuple[Contact, ...]:
    """Every rapid that goes deeper than `touch_mm` into what the motions before it have left of `heights`, in
    order; the first `most` when given.

    A rapid that stays above the board is clear without a look at the map. One that goes straight up leaves by
    the way that the cutter came, so it is clear too unless the program begins with it, or the cutter is one whose
    head is wider than its neck and may be under wood.
    """
    top = float(heights.z_mm.max(initial=-np.inf))
    suspects = _suspects(motions, top - zero.z_mm, leaves_as_it_came=tool.kind != "keyhole")
    uncut = _deepest(heights.z_mm, heights.grid, motions, suspects, tool, zero, top)
    suspects = suspects[np.isin(suspects, [i for i, contact in uncut.items() if contact.depth_mm > touch_mm])]
    z = heights.z_mm.copy()
    contacts, done = [], 0
    cutting = motions.kind != RAPID
    for motion in suspects.tolist():
        pending = done + np.nonzero(cutting[done:motion])[0]
        if len(pending):
            carve(z, heights.grid, motions, pending, tool, zero, top)
        done = motion
        one = np.array([motion])
        contact = _deepest(z, heights.grid, motions, one, tool, zero, top).get(motion)
        if contact is not None and contact.depth_mm > touch_mm:
            contacts.append(contact)
            # What it tore out is gone: without this, the next rapid through the same place would be news again.
            carve(z, heights.grid, motions, one, tool, zero, top)
            if most is not None and len(contacts) >= most:
                break
    return tuple(contacts)


def _suspects(motions: Motions, top_mm: float, *, leaves_as_it_came: bool) -> NDArray[np.intp]:
    """Rapids that come below the top of the board (program coordinates) other than by going straight up from
    where the cutter was."""
    low = np.minimum(motions.start_mm[:, 2], motions.end_mm[:, 2])
    way = motions.end_mm - motions.start_mm
    straight_up = (way[:, 0] == 0) & (way[:, 1] == 0) & (way[:, 2] >= 0)
    straight_up[:1] = False
    arrived = np.ones(len(motions), bool)
    arrived[1:] = (motions.start_mm[1:] == motions.end_mm[:-1]).all(axis=1)
    clear = straight_up & arrived & leaves_as_it_came
    return np.nonzero((motions.kind == RAPID) & (low < top_mm) & ~clear)[0]


def _deepest(
    z: NDArray[np.float32],
    grid: Grid,
    motions: Motions,
    chosen: NDArray[np.intp],
    tool: Tool,
    zero: WorkZero,
    top_mm: float,
) -> dict[int, Contact]:
    """By motion, the cell where it goes deepest below `z`."""
    found: dict[int, Contact] = {}
    for swaths in sweeps(grid, motions, chosen, tool, zero, top_mm):
        for k, owner in enumerate(swaths.owner.tolist()):
            depth, j, i = _worst_cell(z, swaths, k)
            if np.isfinite(depth) and (owner not in found or depth > found[owner].depth_mm):
                place = (grid.x0_mm + grid.cell_mm * i, grid.y0_mm + grid.cell_mm * j)
                found[owner] = Contact(motion=owner, depth_mm=depth, place_mm=place)
    return found


def _worst_cell(z: NDArray[np.float32], swaths: Swaths, k: int) -> tuple[float, int, int]:
    h, w = swaths.z_mm.shape[1:]
    row, column = int(swaths.row[k]), int(swaths.column[k])
    below = z[row : row + h, column : column + w] - swaths.z_mm[k]
    j, i = divmod(int(below.argmax()), w)
    return float(below[j, i]), row + j, column + i
