"""Glyphs as filled areas at the size in which they are cut.

Areas are built on whole steps of GRID_MM about the glyph's own origin and moved by whole steps, so that a repeated
letter has the same shape to the last bit wherever it stands, and what is computed for one serves for all.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString

from signgen.geometry.curves import flatten_mixed
from signgen.geometry.filling import fill_each
from signgen.geometry.offsets import Area, area_of, polygons
from signgen.geometry.paths import FloatArray
from signgen.lettering.face import Face
from signgen.lettering.heights import glyph_of
from signgen.lettering.outlines import damaged, glyph_curves
from signgen.messages import Message, Num
from signgen.tolerances import GRID_MM

IntArray = NDArray[np.int64]

GRID_PER_MM = round(1 / GRID_MM)
"""Grid steps in a millimetre."""

MOST_POINTS = 20_000
"""Points of one flattened glyph; the most ornate of the faces here has 3,500 at 60 mm."""

MOST_CROSSINGS = 60_000
"""Pairs of chords whose boxes meet, by estimate: faces have less than two for each point, a tangle its square."""

STROKE_SCANS = tuple(0.35 + 0.30 * i / 30 for i in range(31))
"""Heights, over the letter's own, at which the stroke of I is measured: clear of serifs at top and bottom."""

_TANGLE_POINTS = 300
"""Points below which no outline can cross itself often enough to matter."""


def glyph_areas(face: Face, glyphs: Sequence[int], *, scale_mm_per_em: float, chord_mm: float) -> tuple[Area, ...]:
    """The filled glyphs in millimetres about their own origins; an empty MultiPolygon for a blank one.

    Valid, shells counter-clockwise, every coordinate on the grid of GRID_MM, no further than `chord_mm` (and half a
    grid step) from the font's curves.

    Raises: AskError for an outline that only a damaged font has.
    """
    on_grid = grid_areas(face, glyphs, scale_mm_per_em=scale_mm_per_em, chord_mm=chord_mm)
    return tuple(placed(area, (0, 0)) for area in on_grid)


def grid_areas(face: Face, glyphs: Sequence[int], *, scale_mm_per_em: float, chord_mm: float) -> tuple[Area, ...]:
    """As `glyph_areas`, in whole grid steps instead of millimetres."""
    store = _store(face, scale_mm_per_em, chord_mm)
    wanted = [glyph for glyph in dict.fromkeys(glyphs) if glyph not in store]
    if wanted:
        store.update(zip(wanted, _filled(face, wanted, scale_mm_per_em, chord_mm), strict=True))
    return tuple(store[glyph] for glyph in glyphs)


@lru_cache(maxsize=64)
def _store(face: Face, scale_mm_per_em: float, chord_mm: float) -> dict[int, Area]:
    """The glyphs filled so far at one size, for `grid_areas` to fill up; the sizes used least are forgotten."""
    return {}


def placed(area: Area, offset_steps: tuple[int, int]) -> Area:
    """An area in grid steps, moved by whole steps and turned into millimetres."""
    moved: Area = shapely.transform(area, lambda steps: (steps + offset_steps) / GRID_PER_MM)
    return moved


def on_grid(area: Area) -> Area:
    """An area in grid steps with its corners on whole ones, valid still; pieces thinner than a step go."""
    return area_of(polygons(shapely.set_precision(area, 1.0)))


def _filled(face: Face, glyphs: Sequence[int], scale_mm_per_em: float, chord_mm: float) -> list[Area]:
    points, starts, owners = flattened(face, glyphs, scale_mm_per_em=scale_mm_per_em, chord_mm=chord_mm)
    steps = np.rint(points * GRID_PER_MM)
    sizes = np.bincount(owners, np.diff(starts), len(glyphs))
    for number in np.flatnonzero(sizes > _TANGLE_POINTS).tolist():
        mine = np.flatnonzero(owners == number)
        _check_tangle(face, glyphs[number], [steps[starts[i] : starts[i + 1]] for i in mine])
    areas = np.array(fill_each(steps, starts, owners, len(glyphs)), dtype=object)
    corners, owner = shapely.get_coordinates(areas, return_index=True)
    # Crossings of overlapping contours fall between the steps. Moved onto them, nearly all stay valid.
    between = np.unique(owner[np.any(corners != np.rint(corners), axis=1)])
    moved = shapely.remove_repeated_points(shapely.transform(areas[between], np.rint))
    valid = shapely.is_valid(moved)
    areas[between[valid]] = moved[valid]
    for number in between[~valid].tolist():
        areas[number] = on_grid(areas[number])
    return list(areas)


def flattened(
    face: Face, glyphs: Sequence[int], *, scale_mm_per_em: float, chord_mm: float
) -> tuple[FloatArray, IntArray, IntArray]:
    """The contours of the glyphs in millimetres, all in one array.

    Returns (points, starts, owners): points (m, 2), contour i is points[starts[i]:starts[i + 1]] without a closing
    point, and belongs to glyphs[owners[i]].
    """
    curves = [glyph_curves(face, glyph) for glyph in glyphs]
    kinds = np.concatenate([one.kinds for one in curves])
    controls = np.concatenate([one.controls for one in curves]) * scale_mm_per_em
    glyph_of = np.repeat(np.arange(len(curves)), [len(one) for one in curves])
    contour_of = np.concatenate([one.contour for one in curves])
    if not len(kinds):
        return np.empty((0, 2)), np.zeros(1, np.int64), np.empty(0, np.int64)

    points, first = flatten_mixed(kinds, controls, chord_mm)
    begins = np.flatnonzero(np.diff(contour_of, prepend=-1) | np.diff(glyph_of, prepend=-1))
    return points, np.append(first[begins], first[-1]), glyph_of[begins]


def _check_tangle(face: Face, glyph: int, contours: Sequence[FloatArray]) -> None:
    """Refuses an outline whose chords cross each other so often that only a damaged font can have drawn it."""
    total = sum(map(len, contours))
    if total > MOST_POINTS:
        raise damaged(face, glyph, Message("lettering.glyph_has_points", count=total))
    ends = np.concatenate([np.stack([contour, np.roll(contour, -1, axis=0)], axis=1) for contour in contours])
    chords = shapely.linestrings(ends)
    sample = chords[:: max(1, total // 200)]
    meetings = len(shapely.STRtree(chords).query(sample)[0]) * (total / len(sample)) / 2
    if meetings > MOST_CROSSINGS:
        raise damaged(face, glyph, Message("lettering.glyph_crosses_itself", times=Num(meetings, 0)))


def spans_at(area: Area, y: float) -> tuple[tuple[float, float], ...]:
    """Where the horizontal line at height y runs inside the area: (left, right) of each stretch, from the left."""
    left, _, right, _ = area.bounds
    inside = area.intersection(LineString([(left - 1, y), (right + 1, y)]))
    stretches = (part.bounds for part in shapely.get_parts(inside) if isinstance(part, LineString) and part.length)
    return tuple(sorted((bounds[0], bounds[2]) for bounds in stretches))


@lru_cache(maxsize=64)
def stroke_ratio(face: Face) -> float | None:
    """Width of the upright of I over the height of a capital, or None if the face has no I or is drawn in lines.

    The median of the widest ink on horizontal scans between 35 and 65 % of the letter's height.
    """
    if not face.has("I") or face.lines_of is not None:
        return None
    (area,) = glyph_areas(face, [glyph_of(face, "I")], scale_mm_per_em=1.0, chord_mm=1e-4)
    _, bottom, _, top = area.bounds
    scans = (spans_at(area, bottom + part * (top - bottom)) for part in STROKE_SCANS)
    widths = sorted(max(right - left for left, right in spans) for spans in scans if spans)
    return widths[len(widths) // 2] / face.cap_height_em if widths else None
