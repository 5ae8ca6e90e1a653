"""Files that are no fonts, or were once: each gets a clear error, none brings the program down."""

from __future__ import annotations

import gzip
import io
import itertools
import struct
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables._g_l_y_f import Glyph, GlyphComponent
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.lettering.catalogue import catalogue
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines

SMALL = next(face for face in catalogue() if face.name == "unifraktur").path.read_bytes()


def refusal(path: Path) -> str:
    with pytest.raises(AskError) as caught:
        open_face(path)
    (problem,) = caught.value.problems
    assert problem.where == "font"
    assert problem.remedy
    return str(problem.what)


def test_says_what_a_file_is_instead(write: Callable[[str, bytes], Path], tmp_path: Path) -> None:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        archive.writestr("font.ttf", SMALL)
    assert "is empty" in refusal(write("a.ttf", b""))
    assert "zip archive" in refusal(write("b.ttf", packed.getvalue()))
    assert "WOFF2" in refusal(write("c.ttf", b"wOF2" + SMALL))
    assert "PostScript" in refusal(write("d.otf", b"%!PS-AdobeFont-1.0"))
    assert "not a TrueType or OpenType font" in refusal(write("e.ttf", b"Larkspur Lane\n" * 9))
    assert "not a TrueType or OpenType font" in refusal(write("f.ttf", gzip.compress(SMALL)))
    assert "does not exist" in refusal(tmp_path / "none.ttf")
    assert "is not a file" in refusal(tmp_path)
    assert "in its header" in refusal(write("g.ttf", SMALL[:7]))
    assert "in its header" in refusal(write("h.ttc", b"ttcf\0\1"))
    assert "in its list of faces" in refusal(write("i.ttc", b"ttcf\0\1\0\0\0\0\0\1"))
    assert "in its list of tables" in refusal(write("j.ttf", SMALL[:40]))


@pytest.mark.parametrize("part", [0.1, 0.5, 0.9, 0.999])
def test_names_the_table_at_which_a_font_is_cut_off(write: Callable[[str, bytes], Path], part: float) -> None:
    what = refusal(write("cut.ttf", SMALL[: int(len(SMALL) * part)]))
    assert "ends after" in what
    assert "table" in what


def test_refuses_a_font_without_a_table_that_every_font_has(tmp_path: Path) -> None:
    for table, message in (("cmap", "table cmap"), ("glyf", "no outlines")):
        font = TTFont(io.BytesIO(SMALL))
        del font[table]
        font.save(tmp_path / f"{table}.ttf", reorderTables=None)
        assert message in refusal(tmp_path / f"{table}.ttf")


def test_refuses_a_font_that_holds_bitmaps_alone(tmp_path: Path) -> None:
    font = TTFont(io.BytesIO(SMALL))
    for table in ("glyf", "loca"):
        del font[table]
    from fontTools.ttLib.tables.DefaultTable import DefaultTable

    font["CBDT"] = DefaultTable("CBDT")
    font["CBDT"].data = b"\0\3\0\0" * 8
    font.save(tmp_path / "emoji.ttf", reorderTables=None)
    assert "pictures of its letters" in refusal(tmp_path / "emoji.ttf")


def test_refuses_a_font_whose_letters_are_blank(blank_font: Path) -> None:
    assert "none of the letters by which its height is measured" in refusal(blank_font)


def test_refuses_a_letter_that_is_a_picture_in_colours(coloured_font: Path) -> None:
    face = open_face(coloured_font)
    assert len(set_lines(["HI"], face, cap_height_mm=10).letters) == 2
    with pytest.raises(AskError, match="no outline for 'O'"):
        set_lines(["HO"], face, cap_height_mm=10)


def test_a_composite_that_contains_itself_comes_to_an_end(tmp_path: Path) -> None:
    barlow = next(face.path for face in catalogue() if face.name == "barlow")
    font = TTFont(barlow, recalcBBoxes=False)
    accented = font["glyf"]["Adieresis"]
    assert accented.isComposite()
    accented.components[0].glyphName = "Adieresis"
    font.save(tmp_path / "cyclic.ttf")
    set_or_refuse(tmp_path / "cyclic.ttf", "Ä")


def set_or_refuse(path: Path, *lines: str) -> None:
    """Either letters that are sound or an error in words; anything else fails the test."""
    try:
        letters = set_lines(lines, open_face(path), cap_height_mm=20).letters
    except AskError as error:
        problems, letters = error.problems, ()
        if not all(problem.what for problem in problems):
            raise
    assert all(letter.area.is_valid and not letter.area.is_empty for letter in letters)


FUZZ = settings(max_examples=60, deadline=5000, suppress_health_check=[HealthCheck.function_scoped_fixture])


@FUZZ
@given(data=st.binary(max_size=400), magic=st.sampled_from([b"", b"\0\1\0\0", b"OTTO", b"true", b"ttcf"]))
@example(data=b"\0\0\0\1" + b"\xff" * 4, magic=b"ttcf")
@example(data=b"\xff\xff" + b"\0" * 100, magic=b"OTTO")
def test_arbitrary_bytes_are_refused(tmp_path: Path, data: bytes, magic: bytes) -> None:
    path = tmp_path / "random.ttf"
    path.write_bytes(magic + data)
    with pytest.raises(AskError):
        open_face(path)


@FUZZ
@given(data=st.data())
def test_a_font_with_bytes_changed_is_refused_or_gives_sound_letters(tmp_path: Path, data: st.DataObject) -> None:
    changed = bytearray(SMALL)
    for _ in range(data.draw(st.integers(1, 30))):
        changed[data.draw(st.integers(0, len(changed) - 1))] = data.draw(st.integers(0, 255))
    path = tmp_path / "changed.ttf"
    path.write_bytes(changed)
    set_or_refuse(path, "Hg 17", "ÄI")


@pytest.mark.sweep
@settings(parent=FUZZ, max_examples=3000)
@given(data=st.data())
def test_a_font_with_any_table_changed_is_refused_or_gives_sound_letters(tmp_path: Path, data: st.DataObject) -> None:
    """Changes aimed at one table, where a change anywhere would mostly hit outlines."""
    font = TTFont(io.BytesIO(SMALL), lazy=True)
    entry = font.reader.tables[data.draw(st.sampled_from(sorted(font.reader.tables)))]
    changed = bytearray(SMALL)
    for _ in range(data.draw(st.integers(1, 60))):
        place = entry.offset + data.draw(st.integers(0, max(0, entry.length - 1)))
        changed[place] = data.draw(st.sampled_from([0, 1, 0x7F, 0x80, 0xFF]) | st.integers(0, 255))
    path = tmp_path / "changed.ttf"
    path.write_bytes(changed)
    set_or_refuse(path, "Hg 17", "ÄI")


@pytest.mark.parametrize("deep", [3, 4, 12])
def test_composites_that_multiply_are_refused_and_not_drawn(tmp_path: Path, deep: int) -> None:
    """Each letter eight times the next: 8 ** deep copies of the last."""
    barlow = next(face.path for face in catalogue() if face.name == "barlow")
    font = TTFont(barlow, recalcBBoxes=False)
    letters = "ABCDEFGIJKLMN"[: deep + 1]
    for letter, next_letter in itertools.pairwise(letters):
        parts = Glyph()
        parts.numberOfContours = -1
        parts.xMin, parts.yMin, parts.xMax, parts.yMax = 0, 0, 700, 700
        parts.components = []
        for k in range(8):
            part = GlyphComponent()
            part.glyphName, part.x, part.y, part.flags = next_letter, 3 * k, k, 0x0202
            parts.components.append(part)
        font["glyf"][letter] = parts
    font.save(tmp_path / "many.ttf")
    with pytest.raises(AskError, match=r"The font is damaged|no outline for 'A'"):
        set_lines(["A"], open_face(tmp_path / "many.ttf"), cap_height_mm=20)


def test_a_list_of_as_many_tables_as_can_be_counted_is_refused_or_read(tmp_path: Path) -> None:
    count = struct.unpack(">H", SMALL[4:6])[0]
    first, more = 12 + 16 * count, 65535 - count
    rows = [struct.unpack(">4sIII", SMALL[12 + 16 * i : 28 + 16 * i]) for i in range(count)]
    start = 12 + 16 * 65535
    listed = [struct.pack(">4sIII", tag, check, offset + start - first, size) for tag, check, offset, size in rows]
    # All others are the whole font over again.
    listed += [struct.pack(">IIII", 0x30303030 + i, 0, start, len(SMALL) - first) for i in range(more)]
    path = tmp_path / "tables.ttf"
    path.write_bytes(SMALL[:4] + struct.pack(">HHHH", 65535, 0, 0, 0) + b"".join(listed) + SMALL[first:])
    set_or_refuse(path, "Hg 17")
