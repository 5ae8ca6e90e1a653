"""A closed chain of lines and curves that keeps them as curves, so that it can be scaled before it is chorded."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Literal

from msgspec import Struct

from signgen.borders.common import Point

Kind = Literal["line", "quadratic", "cubic", "ellipse"]
Map = Callable[[Point], Point]


class Segment(Struct, frozen=True, kw_only=True):
    """One piece of a chain; it starts where the last one ended.

    `points` of a line: its end; of a Bezier curve: control points and end; of an ellipse's arc: its end, the centre,
    and the centre plus each of the two half axes u and v, the arc running through centre + u cos t + v sin t from
    `from_rad` by `sweep_rad`.
    """

    kind: Kind
    points: tuple[Point, ...]
    from_rad: float = 0.0
    sweep_rad: float = 0.0

    @property
    def end(self) -> Point:
        return self.points[0] if self.kind == "ellipse" else self.points[-1]


class Chain(Struct, frozen=True, kw_only=True):
    """A closed chain. Curves keep their exact form under any affine map."""

    start: Point
    segments: tuple[Segment, ...]

    def mapped(self, to: Map) -> Chain:
        """The chain after an affine map of the plane."""
        return Chain(
            start=to(self.start),
            segments=tuple(
                Segment(
                    kind=each.kind,
                    points=tuple(to(point) for point in each.points),
                    from_rad=each.from_rad,
                    sweep_rad=each.sweep_rad,
                )
                for each in self.segments
            ),
        )

    def points(self, chord_mm: float) -> list[Point]:
        """Points along the chain, in its own order, the start first and not again at the end; no chord further than
        `chord_mm` from its curve."""
        found = [self.start]
        for segment in self.segments:
            found += _chorded(found[-1], segment, chord_mm)
        return found[:-1] if len(found) > 1 and math.dist(found[0], found[-1]) < 1e-9 else found


def _chorded(start: Point, segment: Segment, chord_mm: float) -> list[Point]:
    """Points after `start` up to the segment's end."""
    from signgen.geometry.curves import flatten_cubics, flatten_quadratics

    match segment.kind:
        case "line":
            return [segment.end]
        case "quadratic":
            points, _ = flatten_quadratics([start], [segment.points[0]], [segment.points[1]], chord_mm)
        case "cubic":
            first, second, end = segment.points
            points, _ = flatten_cubics([start], [first], [second], [end], chord_mm)
        case "ellipse":
            return _ellipse_points(segment, chord_mm)
    return [(float(x), float(y)) for x, y in points]


def _ellipse_points(segment: Segment, chord_mm: float) -> list[Point]:
    """Source: linear interpolation errs by at most h^2 / 8 times the second derivative, which is no longer than
    |u| + |v| here."""
    end, (cx, cy), u, v = segment.points
    ux, uy, vx, vy = u[0] - cx, u[1] - cy, v[0] - cx, v[1] - cy
    longest = max(math.hypot(ux, uy) + math.hypot(vx, vy), chord_mm)
    count = max(1, math.ceil(abs(segment.sweep_rad) / math.sqrt(8 * chord_mm / longest)))
    turns = [segment.from_rad + segment.sweep_rad * i / count for i in range(1, count)]
    return [
        *((cx + ux * math.cos(t) + vx * math.sin(t), cy + uy * math.cos(t) + vy * math.sin(t)) for t in turns),
        end,
    ]
