"""Rules of reading, against the values that they were published with (each is named beside its value)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.shop.legibility import reading_rules

DISTANCES = {rule.rule: rule for rule in reading_rules().distances}


@pytest.mark.parametrize(
    ("rule", "inches", "feet"),
    [
        ("MUTCD 2000, 2A.14", 1, 40),  # quoted text of the Millennium edition
        ("MUTCD 2000, 2A.14, as research supports", 2, 66),
        ("MUTCD 2009, 2A.13", 6, 180),  # from memory
        ("USSC 2006, sign across the road", 1, 30),  # from memory
        ("USSC 2006, sign along the road", 1, 10),  # from memory
        ("sign trade, easy reading", 3, 30),  # common practice
        ("sight of 20/20", 1, 57.3),  # computed: 5 minutes of arc
        ("sight of 20/40", 1, 28.65),
        # the chart of USSC and Penn State, 1998, as a signmaker quotes it
        *(("USSC and Penn State 1998", i, f) for i, f in ((4, 100), (10, 250), (16, 360), (22, 500), (57, 1320))),
    ],
)  # fmt: skip
def test_distances_are_those_published(rule: str, inches: float, feet: float) -> None:
    assert DISTANCES[rule].distance_m(inches * 25.4) == pytest.approx(feet * 0.3048, rel=5e-4)


def test_an_arc_of_five_minutes_is_one_and_a_half_millimetres_in_a_metre() -> None:
    """Snellen's letter: h = 2 L tan(2.5'), 1.4544 mm per metre (computed in the notes)."""
    assert DISTANCES["sight of 20/20"].distance_m(1.4544) == pytest.approx(1, rel=1e-4)
    assert DISTANCES["sight of 20/40"].distance_m(2.909) == pytest.approx(1, rel=1e-4)


def test_beyond_its_ends_a_chart_goes_on_in_proportion_and_between_its_points_straight() -> None:
    chart = DISTANCES["USSC and Penn State 1998"]
    assert chart.distance_m(25.4) == pytest.approx(25 * 0.3048)
    assert chart.distance_m(57 * 2 * 25.4) == pytest.approx(2640 * 0.3048)
    assert chart.distance_m(13 * 25.4) == pytest.approx(305 * 0.3048)


@given(st.floats(1, 2000), st.floats(1.001, 3))
def test_larger_letters_read_from_further(height: float, times: float) -> None:
    for rule in DISTANCES.values():
        assert 0 < rule.distance_m(height) < rule.distance_m(height * times)


def test_house_numbers_are_those_published() -> None:
    found = {rule.rule: rule for rule in reading_rules().house_numbers}
    fire = found["International Fire Code 505.1"]
    assert (fire.height_mm, fire.stroke_mm) == (101.6, 12.7)
    assert found["Circular Roads 3/93, appendix C"].height_mm == 62.5
    fountain = found["Fountain, local 505.1"]
    assert fountain.height_mm == 127
    assert [upto and round(upto / 0.3048) for upto, _ in fountain.steps] == [75, 150, 250, None]
    assert [height / 25.4 for _, height in fountain.steps] == pytest.approx([5, 6, 8, 10])
    assert [height / 25.4 for _, height in found["Everett, addressing"].steps] == pytest.approx([4, 6, 8, 10, 12])


def test_proportions_are_those_published() -> None:
    ranges = {(rule.rule, rule.of): (rule.least, rule.most) for rule in reading_rules().ranges}
    assert ranges["UFC 3-120-01", "stroke"] == pytest.approx((1 / 10, 1 / 5))
    assert ranges["UFC 3-120-01", "width"] == pytest.approx((3 / 5, 1))
    ada = {of: pair for (rule, of), pair in ranges.items() if rule.startswith("2010 ADA")}
    assert ada == {"stroke": (0.1, 0.3), "width": (0.55, 1.1), "gap": (0.1, 0.35), "line": (1.35, 1.7)}


def test_every_rule_has_its_source_and_how_sure_it_is() -> None:
    rules = reading_rules()
    for rule in (*rules.distances, *rules.ranges, *rules.house_numbers):
        assert rule.source
        assert rule.certainty in {"read", "quoted", "computed", "memory", "practice"}
        assert rule.rule
