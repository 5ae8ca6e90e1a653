"""SVG path data as one closed chain, by fontTools' parser."""

from __future__ import annotations

import cmath
import math
import re

from signgen.borders.chain import Chain, Segment
from signgen.borders.common import Point
from signgen.borders.svg_file import SvgPath
from signgen.errors import AskError
from signgen.messages import Message, Num

MOST_SEGMENTS = 500
"""Lines and curves of one outline, lines that go on almost straight counted as one: more than that is a traced picture,
not an outline, and takes minutes."""

MOST_POINTS = 5000
"""Lines and curves of one outline, each counted."""

SMOOTH_RAD = math.radians(15)
"""Lines that bend less than this where they meet are chords of one curve (derived here: 24 chords of a full circle)."""

_CLOSED_RATIO = 1e-4
"""Ends of a path that lie closer than this, over its size, were meant to be one point."""

_FOREIGN = re.compile(r"[^MmZzLlHhVvCcSsQqTtAa0-9eE+\-.,\s]")
_COMMAND = re.compile(r"([MmZzLlHhVvCcSsQqTtAa])")
_BARE_POINT = re.compile(r"(\d)\.(?!\d)")
_LEADING_ZEROS = re.compile(r"(?<![\d.])0+(?=\d)")


class _Pen:
    """What fontTools' parser tells its segments to. Arcs come as SVG writes them, so that they stay exact."""

    def __init__(self) -> None:
        self.starts: list[Point] = []
        self.closed: list[bool] = []
        self.segments: list[Segment] = []
        self.here: Point = (0.0, 0.0)

    def moveTo(self, to: Point) -> None:  # noqa: N802 (the parser's word)
        self.starts.append(to)
        self.here = to

    def lineTo(self, to: Point) -> None:  # noqa: N802
        self._add(Segment(kind="line", points=(to,)))

    def qCurveTo(self, control: Point, to: Point) -> None:  # noqa: N802
        self._add(Segment(kind="quadratic", points=(control, to)))

    def curveTo(self, first: Point, second: Point, to: Point) -> None:  # noqa: N802
        self._add(Segment(kind="cubic", points=(first, second, to)))

    def arcTo(self, rx: float, ry: float, turn_deg: float, large: bool, sweep: bool, to: Point) -> None:  # noqa: N802
        if to == self.here:
            return  # SVG 1.1, F.6.2: such an arc is left out
        if rx == 0 or ry == 0:
            self.lineTo(to)
            return
        self._add(_arc(self.here, rx, ry, turn_deg, large, sweep, to))

    def closePath(self) -> None:  # noqa: N802
        self.closed.append(True)

    def endPath(self) -> None:  # noqa: N802
        self.closed.append(False)

    def _add(self, segment: Segment) -> None:
        self.segments.append(segment)
        self.here = segment.end


def chain_of(path: SvgPath) -> Chain:
    """The path in millimetres, Y up, at its own size, wherever it lies.

    Raises: AskError when the data make no sense, or are not one closed path.
    """
    from fontTools.svgLib.path import parse_path

    foreign = _FOREIGN.search(path.data)
    if foreign:
        raise AskError.at(
            path.where, Message("border.path_s_data_hold", foreign=foreign[0]), Message("border.save_plain_svg_again")
        )
    pen = _Pen()
    try:
        parse_path(_as_css(path.data), pen)
    except (ValueError, IndexError):
        raise AskError.at(path.where, Message("border.path_s_data_break_off"), Message("border.save_again")) from None
    _must_be_one(pen, path)
    a, b, c, d, e, f = path.matrix
    chain = Chain(start=pen.starts[0], segments=tuple(pen.segments))
    return chain.mapped(lambda p: (a * p[0] + c * p[1] + e, -(b * p[0] + d * p[1] + f)))


def _as_css(data: str) -> str:
    """Path data with its numbers as CSS writes them, which is what the parser reads: SVG also allows "1." and "00.5".
    An arc's zeros stay, for there "01" may be two flags."""
    pieces = _COMMAND.split(_BARE_POINT.sub(r"\1", re.sub(r"\s+", " ", data)))
    for i in range(1, len(pieces) - 1, 2):
        if pieces[i] not in "Aa":
            pieces[i + 1] = _LEADING_ZEROS.sub("", pieces[i + 1])
    return "".join(pieces)


def _must_be_one(pen: _Pen, path: SvgPath) -> None:
    """Raises: AskError unless there is one closed path of a sensible number of segments and finite points."""
    if len(pen.starts) != 1:
        raise AskError.at(
            path.where, Message("border.path_parts", count=len(pen.starts)),
            Message("border.keep_one_closed_outline_holes"),
        )  # fmt: skip
    for count, most in ((len(pen.segments), MOST_POINTS), (_runs(pen), MOST_SEGMENTS)):
        if count > most:
            what = Message("border.path_lines_curves", count=count)
            raise AskError.at(path.where, what, Message("border.simplify_most", most_segments=most))
    points = [pen.starts[0], *(point for segment in pen.segments for point in segment.points)]
    if not all(math.isfinite(x) and math.isfinite(y) and max(abs(x), abs(y)) < 1e9 for x, y in points):
        raise AskError.at(
            path.where, Message("border.path_reaches_further_than_anybody"), Message("border.look_numbers")
        )
    size = max(math.dist(points[0], point) for point in points)
    flat = all(segment.kind == "line" for segment in pen.segments) and len(set(points)) < 3
    if len(pen.segments) < 2 or size == 0 or flat:
        raise AskError.at(path.where, Message("border.path_encloses_nothing"), Message("border.draw_closed_outline"))
    gap = math.dist(pen.here, pen.starts[0])
    if not pen.closed[0] and gap > _CLOSED_RATIO * size:
        raise AskError.at(
            path.where, Message("border.path_open_ends_size_apart", gap=Num(gap / size)), Message("border.close")
        )


def _runs(pen: _Pen) -> int:
    """Lines and curves, where lines that go on almost straight are one."""
    count = 0
    way: complex | None = None
    here = pen.starts[0]
    for segment in pen.segments:
        along = complex(*segment.end) - complex(*here) if segment.kind == "line" else None
        smooth = way and along and abs(cmath.phase(along / way)) < SMOOTH_RAD
        count += not smooth
        way, here = along, segment.end
    return count


def _arc(start: Point, rx: float, ry: float, turn_deg: float, large: bool, sweep: bool, end: Point) -> Segment:
    """An elliptical arc from its ends to its centre. Source: SVG 1.1 (second edition), appendix F.6.5 and F.6.6."""
    turn = cmath.exp(1j * math.radians(turn_deg))
    half = (complex(*start) - complex(*end)) / 2 / turn
    grow = math.sqrt(max(1.0, (half.real / rx) ** 2 + (half.imag / ry) ** 2))
    rx, ry = rx * grow, ry * grow
    spread = (rx * half.imag) ** 2 + (ry * half.real) ** 2
    root = math.sqrt(max(0.0, (rx * ry) ** 2 / spread - 1))
    offset = (-root if large == sweep else root) * complex(rx * half.imag / ry, -ry * half.real / rx)
    centre = offset * turn + (complex(*start) + complex(*end)) / 2
    before, after = (half - offset), (-half - offset)
    from_rad = math.atan2(before.imag / ry, before.real / rx)
    sweep_rad = (math.atan2(after.imag / ry, after.real / rx) - from_rad) % (2 * math.pi)
    if not sweep:
        sweep_rad -= 2 * math.pi
    u, v = centre + rx * turn, centre + ry * 1j * turn
    return Segment(
        kind="ellipse",
        points=(end, (centre.real, centre.imag), (u.real, u.imag), (v.real, v.imag)),
        from_rad=from_rad,
        sweep_rad=sweep_rad,
    )
