"""The words on the sign: every line in its face, at its height and in its place."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.drawing.fit import (
    Points,
    first_place,
    largest_size,
    lying_within,
    quads_within,
    room_beside,
)
from signgen.drawing.placing import other_middles, text_middles
from signgen.errors import AskError, CannotMakeError, Problem
from signgen.lettering.faces import Face, open_face
from signgen.lettering.layout import Arc, Lettering, Line, Placed, measure_lines, set_rows, stacked
from signgen.lettering.measure import measure_line
from signgen.lettering.numerals import borrowed_warnings, numeral_warning
from signgen.lettering.wrap import words, wrapped
from signgen.spec.sign_spec import LineSpec, SignSpec, TextSpec

LEAST_CAP_HEIGHT_MM = 3.0
"""Below this a V-groove closes up and nobody reads it (common practice)."""

MOST_CAP_RATIO = 2.5
"""Greatest cap height over the height of the room: text without capitals, or of small figures, has room for more than
the room's height, but a text of nothing but dashes should not become a bar across the sign."""

FINE_MM, FINER_MM = 0.01, 0.001
"""Heights that follow from the fitted size are rounded down to the first; those of lines that are to be alike in width
to the second, for many letters multiply what is lost."""

OFF_MIDDLE = "The text lies off the middle of the sign, for it has no room there."

GAP_RATIO = 0.25
"""Room to keep between a line round the sign's middle and any other, over the lesser cap height (common practice)."""


def lettering_of(spec: SignSpec, edge: Polygon, room: BaseGeometry) -> tuple[Lettering, tuple[str, ...]]:
    """The text in the room where letters may lie, and warnings: the middle of its ink in the middle of the sign, or
    where an outline of another shape has the most room for it; as large as fits where no height was asked for.

    Raises: AskError for a font that cannot be used or text that it lacks; CannotMakeError for what has no room.
    """
    asked = _Asked.of(spec.text)
    shapely.prepare(room)
    sign_at = (spec.width_mm / 2, spec.height_mm / 2)
    middles = text_middles(edge, room)

    def places(size: float, among: Points) -> Points:
        rows = asked.rows(size, room)
        return among[:0] if rows is None else _places(rows, room, among, sign_at)

    if asked.is_fitted:
        least, most = asked.least_and_most(room)
        tries = (
            largest_size(places, among, least, most, steady=asked.is_steady)
            for among in itertools.chain([middles], other_middles(edge, room))
        )
        found = next(filter(None, tries), None)
        if found is None:
            arcs = "another arc, " if any(line.arc for line in asked.lines) else ""
            raise CannotMakeError.at(
                "text",
                "The text does not fit between margins and holes, not even with capitals of "
                f"{LEAST_CAP_HEIGHT_MM:g} mm.",
                f"Use a larger sign, less text, {arcs}a narrower face, a smaller margin, or holes nearer to the edge.",
            )
        size, middle = found
        rows = asked.rows(size, room)
        assert rows is not None
    else:
        rows = asked.given_rows(room)
        lying = (
            _places(rows, room, among, sign_at) for among in itertools.chain([middles], other_middles(edge, room))
        )
        middle = first_place(next(filter(len, lying), middles[:0]), middles)
    rows = _aligned(rows, room, middle)
    lettering = set_rows(rows, chord_mm=spec.tolerances.chord_mm, block_at_mm=middle, sign_at_mm=sign_at)
    problems = list(_collisions(lettering))
    if problems:
        raise CannotMakeError(problems)
    moved = () if np.any(np.all(np.isclose(middles, middle), axis=1)) else (OFF_MIDDLE,)
    return lettering, (*moved, *dict.fromkeys(_warnings(spec.text, lettering)))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """The lines of a text with their faces open. `heights_mm`: of each, None where it is fitted."""

    text: TextSpec
    lines: tuple[Line, ...]
    heights_mm: tuple[float | None, ...]

    @staticmethod
    def of(text: TextSpec) -> _Asked:
        """Raises: AskError with the problems of all lines."""
        lines: list[Line] = []
        heights: list[float | None] = []
        problems: dict[Problem, None] = {}
        for number, row in enumerate(text.rows):
            try:
                face = open_face(row.font, dict(row.font_axes))
                heights.append(_height_asked(row, face))
            except AskError as error:
                own = text.own_lines and (row.font, row.font_axes) != (text.font, text.font_axes)
                found = (problem.below(f"line {number + 1}") if own else problem for problem in error.problems)
                problems.update(dict.fromkeys(found))
                continue
            arc = row.arc
            lines.append(
                Line(
                    text=row.text,
                    face=face,
                    align=row.align,
                    line_spacing=row.line_spacing,
                    letter_spacing_mm=row.letter_spacing_mm,
                    arc=Arc(radius_mm=arc.radius_mm, side=arc.side, about_sign=arc.centre == "sign") if arc else None,
                    fallback=text.font_fallback,
                    source=number,
                )
            )
        if problems:
            raise AskError(problems)
        measure_lines(lines)  # what cannot be set is told before anything is tried for size
        return _Asked(text=text, lines=tuple(lines), heights_mm=tuple(heights))

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
        return LEAST_CAP_HEIGHT_MM / min(ratios), MOST_CAP_RATIO * (y1 - y0) / max(ratios)

    def rows(self, size: float, room: BaseGeometry) -> tuple[Placed, ...] | None:
        """The lines at that size; None when a word is too wide or a line has no room on its circle."""
        lines: list[Line] = []
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

    def given_rows(self, room: BaseGeometry) -> tuple[Placed, ...]:
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
                what = f"'{word}' alone is {wide:.4g} mm wide with capitals of {height:.4g} mm."
                problems.append(Problem(where="wrap", what=what, remedy="Use a smaller height or a larger width."))
            elif row.arc and stacked(measure_lines([line]), [height]) is None:
                what = f"'{line.text}' has no room on a circle of {row.arc.radius_mm:g} mm."
                remedy = "Use a larger radius, a smaller height or less text."
                problems.append(Problem(where="arc", what=what, remedy=remedy))
        raise CannotMakeError(problems)

    def _broken(self, line: Line, height: float, room: BaseGeometry) -> tuple[str, ...] | None:
        """The line in parts that are not wider than was asked, nor than the room."""
        if self.text.wrap_mm is None or line.arc is not None or room.is_empty:
            return (line.text,)
        most = min(self.text.wrap_mm, room.bounds[2] - room.bounds[0])
        return wrapped(line.text, most, lambda part: _width(replace(line, text=part), height))


def _height_asked(row: LineSpec, face: Face) -> float | None:
    """The cap height given, as it is or by that of the figures."""
    if row.digit_height_mm is None:
        return row.cap_height_mm
    if not face.digit_height_ratio:
        raise AskError.at("digit-height", f"{face.name} has no figure 1.", "Give cap-height, or use another font.")
    return row.digit_height_mm / face.digit_height_ratio


def _width(line: Line, height: float) -> float:
    if line.letter_spacing_mm == 0:
        return height * _unit_width(line)
    return measure_line(line).width_mm(height)


@lru_cache(maxsize=4096)
def _unit_width(line: Line) -> float:
    """Width over cap height of a line without letter spacing: breaking a text asks for it at many sizes."""
    return measure_line(line).width_mm(1.0)


def _down(height: float, step: float) -> float:
    """Rounded down to a whole step; what differs from one by floating point alone counts as it."""
    return round(math.floor(height / step + 1e-6) * step, 6)


def _places(rows: Sequence[Placed], room: BaseGeometry, middles: Points, sign_at: tuple[float, float]) -> Points:
    """Those of the places for the block's middle where all lines lie in the room and clear of those about the sign."""
    about = [row for row in rows if row.about_sign and row.quads_mm is not None]
    block = [row for row in rows if not row.about_sign]
    at_sign = np.array([sign_at])
    for row in about:
        assert row.quads_mm is not None
        if not len(quads_within(room, row.quads_mm, at_sign)):
            return middles[:0]
    middles = lying_within(room, [row.box_mm for row in block if row.box_mm is not None], middles)
    for row in block:
        if row.quads_mm is not None:
            middles = quads_within(room, row.quads_mm, middles)
    if not about or not len(middles):
        return middles
    if any(_near(one, other) for i, one in enumerate(about) for other in about[:i]):
        return middles[:0]
    clear = [
        not any(_near(one, row.moved(x - sign_at[0], y - sign_at[1])) for one in about for row in block)
        for x, y in middles.tolist()
    ]
    kept: Points = middles[np.array(clear, dtype=bool)]
    return kept


def _near(one: Placed, other: Placed) -> bool:
    """Whether the ink boxes of two lines come nearer to each other than they should."""
    shapes = [_outlines(row) for row in (one, other)]
    gap = GAP_RATIO * min(one.cap_height_mm, other.cap_height_mm)
    return bool(shapely.dwithin(shapes[0][:, None], shapes[1][None, :], gap).any())


def _outlines(row: Placed) -> np.ndarray[tuple[int], np.dtype[np.object_]]:
    if row.quads_mm is not None:
        return np.asarray(shapely.polygons(row.quads_mm))
    return np.array([] if row.box_mm is None else [shapely.box(*row.box_mm)], dtype=object)


def _aligned(rows: tuple[Placed, ...], room: BaseGeometry, middle: tuple[float, float]) -> tuple[Placed, ...]:
    """The lines with those to the left and the right moved out to where the room ends, all by the same distance."""
    moves: list[float] = []
    half = 0.0
    for row in rows:
        box = row.box_mm
        if box is None:
            continue
        half = max(half, (box[2] - box[0]) / 2)
        side = row.measured.line.align
        if side != "centre":
            at = (box[0] + middle[0], box[1] + middle[1], box[2] + middle[0], box[3] + middle[1])
            inside = len(lying_within(room, [at], np.zeros((1, 2)))) > 0
            moves.append(room_beside(room, at, side) if inside else 0.0)
    if not moves or min(moves) <= 0:
        return rows
    lines = [row.measured for row in rows]
    moved = stacked(lines, [row.cap_height_mm for row in rows], half + min(moves))
    assert moved is not None
    return moved


def _collisions(lettering: Lettering) -> Iterator[Problem]:
    """Lines round the sign's middle must not run into others; straight lines set close together may, and then their
    letters are one."""
    for letter in lettering.letters:
        lines = sorted({letter.line, *letter.other_lines})
        if len(lines) > 1 and any(lettering.rows[line].about_sign for line in lines):
            yield Problem(
                where="text",
                what=f"Lines {' and '.join(str(line + 1) for line in lines)} run into each other.",
                remedy="Use another arc, smaller letters, or leave the height out so that they are made to fit.",
            )
            return


def _warnings(text: TextSpec, lettering: Lettering) -> Iterator[str]:
    by_digits = {number for number, row in enumerate(text.rows) if row.digit_height_mm is not None}
    for row in lettering.rows:
        line = row.measured.line
        if line.source not in by_digits:
            warning = numeral_warning(line.face, [line.text])
            if warning:
                yield warning
        yield from borrowed_warnings(row.measured.shaped, line.face)
