"""Paths that stand in a sign file."""

from __future__ import annotations

import os
from pathlib import Path

from signgen.borders.path import PathOutline
from signgen.errors import AskError
from signgen.option import Option
from signgen.user_file import expanded

FONT_SUFFIXES = (".ttf", ".otf", ".ttc", ".otc", ".woff", ".woff2")


def seen_from(folder: Path, option: Option, text: str) -> str:
    """The text of an option with the path in it, if there is one, in absolute form as seen from a folder: that of the
    sign file or list in which it stands."""
    match option.kind:
        case "path":
            return resolved(text.strip(), folder)
        case "font":
            return resolved_font(text.strip(), folder)
        case "border":
            return resolved_border(text.strip(), folder)
        case _:
            return text


def resolved(path: str, folder: Path) -> str:
    """The absolute form of a path as seen from a folder; '~' is the user's home."""
    try:
        return str((folder / expanded(path, "path")).resolve())
    except (AskError, OSError, ValueError, RuntimeError):  # nobody's home, links in a circle: who opens it will say so
        return path


def resolved_border(border: str, folder: Path) -> str:
    """'path:FILE' with its file in absolute form; any other border as it is."""
    name, colon, file = border.partition(":")
    is_path = colon and name.strip().casefold() == PathOutline.name and file.strip()
    return f"{PathOutline.name}:{resolved(file.strip(), folder)}" if is_path else border


def resolved_font(font: str, folder: Path) -> str:
    """A font's path in absolute form; a catalogue name, which has no separator and no suffix of a font, as it is. The
    number of a face in a collection (`#2`) may stand behind it.

    The resolved sign file thus names the same font from wherever it is read.
    """
    file, mark, number = font.rpartition("#")
    whole = file if mark and number.isdecimal() else font
    is_path = "/" in font or os.sep in font or whole.casefold().endswith(FONT_SUFFIXES)
    return resolved(font, folder) if is_path else font
