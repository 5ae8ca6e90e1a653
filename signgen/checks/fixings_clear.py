"""C124: neither cutter nor collet meets a screw or a clamp."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from msgspec import Struct
from numpy.typing import NDArray

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.fixing import Fixing
from signgen.checks.places import at
from signgen.checks.tip_path import TipPath, joined, radius_above_tip
from signgen.geometry.distance import FloatArray
from signgen.messages import Message, Mm
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.tools import Tool

AIR_MM = 1.0
"""Least distance to keep, aside and above: nobody drives a screw or sets a clamp more exactly (common practice)."""

LOOK_MM = 12.0
"""What stays farther away is not measured."""


class FixingsClear:
    code = "C124"
    name = "fixings_clear"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Every move, at a feed or rapid, is measured against every screw and clamp that is named: the suggested screws of the
setup sheet (9 mm heads that stand 2 mm over the board at most), or those given with --screws and --clamps. Cutter,
shank and the collet's nut, each at its height over the tip, must stay 1 mm clear of them, aside or above.

A failure means a broken cutter and flying steel, or a board that has lost its hold.

What to do: move the screw or clamp, use lower ones, or raise the safe height (--clearance).

Least error seen: 0.02 mm, from the motions alone."""

    def run(self, case: Case) -> CheckResult:
        if not case.fixings:
            return verdict(self, [], Message("fixings_clear.no_screws_clamps_are_named"))
        findings: list[Finding] = []
        least = np.inf
        for number, program in enumerate(case.programs):
            pieces = joined([case.cuts[number], case.rapids[number]])
            # Most fixings stand equally high: what comes low beside one does so beside all.
            levels = {fixing.stands_mm: case.stock.thickness_mm + fixing.stands_mm + AIR_MM for fixing in case.fixings}
            lows = {stands: list(low_parts(pieces, program.tool, level, case)) for stands, level in levels.items()}
            for fixing in case.fixings:
                air, k = _nearest(lows[fixing.stands_mm], program.tool, fixing, levels[fixing.stands_mm])
                least = min(least, air)
                if air < AIR_MM - 1e-6:
                    findings.append(_finding(program, fixing, pieces, k, air))
        told = (
            Message("fixings_clear.nearest", least=Mm(least, 2))
            if np.isfinite(least)
            else Message("fixings_clear.nothing_comes_within_any", look=Mm(LOOK_MM))
        )
        return verdict(
            self,
            findings,
            Message("fixings_clear.screws_clamps_needed", count=len(case.fixings), told=told, air=Mm(AIR_MM)),
        )


class Low(Struct, frozen=True, kw_only=True):
    """What comes low, in parts of pieces: which piece each is part of, how far over the tip the body begins that is
    looked at, and its radius; None for the cutter itself, which is as wide as it is at each height."""

    parts: TipPath
    piece: NDArray[np.intp]
    lift_mm: float
    radius_mm: float | None


def low_parts(pieces: TipPath, tool: Tool, level_mm: float, case: Case) -> Iterator[Low]:
    """Of cutter, shank and nut, what comes down to a level."""
    nut = NUT_DIAMETER_MM[case.machine.collet_series] / 2
    for lift, radius in ((0.0, None), (tool.cutting_length_mm, tool.shank_mm / 2), (tool.stickout_mm, nut)):
        low = np.flatnonzero(pieces.low_z_mm <= level_mm - lift)
        # Parts of pieces that come so low, which all of them do: so they keep their order and number.
        yield Low(parts=pieces.where(low).below(level_mm - lift), piece=low, lift_mm=lift, radius_mm=radius)


def _nearest(lows: Sequence[Low], tool: Tool, fixing: Fixing, level_mm: float) -> tuple[float, int]:
    """How near the machine comes to a fixing while it is low, negative where it is in it; and the piece that does."""
    best, found = np.inf, -1
    for low in lows:
        widest = tool.radius_mm if low.radius_mm is None else low.radius_mm
        near = _near(low.parts, fixing, widest + LOOK_MM)
        own, piece = low.parts.where(near), low.piece[near]
        if not len(own):
            continue
        reach: FloatArray = np.full(len(own), widest)
        if low.radius_mm is None:
            # A cone or ball is as wide as it is at the fixing's top, or below it.
            reach = radius_above_tip(tool, np.maximum(level_mm - own.low_z_mm, 0.0))
        lines = shapely.linestrings(np.stack([own.start_mm[:, :2], own.end_mm[:, :2]], axis=1))
        above = own.low_z_mm + low.lift_mm - (level_mm - AIR_MM)
        air = np.maximum(shapely.distance(lines, fixing.area) - reach, above)
        k = int(air.argmin())
        if air[k] < best:
            best, found = float(air[k]), int(piece[k])
    return best, found


def _near(pieces: TipPath, fixing: Fixing, reach_mm: float) -> NDArray[np.intp]:
    """Those whose bounds come within a distance of a fixing's."""
    x0, y0, x1, y1 = fixing.area.bounds
    low = np.minimum(pieces.start_mm[:, :2], pieces.end_mm[:, :2]) - reach_mm
    high = np.maximum(pieces.start_mm[:, :2], pieces.end_mm[:, :2]) + reach_mm
    return np.flatnonzero((low[:, 0] <= x1) & (high[:, 0] >= x0) & (low[:, 1] <= y1) & (high[:, 1] >= y0))


def _finding(program: ProgramUnderTest, fixing: Fixing, pieces: TipPath, k: int, air: float) -> Finding:
    place = (float(pieces.end_mm[k, 0]), float(pieces.end_mm[k, 1]))
    centre = fixing.area.representative_point()
    return Finding(
        message=Message(
            "fixings_clear.comes_within" if air > 0 else "fixings_clear.runs_into",
            tool=program.tool.name,
            air=Mm(abs(air), 2),
            fixing=fixing.name,
            place=at(*place),
        ),
        file=program.file,
        line=int(pieces.line[k]),
        place_mm=(float(centre.x), float(centre.y)),
        remedy=Message("fixings_clear.move_use_lower_one_raise"),
    )
