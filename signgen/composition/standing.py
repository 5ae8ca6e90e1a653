"""Places for a block of lines beside lines that stand about the sign's middle."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from signgen.composition.fit import Points, lying_within, quads_within
from signgen.lettering.layout import PlacedLine

GAP_RATIO = 0.25
"""Room to keep between a line round the sign's middle and any other, over the lesser cap height (common practice)."""


def places_of(rows: Sequence[PlacedLine], room: BaseGeometry, middles: Points, sign_at: tuple[float, float]) -> Points:
    """Those of the places for the block's middle where all lines lie in the room and clear of those about the sign."""
    about = [row for row in rows if row.about_sign and row.quads_mm is not None]
    block = [row for row in rows if not row.about_sign]
    at_sign = np.array([sign_at])
    for row in about:
        assert row.quads_mm is not None
        if not len(quads_within(room, row.quads_mm, at_sign)):
            return middles[:0]
    middles = lying_within(room, [row.box_mm for row in block if row.box_mm is not None], middles)
    for row in block:
        if row.quads_mm is not None:
            middles = quads_within(room, row.quads_mm, middles)
    if not about or not len(middles):
        return middles
    if any(_near(one, other) for i, one in enumerate(about) for other in about[:i]):
        return middles[:0]
    clear = [
        not any(_near(one, row.moved(x - sign_at[0], y - sign_at[1])) for one in about for row in block)
        for x, y in middles.tolist()
    ]
    kept: Points = middles[np.array(clear, dtype=bool)]
    return kept


def _near(one: PlacedLine, other: PlacedLine) -> bool:
    """Whether the ink boxes of two lines come nearer to each other than they should."""
    shapes = [_outlines(row) for row in (one, other)]
    gap = GAP_RATIO * min(one.cap_height_mm, other.cap_height_mm)
    return bool(shapely.dwithin(shapes[0][:, None], shapes[1][None, :], gap).any())


def _outlines(row: PlacedLine) -> np.ndarray[tuple[int], np.dtype[np.object_]]:
    if row.quads_mm is not None:
        return np.asarray(shapely.polygons(row.quads_mm))
    return np.array([] if row.box_mm is None else [shapely.box(*row.box_mm)], dtype=object)
