"""Where the middle of the text may lie: in the middle of the sign, or, where the outline is not alike on both sides,
wherever the text has the most room."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray
from shapely import affinity
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

ALIKE_RATIO = 1e-4
"""Two halves of an outline that differ by less of its area than this are alike; chords alone make some difference."""

PLACES_ALONG, PLACES_ACROSS = 97, 25
"""Places tried along the one axis that is free, and along each of two."""


def text_middles(edge: Polygon, room: BaseGeometry) -> NDArray[np.float64]:
    """(k, 2) places for the middle of the text, the most natural one first and the others by their distance from it.

    Along an axis on which the outline is its own mirror image only the middle comes in question, whatever the holes
    do to the room: text that is off centre on such a sign looks like a mistake. Along another axis, the natural place
    is that of the centroid, and any within the room's bounds may do.
    """
    return _middles(edge, room, (not _alike(edge, (-1, 1)), not _alike(edge, (1, -1))))


def other_middles(edge: Polygon, room: BaseGeometry) -> Iterator[NDArray[np.float64]]:
    """Places for text that has no room in the middle, where a hole may be: above or below it, then beside it, then
    anywhere; each as `text_middles` has them."""
    across, up = not _alike(edge, (-1, 1)), not _alike(edge, (1, -1))
    for free in dict.fromkeys([(across, True), (True, up), (True, True)]):
        if free != (across, up):
            yield _middles(edge, room, free)


def _middles(edge: Polygon, room: BaseGeometry, free: tuple[bool, bool]) -> NDArray[np.float64]:
    """Places along the axes that are free; the middle of the outline along the others."""
    x0, y0, x1, y1 = edge.bounds
    home = np.array([(x0 + x1) / 2, (y0 + y1) / 2])
    if room.is_empty or not any(free):
        return home[None, :]
    count = PLACES_ALONG if sum(free) == 1 else PLACES_ACROSS
    axes = []
    for axis, centroid in enumerate((edge.centroid.x, edge.centroid.y)):
        if free[axis]:
            home[axis] = centroid
            axes.append(np.linspace(room.bounds[axis], room.bounds[axis + 2], count))
        else:
            axes.append(home[axis : axis + 1])
    places = np.stack(np.meshgrid(*axes), axis=-1).reshape(-1, 2)
    by_distance = np.argsort(np.hypot(*(places - home).T), kind="stable")
    return np.concatenate([home[None, :], places[by_distance]])


def _alike(edge: Polygon, mirror: tuple[int, int]) -> bool:
    """Whether an outline is its own image when mirrored about the middle of its bounds."""
    x0, y0, x1, y1 = edge.bounds
    image = affinity.scale(edge, *mirror, origin=((x0 + x1) / 2, (y0 + y1) / 2))
    return bool(edge.symmetric_difference(image).area <= ALIKE_RATIO * edge.area)
