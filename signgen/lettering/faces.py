"""Faces opened by name or from a file. HarfBuzz is loaded when the first one opens."""

from __future__ import annotations

import difflib
import os
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from signgen.errors import AskError, Problem
from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.lettering.face import Face, Glyphs
from signgen.lettering.heights import measured_face
from signgen.lettering.sfnt import check_font_file
from signgen.lettering.stroke_faces import stroke_face
from signgen.messages import Message, Num
from signgen.user_file import expanded, is_there

_FONT_SUFFIXES = (".ttf", ".otf", ".ttc", ".otc")


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
        if settings:
            raise AskError.at(
                "font-axes",
                Message("lettering.no_variable_font", name=stroke.name),
                Message("lettering.leave_font_axes_out"),
            )
        return stroke_face(stroke)
    if entry is not None:
        return _opened(entry.name, entry.path, 1, settings, entry.path.stat().st_mtime_ns)
    path, number = _path_and_number(asked)
    if not (is_there(path) or path.suffix.casefold() in _FONT_SUFFIXES or os.sep in asked):
        names = [*by_name, *(face.name for face in stroke_catalogue())]
        close = difflib.get_close_matches(asked.casefold(), names, n=3, cutoff=0.5)
        remedy = (
            Message("lettering.did_you_mean", close=tuple(close))
            if close
            else Message("lettering.list_fonts_shows_names")
        )
        raise AskError.at(
            "font",
            Message("lettering.there_no_face_named", asked=repr(asked[:80])),
            Message("lettering.path_ttf_otf_file_works", remedy=remedy),
        )
    check_font_file(path, number)
    return _opened(asked, path, number, settings, path.stat().st_mtime_ns)


def faces_with(characters: str) -> tuple[str, ...]:
    """Names of the catalogue faces that have a glyph for each of the characters."""
    return tuple(face.name for face in catalogue() if all(map(open_face(face.name).has, characters)))


def _path_and_number(asked: str) -> tuple[Path, int]:
    """A path and the number after its `#`; a `#` that is part of an existing file's name stays there."""
    stem, mark, digits = asked.rpartition("#")
    if mark and digits.isascii() and digits.isdigit() and len(digits) < 7 and not is_there(Path(asked)):
        return expanded(stem, "font"), int(digits)
    return expanded(asked, "font"), 1


@lru_cache(maxsize=64)
def _opened(name: str, path: Path, number: int, axes: tuple[tuple[str, float], ...], mtime_ns: int) -> Face:
    """The open face; `mtime_ns` is there so that a changed file is opened anew."""
    import uharfbuzz

    face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(os.fspath(path)), number - 1)
    if not face.glyph_count or not face.unicodes:
        raise AskError.at(
            "font",
            Message("lettering.no_glyphs_belong_characters", path=path),
            Message("lettering.file_damaged_holds_only_symbols"),
        )
    font = uharfbuzz.Font(face)
    if axes:
        _check_axes(name, face, axes)
        font.set_variations(dict(axes))
    return measured_face(Glyphs(name=name, label=_label(face) or path.stem, path=path, number=number, font=font))


def _check_axes(name: str, face: Any, axes: tuple[tuple[str, float], ...]) -> None:
    """Refuses settings that HarfBuzz would leave out or clip without a word."""
    known = {axis.tag: axis for axis in face.axis_infos}
    problems = []
    for tag, value in axes:
        axis = known.get(tag)
        if axis is None:
            have = (
                Message("lettering.it_has", known=tuple(known))
                if known
                else Message("lettering.it_is_no_variable_font")
            )
            problems.append(
                Problem(where="font-axes", what=Message("lettering.no_axis", name=name, tag=repr(tag)), remedy=have)
            )
        elif not axis.min_value <= value <= axis.max_value:
            ends = Message("lettering.use_axis_from_to", min_value=Num(axis.min_value), max_value=Num(axis.max_value))
            problems.append(
                Problem(
                    where="font-axes",
                    what=Message("lettering.axis_outside", name=name, tag=tag, value=Num(value)),
                    remedy=ends,
                )
            )
    if problems:
        raise AskError(problems)


def _label(face: Any) -> str:
    """Family and style by the font's own names: the typographic ones (16, 17) before the four-style ones (1, 2)."""
    family, style = (face.get_name(new) or face.get_name(old) or "" for new, old in ((16, 1), (17, 2)))
    return f"{family} {style}".strip()
