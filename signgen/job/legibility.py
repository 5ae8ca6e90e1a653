"""How the lettering reads, for the report and in a sentence for the sheet. Facts beside rules, no claim."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from signgen.drawing.drawing import Drawing
from signgen.drawing.legibility import HouseNumber, Reading, house_numbers, ratios, readings
from signgen.messages import Message, Mm, Num
from signgen.numbers import rounded

MM, RATIO, METRES = 4, 3, 2
EASY, FURTHEST = "sign trade, easy reading", "MUTCD 2000, 2A.14, as research supports"
"""The rules that the sheet quotes: one for comfort, one for the limit."""


def lettering_report(drawing: Drawing) -> list[dict[str, Any]]:
    """The lines as drawn, from the top; what the face does not have is null."""
    return [
        {
            "text": line.text,
            "line": line.source + 1,
            "font": line.font,
            "label": line.label,
            "cap_height_mm": rounded(line.cap_height_mm, MM),
            "digit_height_mm": _rounded(line.digit_height_mm, MM),
            "x_height_mm": _rounded(line.x_height_mm, MM),
            "baseline_mm": rounded(line.baseline_mm, MM),
            "circle": None if line.circle is None else {
                "x_mm": rounded(line.circle.x_mm, MM), "y_mm": rounded(line.circle.y_mm, MM),
                "radius_mm": rounded(line.circle.radius_mm, MM), "side": line.circle.side,
            },
        }
        for line in drawing.lines
    ]  # fmt: skip


def texts_report(texts: Sequence[str], drawing: Drawing) -> list[dict[str, Any]]:
    """The lines that were asked for and show something: what each is there for, its size and the bounds of its ink in
    sign coordinates, of all its parts when it was broken."""
    found = []
    for number, text in enumerate(texts):
        parts = [line for line in drawing.lines if line.source == number and line.bounds_mm is not None]
        if parts:
            x0, y0, x1, y1 = zip(*(line.bounds_mm for line in parts if line.bounds_mm is not None), strict=True)
            bounds = (min(x0), min(y0), max(x1), max(y1))
            found.append(
                {
                    "text": text,
                    "role": parts[0].role,
                    "cap_height_mm": rounded(parts[0].cap_height_mm, MM),
                    "bounds_mm": [rounded(value, MM) for value in bounds],
                }
            )
    return found


def legibility_report(drawing: Drawing) -> dict[str, Any]:
    """Ratios and reading distances of every line, and what is asked of house numbers where that is in force."""
    return {
        "lines": [_reading(reading) for reading in readings(drawing.lines)],
        "house_numbers": [_house_number(number) for number in house_numbers(drawing.lines)],
        "about": "Figures beside published rules, to weigh; none of them says that a sign complies with anything.",
    }


def reading_note(drawing: Drawing) -> tuple[Message, ...]:
    """How far the smallest letters read, and what may be asked of a house number; nothing without lettering."""
    if not drawing.lines:
        return ()
    found = readings(drawing.lines)
    nearest = min(found, key=lambda reading: reading.line.letter_height_mm)
    metres = {rule.rule: distance for rule, distance in nearest.distances_m}
    read = Message(
        "drawing.read_with_ease_up_to",
        height=Mm(nearest.line.letter_height_mm, 1, trim=True),
        easy=Num(metres[EASY], 1, trim=True), furthest=Num(metres[FURTHEST], 1, trim=True),
    )  # fmt: skip
    return (read, *(number.note for number in house_numbers(drawing.lines)[:1]))


def _reading(reading: Reading) -> dict[str, Any]:
    line = reading.line
    here = ratios(line)
    return {
        "text": line.text,
        "letter_height_mm": rounded(line.letter_height_mm, MM),
        "stroke_mm": _rounded(line.stroke_mm, MM),
        "stroke_to_height": _rounded(here["stroke"], RATIO),
        "width_to_height": _rounded(here["width"], RATIO),
        "gap_to_height": _rounded(here["gap"], RATIO),
        "least_gap_mm": _rounded(line.least_gap_mm, MM),
        "line_to_height": _rounded(here["line"], RATIO),
        "reads_at": [
            {"rule": rule.rule, "distance_m": rounded(metres, METRES), "source": rule.source,
             "certainty": rule.certainty}
            for rule, metres in reading.distances_m
        ],
        "proportions": [
            {"rule": each.rule.rule, "of": f"{each.rule.of}_to_height", "range": [each.rule.least, each.rule.most],
             "ratio": rounded(each.ratio, RATIO), "within": each.is_within, "source": each.rule.source,
             "certainty": each.rule.certainty}
            for each in reading.proportions
        ],
    }  # fmt: skip


def _house_number(number: HouseNumber) -> dict[str, Any]:
    return {
        "text": number.line.text,
        "figures_mm": rounded(number.figures_mm, MM),
        "stroke_mm": _rounded(number.line.stroke_mm, MM),
        "note": str(number.note),
        "rules": [
            {"rule": rule.rule, "place": rule.place, "height_mm": rounded(rule.height_mm, MM),
             "stroke_mm": _rounded(rule.stroke_mm, MM),
             "by_distance": [
                 {"up_to_m": _rounded(upto, METRES), "height_mm": rounded(height, MM)} for upto, height in rule.steps
             ],
             "source": rule.source, "certainty": rule.certainty}
            for rule in number.rules
        ],
    }  # fmt: skip


def _rounded(value: float | None, places: int) -> float | None:
    return None if value is None else rounded(value, places)
