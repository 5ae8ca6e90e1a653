"""An outside witness: a small reader of programs and a board that is cut by stamping the cutter at every step.

It shares nothing with signgen: no reader, no geometry, no shape of cutter. What it knows of RS-274 is what plain
programs need (G0 to G3, G17, G20, G21, G90, M3, M5, T ignored); it stops at any other word. Slow and simple on purpose.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

Point = tuple[float, float, float]
IGNORED = {"G17", "G40", "G49", "G54", "G80", "G90", "G94", "M2", "M30"}


@dataclass(frozen=True)
class Step:
    """The tip's way in one move: points (n, 3) no further apart than asked; `rapid`, and whether the spindle turns."""

    line: int
    rapid: bool
    turning: bool
    points: np.ndarray


def steps(text: str, apart_mm: float) -> Iterator[Step]:
    """Every move of a program, in order. Raises: ValueError at a word that is not known here."""
    at: list[float | None] = [None, None, None]
    motion, unit, turning = "", 0.0, False
    for number, raw in enumerate(text.splitlines(), 1):
        words = re.findall(r"([A-Z])(-?\d*\.?\d+)", re.sub(r"\([^)]*\)", "", raw))
        values: dict[str, float] = {}
        dwell = ("G", "4") in words
        for letter, figure in words:
            code = f"{letter}{int(float(figure))}"
            if letter in "XYZIJ":
                values[letter] = float(figure) * unit
            elif code in ("G0", "G1", "G2", "G3"):
                motion = code
            elif code in ("G20", "G21"):
                unit = 25.4 if code == "G20" else 1.0
            elif code in ("M3", "M5"):
                turning = code == "M3"
            elif letter not in "FSN" and code not in IGNORED and not dwell:
                raise ValueError(f"line {number}: {code} is not known to the witness")
        if not values:
            continue
        end = [values.get(letter, old) for letter, old in zip("XYZ", at, strict=True)]
        if None not in at:
            yield Step(number, motion == "G0", turning, _way(at, end, values, motion, apart_mm))  # type: ignore[arg-type]
        elif motion != "G0":
            raise ValueError(f"line {number}: it cuts before it has said where it is")
        at = end


def _way(at: list[float], end: list[float], values: dict[str, float], motion: str, apart_mm: float) -> np.ndarray:
    start, stop = np.array(at), np.array(end)
    if motion in ("G0", "G1"):
        count = max(1, math.ceil(float(np.linalg.norm(stop - start)) / apart_mm))
        return start + np.linspace(0, 1, count + 1)[:, None] * (stop - start)
    centre = start[:2] + (values.get("I", 0.0), values.get("J", 0.0))
    first, last = (math.atan2(*(place[:2] - centre)[::-1]) for place in (start, stop))
    turn = (last - first) % (2 * math.pi) if motion == "G3" else -((first - last) % (2 * math.pi))
    if abs(turn) < 1e-9:
        turn = 2 * math.pi if motion == "G3" else -2 * math.pi
    radius = math.hypot(*(start[:2] - centre))
    count = max(2, math.ceil(abs(turn) * radius / apart_mm))
    share = np.linspace(0, 1, count + 1)
    angle = first + share * turn
    return np.column_stack(
        (
            centre[0] + radius * np.cos(angle),
            centre[1] + radius * np.sin(angle),
            start[2] + share * (stop[2] - start[2]),
        )
    )


@dataclass(frozen=True)
class Cutter:
    """As report.json has it."""

    kind: str
    diameter_mm: float
    angle_deg: float | None
    tip_mm: float

    def underside(self, away: np.ndarray) -> np.ndarray:
        """How far above its tip it is at distances from its axis; infinite beyond its radius."""
        rise = np.zeros_like(away)
        if self.kind == "v-bit":
            rise = np.maximum(away - self.tip_mm / 2, 0) / math.tan(math.radians(self.angle_deg or 90) / 2)
        elif self.kind == "drill":
            rise = away / math.tan(math.radians(self.angle_deg or 118) / 2)
        elif self.kind == "ball-nose":
            rise = self.diameter_mm / 2 - np.sqrt(np.maximum((self.diameter_mm / 2) ** 2 - away**2, 0))
        return np.where(away <= self.diameter_mm / 2, rise, np.inf)


class Board:
    """A board as heights at the centres of square cells, its bottom left corner at (x0, y0), its bottom at 0."""

    def __init__(self, x0: float, y0: float, width: float, height: float, top: float, cell: float) -> None:
        self.cell, self.top = cell, top
        self.x = x0 + cell * (np.arange(int(width / cell)) + 0.5)
        self.y = y0 + cell * (np.arange(int(height / cell)) + 0.5)
        self.z = np.full((len(self.y), len(self.x)), top)

    def window(self, x: float, y: float, reach: float) -> tuple[slice, slice]:
        """Rows and columns whose centres lie within a square about a place."""
        return tuple(
            slice(*np.searchsorted(centres, (place - reach, place + reach)))
            for centres, place in ((self.y, y), (self.x, x))
        )  # type: ignore[return-value]

    def run(self, text: str, cutter: Cutter, zero: Point, apart_mm: float) -> list[str]:
        """Cut a program; what is wrong with it is returned, a line each."""
        wrong = []
        for step in steps(text, apart_mm):
            points = step.points + zero
            for x, y, z in points[points[:, 2] < self.top]:
                # A cone reaches only as far as it is below the top.
                reach = cutter.diameter_mm / 2
                if cutter.kind == "v-bit":
                    slope = math.tan(math.radians(cutter.angle_deg or 90) / 2)
                    reach = min(reach, cutter.tip_mm / 2 + (self.top - z) * slope)
                rows, columns = self.window(x, y, reach + self.cell)
                away = np.hypot(self.y[rows, None] - y, self.x[None, columns] - x)
                under = z + cutter.underside(away)
                here = self.z[rows, columns]
                if step.rapid:
                    if (here - under > 0.02).any():
                        wrong.append(f"line {step.line}: a rapid is in the wood at ({x:.2f}, {y:.2f}), Z{z:.2f}")
                        break
                    continue
                if not step.turning:
                    wrong.append(f"line {step.line}: the spindle stands still in the wood")
                    break
                np.minimum(here, under, out=here)
        return wrong
