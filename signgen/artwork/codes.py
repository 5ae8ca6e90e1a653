"""QR codes as pictures. Source: ISO/IEC 18004; segno makes the modules."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import shapely
from shapely.geometry import MultiPoint, box

from signgen.artwork.matrix import IDENTITY
from signgen.artwork.painted import Painted
from signgen.artwork.path_data import outline_from
from signgen.artwork.picture import Picture
from signgen.errors import AskError
from signgen.geometry.offsets import polygons
from signgen.geometry.paths import FloatArray
from signgen.messages import Message

QUIET = 4
"""Modules without anything round the code. Source: ISO/IEC 18004."""

LEVELS = ("L", "M", "Q", "H")
"""Of error correction: about 7, 15, 25 and 30 % of the codewords. Source: ISO/IEC 18004."""

MOST_VERSION = 10
"""57 modules across: more would be a sign of its own, or too fine to cut."""

APART = 0.02
"""Modules, on each side, by which areas are drawn smaller, so that those that meet at a corner only do not."""


@lru_cache(maxsize=16)
def modules_of(text: str, level: str) -> FloatArray:
    """(n, n) 1 where a module is dark, from the top row down; read-only. Raises: AskError for a text that is too
    long."""
    import segno

    try:
        code = segno.make_qr(text, error=level.lower(), boost_error=False)
    except (segno.DataOverflowError, ValueError):
        raise _too_long(text) from None
    if int(code.version) > MOST_VERSION:
        raise _too_long(text)
    found = np.array([list(row) for row in code.matrix], dtype=np.float64)
    found.flags.writeable = False
    return found


def _too_long(text: str) -> AskError:
    error = AskError.at("code", Message("art.code_too_long", count=len(text)), Message("art.shorter_text"))
    assert isinstance(error, AskError)
    return error


def code_picture(text: str, level: str) -> Picture:
    """A module is 1 wide; the code lies from 0 to n, Y down, dark on nothing."""
    dark = modules_of(text, level) > 0
    squares = [box(x, y, x + 1, y + 1) for y, x in np.argwhere(dark).tolist()]
    drawn = shapely.buffer(shapely.union_all(squares), -APART, join_style="mitre")
    data = "".join(
        "M" + "L".join(f"{x!r} {y!r}" for x, y in ring.coords[:-1]) + "Z"
        for part in polygons(drawn)
        for ring in (part.exterior, *part.interiors)
    )
    item = Painted(outline=outline_from(data, 100_000), matrix=IDENTITY, how="evenodd", colour=(0, 0, 0))
    return Picture(file="code", items=(item,), unit_mm=None)


def dark_middles(text: str, level: str) -> MultiPoint:
    """The middle of every dark module, as `code_picture` has them."""
    return MultiPoint([(x + 0.5, y + 0.5) for y, x in np.argwhere(modules_of(text, level) > 0).tolist()])
