"""How much wood stays between features, seen from above: the one place that measures it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry import MultiPolygon, Polygon

from signgen.features.feature import Feature

LEAST_WALL_MM = 1.0
"""Wood that must stay between a hole and the edge, another hole or a letter; less breaks out (common practice)."""


def apart_mm(one: Feature, other: Feature) -> float:
    """Wood between the outlines of two features: negative where holes overlap, 0 where areas do."""
    (mine, mine_mm), (theirs, theirs_mm) = one.core, other.core
    return float(shapely.distance(mine, theirs)) - mine_mm - theirs_mm


def inside_mm(one: Feature, other: Feature) -> float:
    """Wood between a feature and the outline of the other, within which it should lie; negative where it runs over it.
    Openings in the other do not count."""
    core, reach_mm = one.core
    within = _filled(other)
    away = off_outline_mm(one, other) + reach_mm
    return (away if shapely.covers(within, core) else -away) - reach_mm


def off_outline_mm(one: Feature, other: Feature) -> float:
    """From a feature to the outline of the other, within which it may lie, or beside it."""
    core, reach_mm = one.core
    return float(shapely.distance(core, _filled(other).boundary)) - reach_mm


def close_pairs(features: Sequence[Feature], within_mm: float) -> Iterator[tuple[int, int]]:
    """The numbers i < j of each two whose footprints are nearer to each other than that, or overlap, in order."""
    tree = shapely.STRtree([feature.footprint for feature in features])
    # Rims of holes are chords, a little inside the circle.
    found = tree.query(tree.geometries, predicate="dwithin", distance=within_mm + 0.1)
    pairs = found[:, found[0] < found[1]].T
    yield from map(tuple, pairs[np.lexsort((pairs[:, 1], pairs[:, 0]))].tolist())


def _filled(feature: Feature) -> Polygon | MultiPolygon:
    parts = [Polygon(part.exterior) for part in shapely.get_parts(feature.footprint)]
    return parts[0] if len(parts) == 1 else MultiPolygon(parts)
