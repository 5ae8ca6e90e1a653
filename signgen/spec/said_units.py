"""Which units somebody thinks in, by what they wrote."""

from __future__ import annotations

import re
from collections.abc import Mapping

from signgen.messages.figures import Units

_INCHES = re.compile(r"(?:in|inch|inches|ft|[\"″'])\s*$", re.IGNORECASE)

TELLING = ("size", "thickness")
"""Lengths that every sign has: who writes one of them in inches reads inches."""


def units_of(asked: Mapping[str, object]) -> Units:
    """As asked for, or as the size and the thickness are written.

    >>> units_of({"size": "12x6in"}), units_of({"size": "300x150"}), units_of({"size": "12x6in", "units": "mm"})
    ('in', 'mm', 'mm')
    """
    said = asked.get("units")
    if said in ("mm", "in"):
        return "in" if said == "in" else "mm"
    return "in" if any(_INCHES.search(str(asked[key])) for key in TELLING if asked.get(key) is not None) else "mm"
