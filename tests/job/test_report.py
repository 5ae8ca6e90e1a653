"""The report's keys are those of the contract, and its figures those of the programs."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest
from msgspec.structs import replace

from signgen.job.facts import JobFacts
from signgen.job.report import report, report_text

Make = Callable[..., JobFacts]

CONTRACT: dict[str, Any] = {
    "format": str, "version": int,
    "sign": {"width_mm": float, "height_mm": float, "thickness_mm": float, "material": str, "lines": list,
             "cap_height_mm": float, "font": str},
    "stock": {"min_width_mm": float, "min_height_mm": float, "datum_x_mm": float, "datum_y_mm": float},
    "programs": [{"file": str,
                  "tool": {"kind": str, "diameter_mm": float, "tip_mm": float, "shank_mm": float},
                  "spindle_rpm": float, "feed_mm_per_min": float, "plunge_mm_per_min": float, "minutes": float,
                  "cut_length_mm": float, "travel_length_mm": float,
                  "extent": {"x_mm": list, "y_mm": list, "z_mm": list}}],
    "minutes": float,
    "checks": [{"code": str, "name": str, "severity": str, "passed": bool, "detail": str}],
    "fastening": {"screws_mm": list, "datum": str},
}  # fmt: skip
"""Keys and kinds as the shared contract shows them; keys may be added."""


def agrees(value: Any, wanted: Any, path: str = "") -> list[str]:
    """Every difference, as a path."""
    if isinstance(wanted, dict):
        missing = [f"{path}.{key} is missing" for key in wanted if key not in value]
        return missing + [
            bad for key in wanted if key in value for bad in agrees(value[key], wanted[key], f"{path}.{key}")
        ]
    if isinstance(wanted, list):
        return [bad for i, entry in enumerate(value) for bad in agrees(entry, wanted[0], f"{path}[{i}]")]
    return [] if isinstance(value, wanted) else [f"{path} is {value!r}"]


def test_every_key_of_the_contract_is_there_with_its_kind(facts: JobFacts) -> None:
    assert agrees(json.loads(report_text(facts)), CONTRACT) == []


def test_keys_stand_in_the_contracts_order(facts: JobFacts) -> None:
    keys = [key for key in report(facts) if key in CONTRACT]
    assert keys == list(CONTRACT)


def test_the_v_bit_states_its_angle_and_the_end_mill_has_none(facts: JobFacts) -> None:
    tools = [program["tool"] for program in report(facts)["programs"]]
    assert (tools[0]["kind"], tools[0]["angle_deg"]) == ("v-bit", 90.0)
    assert (tools[1]["kind"], tools[1]["angle_deg"]) == ("end-mill", None)


def test_extents_reach_as_far_as_the_arcs_between_their_ends(make_facts: Make) -> None:
    # the bore at x = 30 with radius 0.5: its ends all lie at x = 30.5, its arc reaches 29.5
    facts = make_facts(holes=((30.0, 60.0), (170.0, 60.0)))
    extent = report(facts)["programs"][1]["extent"]
    assert extent["x_mm"] == [-3.0, 203.0]
    assert extent["y_mm"] == [-3.0, 123.0]
    assert extent["z_mm"] == [-0.3, 20.0]


def test_the_least_board_is_stated_even_when_a_larger_one_lies_there(make_facts: Make) -> None:
    stock = report(make_facts(real_board=True))["stock"]
    assert (stock["min_width_mm"], stock["min_height_mm"]) == (220.0, 140.0)
    assert (stock["datum_x_mm"], stock["datum_y_mm"]) == (10.0, 10.0)


def test_a_datum_on_the_board_lies_on_its_corner(make_facts: Make) -> None:
    data = report(make_facts(origin="stock"))
    assert (data["stock"]["datum_x_mm"], data["stock"]["datum_y_mm"]) == (0.0, 0.0)
    assert data["fastening"]["datum"] == "stock"


def test_total_minutes_are_the_sum(facts: JobFacts) -> None:
    data = report(facts)
    assert data["minutes"] == pytest.approx(sum(program["minutes"] for program in data["programs"]), abs=0.01)


def test_shares_of_the_time_are_those_of_all_operations_and_of_each(facts: JobFacts) -> None:
    data = report(facts)
    holes, edge = data["programs"][1]["operations"]
    assert (holes["does"], holes["minutes"]) == ("bores the holes", pytest.approx(80 / 60, abs=0.01))
    assert holes["shares"] == {"cutting": 0.75, "entry": 0.0, "travel": 0.25}
    assert edge["shares"] == {"cutting": 0.889, "entry": 0.059, "travel": 0.052}
    assert data["shares"] == data["programs"][1]["shares"] == {"cutting": 0.857, "entry": 0.046, "travel": 0.097}


def test_a_failed_check_says_what_it_saw(facts: JobFacts) -> None:
    last = report(facts)["checks"][-1]
    assert last["passed"] is False
    assert "0.8 mm" in last["findings"][0]["message"]


def test_the_text_is_the_same_twice_and_has_no_minus_zero(make_facts: Make) -> None:
    first, second = (report_text(make_facts()) for _ in range(2))
    assert first == second
    assert "-0.0\n" not in first
    assert "-0.0," not in first
    assert first.endswith("}\n")


def test_the_engraving_is_told_in_figures(facts: JobFacts) -> None:
    told = report(facts)["engraving"]
    assert told["deepest"]["mm"] + told["wood_left_mm"] == pytest.approx(facts.drawing.thickness_mm)
    assert told["narrowest_stroke"]["mm"] <= told["widest_stroke"]["mm"]
    assert told["deepest"]["letter"] in [letter.text for letter in facts.drawing.letters]
    # Plane geometry of cones: w = 2 d tan(angle / 2) + t at 90 degrees.
    assert told["if_thicker"] == {"by_mm": 0.1, "deeper_mm": 0.1, "wider_mm": 0.2}
    assert told["measure_first"]["trial_groove"]["width_mm"] == 2.0


def test_with_zero_on_top_a_thicker_board_is_engraved_no_deeper(make_facts: Make) -> None:
    told = report(make_facts(z_zero="top"))["engraving"]["if_thicker"]
    assert (told["deeper_mm"], told["wider_mm"]) == (0.0, 0.0)


def test_nothing_engraved_is_null(facts: JobFacts) -> None:
    assert report(replace(facts, sense=None))["engraving"] is None
