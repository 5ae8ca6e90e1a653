"""A path in space made of straight lines and helical arcs: the one form in which cutter paths travel."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
LINE, CW, CCW = 0, 1, 2
"""Kinds of segment. CW and CCW as seen from above (+Z), as G2 and G3 in the XY plane."""


def frozen(array: NDArray[np.generic]) -> NDArray[np.generic]:
    """The same array, read-only from now on."""
    array.setflags(write=False)
    return array


class Path(Struct, frozen=True, kw_only=True):
    """n segments through n + 1 points. A path of one point and no segment is a place to plunge.

    points_mm: (n + 1, 3) x, y, z of the cutter's tip. kinds: (n,) LINE, CW or CCW. centres_mm: (n, 2), the
    centre of each arc in XY, NaN for lines. An arc turns by more than 0 and at most 180 degrees unless its ends
    agree in XY, which is a full circle; its Z changes in proportion to the angle (a helix).
    """

    points_mm: FloatArray
    kinds: NDArray[np.uint8]
    centres_mm: FloatArray

    def __post_init__(self) -> None:
        n = len(self.kinds)
        if self.points_mm.shape != (n + 1, 3) or self.centres_mm.shape != (n, 2):
            raise ValueError(f"shapes disagree: {self.points_mm.shape}, {self.kinds.shape}, {self.centres_mm.shape}")
        for array in (self.points_mm, self.kinds, self.centres_mm):
            array.setflags(write=False)

    def __len__(self) -> int:
        return len(self.kinds)

    @property
    def sweeps_rad(self) -> FloatArray:
        """(n,) turned angle of each segment, positive counter-clockwise, 0 for lines."""
        start = self.points_mm[:-1, :2] - self.centres_mm
        end = self.points_mm[1:, :2] - self.centres_mm
        cross = start[:, 0] * end[:, 1] - start[:, 1] * end[:, 0]
        turn = np.arctan2(cross, np.einsum("ij,ij->i", start, end))
        full = np.all(self.points_mm[:-1, :2] == self.points_mm[1:, :2], axis=1)
        ccw = np.where(full, 2 * np.pi, np.mod(turn, 2 * np.pi))
        cw = np.where(full, -2 * np.pi, -np.mod(-turn, 2 * np.pi))
        return np.where(self.kinds == LINE, 0.0, np.where(self.kinds == CCW, ccw, cw))

    @property
    def lengths_mm(self) -> FloatArray:
        """(n,) length of each segment along the tip's way, helices included."""
        step = np.diff(self.points_mm, axis=0)
        radius = np.hypot(*(self.points_mm[:-1, :2] - self.centres_mm).T)
        across = np.where(
            self.kinds == LINE, np.hypot(step[:, 0], step[:, 1]), np.abs(self.sweeps_rad) * np.nan_to_num(radius)
        )
        return np.hypot(across, step[:, 2])

    @property
    def length_mm(self) -> float:
        return float(self.lengths_mm.sum())

    def part(self, first: int, last: int) -> Path:
        """Segments `first` to `last`, the last left out."""
        return Path(
            points_mm=self.points_mm[first : last + 1].copy(),
            kinds=self.kinds[first:last].copy(),
            centres_mm=self.centres_mm[first:last].copy(),
        )

    def reversed(self) -> Path:
        """The same way, walked from its end."""
        flipped = np.array([LINE, CCW, CW], dtype=np.uint8)[self.kinds[::-1]]
        return Path(points_mm=self.points_mm[::-1].copy(), kinds=flipped, centres_mm=self.centres_mm[::-1].copy())

    def moved(self, dx_mm: float, dy_mm: float, dz_mm: float = 0.0) -> Path:
        """The path shifted as a whole."""
        return Path(
            points_mm=self.points_mm + np.array([dx_mm, dy_mm, dz_mm]),
            kinds=self.kinds.copy(),
            centres_mm=self.centres_mm + np.array([dx_mm, dy_mm]),
        )


def polyline(points_mm: ArrayLike) -> Path:
    """The path of straight lines through (k, 3) points, k >= 1."""
    points = np.array(points_mm, dtype=np.float64).reshape(-1, 3)
    n = len(points) - 1
    return Path(points_mm=points, kinds=np.zeros(n, np.uint8), centres_mm=np.full((n, 2), np.nan))


def joined(paths: Sequence[Path]) -> Path:
    """Paths one after the other. Where an end and the next start differ, a straight line joins them."""
    points: list[FloatArray] = [paths[0].points_mm]
    kinds: list[NDArray[np.uint8]] = [paths[0].kinds]
    centres: list[FloatArray] = [paths[0].centres_mm]
    for path in paths[1:]:
        if np.array_equal(points[-1][-1], path.points_mm[0]):
            points.append(path.points_mm[1:])
        else:
            points.append(path.points_mm)
            kinds.append(np.zeros(1, np.uint8))
            centres.append(np.full((1, 2), np.nan))
        kinds.append(path.kinds)
        centres.append(path.centres_mm)
    return Path(points_mm=np.concatenate(points), kinds=np.concatenate(kinds), centres_mm=np.concatenate(centres))
