"""A drawing of another program at any size: the areas and lines that are seen of it, by their colours."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence

import numpy as np
import shapely
from msgspec import Struct
from shapely import affinity
from shapely.geometry import LineString, MultiLineString, MultiPolygon
from shapely.geometry.base import BaseGeometry

from signgen.artwork.colours import Rgb
from signgen.artwork.mapped import for_shapely, stretch
from signgen.artwork.matrix import IDENTITY, Matrix, times
from signgen.artwork.painted import Clip, Painted
from signgen.artwork.pen import Pen, TooManyDashesError, dashed, pen_area
from signgen.artwork.refused import refused
from signgen.geometry.nesting import fill_even_odd, fill_nonzero
from signgen.geometry.offsets import Area, area_of, polygons
from signgen.geometry.paths import FloatArray
from signgen.messages import Message

MOST_CROSSINGS = 30_000
"""Pairs of chords of one shape that cross, by estimate: drawings have a few, a tangle has its square."""

MOST_POINTS = 400_000
"""Points of one shape at its size."""

PEN_CHORD_RATIO = 0.25
"""Of the chord, for the line that a pen follows: what it covers strays further than the line where that bends."""

_FINE_RATIO, _TANGLE_POINTS = 1e-5, 300

KeyOf = Callable[[Rgb], Hashable | None]
"""What becomes of a colour: things of one key are one area; None for what is not cut and covers what lies below."""


class Picture(Struct, frozen=True, kw_only=True, eq=False):
    """`items` in the order in which they are painted, in units of `unit_mm` with Y down; `unit_mm` None: the file does
    not say how large it is."""

    file: str
    items: tuple[Painted, ...]
    unit_mm: float | None

    def seen(self, key_of: KeyOf, matrix: Matrix, chord: float) -> dict[Hashable, Area]:
        """The area of each key that nothing covers, after a map of the plane. Raises: AskError for a tangle."""
        cache: dict[int, Area] = {}
        over: BaseGeometry = MultiPolygon()
        found: dict[Hashable, list[BaseGeometry]] = {}
        for key, run in _runs(self.items, key_of):
            areas = [self._area(item, matrix, chord, cache) for item in run]
            whole = shapely.union_all([area for area in areas if not area.is_empty])
            if key is not None:
                found.setdefault(key, []).append(whole if over.is_empty else whole.difference(over))
            over = whole if over.is_empty else shapely.union(over, whole)
        joined = {key: area_of(polygons(shapely.union_all(parts))) for key, parts in found.items()}
        return {key: area for key, area in reversed(joined.items()) if not area.is_empty}

    def seen_lines(self, key_of: KeyOf, matrix: Matrix, chord: float) -> dict[Hashable, MultiLineString]:
        """The middle lines of what is drawn with a pen and the outlines of what is filled, as far as nothing covers
        them."""
        cache: dict[int, Area] = {}
        over: BaseGeometry = MultiPolygon()
        found: dict[Hashable, list[BaseGeometry]] = {}
        for key, run in _runs(self.items, key_of):
            if key is not None:
                lines = shapely.union_all([self._lines(item, matrix, chord, cache) for item in run])
                found.setdefault(key, []).append(lines if over.is_empty else lines.difference(over))
            else:
                areas = [self._area(item, matrix, chord, cache) for item in run]
                over = shapely.union_all([over, *areas])
        return {key: joined for key, parts in found.items() if not (joined := _joined(parts)).is_empty}

    def bounds(self, key_of: KeyOf, matrix: Matrix = IDENTITY) -> tuple[float, float, float, float] | None:
        """(x0, y0, x1, y1) of what is seen of the colours that count, after a map of the plane; None for nothing."""
        rough = [box for item in self.items if (box := item.outline.mapped(times(matrix, item.matrix)).bounds_px())]
        if not rough:
            return None
        low, high = np.min(rough, axis=0), np.max(rough, axis=0)
        fine = max(float(high[2] - low[0]), float(high[3] - low[1]), 1e-9) * _FINE_RATIO
        seen = self.seen(key_of, matrix, fine)
        if not seen:
            return None
        x0, y0, x1, y1 = shapely.total_bounds(list(seen.values())).tolist()
        return x0, y0, x1, y1

    @property
    def colours(self) -> tuple[Rgb, ...]:
        return tuple(dict.fromkeys(item.colour for item in self.items))

    def _area(self, item: Painted, matrix: Matrix, chord: float, cache: dict[int, Area]) -> Area:
        """What an item covers, clipped."""
        if id(item) not in cache:
            area = self._whole(item, times(matrix, item.matrix), chord)
            for clip in item.clips:
                area = self._clipped(area, clip, matrix, chord, cache)
            cache[id(item)] = area
        return cache[id(item)]

    def _clipped(self, shape: Area, clip: Clip, matrix: Matrix, chord: float, cache: dict[int, Area]) -> Area:
        region = self._region(clip, matrix, chord, cache)
        if shape.is_empty or shapely.covers(region, shape):
            return shape
        return area_of(polygons(shapely.intersection(shape, region)))

    def _region(self, clip: Clip, matrix: Matrix, chord: float, cache: dict[int, Area]) -> Area:
        if id(clip) not in cache:
            region = area_of(
                polygons(shapely.union_all([self._area(each, matrix, chord, cache) for each in clip.shapes]))
            )
            for further in clip.clips:
                region = self._clipped(region, further, matrix, chord, cache)
            shapely.prepare(region)
            cache[id(clip)] = region
        return cache[id(clip)]

    def _whole(self, item: Painted, matrix: Matrix, chord: float) -> Area:
        if isinstance(item.how, Pen):
            grown = stretch(matrix)
            if grown == 0:
                return MultiPolygon()
            fine = chord / grown
            parts = item.outline.parts(fine * PEN_CHORD_RATIO)
            self._must_be_bearable(item, parts)
            try:
                area = pen_area(parts, item.outline.closed.tolist(), item.how, fine)
            except TooManyDashesError:
                raise refused(self.file, item.line, Message("art.many_dashes"), Message("art.simplify")) from None
            return area_of(polygons(affinity.affine_transform(area, for_shapely(matrix))))
        parts = item.outline.mapped(matrix).parts(chord)
        self._must_be_bearable(item, parts)
        return fill_nonzero(parts) if item.how == "nonzero" else fill_even_odd(parts)

    def _lines(self, item: Painted, matrix: Matrix, chord: float, cache: dict[int, Area]) -> BaseGeometry:
        parts = item.outline.mapped(times(matrix, item.matrix)).parts(chord)
        self._must_be_bearable(item, parts)
        lines: list[LineString] = []
        for points, closed in zip(parts, item.outline.closed.tolist(), strict=True):
            whole = closed or not isinstance(item.how, Pen)
            drawn = [(points, whole)]
            if isinstance(item.how, Pen) and item.how.dashes:
                grown = stretch(times(matrix, item.matrix))
                scaled = [dash * grown for dash in item.how.dashes]
                pen = Pen(width=1.0, dashes=tuple(scaled), dash_offset=item.how.dash_offset * grown)
                try:
                    drawn = dashed(points, closed, pen)
                except TooManyDashesError:
                    raise refused(self.file, item.line, Message("art.many_dashes"), Message("art.simplify")) from None
            for way, round_trip in drawn:
                line = np.concatenate([way, way[:1]]) if round_trip else way
                if len(line) > 1 and np.ptp(line, axis=0).max() > 0:
                    lines.append(LineString(line))
        all_lines: BaseGeometry = MultiLineString(lines)
        for clip in item.clips:
            region = self._region(clip, matrix, chord, cache)
            if not shapely.covers(region, all_lines):
                all_lines = shapely.intersection(all_lines, region)
        return all_lines

    def _must_be_bearable(self, item: Painted, parts: Sequence[FloatArray]) -> None:
        """Refuses a shape whose chords cross each other so often that nobody drew it. Raises: AskError."""
        total = sum(map(len, parts))
        if total > MOST_POINTS:
            raise refused(self.file, item.line, Message("art.many_points", most=MOST_POINTS), Message("art.simplify"))
        if total <= _TANGLE_POINTS:
            return
        ends = np.concatenate([np.stack([part[:-1], part[1:]], axis=1) for part in parts if len(part) > 1])
        chords = shapely.linestrings(ends)
        sample = chords[:: max(1, len(chords) // 200)]
        # Neighbours meet, so each chord meets itself and two more.
        meetings = len(shapely.STRtree(chords).query(sample, predicate="intersects")[0])
        if (meetings - 3 * len(sample)) * (len(chords) / len(sample)) / 2 > MOST_CROSSINGS:
            raise refused(self.file, item.line, Message("art.tangle"), Message("art.simplify"))


def _joined(parts: Sequence[BaseGeometry]) -> MultiLineString:
    """All lines, those that meet end to end as one."""
    whole = shapely.line_merge(shapely.union_all(list(parts)))
    return MultiLineString([part for part in shapely.get_parts(whole) if part.geom_type == "LineString"])


def _runs(items: Sequence[Painted], key_of: KeyOf) -> list[tuple[Hashable | None, list[Painted]]]:
    """Items of one key that follow each other, the last ones painted first."""
    keys: Mapping[Rgb, Hashable | None] = {item.colour: key_of(item.colour) for item in items}
    runs: list[tuple[Hashable | None, list[Painted]]] = []
    for item in reversed(items):
        key = keys[item.colour]
        if runs and runs[-1][0] == key:
            runs[-1][1].append(item)
        else:
            runs.append((key, [item]))
    return runs
