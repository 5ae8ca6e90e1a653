"""Walked runs as lines and arcs."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

import numpy as np
from msgspec import Struct

from signgen.geometry.loose_fit import Stretch, fit_counts, fit_loosely
from signgen.geometry.paths import FloatArray, Path
from signgen.geometry.walk import Run

RETURN_MM = 0.6
"""How far above the groove's bottom, in half widths, the bit may come back where it has been already: enough for long
straight moves (more saves next to nothing), and little beside the depth of most grooves."""


class Leeway(Struct, frozen=True, kw_only=True):
    """How far a path may go too wide (in half widths, or across the board) and how far it may stay short of what it
    follows; `most_mm`: the half width that it never exceeds. Where it comes up to the half width `tip_mm` it does not
    come up before."""

    deeper_mm: float
    short_mm: float
    most_mm: float
    tip_mm: float

    def stretch(self, points: FloatArray, short_mm: float | None = None) -> Stretch:
        short = self.short_mm if short_mm is None else short_mm
        return Stretch(points, self.deeper_mm, short, tip_mm=self.tip_mm, most_mm=self.most_mm)


def fitted(runs: Sequence[Run], leeways: Sequence[Leeway]) -> list[Path]:
    """Each run as one path of lines and arcs within its leeway.

    Where a way back is shorter to say a little above the groove's bottom, with a step up and a step down, it
    goes there.
    """
    grouped = [[list(group) for _, group in groupby(run, key=lambda piece: piece.again)] for run in runs]
    back = [(i, j) for i, groups in enumerate(grouped) for j, group in enumerate(groups) if group[0].again]
    ways = [np.concatenate([piece.points for piece in grouped[i][j]]) for i, j in back]
    own_leeways = [leeways[i] for i, _ in back]
    close = fit_counts([leeway.stretch(way) for way, leeway in zip(ways, own_leeways, strict=True)])
    above = fit_counts([leeway.stretch(way, RETURN_MM) for way, leeway in zip(ways, own_leeways, strict=True)])
    eased = {place for place, near, far in zip(back, close, above, strict=True) if far + 2 < near}

    parts: list[list[Stretch]] = []
    for i, groups in enumerate(grouped):
        leeway, own = leeways[i], list[Stretch]()
        # Stretches walked alike are fitted as one, so that no step is needed between them.
        for apart, numbered in groupby(enumerate(groups), key=lambda item: (i, item[0]) in eased and item[0]):
            points = np.concatenate([piece.points for _, group in numbered for piece in group])
            own.append(leeway.stretch(points, None if apart is False else RETURN_MM))
        parts.append(own)
    return fit_loosely(parts)
