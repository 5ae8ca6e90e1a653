"""The contact sheet before a batch, and the page of a finished one."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from signgen.batching.proof import tile_of
from signgen.batching.recipe import Task
from signgen.drawing.draw import draw
from signgen.errors import AskError
from signgen.pictures.plain_picture import plain_svg
from tests.asking import spec_of
from tests.batching.making import SIGN, batch, tree, write_list

LANES = ["Quince,,", "Ferry <House>,x,", "Mill,,3"]


def proof(path: Path, out: Path, *words: str) -> str:
    result = batch(path, *SIGN, "--proof", "--out", out, "--workers", "1", *words)
    assert result.exception is None, result.exception
    assert result.exit_code == 0 or "cannot be made" in result.output
    return (out / "proof.html").read_text(encoding="utf-8")


def test_the_contact_sheet_shows_every_row_and_makes_no_program(tmp_path: Path) -> None:
    path, out = write_list(tmp_path / "n.csv", LANES, "name,thickness,copies"), tmp_path / "out"
    page = proof(path, out)
    assert {each.name for each in out.iterdir()} <= {"proof.html", "proof.pdf"}
    tiles = re.findall(r"<figure.*?</figure>", page, re.S)
    assert [re.findall(r"<b>(.*?)</b>", tile)[0] for tile in tiles] == ["Row 2", "Row 3", "Row 4, 3 ×"]
    assert "60 × 30 × 6 mm" in tiles[0]
    assert "is not a length" in tiles[1]
    assert "Ferry &lt;House&gt;" in tiles[1]
    for tile in (tiles[0], tiles[2]):
        picture = ElementTree.fromstring(re.findall(r"<svg.*?</svg>", tile, re.S)[0])
        assert len(picture.findall(".//path")) >= 2  # the face and letters
    assert "http:" not in page
    assert "Signature" in page
    assert "Unterschrift" in proof(path, out, "--language", "de", "--rows", "2")


def test_a_contact_sheet_leaves_the_batch_and_what_is_not_ours(tmp_path: Path) -> None:
    path, out = write_list(tmp_path / "n.csv", ["A"]), tmp_path / "out"
    batch(path, *SIGN, "--out", out, "--workers", "1")
    before = tree(out)
    proof(path, out)
    assert {name: text for name, text in tree(out).items() if not name.startswith("proof")} == before
    (out / "proof.html").write_text("mine")
    refused = batch(path, *SIGN, "--proof", "--out", out)
    assert isinstance(refused.exception, AskError)
    assert (out / "proof.html").read_text() == "mine"


def test_the_picture_has_the_colours_of_what_is_asked_for() -> None:
    spec = spec_of(text=["17"], paint="red")
    plain = plain_svg(draw(spec), spec.material, None, "17")
    red = plain_svg(draw(spec), spec.material, (200, 0, 0), "17")
    assert "#c80000" in red
    assert "#c80000" not in plain
    assert red.count("<path") == plain.count("<path") == 1 + 2 + 4  # the face, two figures, four holes


def test_a_row_that_cannot_be_drawn_says_so_on_its_tile() -> None:
    asked = {"text": ["Larkspur Lane"], "size": "20x10", "thickness": "6", "cap-height": "30"}
    tile = tile_of(Task(row=7, folder="0007-x", asked=asked, copies=1), "en")
    assert tile.problem
    assert tile.words == "Larkspur Lane"


@pytest.mark.parametrize("more", [(), ("--sheet", "300x200")])
def test_the_page_of_a_batch_leads_to_every_sign(tmp_path: Path, more: tuple[str, ...]) -> None:
    path, out = write_list(tmp_path / "n.csv", LANES, "name,thickness,copies"), tmp_path / "out"
    batch(path, *SIGN, *more, "--quote", "--out", out, "--workers", "1")
    page = (out / "index.html").read_text(encoding="utf-8")
    rows = re.findall(r"<tr>.*?</tr>", page, re.S)[1:]
    assert len(rows) == 3
    assert "Ferry &lt;House&gt;" in rows[1]
    assert "is not a length" in rows[1]
    links = re.findall(r'(?:href|src)="([^"]*)"', page)
    assert len(links) >= 6
    for link in links:
        assert (out / link).exists(), link
    assert "EUR" in rows[0]
    assert "http:" not in page
