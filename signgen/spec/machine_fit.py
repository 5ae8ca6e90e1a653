"""Whether the machine can hold the cutters and reach over the sign at all; the programs themselves are judged later."""

from __future__ import annotations

from signgen.messages import Message, Mm, Sides
from signgen.shop.collets import SERIES, collet_for
from signgen.shop.materials import Machine
from signgen.shop.shop import Shop
from signgen.shop.stock import around_mm
from signgen.shop.tools import STOUTEST_MM, Tool
from signgen.spec.asked import Asked


def goes_round(machine: Machine, size_mm: tuple[float, float]) -> bool:
    """Whether the machine gets round a sign with the stoutest cutter that is taken unasked."""
    x, y = machine.travel_mm[:2]
    more = 2 * around_mm(STOUTEST_MM)
    return size_mm[0] + more <= x and size_mm[1] + more <= y


def must_fit_collet(a: Asked, key: str, tool: Tool, machine: Machine) -> None:
    """Keep a problem when the machine's collets do not take the shank of a cutter."""
    if collet_for(tool.shank_mm, machine.collet_series) is None:
        size = SERIES[machine.collet_series]
        a.cannot(
            key, Message("spec.shank_does_not_go_into", shank=Mm(tool.shank_mm), tool=tool.name, machine=machine.name),
            Message("spec.they_take", least=Mm(size.least_mm), greatest=Mm(size.greatest_mm)),
        )  # fmt: skip


def must_fit_travel(a: Asked, machine: Machine, size_mm: tuple[float, float], shop: Shop) -> None:
    """Keep a problem when the sign alone is larger than the machine's travel."""
    x, y = machine.travel_mm[:2]
    if size_mm[0] > x or size_mm[1] > y:
        what = Message("spec.more_than_travels", size=Sides(size_mm), machine=machine.name, travel=Sides((x, y)))
        others = [each.name for each in shop.machines if goes_round(each, size_mm)]
        another = Message("spec.give_machine_that_goes_round", name=others[0]) if others else None
        a.cannot("size", what, another or Message("spec.make_smaller_give_another_machine"))


def must_fit_height(a: Asked, machine: Machine, thickness_mm: float, clearance_mm: float, through_mm: float) -> None:
    """Keep a problem when the way from below the board to the travel height is longer than the machine's Z."""
    needed = thickness_mm + clearance_mm + through_mm
    if needed > machine.travel_mm[2]:
        what = Message(
            "spec.clearance_needs_travel_z",
            thickness=Mm(thickness_mm), clearance=Mm(clearance_mm),
            needed=Mm(needed), machine=machine.name, travel=Mm(machine.travel_mm[2]),
        )  # fmt: skip
        a.cannot("thickness", what, Message("spec.use_thinner_board_less_clearance"))
