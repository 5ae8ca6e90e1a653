"""The hole that a screw passes through, and the head that lies in it."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Literal

from msgspec import Struct

from signgen.errors import AskError
from signgen.messages import Message

Fit = Literal["fine", "medium", "coarse"]

FITS: tuple[Fit, ...] = ("fine", "medium", "coarse")

METRIC_CLEARANCE_MM: dict[str, tuple[float, float, float]] = {
    "M3": (3.2, 3.4, 3.6),
    "M3.5": (3.7, 3.9, 4.2),
    "M4": (4.3, 4.5, 4.8),
    "M5": (5.3, 5.5, 5.8),
    "M6": (6.4, 6.6, 7.0),
    "M8": (8.4, 9.0, 10.0),
    "M10": (10.5, 11.0, 12.0),
    "M12": (13.0, 13.5, 14.5),
}
"""Clearance holes, fine (H12), medium (H13), coarse (H14). Source: ISO 273."""

WOOD_CLEARANCE_IN: dict[int, Fraction] = {
    4: Fraction(7, 64),
    6: Fraction(9, 64),
    8: Fraction(11, 64),
    10: Fraction(3, 16),
    12: Fraction(7, 32),
    14: Fraction(1, 4),
}
"""Usual drill for the shank of a wood screw by ASME B18.6.1. Source: shop drill charts. The
fractions for No. 4 and No. 10 are 0.06 mm tighter than the nominal shank, which wood gives way to."""

HeadStandard = Literal["iso7046", "iso10642"]

HEAD_STANDARDS: tuple[HeadStandard, ...] = ("iso7046", "iso10642")

ISO_7046_HEAD_MM: dict[str, float] = {
    "M3": 6.3, "M3.5": 8.2, "M4": 9.4, "M5": 10.4, "M6": 12.6, "M8": 17.3, "M10": 20.0,
}  # fmt: skip
"""Theoretical (sharp) greatest head diameter of countersunk screws by ISO 7046-1 and -2 and ISO 2009, 90 degrees.
From memory, and in keeping with their greatest head heights k: d + 2 k."""

ISO_10642_HEAD_MM: dict[str, float] = {
    "M3": 6.72, "M4": 8.96, "M5": 11.2, "M6": 13.44, "M8": 17.92, "M10": 22.4,
}  # fmt: skip
"""Theoretical greatest head diameter of hexagon socket countersunk screws, 90 degrees. Source: ISO 10642, as
published in its tables."""

ISO_7046_GREATEST_HEAD_MM: dict[str, float] = {"M3": 5.5, "M3.5": 7.3, "M4": 8.4, "M5": 9.3, "M6": 11.3}
"""Greatest actual head diameter of the same screws. Source: ISO 7046-1 and -2. Pan
heads of ISO 7045 are no wider but for M4 and M5, where it is 8 and 9.5 mm (from memory)."""

WOOD_SHANK_IN = (Fraction(60, 1000), Fraction(13, 1000))
"""Shank of wood screw No. N: 0.060 + 0.013 N in. Source: ASME B18.6.1."""

METRIC_HEAD_DEG = 90.0

WOOD_HEAD_IN: dict[int, float] = {4: 0.225, 6: 0.279, 8: 0.332, 10: 0.385, 12: 0.438, 14: 0.507}
"""Greatest sharp diameter of flat heads. Source: ASME B18.6.1; for No. 14 print
has 0.491 and 0.507: the larger, which no head stands out of."""

WOOD_HEAD_DEG = 82.0
"""80 to 82 degrees by ASME B18.6.1 (from memory)."""

_MM_PER_INCH = Fraction(254, 10)
_WOOD = re.compile(r"(?:#|n[o°]\.?)\s*(\d{1,2})", re.ASCII | re.IGNORECASE)
_METRIC = re.compile(r"m\s*(\d{1,2}(?:\.\d)?)", re.ASCII | re.IGNORECASE)


def clearance_mm(screw: str, fit: Fit | None = None) -> float:
    """Diameter of the hole that a screw 'M5' or '#8' ('No 8') passes; `fit` is for metric screws, medium when None.

    Raises: AskError when the screw is not in the tables, or a fit is asked of a wood screw.
    """
    metric, wood = _METRIC.fullmatch(screw.strip()), _WOOD.fullmatch(screw.strip())
    if metric and (row := METRIC_CLEARANCE_MM.get(f"M{metric[1]}")):
        return row[FITS.index(fit or "medium")]
    if wood and (inches := WOOD_CLEARANCE_IN.get(int(wood[1]))):
        if fit is not None:
            raise AskError.at(
                "screw-fit", Message("hole.wood_screws_one_clearance_hole"), Message("hole.leave_out_screws")
            )
        return float(inches * _MM_PER_INCH)
    known = ", ".join([*METRIC_CLEARANCE_MM, *(f"#{n}" for n in WOOD_CLEARANCE_IN)])
    raise AskError.at(
        "screw", Message("hole.there_no_screw_tables", screw=screw), Message("hole.choose_from", known=known)
    )


class Head(Struct, frozen=True, kw_only=True):
    """A countersunk head: the diameter of its cone where it is widest, as if its edge were sharp, and the cone's full
    angle."""

    diameter_mm: float
    angle_deg: float


def head_of(screw: str, standard: HeadStandard | None = None) -> Head:
    """The countersunk head of a screw 'M5' or '#8'; `standard` is for metric screws, ISO 7046 when None.

    Raises: AskError when the tables have no such head.
    """
    metric, wood = _METRIC.fullmatch(screw.strip()), _WOOD.fullmatch(screw.strip())
    if metric:
        table = ISO_10642_HEAD_MM if standard == "iso10642" else ISO_7046_HEAD_MM
        if diameter := table.get(f"M{metric[1]}"):
            return Head(diameter_mm=diameter, angle_deg=METRIC_HEAD_DEG)
        what = Message("hole.no_head_tables", value=standard or HEAD_STANDARDS[0], screw=screw)
        raise AskError.at("countersink", what, Message("hole.give_head_diameter_screw", table=tuple(table)))
    if wood and (inches := WOOD_HEAD_IN.get(int(wood[1]))):
        if standard is not None:
            raise AskError.at("screw-head", Message("hole.wood_screws_one_flat_head"), Message("hole.leave_out_screws"))
        return Head(diameter_mm=float(Fraction(str(inches)) * _MM_PER_INCH), angle_deg=WOOD_HEAD_DEG)
    clearance_mm(screw)  # says what is wrong with a screw that is in no table
    raise AssertionError(f"{screw} has a hole and no head")


def shank_and_head_mm(screw: str) -> tuple[float, float]:
    """Diameters of the shank and of the head, at their greatest, of a screw 'M4' or '#8' that a sign hangs on.

    Raises: AskError when the tables have no such head.
    """
    metric, wood = _METRIC.fullmatch(screw.strip()), _WOOD.fullmatch(screw.strip())
    if metric and (head := ISO_7046_GREATEST_HEAD_MM.get(f"M{metric[1]}")):
        return float(metric[1]), head
    if wood and (inches := WOOD_HEAD_IN.get(int(wood[1]))):
        first, more = WOOD_SHANK_IN
        return float((first + more * int(wood[1])) * _MM_PER_INCH), float(Fraction(str(inches)) * _MM_PER_INCH)
    clearance_mm(screw)  # says what is wrong with a screw that is in no table
    known = ", ".join([*ISO_7046_GREATEST_HEAD_MM, *(f"#{n}" for n in WOOD_HEAD_IN)])
    raise AskError.at("screw", Message("hole.tables_no_head", screw=screw), Message("hole.choose_from", known=known))
