"""Every glyph of every face is engraved without failure, at three sizes and turned at random.

The sweep takes each glyph at one of the sizes, the next glyph at the next, so that it is done in four minutes of one
processor; with SIGNGEN_EVERY_SIZE=1 in the environment it takes each glyph at every size.
"""

from __future__ import annotations

import math
import os

import numpy as np
import pytest
import shapely
from shapely import affinity
from shapely.geometry import Polygon

from signgen.geometry.offsets import polygons
from signgen.lettering.areas import glyph_areas
from signgen.lettering.catalogue import catalogue
from signgen.lettering.face import Face
from signgen.lettering.faces import open_face
from signgen.operations.engrave_runs import RunRecipe, shape_runs
from signgen.tolerances import Tolerances

FACES = tuple(face.name for face in catalogue())
SIZES_MM = {8.0: 0.02, 30.0: 0.04, 100.0: 0.1}
"""Em and tolerance: coarser than a job's, so that there is time for every glyph."""

BATCH = 64
SMALLEST_MM = 0.002
"""Clearance below which a sliver between two contours may be lost on the diagram's grid."""


def glyph_count(face: Face) -> int:
    return int(face.font.face.glyph_count)


def turned(face: Face, glyphs: list[int], size_mm: float, chord_mm: float, rng: np.random.Generator) -> list[Polygon]:
    areas = glyph_areas(face, glyphs, scale_mm_per_em=size_mm, chord_mm=chord_mm)
    parts: list[Polygon] = []
    for area in areas:
        angle = float(rng.uniform(-180, 180))
        parts += [part for part in polygons(affinity.rotate(area, angle, origin=(0, 0))) if part.is_valid]
    return parts


def faults(parts: list[Polygon], tolerances: Tolerances) -> list[str]:
    """What is wrong with the runs over each part."""
    recipe = RunRecipe(
        least_mm=0.0, limit_mm=1e3, cap_mm=1e3, fit_mm=tolerances.fit_mm, deeper_mm=tolerances.deeper_mm, lift_mm=40.0
    )
    found = []
    for part, runs in zip(parts, shape_runs([(part, recipe) for part in parts], tolerances), strict=True):
        points = np.concatenate([np.zeros((0, 3)), *(run.path.points_mm for run in runs)])
        if not len(points):
            if shapely.minimum_clearance(part) > SMALLEST_MM:
                found.append(f"nothing is cut of a part of {part.area:.6f} mm2")
            continue
        # Ends of lines and arcs: no disc reaches further beyond the outline than the tolerance allows.
        away = shapely.distance(shapely.points(points[:, :2]), part.boundary)
        inside = shapely.contains_xy(part, points[:, 0], points[:, 1])
        beyond = float((points[:, 2] - np.where(inside, away, -away)).max())
        if not math.isfinite(beyond) or beyond > tolerances.total_mm:
            found.append(f"{beyond:.4f} mm are cut too much")
        # The widest place is reached.
        radius = shapely.get_coordinates(shapely.maximum_inscribed_circle(part, tolerance=tolerances.total_mm))
        widest = math.dist(*radius)
        if abs(points[:, 2].max() - widest) > 2.5 * tolerances.total_mm:
            found.append(f"it is {widest:.4f} mm wide and cut {points[:, 2].max():.4f} mm")
    return found


def wrong_of(name: str, glyphs: list[int] | None = None, *, is_every_size: bool = True) -> list[str]:
    """What is wrong with a face's glyphs, all of them unless some are named."""
    face, rng = open_face(name), np.random.default_rng(2026)
    wrong = []
    every = list(range(glyph_count(face))) if glyphs is None else glyphs
    for number, (size_mm, tolerance_mm) in enumerate(SIZES_MM.items()):
        tolerances = Tolerances(total_mm=tolerance_mm)
        own = every if is_every_size else every[number :: len(SIZES_MM)]
        for first in range(0, len(own), BATCH):
            some = own[first : first + BATCH]
            parts = turned(face, some, size_mm, tolerances.chord_mm, rng)
            wrong += [f"{name} {some[0]}-{some[-1]} at {size_mm} mm: {fault}" for fault in faults(parts, tolerances)]
    return wrong


@pytest.mark.sweep
@pytest.mark.parametrize("name", FACES)
def test_every_glyph_of_the_face(name: str) -> None:
    assert wrong_of(name, is_every_size="SIGNGEN_EVERY_SIZE" in os.environ) == []


@pytest.mark.parametrize("name", FACES)
def test_some_glyphs_of_the_face(name: str) -> None:
    count = glyph_count(open_face(name))
    assert wrong_of(name, [count // 7 * i + i for i in range(5)]) == []
