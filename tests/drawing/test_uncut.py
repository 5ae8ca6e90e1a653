"""Letters that a bit's flat tip cannot cut: measured, refused with what would do, or warned of."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest
from msgspec.structs import replace
from shapely.geometry import Point, box
from shapely.geometry.base import BaseGeometry

from signgen.drawing.draw import draw
from signgen.drawing.uncut import MOST_UNCUT_RATIO, _is_plainly_kept, lost_grooves, uncut_ratio
from signgen.errors import CannotMakeError
from signgen.features.groove import Groove
from signgen.job.summary import summary_text
from signgen.pipeline import prove
from signgen.spec.sign_spec import SignSpec
from tests.asking import english, spec_of


def groove(area: BaseGeometry, tip_mm: float, angle_deg: float = 90.0, text: str = "I") -> Groove:
    return Groove(
        name="line 1 letter 1", source="text", text=text, area=area,
        angle_deg=angle_deg, tip_mm=tip_mm, max_depth_mm=4.0
    )  # fmt: skip


def small(text: str, **changes: Any) -> SignSpec:
    asked: dict[str, Any] = {"size": "120x50", "thickness": "10", "holes": None, "hole_diameter": None, "inset": None}
    return spec_of(text=[text], **{**asked, **changes})


def refusal(spec: SignSpec) -> str:
    with pytest.raises(CannotMakeError) as refused:
        draw(spec)
    return str(refused.value)


def test_a_square_keeps_what_a_disc_leaves_of_its_corners() -> None:
    # Source: plane geometry: a disc of radius r leaves (4 - pi) r^2 of a square. Here r = tip / 2 + 0.1.
    left = (4 - math.pi) * 0.6**2
    assert uncut_ratio(groove(box(0, 0, 5, 5), 1.0)) == pytest.approx(left / 25, abs=0.002)


def test_a_stroke_that_hardly_lets_the_tip_in_is_not_cut() -> None:
    assert uncut_ratio(groove(box(0, 0, 1.02, 20), 1.0)) > 0.99
    assert uncut_ratio(groove(box(0, 0, 1.3, 20), 1.0)) < 0.03


def test_a_dot_that_is_lost_is_lost_however_large_its_letter_is() -> None:
    letter = box(0, 0, 10, 40).union(Point(5, 45).buffer(0.4))
    (lost,) = lost_grooves([groove(letter, 1.0, text="i")])
    assert lost.ratio < MOST_UNCUT_RATIO
    assert "100 % of a part of" in str(lost.said)


@pytest.mark.parametrize("font", ["cinzel", "pacifico", "barlow"])
def test_a_quick_look_lets_no_letter_pass_that_is_lost(font: str) -> None:
    """It tells of a letter that it is plainly kept only if measuring finds little uncut; and of most it does."""
    letters = draw(small("Rg8&", font=font, v_bit_tip=0, cap_height=20)).of(Groove)
    plain = 0
    for letter in letters:
        for tip in (0.0, 0.2, 0.4, 0.6, 1.0, 1.6):
            tried = replace(letter, tip_mm=tip)
            if _is_plainly_kept(tried):
                plain += 1
                assert uncut_ratio(tried) < MOST_UNCUT_RATIO * 0.6
                assert not lost_grooves([tried])
    assert plain >= len(letters)


@pytest.mark.parametrize(
    "asked",
    [
        {"text": "ill", "v_bit": "90", "v_bit_tip": "1", "font": "atkinson-regular", "cap_height": "8"},
        {"text": "Minim", "v_bit": "30", "font": "atkinson-regular", "cap_height": "1.6"},
        {"text": "OK", "v_bit": "90", "v_bit_tip": "3", "font": "atkinson-regular", "cap_height": "8"},
        {"text": "Quince", "v_bit": "60", "v_bit_tip": "1.5", "font": "cinzel", "cap_height": "12"},
        {"text": "Lane", "v_bit": "120", "v_bit_tip": "0.8", "font": "pacifico", "cap_height": "6"},
    ],
)
def test_letters_of_which_much_stays_are_refused_with_a_size_and_a_bit_that_do(asked: dict[str, Any]) -> None:
    said = refusal(small(**asked))
    height = re.search(r"cap-height ([\d.]+) mm or more", said)
    bit = re.search(r"as v-bit-(\d+) with", said)
    assert height, said
    assert bit, said
    if "larger sign" not in said:
        draw(small(**{**asked, "cap_height": height[1]}))
    draw(small(**{**asked, "v_bit": bit[1], "v_bit_tip": None}))
    face = re.search(r"the face ([\w-]+)", said)
    if face:
        draw(small(**{**asked, "font": face[1]}))


def test_a_line_narrower_than_the_tip_is_refused_by_its_name() -> None:
    said = refusal(spec_of(frame="6", frame_width="0.4", v_bit_tip="0.5"))
    assert "The frame is too narrow for the flat of 0.5 mm at the bit's tip: 100 % of it" in said


def test_less_is_the_first_warning_of_the_summary_with_the_share() -> None:
    spec = small("Larkspur", font="cinzel", cap_height="12", v_bit_tip="0.5", tabs="2")
    facts = prove(spec)
    assert "stays uncut there, at most" in english(facts.warnings)[0]
    said = " ".join(summary_text(facts, "out").split())
    assert all(warning in said for warning in english(facts.warnings))
    assert len(english(facts.warnings)) > 1
