"""Clearing an area with a round cutter: rings at equal distances, joined into few runs, from the inside out.

A ring at the cutter's radius from the walls, one a step further in, and so on until nothing is left. If the step is
less than the radius by a little for what rings may stray, every point between two rings lies within R of the outer one,
so all is covered; with larger steps what stays uncovered is looked for and given rings of its own.

Rings of one piece are linked to a tree (`pocket_tree`). A ring is cut after the rings inside it, walls at the very end.
From the end of one lap the cutter goes straight to the nearest point of the next ring if its centre may; otherwise
along the tree (`pocket_walk`).

All rings run with the area to clear on their left, so that with a spindle that turns clockwise seen from above the
remaining wood lies on the right: climb milling.
"""

from __future__ import annotations

from collections.abc import Sequence

import shapely
from msgspec import Struct
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.geometry.offsets import inward, polygons, quad_segs
from signgen.geometry.paths import FloatArray
from signgen.geometry.pocket_tree import RingTree, grow, link_all, ring_tree
from signgen.geometry.pocket_walk import walk

WALK_MM = 200.0
"""Way through cleared floor that takes as long as a lift, a move above and a plunge, on a small router: a few
seconds at 1500 mm/min (common practice)."""


_STEP_EXCESS = 1.01
LOOSEST_MM = 0.02
"""How far rings that make no wall may stray: more would show as unevenness in the cutter's load, not on the sign."""


class PocketChain(Struct, frozen=True, kw_only=True):
    """Part of a run: (k, 2) points, k >= 2. `is_wall`: a closed lap along a finished wall. `is_loose`: a lap away from
    walls, which the path may stray from by the pocket's `loose_mm`; walls, and ways between laps, may pass close to
    wood that stays.
    """

    points_mm: FloatArray
    is_wall: bool
    is_loose: bool


class PocketRun(Struct, frozen=True, kw_only=True):
    """One stay of the cutter in the work, in the plane.

    Each chain starts where the last one ends. Unless the run starts `in_the_clear`, where an earlier run of the same
    pocket has cut, the first is a closed lap on which the cutter may go down; and a helix around `middle_mm` with a
    radius up to `room_mm` stays in the area too, as does the straight way from it to that lap.
    """

    chains: tuple[PocketChain, ...]
    middle_mm: tuple[float, float]
    room_mm: float
    in_the_clear: bool


class Pocket(Struct, frozen=True, kw_only=True):
    """`pieces`: for each connected piece of the area where the cutter's centre may be, its runs in order. Paths may
    stray from loose chains by `loose_mm`.

    `walls` counts the closed walls, `rings` all rings.
    """

    pieces: tuple[tuple[PocketRun, ...], ...]
    loose_mm: float
    walls: int
    rings: int


def pocket_rings(
    area: BaseGeometry,
    cutter_radius_mm: float,
    stepover_mm: float,
    allowance_mm: float,
    tolerance_mm: float,
    walk_mm: float = WALK_MM,
) -> Pocket:
    """Runs that cut everything a cutter of this radius can reach within an area, and nothing outside it.

    `allowance_mm` of wood is left at the walls until the last ring, 0 for none; `tolerance_mm` bounds how far walls
    stray from the true offset: their rings come straight from the area. A lift is preferred to a way through cleared
    floor longer than `walk_mm`. No pieces when the cutter fits nowhere.

    Raises: ValueError when radius, step or tolerance is not positive, the allowance is negative, or the step is not
    below the diameter.
    """
    free = inward(area, cutter_radius_mm, tolerance_mm)
    return rings_within(free, cutter_radius_mm, stepover_mm, allowance_mm, tolerance_mm, walk_mm)


def rings_within(
    free: Sequence[Polygon],
    cutter_radius_mm: float,
    stepover_mm: float,
    allowance_mm: float,
    tolerance_mm: float,
    walk_mm: float = WALK_MM,
) -> Pocket:
    """`pocket_rings` for given pieces of where the cutter's centre may be; `Pocket.pieces` are in their order."""
    if not (cutter_radius_mm > 0 and 0 < stepover_mm < 2 * cutter_radius_mm and tolerance_mm > 0):
        raise ValueError(f"radius {cutter_radius_mm}, step {stepover_mm}, tolerance {tolerance_mm}: not a pocket")
    if allowance_mm < 0:
        raise ValueError(f"an allowance is not negative: {allowance_mm}")
    loose = _loose(cutter_radius_mm, stepover_mm, allowance_mm)
    trees = [_tree(part, cutter_radius_mm, stepover_mm, allowance_mm, loose) for part in free]
    return Pocket(
        pieces=tuple(_runs(tree, walk_mm) for tree in trees),
        loose_mm=loose,
        walls=sum(ring.level == 0 for tree in trees for ring in tree.rings),
        rings=sum(len(tree.rings) for tree in trees),
    )


def _loose(radius: float, step: float, allowance: float) -> float:
    """How far inner rings may stray: by this each for their chords, their simplified form and their path.

    With step x 1.01 + 5 x this <= R nothing stays uncovered: a point between two rings is within step x 1.01 + 4 x this
    of the outer ring's chords (1.01: see `offsets.inward`, roughly), and the path within this of those. Where that
    would leave too little, what is uncovered must be looked for anyway.
    """
    spare = (radius - _STEP_EXCESS * step) / 5
    if spare < LOOSEST_MM / 4:
        spare = LOOSEST_MM / 2
    return min(LOOSEST_MM, spare, *([allowance / 4] if allowance else []))


def _tree(part: Polygon, radius: float, step: float, allowance: float, loose: float) -> RingTree:
    tree = ring_tree(part, allowance or step, step, loose)
    if _STEP_EXCESS * step + 5 * loose > radius + 1e-9:
        _add_residue(tree, part, radius, loose)
    link_all(tree)
    return tree


def _add_residue(tree: RingTree, part: Polygon, radius: float, loose: float) -> None:
    """Rings for what the rings so far leave between them. Such a place lies between two levels and crosses no ring."""
    swept = shapely.buffer(tree.lines(range(len(tree.rings))), radius - loose, quad_segs=quad_segs(radius, loose))
    nodes = list(enumerate(tree.nodes))
    for left in polygons(shapely.difference(part, swept)):
        inside = left.representative_point()
        around = max((node.level, i) for i, node in nodes if node.polygon.covers(inside))[1]
        number = tree.add(left, tree.nodes[around].level + 1, around)
        step = (radius - 5 * loose) / _STEP_EXCESS
        grow(tree, number, step, step, loose)


def _runs(tree: RingTree, walk_mm: float) -> tuple[PocketRun, ...]:
    outline = tree.nodes[0].polygon.boundary
    return tuple(
        PocketRun(
            chains=tuple(_chain(points, level) for points, level in run.chains),
            middle_mm=run.start,
            room_mm=float(shapely.distance(outline, shapely.points(run.start))),
            in_the_clear=run.in_the_clear,
        )
        for run in walk(tree, walk_mm)
    )


def _chain(points: FloatArray, level: int | None) -> PocketChain:
    points.setflags(write=False)
    return PocketChain(points_mm=points, is_wall=level == 0, is_loose=bool(level))
