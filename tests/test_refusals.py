"""What can be made is not refused, and what cannot is refused in the right words."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from signgen.drawing.draw import draw
from signgen.errors import CannotMakeError
from signgen.operations.plan import make_plan
from signgen.pipeline import prove
from tests.asking import spec_of

BARE: dict[str, Any] = {"holes": None, "hole_diameter": None, "inset": None}
SIDES: dict[str, Any] = {"text": ["88"], "holes": "side-pair", "inset": "36", "hole_diameter": "6"}


@pytest.mark.parametrize("tolerance", ["0.1", "0.2"])
@pytest.mark.parametrize(
    "changes",
    [
        {"finish": "recess"},
        {"finish": "raised"},
        {"finish": "recess", "panel": "8", "sharp_corners": True},
        {"finish": "through", "bridges": "2"},
        {"border": "ogee", "edge_chamfer": "2"},
    ],
    ids=lambda changes: " ".join(changes),
)
def test_a_coarse_tolerance_is_for_sloping_walls_alone(changes: dict[str, Any], tolerance: str) -> None:
    prove(spec_of(**BARE, text=["OTE"], size="160x70", tolerance=tolerance, **changes))


@pytest.mark.parametrize("depth", ["2", "2.54", "3", "3.3"])
@pytest.mark.parametrize("how", [{"finish": "raised"}, {"finish": "recess", "panel": "8"}])
def test_decimals_of_inches_are_no_finding_under_floors(how: dict[str, Any], depth: str) -> None:
    prove(spec_of(**SIDES, **how, panel_depth=depth, depth="1.3" if "panel" in how else None, dialect="inch"))


def test_ways_that_meet_but_for_rounding_are_one() -> None:
    spec = spec_of(
        **BARE, text=["I"], size="260x140", thickness="15", finish="recess", panel="8", rim="2", rim_inset="7",
        border="scalloped", font="atkinson", cap_height="60", end_mill="6",
    )  # fmt: skip
    prove(spec)


@pytest.mark.parametrize("tolerance", ["0.01", "0.05", "0.2"])
@pytest.mark.parametrize("text", [".", "·", "i.", ":"])
def test_a_dot_is_a_way_straight_down(text: str, tolerance: str) -> None:
    spec = spec_of(**BARE, text=[text], size="160x60", font="atkinson", cap_height="5", tolerance=tolerance)
    facts = prove(spec)
    board = facts.boards[-1].z_mm
    assert np.count_nonzero(board[board > 0] < 11.8) > 0


def test_a_cutter_that_must_be_named_is_named_where_it_would_do() -> None:
    spec = spec_of(thickness="24")
    with pytest.raises(CannotMakeError) as refused:
        make_plan(draw(spec), spec)
    assert "Use end-mill-name end-mill-quarter-inch, which cuts 25.4 mm deep and must be named" in str(refused.value)
    named = spec_of(thickness="24", end_mill_name="end-mill-quarter-inch")
    assert make_plan(draw(named), named).edge.name == "end-mill-quarter-inch"


def test_a_named_cutter_is_told_the_hole_that_it_can_bore() -> None:
    spec = spec_of(end_mill_name="straight-6", hole_diameter="6")
    with pytest.raises(CannotMakeError, match=r"make the hole at least 6\.3 mm"):
        make_plan(draw(spec), spec)


def test_a_height_that_nobody_gave_is_not_to_be_left_out() -> None:
    # A frame's own inset is more than the room of letters that are made to fit.
    high = spec_of(**BARE, text=["Larkspur"], cap_height="139", size="220x140")
    with pytest.raises(CannotMakeError, match="without cap-height"):
        draw(high)
