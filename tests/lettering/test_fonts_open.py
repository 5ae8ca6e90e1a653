"""The fonts that ship: unchanged files, their licences, and what the catalogue says of them."""

from __future__ import annotations

import hashlib
import tomllib

import pytest
from fontTools.ttLib import TTFont

from signgen.lettering.catalogue import catalogue, fonts_folder

ROWS = [
    row
    for rows in tomllib.loads((fonts_folder() / "catalogue.toml").read_text(encoding="utf-8")).values()
    for row in rows
]
LICENCE_WORDS = {
    "OFL-1.1": ("SIL OPEN FONT LICENSE Version 1.1", "PERMISSION & CONDITIONS", "Copyright"),
    "Apache-2.0": ("Apache License", "Version 2.0, January 2004", "TERMS AND CONDITIONS"),
    "LicenseRef-Hershey": ("may be used by anyone for", "National Bureau of Standards", "James Hurt"),
}
# Everyday alphabets: the letters of the script's largest languages, by the exemplar sets of Unicode CLDR (from memory).
ALPHABETS = {
    "Latin": "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789ÄÖÜäöüßÉÈÊéèêÑñÇçÅåØøÆæ&.,-'!?",
    "Greek": "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώ",
    "Cyrillic": "АБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдежзийклмнопрстуфхцчшщъыьэюяЄІЇєії",
    "Arabic": "ابتثجحخدذرزسشصضطظعغفقكلمنهوي0123456789٠١٢٣٤٥٦٧٨٩",
    "Hebrew": "אבגדהוזחטיךכלםמןנסעףפץצקרשת0123456789",
    "Devanagari": "अआइईउऊएऐओऔकखगघचछजझटठडढणतथदधनपफबभमयरलवशषसह०१२३४५६७८९ािीुूेैोौ्ं",
}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["name"])
def test_each_file_is_byte_for_byte_the_published_one(row: dict[str, str]) -> None:
    assert hashlib.sha256((fonts_folder() / row["file"]).read_bytes()).hexdigest() == row["sha256"]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["name"])
def test_each_font_ships_with_the_text_of_the_licence_it_names(row: dict[str, str]) -> None:
    text = " ".join((fonts_folder() / row["licence_file"]).read_text(encoding="utf-8").split())
    assert [words for words in LICENCE_WORDS[row["licence"]] if words not in text] == []
    assert ("with Reserved Font Name" in text) == row["reserved_name"]


@pytest.mark.parametrize("face", catalogue(), ids=lambda face: face.name)
def test_the_font_itself_names_the_same_licence(face: object) -> None:
    said = TTFont(face.path)["name"].getDebugName(13)
    assert {"OFL-1.1": "SIL Open Font License, Version 1.1", "Apache-2.0": "Apache License, Version 2.0"}[
        face.licence
    ] in said


@pytest.mark.parametrize("face", catalogue(), ids=lambda face: face.name)
def test_each_face_has_the_whole_alphabet_of_the_scripts_it_is_listed_under(face: object) -> None:
    has = TTFont(face.path).getBestCmap()
    complete = {name for name, letters in ALPHABETS.items() if all(ord(letter) in has for letter in letters)}
    assert set(face.scripts) <= complete
    assert face.scripts or not complete


def test_no_font_file_ships_that_the_catalogue_does_not_list() -> None:
    listed = {row["file"] for row in ROWS} | {row["licence_file"] for row in ROWS}
    folder = fonts_folder()
    there = {str(path.relative_to(folder)) for path in folder.glob("*/*") if path.suffix != ".pyc"}
    assert there == listed


def test_names_are_unique_and_can_be_typed() -> None:
    names = [row["name"] for row in ROWS]
    assert len(set(names)) == len(names)
    assert all(name == name.lower() and " " not in name and "#" not in name for name in names)
