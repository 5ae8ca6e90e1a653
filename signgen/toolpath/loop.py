"""Walking round a closed path by the distance gone, at a height that changes on the way."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

import numpy as np
from msgspec import Struct

from signgen.geometry.paths import CCW, LINE, FloatArray, Path

SAME_MM = 1e-9
"""Distances along a loop closer than this are the same place; far below the last written decimal."""


class Loop(Struct, frozen=True):
    """A closed path in the plane, its start anywhere; `s` is the distance gone from there and may run past the length
    (further rounds) or below 0."""

    path: Path
    ends_mm: FloatArray
    """(n + 1,) distance at each point, from 0 to the length."""

    @classmethod
    def of(cls, path: Path) -> Loop:
        if not np.array_equal(path.points_mm[0, :2], path.points_mm[-1, :2]):
            raise ValueError("a loop ends where it starts")
        return cls(path, np.concatenate([[0.0], np.cumsum(path.lengths_mm)]))

    @property
    def length_mm(self) -> float:
        return float(self.ends_mm[-1])

    def at(self, s_mm: float) -> tuple[float, float]:
        """The place at a distance."""
        x, y = self._points(np.array([s_mm]))[0]
        return float(x), float(y)

    def heading(self, s_mm: float) -> tuple[float, float]:
        """The unit direction of travel at a distance; behind it where the direction changes there."""
        s = s_mm % self.length_mm
        i = min(max(int(np.searchsorted(self.ends_mm, s, side="right")) - 1, 0), len(self.path) - 1)
        if self.path.kinds[i] == LINE:
            step = self.path.points_mm[i + 1, :2] - self.path.points_mm[i, :2]
        else:
            spoke = np.array(self.at(s_mm)) - self.path.centres_mm[i]
            step = np.array([-spoke[1], spoke[0]]) if self.path.kinds[i] == CCW else np.array([spoke[1], -spoke[0]])
        x, y = step / np.hypot(*step)
        return float(x), float(y)

    def nearest(self, x_mm: float, y_mm: float, step_mm: float = 0.05) -> float:
        """The distance whose place lies nearest to a point, to about `step_mm`, refined once to a thousandth of
        it."""
        s = np.arange(0.0, self.length_mm, step_mm)
        for width in (step_mm, step_mm * 1e-3):
            away = np.hypot(*(self._points(s) - (x_mm, y_mm)).T)
            best = float(s[int(np.argmin(away))])
            s = np.arange(best - width, best + width, width * 1e-3)
        away = np.hypot(*(self._points(s) - (x_mm, y_mm)).T)
        return float(s[int(np.argmin(away))]) % self.length_mm

    def _points(self, s_mm: FloatArray) -> FloatArray:
        s = np.mod(s_mm, self.length_mm)
        i = np.clip(np.searchsorted(self.ends_mm, s, side="right") - 1, 0, len(self.path) - 1)
        span = self.ends_mm[i + 1] - self.ends_mm[i]
        share = np.where(span > 0, (s - self.ends_mm[i]) / np.where(span > 0, span, 1.0), 0.0)
        start, end = self.path.points_mm[i, :2], self.path.points_mm[i + 1, :2]
        straight = start + share[:, None] * (end - start)
        angle = share * self.path.sweeps_rad[i]
        spoke = start - self.path.centres_mm[i]
        turned = np.stack(
            [
                spoke[:, 0] * np.cos(angle) - spoke[:, 1] * np.sin(angle),
                spoke[:, 0] * np.sin(angle) + spoke[:, 1] * np.cos(angle),
            ],
            axis=1,
        )
        is_line = (self.path.kinds[i] == LINE)[:, None]
        return np.where(is_line, straight, np.nan_to_num(self.path.centres_mm[i]) + np.nan_to_num(turned))

    def walk(self, knots: Sequence[tuple[float, float]]) -> Path:
        """The path through (s, z) knots, z changing evenly between them; s may fall (walking backwards) or stand
        still (straight up or down).

        Arcs stay arcs (helical where z changes).
        """
        points: list[FloatArray] = [np.array([[*self.at(knots[0][0]), knots[0][1]]])]
        kinds: list[np.ndarray[tuple[int], np.dtype[np.uint8]]] = []
        centres: list[FloatArray] = []
        for (s0, z0), (s1, z1) in itertools.pairwise(knots):
            stops = self._stops(s0, s1)
            gone = np.abs(stops - s0)
            z = z0 + (z1 - z0) * (gone / gone[-1] if gone[-1] > SAME_MM else np.ones_like(gone))
            xy = self._points(stops[1:])
            points.append(np.column_stack([xy, z[1:]]))
            middle = np.mod((stops[:-1] + stops[1:]) / 2, self.length_mm)
            i = np.clip(np.searchsorted(self.ends_mm, middle, side="right") - 1, 0, len(self.path) - 1)
            kind = self.path.kinds[i]
            if abs(s1 - s0) <= SAME_MM:
                kind = np.full(1, LINE, np.uint8)
            elif s1 < s0:
                kind = np.where(kind == LINE, LINE, (3 - kind).astype(np.uint8)).astype(np.uint8)
            kinds.append(kind.astype(np.uint8))
            centres.append(np.where((kind == LINE)[:, None], np.nan, self.path.centres_mm[i]))
        return Path(points_mm=np.concatenate(points), kinds=np.concatenate(kinds), centres_mm=np.concatenate(centres))

    def _stops(self, s0: float, s1: float) -> FloatArray:
        """Every segment end between two distances, and the two themselves, in walking order."""
        low, high = min(s0, s1), max(s0, s1)
        rounds = np.arange(np.floor(low / self.length_mm), np.floor(high / self.length_mm) + 1)
        inner = (self.ends_mm[:-1][None, :] + rounds[:, None] * self.length_mm).ravel()
        inner = inner[(inner > low + SAME_MM) & (inner < high - SAME_MM)]
        stops = np.concatenate([[low], inner, [high]])
        return stops if s1 >= s0 else stops[::-1]


assert CCW == 2  # `3 - kind` turns CW into CCW and back
