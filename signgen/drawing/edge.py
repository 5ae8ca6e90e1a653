"""The sign's edge as a round cutter can make it: inside corners get the cutter's radius."""

from __future__ import annotations

import math

import shapely
from shapely.geometry import Polygon

from signgen.geometry.offsets import area_of, inward, outward, polygons
from signgen.shop.tools import STOUTEST_MM
from signgen.spec.sign_spec import SignSpec
from signgen.tolerances import CHECK_MM

ROOM_RATIO = 1.02
"""How much rounder than the cutter an inside corner is drawn: it then rolls through instead of stopping dead."""

SEAM_MM = 1e-6
"""Far below what is cut: closes the seams between the outline and what fills its corners."""


def edge_of(spec: SignSpec) -> tuple[Polygon, tuple[str, ...]]:
    """The border's outline with the wood that the edge's cutter leaves in its inside corners, and a warning when
    there is so much of it that a check would see it.

    A cutter of radius R that runs outside an outline leaves the outline grown by R and shrunk by R again. Source:
    mathematical morphology's closing; for one corner the gap is R (1 / sin(a / 2) - 1), check-values 15.3.
    """
    chord = spec.tolerances.chord_mm
    outline = spec.border.outline(spec.width_mm, spec.height_mm, chord)
    cutter = edge_cutter_mm(spec)
    radius = ROOM_RATIO * cutter / 2
    if not cutter or outline.convex_hull.area - outline.area <= SEAM_MM:
        return outline, ()
    reached = inward(area_of(outward(outline, radius, chord)), radius, chord)
    fill = [
        part
        for part in polygons(shapely.difference(area_of(reached), outline))
        if not part.buffer(-2 * chord, quad_segs=1).is_empty
    ]
    if not fill:
        return outline, ()
    whole = shapely.union_all([outline, *(part.buffer(SEAM_MM, join_style="mitre") for part in fill)])
    (rounded,) = polygons(Polygon(polygons(whole)[0].exterior))
    return rounded, _warnings(rounded, fill, cutter)


def edge_cutter_mm(spec: SignSpec) -> float:
    """Diameter of the thickest end mill that the edge may be cut with: the one named, or the stoutest that the planner
    may take. 0 when there is none, which the planner will say."""
    if spec.end_mill is not None:
        return spec.end_mill.diameter_mm
    reach = spec.thickness_mm + spec.breakthrough_mm
    offered = (tool for tool in spec.shop.tools if tool.kind == "end-mill" and not tool.only_named)
    mills = (tool for tool in offered if tool.cutting_length_mm >= reach)
    return max((tool.diameter_mm for tool in mills if tool.diameter_mm <= STOUTEST_MM), default=0.0)


def _warnings(edge: Polygon, fill: list[Polygon], cutter_mm: float) -> tuple[str, ...]:
    """A sentence when somebody could see or measure the difference."""
    depths = [_depth_mm(part, edge) for part in fill]
    count = sum(depth > CHECK_MM for depth in depths)
    if not count:
        return ()
    them = "one inside corner" if count == 1 else f"{count} inside corners"
    return (
        f"The {cutter_mm:g} mm cutter leaves {them} of the edge round, with up to "
        f"{math.ceil(max(depths) * 100) / 100:g} mm of wood more than asked for. A thinner end-mill leaves less.",
    )


def _depth_mm(part: Polygon, edge: Polygon) -> float:
    """How deep the wood is that fills a corner: from the bottom of the corner to the drawn edge."""
    return float(shapely.distance(edge.exterior, shapely.points(shapely.get_coordinates(part.exterior))).max())
