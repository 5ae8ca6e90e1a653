"""C112: every tab stands, wide and high enough."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.ideal import KERF, Ideal
from signgen.checks.places import at
from signgen.checks.tip_path import Nearby
from signgen.features.tab import Tab
from signgen.geometry.distance import FloatArray, IntArray, nearest_segment
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm, Sides
from signgen.tolerances import CHECK_MM

ALONG_STEP_MM = 0.05
ACROSS = 5
"""Places looked at in a tab: along the edge, and rows of them across the cutter's way."""

TAB_SIDE_MM = 0.2
"""How much narrower than drawn a tab's cells are taken."""

REMEDY = Message("tabs_hold.make_programs_again_if_they")


class TabsHold:
    code = "C112"
    name = "tabs_hold"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
For each tab drawn: within its width along the edge, and across the whole of the cutter's way, no cutter may come
lower than the tab's height. The width that is left standing is measured from the motions, the height on the virtual
board. That the edge is cut free everywhere else is C111's matter.

A failure means that the sign may come loose while the cutter is still in it.

What to do: make the programs again; ask for other tabs (--tabs, --tab-width, --tab-height).

Least error seen: 0.05 mm in height and width."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        widths: list[float] = []
        heights: list[float] = []
        levels = {tab.height_mm - CHECK_MM for tab in case.drawing.of(Tab)}
        low = {level: [Nearby(cuts.below(level)) for cuts in case.cuts] for level in levels}
        for tab in case.drawing.of(Tab):
            width, file, line = _standing_width(case, tab, low[tab.height_mm - CHECK_MM])
            cells = tab_cells(case.ideal, tab)
            height = float(case.boards[-1].z_mm.ravel()[cells].min(initial=np.inf)) if case.boards else 0.0
            widths.append(width)
            heights.append(height)
            if width < tab.width_mm - CHECK_MM or height < tab.height_mm - CHECK_MM:
                findings.append(
                    Finding(
                        message=Message(
                            "tabs_hold.wide_height_high_lowest_place",
                            tab=tab.called,
                            place=at(tab.x_mm, tab.y_mm),
                            width=Mm(width, 2),
                            height=Mm(tab.height_mm),
                            lowest=Mm(max(height, 0.0), 2),
                            drawn=Sides((tab.width_mm, tab.height_mm)),
                        ),
                        file=file,
                        line=line,
                        place_mm=(tab.x_mm, tab.y_mm),
                        remedy=REMEDY,
                    )
                )
        if not widths:
            return verdict(self, [], Message("checks.no_tabs_drawn"))
        least = Message("tabs_hold.narrowest_lowest", width=Mm(min(widths), 2), height=Mm(max(min(heights), 0.0), 2))
        return verdict(
            self,
            findings,
            Message("tabs_hold.tabs_stand", count=len(widths) - len(findings), tabs=len(widths), least=least),
        )


def tab_cells(ideal: Ideal, tab: Tab) -> IntArray:
    """Where it must stand: outside the edge, a little narrower than drawn, for the width is measured."""
    cells = cells_inside(tab.stand(ideal.kerf_mm, TAB_SIDE_MM), ideal.grid)
    kept: IntArray = cells[ideal.zone[cells] == KERF]
    return kept


def _standing_width(case: Case, tab: Tab, nearby: list[Nearby]) -> tuple[float, str, int | None]:
    """The stretch of the edge about the tab's middle, up to twice its width, along which nothing is cut below its
    height anywhere across the cutter's way; with the line of the cut that ends it nearest to the middle."""
    along, out = np.array([tab.along_x, tab.along_y]), np.array([tab.along_y, -tab.along_x])
    middle = np.array([tab.x_mm, tab.y_mm])
    half = int(np.ceil(tab.width_mm / ALONG_STEP_MM))
    u = np.arange(-half, half + 1) * ALONG_STEP_MM
    free = np.full(len(u), np.inf)
    lines = np.full(len(u), -1, np.int64)
    programs = np.full(len(u), -1, np.intp)
    level = tab.height_mm - CHECK_MM
    for number, (program, cuts) in enumerate(zip(case.programs, nearby, strict=True)):
        v = np.linspace(0.0, program.tool.diameter_mm, ACROSS)
        places: FloatArray = (middle + u[:, None, None] * along + v[None, :, None] * out).reshape(-1, 2)
        limit = program.tool.radius_mm
        # What lies farther than the limit from every rim says nothing; a rim is at most a radius from the tip's way.
        reach = limit + program.tool.radius_mm
        low = cuts.touching(places.min(axis=0) - reach, places.max(axis=0) + reach)
        if not len(low):
            continue
        away, which = nearest_segment(places, low.plan_mm, limit, low.radii_mm(program.tool, level))
        away, which = away.reshape(len(u), ACROSS), which.reshape(len(u), ACROSS)
        nearest = away.argmin(axis=1)
        rows = np.arange(len(u))
        closer = away[rows, nearest] < free
        free = np.where(closer, away[rows, nearest], free)
        lines = np.where(closer & (which[rows, nearest] >= 0), low.line[which[rows, nearest]], lines)
        programs = np.where(closer, number, programs)
    cut = np.flatnonzero(free < -1e-3)
    left, right = cut[cut <= half], cut[cut >= half]
    # Between the last place cut and the first one free lies the side; the nearest rim says where.
    low_u = u[left[-1]] - free[left[-1]] if len(left) else u[0]
    high_u = u[right[0]] + free[right[0]] if len(right) else u[-1]
    ends = [int(k[index]) for k, index in ((left, -1), (right, 0)) if len(k)]
    nearest_end = min(ends, key=lambda k: abs(u[k]), default=None)
    file, line = "", None
    if nearest_end is not None and lines[nearest_end] >= 0:
        file, line = case.programs[int(programs[nearest_end])].file, int(lines[nearest_end])
    return max(0.0, float(high_u - low_u)), file, line
