"""What a V-bit's run leaves of an area, measured by brute force: nothing of the code under test but its points.

A run is a Path of x, y and w, the bit's half width at the surface: at each point it carves a disc of radius w.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from signgen.geometry.paths import Path
from signgen.toolpath.cut import Toolpath


def along(path: Path, step_mm: float) -> np.ndarray:
    """(k, 3) points of a path no further apart than `step_mm`, arcs by their angle."""
    count = np.maximum(1, np.ceil(path.lengths_mm / step_mm)).astype(int)
    i = np.repeat(np.arange(len(count)), count)
    share = ((np.arange(len(i)) - np.repeat(np.cumsum(count) - count, count) + 1) / count[i])[:, None]
    start, end = path.points_mm[i], path.points_mm[i + 1]
    straight = start + share * (end - start)
    centre = np.nan_to_num(path.centres_mm[i])
    spoke, turn = start[:, :2] - centre, share[:, 0] * path.sweeps_rad[i]
    x = centre[:, 0] + spoke[:, 0] * np.cos(turn) - spoke[:, 1] * np.sin(turn)
    y = centre[:, 1] + spoke[:, 0] * np.sin(turn) + spoke[:, 1] * np.cos(turn)
    bent = np.column_stack([x, y, straight[:, 2]])
    return np.concatenate([path.points_mm[:1], np.where((path.kinds[i] == 0)[:, None], straight, bent)])


def widths(toolpath: Toolpath, thickness_mm: float) -> list[Path]:
    """The toolpath's cuts with the half width at the surface in place of z."""
    tool, found = toolpath.tool, []
    for cut in toolpath.cuts:
        points = cut.path.points_mm.copy()
        points[:, 2] = (thickness_mm - points[:, 2]) * tool.slope + tool.tip_mm / 2
        found.append(Path(points_mm=points, kinds=cut.path.kinds.copy(), centres_mm=cut.path.centres_mm.copy()))
    return found


def as_written(path: Path, decimals: int = 4) -> Path:
    """The path as a program with that many decimals says it: points rounded, centres from rounded I and J."""
    points = np.round(path.points_mm, decimals)
    arms = np.round(path.centres_mm - path.points_mm[:-1, :2], decimals)
    return Path(points_mm=points, kinds=path.kinds.copy(), centres_mm=points[:-1, :2] + arms)


def gouge_mm(discs: np.ndarray, outline: BaseGeometry) -> float:
    """How far the discs (k, 3) reach beyond an outline at the most."""
    return float((discs[:, 2] - away_mm(discs, outline)).max())


def away_mm(places: np.ndarray, outline: BaseGeometry) -> np.ndarray:
    """(n,) exact distance of places (n, 2 or more) from an outline, whichever side they are on."""
    rings = [np.asarray(ring.coords)[:, :2] for ring in shapely.get_parts(shapely.boundary(outline))]
    pieces = np.concatenate([np.stack([ring[:-1], ring[1:]], axis=1) for ring in rings])
    tree = shapely.STRtree(shapely.linestrings(pieces))
    (which, _), away = tree.query_nearest(shapely.points(places[:, :2]), return_distance=True, all_matches=False)
    found = np.empty(len(places))
    found[which] = away
    return found


def uncut_mm(discs: np.ndarray, outline: BaseGeometry, step_mm: float = 0.03) -> float:
    """How far a point of the outline lies from every disc at the most."""
    rim = shapely.get_coordinates(shapely.segmentize(outline.boundary, step_mm))
    return float(missing_mm(discs, rim).max())


def missing_mm(discs: np.ndarray, places: np.ndarray, tile_mm: float = 1.0) -> np.ndarray:
    """For each of the places (n, 2) its distance from the nearest disc's rim, negative inside a disc.

    Tile by tile: a disc whose rim is further from a tile's middle than the nearest one's and twice the way to the
    tile's corner is not the nearest one of any place in it.
    """
    worst = np.empty(len(places))
    tiles, owner = np.unique(np.floor(places / tile_mm).astype(np.int64), axis=0, return_inverse=True)
    order = np.argsort(owner.ravel(), kind="stable")
    groups = np.split(order, np.cumsum(np.bincount(owner.ravel()))[:-1])
    for tile, own in zip(tiles, groups, strict=True):
        middle = (tile + 0.5) * tile_mm
        rims = np.hypot(discs[:, 0] - middle[0], discs[:, 1] - middle[1]) - discs[:, 2]
        near = discs[rims <= rims.min() + 2 * math.sqrt(0.5) * tile_mm]
        away = np.hypot(places[own, None, 0] - near[:, 0], places[own, None, 1] - near[:, 1])
        worst[own] = (away - near[:, 2]).min(axis=1)
    return worst


def deviation_mm(runs: Sequence[Path], area: BaseGeometry, step_mm: float = 0.01) -> tuple[float, float]:
    """(worst gouge, worst uncut) of an area by runs, part by part; each run belongs to the part where it starts."""
    parts = list(shapely.get_parts(area))
    tree = shapely.STRtree(parts)
    own: list[list[np.ndarray]] = [[] for _ in parts]
    for run in runs:
        own[int(tree.nearest(shapely.Point(*run.points_mm[0, :2])))].append(along(run, step_mm))
    found = []
    for part, discs in zip(parts, own, strict=True):
        every = np.concatenate(discs) if discs else np.array([[*part.centroid.coords[0], -1e9]])
        found.append((gouge_mm(every, part), uncut_mm(every, part)))
    return max(gouge for gouge, _ in found), max(uncut for _, uncut in found)
