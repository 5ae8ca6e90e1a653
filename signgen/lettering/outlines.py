"""Glyphs as areas: the font's curves, their exact bounds, and the filled polygons at the size in which they are cut.

HarfBuzz hands out the curves of TrueType, CFF and variable fonts alike, composites resolved.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, MultiPolygon, Polygon

from signgen.errors import AskError, SignGenError
from signgen.geometry.curves import flatten_cubics, flatten_quadratics
from signgen.geometry.nesting import fill_nonzero
from signgen.geometry.offsets import area_of, polygons
from signgen.geometry.paths import FloatArray
from signgen.tolerances import GRID_MM

if TYPE_CHECKING:
    from signgen.lettering.faces import Face

GRID_PER_MM = round(1 / GRID_MM)
"""Grid steps in a millimetre. Areas are built on whole steps, so that a repeated letter has the same shape to the
last bit wherever it stands, and what is computed for one serves for all."""

FARTHEST_EM = 50.0
"""A coordinate further out than this belongs to a damaged glyph; the longest swashes reach a few em."""

MOST_POINTS = 100_000
"""Points of one flattened glyph; ornate faces stay below a tenth of it."""

MOST_CROSSINGS = 3_000_000
"""Pairs of chords whose boxes meet, by estimate: above it the outline is a tangle that would take minutes to fill."""

LINE, QUADRATIC, CUBIC = 1, 2, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class GlyphCurves:
    """The n segments of a glyph's contours, in em, read-only.

    kinds: (n,) LINE, QUADRATIC or CUBIC, the number of control points after the first. controls: (n, 4, 2); unused
    ones NaN, the end always at index 3. contour: (n,) the contour that each segment belongs to, from 0, ascending.
    """

    kinds: NDArray[np.uint8]
    controls: FloatArray
    contour: NDArray[np.int64]

    def __len__(self) -> int:
        return len(self.kinds)


class _Collector:
    """Takes the drawing of one glyph down, as HarfBuzz dictates it."""

    def __init__(self) -> None:
        import uharfbuzz

        self.kinds: list[int] = []
        self.controls: list[tuple[float, ...]] = []
        self.contour: list[int] = []
        self.contours = 0
        self.at = (0.0, 0.0)
        self.funcs = uharfbuzz.DrawFuncs()
        self.funcs.set_move_to_func(self._move)
        self.funcs.set_line_to_func(self._line)
        self.funcs.set_quadratic_to_func(self._quadratic)
        self.funcs.set_cubic_to_func(self._cubic)
        self.funcs.set_close_path_func(self._close)

    def _move(self, x: float, y: float, _: Any) -> None:
        self.at = (x, y)
        self.contours += 1

    def _add(self, kind: int, controls: tuple[float, ...], x: float, y: float) -> None:
        unused = (np.nan,) * (4 - len(controls))
        self.kinds.append(kind)
        self.controls.append((*self.at, *controls, *unused, x, y))
        self.contour.append(self.contours - 1)
        self.at = (x, y)

    def _line(self, x: float, y: float, _: Any) -> None:
        self._add(LINE, (), x, y)

    def _quadratic(self, x1: float, y1: float, x: float, y: float, _: Any) -> None:
        self._add(QUADRATIC, (x1, y1), x, y)

    def _cubic(self, x1: float, y1: float, x2: float, y2: float, x: float, y: float, _: Any) -> None:
        self._add(CUBIC, (x1, y1, x2, y2), x, y)

    def _close(self, _: Any) -> None:
        """HarfBuzz has drawn the closing line already."""


@lru_cache(maxsize=16384)
def glyph_curves(face: Face, glyph: int) -> GlyphCurves:
    """The curves of a glyph as the font has them; no segments for a blank one.

    Raises: AskError for coordinates that only a damaged font has.
    """
    collector = _Collector()
    face.font.draw_glyph(glyph, collector.funcs, None)
    controls = np.array(collector.controls, dtype=np.float64).reshape(-1, 4, 2) / face.units_per_em
    if controls.size and not np.nanmax(np.abs(controls)) <= FARTHEST_EM:
        raise _damaged(face, glyph, f"reaches more than {FARTHEST_EM:g} em from its place")
    curves = GlyphCurves(
        kinds=np.array(collector.kinds, dtype=np.uint8),
        controls=controls,
        contour=np.array(collector.contour, dtype=np.int64),
    )
    for array in (curves.kinds, curves.controls, curves.contour):
        array.setflags(write=False)
    return curves


@lru_cache(maxsize=16384)
def glyph_bounds_em(face: Face, glyph: int) -> tuple[float, float, float, float] | None:
    """Exact bounds (x0, y0, x1, y1) of a glyph's curves, or None for a blank glyph."""
    curves = glyph_curves(face, glyph)
    if not len(curves):
        return None
    points = [curves.controls[:, 0], curves.controls[:, 3]]
    quadratic = curves.controls[curves.kinds == QUADRATIC]
    cubic = curves.controls[curves.kinds == CUBIC]
    p0, p1, _, p2 = np.moveaxis(quadratic, 1, 0)
    points.append(_at(quadratic[:, [0, 1, 3]], _inside((p0 - p1), p0 - 2 * p1 + p2)))
    p0, p1, p2, p3 = np.moveaxis(cubic, 1, 0)
    # B'/3 = a t^2 - 2 b t + c; the stable pair of roots is q / a and c / q.
    a, b, c = p3 - 3 * p2 + 3 * p1 - p0, 2 * p1 - p0 - p2, p1 - p0
    root = np.sqrt(np.maximum(b * b - a * c, 0.0))
    q = b + np.where(b < 0, -root, root)
    points += [_at(cubic, _inside(q, a)), _at(cubic, _inside(c, q))]
    every = np.concatenate(points)
    (x0, y0), (x1, y1) = every.min(axis=0), every.max(axis=0)
    return float(x0), float(y0), float(x1), float(y1)


def _inside(numerator: FloatArray, denominator: FloatArray) -> FloatArray:
    """(n, 2) parameters numerator / denominator for x and y, 0 (an end) where they lie outside the curve."""
    t = np.divide(numerator, denominator, out=np.zeros_like(numerator), where=denominator != 0)
    return np.where((t > 0) & (t < 1), t, 0.0)


def _at(controls: FloatArray, t: FloatArray) -> FloatArray:
    """(n, 2): x of each curve at the first parameter and y at the second. By de Casteljau, so always on the curve."""
    while controls.shape[1] > 1:
        controls = controls[:, :-1] + t[:, None, :] * (controls[:, 1:] - controls[:, :-1])
    return controls[:, 0]


def glyph_area(face: Face, glyph: int, *, scale_mm_per_em: float, chord_mm: float) -> Polygon | MultiPolygon:
    """The filled glyph in millimetres about its own origin; see `glyph_areas`."""
    (area,) = glyph_areas(face, (glyph,), scale_mm_per_em=scale_mm_per_em, chord_mm=chord_mm)
    return area


def glyph_areas(
    face: Face, glyphs: Sequence[int], *, scale_mm_per_em: float, chord_mm: float
) -> tuple[Polygon | MultiPolygon, ...]:
    """The filled glyphs in millimetres about their own origins; an empty MultiPolygon for a blank one.

    Valid, shells counter-clockwise, every coordinate on the grid of GRID_MM, no further than `chord_mm` (and half a
    grid step) from the font's curves.

    Raises: AskError for an outline that only a damaged font has.
    """
    on_grid = grid_areas(face, glyphs, scale_mm_per_em=scale_mm_per_em, chord_mm=chord_mm)
    return tuple(placed(area, (0, 0)) for area in on_grid)


def grid_areas(
    face: Face, glyphs: Sequence[int], *, scale_mm_per_em: float, chord_mm: float
) -> tuple[Polygon | MultiPolygon, ...]:
    """As `glyph_areas`, in whole grid steps instead of millimetres."""
    return tuple(_filled(face, glyph, scale_mm_per_em, chord_mm) for glyph in glyphs)


def placed(area: Polygon | MultiPolygon, offset_steps: tuple[int, int]) -> Polygon | MultiPolygon:
    """An area in grid steps, moved by whole steps and turned into millimetres."""
    moved = shapely.transform(area, lambda steps: (steps + offset_steps) / GRID_PER_MM)
    assert isinstance(moved, Polygon | MultiPolygon)
    return moved


def flattened(curves: GlyphCurves, *, scale_mm_per_em: float, chord_mm: float) -> tuple[FloatArray, ...]:
    """The contours in millimetres as closed (n, 2) polygons without the repeated first point."""
    controls = curves.controls * scale_mm_per_em
    counts = np.ones(len(curves), dtype=np.int64)
    pieces: list[tuple[NDArray[np.int64], FloatArray, NDArray[np.int64]]] = []
    lines = np.flatnonzero(curves.kinds == LINE)
    pieces.append((lines, controls[lines, 3], np.arange(len(lines) + 1)))
    for kind, flatten in ((QUADRATIC, _flatten_quadratics), (CUBIC, _flatten_cubics)):
        chosen = np.flatnonzero(curves.kinds == kind)
        if len(chosen):
            points, starts = flatten(controls[chosen], chord_mm)
            counts[chosen] = np.diff(starts)
            pieces.append((chosen, points, starts))
    first = np.concatenate([[0], np.cumsum(counts)])
    every = np.empty((first[-1], 2))
    for chosen, points, starts in pieces:
        within = np.arange(len(points)) - np.repeat(starts[:-1], np.diff(starts))
        every[np.repeat(first[chosen], counts[chosen]) + within] = points
    ends = first[np.flatnonzero(np.diff(curves.contour)) + 1]
    return tuple(np.split(every, ends))


def _flatten_quadratics(controls: FloatArray, chord_mm: float) -> tuple[FloatArray, NDArray[np.int64]]:
    return flatten_quadratics(controls[:, 0], controls[:, 1], controls[:, 3], chord_mm)


def _flatten_cubics(controls: FloatArray, chord_mm: float) -> tuple[FloatArray, NDArray[np.int64]]:
    return flatten_cubics(controls[:, 0], controls[:, 1], controls[:, 2], controls[:, 3], chord_mm)


@lru_cache(maxsize=4096)
def _filled(face: Face, glyph: int, scale_mm_per_em: float, chord_mm: float) -> Polygon | MultiPolygon:
    """One glyph filled, in grid steps."""
    curves = glyph_curves(face, glyph)
    if not len(curves):
        return MultiPolygon()
    contours = flattened(curves, scale_mm_per_em=scale_mm_per_em, chord_mm=chord_mm)
    steps = [np.rint(contour * GRID_PER_MM) for contour in contours]
    _check_tangle(face, glyph, steps)
    area = fill_nonzero(steps)
    corners = shapely.get_coordinates(area)
    if np.array_equal(corners, np.rint(corners)):
        return area
    # Crossings of overlapping contours fall between the steps; GEOS moves them there and keeps the area valid.
    return area_of(polygons(shapely.set_precision(area, 1.0)))


def _check_tangle(face: Face, glyph: int, contours: Sequence[FloatArray]) -> None:
    """Refuses an outline whose chords cross each other so often that only a damaged font can have drawn it."""
    total = sum(map(len, contours))
    if total < 2000:
        return
    if total > MOST_POINTS:
        raise _damaged(face, glyph, f"has {total} points")
    ends = np.concatenate([np.stack([contour, np.roll(contour, -1, axis=0)], axis=1) for contour in contours])
    chords = shapely.linestrings(ends)
    sample = chords[:: max(1, total // 200)]
    meetings = len(shapely.STRtree(chords).query(sample)[0]) * (total / len(sample)) / 2
    if meetings > MOST_CROSSINGS:
        raise _damaged(face, glyph, f"crosses itself about {meetings:.0f} times")


def _damaged(face: Face, glyph: int, what: str) -> SignGenError:
    name = face.font.get_glyph_name(glyph) or f"number {glyph}"
    return AskError.at(
        "font", f"The outline of glyph {name} of {face.name} {what}.", "The font is damaged: use another."
    )


def spans_at(area: Polygon | MultiPolygon, y: float) -> tuple[tuple[float, float], ...]:
    """Where the horizontal line at height y runs inside the area: (left, right) of each stretch, from the left."""
    left, _, right, _ = area.bounds
    inside = area.intersection(LineString([(left - 1, y), (right + 1, y)]))
    stretches = (part.bounds for part in shapely.get_parts(inside) if isinstance(part, LineString))
    return tuple(sorted((bounds[0], bounds[2]) for bounds in stretches))
