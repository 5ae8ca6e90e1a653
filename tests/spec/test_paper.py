"""How many sheets of paper a drilling template takes, and what each shows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.errors import AskError, CannotMakeError
from signgen.spec.paper import AROUND_MM, EDGE_MM, OVERLAP_MM, PAPERS_MM, tiling
from tests.asking import spec_of


def test_paper_sizes_are_those_of_the_standards() -> None:
    """ISO 216: A4 is A0 (1 m2, sides as 1 to the root of 2) halved four times, rounded down to millimetres.
    ANSI/ASME Y14.1, size A: 8.5 by 11 in."""
    width, height = PAPERS_MM["a4"]
    assert (width, height) == (210, 297)
    assert width * height * 2**4 == pytest.approx(1e6, rel=0.005)
    assert PAPERS_MM["letter"] == pytest.approx((8.5 * 25.4, 11 * 25.4))


@pytest.mark.parametrize(
    ("size", "paper", "across", "up", "lies"),
    [
        ((150, 200), "a4", 1, 1, False),
        ((220, 140), "a4", 1, 1, True),
        ((220, 140), "letter", 1, 1, True),
        ((380, 300), "a4", 2, 2, True),
        ((1000, 60), "a4", 4, 1, True),
    ],
)
def test_the_fewest_sheets(size: tuple[float, float], paper: str, across: int, up: int, lies: bool) -> None:
    tiles = tiling(*size, paper)
    assert (tiles.across, tiles.up) == (across, up)
    assert (tiles.width_mm > tiles.height_mm) is lies


@given(st.floats(10, 1500), st.floats(10, 1500), st.sampled_from(sorted(PAPERS_MM)))
def test_the_sheets_cover_the_sign_and_overlap(width: float, height: float, paper: str) -> None:
    tiles = tiling(width, height, paper)
    x0, y0, _, _ = tiles.window_of(0, 0)
    _, _, x1, y1 = tiles.window_of(tiles.across - 1, tiles.up - 1)
    assert x0 <= -AROUND_MM + 1e-6
    assert y0 <= -AROUND_MM + 1e-6
    assert x1 >= width + AROUND_MM - 1e-6
    assert y1 >= height + AROUND_MM - 1e-6
    assert -x0 == pytest.approx(x1 - width)
    wide, high = tiles.window_mm
    assert wide + 2 * EDGE_MM < tiles.width_mm
    assert high + 2 * EDGE_MM < tiles.height_mm
    upright, level = tiles.seams_mm()
    for i, seam in enumerate(upright):
        assert tiles.window_of(i, 0)[2] == pytest.approx(seam + OVERLAP_MM / 2)
        assert tiles.window_of(i + 1, 0)[0] == pytest.approx(seam - OVERLAP_MM / 2)
    for i, seam in enumerate(level):
        assert tiles.window_of(0, i)[3] == pytest.approx(seam + OVERLAP_MM / 2)
        assert tiles.window_of(0, i + 1)[1] == pytest.approx(seam - OVERLAP_MM / 2)


def test_a_sheet_less_would_not_do() -> None:
    one = tiling(100, 100, "a4")
    wide, high = one.window_mm
    assert tiling(wide - 2 * AROUND_MM, high - 2 * AROUND_MM, "a4").across == 1
    more = tiling(wide - 2 * AROUND_MM + 0.1, high - 2 * AROUND_MM, "a4")
    assert more.across * more.up == 2


def test_a_template_of_no_holes_is_refused() -> None:
    with pytest.raises(AskError, match="no holes to mark"):
        spec_of(template="a4", holes=None, hole_diameter=None, inset=None)


def test_the_eye_of_a_tag_is_a_hole() -> None:
    assert spec_of(template="a4", holes=None, hole_diameter=None, inset=None, border="tag").template == "a4"


def test_a_template_of_too_many_sheets_is_refused() -> None:
    with pytest.raises(CannotMakeError, match=r"takes \d+ sheets"):
        spec_of(template="letter", size="4000x3000", machine=None)


def test_paper_that_there_is_none_of() -> None:
    with pytest.raises(AskError, match="a4"):
        spec_of(template="a5")
