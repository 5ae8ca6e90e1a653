"""Every tolerance with its unit and its reason; no other module holds one.

A job has one tolerance, T: the greatest distance, measured across the board, between an engraved wall as cut
and the outline as designed. It is spent on five things, and their sum is T:

    outline chord   0.25 T   a curve of the font replaced by chords
    peel            0.25 T   bristles of the medial axis, made by those chords, taken away
    branch chord    0.10 T   a parabola or hyperbola of the medial axis replaced by chords in (x, y, r)
    fit             0.38 T   chords replaced by longer lines and arcs in (x, y, r)
    rounding        0.02 T   the diagram's integer grid and the program's decimals (0.0001 mm)

A centre off by e across the board, or a radius off by e, moves the wall by at most e: the inscribed disc is what
cuts, and its envelope moves no further than its centre and its radius together; the shares for branch and fit
are therefore bounds on |centre error| + |radius error|.
"""

from __future__ import annotations

from dataclasses import dataclass

GRID_MM = 1e-5
"""Snap grid of the segment Voronoi diagram: a tenth of the last written decimal."""

DEFAULT_TOLERANCE_MM = 0.01
"""A hundredth: below what wood shows, above what a small router repeats."""

CHECK_MM = 0.05
"""What a check allows between the board as cut and the board as drawn: walls, holes, outside size."""

CORNER_DEG = 20.0
"""A turn sharper than this is a corner of the design, never smoothed into an arc."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tolerances:
    """The shares of one job's tolerance `total_mm`; see the module's text for the sum."""

    total_mm: float = DEFAULT_TOLERANCE_MM

    @property
    def chord_mm(self) -> float:
        return 0.25 * self.total_mm

    @property
    def peel_mm(self) -> float:
        return 0.25 * self.total_mm

    @property
    def branch_mm(self) -> float:
        return 0.10 * self.total_mm

    @property
    def fit_mm(self) -> float:
        return 0.38 * self.total_mm
