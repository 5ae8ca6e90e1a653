"""Lines of lettering set in a block: letters as areas in millimetres, aligned and centred by their ink."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely

from signgen.errors import AskError
from signgen.geometry.offsets import Area
from signgen.lettering.arcs import turned
from signgen.lettering.areas import GRID_PER_MM, grid_areas, on_grid, placed
from signgen.lettering.block import Placed, stacked
from signgen.lettering.faces import Face
from signgen.lettering.line import Align, Arc, Line
from signgen.lettering.measure import Box, LineMeasure, measure_lines
from signgen.tolerances import DEFAULT_TOLERANCE_MM, Tolerances

__all__ = [
    "Align", "Arc", "Box", "Letter", "Lettering", "Line", "LineMeasure", "Placed",
    "alike", "measure_lines", "set_lines", "set_rows", "stacked",
]  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """One letter, or several that touch (joined script, tight spacing), as the area to cut.

    `name` is unique in its lettering: "line 1 letter 2", "line 1 letters 2-5". `text` holds the characters that it
    stands for, `line` (from 0) and `index` (from 0, counting letters that show, in reading order) where the first of
    them is. `area` is valid, shells counter-clockwise, in whole steps of GRID_MM. `other_lines`: those that it reaches
    into, when it touches their letters.
    """

    name: str
    text: str
    line: int
    index: int
    area: Area
    other_lines: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """A block of letters. `rows` are its lines as they stand, in the order in which they were asked for.

    `cap_height_mm` is that of the smallest line, `ink_bounds_mm` is (x0, y0, x1, y1).
    """

    letters: tuple[Letter, ...]
    rows: tuple[Placed, ...]
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
            letters=tuple(replace(letter, area=_shifted(letter.area, steps)) for letter in self.letters),
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
) -> Lettering:
    """The lines as areas, their ink centred about (0, 0); lines aligned by the ink of the widest.

    `cap_height_mm` is the height of H above the baseline, `chord_mm` how far outlines may stray from the font's
    curves. Letters that touch each other come as one.

    Raises: AskError for a size that is none, text that shows nothing, characters that the face lacks.
    """
    for where, value, least in (("cap-height", cap_height_mm, 0.0), ("line-spacing", line_spacing, 0.0)):
        if not (math.isfinite(value) and value > least):
            raise AskError.at(where, f"{value:g} is no usable size.", "Use a number above 0.")
    if not math.isfinite(letter_spacing_mm):
        raise AskError.at(
            "letter-spacing", f"{letter_spacing_mm:g} is no usable length.", "Use a length in millimetres."
        )
    asked = alike(lines, face, align=align, line_spacing=line_spacing, letter_spacing_mm=letter_spacing_mm)
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
) -> tuple[Line, ...]:
    """Straight lines that differ in nothing but their words."""
    return tuple(
        Line(
            text=text, face=face, align=align, line_spacing=line_spacing, letter_spacing_mm=letter_spacing_mm, source=i
        )
        for i, text in enumerate(lines)
    )


def set_rows(
    rows: Sequence[Placed],
    *,
    chord_mm: float,
    block_at_mm: tuple[float, float] = (0.0, 0.0),
    sign_at_mm: tuple[float, float] = (0.0, 0.0),
) -> Lettering:
    """The letters of lines that have their places, with (0, 0) of the block, and of lines about the sign, at these
    points (to the nearest step of GRID_MM). `chord_mm`: how far outlines may stray from the font's curves."""
    letters: list[Letter] = []
    moved: list[Placed] = []
    off = _off_centre(rows, chord_mm)
    for number, row in enumerate(rows):
        x, y = sign_at_mm if row.about_sign else (block_at_mm[0], block_at_mm[1] - off)
        steps = (round(x * GRID_PER_MM), round(y * GRID_PER_MM))
        letters += _line_letters(row, number, steps, chord_mm)
        moved.append(row.moved(steps[0] / GRID_PER_MM, steps[1] / GRID_PER_MM))
    joined = _touching_joined(letters)
    x0, y0, x1, y1 = shapely.total_bounds([letter.area for letter in joined])
    return Lettering(
        letters=tuple(joined),
        rows=tuple(moved),
        ink_bounds_mm=(float(x0), float(y0), float(x1), float(y1)),
    )


def _off_centre(rows: Sequence[Placed], chord_mm: float) -> float:
    """How far above y = 0 the middle of the block's ink lies: the places of turned letters go by the corners of their
    boxes, which few letters fill."""
    block = [row for row in rows if not row.about_sign]
    if all(row.on_circle is None for row in block):
        return 0.0
    letters = [letter.area for row in block for letter in _line_letters(row, 0, (0, 0), chord_mm)]
    _, y0, _, y1 = shapely.total_bounds(letters)
    return float(y0 + y1) / 2


def _line_letters(row: Placed, number: int, shift: tuple[int, int], chord_mm: float) -> list[Letter]:
    """The letters of one line in reading order, glyphs of a cluster together."""
    measured = row.measured
    clusters: dict[tuple[int, int], list[Area]] = {}
    shapes = _shapes(row, chord_mm)
    areas = _along_line(row, shapes, shift) if row.on_circle is None else _round_circle(row, shapes, shift)
    for glyph, area in zip(measured.inked, areas, strict=True):
        if not area.is_empty:
            clusters.setdefault((glyph.start, glyph.end), []).append(area)
    return [
        Letter(
            name=f"line {number + 1} letter {index + 1}",
            text=measured.shaped.text[start:end],
            line=number,
            index=index,
            area=parts[0] if len(parts) == 1 else _merged(parts),
        )
        for index, ((start, end), parts) in enumerate(sorted(clusters.items()))
    ]


def _shapes(row: Placed, chord_mm: float) -> list[Area]:
    """The inked glyphs of a line in grid steps about their own origins."""
    glyphs = row.measured.inked
    shapes: dict[int, Area] = {}
    for face in dict.fromkeys(glyph.face for glyph in glyphs):
        mine = [i for i, glyph in enumerate(glyphs) if glyph.face is face]
        scale = row.cap_height_mm / face.cap_height_em
        filled = grid_areas(face, [glyphs[i].glyph for i in mine], scale_mm_per_em=scale, chord_mm=chord_mm)
        shapes.update(zip(mine, filled, strict=True))
    return [shapes[i] for i in range(len(glyphs))]


def _along_line(row: Placed, shapes: Sequence[Area], shift: tuple[int, int]) -> list[Area]:
    scale, spacing = row.measured.scale(row.cap_height_mm), row.measured.line.letter_spacing_mm
    areas = []
    for glyph, shape in zip(row.measured.inked, shapes, strict=True):
        x = row.x_mm + glyph.x_em * scale + glyph.gaps * spacing
        y = row.y_mm + glyph.y_em * scale
        areas.append(placed(shape, (round(x * GRID_PER_MM) + shift[0], round(y * GRID_PER_MM) + shift[1])))
    return areas


def _round_circle(row: Placed, shapes: Sequence[Area], shift: tuple[int, int]) -> list[Area]:
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


def _touching_joined(letters: Sequence[Letter]) -> list[Letter]:
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
        text="".join(letter.text for letter in letters),
        area=_merged([letter.area for letter in letters]),
        other_lines=tuple(line for line in of_lines if line != letters[0].line),
    )


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


def _shifted(area: Area, steps: tuple[int, int]) -> Area:
    moved = shapely.transform(area, lambda mm: (np.rint(mm * GRID_PER_MM) + steps) / GRID_PER_MM)
    assert isinstance(moved, Area)
    return moved
