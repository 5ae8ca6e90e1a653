import pytest

from signgen.borders.tag import Tag
from signgen.errors import CannotMakeError


def test_has_its_cut_end_and_its_eye_at_the_left():
    tag = Tag(cut_mm=20, eye_diameter_mm=8, eye_inset_mm=16)
    assert list(tag.outline(180, 80, 0.01).exterior.coords)[:-1] == [
        (20, 0), (180, 0), (180, 80), (20, 80), (0, 60), (0, 20),
    ]  # fmt: skip
    assert tag.eyes(180, 80) == (("eye", 16, 40, 8),)


def test_hangs_by_the_top_when_higher_than_wide():
    tag = Tag(cut_mm=20, eye_diameter_mm=8, eye_inset_mm=16)
    assert list(tag.outline(80, 180, 0.01).exterior.coords)[:-1] == [
        (0, 0), (80, 0), (80, 160), (60, 180), (20, 180), (0, 160),
    ]  # fmt: skip
    assert tag.eyes(80, 180) == (("eye", 40, 164, 8),)


@pytest.mark.parametrize(("shorter", "eye"), [(24, 4), (96, 8), (300, 12)])
def test_the_eye_is_in_proportion_between_4_and_12_mm(shorter, eye):
    tag = Tag.from_options("", {}, 2 * shorter, shorter)
    assert tag.eye_diameter_mm == pytest.approx(eye)
    assert tag.eye_inset_mm == pytest.approx(2 * eye)


def test_refuses_corners_that_meet():
    with pytest.raises(CannotMakeError, match=r"^corner-cut: 41 mm do not fit .* Use at most 40 mm\.$"):
        Tag(cut_mm=41, eye_diameter_mm=8, eye_inset_mm=16).outline(180, 80, 0.01)
