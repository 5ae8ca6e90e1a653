"""What is said of the board and the machine when programs from elsewhere are judged."""

from __future__ import annotations

import numpy as np
import pytest

from signgen.errors import AskError
from signgen.shop.load import load_shop
from signgen.spec.check_spec import CheckSpec, board_mm, read_check_spec, read_fixing_spec

SHOP = load_shop(None)


def read(*tools: str, **asked: str) -> CheckSpec:
    return read_check_spec({key.replace("_", "-"): value for key, value in asked.items()}, tools, SHOP)


@pytest.mark.parametrize(
    ("text", "board"),
    [
        ("300x200x12", (300, 200, 12)),
        ("300 x 200 X 12 mm", (300, 200, 12)),
        ("12x8x0.5in", (304.8, 203.2, 12.7)),
        ("12x8x1/2 in", (304.8, 203.2, 12.7)),
        ("30cm×20cm×12mm", (300, 200, 12)),
        ("12inx8inx12mm", (304.8, 203.2, 12)),
    ],
)
def test_boards_as_people_write_them(text: str, board: tuple[float, float, float]) -> None:
    assert board_mm(text) == pytest.approx(board, abs=1e-9)


@pytest.mark.parametrize(
    "text", ["300x200", "300x200x", "300x200x12x4", "ax bx c", "300x0x12", "12inx8x1", "300x200x-12"]
)
def test_what_is_no_board(text: str) -> None:
    with pytest.raises(AskError) as error:
        board_mm(text)
    assert error.value.problems[0].where == "stock"


@pytest.mark.parametrize(
    ("zero", "place"),
    [
        ("bottom-left", (0, 0)),
        ("centre", (150, 100)),
        ("Top-Right", (300, 200)),
        ("top-left", (0, 200)),
        ("bottom-right", (300, 0)),
        ("12,8.5", (12, 8.5)),
        ("-5,1in", (-127, 25.4)),
    ],
)
def test_zero_by_name_or_by_its_distances(zero: str, place: tuple[float, float]) -> None:
    spec = read("end-mill-6", stock="300x200x12", zero=zero)
    assert (spec.zero.x_mm, spec.zero.y_mm) == pytest.approx(place)


def test_z_zero_is_the_bottom_unless_said_otherwise() -> None:
    assert read("end-mill-6", stock="300x200x12").zero.z_mm == 0
    assert read("end-mill-6", stock="300x200x12", z_zero="top").zero.z_mm == 12


def test_screws_and_clamps() -> None:
    said = read_fixing_spec({"screws": "-8,10;1in,20", "clamps": "-30,5,20x40;200,-10,1inx2in", "clamp-height": "25"})
    assert said.screws_mm == ((-8, 10), (25.4, 20))
    assert np.array(said.clamps_mm) == pytest.approx(np.array([[-30, 5, -10, 45], [200, -10, 225.4, 40.8]]))
    assert said.clamp_height_mm == 25
    assert read_fixing_spec({}).screws_mm is None
    assert read_fixing_spec({}).cell_mm is None
    assert read_fixing_spec({"cell": "0.15"}).cell_mm == 0.15


@pytest.mark.parametrize(
    ("asked", "where"),
    [
        ({"screws": "8"}, "screws"),
        ({"clamps": "8,9"}, "clamps"),
        ({"clamps": "8,9,10"}, "clamps"),
        ({"clamps": "20x10"}, "clamps"),
        ({"clamps": "8,9,0x5"}, "clamps"),
        ({"clamp-height": "-3"}, "clamp-height"),
        ({"cell": "0.001"}, "cell"),
    ],
)
def test_what_is_no_fixing(asked: dict[str, str], where: str) -> None:
    with pytest.raises(AskError) as error:
        read_fixing_spec(asked)
    assert [problem.where for problem in error.value.problems] == [where]


def test_all_problems_at_once() -> None:
    with pytest.raises(AskError) as error:
        read("spoon", stock="300x200", zero="middle", machine="mill", material="cheese", breakthrough="deep")
    places = {problem.where for problem in error.value.problems}
    assert places == {"tool", "stock", "machine", "material", "breakthrough"}  # zero follows from stock
    with pytest.raises(AskError) as error:
        read()
    assert [problem.where for problem in error.value.problems] == ["stock", "tool"]
