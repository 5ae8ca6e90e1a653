"""SVG path data as lines and curves. Source: W3C, SVG 1.1 (second edition), 8.3 path data, appendix F.6 arcs."""

from __future__ import annotations

import cmath
import math
import re
from collections.abc import Iterator

from signgen.artwork.matrix import NUMBER
from signgen.artwork.outline import CUBIC, LINE, QUADRATIC, Outline, outline_of

_COMMAND = re.compile(r"([MmZzLlHhVvCcSsQqTtAa])")
_N = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_ARC = re.compile(rf"[\s,]*({_N})[\s,]*({_N})[\s,]*({_N})[\s,]*([01])[\s,]*([01])[\s,]*({_N})[\s,]*({_N})", re.ASCII)
_SIZES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}

PIECE_RAD = math.pi / 8
"""An arc is cubic pieces that turn by no more: each strays from the circle by less than 1e-7 of its radius (derived
here: 4/27 sin^6(t/4) / cos^2(t/4), the error of the usual cubic; a quarter strays by 2.7e-4)."""

Quad = tuple[complex, complex, complex, complex]


class PathError(ValueError):
    """`args`: what stands there that makes no sense, '' when the data break off."""


def outline_from(data: str, most: int) -> Outline:
    """Raises: PathError for data that make no sense; OverflowError for more than `most` lines and curves."""
    pen = _Pen(most)
    head, *rest = _COMMAND.split(data)
    if head.strip():
        raise PathError(head.strip()[:40])
    for letter, text in zip(rest[::2], rest[1::2], strict=True):
        if not pen.starts and letter not in "Mm":
            raise PathError(letter)
        pen.draw(letter, list(_numbers(letter, text)))
    return outline_of(pen.kinds, pen.controls, pen.begins, pen.starts, pen.closed)


def _numbers(letter: str, text: str) -> Iterator[list[float]]:
    """The numbers of a command, as many at a time as it takes. Raises: PathError."""
    upper = letter.upper()
    if upper == "A":
        at, count = 0, 0
        while found := _ARC.match(text, at):
            yield [float(n) for n in found.groups()]
            at, count = found.end(), count + 1
        if text[at:].strip(" ,\t\r\n\f") or not count:
            raise PathError(text[at:].strip()[:40])
        return
    if strange := NUMBER.sub(" ", text).strip(" ,\t\r\n\f"):
        raise PathError(strange[:40])
    numbers, size = [float(n) for n in NUMBER.findall(text)], _SIZES[upper]
    if size == 0 and not numbers:
        yield []
    elif size == 0 or not numbers or len(numbers) % size:
        raise PathError("")
    else:
        for at in range(0, len(numbers), size):
            yield numbers[at : at + size]


class _Pen:
    def __init__(self, most: int) -> None:
        self.most = most
        self.kinds: list[int] = []
        self.controls: list[Quad] = []
        self.begins: list[int] = []
        self.starts: list[complex] = []
        self.closed: list[bool] = []
        self.here = self.start = 0j
        self.handle: tuple[str, complex] = ("", 0j)
        self.done = True  # whether the next line begins a part of its own

    def draw(self, letter: str, rows: list[list[float]]) -> None:
        upper, own = letter.upper(), letter.islower()
        for number, row in enumerate(rows):
            base = self.here if own else 0j
            points = [base + complex(x, y) for x, y in zip(row[::2], row[1::2], strict=False)]
            kind, before = "", self.handle
            match upper:
                case "M" if number == 0:
                    self._begin(points[0])
                case "M" | "L":
                    self._line(points[0])
                case "H":
                    self._line(complex(row[0] + base.real, self.here.imag))
                case "V":
                    self._line(complex(self.here.real, row[0] + base.imag))
                case "C":
                    kind = "C"
                    self._add(CUBIC, (self.here, *points))  # type: ignore[arg-type]
                    self.handle = ("C", points[1])
                case "S":
                    kind = "C"
                    first = 2 * self.here - before[1] if before[0] == "C" else self.here
                    self._add(CUBIC, (self.here, first, points[0], points[1]))
                    self.handle = ("C", points[0])
                case "Q":
                    kind = "Q"
                    self._add(QUADRATIC, (self.here, points[0], points[0], points[1]))
                    self.handle = ("Q", points[0])
                case "T":
                    kind = "Q"
                    middle = 2 * self.here - before[1] if before[0] == "Q" else self.here
                    self._add(QUADRATIC, (self.here, middle, middle, points[0]))
                    self.handle = ("Q", middle)
                case "A":
                    self._arc(row, base + complex(row[5], row[6]))
                case "Z":
                    self.closed[-1], self.here, self.done = True, self.start, True
            if not kind:
                self.handle = ("", 0j)

    def _begin(self, at: complex) -> None:
        self.here = self.start = at
        self.done = False
        self.begins.append(len(self.kinds))
        self.starts.append(at)
        self.closed.append(False)

    def _line(self, to: complex) -> None:
        self._add(LINE, (self.here, self.here, to, to))

    def _add(self, kind: int, points: Quad) -> None:
        if self.done:
            self._begin(self.here)
        if len(self.kinds) >= self.most:
            raise OverflowError
        self.kinds.append(kind)
        self.controls.append(points)
        self.here = points[3]

    def _arc(self, row: list[float], to: complex) -> None:
        if to == self.here:
            return  # SVG 1.1, F.6.2: such an arc is left out
        rx, ry = abs(row[0]), abs(row[1])
        if not rx or not ry:
            self._line(to)
            return
        for piece in arc_pieces(self.here, rx, ry, row[2], row[3] != 0, row[4] != 0, to):
            self._add(CUBIC, piece)


def arc_pieces(
    start: complex, rx: float, ry: float, turn_deg: float, large: bool, sweep: bool, end: complex
) -> Iterator[Quad]:
    """An elliptical arc from its ends, as cubics. Source: SVG 1.1 (second edition), appendix F.6.5 and F.6.6."""
    turn = cmath.exp(1j * math.radians(turn_deg))
    half = (start - end) / 2 / turn
    grow = math.sqrt(max(1.0, (half.real / rx) ** 2 + (half.imag / ry) ** 2))
    rx, ry = rx * grow, ry * grow
    spread = (rx * half.imag) ** 2 + (ry * half.real) ** 2
    if not spread or not math.isfinite(spread):
        raise PathError(f"{rx:g} {ry:g}")
    root = math.sqrt(max(0.0, (rx * ry) ** 2 / spread - 1))
    offset = (-root if large == sweep else root) * complex(rx * half.imag / ry, -ry * half.real / rx)
    centre = offset * turn + (start + end) / 2
    before, after = half - offset, -half - offset
    first = math.atan2(before.imag / ry, before.real / rx)
    swept = (math.atan2(after.imag / ry, after.real / rx) - first) % (2 * math.pi)
    if not sweep:
        swept -= 2 * math.pi
    yield from ellipse_pieces(centre, rx * turn, ry * 1j * turn, first, swept, start, end)


def ellipse_pieces(
    centre: complex, u: complex, v: complex, first: float, swept: float, start: complex, end: complex
) -> Iterator[Quad]:
    """centre + u cos t + v sin t from t = `first` by `swept`, as cubics. `start`, `end`: exactly its ends."""
    count = max(1, math.ceil(abs(swept) / PIECE_RAD - 1e-9))
    reach = 4 / 3 * math.tan(swept / count / 4)
    here = start
    for number in range(count):
        a, b = first + swept * number / count, first + swept * (number + 1) / count
        to = end if number == count - 1 else centre + u * math.cos(b) + v * math.sin(b)
        yield (
            here,
            here + reach * (v * math.cos(a) - u * math.sin(a)),
            to - reach * (v * math.cos(b) - u * math.sin(b)),
            to,
        )
        here = to
