"""Every tolerance with its unit and its reason; no other module holds one.

A job has one tolerance, T: the greatest distance, measured across the board, between an engraved wall as cut
and the outline as designed. It is spent on five things, and their sum is T:

    outline chord   0.11 T   a curve of the font replaced by chords
    pruning         0.11 T   bristles of the medial axis, made by those chords, taken away
    branch chord    0.03 T   a parabola or hyperbola of the medial axis replaced by chords in (x, y, r)
    fit             0.75 T - 0.0002 mm: chords replaced by longer lines and arcs in (x, y, r), where those cut too
                    little; where they cut too much nothing is pruned, and they have 0.86 T - 0.0002 mm. For a control
                    without arcs it has 0.35 T of that, and the chords that stand for those arcs 0.40 T
    rounding        0.0002 mm: the diagram's integer grid and the program's decimals

A centre off by e across the board, or a radius off by e, moves the wall by at most e: the inscribed disc is
what cuts, and its envelope moves no further than its centre and its radius together; the shares for branch
and fit are therefore bounds on |centre error| + |radius error|. Pruning takes away no disc that reaches
further than its share beyond one that stays. So a point of the outline lies within chord of the polygon, its
nearest point there within pruning of a disc of the axis, that disc within branch + fit of one that is cut, and
no disc that is cut sticks out of the outline by more than chord + branch + fit.

Why these shares: pruning must be at least chord, or every chord leaves a bristle that the cutter walks to and
back. What the fit gets shortens the program (blocks go with its root); what the chord gets shortens the
diagram (segments go with its root). Measured on a line of 40 letters of a serif face at T = 0.01, where chords
stray evenly: with 0.12 T each for chord and pruning 4 % fewer segments and 1 % more blocks; with 0.10 T 5 % more
segments and 0.5 % fewer blocks. (Measured with points spread evenly on the curves: with 0.25 T each instead of
0.12 T a third fewer segments and a quarter more blocks.)
"""

from __future__ import annotations

from msgspec import Struct

GRID_MM = 1e-5
"""Snap grid of the segment Voronoi diagram: a tenth of the last written decimal."""

DEFAULT_TOLERANCE_MM = 0.01
"""A hundredth: below what wood shows, above what a small router repeats."""

LEAST_TOLERANCE_MM = 0.001
"""Below this too much of a job's tolerance would go into rounding."""

ROUNDING_MM = 0.0002
"""Half a step of the diagram's grid in x and y, half a step of the fourth decimal in x and y, and as much in
z, which moves the wall by tan(angle / 2) times as much (2.4 for 135 degrees): 0.000007 + 0.00007 + 0.00012,
rounded up."""

CHECK_MM = 0.05
"""What a check allows between the board as cut and the board as drawn: walls, holes, outside size."""

UPRIGHT_MM = 0.04
"""The most that upright walls (flat floors, the outside) are given: CHECK_MM, less what the chords of arcs and the
decimals of programs add (0.003 mm) and a little for the cells of the virtual board."""

HAIR_CHORD_MM = 0.0008
"""What chords of an arc may stray where nobody has set a share aside for them: with rounding, 0.001 mm."""

CORNER_DEG = 20.0
"""A turn sharper than this is a corner of the design, never smoothed into an arc."""


class Tolerances(Struct, frozen=True, kw_only=True):
    """The shares of one job's tolerance `total_mm`; see the module's text for the sum. `straight`: arcs are written as
    chords, which get a share too."""

    total_mm: float = DEFAULT_TOLERANCE_MM
    straight: bool = False

    def __post_init__(self) -> None:
        if not self.total_mm >= LEAST_TOLERANCE_MM:
            raise ValueError(f"a tolerance is at least {LEAST_TOLERANCE_MM} mm, not {self.total_mm}")

    @property
    def upright(self) -> Tolerances:
        """Those of upright walls, which are judged to CHECK_MM however roughly sloping ones may be cut."""
        return self if self.total_mm <= UPRIGHT_MM else Tolerances(total_mm=UPRIGHT_MM, straight=self.straight)

    @property
    def chord_mm(self) -> float:
        return 0.11 * self.total_mm

    @property
    def prune_mm(self) -> float:
        return 0.11 * self.total_mm

    @property
    def branch_mm(self) -> float:
        return 0.03 * self.total_mm

    @property
    def fit_mm(self) -> float:
        return 0.75 * self.total_mm - ROUNDING_MM - (self.arc_chord_mm if self.straight else 0.0)

    @property
    def arc_chord_mm(self) -> float:
        """Between a written arc and the chords that stand for it."""
        return 0.4 * self.total_mm if self.straight else HAIR_CHORD_MM

    @property
    def deeper_mm(self) -> float:
        """The fit's share on the side of too deep and too wide."""
        return self.fit_mm + self.prune_mm
