"""Engraving 40 letters at 30 mm: time, blocks, lifts, worst deviation. `python -m tests.bench.bench_engraving`.

Deviations are across the board in mm (equal to the error in depth for a 90 degree bit), against the outline flattened
to 0.0002 mm;
"s" is the time of the processor, "on the clock" what two cores make of it when nothing else runs;
"raw" is the medial axis, "emitted" the path with four decimals. Three references do the same job:

(a) exact distances: at points of a raster the depth wanted is the exact distance to the outline;
(b) scikit-image's medial axis of a 0.05 mm raster, r from its exact distance transform;
(c) points every 0.1 mm along the outline, their Voronoi diagram by scipy, exact r at its vertices.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence

import numpy as np
import shapely
from shapely import affinity
from shapely.geometry import Polygon

from signgen.features.groove import Groove
from signgen.geometry import medial
from signgen.geometry.medial import medial_axis
from signgen.geometry.paths import Path, polyline
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines
from signgen.operations import engrave_runs
from signgen.operations.engrave import Engrave, shapes
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Toolpath
from tests.carved import along, as_written, away_mm, deviation_mm, missing_mm, widths

FACES = {"serif": "cinzel", "script": "pacifico", "slab": "roboto-slab", "blackletter": "unifraktur"}
SIGN = "Larkspur Lane Orchard & Gardens, No. 127"
DIFFERENT = "ABCDEGHKMNPQRSTWXYZabdefghkmnpqrstwy2358"
CAP_MM, THICKNESS_MM = 30.0, 40.0
TOLERANCES = Tolerances()
BIT = Tool(
    name="v-bit-90", kind="v-bit", diameter_mm=60, shank_mm=6, cutting_length_mm=30, flutes=2, angle_deg=90.0,
    stickout_mm=40, source="a bit without limits, so that the geometry is seen alone",
)  # fmt: skip
CUTTING = CuttingData(
    spindle_rpm=16000, chip_load_mm=0.05, feed_mm_per_min=1500, plunge_mm_per_min=500, ramp_mm_per_min=800,
    stepdown_mm=30, stepover_mm=3, entry_deg=5,
)  # fmt: skip


def letters(text: str, face: str, chord_mm: float = TOLERANCES.chord_mm) -> list[Polygon]:
    found = set_lines([text], open_face(face), cap_height_mm=CAP_MM, chord_mm=chord_mm).letters
    return [part for letter in found for part in shapely.get_parts(letter.area)]


def engraving(parts: Sequence[Polygon], depth_mm: float = 29.0) -> Engrave:
    grooves = tuple(
        Groove(name=str(i), source="frame", area=part, angle_deg=90.0, tip_mm=0.0, max_depth_mm=depth_mm)
        for i, part in enumerate(parts)
    )
    return Engrave(grooves=grooves, tool=BIT, cutting=CUTTING, thickness_mm=THICKNESS_MM, tolerances=TOLERANCES)


def forget() -> None:
    engrave_runs._known.clear()
    medial._axis_of_rings.cache_clear()


def timed(operation: Engrave, *, cold: bool = True, times: int = 3) -> tuple[float, float, Toolpath]:
    """Least seconds of the processor (other work on the machine left out) and on the clock over a few times."""
    used = clock = float("inf")
    toolpath = None
    for _ in range(times):
        if cold:
            forget()
        start, began = time.process_time(), time.perf_counter()
        toolpath = operation.toolpath()
        used, clock = min(used, time.process_time() - start), min(clock, time.perf_counter() - began)
    assert toolpath is not None
    return used, clock, toolpath


def raw_axis(parts: Sequence[Polygon]) -> list[Path]:
    """The medial axis of each part as paths, one for each branch; of a dot its node."""
    found = []
    for part in parts:
        axis = medial_axis(part, TOLERANCES)
        found += [polyline(branch) for branch in axis.branches or (axis.nodes_mm[:1],)]
    return found


def raster_error_mm(runs: Sequence[Path], true: Sequence[Polygon], cell_mm: float = 0.25) -> float:
    """(a): over the cells of a raster inside the letters, the worst difference between the depth carved and the exact
    distance."""
    worst = 0.0
    starts = shapely.points([run.points_mm[0, :2] for run in runs])
    tree = shapely.STRtree(true)
    owner = tree.nearest(starts)
    for number, part in enumerate(true):
        x0, y0, x1, y1 = part.bounds
        x, y = np.meshgrid(np.arange(x0, x1, cell_mm) + 0.0137, np.arange(y0, y1, cell_mm) + 0.0173)
        inside = shapely.contains_xy(part, x, y)
        places = np.column_stack([x[inside], y[inside]])
        # Discs 0.01 mm apart leave so much between them where a stroke runs out that it shows: 0.001 mm.
        mine = [along(run, 0.003) for run, own in zip(runs, owner, strict=True) if own == number]
        if not len(places) or not mine:
            continue
        wanted = away_mm(places, part)
        worst = max(worst, float(np.abs(-missing_mm(np.concatenate(mine), places) - wanted).max()))
    return worst


def by_raster(parts: Sequence[Polygon], cell_mm: float = 0.05) -> tuple[float, list[Path]]:
    """(b)"""
    from skimage.draw import polygon2mask
    from skimage.morphology import medial_axis as raster_axis

    start, found = time.process_time(), []
    for part in parts:
        x0, y0, x1, y1 = part.bounds
        size = (int((x1 - x0) / cell_mm) + 4, int((y1 - y0) / cell_mm) + 4)
        mask = np.zeros(size, bool)
        for ring, value in ((part.exterior, True), *((hole, False) for hole in part.interiors)):
            mask[polygon2mask(size, (shapely.get_coordinates(ring) - (x0, y0)) / cell_mm + 1.5)] = value
        rows, distance = raster_axis(mask, return_distance=True)
        i, j = np.nonzero(rows)
        place = (np.column_stack([i, j]) - 1.0) * cell_mm + (x0, y0) - 0.5 * cell_mm
        found += [polyline([[*xy, r * cell_mm]]) for xy, r in zip(place, distance[i, j], strict=True)]
    return time.process_time() - start, found


def by_samples(parts: Sequence[Polygon], step_mm: float = 0.1) -> tuple[float, list[Path]]:
    """(c)"""
    from scipy.spatial import Voronoi

    start, found = time.process_time(), []
    for part in parts:
        places = np.unique(shapely.get_coordinates(shapely.segmentize(part.boundary, step_mm)), axis=0)
        diagram = Voronoi(places)
        inside = shapely.contains_xy(part, diagram.vertices)
        radius = shapely.distance(shapely.points(diagram.vertices), part.boundary)
        # Neighbours along the outline have an edge that ends at it: no part of the axis.
        pairs = np.array(
            [p for p in diagram.ridge_vertices if p[0] >= 0 and p[1] >= 0 and inside[p[0]] and inside[p[1]]]
        )
        points = np.column_stack([diagram.vertices, radius])
        found += [polyline(points[pair]) for pair in pairs]
    return time.process_time() - start, found


def row(name: str, seconds: float, runs: Sequence[Path], true: Sequence[Polygon], lifts: int | None) -> str:
    gouge, uncut = deviation_mm(runs, shapely.MultiPolygon(list(true)))
    blocks = sum(max(1, len(run)) for run in runs)
    said = "" if lifts is None else str(lifts)
    return f"  {name:34}{seconds:8.3f}{blocks:9}{said:>7}{gouge:10.4f}{uncut:10.4f}"


def measure(kind: str, face: str, text: str, *, references: bool) -> None:
    parts, true = letters(text, face), letters(text, face, 0.0002)
    segments = sum(shapely.count_coordinates(part) - 1 for part in parts)
    operation = engraving(parts)
    count = len(shapes(operation.grooves))
    print(f"{kind} ({face}), {len(text)} characters, {count} polygons, {segments} segments: {text!r}")
    print(f"  {'':34}{'s':>8}{'blocks':>9}{'lifts':>7}{'gouge':>10}{'uncut':>10}")
    forget()
    start = time.process_time()
    axis = raw_axis(parts)
    print(row("raw: medial axis", time.process_time() - start, axis, true, None))
    seconds, clock, toolpath = timed(operation)
    runs = widths(toolpath, THICKNESS_MM)
    print(row("emitted", seconds, [as_written(run) for run in runs], true, len(toolpath.cuts)))
    print(f"  {'on the clock':34}{clock:8.3f}")
    again, _, _ = timed(operation, cold=False)
    print(f"  {'emitted, every letter met before':34}{again:8.3f}")
    if references:
        print(f"  {'(a) emitted, exact distance raster':34}{'':24}{raster_error_mm(runs, true):10.4f} either way")
        for name, way in (("(b) scikit-image, 0.05 mm", by_raster), ("(c) scipy, points 0.1 mm", by_samples)):
            seconds, found = way(parts)
            print(row(name, seconds, found, true, None))


def growth() -> None:
    """Ten times the letters, each copy a little larger than the last, so that none has been met before."""
    print("ten times the text, no letter twice:")
    for kind, face in FACES.items():
        parts = letters(SIGN, face)
        width = max(part.bounds[2] for part in parts) - min(part.bounds[0] for part in parts) + 20

        def copies(times: int, parts: list[Polygon] = parts, width: float = width) -> list[Polygon]:
            return [
                affinity.scale(affinity.translate(part, i * width, 0), *[1 + 1e-3 * (i * len(parts) + k)] * 2)
                for i in range(times)
                for k, part in enumerate(parts)
            ]

        once, _, _ = timed(engraving(copies(1)))
        ten, _, _ = timed(engraving(copies(10)), times=1)
        print(f"  {kind:12} {once:.3f} s, ten times {ten:.3f} s: {ten / once:.1f} times")


def main() -> None:
    for kind, face in FACES.items():
        measure(kind, face, SIGN, references="--references" in sys.argv)
        measure(kind, face, DIFFERENT, references=False)
    growth()


if __name__ == "__main__":
    main()
