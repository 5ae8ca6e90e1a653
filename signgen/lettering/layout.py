"""Lines of lettering set in a block: letters as areas in millimetres, aligned and centred by their ink."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely

from signgen.errors import AskError
from signgen.geometry.offsets import Area
from signgen.lettering.areas import GRID_PER_MM, grid_areas, on_grid, placed
from signgen.lettering.faces import Face
from signgen.lettering.measure import Align, Box, Measure, measure
from signgen.lettering.shaping import ShapedLine
from signgen.tolerances import DEFAULT_TOLERANCE_MM, Tolerances

__all__ = ["Align", "Box", "Letter", "Lettering", "Measure", "measure", "set_lines"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """One letter, or several that touch (joined script, tight spacing), as the area to cut.

    `name` is unique in its lettering: "line 1 letter 2", "line 1 letters 2-5". `text` holds the characters that it
    stands for, `line` (from 0) and `index` (from 0, counting letters that show, in reading order) where the first of
    them is. `area` is valid, shells counter-clockwise, in whole steps of GRID_MM.
    """

    name: str
    text: str
    line: int
    index: int
    area: Area


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """A block of letters. `baselines_mm` has the y of every line from the top, `ink_bounds_mm` is (x0, y0, x1, y1)."""

    letters: tuple[Letter, ...]
    baselines_mm: tuple[float, ...]
    cap_height_mm: float
    ink_bounds_mm: Box

    def moved(self, dx_mm: float, dy_mm: float) -> Lettering:
        """The block shifted by whole steps of GRID_MM, nearest to what is asked, so that letters keep their shape."""
        steps = (round(dx_mm * GRID_PER_MM), round(dy_mm * GRID_PER_MM))
        dx, dy = steps[0] / GRID_PER_MM, steps[1] / GRID_PER_MM
        x0, y0, x1, y1 = self.ink_bounds_mm
        return replace(
            self,
            letters=tuple(replace(letter, area=_shifted(letter.area, steps)) for letter in self.letters),
            baselines_mm=tuple(y + dy for y in self.baselines_mm),
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
    block = measure(lines, face, line_spacing, letter_spacing_mm)
    origins = block.origins_mm(cap_height_mm, align)
    letters = _touching_joined(
        [
            letter
            for number, (line, origin) in enumerate(zip(block.lines, origins, strict=True))
            for letter in _line_letters(face, line, number, origin, cap_height_mm, letter_spacing_mm, chord_mm)
        ]
    )
    x0, y0, x1, y1 = shapely.total_bounds([letter.area for letter in letters])
    return Lettering(
        letters=tuple(letters),
        baselines_mm=tuple(y for _, y in origins),
        cap_height_mm=cap_height_mm,
        ink_bounds_mm=(float(x0), float(y0), float(x1), float(y1)),
    )


def _line_letters(
    face: Face,
    line: ShapedLine,
    number: int,
    origin_mm: tuple[float, float],
    cap_height_mm: float,
    letter_spacing_mm: float,
    chord_mm: float,
) -> list[Letter]:
    """The letters of one line in reading order, glyphs of a cluster together."""
    scale = cap_height_mm / face.cap_height_em
    areas = grid_areas(face, [g.glyph for g in line.glyphs], scale_mm_per_em=scale, chord_mm=chord_mm)
    clusters: dict[tuple[int, int], list[Area]] = {}
    for glyph, area in zip(line.glyphs, areas, strict=True):
        if area.is_empty:
            continue
        x = origin_mm[0] + glyph.x_em * scale + glyph.gaps * letter_spacing_mm
        y = origin_mm[1] + glyph.y_em * scale
        steps = (round(x * GRID_PER_MM), round(y * GRID_PER_MM))
        clusters.setdefault((glyph.start, glyph.end), []).append(placed(area, steps))
    return [
        Letter(
            name=f"line {number + 1} letter {index + 1}",
            text=line.text[start:end],
            line=number,
            index=index,
            area=parts[0] if len(parts) == 1 else _merged(parts),
        )
        for index, ((start, end), parts) in enumerate(sorted(clusters.items()))
    ]


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
