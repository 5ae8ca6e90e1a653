"""Rows at their heights, one below the other: the gaps between them, and where their ink lies."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from signgen.composition.proportions import (
    BELOW_DESCENDER_RATIO,
    DESCENDER_WEIGHT,
    SAME_GAP_RATIO,
    SMALL_GAP_RATIO,
)
from signgen.composition.setting import SetRow, Setting
from signgen.geometry.paths import FloatArray
from signgen.lettering.layout import PlacedLine, stacked
from signgen.lettering.measure import Box, LineMeasure


class Block(Struct, frozen=True):
    """Where the ink of each line lies about the block's middle: boxes of straight ones, turned boxes of those on a
    circle that goes with the block. `lower_mm`: how far below its ink's middle that of the block is to be set, since
    descenders do not weigh what they measure (as a number that is added to Y). `placed`: all lines, when one of them
    stands on a circle."""

    inks: tuple[Box | None, ...]
    quads: tuple[FloatArray, ...]
    lower_mm: float
    placed: tuple[PlacedLine, ...] = ()


def block_of(setting: Setting, each: Sequence[float]) -> Block | None:
    """None when a line has no room on its circle."""
    if any(row.line.arc is not None for row in setting.rows):
        placed = stacked(spaced_lines(setting.rows, each), each)
        if placed is None:
            return None
        flat = [row for row in placed if not row.about_sign]
        inks = tuple(row.box_mm for row in flat)
        quads = tuple(row.quads_mm for row in flat if row.quads_mm is not None)
        feet = [row.baseline_mm for row in flat if row.box_mm is not None]
        return Block(inks, quads, _lower_mm(inks, feet), placed)
    boxes: list[Box | None] = []
    feet = []
    baseline = 0.0
    for row, height, gap in zip(setting.rows, each, _gaps(setting.rows, each), strict=True):
        baseline -= gap + (height if boxes else 0.0)
        ink = row.ink_mm(height)
        if ink is None:
            boxes.append(None)
            continue
        half = (ink[2] - ink[0]) / 2
        boxes.append((-half, ink[1] + baseline, half, ink[3] + baseline))
        feet.append(baseline)
    shown = [box for box in boxes if box is not None]
    if not shown:
        return None
    middle = (min(box[1] for box in shown) + max(box[3] for box in shown)) / 2
    inks = tuple(None if box is None else (box[0], box[1] - middle, box[2], box[3] - middle) for box in boxes)
    return Block(inks, (), _lower_mm(inks, [foot - middle for foot in feet]))


def _lower_mm(inks: Sequence[Box | None], feet: Sequence[float]) -> float:
    shown = [ink[1] for ink in inks if ink is not None]
    if not shown or not feet:
        return 0.0
    return -(1 - DESCENDER_WEIGHT) * max(0.0, min(feet) - min(shown)) / 2


def _gaps(rows: Sequence[SetRow], heights: Sequence[float]) -> Iterator[float]:
    """From the feet of the line above to the heads of the capitals of each line; 0 for the first."""
    above: tuple[SetRow, float] | None = None
    for row, height in zip(rows, heights, strict=True):
        if above is None:
            yield 0.0
        elif not row.gap_open:
            yield (row.line.line_spacing - 1) * (above[1] + height) / 2
        else:
            last, last_height = above
            small = min(height, last_height)
            gap = (SAME_GAP_RATIO if last.group == row.group else SMALL_GAP_RATIO) * small
            ink = last.ink_mm(last_height) if last.line.arc is None else None
            yield gap if ink is None else max(gap, -ink[1] + BELOW_DESCENDER_RATIO * small)
        above = (row, height)


def spaced_lines(rows: Sequence[SetRow], heights: Sequence[float]) -> list[LineMeasure]:
    """The lines with the spacing above each that makes their gaps."""
    lines: list[LineMeasure] = []
    above = 0.0
    for row, height, gap in zip(rows, heights, _gaps(rows, heights), strict=True):
        lines.append(row.at(height, 1 + 2 * gap / (above + height) if lines else row.line.line_spacing))
        above = height
    return lines
