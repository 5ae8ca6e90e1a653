"""The lines of a text with their faces open: how high each is at a size of the text, and where it is broken."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry.base import BaseGeometry

from signgen.errors import AskError, CannotMakeError, Problem
from signgen.lettering.centreline import lined
from signgen.lettering.face import Face
from signgen.lettering.faces import open_face
from signgen.lettering.layout import Arc, PlacedLine, SetLine, measure_lines, stacked
from signgen.lettering.measure import measure_line
from signgen.lettering.wrap import words, wrapped
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import LineSpec, TextSpec

LEAST_CAP_HEIGHT_MM = 3.0
"""Below this a V-groove closes up and nobody reads it (common practice)."""

MOST_CAP_RATIO = 2.5
"""Greatest cap height over the height of the room: text without capitals, or of small figures, has room for more than
the room's height, but a text of nothing but dashes should not become a bar across the sign."""

LEAST_PEN_RATIO = 4.0
"""Least cap height over the width of strokes: the boldest faces are no bolder."""

FINE_MM, FINER_MM = 0.01, 0.001
"""Heights that follow from the fitted size are rounded down to the first; those of lines that are to be alike in width
to the second, for many letters multiply what is lost."""


FILLED_SPACING = 1.6
"""From one baseline to the next over the cap height, where nobody said and nothing is composed (common practice)."""


class AskedLines(Struct, frozen=True, kw_only=True):
    """The lines of a text with their faces open. `heights_mm`: of each, None where it is fitted."""

    text: TextSpec
    lines: tuple[SetLine, ...]
    heights_mm: tuple[float | None, ...]

    @staticmethod
    def of(text: TextSpec, pens_mm: Sequence[float] | None = None) -> AskedLines:
        """`pens_mm`: how wide each line's strokes are cut, 0 for letters with outlines. Raises: AskError with the
        problems of all lines."""
        pens = pens_mm or [0.0] * len(text.rows)
        lines: list[SetLine] = []
        heights: list[float | None] = []
        problems: dict[Problem, None] = {}
        for number, (row, pen) in enumerate(zip(text.rows, pens, strict=True)):
            try:
                face = open_face(row.font, dict(row.font_axes))
                if pen:
                    face = lined(face)
                elif face.lines_of is not None:
                    what = Message("drawing.drawn_single_lines_no_width", name=face.name)
                    raise AskError.at("font", what, Message("drawing.use_finish_stroke_another_font"))
                heights.append(_height_asked(row, face, pen))
            except AskError as error:
                own = text.own_lines and (row.font, row.font_axes) != (text.font, text.font_axes)
                found = (problem.below(f"line {number + 1}") if own else problem for problem in error.problems)
                problems.update(dict.fromkeys(found))
                continue
            lines.append(
                SetLine(
                    text=row.text,
                    face=face,
                    align=row.align,
                    line_spacing=FILLED_SPACING if row.line_spacing is None else row.line_spacing,
                    letter_spacing_mm=row.letter_spacing_mm or 0.0,
                    arc=_arc(row, text.layout == "composed"),
                    fallback=text.font_fallback,
                    source=number,
                    pen_mm=pen,
                )
            )
        if problems:
            raise AskError(problems)
        measure_lines(lines)  # what cannot be set is told before anything is tried for size
        return AskedLines(text=text, lines=tuple(lines), heights_mm=tuple(heights))

    @property
    def is_fitted(self) -> bool:
        return None in self.heights_mm

    @property
    def is_steady(self) -> bool:
        """Whether smaller text fits wherever larger text does: all lines grow about one middle, and none is broken."""
        return self.text.wrap_mm is None and all(height is None for height in self.heights_mm)

    def least_and_most(self, room: BaseGeometry) -> tuple[float, float]:
        """The sizes to try: cap heights, or widths of lines that are to be alike in width."""
        if room.is_empty:
            return 1.0, 0.0
        x0, y0, x1, y1 = room.bounds
        fitted = [i for i, height in enumerate(self.heights_mm) if height is None]
        if self.text.fit == "each":
            measured = measure_lines(self.lines)
            return max(measured[i].width_mm(LEAST_CAP_HEIGHT_MM + FINER_MM) for i in fitted), x1 - x0
        ratios = [self.text.rows[i].height_ratio for i in fitted]
        least = max(
            max(LEAST_CAP_HEIGHT_MM, LEAST_PEN_RATIO * self.lines[i].pen_mm) / self.text.rows[i].height_ratio
            for i in fitted
        )
        return least, MOST_CAP_RATIO * (y1 - y0) / max(ratios)

    def rows(self, size: float, room: BaseGeometry) -> tuple[PlacedLine, ...] | None:
        """The lines at that size; None when a word is too wide or a line has no room on its circle."""
        lines: list[SetLine] = []
        heights: list[float] = []
        for line, asked, row in zip(self.lines, self.heights_mm, self.text.rows, strict=True):
            if asked is not None:
                height = asked
            elif self.text.fit == "each":
                measured = measure_line(line)
                wanted = measured.height_of_width_mm(size) if measured.shows else LEAST_CAP_HEIGHT_MM
                height = _down(wanted, FINER_MM)
            else:
                height = _down(size * row.height_ratio, FINE_MM)
            if height <= 0:
                return None
            parts = self._broken(line, height, room)
            if parts is None:
                return None
            lines += [replace(line, text=part) for part in parts]
            heights += [height] * len(parts)
        return stacked(measure_lines(lines), heights)

    def given_rows(self, room: BaseGeometry) -> tuple[PlacedLine, ...]:
        """The lines when the height of all is given. Raises: CannotMakeError."""
        rows = self.rows(0.0, room)
        if rows is not None:
            return rows
        problems = []
        for line, height, row in zip(self.lines, self.heights_mm, self.text.rows, strict=True):
            assert height is not None
            if self._broken(line, height, room) is None:
                word = max(words(line.text), key=lambda part: _width(replace(line, text=part), height))
                wide = _width(replace(line, text=word), height)
                what = Message("drawing.alone_wide_capitals", word=word, wide=Mm(wide), height=Mm(height))
                problems.append(
                    Problem(where="wrap", what=what, remedy=Message("drawing.use_smaller_height_larger_width"))
                )
            elif row.arc and stacked(measure_lines([line]), [height]) is None:
                what = Message("drawing.no_room_circle", text=line.text, radius=Mm(row.arc.radius_mm))
                remedy = Message("drawing.use_larger_radius_smaller_height")
                problems.append(Problem(where="arc", what=what, remedy=remedy))
        raise CannotMakeError(problems)

    def _broken(self, line: SetLine, height: float, room: BaseGeometry) -> tuple[str, ...] | None:
        """The line in parts that are not wider than was asked, nor than the room."""
        if self.text.wrap_mm is None or line.arc is not None or room.is_empty:
            return (line.text,)
        most = min(self.text.wrap_mm, room.bounds[2] - room.bounds[0])
        return wrapped(line.text, most, lambda part: _width(replace(line, text=part), height))


def _arc(row: LineSpec, by_words: bool) -> Arc | None:
    if row.arc is None:
        return None
    about_sign = row.arc.centre == "sign"
    return Arc(radius_mm=row.arc.radius_mm, side=row.arc.side, about_sign=about_sign, by_words=by_words)


def _height_asked(row: LineSpec, face: Face, pen_mm: float) -> float | None:
    """The cap height given, as it is or by that of the figures. Raises: AskError."""
    given = row.cap_height_mm if row.digit_height_mm is None else row.digit_height_mm
    if given is not None and given < LEAST_PEN_RATIO * pen_mm - 1e-9:
        where = "cap-height" if row.digit_height_mm is None else "digit-height"
        what = Message("drawing.strokes_wide_fill_letters_high", pen=Mm(pen_mm), given=Mm(given))
        raise AskError.at(where, what, Message("drawing.use_more_smaller_depth", least=Mm(LEAST_PEN_RATIO * pen_mm)))
    if row.digit_height_mm is None:
        return row.cap_height_mm
    if not face.digit_height_ratio:
        raise AskError.at(
            "digit-height",
            Message("drawing.no_figure_1", name=face.name),
            Message("drawing.give_cap_height_use_another"),
        )
    return (row.digit_height_mm - pen_mm) / face.digit_height_ratio + pen_mm


def _width(line: SetLine, height: float) -> float:
    if line.letter_spacing_mm == 0 and not line.pen_mm:
        return height * _unit_width(line)
    return measure_line(line).width_mm(height)


@lru_cache(maxsize=4096)
def _unit_width(line: SetLine) -> float:
    """Width over cap height of a line without letter spacing: breaking a text asks for it at many sizes."""
    return measure_line(line).width_mm(1.0)


def _down(height: float, step: float) -> float:
    """Rounded down to a whole step; what differs from one by floating point alone counts as it."""
    return round(math.floor(height / step + 1e-6) * step, 6)
