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
from signgen.messages import Message
from signgen.user_file import is_there, shown

LARGEST_FILE_BYTES = 256 * 1024 * 1024
"""Twice the largest collections of Chinese, Japanese and Korean faces; more is no font, or an attack."""

_SFNT = (b"\x00\x01\x00\x00", b"true", b"OTTO")
_NEEDED = ("cmap", "head", "hhea", "hmtx", "maxp")
_OUTLINES = (("glyf", "loca"), ("CFF ",), ("CFF2",))
_PICTURES = ("CBDT", "EBDT", "bdat", "sbix", "SVG ", "COLR")
_OTHERS = {
    b"wOFF": (Message("lettering.is_web_font", kind="WOFF"), Message("lettering.use_ttf_otf_file_made")),
    b"wOF2": (Message("lettering.is_web_font", kind="WOFF2"), Message("lettering.use_ttf_otf_file_made")),
    b"PK\x03\x04": (Message("lettering.is_zip"), Message("lettering.unpack_name_ttf_otf_file")),
    b"%!PS": (Message("lettering.is_old_postscript"), Message("lettering.use_ttf_otf_version")),
    b"\x80\x01": (Message("lettering.is_old_postscript"), Message("lettering.use_ttf_otf_version")),
}
_DAMAGED = Message("lettering.file_damaged_not_copied_end")


def check_font_file(path: Path, number: int) -> None:
    """Nothing when face `number` (from 1) of the file has a sound table directory and outlines.

    Raises: AskError saying what is wrong with the file.
    """
    if not is_there(path):
        raise _refused(path, Message("lettering.does_not_exist"), Message("lettering.check_path_use_name_signgen"))
    if not path.is_file():
        raise _refused(path, Message("lettering.not_file"), Message("lettering.name_ttf_otf_ttc_file"))
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE_BYTES:
            raise _refused(
                path,
                Message("lettering.bytes_more_than_any_font", size=size),
                Message("lettering.name_ttf_otf_ttc_file"),
            )
        with path.open("rb") as file:
            _check(path, file, size, number)
    except OSError as error:
        raise _refused(
            path,
            Message("lettering.cannot_read", reason=str(error.strerror)),
            Message("lettering.check_you_may_read_file"),
        ) from error


def _refused(path: Path, what: Message, remedy: Message) -> SignGenError:
    return AskError.at("font", Message("lettering.font_file", path=shown(path), what=what), remedy)


def _check(path: Path, file: BinaryIO, size: int, number: int) -> None:
    if size == 0:
        raise _refused(path, Message("lettering.empty"), _DAMAGED)
    start = file.read(12)
    for magic, (what, remedy) in _OTHERS.items():
        if start.startswith(magic):
            raise _refused(path, what, remedy)
    offset = _face_offset(path, file, start, number)
    file.seek(offset)
    head = file.read(12)
    if head[:4] not in _SFNT:
        raise _refused(
            path, Message("lettering.not_truetype_opentype_font"), Message("lettering.name_ttf_otf_ttc_file")
        )
    if len(head) < 12:
        raise _refused(path, Message("lettering.ends_after_bytes_header", size=size), _DAMAGED)
    _check_tables(path, file, size, struct.unpack(">H", head[4:6])[0])


def _face_offset(path: Path, file: BinaryIO, start: bytes, number: int) -> int:
    """Where the face's table directory begins."""
    if start[:4] != b"ttcf":
        if number != 1:
            raise _refused(
                path,
                Message("lettering.holds_one_face_so_there", number=number),
                Message("lettering.leave_number_away"),
            )
        return 0
    if len(start) < 12:
        raise _refused(path, Message("lettering.ends_after_bytes_header", size=len(start)), _DAMAGED)
    count = struct.unpack(">I", start[8:12])[0]
    if not 1 <= number <= count:
        raise _refused(
            path,
            Message("lettering.holds_faces_so_there_no", count=count, number=number),
            Message("lettering.use_number_from_1", count=count),
        )
    file.seek(12 + 4 * (number - 1))
    entry = file.read(4)
    if len(entry) < 4:
        raise _refused(path, Message("lettering.ends_list_faces"), _DAMAGED)
    return int(struct.unpack(">I", entry)[0])


def _check_tables(path: Path, file: BinaryIO, size: int, count: int) -> None:
    directory = file.read(16 * count)
    if len(directory) < 16 * count:
        raise _refused(path, Message("lettering.ends_after_bytes_list_tables", size=size), _DAMAGED)
    tables: dict[str, int] = {}
    for tag, _, offset, length in struct.iter_unpack(">4sIII", directory):
        name = tag.decode("latin-1")
        if offset + length > size:
            raise _refused(
                path,
                Message("lettering.ends_after_bytes_but_table", size=size, name=repr(name), offset=offset + length),
                _DAMAGED,
            )
        tables[name] = length
    if not any(all(tables.get(part) for part in parts) for parts in _OUTLINES):
        if any(tables.get(picture) for picture in _PICTURES):
            raise _refused(
                path,
                Message("lettering.holds_pictures_letters_bitmaps_colours"),
                Message("lettering.use_outline_font"),
            )
        raise _refused(path, Message("lettering.holds_no_outlines"), Message("lettering.use_outline_font_ttf_otf"))
    missing = [name for name in _NEEDED if not tables.get(name)]
    if missing:
        raise _refused(path, Message("lettering.lacks_what_every_font_must", missing=tuple(missing)), _DAMAGED)
