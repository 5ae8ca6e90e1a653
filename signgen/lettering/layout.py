"""Lines of lettering set in a block: letters as areas in millimetres, aligned and centred by their ink."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct
from msgspec.structs import replace
from shapely.affinity import translate

from signgen.errors import AskError
from signgen.geometry.offsets import Area
from signgen.lettering.areas import GRID_PER_MM
from signgen.lettering.block import PlacedLine, stacked
from signgen.lettering.face import Face
from signgen.lettering.letters import Letter, line_letters, touching_joined
from signgen.lettering.line import Align, Arc, SetLine
from signgen.lettering.measure import Box, LineMeasure, measure_lines
from signgen.messages import Message, Num
from signgen.tolerances import DEFAULT_TOLERANCE_MM, Tolerances

__all__ = [
    "Align", "Arc", "Box", "Letter", "Lettering", "LineMeasure", "PlacedLine", "SetLine",
    "alike", "measure_lines", "set_lines", "set_rows", "stacked",
]  # fmt: skip


class Lettering(Struct, frozen=True, kw_only=True):
    """A block of letters. `rows` are its lines as they stand, in the order in which they were asked for.

    `cap_height_mm` is that of the smallest line, `ink_bounds_mm` is (x0, y0, x1, y1).
    """

    letters: tuple[Letter, ...]
    rows: tuple[PlacedLine, ...]
    ink_bounds_mm: Box

    @property
    def cap_height_mm(self) -> float:
        return min(row.cap_height_mm for row in self.rows)

    @property
    def baselines_mm(self) -> tuple[float, ...]:
        """Height of every line's baseline, on a circle that of the text's middle."""
        return tuple(row.baseline_mm for row in self.rows)

    def moved(self, dx_mm: float, dy_mm: float) -> Lettering:
        """The block shifted by whole steps of GRID_MM, nearest to what is asked, so that letters keep their shape."""
        steps = (round(dx_mm * GRID_PER_MM), round(dy_mm * GRID_PER_MM))
        dx, dy = steps[0] / GRID_PER_MM, steps[1] / GRID_PER_MM
        x0, y0, x1, y1 = self.ink_bounds_mm
        return replace(
            self,
            letters=tuple(_letter_shifted(letter, steps) for letter in self.letters),
            rows=tuple(row.moved(dx, dy) for row in self.rows),
            ink_bounds_mm=(x0 + dx, y0 + dy, x1 + dx, y1 + dy),
        )


def set_lines(
    lines: Sequence[str],
    face: Face,
    *,
    cap_height_mm: float,
    align: Align = "centre",
    line_spacing: float = 1.6,
    letter_spacing_mm: float = 0.0,
    chord_mm: float = Tolerances(total_mm=DEFAULT_TOLERANCE_MM).chord_mm,
    pen_mm: float = 0.0,
) -> Lettering:
    """The lines as areas, their ink centred about (0, 0); lines aligned by the ink of the widest.

    `cap_height_mm` is the height of H above the baseline, `chord_mm` how far outlines may stray from the font's
    curves. Letters that touch each other come as one. `pen_mm`: how wide the lines of a face are that is drawn in
    lines.

    Raises: AskError for a size that is none, text that shows nothing, characters that the face lacks.
    """
    for where, value, least in (("cap-height", cap_height_mm, 0.0), ("line-spacing", line_spacing, 0.0)):
        if not (math.isfinite(value) and value > least):
            raise AskError.at(
                where, Message("lettering.no_usable_size", value=Num(value)), Message("lettering.use_number_above_0")
            )
    if not math.isfinite(letter_spacing_mm):
        raise AskError.at(
            "letter-spacing",
            Message("lettering.no_usable_length", letter_spacing=Num(letter_spacing_mm)),
            Message("lettering.use_length_millimetres"),
        )
    asked = alike(
        lines, face, align=align, line_spacing=line_spacing, letter_spacing_mm=letter_spacing_mm, pen_mm=pen_mm
    )
    rows = stacked(measure_lines(asked), [cap_height_mm] * len(asked))
    assert rows is not None, "only a line on a circle can lack room"
    return set_rows(rows, chord_mm=chord_mm)


def alike(
    lines: Sequence[str],
    face: Face,
    *,
    align: Align = "centre",
    line_spacing: float = 1.6,
    letter_spacing_mm: float = 0,
    pen_mm: float = 0.0,
) -> tuple[SetLine, ...]:
    """Straight lines that differ in nothing but their words."""
    return tuple(
        SetLine(
            text=text,
            face=face,
            align=align,
            line_spacing=line_spacing,
            letter_spacing_mm=letter_spacing_mm,
            source=i,
            pen_mm=pen_mm,
        )
        for i, text in enumerate(lines)
    )


def set_rows(
    rows: Sequence[PlacedLine],
    *,
    chord_mm: float,
    block_at_mm: tuple[float, float] = (0.0, 0.0),
    sign_at_mm: tuple[float, float] = (0.0, 0.0),
) -> Lettering:
    """The letters of lines that have their places, with (0, 0) of the block, and of lines about the sign, at these
    points (to the nearest step of GRID_MM). `chord_mm`: how far outlines may stray from the font's curves."""
    letters: list[Letter] = []
    moved: list[PlacedLine] = []
    off = _off_centre(rows, chord_mm)
    for number, row in enumerate(rows):
        x, y = sign_at_mm if row.about_sign else (block_at_mm[0], block_at_mm[1] - off)
        steps = (round(x * GRID_PER_MM), round(y * GRID_PER_MM))
        letters += line_letters(row, number, steps, chord_mm)
        moved.append(row.moved(steps[0] / GRID_PER_MM, steps[1] / GRID_PER_MM))
    joined = touching_joined(letters)
    x0, y0, x1, y1 = shapely.total_bounds([letter.area for letter in joined])
    return Lettering(
        letters=tuple(joined),
        rows=tuple(moved),
        ink_bounds_mm=(float(x0), float(y0), float(x1), float(y1)),
    )


def _off_centre(rows: Sequence[PlacedLine], chord_mm: float) -> float:
    """How far above y = 0 the middle of the block's ink lies: the places of turned letters go by the corners of their
    boxes, which few letters fill."""
    block = [row for row in rows if not row.about_sign]
    if all(row.on_circle is None for row in block):
        return 0.0
    letters = [letter.area for row in block for letter in line_letters(row, 0, (0, 0), chord_mm)]
    _, y0, _, y1 = shapely.total_bounds(letters)
    return float(y0 + y1) / 2


def _letter_shifted(letter: Letter, steps: tuple[int, int]) -> Letter:
    lines = letter.pen_lines
    if lines is not None:
        lines = translate(lines, steps[0] / GRID_PER_MM, steps[1] / GRID_PER_MM)
    return replace(letter, area=_shifted(letter.area, steps), pen_lines=lines)


def _shifted(area: Area, steps: tuple[int, int]) -> Area:
    moved = shapely.transform(area, lambda mm: (np.rint(mm * GRID_PER_MM) + steps) / GRID_PER_MM)
    assert isinstance(moved, Area)
    return moved
