"""The picture of the board: what is cut, what is through, where findings are."""

from __future__ import annotations

import io
from xml.etree import ElementTree

import numpy as np
import pytest
from msgspec.structs import replace
from PIL import Image

from signgen.checks import judge
from signgen.checks.check import Case
from signgen.pictures.board_picture import BELOW_RGB, MARK_RGB, ZERO_RGB, Mark, board_png, board_svg, marks_of
from tests.checks.plate import STOCK, Plate


@pytest.fixture(scope="module")
def case() -> Case:
    return Plate().case()


def pixels(png: bytes) -> np.ndarray:
    """(h, w, 3)."""
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB")).astype(int)


def at(picture: np.ndarray, x_mm: float, y_mm: float) -> tuple[int, ...]:
    """Colour at a place of the board."""
    h, w, _ = picture.shape
    row, column = h - 1 - int(y_mm / STOCK.height_mm * h), int(x_mm / STOCK.width_mm * w)
    return tuple(int(value) for value in picture[row, column])


def near(picture: np.ndarray, x_mm: float, y_mm: float, rgb: tuple[int, int, int], within_mm: float) -> bool:
    h, w, _ = picture.shape
    scale = w / STOCK.width_mm
    row, column, r = int(h - y_mm * scale), int(x_mm * scale), int(within_mm * scale)
    some = picture[max(0, row - r) : row + r, max(0, column - r) : column + r]
    return bool((np.abs(some - np.array(rgb)).max(axis=2) < 8).any())


def test_what_is_cut_through_shows_what_lies_below(case: Case) -> None:
    picture = pixels(board_png(case, ()))
    assert at(picture, 12 + 45, 12 + 20) == BELOW_RGB  # the hole
    assert at(picture, 12 - 3, 12 + 20) == BELOW_RGB  # the way round the edge
    for x, y in ((12 + 30, 12 + 25), (12 + 30, 12 - 3), (3, 3)):  # face, tab, waste
        assert at(picture, x, y) != BELOW_RGB
    assert at(picture, 12 + 12.5, 12 + 17.5) != at(picture, 12 + 30, 12 + 25)  # the groove


def test_the_zero_is_drawn_where_it_lies(case: Case) -> None:
    picture = pixels(board_png(case, ()))
    assert near(picture, 12, 12, ZERO_RGB, 0.3)
    assert not near(picture, 40, 40, ZERO_RGB, 3)


def test_marks_are_drawn_at_their_places_and_on_the_rim_when_off_the_board(case: Case) -> None:
    bare = pixels(board_png(case, ()))
    picture = pixels(board_png(case, (Mark(number=1, x_mm=30, y_mm=50), Mark(number=12, x_mm=500, y_mm=10))))
    assert not near(bare, 30, 50, MARK_RGB, 4)
    assert near(picture, 30, 50, MARK_RGB, 4)
    assert near(picture, STOCK.width_mm, 10, MARK_RGB, 4)


def test_findings_are_marked_with_their_numbers_in_the_report() -> None:
    spoilt = Plate().cutting((64, None)).case()
    report = judge(spoilt)
    marks = marks_of(spoilt, report)
    findings = list(report.findings())
    assert marks
    for mark in marks:
        _, finding = findings[mark.number - 1]
        assert finding.place_mm is not None
        assert (mark.x_mm, mark.y_mm) == pytest.approx((finding.place_mm[0] + 12, finding.place_mm[1] + 12))


def test_the_svg_is_the_boards_size_and_holds_the_marks(case: Case) -> None:
    root = ElementTree.fromstring(board_svg(case, (Mark(number=7, x_mm=30, y_mm=50),)))
    assert (root.attrib["width"], root.attrib["height"]) == ("84mm", "64mm")
    texts = [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")]
    assert texts == ["7"]
    rings = [c for c in root.iter("{http://www.w3.org/2000/svg}circle") if c.attrib.get("fill") == "none"]
    assert [(float(c.attrib["cx"]), float(c.attrib["cy"])) for c in rings] == [(30, 14)]


def test_the_same_board_gives_the_same_bytes(case: Case) -> None:
    marks = (Mark(number=3, x_mm=10, y_mm=10),)
    assert board_png(case, marks) == board_png(replace(case), marks)
