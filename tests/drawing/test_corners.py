"""Ornaments in the corners: where they lie, and what they may not run into."""

from __future__ import annotations

from typing import Any

import pytest
import shapely
from shapely import affinity

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.errors import AskError, SignGenError
from signgen.features.groove import Groove
from signgen.features.raised import Raised
from tests.asking import spec_of

CORNER: dict[str, Any] = {"text": ["17"], "holes": "none", "hole_diameter": None, "inset": None, "ornament": "&"}


def ornaments(drawing: Drawing) -> dict[str, shapely.Geometry]:
    parts = (*drawing.of(Groove), *drawing.of(Raised))
    return {part.name.removeprefix("ornament "): part.area for part in parts if part.name.startswith("ornament")}


def test_an_ornament_is_mirrored_into_all_four_corners() -> None:
    found = ornaments(draw(spec_of(**CORNER, ornament_size="20", ornament_inset="9")))
    assert set(found) == {"top left", "top right", "bottom left", "bottom right"}
    first = found["top left"]
    assert first.bounds[0] == pytest.approx(9, abs=0.02)
    assert first.bounds[3] == pytest.approx(140 - 9, abs=0.02)
    assert max(first.bounds[2] - first.bounds[0], first.bounds[3] - first.bounds[1]) == pytest.approx(20, abs=0.02)
    for name, way in (("top right", (-1, 1)), ("bottom left", (1, -1)), ("bottom right", (-1, -1))):
        mirrored = affinity.scale(first, *way, origin=(110, 70))
        assert mirrored.symmetric_difference(found[name]).area < 0.01, name


@pytest.mark.parametrize("border", ["rectangle", "rounded", "scalloped", "oval", "shield", "arched", "octagon", "tag"])
def test_an_ornament_stays_inside_every_outline_by_its_inset(border: str) -> None:
    drawing = draw(spec_of(**CORNER, border=border, ornament_size="14", ornament_inset="6"))
    for area in ornaments(drawing).values():
        assert drawing.edge.covers(area)
        assert drawing.edge.exterior.distance(area) >= 6 - 0.05


def test_letters_keep_away_from_ornaments() -> None:
    drawing = draw(spec_of(**CORNER, ornament_size="30"))
    letters = shapely.union_all([groove.area for groove in drawing.of(Groove) if groove.text])
    assert min(area.distance(letters) for area in ornaments(drawing).values()) > 0.03 * 140


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"ornament": "ab"}, "ornament: 'ab' is not one character."),
        ({"ornament": "𒀀"}, "ornament: barlow has no '𒀀'."),
        ({"ornament": None, "ornament_size": "9"}, "ornament-size: There is no ornament for it."),
        ({"ornament_font": "nowhere.ttf"}, "ornament-font:"),
        ({"ornament_size": "60", "ornament_inset": "10"}, "ornament-size: Ornaments of 60 mm, 10 mm inside, meet"),
        ({"border": "oval", "ornament_size": "58"}, "ornament-size: An ornament of 58 mm has no room"),
        ({"holes": "corners", "hole_diameter": "6", "inset": "15"}, "ornament: The ornament top left lies over hole"),
        ({"frame": "12", "ornament_inset": "6"}, "ornament: The ornament top left runs into frame."),
        ({"text": ["HHHH"], "cap_height": "70", "ornament_size": "40"}, "ornament: The ornament top left runs into"),
        ({"finish": "recess", "panel": "8"}, "ornament: Ornaments are engraved into the face"),
    ],
)
def test_an_ornament_that_cannot_be_is_refused_with_its_reason(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(SignGenError) as caught:
        draw(spec_of(**{**CORNER, **changes}))
    assert any(f"{each.where}: {each.what}".startswith(said) for each in caught.value.problems)  # type: ignore[attr-defined]


def test_a_character_that_the_face_lacks_is_offered_in_others() -> None:
    with pytest.raises(AskError) as caught:
        draw(spec_of(**{**CORNER, "ornament": "Ω"}, ornament_font="rye"))
    (problem,) = caught.value.problems
    assert problem.where == "ornament"
    assert "These have it: " in str(problem.remedy)
