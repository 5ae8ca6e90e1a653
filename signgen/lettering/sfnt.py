"""Whether a file is a font that can be opened: the table directory read and judged before HarfBuzz sees it.

HarfBuzz quietly drops tables that are damaged, and a font without its outlines then sets text in blank glyphs.
Here a truncated or unfit file is told from a good one, and why.

Source: OpenType specification, chapter "OpenType font file" (table directory, TTC header).
"""

from __future__ import annotations

import struct
from pathlib import Path
from typing import BinaryIO

from signgen.errors import AskError, SignGenError
from signgen.user_file import is_there, shown

LARGEST_FILE_BYTES = 256 * 1024 * 1024
"""Twice the largest collections of Chinese, Japanese and Korean faces; more is no font, or an attack."""

_SFNT = (b"\x00\x01\x00\x00", b"true", b"OTTO")
_NEEDED = ("cmap", "head", "hhea", "hmtx", "maxp")
_OUTLINES = (("glyf", "loca"), ("CFF ",), ("CFF2",))
_PICTURES = ("CBDT", "EBDT", "bdat", "sbix", "SVG ", "COLR")
_OTHERS = {
    b"wOFF": ("is a font packed for web pages (WOFF).", "Use the TTF or OTF file that it was made from."),
    b"wOF2": ("is a font packed for web pages (WOFF2).", "Use the TTF or OTF file that it was made from."),
    b"PK\x03\x04": ("is a zip archive.", "Unpack it and name the TTF or OTF file inside."),
    b"%!PS": ("is an old PostScript font.", "Use its TTF or OTF version."),
    b"\x80\x01": ("is an old PostScript font.", "Use its TTF or OTF version."),
}
_DAMAGED = "The file is damaged or was not copied to its end: fetch it again, or use another font."


def check_font_file(path: Path, number: int) -> None:
    """Nothing when face `number` (from 1) of the file has a sound table directory and outlines.

    Raises: AskError saying what is wrong with the file.
    """
    if not is_there(path):
        raise _refused(path, "does not exist.", "Check the path, or use a name that `signgen list fonts` shows.")
    if not path.is_file():
        raise _refused(path, "is not a file.", "Name a TTF, OTF or TTC file.")
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE_BYTES:
            raise _refused(path, f"has {size} bytes, more than any font.", "Name a TTF, OTF or TTC file.")
        with path.open("rb") as file:
            _check(path, file, size, number)
    except OSError as error:
        raise _refused(path, f"cannot be read: {error.strerror}.", "Check that you may read the file.") from error


def _refused(path: Path, what: str, remedy: str) -> SignGenError:
    return AskError.at("font", f"{shown(path)} {what}", remedy)


def _check(path: Path, file: BinaryIO, size: int, number: int) -> None:
    if size == 0:
        raise _refused(path, "is empty.", _DAMAGED)
    start = file.read(12)
    for magic, (what, remedy) in _OTHERS.items():
        if start.startswith(magic):
            raise _refused(path, what, remedy)
    offset = _face_offset(path, file, start, number)
    file.seek(offset)
    head = file.read(12)
    if head[:4] not in _SFNT:
        raise _refused(path, "is not a TrueType or OpenType font.", "Name a TTF, OTF or TTC file.")
    if len(head) < 12:
        raise _refused(path, f"ends after {size} bytes, in its header.", _DAMAGED)
    _check_tables(path, file, size, struct.unpack(">H", head[4:6])[0])


def _face_offset(path: Path, file: BinaryIO, start: bytes, number: int) -> int:
    """Where the face's table directory begins."""
    if start[:4] != b"ttcf":
        if number != 1:
            raise _refused(path, f"holds one face, so there is no number {number}.", "Leave the number away.")
        return 0
    if len(start) < 12:
        raise _refused(path, f"ends after {len(start)} bytes, in its header.", _DAMAGED)
    count = struct.unpack(">I", start[8:12])[0]
    if not 1 <= number <= count:
        raise _refused(
            path, f"holds {count} faces, so there is no number {number}.", f"Use a number from 1 to {count}."
        )
    file.seek(12 + 4 * (number - 1))
    entry = file.read(4)
    if len(entry) < 4:
        raise _refused(path, "ends in its list of faces.", _DAMAGED)
    return int(struct.unpack(">I", entry)[0])


def _check_tables(path: Path, file: BinaryIO, size: int, count: int) -> None:
    directory = file.read(16 * count)
    if len(directory) < 16 * count:
        raise _refused(path, f"ends after {size} bytes, in its list of tables.", _DAMAGED)
    tables: dict[str, int] = {}
    for tag, _, offset, length in struct.iter_unpack(">4sIII", directory):
        name = tag.decode("latin-1")
        if offset + length > size:
            raise _refused(
                path, f"ends after {size} bytes, but its table {name!r} reaches to {offset + length}.", _DAMAGED
            )
        tables[name] = length
    if not any(all(tables.get(part) for part in parts) for parts in _OUTLINES):
        if any(tables.get(picture) for picture in _PICTURES):
            raise _refused(
                path, "holds pictures of its letters (bitmaps or colours) and no outlines.", "Use an outline font."
            )
        raise _refused(path, "holds no outlines.", "Use an outline font (TTF or OTF).")
    missing = [name for name in _NEEDED if not tables.get(name)]
    if missing:
        raise _refused(path, f"lacks what every font must have: table {', '.join(missing)}.", _DAMAGED)
