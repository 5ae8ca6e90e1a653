"""From lines in their places to letters as areas: glyphs of a cluster together, letters that touch made one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import shapely
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import MultiLineString

from signgen.geometry.offsets import Area, area_of, polygons, quad_segs
from signgen.geometry.paths import FloatArray
from signgen.lettering.arcs import turned
from signgen.lettering.areas import GRID_PER_MM, grid_areas, on_grid, placed
from signgen.lettering.block import PlacedLine
from signgen.messages import Message


class Letter(Struct, frozen=True, kw_only=True):
    """One letter, or several that touch (joined script, tight spacing), as the area to cut.

    `name` is unique in its lettering: "line 1 letter 2", "line 1 letters 2-5". `text` holds the characters that it
    stands for, `line` (from 0) and `index` (from 0, counting letters that show, in reading order) where the first of
    them is. `area` is valid, shells counter-clockwise, in whole steps of GRID_MM. `other_lines`: those that it reaches
    into, when it touches their letters. `pen_lines`: what the middle of a pen follows to make the area, None for
    letters that have outlines of their own. `title`: the name in words.
    """

    name: str
    text: str
    line: int
    index: int
    area: Area
    other_lines: tuple[int, ...] = ()
    pen_lines: MultiLineString | None = None
    title: Message


def line_letters(row: PlacedLine, number: int, shift: tuple[int, int], chord_mm: float) -> list[Letter]:
    """The letters of one line in reading order, glyphs of a cluster together."""
    measured = row.measured
    if measured.line.face.lines_of is not None:
        return pen_letters(row, number, shift, chord_mm)
    clusters: dict[tuple[int, int], list[Area]] = {}
    shapes = _shapes(row, chord_mm)
    areas = _along_line(row, shapes, shift) if row.on_circle is None else _round_circle(row, shapes, shift)
    for glyph, area in zip(measured.inked, areas, strict=True):
        if not area.is_empty:
            clusters.setdefault((glyph.start, glyph.end), []).append(area)
    return [
        Letter(
            name=f"line {number + 1} letter {index + 1}",
            title=Message("name.letter", line=number + 1, letter=index + 1),
            text=measured.shaped.text[start:end],
            line=number,
            index=index,
            area=parts[0] if len(parts) == 1 else _merged(parts),
        )
        for index, ((start, end), parts) in enumerate(sorted(clusters.items()))
    ]


def pen_letters(row: PlacedLine, number: int, shift: tuple[int, int], chord_mm: float) -> list[Letter]:
    """The letters of a line whose face is drawn in lines: the lines, and what a pen of the line's width covers."""
    measured, pen = row.measured, row.measured.line.pen_mm
    clusters: dict[tuple[int, int], list[FloatArray]] = {}
    for i, glyph in enumerate(measured.inked):
        assert glyph.face.lines_of is not None
        for line in glyph.face.lines_of(glyph.glyph):
            placed_line = _where(row, i, line) + np.array(shift) / GRID_PER_MM
            clusters.setdefault((glyph.start, glyph.end), []).append(placed_line)
    round_ends = quad_segs(pen / 2, chord_mm)
    letters = []
    for index, ((start, end), lines) in enumerate(sorted(clusters.items())):
        followed = MultiLineString(lines)
        steps = shapely.transform(followed.buffer(pen / 2, quad_segs=round_ends), lambda mm: mm * GRID_PER_MM)
        letters.append(
            Letter(
                name=f"line {number + 1} letter {index + 1}",
                title=Message("name.letter", line=number + 1, letter=index + 1),
                text=measured.shaped.text[start:end],
                line=number,
                index=index,
                area=placed(on_grid(area_of(polygons(steps))), (0, 0)),
                pen_lines=followed,
            )
        )
    return letters


def _where(row: PlacedLine, i: int, line: FloatArray) -> FloatArray:
    """The places of a line of the i-th glyph, in millimetres."""
    glyph, measured, circle = row.measured.inked[i], row.measured, row.on_circle
    scale, pen = measured.scale(row.cap_height_mm), measured.line.pen_mm
    if circle is None:
        x = row.x_mm + glyph.x_em * scale + glyph.gaps * measured.line.letter_spacing_mm
        return line * scale + (x, row.y_mm + glyph.y_em * scale + pen / 2)
    x = glyph.x_em * scale + glyph.gaps * circle.spacing_mm - circle.middles_mm[i]
    origin = np.array([x, glyph.y_em * scale + pen / 2])
    at = circle.points_mm[i] + (row.x_mm, row.y_mm)
    places: FloatArray = turned(line * scale + origin, circle.turns_rad[i]) + at
    return places


def _shapes(row: PlacedLine, chord_mm: float) -> list[Area]:
    """The inked glyphs of a line in grid steps about their own origins."""
    glyphs = row.measured.inked
    shapes: dict[int, Area] = {}
    for face in dict.fromkeys(glyph.face for glyph in glyphs):
        mine = [i for i, glyph in enumerate(glyphs) if glyph.face is face]
        scale = row.cap_height_mm / face.cap_height_em
        filled = grid_areas(face, [glyphs[i].glyph for i in mine], scale_mm_per_em=scale, chord_mm=chord_mm)
        shapes.update(zip(mine, filled, strict=True))
    return [shapes[i] for i in range(len(glyphs))]


def _along_line(row: PlacedLine, shapes: Sequence[Area], shift: tuple[int, int]) -> list[Area]:
    scale, spacing = row.measured.scale(row.cap_height_mm), row.measured.line.letter_spacing_mm
    areas = []
    for glyph, shape in zip(row.measured.inked, shapes, strict=True):
        x = row.x_mm + glyph.x_em * scale + glyph.gaps * spacing
        y = row.y_mm + glyph.y_em * scale
        areas.append(placed(shape, (round(x * GRID_PER_MM) + shift[0], round(y * GRID_PER_MM) + shift[1])))
    return areas


def _round_circle(row: PlacedLine, shapes: Sequence[Area], shift: tuple[int, int]) -> list[Area]:
    circle = row.on_circle
    assert circle is not None
    scale = row.measured.scale(row.cap_height_mm)
    areas = []
    for i, (glyph, shape) in enumerate(zip(row.measured.inked, shapes, strict=True)):
        origin = np.array(
            [glyph.x_em * scale + glyph.gaps * circle.spacing_mm - circle.middles_mm[i], glyph.y_em * scale]
        )
        at = (circle.points_mm[i] + (row.x_mm, row.y_mm)) * GRID_PER_MM + shift
        steps = shapely.transform(
            shape, lambda xy, o=origin * GRID_PER_MM, a=at, t=circle.turns_rad[i]: np.rint(turned(xy + o, t) + a)
        )
        areas.append(placed(steps if steps.is_valid else on_grid(steps.buffer(0)), (0, 0)))
    return areas


def touching_joined(letters: Sequence[Letter]) -> list[Letter]:
    """Letters that touch or overlap made one, for together they have one outline."""
    areas = [letter.area for letter in letters]
    group = list(range(len(letters)))

    def leader(i: int) -> int:
        while group[i] != i:
            group[i] = group[group[i]]
            i = group[i]
        return i

    for one, other in shapely.STRtree(areas).query(areas, predicate="intersects").T:
        first, second = sorted((leader(int(one)), leader(int(other))))
        group[second] = first
    members: dict[int, list[Letter]] = {}
    for i, letter in enumerate(letters):
        members.setdefault(leader(i), []).append(letter)
    return [many[0] if len(many) == 1 else _joined(many) for many in members.values()]


def _joined(letters: Sequence[Letter]) -> Letter:
    of_lines: dict[int, list[int]] = {}
    for letter in letters:
        of_lines.setdefault(letter.line, []).append(letter.index + 1)
    return replace(
        letters[0],
        name=" and ".join(f"line {line + 1} {_counted(numbers)}" for line, numbers in of_lines.items()),
        title=_joined_title(of_lines),
        text="".join(letter.text for letter in letters),
        area=_merged([letter.area for letter in letters]),
        other_lines=tuple(line for line in of_lines if line != letters[0].line),
        pen_lines=_all_lines(letters),
    )


def _all_lines(letters: Sequence[Letter]) -> MultiLineString | None:
    lines = [part for letter in letters if letter.pen_lines is not None for part in letter.pen_lines.geoms]
    return MultiLineString(lines) if lines else None


def _joined_title(of_lines: Mapping[int, Sequence[int]]) -> Message:
    parts = []
    for line, numbers in of_lines.items():
        if len(numbers) == 1:
            parts.append(Message("name.letter", line=line + 1, letter=numbers[0]))
        elif numbers[-1] - numbers[0] + 1 == len(numbers):
            parts.append(Message("name.letters_from_to", line=line + 1, first=numbers[0], last=numbers[-1]))
        else:
            parts.append(Message("name.letters", line=line + 1, letters=tuple(map(str, numbers))))
    return Message("list.these", these=tuple(parts)) if len(parts) > 1 else parts[0]


def _counted(numbers: Sequence[int]) -> str:
    """Numbers of letters for a name: "letter 2", "letters 2-5", "letters 2, 4"."""
    if len(numbers) == 1:
        return f"letter {numbers[0]}"
    together = numbers[-1] - numbers[0] + 1 == len(numbers)
    return f"letters {numbers[0]}-{numbers[-1]}" if together else f"letters {', '.join(map(str, numbers))}"


def _merged(areas: Sequence[Area]) -> Area:
    """The union, its crossings moved onto the grid."""
    steps = shapely.transform(shapely.union_all(areas), lambda mm: mm * GRID_PER_MM)
    return placed(on_grid(steps), (0, 0))
