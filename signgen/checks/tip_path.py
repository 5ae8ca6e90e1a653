"""The tip path in straight pieces, in sign coordinates: what the exact checks measure."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct
from numpy.typing import NDArray

from signgen.replay.motion import RAPID, FloatArray, Motions
from signgen.replay.pieces import Pieces, chorded, clipped
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool

CHORD_MM = 0.0005
"""Greatest distance between an arc and the chords that stand for it, where walls are measured to 0.01 mm."""

THROUGH_MM = 0.001
"""A tip this far above the board's bottom counts as through, and one this far below a floor as on it: decimals of
programs and thicknesses make that much, those of inches 0.0013 / 2 at most."""

COARSE_CHORD_MM = 0.002
"""The same for cutters that are measured to 0.05 mm."""


class TipPath(Struct, frozen=True, kw_only=True):
    """k straight pieces in the order of execution. start_mm, end_mm (k, 3); motion (k,): index of the motion that a
    piece is part of; line (k,): its line in the program; program (k,): index of the program."""

    start_mm: FloatArray
    end_mm: FloatArray
    motion: NDArray[np.intp]
    line: NDArray[np.int64]
    program: NDArray[np.intp]

    def __post_init__(self) -> None:
        for name in self.__struct_fields__:
            getattr(self, name).setflags(write=False)

    def __len__(self) -> int:
        return len(self.motion)

    def where(self, chosen: NDArray[np.bool_] | NDArray[np.intp]) -> TipPath:
        """The chosen pieces, in their order."""
        return TipPath(
            start_mm=self.start_mm[chosen],
            end_mm=self.end_mm[chosen],
            motion=self.motion[chosen],
            line=self.line[chosen],
            program=self.program[chosen],
        )

    @property
    def low_z_mm(self) -> FloatArray:
        """(k,) the lowest height of each piece."""
        return np.minimum(self.start_mm[:, 2], self.end_mm[:, 2])

    def lowest(self) -> tuple[int, tuple[float, float, float]]:
        """The first piece that goes as deep as any, and the place where it does: line and place belong together."""
        k = int(self.low_z_mm.argmin())
        end = self.end_mm[k] if self.end_mm[k, 2] <= self.start_mm[k, 2] else self.start_mm[k]
        return k, (float(end[0]), float(end[1]), float(end[2]))

    @property
    def plan_mm(self) -> FloatArray:
        """(k, 4) x0, y0, x1, y1 of each piece."""
        return np.hstack([self.start_mm[:, :2], self.end_mm[:, :2]])

    def below(self, z_mm: float) -> TipPath:
        """The parts of the pieces at or below a height: pieces that cross it are cut there."""
        some = self.where(self.low_z_mm <= z_mm)
        start, end = some.start_mm, some.end_mm
        rise = end[:, 2] - start[:, 2]
        share = np.clip((z_mm - start[:, 2]) / np.where(rise == 0, 1.0, rise), 0.0, 1.0)[:, None]
        crossing = start + share * (end - start)
        crossing[:, 2] = np.where(rise == 0, start[:, 2], z_mm)
        return TipPath(
            start_mm=np.where((start[:, 2] > z_mm)[:, None], crossing, start),
            end_mm=np.where((end[:, 2] > z_mm)[:, None], crossing, end),
            motion=some.motion,
            line=some.line,
            program=some.program,
        )

    def within(self, bounds_mm: tuple[float, float, float, float]) -> tuple[TipPath, NDArray[np.intp]]:
        """The parts of the pieces inside a rectangle (min x, min y, max x, max y), and which piece each is part of: so
        that what a program does far from the board does not cost by its length."""
        low, high = np.array(bounds_mm[:2]), np.array(bounds_mm[2:])
        kept = clipped(
            Pieces(start_mm=self.start_mm, end_mm=self.end_mm, owner=np.arange(len(self), dtype=np.intp)), low, high
        )
        inside = TipPath(
            start_mm=kept.start_mm,
            end_mm=kept.end_mm,
            motion=self.motion[kept.owner],
            line=self.line[kept.owner],
            program=self.program[kept.owner],
        )
        return inside, kept.owner

    def radii_mm(self, tool: Tool, at_z_mm: float) -> FloatArray:
        """(k, 2) the cutter's radius at a height while its tip is at each piece's start and end; negative where the
        tip is above that height or, on a cone, where its widening would begin above it."""
        up = at_z_mm - np.stack([self.start_mm[:, 2], self.end_mm[:, 2]], axis=1)
        return radius_above_tip(tool, up)


FEW_PIECES = 20_000
"""Up to so many it is quicker to look at each than to build a tree of them."""


class Nearby:
    """The pieces of a way by where they are, so that looking at many places of a large board costs little for each."""

    def __init__(self, way: TipPath) -> None:
        self._way = way
        self._low = np.minimum(way.start_mm[:, :2], way.end_mm[:, :2])
        self._high = np.maximum(way.start_mm[:, :2], way.end_mm[:, :2])
        self._tree: shapely.STRtree | None = None
        if len(way) > FEW_PIECES:
            self._tree = shapely.STRtree(shapely.box(*self._low.T, *self._high.T))

    def touching(self, low_mm: FloatArray, high_mm: FloatArray) -> TipPath:
        """Those whose bounds meet the rectangle between two corners, in their order."""
        if self._tree is None:
            return self._way.where(np.all((self._low <= high_mm) & (self._high >= low_mm), axis=1))
        found = self._tree.query(shapely.box(low_mm[0], low_mm[1], high_mm[0], high_mm[1]))
        return self._way.where(np.sort(found))


def radius_above_tip(tool: Tool, up_mm: FloatArray) -> FloatArray:
    """A cutter's radius at heights above its tip; -1 below the tip. Source: plane geometry of cones."""
    if tool.kind == "ball-nose":
        inside = np.clip(up_mm, 0.0, tool.radius_mm)
        radius = np.sqrt(inside * (2 * tool.radius_mm - inside))
    elif tool.kind == "v-bit" or (tool.kind == "drill" and tool.angle_deg is not None):
        radius = np.minimum(up_mm * tool.slope + tool.tip_mm / 2, tool.radius_mm)
    else:
        radius = np.full_like(up_mm, tool.radius_mm)
    return np.where(up_mm >= 0, radius, -1.0)


def tip_path_of(motions: Motions, zero: WorkZero, program: int, chord_mm: float) -> tuple[TipPath, TipPath]:
    """(cutting, rapid) pieces of a program. Arcs of every plane are chorded to `chord_mm`."""
    shift = np.array([zero.x_mm, zero.y_mm, zero.z_mm])
    pieces = chorded(motions, np.arange(len(motions)), chord_mm)
    owner = pieces.owner
    every = TipPath(
        start_mm=pieces.start_mm + shift,
        end_mm=pieces.end_mm + shift,
        motion=owner,
        line=motions.line[owner],
        program=np.full(len(owner), program, np.intp),
    )
    rapid = motions.kind[owner] == RAPID
    return every.where(~rapid), every.where(rapid)


def joined(parts: Sequence[TipPath]) -> TipPath:
    """Tip paths one after the other."""
    return TipPath(
        start_mm=np.concatenate([part.start_mm for part in parts]),
        end_mm=np.concatenate([part.end_mm for part in parts]),
        motion=np.concatenate([part.motion for part in parts]),
        line=np.concatenate([part.line for part in parts]),
        program=np.concatenate([part.program for part in parts]),
    )
