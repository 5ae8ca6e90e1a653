"""The words on the sign: every line in its face, at its height and in its place."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.composition.asked_lines import LEAST_CAP_HEIGHT_MM, AskedLines
from signgen.composition.compose import compose
from signgen.composition.field import Field
from signgen.composition.fit import (
    Points,
    first_place,
    largest_size,
    lying_within,
    room_beside,
)
from signgen.composition.placing import other_middles, text_middles
from signgen.composition.roles import roles_of
from signgen.composition.standing import places_of
from signgen.errors import CannotMakeError, Problem
from signgen.lettering.layout import Lettering, PlacedLine, set_rows, stacked
from signgen.lettering.numerals import borrowed_warnings, numeral_warning
from signgen.messages import Message, Mm
from signgen.spec.roles import Role
from signgen.spec.sign_spec import LineSpec, SignSpec, TextSpec

OFF_MIDDLE = Message("drawing.text_lies_off_middle_sign")


def lettering_of(
    spec: SignSpec, edge: Polygon, room: BaseGeometry, field: Field | None = None
) -> tuple[Lettering, tuple[Message, ...]]:
    """The text in the room where letters may lie, and warnings: composed, or filled: the middle of its ink in the
    middle of the sign, or where an outline of another shape has the most room for it, as large as fits where no height
    was asked for. `field`: where a composed text may stand; one that is filled needs none.

    Raises: AskError for a font that cannot be used or text that it lacks; CannotMakeError for what has no room.
    """
    asked = AskedLines.of(spec.text, [_pen_mm(spec, line) for line in spec.text.rows])
    shapely.prepare(room)
    sign_at = (spec.width_mm / 2, spec.height_mm / 2)
    middles = text_middles(edge, room)
    if field is not None and spec.text.layout == "composed":
        composed = compose(asked, line_roles(spec.text), field)
        if composed is not None:
            aligned = _aligned(composed.rows, field.text_room, composed.middle_mm)
            lettering = set_rows(
                aligned, chord_mm=spec.tolerances.chord_mm, block_at_mm=composed.middle_mm, sign_at_mm=sign_at
            )
            if not list(_collisions(spec, lettering)):
                return lettering, tuple(dict.fromkeys(_warnings(spec.text, lettering)))

    def places(size: float, among: Points) -> Points:
        rows = asked.rows(size, room)
        return among[:0] if rows is None else places_of(rows, room, among, sign_at)

    if asked.is_fitted:
        least, most = asked.least_and_most(room)
        tries = (
            largest_size(places, among, least, most, steady=asked.is_steady)
            for among in itertools.chain([middles], other_middles(edge, room))
        )
        found = next(filter(None, tries), None)
        if found is None:
            raise CannotMakeError.at(
                "text",
                Message("drawing.text_does_not_fit_between", least_cap_height=Mm(LEAST_CAP_HEIGHT_MM)),
                Message("drawing.use_larger_sign_or_another_arc")
                if any(line.arc for line in asked.lines)
                else Message("drawing.use_larger_sign_less_text"),
            )
        size, middle = found
        rows = asked.rows(size, room)
        assert rows is not None
    else:
        rows = asked.given_rows(room)
        lying = (
            places_of(rows, room, among, sign_at) for among in itertools.chain([middles], other_middles(edge, room))
        )
        middle = first_place(next(filter(len, lying), middles[:0]), middles)
    rows = _aligned(rows, room, middle)
    lettering = set_rows(rows, chord_mm=spec.tolerances.chord_mm, block_at_mm=middle, sign_at_mm=sign_at)
    problems = list(_collisions(spec, lettering))
    if problems:
        raise CannotMakeError(problems)
    moved = () if np.any(np.all(np.isclose(middles, middle), axis=1)) else (OFF_MIDDLE,)
    return lettering, (*moved, *dict.fromkeys(_warnings(spec.text, lettering)))


def line_roles(text: TextSpec) -> tuple[Role, ...]:
    """What each line is there for."""
    return roles_of(text.lines, [row.role for row in text.rows])


def _aligned(rows: tuple[PlacedLine, ...], room: BaseGeometry, middle: tuple[float, float]) -> tuple[PlacedLine, ...]:
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


def _pen_mm(spec: SignSpec, line: LineSpec) -> float:
    """How wide a line's strokes are cut; 0 when its letters have outlines."""
    return 2 * spec.v_bit.radius_at_depth_mm(spec.depth_of(line)) if spec.finish_of(line) == "stroke" else 0.0


def _collisions(spec: SignSpec, lettering: Lettering) -> Iterator[Problem]:
    """Lines round the sign's middle must not run into others, nor lines whose letters are made in different ways;
    straight lines alike that touch may, and then their letters are one, unless capitals would stand over each other."""
    rows = [spec.text.rows[row.measured.line.source] for row in lettering.rows]
    ways = [(spec.finish_of(row), spec.depth_of(row)) for row in rows]
    for letter in lettering.letters:
        lines = sorted({letter.line, *letter.other_lines})
        apart = any(lettering.rows[line].about_sign for line in lines) or len({ways[line] for line in lines}) > 1
        if len(lines) > 1 and (apart or _over_each_other(lettering, lines)):
            yield Problem(
                where="text",
                what=Message("drawing.lines_run_into_each_other", lines=tuple(line + 1 for line in lines)),
                remedy=_room_for_lines(rows),
            )
            return


def _room_for_lines(rows: Sequence[LineSpec]) -> Message:
    """What keeps lines apart, of what was asked for."""
    with_arc, fitted = any(row.arc for row in rows), all(row.is_fitted for row in rows)
    if fitted:
        return Message("drawing.use_arc_or_line_spacing" if with_arc else "drawing.use_line_spacing")
    return Message("drawing.use_another_arc_more_line" if with_arc else "drawing.use_line_spacing_or_smaller")


def _over_each_other(lettering: Lettering, lines: Sequence[int]) -> bool:
    """Whether baselines are less than a capital apart."""
    rows = [lettering.rows[line] for line in lines]
    return any(
        abs(one.baseline_mm - other.baseline_mm) < min(one.cap_height_mm, other.cap_height_mm)
        for one, other in itertools.pairwise(rows)
    )


def _warnings(text: TextSpec, lettering: Lettering) -> Iterator[Message]:
    joined = [(letter.line, *letter.other_lines) for letter in lettering.letters if letter.other_lines]
    touching = set(itertools.chain.from_iterable(joined))
    if touching:
        yield Message("drawing.lines_touch", lines=tuple(number + 1 for number in sorted(touching)))
    by_digits = {number for number, row in enumerate(text.rows) if row.digit_height_mm is not None}
    for row in lettering.rows:
        line = row.measured.line
        if line.source not in by_digits:
            warning = numeral_warning(line.face, [line.text])
            if warning:
                yield warning
        yield from borrowed_warnings(row.measured.shaped, line.face)
