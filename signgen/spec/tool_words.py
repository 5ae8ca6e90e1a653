"""A cutter in words, for programs that were written elsewhere: 'end-mill-6', 'v-bit 60 diameter 12 tip 0.2'."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from msgspec.structs import replace

from signgen.errors import AskError, Problem
from signgen.messages import Message, Mm
from signgen.messages.figures import plain
from signgen.option import did_you_mean, flag
from signgen.shop.shop import Shop
from signgen.shop.tools import Tool
from signgen.spec.cutters import named_end_mill, named_v_bit
from signgen.units import CUTTER, NOT_NEGATIVE, POSITIVE, Limits, angle_deg, count, length_mm

KINDS = ("v-bit", "end-mill", "ball-nose", "drill")
_ANGLES = Limits(least=15, greatest=180)
_FLUTES = Limits(least=1, greatest=12)

FIGURES: Mapping[str, Callable[[str], float]] = {
    "diameter": lambda raw: length_mm(raw, "diameter", CUTTER),
    "angle": lambda raw: angle_deg(raw, "angle", _ANGLES),
    "tip": lambda raw: length_mm(raw, "tip", NOT_NEGATIVE),
    "cutting-length": lambda raw: length_mm(raw, "cutting-length", POSITIVE),
    "flutes": lambda raw: count(raw, "flutes", _FLUTES),
    "shank": lambda raw: length_mm(raw, "shank", POSITIVE),
    "stick-out": lambda raw: length_mm(raw, "stick-out", POSITIVE),
    "can-plunge": lambda raw: flag(raw, "can-plunge"),
}
"""The words of a shop file, and how the value after each is read."""

EXAMPLE = Message("spec.write_name_signgen_list_tools")

DRILL_POINT_DEG = 118.0
"""Point of a drill for general work. Common practice."""
DRILL_LENGTH_RATIO = 5.0
"""Flute length over diameter of a short drill (common practice)."""
_PARTED = re.compile(r"\b(v|end|ball) (bit|mill|nose)\b")


def tool_in_words(text: str, shop: Shop, where: str = "tool") -> Tool:
    """The shop's cutter of that name, or one made up from its kind and figures; the first figure after the kind needs
    no word: it is the angle of a V-bit, the diameter of any other. What is not said is taken from a cutter of the shop
    that has all that is said of shape, or is as usual.

    Raises: AskError with every problem.
    """
    said = " ".join(text.replace(",", " ").replace("=", " ").split())
    for tool in shop.tools:
        if tool.name.casefold() == said.casefold():
            return tool
    kind, *rest = _PARTED.sub(r"\1-\2", said.lower()).split(" ")
    if kind not in KINDS:
        close = did_you_mean(kind, [*(tool.name for tool in shop.tools), *KINDS])
        raise AskError.at(
            where,
            Message("spec.there_no_cutter", said=said),
            Message("spec.close_and_example", close=close, example=EXAMPLE),
        )
    figures = _figures(_pairs(kind, rest, where), where)
    return _made(kind, figures, shop, where)


def _pairs(kind: str, words: list[str], where: str) -> dict[str, str]:
    """Each word with the value after it, which may be of several words ('1/4 in')."""
    found: dict[str, list[str]] = {}
    name = ""
    if words and words[0] not in FIGURES:
        name = "angle" if kind == "v-bit" else "diameter"
        found[name] = []
    for each in words:
        if each not in FIGURES:
            found[name].append(each)
            continue
        name = each
        if name in found:
            raise AskError.at(where, Message("spec.there_twice", name=name), EXAMPLE)
        found[name] = []
    return {name: " ".join(value) for name, value in found.items()}


def _figures(pairs: Mapping[str, str], where: str) -> dict[str, float]:
    problems: list[Problem] = []
    figures: dict[str, float] = {}
    for name, raw in pairs.items():
        try:
            figures[name] = FIGURES[name](raw)
        except AskError as error:
            problems += [problem.below(where) for problem in error.problems]
    if problems:
        raise AskError(problems)
    return figures


def _made(kind: str, figures: Mapping[str, float], shop: Shop, where: str) -> Tool:
    for name, kinds in (("angle", ("v-bit", "drill")), ("tip", ("v-bit",))):
        if name in figures and kind not in kinds:
            raise AskError.at(
                where, Message("spec.cutter_kind_no", kind=kind, name=name), Message("spec.leave_out", name=name)
            )
    diameter, angle, length = (figures.get(name) for name in ("diameter", "angle", "cutting-length"))
    if kind == "v-bit":
        try:
            tool = named_v_bit(shop, angle, diameter, figures.get("tip"))
        except AskError as error:
            raise AskError([replace(problem, where=where) for problem in error.problems]) from None
    elif diameter is None:
        raise AskError.at(where, Message("spec.diameter_missing"), EXAMPLE)
    elif kind == "end-mill":
        tool = named_end_mill(shop, diameter, length)
        if tool not in shop.tools:
            # Whoever wrote the program knew the cutter, and said nothing against a plunge.
            tool = replace(tool, can_plunge=True)
    else:
        tool = _round(kind, diameter, angle, shop)
    changed: dict[str, float] = {
        field: figures[name]
        for name, field in (
            ("cutting-length", "cutting_length_mm"),
            ("flutes", "flutes"),
            ("shank", "shank_mm"),
            ("stick-out", "stickout_mm"),
            ("can-plunge", "can_plunge"),
        )
        if name in figures and figures[name] != getattr(tool, field)
    }
    if "cutting_length_mm" in changed and "stickout_mm" not in changed:
        changed["stickout_mm"] = tool.stickout_mm + max(0.0, changed["cutting_length_mm"] - tool.cutting_length_mm)
    if not changed:
        return tool
    # Every field keeps its own type: the figures were read by the word's own reader.
    tool = replace(tool, name=f"{tool.name}-as-said", source=f"{tool.source}; other figures as said", **changed)
    if tool.stickout_mm < tool.cutting_length_mm:
        what = Message(
            "spec.stands_out_collet_cuts", stickout=Mm(tool.stickout_mm), cutting_length=Mm(tool.cutting_length_mm)
        )
        raise AskError.at(where, what, Message("spec.measure_stick_out_from_collet"))
    return tool


def _round(kind: str, diameter: float, angle: float | None, shop: Shop) -> Tool:
    """A ball-nose or a drill: the shop's of that diameter, or an end mill's figures with another end."""
    for tool in shop.tools:
        alike = angle is None or tool.angle_deg == angle
        if tool.kind == kind and abs(tool.diameter_mm - diameter) < 1e-6 and alike:
            return tool
    if kind == "ball-nose":
        tool = named_end_mill(shop, diameter, None)
        return replace(tool, name=f"ball-nose-{plain(diameter)}", kind="ball-nose", can_plunge=True)
    tool = named_end_mill(shop, diameter, DRILL_LENGTH_RATIO * diameter)
    point = DRILL_POINT_DEG if angle is None else angle
    return replace(
        tool, name=f"drill-{plain(diameter)}", kind="drill", angle_deg=point, shank_mm=diameter, can_plunge=True
    )
