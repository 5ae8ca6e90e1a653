"""Frame, ornament and rim as asked for."""

from __future__ import annotations

from typing import Any

import pytest

from signgen.errors import SignGenError
from signgen.spec.trim import FrameSpec, RimSpec
from tests.asking import spec_of


def problems(**changes: Any) -> list[str]:
    with pytest.raises(SignGenError) as caught:
        spec_of(**changes)
    return [f"{each.where}: {each.what}" for each in caught.value.problems]  # type: ignore[attr-defined]


def test_a_frame_of_several_lines_goes_inwards_by_line_and_gap() -> None:
    frame = spec_of(frame="6", frame_width="1", frame_lines="3", frame_gap="2").frame
    assert frame == FrameSpec(inset_mm=6, width_mm=1, lines=3, gap_mm=2)
    assert frame.insets_mm == (6, 9, 12)
    assert frame.reach_mm == 12.5


def test_more_lines_push_the_letters_further_in() -> None:
    one, two = (spec_of(frame="8", frame_lines=lines).text.margin_mm for lines in ("1", "2"))
    assert two == pytest.approx(one + 4)  # a line of 2 mm and as much wood


def test_a_rim_stands_in_the_panel_that_raised_letters_bring() -> None:
    assert spec_of(finish="raised", rim="3").rim == RimSpec(width_mm=3, inset_mm=5.6)
    assert spec_of(finish="recess", panel="8", rim="3", rim_inset="4").rim == RimSpec(width_mm=3, inset_mm=4)


def test_an_ornament_takes_the_face_of_the_letters_and_its_size_from_the_sign() -> None:
    asked = spec_of(font="rye", ornament="*").ornament
    assert asked is not None
    assert (asked.font, asked.size_mm, asked.inset_mm) == ("rye", 21, 7)
    framed = spec_of(frame="8", ornament="*").ornament
    assert framed is not None
    assert framed.inset_mm == 8 + 1 + 2


def test_a_bevel_may_go_deeper_where_no_tab_stands() -> None:
    asked = {"edge_chamfer": "5", "thickness": "6", "depth": "2", "tab_height": "1.2"}
    assert any(each.startswith("edge-chamfer:") for each in problems(**asked))
    assert spec_of(**{**asked, "tab_height": None}, tabs="0").chamfer_mm == 5


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"frame_lines": "2"}, "frame-lines: There is no frame for it."),
        ({"frame_gap": "2"}, "frame-gap: There is no frame for it."),
        ({"frame": "50", "frame_lines": "6"}, "frame: 6 lines that begin 50 mm inside leave no room"),
        ({"frame": "5", "frame_lines": "0"}, "frame-lines:"),
        ({"rim_inset": "5"}, "rim-inset: There is no rim for it."),
        ({"rim": "5"}, "rim: A rim stands in a panel, and there is none."),
        ({"finish": "raised", "rim": "60"}, "rim: A rim of 60 mm"),
        ({"edge_chamfer": "7"}, "edge-chamfer: It goes 7 mm deep, and the V-bit reaches 6 mm."),
        ({"edge_chamfer": "4", "thickness": "5"}, "edge-chamfer: It goes 4 mm deep into a board of 5 mm, and 1 mm of"),
        ({"edge_chamfer": "4", "v_bit": "60", "thickness": "8"}, "edge-chamfer: It goes 6.93 mm deep"),
    ],
)
def test_what_cannot_be_is_refused(changes: dict[str, Any], said: str) -> None:
    assert any(problem.startswith(said) for problem in problems(**changes))
