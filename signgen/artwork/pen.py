"""What a pen covers that is drawn along lines, as SVG draws it: width, ends, corners, dashes.

Source: W3C, SVG 1.1 (second edition), 11.4 stroke properties; SVG 2, 13.5 the shape of a stroke.
"""

from __future__ import annotations

import itertools
import math
from typing import Literal

import numpy as np
import shapely
from msgspec import Struct
from shapely.geometry import LinearRing, LineString, MultiPolygon, Point, Polygon, box
from shapely.geometry.base import BaseGeometry

from signgen.geometry.offsets import Area, area_of, polygons, quad_segs
from signgen.geometry.paths import FloatArray

Cap = Literal["butt", "round", "square"]
Join = Literal["miter", "round", "bevel"]

MOST_DASHES = 20_000
"""Of one outline."""

_CAPS = {"butt": "flat", "round": "round", "square": "square"}
_JOINS = {"miter": "mitre", "round": "round", "bevel": "bevel"}


class Pen(Struct, frozen=True, kw_only=True):
    """Lengths in user units. `dashes`: lengths of dash and gap in turn, an even number of them; () for none."""

    width: float
    cap: Cap = "butt"
    join: Join = "miter"
    miter_limit: float = 4.0
    dashes: tuple[float, ...] = ()
    dash_offset: float = 0.0


class TooManyDashesError(ValueError):
    """More dashes than anybody cuts."""


def dashed(points: FloatArray, closed: bool, pen: Pen) -> list[tuple[FloatArray, bool]]:
    """The lines (k, 2) that the pen draws of one part, each with whether it is closed. Raises: TooManyDashesError."""
    way = np.concatenate([points, points[:1]]) if closed else points
    if not pen.dashes:
        return [(points, closed)]
    steps = np.hypot(*np.diff(way, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(steps)])
    total, period = float(along[-1]), sum(pen.dashes)
    if total == 0 or total / period * len(pen.dashes) > MOST_DASHES:
        if total == 0:
            return [(points, closed)]
        raise TooManyDashesError
    edges = np.concatenate([[0.0], np.cumsum(pen.dashes)])
    first = -(pen.dash_offset % period)
    found: list[tuple[FloatArray, bool]] = []
    for number in range(math.ceil((total - first) / period)):
        for a, b in zip(edges[:-1:2], edges[1::2], strict=True):
            start, stop = first + number * period + a, first + number * period + b
            begin, end = max(0.0, start), min(total, stop)
            if end > begin or (start == stop == begin == end and pen.cap != "butt"):
                inner = (along > begin) & (along < end)
                ends = np.stack([np.interp([begin, end], along, way[:, axis]) for axis in (0, 1)], axis=-1)
                found.append((np.concatenate([ends[:1], way[inner], ends[1:]]), False))
    if closed and len(found) > 1 and _meets(found[0][0][0], way[0]) and _meets(found[-1][0][-1], way[0]):
        found[0] = (np.concatenate([found[-1][0], found[0][0][1:]]), False)  # a dash goes on over the start
        found.pop()
    return found


def _meets(one: FloatArray, other: FloatArray) -> bool:
    return bool(np.array_equal(one, other))


def pen_area(parts: list[FloatArray], closed: list[bool], pen: Pen, chord: float) -> Area:
    """What the pen covers. `parts`: (k, 2) points of each, the start of a closed one not repeated.

    Raises: TooManyDashesError.
    """
    covered: list[BaseGeometry] = []
    for points, is_closed in zip(parts, closed, strict=True):
        for line, round_trip in dashed(points, is_closed, pen):
            covered += _covered(line, round_trip, pen, chord)
    solid = [each for each in covered if not each.is_empty]
    return area_of(polygons(shapely.union_all(solid))) if solid else MultiPolygon()


def _covered(line: FloatArray, closed: bool, pen: Pen, chord: float) -> list[BaseGeometry]:
    line = line[np.concatenate([[True], np.any(np.diff(line, axis=0) != 0, axis=1)])]
    if closed and len(line) > 1 and np.array_equal(line[0], line[-1]):
        line = line[:-1]
    half = pen.width / 2
    segments = quad_segs(half, chord)
    if len(line) == 1:  # a dot, which only has its ends
        x, y = line[0].tolist()
        if pen.cap == "round" or (closed and pen.join == "round" and pen.cap != "butt"):
            return [Point(x, y).buffer(half, quad_segs=segments)]
        return [box(x - half, y - half, x + half, y + half)] if pen.cap == "square" else []
    pieces: list[FloatArray] = [line]
    cut: list[tuple[FloatArray, FloatArray, FloatArray]] = []
    if pen.join == "miter":
        pieces, cut = _at_sharp(line, closed, pen.miter_limit)
    made: list[BaseGeometry] = []
    for number, piece in enumerate(pieces):
        whole = closed and not cut
        form = LineString(np.concatenate([piece, piece[:1]]) if whole else piece)
        kwargs = {"quad_segs": segments, "join_style": _JOINS[pen.join], "mitre_limit": max(1.0, pen.miter_limit)}
        if whole:
            made.append(_ring(form, half, kwargs))
            continue
        # Where a line is cut at a sharp corner, its ends there are flat, whatever the pen's are.
        made.append(form.buffer(half, cap_style="flat", **kwargs))
        if not closed and pen.cap != "butt":
            ends = [(0, 1)] if number == 0 else []
            ends += [(-1, -2)] if number == len(pieces) - 1 else []
            made += [_cap(piece[at], piece[beside], half, pen.cap, segments) for at, beside in ends]
    made += [_bevel(*corner, half) for corner in cut]
    return made


def _ring(form: LineString, half: float, kwargs: dict[str, object]) -> BaseGeometry:
    """The band round a closed line: GEOS joins its ends like any other corner only where the line is a ring."""
    band: BaseGeometry = shapely.buffer(LinearRing(form.coords), half, **kwargs)
    return band


def _cap(at: FloatArray, beside: FloatArray, half: float, cap: Cap, segments: int) -> BaseGeometry:
    if cap == "round":
        disc: BaseGeometry = Point(at).buffer(half, quad_segs=segments)
        return disc
    along = (at - beside) / np.hypot(*(at - beside)) * half
    across = np.array([-along[1], along[0]])
    return Polygon([at + across, at - across, at - across + along, at + across + along])


def _at_sharp(
    line: FloatArray, closed: bool, limit: float
) -> tuple[list[FloatArray], list[tuple[FloatArray, FloatArray, FloatArray]]]:
    """The line cut at corners whose miter would be longer than the limit, and those corners (before, at, after): they
    are bevelled, where GEOS would cut the miter off.

    A miter is 1 / sin(angle / 2) as long as the pen is wide (SVG 1.1, 11.4).
    """
    ahead = np.roll(line, -1, axis=0) - line
    back = np.roll(line, 1, axis=0) - line
    cos = (ahead * back).sum(axis=1) / np.maximum(np.hypot(*ahead.T) * np.hypot(*back.T), 1e-300)
    sharp = np.sqrt(np.maximum(0.0, (1 - cos) / 2)) * limit < 1 - 1e-9
    if not closed:
        sharp[[0, -1]] = False
    at = np.flatnonzero(sharp)
    if not len(at):
        return [line], []
    n = len(line)
    corners = [(line[i - 1], line[i], line[(i + 1) % n]) for i in at.tolist()]
    if closed:
        line = np.concatenate([line[at[0] :], line[: at[0] + 1]])
        at = np.append(at - at[0], n)
    else:
        at = np.concatenate([[0], at, [n - 1]])
    return [line[a : b + 1] for a, b in itertools.pairwise(at.tolist())], corners


def _bevel(before: FloatArray, at: FloatArray, after: FloatArray, half: float) -> BaseGeometry:
    """The triangle that closes the outer side of a corner between two flat ends."""
    into, out = at - before, after - at
    side = -1.0 if into[0] * out[1] - into[1] * out[0] > 0 else 1.0
    ends = [at + side * half * np.array([-way[1], way[0]]) / max(float(np.hypot(*way)), 1e-300) for way in (into, out)]
    return Polygon([at, *ends])
