"""A line of lettering as it was drawn, in figures: its heights, and the proportions that reading depends on."""

from __future__ import annotations

import statistics
from collections.abc import Iterator, Sequence

import shapely
from msgspec import Struct

from signgen.lettering.areas import stroke_ratio
from signgen.lettering.face import Face
from signgen.lettering.layout import Box, Letter, Lettering, PlacedLine
from signgen.lettering.outlines import glyph_bounds_em
from signgen.lettering.shaping import shape
from signgen.spec.roles import Role


class BaseCircle(Struct, frozen=True, kw_only=True):
    """What carries the feet of a line that is not straight."""

    x_mm: float
    y_mm: float
    radius_mm: float
    side: str


class DrawnLine(Struct, frozen=True, kw_only=True):
    """One line as drawn; a long text that was broken is several. Figures that the face or the text does not give are
    None.

    `source`: which of the asked lines it is, from 0. `baseline_mm`: its height on the sign, on a circle that of the
    text's middle. `stroke_mm`: width of the upright of I. `width_ratio`: width of O over the height of a capital.
    `gaps_mm`: nearest distance of each two neighbours within a word, 0 where they join. `leading_mm`: from the baseline
    of the straight line above. `role`: what it is there for. `bounds_mm`: (x0, y0, x1, y1) of its ink, None when it
    shows nothing.
    """

    text: str
    source: int
    font: str
    label: str
    cap_height_mm: float
    digit_height_mm: float | None
    x_height_mm: float | None
    baseline_mm: float
    circle: BaseCircle | None
    stroke_mm: float | None
    width_ratio: float | None
    gaps_mm: tuple[float, ...]
    leading_mm: float | None
    role: Role = "title"
    bounds_mm: Box | None = None

    @property
    def least_gap_mm(self) -> float | None:
        return min(self.gaps_mm, default=None)

    @property
    def usual_gap_mm(self) -> float | None:
        return statistics.median(self.gaps_mm) if self.gaps_mm else None

    @property
    def letter_height_mm(self) -> float:
        """The height that its reading distance goes by: of capitals, of figures where there are only those, the lesser
        where there are both; of x where there are but small letters."""
        heights = []
        if any(character.isdecimal() for character in self.text) and self.digit_height_mm is not None:
            heights.append(self.digit_height_mm)
        small = [character for character in self.text if character.islower()]
        capitals = [character for character in self.text if character.isalpha() and not character.islower()]
        if capitals or (not small and not heights):
            heights.append(self.cap_height_mm)
        elif small:
            heights.append(self.x_height_mm or self.cap_height_mm)
        return min(heights)


def drawn_lines(lettering: Lettering, roles: Sequence[Role]) -> tuple[DrawnLine, ...]:
    """Every line in figures; `roles` of the asked ones."""
    lines: list[DrawnLine] = []
    above: PlacedLine | None = None
    for number, row in enumerate(lettering.rows):
        line, scale = row.measured.line, row.measured.scale(row.cap_height_mm)
        face, arc = line.face, line.arc
        straight = arc is None
        letters = [each for each in lettering.letters if _is_in(each, number)]
        lines.append(
            DrawnLine(
                text=line.text,
                source=line.source,
                font=face.name,
                label=face.label,
                cap_height_mm=row.cap_height_mm,
                digit_height_mm=_times(face.digit_height_em, scale, line.pen_mm),
                x_height_mm=_times(face.x_height_em, scale, line.pen_mm),
                baseline_mm=row.baseline_mm,
                circle=BaseCircle(x_mm=row.x_mm, y_mm=row.y_mm, radius_mm=arc.radius_mm, side=arc.side)
                if arc
                else None,
                stroke_mm=line.pen_mm or _times(stroke_ratio(face), row.cap_height_mm),
                width_ratio=_width_ratio(face, scale, line.pen_mm, row.cap_height_mm),
                gaps_mm=tuple(_gaps(row, letters)),
                leading_mm=above.baseline_mm - row.baseline_mm if straight and above is not None else None,
                role=roles[line.source],
                bounds_mm=_bounds(letters),
            )
        )
        above = row if straight else None
    return tuple(lines)


def _bounds(letters: Sequence[Letter]) -> Box | None:
    if not letters:
        return None
    x0, y0, x1, y1 = shapely.total_bounds([letter.area for letter in letters]).tolist()
    return x0, y0, x1, y1


def _times(ratio: float | None, by: float, pen_mm: float = 0.0) -> float | None:
    return None if ratio is None else ratio * by + pen_mm


def _width_ratio(face: Face, scale: float, pen_mm: float, cap_height_mm: float) -> float | None:
    """Width of O's outline over the height of a capital."""
    if not face.has("O"):
        return None
    bounds = glyph_bounds_em(face, shape(face, "O").glyphs[0].glyph)
    return None if bounds is None else ((bounds[2] - bounds[0]) * scale + pen_mm) / cap_height_mm


def _is_in(letter: Letter, line: int) -> bool:
    return line == letter.line or line in letter.other_lines


def _gaps(row: PlacedLine, letters: Sequence[Letter]) -> Iterator[float]:
    """Nearest distance of each two letters that follow each other without a space; nothing when the line touches
    another one."""
    if any(letter.other_lines for letter in letters):
        return
    places = sorted({(glyph.start, glyph.end) for glyph in row.measured.inked})
    begins = {letter.index: letter for letter in letters}
    last: Letter | None = None
    for index, (start, _) in enumerate(places):
        letter = begins.get(index, last)  # letters that join are one, which begins with the first of them
        if last is not None and letter is not None and places[index - 1][1] == start:
            yield 0.0 if letter is last else float(shapely.distance(last.area, letter.area))
        last = letter
