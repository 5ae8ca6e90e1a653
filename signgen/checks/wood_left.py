"""C115: enough wood is left under the engraving."""

from __future__ import annotations

import numpy as np
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.ideal import RECESS
from signgen.checks.places import at, deepest_line
from signgen.features.groove import Groove
from signgen.features.recess import Recess
from signgen.geometry.distance import IntArray
from signgen.geometry.raster import cells_inside
from signgen.tolerances import CHECK_MM

LEAST_RATIO = 0.25
LEAST_MM = 2.0
"""Wood under a groove, as a share of the board and in any case: less warps, shows through or breaks (common
practice)."""


class WoodLeft:
    code = "C115"
    name = "wood_left"
    severity: Severity = "warning"
    needs_drawing = True
    explanation = """\
How much of the board is left under the deepest place of each letter and floor, on the virtual board. Less than a
quarter of the thickness, or less than 2 mm, draws a warning (common practice): the sign may warp, crack along the line
or show it from behind. Through cuts (holes, the edge, letters that are cut through) do not count.

What to do: limit the depth (--depth), take a wider V-bit or a thicker board.

Least difference seen: 0.01 mm, in patches of one cell."""

    def run(self, case: Case) -> CheckResult:
        ideal, thickness = case.ideal, case.stock.thickness_mm
        places = [
            (groove.name, ideal.groove_cell[ideal.groove_of == k]) for k, groove in enumerate(case.drawing.of(Groove))
        ]
        places += [
            (recess.name, _floor_cells(case, recess))
            for recess in case.drawing.of(Recess)
            if not case.drawing.is_through(recess)
        ]
        places = [(name, cells) for name, cells in places if len(cells)]
        if not places:
            return verdict(self, [], "no letters or ornament drawn that do not go through")
        least = max(LEAST_MM, LEAST_RATIO * thickness)
        findings, all_left = [], []
        for name, cells in places:
            left = case.boards[-1].z_mm.ravel()[cells].astype(np.float64)
            all_left.append(float(left.min()))
            if left.min() >= least - 0.01:
                continue
            k = int(left.argmin())
            x, y = (float(value) for value in ideal.grid.centres_mm(cells[k : k + 1])[0])
            file, line = deepest_line(case, x, y)
            findings.append(
                Finding(
                    message=f"{name}: only {left[k]:.2f} mm of the {thickness:g} mm board "
                    f"is left at {at(x, y)}; {least:.1f} mm is advised.",
                    file=file,
                    line=line,
                    place_mm=(x, y),
                    remedy="Limit the depth (--depth), take a wider V-bit or a thicker board.",
                )
            )
        return verdict(self, findings, f"least wood under a letter {min(all_left):.2f} mm, {least:.1f} mm advised")


def _floor_cells(case: Case, recess: Recess) -> IntArray:
    """Cells of a floor clear of its wall; holes, the edge and letters that are cut through lie elsewhere."""
    area: BaseGeometry = recess.area.buffer(-CHECK_MM)
    for other in case.drawing.of(Recess):
        if case.drawing.is_through(other):
            area = area.difference(other.area.buffer(CHECK_MM))
    cells = cells_inside(area, case.ideal.grid) if isinstance(area, Polygon | MultiPolygon) else np.zeros(0, np.intp)
    own: IntArray = cells[case.ideal.zone[cells] == RECESS]
    return own
