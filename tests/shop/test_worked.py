"""The calculation that is shown is the one that is done."""

from __future__ import annotations

import re
from math import sqrt

import pytest

from signgen.shop.feeds import cutting_data
from signgen.shop.load import load_shop
from signgen.shop.worked import worked

SHOP = load_shop()


@pytest.mark.parametrize("material", SHOP.materials, ids=lambda m: m.name)
@pytest.mark.parametrize("tool", SHOP.tools, ids=lambda t: t.name)
def test_every_working_comes_to_its_value_and_every_figure_is_the_one_used(tool, material) -> None:  # type: ignore[no-untyped-def]
    for machine in SHOP.machines:
        data = cutting_data(tool, material, machine)
        steps = {str(step.name): step for step in worked(tool, material, machine, width_mm=tool.diameter_mm / 8)}
        for step in steps.values():
            assert re.fullmatch(r"[\d.+\-x/() e]|(?:[\d.+\-x/() e]|sqrt)*", step.working)
            done = eval(step.working.replace("x", "*"), {"__builtins__": {}, "sqrt": sqrt})
            assert done == pytest.approx(step.value, rel=2e-4)
        assert steps["Spindle speed"].result == f"{data.spindle_rpm:.0f} rpm"
        assert steps["Feed"].result == f"{data.feed_mm_per_min:.0f} mm/min"
        depth = "Depth of a peck" if tool.kind == "drill" else "Depth of a pass"
        assert steps[depth].result == f"{data.stepdown_mm:g} mm"
        if tool.kind != "drill":
            assert steps["Straight down"].result == f"{data.plunge_mm_per_min:.0f} mm/min"
            assert steps["Along a ramp"].result == f"{data.ramp_mm_per_min:.0f} mm/min"


def test_speed_at_the_rim_of_the_published_examples() -> None:
    # Source: textbook identity: D 6 at 18000 rpm is 339.29 m/min, 12.7 at 12000 is 478.78.
    from msgspec.structs import replace

    mill, ply, machine = SHOP.tools[2], SHOP.materials[0], SHOP.machines[1]
    fast = replace(machine, top_feed_mm_per_min=(1e6, 1e6, 1e6))
    for diameter, rpm, speed in ((6.0, 18000.0, 339.29), (12.7, 12000.0, 478.78)):
        steps = worked(replace(mill, diameter_mm=diameter), replace(ply, spindle_rpm=rpm), fast)
        assert next(step.value for step in steps if str(step.name) == "Speed at the rim") == pytest.approx(
            speed, abs=0.005
        )
