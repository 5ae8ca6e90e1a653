"""The least wood between each two kinds of things on a sign: one table, tried over all features at once."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from typing import Literal

from msgspec import Struct

from signgen.drawing import too_close as say
from signgen.drawing.spacing import LEAST_WALL_MM, apart_mm, close_pairs, inside_mm, off_outline_mm
from signgen.drawing.too_close import Close
from signgen.errors import Problem
from signgen.features.edge import Edge
from signgen.features.feature import Feature
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.spec.keys.pictures import PICTURE_KINDS
from signgen.spec.sign_spec import SignSpec

LEAST_BESIDE_MM = 2.0
"""Wood beside a keyhole, towards the edge, a hole or another keyhole: it carries the sign (common practice)."""

BETWEEN_GROOVES_MM = 0.5
"""Wood at the face between a letter and a line; less crumbles along the grain (common practice)."""

THROUGH_TO_EDGE_MM = 2.0
"""Wood between a letter that is cut right through and the sign's edge: a strip as long as the letter and as high as
the board, which bends under the cutter (common practice)."""

BETWEEN_THROUGH_MM = 0.6
"""Wood between two letters that are cut right through: less breaks (common practice)."""

Kept = Literal["apart", "inside", "off the outline"]
"""Whether one thing lies beside the other, within it, or either."""

MEASURES = {"apart": apart_mm, "inside": inside_mm, "off the outline": off_outline_mm}


class Wall(Struct, frozen=True):
    """A row: sorts of things, sorts of what is beside or round them, the least wood, and how too little is said.
    Where the edge is bevelled, wood of what lies within it counts from the bevel's inner side."""

    of: tuple[str, ...]
    to: tuple[str, ...]
    least_mm: float
    said: Callable[[Close], Problem]
    kept: Kept = "apart"


def sort_of(feature: Feature, thickness_mm: float) -> str:
    """What a feature is to the table: its kind, letters and ornaments apart from the rest."""
    match feature:
        case Edge():
            return "edge"
        case Groove() | Raised() | Recess() if feature.source in PICTURE_KINDS:
            return "picture"
        case Groove() | Raised() if feature.source == "ornament":
            return "ornament"
        case Groove():
            return "letter" if feature.is_letter else "line"
        case Recess() if feature.is_letter:
            return "through letter" if feature.depth_mm >= thickness_mm else "sunk letter"
        case Hole() if feature.sink:
            return "sunk hole"
    return feature.kind


HOLES = ("hole", "sunk hole")
SUNK = ("sunk letter", "through letter")

WALLS: tuple[Wall, ...] = (
    Wall(("keyhole",), ("edge",), LEAST_BESIDE_MM, say.keyhole_over_edge, "inside"),
    Wall(("keyhole",), (*HOLES, "keyhole"), LEAST_BESIDE_MM, say.keyholes_meet),
    Wall(HOLES, ("edge",), LEAST_WALL_MM, say.hole_over_edge, "inside"),
    Wall(HOLES, HOLES, LEAST_WALL_MM, say.holes_meet),
    Wall(HOLES, ("bevel",), LEAST_WALL_MM, say.hole_in_bevel),
    Wall(("panel",), ("bevel",), LEAST_WALL_MM, say.panel_in_bevel),
    Wall(("sunk hole",), ("panel",), LEAST_WALL_MM, say.sunk_hole_in_panel),
    Wall(("hole",), ("panel",), LEAST_WALL_MM, say.hole_on_wall, "off the outline"),
    Wall(("through letter",), ("edge",), THROUGH_TO_EDGE_MM, say.through_by_edge, "inside"),
    Wall(("letter", "line", "ornament", "sunk letter"), ("edge",), LEAST_WALL_MM, say.over_edge, "inside"),
    Wall(("raised", "ornament", *SUNK), ("panel",), LEAST_WALL_MM, say.outside_panel, "inside"),
    Wall(("line",), ("panel", *SUNK), LEAST_WALL_MM, say.line_in_floor),
    Wall(("ornament",), HOLES, LEAST_WALL_MM, say.ornament_by_hole),
    Wall(("ornament",), ("letter", "line", "raised", *SUNK), LEAST_WALL_MM, say.by_ornament),
    Wall(("ornament",), ("ornament",), LEAST_WALL_MM, say.ornaments_meet),
    Wall(("letter", "line", "raised", *SUNK), HOLES, LEAST_WALL_MM, say.by_hole),
    Wall(("picture",), ("edge",), LEAST_WALL_MM, say.by_picture, "inside"),
    Wall(("picture",), ("panel",), LEAST_WALL_MM, say.by_picture, "inside"),
    Wall(("picture",), (*HOLES, "letter", "line", "ornament", "raised", *SUNK), LEAST_WALL_MM, say.by_picture),
    Wall(("line",), ("letter",), BETWEEN_GROOVES_MM, say.line_by_letter),
    Wall(("through letter",), ("through letter",), BETWEEN_THROUGH_MM, say.through_by_through),
)

MAY_MEET: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...] = (
    # Letters of a script join, and lines of text are held apart where they are laid.
    (("letter", "raised", *SUNK), ("letter", "raised", *SUNK)),
    # The frame's own distance between its lines; a rule ends where the text does.
    (("line",), ("line", "raised")),
    # Its own floor lies round what stands in it, and letters are laid clear of its wall.
    (("panel",), ("panel", "letter", "edge")),
    (("raised",), ("edge",)),
    # Colours of one picture may touch; two pictures are held apart where they are laid.
    (("picture",), ("picture", "bevel", "keyhole", "tab")),
    # They go round everything.
    (("edge", "bevel"), ("edge", "bevel")),
    (("bevel",), ("letter", "line", "ornament", "raised", *SUNK)),
    # Cut from the other side: how much wood is left between is a matter of depths.
    (("keyhole",), ("letter", "line", "ornament", "raised", "panel", "bevel", *SUNK)),
    # Where nothing else is.
    (("tab",), ("tab", "edge", "bevel", "panel", "letter", "line", "ornament", "raised", "keyhole", *HOLES, *SUNK)),
)

BESIDE = Wall((), (), LEAST_WALL_MM, say.elsewhere)
INSIDE = Wall((), (), LEAST_WALL_MM, say.elsewhere, "inside")
"""What holds for kinds that the table does not name, among themselves and beside all others."""


@cache
def _table() -> dict[frozenset[str], Wall | None]:
    """The first row that names two sorts; None where they may meet."""
    table: dict[frozenset[str], Wall | None] = {}
    rows: tuple[tuple[tuple[str, ...], tuple[str, ...], Wall | None], ...] = (
        *((row.of, row.to, row) for row in WALLS),
        *((of, to, None) for of, to in MAY_MEET),
    )
    for of, to, row in rows:
        for one, other in itertools.product(of, to):
            table.setdefault(frozenset((one, other)), row)
    return table


def wall_between(one: str, other: str) -> Wall | None:
    """The row for two sorts of things; None where they may meet."""
    return _table().get(frozenset((one, other)), INSIDE if "edge" in (one, other) else BESIDE)


def wall_problems(spec: SignSpec, features: Sequence[Feature]) -> Iterator[Problem]:
    """Everything that leaves too little wood, in the order of the table; of each thing what it is nearest to. The panel
    as its outline says, whatever stands in it."""
    sorts = [sort_of(feature, spec.thickness_mm) for feature in features]
    (edge,) = (feature for feature in features if isinstance(feature, Edge))
    widest = max(row.least_mm for row in WALLS) + spec.chamfer_mm
    found: dict[tuple[Wall, str], Close] = {}
    # What should lie within another thing may lie far from it.
    holding = [number for number, sort in enumerate(sorts) if sort in ("edge", "panel")]
    around = {(min(i, j), max(i, j)) for i in holding for j in range(len(features)) if i != j}
    for i, j in sorted(around.union(close_pairs(features, widest))):
        row = wall_between(sorts[i], sorts[j])
        if row is None:
            continue
        one, other = features[i], features[j]
        if not row.of or (sorts[j] in row.of and sorts[i] not in row.of):
            one, other = other, one
        least, slack = row.least_mm, 1e-6
        if row.kept == "inside":
            # Offsets of curves are chords.
            least, slack = least + _bevelled_mm(spec, one, other), spec.tolerances.chord_mm
        wall = MEASURES[row.kept](one, other)
        near = found.get((row, one.name))
        if wall < least - slack and (near is None or wall < near.wall_mm):
            found[row, one.name] = Close(spec, edge, one, other, wall, row.least_mm)
    order = {row: number for number, row in enumerate((*WALLS, BESIDE, INSIDE))}
    for (row, _), close in sorted(found.items(), key=lambda item: order[item[0][0]]):
        yield row.said(close)


def _bevelled_mm(spec: SignSpec, one: Feature, other: Feature) -> float:
    """How far inside the sign's edge the face begins for a thing on it; holes are measured from the bevel itself."""
    return spec.chamfer_mm if isinstance(other, Edge) and not isinstance(one, Hole | Keyhole) else 0.0
