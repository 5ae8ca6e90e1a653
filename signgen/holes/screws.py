"""The hole that a screw passes through."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Literal

from signgen.errors import AskError

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
"""Clearance holes, fine (H12), medium (H13), coarse (H14). Source: ISO 273, as reproduced in check-values 6.1."""

WOOD_CLEARANCE_IN: dict[int, Fraction] = {
    4: Fraction(7, 64),
    6: Fraction(9, 64),
    8: Fraction(11, 64),
    10: Fraction(3, 16),
    12: Fraction(7, 32),
    14: Fraction(1, 4),
}
"""Usual drill for the shank of a wood screw by ASME B18.6.1. Source: shop drill charts, check-values 6.3. The fractions
for No. 4 and No. 10 are 0.06 mm tighter than the nominal shank, which wood gives way to."""

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
            raise AskError.at("screw-fit", "Wood screws have one clearance hole.", "Leave it out for # screws.")
        return float(inches * _MM_PER_INCH)
    known = ", ".join([*METRIC_CLEARANCE_MM, *(f"#{n}" for n in WOOD_CLEARANCE_IN)])
    raise AskError.at("screw", f"There is no screw '{screw}' in the tables.", f"Choose from: {known}.")
