"""Lengths, sizes, points, angles and numbers as people write them, into millimetres and degrees.

Everything goes through `Fraction` and is rounded to a float once, at the end: 3 1/2 in is 88.9 exactly, where
a product of floats gives 88.89999999999999. `where` is the word that the user typed; it leads every message.
"""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from msgspec import Struct

from signgen.errors import AskError
from signgen.messages import Message, Mm, Num
from signgen.messages.wording import Value

GREATEST_LENGTH_MM = 5000.0
"""Longer than any board that is sold: such a number is a slip of the finger or a forgotten unit."""

LEAST_LENGTH_MM = 0.001
"""Shorter than any step of a router's axes and any figure of a program: nothing else than a slip of the finger. Nothing
at all (0) is allowed where it means something."""

GREATEST_COUNT = 1000
"""More of anything on one sign is a slip of the finger."""

_MM_PER_UNIT = {
    "": Fraction(1), "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000),
    "in": Fraction(254, 10), "inch": Fraction(254, 10), "inches": Fraction(254, 10), '"': Fraction(254, 10),
    "″": Fraction(254, 10), "ft": Fraction(3048, 10), "'": Fraction(3048, 10),
}  # fmt: skip
# Source: the international yard and pound agreement of 1959: 1 in = 25.4 mm exactly, 1 ft = 12 in.

_NUMBER = re.compile(
    r"(?P<sign>[+-]?)\s*(?:(?:(?P<whole>\d+)(?:\s+|\s*-\s*))?(?P<top>\d+)\s*/\s*(?P<bottom>\d+)"
    r"|(?P<decimal>\d+(?:\.\d*)?|\.\d+))",
    re.ASCII,
)
_COMMA = re.compile(r"\d,\d", re.ASCII)
_LONGEST_TEXT = 80
_EXAMPLES = Message("units.write_a_length")


class Limits(Struct, frozen=True, kw_only=True):
    """What a number may be: from `least` to `greatest`; `open_below` leaves `least` itself out."""

    least: float
    greatest: float
    open_below: bool = False

    def problem(self, value: float, unit: str) -> tuple[Message, Message] | None:
        """What is wrong with a finite value and what to do about it, or None."""
        if value < self.least or (self.open_below and value == self.least):
            if self.least == 0 and self.open_below:
                return Message("units.not_positive", value=_measure(value, unit)), Message("units.use_positive")
            use = Message(
                "units.use_more_than" if self.open_below else "units.use_at_least", least=_measure(self.least, unit)
            )
            return Message("units.too_little", value=_measure(value, unit)), use
        if unit == "mm" and 0 < abs(value) < LEAST_LENGTH_MM:
            return Message("units.too_fine"), Message("units.use_at_least", least=_measure(LEAST_LENGTH_MM, unit))
        if value > self.greatest:
            use = Message("units.use_at_most", greatest=_measure(self.greatest, unit))
            return Message("units.too_much", value=_measure(value, unit)), use
        return None


def _measure(value: float, unit: str) -> Value:
    """The number with what it counts: 'mm', 'degrees' or nothing."""
    if unit == "degrees":
        return Message("units.degrees", value=Num(value))
    return Mm(value) if unit == "mm" else Num(value)


POSITIVE = Limits(least=0, greatest=GREATEST_LENGTH_MM, open_below=True)
"""A length that something has: more than nothing, at most 5 m."""

CUTTER = Limits(least=0, greatest=200.0, open_below=True)
"""A cutter's diameter: the largest, which level spoilboards, have about 100 mm (common practice)."""

NOT_NEGATIVE = Limits(least=0, greatest=GREATEST_LENGTH_MM)
"""A distance that may be nothing."""

PLACE = Limits(least=-GREATEST_LENGTH_MM, greatest=GREATEST_LENGTH_MM)
"""A coordinate."""


def length_mm(raw: object, where: str, limits: Limits = POSITIVE) -> float:
    """A length in millimetres from a number (millimetres) or a text with a unit.

    Raises: AskError when it is no length, or outside the limits.
    """
    return _within(_length(raw, where, ""), where, limits, "mm")


def size_mm(raw: object, where: str, limits: Limits = POSITIVE) -> tuple[float, float]:
    """(width, height) in millimetres from '220x140', '8.5x5.5in', '200 x 120 mm' or a list of two lengths.

    A unit after the height holds for a bare width too. A unit after the width alone is refused, since
    '8x5' inches and millimetres are both signs that someone makes.
    """
    advice = Message("units.write_a_size")
    if isinstance(raw, list | tuple):
        parts: list[object] = list(raw)
        units = ["" for _ in parts]
    elif isinstance(raw, str):
        texts = re.split(r"[xX×]", _clean(raw, where))
        parts = list(texts)
        units = [_unit_of(text) for text in texts]
    else:
        raise AskError.at(where, Message("units.no_size", shown=repr(raw)), advice)
    if len(parts) != 2 or any(isinstance(part, str) and not part.strip() for part in parts):
        raise AskError.at(where, Message("units.no_size", shown=_shown(raw)), advice)
    if units[0].lower() in _MM_PER_UNIT and units[0] and not units[1]:
        raise AskError.at(where, Message("units.unit_of_width_alone", shown=_shown(raw)), advice)
    width = _within(_length(parts[0], where, units[1]), where, limits, "mm")
    return width, _within(_length(parts[1], where, ""), where, limits, "mm")


def points_mm(raw: object, where: str) -> tuple[tuple[float, float], ...]:
    """Points in millimetres from 'X,Y;X,Y'; at least one. A unit after Y holds for a bare X too.

    Coordinates may be negative here: whether a point lies on the sign is for the drawing to say.
    """
    advice = Message("units.write_points")
    if not isinstance(raw, str):
        raise AskError.at(where, Message("units.no_points", shown=_shown(raw)), advice)
    points = []
    for text in _clean(raw, where).removesuffix(";").split(";"):
        pair = text.split(",")
        if len(pair) != 2 or not all(part.strip() for part in pair):
            raise AskError.at(where, Message("units.no_point", shown=text.strip()), advice)
        x = _within(_length(pair[0], where, _unit_of(pair[1])), where, PLACE, "mm")
        points.append((x, _within(_length(pair[1], where, ""), where, PLACE, "mm")))
    return tuple(points)


def angle_deg(raw: object, where: str, limits: Limits) -> float:
    """An angle in degrees from a number, '60', '60deg' or '60°'."""
    text = re.sub(r"\s*(?:deg|degrees?|°)$", "", _clean(raw, where)) if isinstance(raw, str) else raw
    value = _fraction(text, where, "angle", Message("units.write_degrees"))
    return _within(value, where, limits, "degrees")


def number(raw: object, where: str, limits: Limits) -> float:
    """A number without a unit."""
    return _within(_fraction(raw, where, "number", Message("units.write_a_number")), where, limits, "")


def count(raw: object, where: str, limits: Limits) -> int:
    """A whole number."""
    value = _fraction(raw, where, "whole_number", Message("units.write_a_whole_number"))
    if value.denominator != 1:
        raise AskError.at(
            where, Message("units.no_whole_number", shown=_shown(raw)), Message("units.write_a_whole_number")
        )
    return int(_within(value, where, limits, ""))


def _within(value: Fraction, where: str, limits: Limits, unit: str) -> float:
    try:
        rounded = float(value)
    except OverflowError:
        rounded = 1e300 if value > 0 else -1e300
    problem = limits.problem(rounded, unit)
    if problem:
        raise AskError.at(where, *problem)
    return rounded


def _shown(raw: object) -> str:
    """What was typed, short enough for a message."""
    text = raw if isinstance(raw, str) else repr(raw)
    return f"'{text[:_LONGEST_TEXT]}{'...' if len(text) > _LONGEST_TEXT else ''}'"


def _clean(raw: str, where: str) -> str:
    """One line of text with single blanks; 3½ becomes 3 1/2."""
    if len(raw) > _LONGEST_TEXT * 50:
        raise AskError.at(where, Message("units.too_long", shown=_shown(raw)), _EXAMPLES)
    return " ".join("".join(_spread(c) for c in raw).split())


def _spread(c: str) -> str:
    """A character as the readers know it: the minus sign as a hyphen, ½ as ' 1/2'."""
    if c == "−":
        return "-"
    if unicodedata.decomposition(c).startswith("<fraction>"):
        return " " + unicodedata.normalize("NFKC", c).replace("⁄", "/")
    return c


def _unit_of(text: str) -> str:
    """The unit at the end of a text, as typed; '' when it ends in a digit."""
    match = re.search(r"[^\d\s.,/+-]+$", text.strip(), re.ASCII)
    return match.group() if match else ""


def _fraction(raw: object, where: str, noun: str, advice: Message) -> Fraction:
    """A finite number, exactly as written: a float stands for its shortest decimal."""
    if isinstance(raw, int) and not isinstance(raw, bool):
        return Fraction(raw)
    if isinstance(raw, float) and raw == raw and abs(raw) != float("inf"):
        return Fraction(repr(raw))
    if isinstance(raw, str):
        match = _NUMBER.fullmatch(_clean(raw, where))
        if match:
            return _value(match, where)
        if _COMMA.search(raw):
            advice = Message("units.write_a_point")
    raise AskError.at(where, Message(f"units.no_{noun}", shown=_shown(raw)), advice)


def _value(match: re.Match[str], where: str) -> Fraction:
    if match["decimal"]:
        value = Fraction(match["decimal"])
    else:
        if int(match["bottom"]) == 0:
            raise AskError.at(where, Message("units.divides_by_zero", text=match.group()), _EXAMPLES)
        value = Fraction(int(match["whole"] or 0)) + Fraction(int(match["top"]), int(match["bottom"]))
    return -value if match["sign"] == "-" else value


def _length(raw: object, where: str, unit_if_bare: str) -> Fraction:
    """A length in millimetres, exactly. A bare fraction is refused: 1/4 means inches to whoever writes it,
    and taking it for a quarter of a millimetre would spoil the board without a word."""
    if not isinstance(raw, str):
        return _fraction(raw, where, "length", _EXAMPLES) * _factor(unit_if_bare, raw, where)
    text = _clean(raw, where)
    unit = _unit_of(text)
    digits = text.removesuffix(unit).strip() if unit else text
    value = _fraction(digits, where, "length", _EXAMPLES) if digits else None
    if value is None:
        raise AskError.at(where, Message("units.no_length", shown=_shown(raw)), _EXAMPLES)
    if not unit and not unit_if_bare and "/" in digits:
        advice = Message("units.write_which_unit", digits=digits)
        raise AskError.at(where, Message("units.bare_fraction", shown=_shown(raw)), advice)
    return value * _factor(unit or unit_if_bare, raw, where)


def _factor(unit: str, raw: object, where: str) -> Fraction:
    factor = _MM_PER_UNIT.get(unit.lower())
    if factor is None:
        raise AskError.at(where, Message("units.unknown_unit", shown=_shown(raw)), Message("units.use_known_unit"))
    return factor
