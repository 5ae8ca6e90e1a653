"""Keyholes as they are cut: the cutters, the widths and the depth, from the screw, the shop and the board."""

from __future__ import annotations

import math

from msgspec import Struct

from signgen.holes import HolePattern
from signgen.holes.keyholes import KEYHOLE_DEPTH, Keyholes
from signgen.messages import Message, Mm
from signgen.shop.collets import collet_for
from signgen.shop.materials import Machine
from signgen.shop.shop import Shop
from signgen.shop.tools import STOUTEST_MM, Tool
from signgen.spec.asked import Asked

ROOM_MM = 0.5
"""The cutter's head, and the entry, over the screw's head; the entry over the cutter's (practice: 0.5 to 1 mm,
common practice for keyhole slots)."""
SLOT_ROOM_MM = 0.4
"""The slot over the screw's shank (common practice: 0.3 to 0.5 mm)."""
NECK_ROOM_MM = 0.2
"""The slot over the cutter's neck, so that the neck does not rub in what the end mill has opened (common
practice)."""
LEAST_BEARING_MM = 0.75
"""Of wood under the screw's head on each side of the slot: less pulls out (common practice)."""
SHOULDER_MM = 4.8
"""Wood between the undercut and the sign's back, which carries the sign: 3/16 in (common practice)."""
LEAST_SHOULDER_MM = 3.0
"""Less is refused (common practice)."""
FREE_MM = 0.2
"""How much deeper the end mill goes than the keyhole cutter, whose end then turns free: not all of them cut there."""
LEAST_FACE_MM, LEAST_FACE_RATIO = 2.0, 0.2
"""Wood left between a keyhole and the face (common practice)."""


class KeyholeSpec(Struct, frozen=True, kw_only=True):
    """`mill` opens entry and slot, `depth_mm` deep from the back; then `cutter` goes in at the entry and cuts the
    undercut, FREE_MM less deep."""

    cutter: Tool
    mill: Tool
    entry_mm: float
    slot_mm: float
    depth_mm: float

    @property
    def shoulder_mm(self) -> float:
        """Wood between undercut and back."""
        return self.depth_mm - FREE_MM - self.cutter.head_mm


def keyholes_of(
    a: Asked,
    holes: HolePattern | None,
    shop: Shop,
    machine: Machine | None,
    thickness_mm: float | None,
    named: Tool | None,
) -> KeyholeSpec | None:
    """How the keyholes asked for are cut; None when none were, or there is a problem. `named`: the end mill that the
    user named, which is kept to."""
    if not isinstance(holes, Keyholes) or thickness_mm is None or machine is None:
        return None
    cutter = _cutter(a, holes, shop, machine)
    if cutter is None:
        return None
    slot = round(max(holes.shank_mm + SLOT_ROOM_MM, cutter.neck_mm + NECK_ROOM_MM), 2)
    entry = round(max(holes.head_mm, cutter.diameter_mm) + ROOM_MM, 2)
    depth = _depth(a, holes, cutter, thickness_mm)
    if depth is None:
        return None
    mill = _mill(a, shop, machine, named, slot, depth)
    if mill is None:
        return None
    return KeyholeSpec(cutter=cutter, mill=mill, entry_mm=entry, slot_mm=slot, depth_mm=depth)


def _cutter(a: Asked, holes: Keyholes, shop: Shop, machine: Machine) -> Tool | None:
    """The smallest keyhole cutter whose undercut takes the head, with a neck that leaves the head wood to bear on."""
    series = machine.collet_series
    cutters = [tool for tool in shop.tools if tool.kind == "keyhole" and collet_for(tool.shank_mm, series)]
    wide = [tool for tool in cutters if tool.diameter_mm >= holes.head_mm + ROOM_MM]
    fit = [
        tool
        for tool in wide
        if holes.head_mm - max(holes.shank_mm + SLOT_ROOM_MM, tool.neck_mm + NECK_ROOM_MM) >= 2 * LEAST_BEARING_MM
    ]
    if fit:
        return min(fit, key=lambda tool: (tool.diameter_mm, tool.name))
    head = Message("spec.head_of_screw", screw=holes.screw, head=Mm(holes.head_mm, 2))
    if not cutters:
        a.cannot("holes", Message("spec.shop_no_keyhole_cutter"), Message("spec.add_one_shop_file_kind"))
    elif not wide:
        widest = max(tool.diameter_mm for tool in cutters)
        what = Message("spec.no_keyhole_cutter_shop_wide", head=head, widest=Mm(widest))
        a.cannot("screw", what, Message("spec.use_smaller_screw_add_cutter"))
    else:
        what = Message("spec.every_keyhole_cutter_shop_too", head=head)
        a.cannot("screw", what, Message("spec.use_larger_screw_add_cutter"))
    return None


def _depth(a: Asked, holes: Keyholes, cutter: Tool, thickness_mm: float) -> float | None:
    """The depth given, or as deep as the usual shoulder wants and the board allows."""
    own = cutter.head_mm + FREE_MM
    face = max(LEAST_FACE_MM, LEAST_FACE_RATIO * thickness_mm)
    most = math.floor(min(thickness_mm - face, cutter.reach_mm + FREE_MM) * 100 + 1e-6) / 100
    least = round(own + LEAST_SHOULDER_MM, 2)
    if most < least:
        what = Message("spec.board_too_thin_keyholes_they", thickness=Mm(thickness_mm), least=Mm(least), face=Mm(face))
        a.cannot("thickness", what, Message("spec.use_thicker_board_smaller_screw"))
        return None
    if holes.depth_mm is None:
        return min(round(own + SHOULDER_MM, 2), most)
    if not least <= holes.depth_mm <= most:
        what = Message("spec.does_not_do_board", depth=Mm(holes.depth_mm), cutter=cutter.called)
        a.cannot(KEYHOLE_DEPTH.name, what, Message("spec.use_from_to", least=Mm(least), most=Mm(most)))
        return None
    return holes.depth_mm


def _mill(a: Asked, shop: Shop, machine: Machine, named: Tool | None, slot_mm: float, depth_mm: float) -> Tool | None:
    """The stoutest end mill that goes into the slot and is long enough."""
    keyholes = Message("spec.keyholes_of", slot=Mm(slot_mm), depth=Mm(depth_mm))
    if named is not None:
        if named.diameter_mm <= slot_mm and named.cutting_length_mm >= depth_mm:
            return named
        diameter, length = Mm(named.diameter_mm), Mm(named.cutting_length_mm)
        what = Message("spec.mill_does_not_open", diameter=diameter, length=length, keyholes=keyholes)
        a.cannot("end-mill", what, Message("spec.name_thinner_longer_one_leave"))
        return None
    mills = [
        tool
        for tool in shop.tools
        if tool.kind == "end-mill"
        and not tool.only_named
        and tool.diameter_mm <= min(slot_mm, STOUTEST_MM)
        and tool.cutting_length_mm >= depth_mm
        and collet_for(tool.shank_mm, machine.collet_series)
    ]
    if not mills:
        a.cannot(
            "holes",
            Message("spec.no_end_mill_shop_opens", keyholes=keyholes),
            Message("spec.add_thinner_longer_one_shop"),
        )
        return None
    return max(mills, key=lambda tool: (tool.diameter_mm, tool.can_plunge))
