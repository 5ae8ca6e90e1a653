"""The one door for drawings: by the name of the file, as SVG or as DXF."""

from __future__ import annotations

from pathlib import Path

from signgen.artwork.dxf import read_dxf
from signgen.artwork.element import GREATEST_BYTES
from signgen.artwork.lengths import PX_MM
from signgen.artwork.picture import Picture
from signgen.artwork.svg import read_svg
from signgen.errors import AskError
from signgen.messages import Message
from signgen.user_file import read_bytes, shown


def read_picture(path: Path, where: str) -> Picture:
    """`where`: the word that the user typed. Raises: AskError for a file that cannot be read, or what cannot be said
    in areas and lines."""
    raw = read_bytes(path, where, GREATEST_BYTES)
    name = shown(path)
    if path.suffix.casefold() == ".dxf":
        items, unit = read_dxf(raw, name)
        return Picture(file=name, items=items, unit_mm=unit)
    if path.suffix.casefold() != ".svg":
        raise AskError.at(where, Message("art.unknown_kind", file=name), Message("art.name_svg_file"))
    drawn = read_svg(raw, name)
    return Picture(file=name, items=drawn.items, unit_mm=PX_MM if drawn.has_size else None)
