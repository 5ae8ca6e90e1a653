"""Walked runs as lines and arcs."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

import numpy as np

from signgen.geometry.loose_fit import Stretch, fit_counts, fit_loosely
from signgen.geometry.paths import Path
from signgen.geometry.walk import Run

RETURN_MM = 0.25
"""How far above the groove's bottom, in half widths, the bit may come back where it has been already: enough
for long straight moves, and the least that still counts as staying in the groove."""


def fitted(runs: Sequence[Run], tolerances_mm: Sequence[float], tips_mm: Sequence[float]) -> list[Path]:
    """Each run as one path of lines and arcs within its tolerance; where it comes up to the half width of its tip it
    does not come up before.

    Where a way back is shorter to say a little above the groove's bottom, with a step up and a step down, it
    goes there.
    """
    grouped = [[list(group) for _, group in groupby(run, key=lambda piece: piece.again)] for run in runs]
    back = [(i, j) for i, groups in enumerate(grouped) for j, group in enumerate(groups) if group[0].again]
    ways = [np.concatenate([piece.points for piece in grouped[i][j]]) for i, j in back]
    limits = [tolerances_mm[i] for i, _ in back]
    tips = [tips_mm[i] for i, _ in back]
    close = fit_counts([Stretch(way, limit, limit, tip) for way, limit, tip in zip(ways, limits, tips, strict=True)])
    above = fit_counts(
        [Stretch(way, limit, RETURN_MM, tip) for way, limit, tip in zip(ways, limits, tips, strict=True)]
    )
    eased = {place for place, near, far in zip(back, close, above, strict=True) if far + 2 < near}

    parts: list[list[Stretch]] = []
    for i, groups in enumerate(grouped):
        exact, own = tolerances_mm[i], list[Stretch]()
        # Stretches walked alike are fitted as one, so that no step is needed between them.
        for apart, numbered in groupby(enumerate(groups), key=lambda item: (i, item[0]) in eased and item[0]):
            points = np.concatenate([piece.points for _, group in numbered for piece in group])
            own.append(Stretch(points, exact, exact if apart is False else RETURN_MM, tips_mm[i]))
        parts.append(own)
    return fit_loosely(parts)
