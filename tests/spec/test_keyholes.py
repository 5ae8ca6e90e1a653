"""How keyholes are cut: cutters, widths and depth by screw, shop and board."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from signgen.errors import AskError, CannotMakeError
from signgen.holes.keyholes import Keyholes
from signgen.spec.keyholes import FREE_MM, KeyholeSpec
from signgen.spec.sign_file import asked_of
from signgen.spec.sign_spec import SignSpec
from tests.asking import spec_of


def asked(**changes: Any) -> SignSpec:
    return spec_of(**{"holes": "keyholes", "hole_diameter": None, "inset": None, **changes})


def cut(**changes: Any) -> tuple[Keyholes, KeyholeSpec]:
    spec = asked(**changes)
    assert isinstance(spec.holes, Keyholes)
    assert spec.keyholes is not None
    return spec.holes, spec.keyholes


@pytest.mark.parametrize("screw", ["#6", "#8", "#10", "#12", "M4", "M5", "M6"])
def test_shank_slot_head_undercut_and_entry_grow_in_this_order(screw: str) -> None:
    """Source: common practice for keyhole slots (shank < slot < head < entry); K2: room of 0.3 to 1 mm (practice)."""
    holes, made = cut(screw=screw)
    assert holes.shank_mm + 0.3 <= made.slot_mm
    assert made.cutter.neck_mm < made.slot_mm
    assert made.slot_mm + 1.5 <= holes.head_mm  # something to bear on
    assert holes.head_mm + 0.5 <= made.cutter.diameter_mm < made.entry_mm
    assert made.mill.diameter_mm <= made.slot_mm
    assert holes.travel_mm >= 10


def test_the_usual_depth_leaves_three_sixteenths_over_the_head() -> None:
    """Source: common practice for keyhole slots: at least 3/16 in (4.8 mm) of shoulder."""
    _, made = cut(thickness="15")
    assert made.shoulder_mm == pytest.approx(3 / 16 * 25.4, abs=0.05)
    assert made.depth_mm == pytest.approx(made.cutter.head_mm + 4.8 + FREE_MM)


def test_a_thin_board_takes_from_the_shoulder_and_is_refused_in_the_end() -> None:
    _, made = cut(thickness="9.5")
    assert made.depth_mm == pytest.approx(9.5 - 2)
    with pytest.raises(CannotMakeError, match="too thin for keyholes"):
        asked(thickness="9")


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"screw": "#4"}, "too thick a neck"),
        ({"screw": "#14"}, "wide enough for the head of #14"),
        ({"keyhole_depth": "11"}, "11 mm does not do"),
        ({"end_mill": "6"}, "does not open keyholes whose slot is 5 mm wide"),
    ],
)
def test_says_why_it_cannot_be_made(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(CannotMakeError, match=message):
        asked(**changes)


@pytest.mark.parametrize("option", [{"countersink": "true"}, {"slot_length": "12"}, {"hole_diameter": "5"}])
def test_options_of_holes_do_not_go_with_keyholes(option: dict[str, Any]) -> None:
    with pytest.raises(AskError, match=next(iter(option)).replace("_", "-")):
        asked(**option)


def test_keyhole_options_do_not_go_with_holes() -> None:
    with pytest.raises(AskError, match="keyhole-depth"):
        spec_of(keyhole_depth="9")


def test_the_sign_file_names_the_screw_and_gives_the_same_again() -> None:
    spec = asked(screw="#10", keyhole_depth="9", thickness="15")
    words = {key: value for key, value in asked_of(spec).items() if key not in ("text",)}
    assert words["screw"] == "#10"
    again = spec_of(**{key.replace("-", "_"): value for key, value in words.items()}, hole_diameter=None)
    assert (again.holes, again.keyholes) == (spec.holes, spec.keyholes)


def test_a_cutter_of_ones_own_is_taken_as_it_measures(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(
        '[tool.mine]\nkind = "keyhole"\ndiameter = 9\nneck = 4.2\nhead-height = 3.5\nshank = 6\ncutting-length = 12\n'
        'flutes = 2\nstick-out = 25\nsource = "measured"\n'
    )
    from signgen.shop.load import load_shop
    from signgen.spec.read import read_spec
    from tests.asking import HOUSE_NUMBER

    wanted = {key: value for key, value in HOUSE_NUMBER.items() if key not in ("hole-diameter", "inset")}
    spec = read_spec({**wanted, "holes": "keyholes", "shop": str(shop)}, load_shop(shop))
    assert spec.keyholes is not None
    assert spec.keyholes.cutter.name == "mine"
    assert (spec.keyholes.slot_mm, spec.keyholes.entry_mm) == pytest.approx((4.57, 9.5))
