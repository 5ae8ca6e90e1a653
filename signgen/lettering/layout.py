"""Lines of lettering set in a block: letters as areas in millimetres, aligned and centred by their ink."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
import shapely

from signgen.errors import AskError
from signgen.geometry.offsets import Area
from signgen.geometry.paths import FloatArray
from signgen.lettering.areas import GRID_PER_MM, grid_areas, on_grid, placed
from signgen.lettering.faces import Face
from signgen.lettering.outlines import glyph_bounds_em
from signgen.lettering.shaping import ShapedLine, described, has_ink_expected, shape_lines
from signgen.tolerances import DEFAULT_TOLERANCE_MM, Tolerances

Align = Literal["left", "centre", "right"]
Box = tuple[float, float, float, float]


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """What lines of lettering would take up at any size, known without their outlines.

    lines: those shaped. x_em, y_em: per line (n, 2) ink from and to of each glyph that shows, y up from the line's
    baseline. gaps: per line (n,) letter spaces left of it.
    """

    lines: tuple[ShapedLine, ...]
    cap_height_em: float
    line_spacing: float
    letter_spacing_mm: float
    x_em: tuple[FloatArray, ...]
    y_em: tuple[FloatArray, ...]
    gaps: tuple[FloatArray, ...]

    def boxes_mm(self, cap_height_mm: float, align: Align) -> tuple[Box, ...]:
        """Ink (x0, y0, x1, y1) of each line that has any, in the block that `set_lines` centres about (0, 0)."""
        boxes = self._raw_boxes_mm(cap_height_mm)
        return tuple(
            (box[0] + dx, box[1] + dy, box[2] + dx, box[3] + dy)
            for box, (dx, dy) in zip(boxes, self._shifts_mm(boxes, align), strict=True)
            if box is not None
        )

    def origins_mm(self, cap_height_mm: float, align: Align) -> tuple[tuple[float, float], ...]:
        """Where each line's glyphs start on its baseline in that block."""
        drop = self.line_spacing * cap_height_mm
        shifts = self._shifts_mm(self._raw_boxes_mm(cap_height_mm), align)
        return tuple((dx, dy - number * drop) for number, (dx, dy) in enumerate(shifts))

    def _raw_boxes_mm(self, cap_height_mm: float) -> tuple[Box | None, ...]:
        """Ink of each line whose text starts at x = 0, the first baseline at y = 0; None for one without ink."""
        scale = cap_height_mm / self.cap_height_em
        boxes: list[Box | None] = []
        for number, (x, y, gaps) in enumerate(zip(self.x_em, self.y_em, self.gaps, strict=True)):
            if not len(gaps):
                boxes.append(None)
                continue
            across = x * scale + gaps[:, None] * self.letter_spacing_mm
            up = y * scale - number * self.line_spacing * cap_height_mm
            boxes.append((float(across.min()), float(up.min()), float(across.max()), float(up.max())))
        return tuple(boxes)

    def _shifts_mm(self, boxes: Sequence[Box | None], align: Align) -> tuple[tuple[float, float], ...]:
        """What moves each line into its place in the centred block."""
        inked = [box for box in boxes if box is not None]
        dy = -(min(box[1] for box in inked) + max(box[3] for box in inked)) / 2
        half = max(box[2] - box[0] for box in inked) / 2
        places = {
            "left": lambda box: -half - box[0],
            "centre": lambda box: -(box[0] + box[2]) / 2,
            "right": lambda box: half - box[2],
        }
        return tuple((places[align](box) if box is not None else 0.0, dy) for box in boxes)


def measure(lines: Sequence[str], face: Face, line_spacing: float, letter_spacing_mm: float) -> Measure:
    """The ink of the lines at any size. `line_spacing` is baseline to baseline over cap height.

    Raises: AskError if the text shows nothing, or has characters that the face lacks or cannot draw.
    """
    _check_text(lines)
    shaped = shape_lines(face, lines, spaced=letter_spacing_mm != 0)
    x_em, y_em, gaps = [], [], []
    for line in shaped:
        _check_ink(face, line)
        inked = [(glyph, box) for glyph in line.glyphs if (box := glyph_bounds_em(face, glyph.glyph))]
        x_em.append(np.array([(g.x_em + box[0], g.x_em + box[2]) for g, box in inked]).reshape(-1, 2))
        y_em.append(np.array([(g.y_em + box[1], g.y_em + box[3]) for g, box in inked]).reshape(-1, 2))
        gaps.append(np.array([g.gaps for g, _ in inked], dtype=np.float64))
    return Measure(
        lines=shaped,
        cap_height_em=face.cap_height_em,
        line_spacing=line_spacing,
        letter_spacing_mm=letter_spacing_mm,
        x_em=tuple(x_em),
        y_em=tuple(y_em),
        gaps=tuple(gaps),
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


def _check_text(lines: Sequence[str]) -> None:
    if not any(has_ink_expected(line) for line in lines):
        raise AskError.at("text", "The text shows nothing.", "Give at least one letter or digit.")


def _check_ink(face: Face, line: ShapedLine) -> None:
    """Refuses letters that would be dropped without a word: blank glyphs, and colour pictures."""
    seen = {glyph.start for glyph in line.glyphs if glyph_bounds_em(face, glyph.glyph)}
    seen -= {glyph.start for glyph in line.glyphs if _is_coloured(face, glyph.glyph)}
    clusters = dict.fromkeys(line.text[glyph.start : glyph.end] for glyph in line.glyphs if glyph.start not in seen)
    blank = [cluster[0] for cluster in clusters if has_ink_expected(cluster)]
    if blank:
        names = ", ".join(map(described, blank))
        raise AskError.at("text", f"{face.name} has no outline for {names}.", "Use another font or leave it out.")


def _is_coloured(face: Face, glyph: int) -> bool:
    """Whether the glyph is a picture in colours, whose outline alone is not what its maker drew."""
    font = face.font.face
    return bool(
        (font.has_color_layers and font.get_glyph_color_layers(glyph))
        or (font.has_color_paint and font.glyph_has_color_paint(glyph))
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
