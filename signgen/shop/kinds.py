"""A cutter, a material or a machine from its row of a shop file."""

from __future__ import annotations

from signgen.messages import Message, Mm, Num
from signgen.option import word
from signgen.shop.collets import SERIES
from signgen.shop.manner import EXTRACTIONS, PROGRAM_ENDS, Manner
from signgen.shop.materials import Machine, Material
from signgen.shop.rows import ShopRow
from signgen.shop.tools import EDGE_CUTS, TOOL_METALS, V_BIT_ANGLES, Tool, ToolKind
from signgen.units import CUTTER, NOT_NEGATIVE, POSITIVE, Limits

_DRILL_ANGLES = Limits(least=30, greatest=180)
_RATIO = Limits(least=0, greatest=1, open_below=True)
_RPM = Limits(least=0, greatest=100_000, open_below=True)
_FEED = Limits(least=0, greatest=100_000, open_below=True)
_FLUTES = Limits(least=1, greatest=12)
_ENTRY = Limits(least=0, greatest=45, open_below=True)
_FORCE = Limits(least=0, greatest=5000, open_below=True)
_CHIP = Limits(least=0, greatest=2, open_below=True)
_POWER = Limits(least=0, greatest=50_000, open_below=True)
_SECONDS = Limits(least=0, greatest=120)
_WARM_UP = Limits(least=0, greatest=1800)
_KINDS: tuple[ToolKind, ...] = ("v-bit", "end-mill", "ball-nose", "drill", "keyhole")


def tool_of(name: str, row: ShopRow) -> Tool | None:
    kind = row.choice("kind", _KINDS)
    diameter, shank = row.length("diameter", CUTTER), row.length("shank", CUTTER)
    length, stickout = row.length("cutting-length", POSITIVE), row.length("stick-out", POSITIVE)
    flutes = row.count("flutes", _FLUTES)
    pointed = kind in ("v-bit", "drill")
    angle = row.angle("angle", V_BIT_ANGLES if kind == "v-bit" else _DRILL_ANGLES) if pointed else None
    tip = row.length("tip", NOT_NEGATIVE, 0.0) if kind == "v-bit" else 0.0
    neck = row.length("neck", POSITIVE) if kind == "keyhole" else 0.0
    head = row.length("head-height", POSITIVE) if kind == "keyhole" else 0.0
    if kind is None:
        row.leave("angle", "tip", "cut", "neck", "head-height")
    # A mill whose edges do not meet in the middle presses on the board until something gives: unsure means a ramp.
    plunges, named = row.flag("can-plunge", pointed), row.flag("only-when-named", False)
    cut = row.choice("cut", EDGE_CUTS, "unknown") if kind == "end-mill" else None
    metal = row.choice("metal", TOOL_METALS, "carbide")
    source = row.text("source")
    if diameter is not None and tip is not None and tip >= diameter:
        what = Message("shop.not_less_than_diameter", tip=Mm(tip), diameter=Mm(diameter))
        row.add("tip", what, Message("shop.give_flat_very_tip"))
    if length is not None and stickout is not None and stickout < length:
        what = Message("shop.less_than_cutting_length", stickout=Mm(stickout), length=Mm(length))
        row.add("stick-out", what, Message("shop.measure_from_collet_tip"))
    if diameter is not None and neck is not None and neck >= diameter:
        row.add(
            "neck",
            Message("shop.no_less_than_head_s", neck=Mm(neck), diameter=Mm(diameter)),
            Message("shop.give_neck_above_head"),
        )
    if length is not None and head is not None and head >= length:
        what = Message("shop.no_less_than_cutting_length", head=Mm(head), length=Mm(length))
        row.add("head-height", what, Message("shop.give_head_alone_cutting_length"))
    good = row.finish()
    if kind is None or diameter is None or shank is None or length is None or stickout is None or flutes is None:
        return None
    if neck is None or head is None or tip is None or plunges is None or source is None or not good:
        return None
    return Tool(
        name=name, kind=next(each for each in _KINDS if each == kind), diameter_mm=diameter, shank_mm=shank,
        cutting_length_mm=length, flutes=flutes, angle_deg=angle, tip_mm=tip, stickout_mm=stickout,
        can_plunge=plunges, cut=next((each for each in EDGE_CUTS if each == cut), None),
        metal=next((each for each in TOOL_METALS if each == metal), "carbide"), only_named=bool(named), neck_mm=neck,
        head_mm=head, source=source,
    )  # fmt: skip


def material_of(name: str, row: ShopRow) -> Material | None:
    label, grain = row.label("material", name), row.flag("grain")
    colour, ground = row.colour("colour"), row.colour("ground")
    cautions, also = row.cautions("cautions"), row.texts("also", ())
    chip, rpm = row.sourced("chip-load-ratio", _RATIO), row.sourced("spindle-rpm", _RPM)
    stepdown = row.sourced("stepdown-ratio", Limits(least=0, greatest=3, open_below=True))
    stepover = row.sourced("stepover-ratio", _RATIO)
    v_step, peck = row.sourced("v-step", POSITIVE), row.sourced("peck-ratio", POSITIVE)
    entry = row.sourced("entry-angle", _ENTRY)
    plunge, ramp = row.sourced("plunge-ratio", _RATIO), row.sourced("ramp-ratio", _RATIO)
    force = row.sourced_or_none("specific-force", _FORCE)
    least_chip, most_chip = row.sourced_or_none("least-chip", _CHIP), row.sourced_or_none("most-chip-ratio", _RATIO)
    good = row.finish()
    if label is None or grain is None or colour is None or ground is None or cautions is None or chip is None:
        return None
    if rpm is None or stepdown is None or stepover is None or v_step is None or peck is None or entry is None:
        return None
    if plunge is None or ramp is None or not good:
        return None
    return Material(
        name=name, label=label, chip_load_ratio=chip, spindle_rpm=rpm, stepdown_ratio=stepdown,
        stepover_ratio=stepover, v_step_mm=v_step, peck_ratio=peck, entry_deg=entry, plunge_ratio=plunge,
        ramp_ratio=ramp, colour_rgb=colour, ground_rgb=ground, grain=grain, cautions=cautions,
        source="; ".join(row.sources), specific_force_n_per_mm2=force, least_chip_mm=least_chip,
        most_chip_ratio=most_chip, also=also or (),
    )  # fmt: skip


def machine_of(name: str, row: ShopRow) -> Machine | None:
    label, source = row.label("machine", name), row.text("source")
    travel = row.numbers("travel", 3, POSITIVE)
    feed, rapid = row.numbers("top-feed", 3, _FEED), row.numbers("rapid", 3, _FEED)
    acceleration = row.numbers("acceleration", 3, _FEED)
    corner = row.length("corner-tolerance", POSITIVE)
    rpm = row.numbers("spindle-rpm", 2, _RPM)
    start = row.number("spindle-start", _SECONDS)
    collet = row.count("collet", Limits(least=1, greatest=100))
    power = row.number_or_none("spindle-power", _POWER)
    dialect = row.read("dialect", word, "plain")
    manner = _manner(row)
    if rpm and rpm[0] > rpm[1]:
        row.add(
            "spindle-rpm",
            Message("shop.more_than", slow=Num(rpm[0]), fast=Num(rpm[1])),
            Message("shop.give_slowest_speed_first"),
        )
    if collet and collet not in SERIES:
        known = tuple(SERIES)
        row.add(
            "collet", Message("shop.there_no_collet_size_iso", collet=collet), Message("shop.choose_from", known=known)
        )
    good = row.finish()
    if label is None or source is None or travel is None or feed is None or rapid is None or acceleration is None:
        return None
    if corner is None or rpm is None or start is None or collet is None or not good:
        return None
    assert dialect is not None
    return Machine(
        name=name, label=label, travel_mm=(travel[0], travel[1], travel[2]),
        top_feed_mm_per_min=(feed[0], feed[1], feed[2]), rapid_mm_per_min=(rapid[0], rapid[1], rapid[2]),
        acceleration_mm_per_s2=(acceleration[0], acceleration[1], acceleration[2]), corner_tolerance_mm=corner,
        spindle_min_rpm=rpm[0], spindle_max_rpm=rpm[1], spindle_start_s=start, collet_series=collet, source=source,
        dialect=dialect, manner=manner, spindle_power_w=power,
    )  # fmt: skip


def _manner(row: ShopRow) -> Manner:
    """How the machine's control wants its programs framed; what is left out is as usual."""
    end, extraction = row.choice("program-end", PROGRAM_ENDS, "m2"), row.choice("extraction", EXTRACTIONS, "none")
    return Manner(
        line_numbers=row.flag("line-numbers", False) or False,
        percent_lines=row.flag("percent-lines", False) or False,
        program_end=next((each for each in PROGRAM_ENDS if each == end), "m2"),
        extraction=next((each for each in EXTRACTIONS if each == extraction), "none"),
        warm_up_s=row.number("warm-up", _WARM_UP, 0.0) or 0.0,
    )
