"""What parts of a sign are called: in English as they are named, in German in German."""

from __future__ import annotations

import pytest

from signgen.drawing.draw import draw
from signgen.messages.wording import Wording
from tests.asking import spec_of

SIGNS = (
    {"text": ["17", "Larkspur Lane"], "holes": "corners", "frame": 5, "frame_lines": 2, "inset": 22},
    {
        "text": ["OFFICE"],
        "finish": "raised",
        "holes": "keyholes",
        "thickness": 18,
        "hole_diameter": None,
        "screw": "M4",
    },
    {"text": ["Mill"], "holes": "side-pair", "slot_length": 14, "ornament": "*", "finish": "recess"},
)


@pytest.mark.parametrize("asked", SIGNS, ids=lambda asked: " ".join(asked["text"]))
def test_every_part_has_a_german_name_and_its_own_in_english(asked: dict[str, object]) -> None:
    german = Wording("de")
    features = draw(spec_of(**asked)).features
    assert len(features) > 4
    for feature in features:
        assert str(feature.called) == feature.name
        said = german(feature.called)
        assert said.split(" ")[0] in {
            "Zeile", "Loch", "Langloch", "Schlüsselloch", "Steg", "Kante", "Fase", "Feld", "Grund", "Rahmenlinie",
            "Zierstück",
        }, said  # fmt: skip
    assert not german.lacking
