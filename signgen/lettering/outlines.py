"""The curves of glyphs and their exact bounds, in em.

HarfBuzz hands out the curves of TrueType, CFF and variable fonts alike, composites resolved.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.errors import AskError, SignGenError
from signgen.geometry.curves import CUBIC, LINE, QUADRATIC
from signgen.geometry.paths import FloatArray
from signgen.lettering.face import Glyphs
from signgen.messages import Message, Num

FARTHEST_EM = 50.0
"""A coordinate further out than this belongs to a damaged glyph; the longest swashes reach a few em."""


class GlyphCurves(Struct, frozen=True, kw_only=True):
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
        self.controls: list[float] = []  # eight for each segment
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
        self.controls += (*self.at, *controls, *unused, x, y)
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
def glyph_curves(face: Glyphs, glyph: int) -> GlyphCurves:
    """The curves of a glyph as the font has them; no segments for a blank one.

    Raises: AskError for coordinates that only a damaged font has.
    """
    collector = _Collector()
    face.font.draw_glyph(glyph, collector.funcs, None)
    controls = np.array(collector.controls, dtype=np.float64).reshape(-1, 4, 2) / face.units_per_em
    if controls.size and not np.nanmax(np.abs(controls)) <= FARTHEST_EM:
        raise damaged(face, glyph, Message("lettering.glyph_reaches_too_far", most=Num(FARTHEST_EM)))
    curves = GlyphCurves(
        kinds=np.array(collector.kinds, dtype=np.uint8),
        controls=controls,
        contour=np.array(collector.contour, dtype=np.int64),
    )
    for array in (curves.kinds, curves.controls, curves.contour):
        array.setflags(write=False)
    return curves


@lru_cache(maxsize=16384)
def glyph_bounds_em(face: Glyphs, glyph: int) -> tuple[float, float, float, float] | None:
    """Exact bounds (x0, y0, x1, y1) of a glyph's curves, or of its lines, or None for a blank glyph."""
    if face.lines_of is not None:
        lines = face.lines_of(glyph)
        return _bounds(np.concatenate(lines)) if lines else None
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
    return _bounds(np.concatenate(points))


def _bounds(points: FloatArray) -> tuple[float, float, float, float]:
    (x0, y0), (x1, y1) = points.min(axis=0), points.max(axis=0)
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


def damaged(face: Glyphs, glyph: int, what: Message) -> SignGenError:
    """The error for an outline that only a damaged font has."""
    name = face.font.get_glyph_name(glyph) or f"number {glyph}"
    return AskError.at(
        "font",
        Message("lettering.outline_glyph", name=name, face=face.name, what=what),
        Message("lettering.font_damaged_use_another"),
    )
