"""How the control wants its programs, and cutters by their names in the shop."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from signgen.errors import AskError
from signgen.shop.load import load_shop
from signgen.shop.manner import USUAL, Manner
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.sign_file import asked_of
from tests.asking import HOUSE_NUMBER

DIALECTS = ("plain", "inch", "one-file")
SHOP = load_shop(None)


def read(shop=SHOP, **changes):  # type: ignore[no-untyped-def]
    asked = HOUSE_NUMBER | {key.replace("_", "-"): value for key, value in changes.items()}
    return read_spec(asked, shop, dialects=DIALECTS)


def own(**changes):  # type: ignore[no-untyped-def]
    """The shop with a machine whose control wants something else."""
    return replace(SHOP, machines=(replace(SHOP.machines[0], **changes), *SHOP.machines[1:]))


def test_a_machine_that_says_nothing_wants_plain_programs() -> None:
    assert (read().dialect, read().manner) == ("plain", USUAL)


def test_the_machines_row_says_how_its_control_wants_them() -> None:
    wants = Manner(line_numbers=True, percent_lines=True, program_end="m30", extraction="m7", warm_up_s=90)
    spec = read(own(dialect="inch", manner=wants))
    assert (spec.dialect, spec.manner) == ("inch", wants)


def test_what_the_sign_says_goes_before_the_machines_row() -> None:
    wants = Manner(line_numbers=True, percent_lines=True, program_end="m30", extraction="m7", warm_up_s=90)
    spec = read(
        own(dialect="inch", manner=wants), dialect="one-file", line_numbers=False, percent_lines="no",
        program_end="m2", extraction="none", warm_up=0,
    )  # fmt: skip
    assert (spec.dialect, spec.manner) == ("one-file", USUAL)


def test_a_dialect_that_a_machine_wants_and_nobody_has_is_told_with_the_machines_name() -> None:
    with pytest.raises(AskError) as caught:
        read(own(dialect="inches"))
    (problem,) = caught.value.problems
    assert problem.where == "machine desktop-router"
    assert "inch" in str(problem.remedy)


def test_all_of_it_survives_the_sign_file() -> None:
    spec = read(dialect="inch", line_numbers=True, percent_lines=True, program_end="m30", extraction="m8", warm_up=45)
    assert read_spec(asked_of(spec), SHOP, dialects=DIALECTS) == spec


def test_another_machine_on_the_command_line_brings_its_own_control() -> None:
    file = {"text": "17", "machine": "desktop-router", "dialect": "inch", "extraction": "m8", "warm-up": 60}
    assert merged(file, {"machine": "bench-router"}) == {"text": "17", "machine": "bench-router"}


@pytest.mark.parametrize("name", [tool.name for tool in SHOP.tools if tool.kind == "end-mill"])
def test_any_end_mill_of_the_shop_can_be_named_and_is_found_again(name: str) -> None:
    spec = read(end_mill_name=name)
    assert spec.end_mill is not None
    assert spec.end_mill.name == name
    assert read_spec(asked_of(spec), SHOP, dialects=DIALECTS).end_mill == spec.end_mill


def test_a_cutter_marked_for_naming_is_not_taken_for_its_diameter() -> None:
    spec = read(end_mill="1/4in")
    assert spec.end_mill is not None
    assert not spec.end_mill.only_named


def test_a_name_and_a_diameter_are_one_too_many() -> None:
    with pytest.raises(AskError) as caught:
        read(end_mill_name="down-cut-6", end_mill=6)
    assert [problem.where for problem in caught.value.problems] == ["end-mill"]


def test_a_drill_is_no_end_mill() -> None:
    with pytest.raises(AskError) as caught:
        read(end_mill_name="drill-5")
    assert [problem.where for problem in caught.value.problems] == ["end-mill-name"]
