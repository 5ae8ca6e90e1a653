"""Reading in the report and on the sheet."""

from __future__ import annotations

import json

from signgen.drawing.draw import draw
from signgen.job.legibility import legibility_report, lettering_report, reading_note
from signgen.words.words import words_in
from tests.asking import english, spec_of


def test_the_report_has_every_line_and_rule_and_is_plain_json() -> None:
    drawing = draw(spec_of())
    found = json.loads(json.dumps(legibility_report(drawing), allow_nan=False))
    assert [line["text"] for line in found["lines"]] == ["17", "Larkspur Lane"]
    for line in found["lines"]:
        assert line["stroke_to_height"] == 0.166
        assert len({rule["rule"] for rule in line["reads_at"]}) == 9
        assert all(rule["source"] and rule["distance_m"] > 0 for rule in line["reads_at"])
    assert [number["text"] for number in found["house_numbers"]] == ["17"]
    lettering = lettering_report(drawing)
    assert [(line["text"], line["font"], line["cap_height_mm"]) for line in lettering] == [
        ("17", "barlow", drawing.cap_height_mm),
        ("Larkspur Lane", "barlow", drawing.cap_height_mm),
    ]


def test_nowhere_is_it_said_that_a_sign_complies() -> None:
    text = (
        json.dumps(legibility_report(draw(spec_of()))).casefold()
        + " ".join(english(reading_note(draw(spec_of())))).casefold()
    )
    text = text.replace("none of them says that a sign complies with anything", "")
    assert "compl" not in text
    assert "conform" not in text


def test_the_note_goes_by_the_smallest_letters() -> None:
    bare = {"holes": None, "hole_diameter": None, "inset": None}
    line = [{"text": "Wayfield", "cap-height": 30}, {"text": "Mill", "cap-height": "1in"}]
    note = " ".join(english(reading_note(draw(spec_of(**bare, text=None, line=line)))))
    assert note.startswith("Letters 25.4 mm high are read with ease up to 3 m away (sign trade, easy reading)")
    assert "beyond 10.1 m (MUTCD 2000, 2A.14, as research supports)" in note
    assert "fire code" not in note


def test_unlike_heights_are_told_from_the_least_to_the_greatest() -> None:
    bare = {"holes": None, "hole_diameter": None, "inset": None}
    line = [{"text": "17", "cap-height": 40}, {"text": "Mill", "cap-height": 12.5}]
    told = words_in("en").cap_heights
    assert told(draw(spec_of(**bare, text=None, line=line))) == "12.5 to 40"
    assert told(draw(spec_of(**bare, text=["17"], cap_height="40"))) == "40"
