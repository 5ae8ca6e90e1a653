"""The pictograms that ship: where they came from, that they are as they came, and that each can be cut."""

import hashlib

import pytest
from PIL import Image

from signgen.artwork.pictograms import known_name, pictograms, picture_of
from signgen.cli import group
from signgen.drawing.draw import draw
from signgen.errors import AskError
from signgen.features.groove import Groove
from tests.asking import spec_of

LICENCES = {"CC0-1.0": "CC0", "MIT": "Permission is hereby granted"}


def test_there_are_sixty_of_plain_names():
    names = [each.name for each in pictograms()]
    assert len(names) >= 60
    assert len(set(names)) == len(names)
    assert names == sorted(names)


@pytest.mark.parametrize("each", pictograms(), ids=lambda each: each.name)
def test_is_as_it_came_with_its_licence(each):
    assert hashlib.sha256(each.path.read_bytes()).hexdigest() == each.sha256
    assert LICENCES[each.licence] in each.licence_path.read_text("utf-8")
    assert each.origin


@pytest.mark.parametrize("each", pictograms(), ids=lambda each: each.name)
def test_shows_one_area_and_itself_crossed_out(each):
    def dark(rgb):
        return "ink" if sum(rgb) < 300 else None

    (area,) = picture_of(each.name).seen(dark, (1, 0, 0, 1, 0, 0), 0.01).values()
    (crossed,) = picture_of(known_name(f"no {each.name}", "pictogram")).seen(dark, (1, 0, 0, 1, 0, 0), 0.01).values()
    assert area.is_valid
    assert area.area > 5
    x0, y0, x1, y1 = area.bounds
    a0, b0, a1, b1 = crossed.bounds
    assert a0 < x0
    assert b0 < y0
    assert x1 < a1
    assert y1 < b1
    assert crossed.intersection(area).area < area.area


def test_names_are_offered():
    assert known_name("Broad Tree", "pictogram") == "broad-tree"
    with pytest.raises(AskError, match="dog"):
        known_name("dogg", "pictogram")


def test_all_can_be_engraved_60_mm_high():
    for each in pictograms()[::9]:
        spec = spec_of(pictogram=each.name, pictogram_height=60, text="Mill", size="240x120", layout="composed")
        assert [part.name for part in draw(spec).of(Groove) if part.source == "pictogram"] == ["pictogram"]


def test_a_sheet_shows_them_all(tmp_path, capsys):
    group.main(["list", "pictograms", "--specimen", str(tmp_path)], standalone_mode=False)
    image = Image.open(tmp_path / "pictograms.png")
    assert image.width == 9 * 150
    assert image.height == -(-(len(pictograms()) + 2) // 9) * 150
