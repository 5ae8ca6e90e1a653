"""What can be asked for of the cutters, by their figures or their names."""

from __future__ import annotations

from typing import Any

from signgen.option import Option
from signgen.shop.tools import MISSING_V_BIT, V_BIT_ANGLES
from signgen.spec.cutters import goes_by_name
from signgen.units import NOT_NEGATIVE, Limits


def _mill_by_diameter(spec: Any, field: str) -> float | None:
    """A figure of the end mill, None when there is none or it is asked for by its name."""
    mill = spec.end_mill
    return None if mill is None or goes_by_name(spec.shop, mill) else getattr(mill, field)


def _of_v_bit(spec: Any, value: float | None) -> float | None:
    """A figure of the V-bit, None where there is none."""
    return None if spec.v_bit.name == MISSING_V_BIT else value


CUTTERS: tuple[Option, ...] = (
    Option(
        name="v-bit", kind="angle", metavar="ANGLE", group="Cutters", limits=V_BIT_ANGLES,
        help="Full angle of the V-bit, in degrees.", otherwise="90, or the shop's first V-bit",

        write=lambda spec: _of_v_bit(spec, spec.v_bit.angle_deg),
        left_open="the shop has no V-bit", replaces=("v-bit-diameter", "v-bit-tip"),
        words=("vee bit", "v cutter", "engraving bit", "carving bit", "bit angle", "angle of the bit",
            "v-groove bit"), example="60",
    ),
    Option(
        name="v-bit-diameter", kind="length", metavar="LENGTH", group="Cutters", limits=Limits(least=0.5, greatest=100),
        help="Greatest diameter of the V-bit.", otherwise="the shop's, or 6 mm for an angle that the shop lacks",
        write=lambda spec: _of_v_bit(spec, spec.v_bit.diameter_mm), left_open="the shop has no V-bit",
        words=("v-bit size", "width of the v-bit"),
    ),
    Option(
        name="v-bit-tip", kind="length", metavar="LENGTH", group="Cutters", limits=NOT_NEGATIVE,
        help="Diameter of the flat at the V-bit's tip.", otherwise="the shop's, or 0",
        write=lambda spec: _of_v_bit(spec, spec.v_bit.tip_mm), left_open="the shop has no V-bit",
        words=("flat tip", "tip width", "blunt tip"),
    ),
    Option(
        name="end-mill", kind="length", metavar="DIAMETER", group="Cutters", limits=Limits(least=0.5, greatest=50),
        help="Diameter of the end mill to use for everything that the V-bit does not do.",
        otherwise="the fewest of the shop's cutters that can make the sign",
        write=lambda spec: _mill_by_diameter(spec, "diameter_mm"),
        left_open="chosen by the planner", replaces=("end-mill-length", "end-mill-name"),
        words=("mill", "router bit", "straight bit", "cutter", "slot drill", "cutter diameter", "tool diameter",
            "bit size", "which bit", "which cutter"), example="6", often=True,
    ),
    Option(
        name="end-mill-length", kind="length", metavar="LENGTH", group="Cutters",
        help="Cutting length of the end mill.", otherwise="the shop's, or four diameters",
        write=lambda spec: _mill_by_diameter(spec, "cutting_length_mm"),
        left_open="chosen by the planner", needs="end-mill",
        words=("long cutter", "flute length", "cutting length"),
    ),
    Option(
        name="end-mill-name", kind="word", metavar="NAME", group="Cutters",
        help="The end mill by its name in the shop (signgen list tools) instead of its diameter, as in down-cut-6.",
        otherwise="by its diameter, or the planner's choice",
        write=lambda spec: spec.end_mill and (spec.end_mill.name if goes_by_name(spec.shop, spec.end_mill) else None),
        left_open="by its diameter, if at all", replaces=("end-mill", "end-mill-length"),
        words=("own cutter by name", "named cutter", "down-cut"),
    ),
    Option(
        name="shop", kind="path", metavar="FILE", group="Cutters",
        help="A file of your own cutters, materials and machines (TOML).", otherwise="those that ship with signgen",
        write=lambda spec: spec.shop.user_file, left_open="what ships with signgen",
        words=("my tools", "own cutters", "my cutters", "tool library", "own machine", "own material",
            "my machine", "add a cutter"),
    ),
)  # fmt: skip
