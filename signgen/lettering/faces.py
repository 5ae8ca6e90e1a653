"""A face opened: what its letters measure, which characters it has. HarfBuzz is loaded when the first one opens."""

from __future__ import annotations

import difflib
import os
from collections.abc import Callable, Mapping
from functools import cached_property, lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from signgen.errors import AskError, Problem
from signgen.lettering.catalogue import CatalogueFace, catalogue, stroke_catalogue
from signgen.lettering.sfnt import check_font_file

if TYPE_CHECKING:
    import uharfbuzz

    from signgen.geometry.paths import FloatArray

__all__ = ["CatalogueFace", "Face", "Lines", "catalogue", "faces_with", "open_face", "stroke_catalogue"]

HEIGHT_LETTERS = "HIEX1אدΗНक"
"""A capital's height is that of H; a font without Latin is measured by the first of these that it has."""

STROKE_SCANS = tuple(0.35 + 0.30 * i / 30 for i in range(31))
"""Heights, over the letter's own, at which the stroke of I is measured: clear of serifs at top and bottom."""

_FONT_SUFFIXES = (".ttf", ".otf", ".ttc", ".otc")


Lines = tuple["FloatArray", ...]
"""Polylines (k, 2) in em that a pen follows; one that ends where it begins is closed."""


class Face:
    """An open face. Lengths in em (the font's own square is 1 em); two Faces are equal only if they are the same.

    `name` is what the user typed, `label` what the font calls itself. `font` is HarfBuzz's, in font units,
    for the modules of this package. `lines_of`: of a face whose letters are drawn in lines, those of a glyph; such a
    face has bounds and no areas.
    """

    def __init__(
        self,
        *,
        name: str,
        label: str,
        path: Path,
        number: int,
        font: uharfbuzz.Font,
        lines_of: Callable[[int], Lines] | None = None,
    ) -> None:
        self.name = name
        self.label = label
        self.path = path
        self.number = number
        self.font = font
        self.lines_of = lines_of
        self.units_per_em: int = font.face.upem

    def __repr__(self) -> str:
        return f"Face({self.name!r})"

    @cached_property
    def characters(self) -> frozenset[int]:
        """Code points that the face has a glyph for. Shaping can compose a few more from their parts."""
        return frozenset(self.font.face.unicodes)

    def has(self, character: str) -> bool:
        return ord(character) in self.characters

    @cached_property
    def height_letter(self) -> str:
        """The letter by which the height of capitals is measured: H unless the face has none.

        Raises: AskError if no letter of the face can be measured.
        """
        for letter in HEIGHT_LETTERS:
            if self.has(letter) and self._top_em(letter) > 0:
                return letter
        raise AskError.at(
            "font",
            f"{self.name} has none of the letters by which its height is measured, H first.",
            "Use another font.",
        )

    @cached_property
    def cap_height_em(self) -> float:
        """Top of H's outline above the baseline; never the height that the font declares."""
        return self._top_em(self.height_letter)

    @cached_property
    def x_height_em(self) -> float | None:
        """Top of x, or None if the face has no x."""
        return self._top_em("x") if self.has("x") else None

    @cached_property
    def digit_height_em(self) -> float | None:
        """Top of the lining figure 1, or None if the face has no 1."""
        return self._top_em("1") if self.has("1") else None

    @property
    def digit_height_ratio(self) -> float | None:
        """Height of the figure 1 over the height of a capital, or None if the face has no 1."""
        return None if self.digit_height_em is None else self.digit_height_em / self.cap_height_em

    @cached_property
    def stroke_ratio(self) -> float | None:
        """Width of the upright of I over the height of a capital, or None if the face has no I or is drawn in lines.

        The median of the widest ink on horizontal scans between 35 and 65 % of the letter's height.
        """
        from signgen.lettering.areas import glyph_areas, spans_at

        if not self.has("I") or self.lines_of is not None:
            return None
        (area,) = glyph_areas(self, [self._glyph("I")], scale_mm_per_em=1.0, chord_mm=1e-4)
        _, bottom, _, top = area.bounds
        scans = (spans_at(area, bottom + part * (top - bottom)) for part in STROKE_SCANS)
        widths = sorted(max(right - left for left, right in spans) for spans in scans if spans)
        return widths[len(widths) // 2] / self.cap_height_em if widths else None

    def _glyph(self, letter: str) -> int:
        """The glyph for one letter as it is set, with lining figures."""
        from signgen.lettering.shaping import shape

        return shape(self, letter).glyphs[0].glyph

    def _top_em(self, letter: str) -> float:
        from signgen.lettering.outlines import glyph_bounds_em

        bounds = glyph_bounds_em(self, self._glyph(letter))
        return bounds[3] if bounds else 0.0


def open_face(name_or_path: str | os.PathLike[str], axes: Mapping[str, float] | None = None) -> Face:
    """The face of a catalogue name, or of a TTF, OTF or TTC file (`fonts.ttc#2` for the second in a collection).

    `axes` sets a variable font ({"wght": 600}), which opens at its defaults otherwise. The same name and axes give the
    same Face, with all that it has cached.

    Raises: AskError for an unknown name (with close matches), a file that is no usable outline font, an axis that the
        font has not or a value beyond its ends.
    """
    settings = tuple(sorted((axes or {}).items()))
    asked = os.fspath(name_or_path)
    by_name = {face.name: face for face in catalogue()}
    entry = by_name.get(asked.strip().casefold())
    stroke = {face.name: face for face in stroke_catalogue()}.get(asked.strip().casefold())
    if stroke is not None:
        from signgen.lettering.stroke_faces import stroke_face

        if settings:
            raise AskError.at("font-axes", f"{stroke.name} is no variable font.", "Leave font-axes out.")
        return stroke_face(stroke)
    if entry is not None:
        return _opened(entry.name, entry.path, 1, settings, entry.path.stat().st_mtime_ns)
    path, number = _path_and_number(asked)
    if not (path.exists() or path.suffix.casefold() in _FONT_SUFFIXES or os.sep in asked):
        names = [*by_name, *(face.name for face in stroke_catalogue())]
        close = difflib.get_close_matches(asked.casefold(), names, n=3, cutoff=0.5)
        remedy = f"Did you mean {' or '.join(close)}?" if close else "`signgen list fonts` shows the names."
        raise AskError.at(
            "font", f"There is no face named {asked!r}.", f"{remedy} A path to a TTF or OTF file works too."
        )
    check_font_file(path, number)
    return _opened(asked, path, number, settings, path.stat().st_mtime_ns)


def faces_with(characters: str) -> tuple[str, ...]:
    """Names of the catalogue faces that have a glyph for each of the characters."""
    return tuple(face.name for face in catalogue() if all(map(open_face(face.name).has, characters)))


def _path_and_number(asked: str) -> tuple[Path, int]:
    """A path and the number after its `#`; a `#` that is part of an existing file's name stays there."""
    stem, mark, digits = asked.rpartition("#")
    if mark and digits.isascii() and digits.isdigit() and not Path(asked).exists():
        return Path(stem).expanduser(), int(digits)
    return Path(asked).expanduser(), 1


@lru_cache(maxsize=64)
def _opened(name: str, path: Path, number: int, axes: tuple[tuple[str, float], ...], mtime_ns: int) -> Face:
    """The open face; `mtime_ns` is there so that a changed file is opened anew."""
    import uharfbuzz

    face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(os.fspath(path)), number - 1)
    if not face.glyph_count or not face.unicodes:
        raise AskError.at(
            "font",
            f"{path} has no glyphs that belong to characters.",
            "The file is damaged or holds only symbols: use another font.",
        )
    font = uharfbuzz.Font(face)
    if axes:
        _check_axes(name, face, axes)
        font.set_variations(dict(axes))
    opened = Face(name=name, label=_label(face) or path.stem, path=path, number=number, font=font)
    _ = opened.height_letter  # a font in which nothing can be measured is refused here, not in the middle of a job
    return opened


def _check_axes(name: str, face: Any, axes: tuple[tuple[str, float], ...]) -> None:
    """Refuses settings that HarfBuzz would leave out or clip without a word."""
    known = {axis.tag: axis for axis in face.axis_infos}
    problems = []
    for tag, value in axes:
        axis = known.get(tag)
        if axis is None:
            have = f"It has {', '.join(known)}." if known else "It is no variable font."
            problems.append(Problem(where="font-axes", what=f"{name} has no axis {tag!r}.", remedy=have))
        elif not axis.min_value <= value <= axis.max_value:
            ends = f"Use {axis.min_value:g} to {axis.max_value:g}."
            problems.append(Problem(where="font-axes", what=f"{name} has no {tag} {value:g}.", remedy=ends))
    if problems:
        raise AskError(problems)


def _label(face: Any) -> str:
    """Family and style by the font's own names: the typographic ones (16, 17) before the four-style ones (1, 2)."""
    family, style = (face.get_name(new) or face.get_name(old) or "" for new, old in ((16, 1), (17, 2)))
    return f"{family} {style}".strip()
