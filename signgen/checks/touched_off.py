"""C160: every cutter is touched off on what stands there by then."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from shapely.geometry import Point, box

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.places import at
from signgen.instructions import Step, Touch
from signgen.messages import Message, Mm, Typed
from signgen.replay.heights import HeightMap, board
from signgen.shop.collets import NUT_DIAMETER_MM

AIM_MM = 1.0
"""Nobody lowers a cutter by hand nearer to its place (common practice); what lies around it must stand as well."""

SLACK_MM = 0.005
AIR_MM = 1.0
"""Least distance of cutter and nut from screws, clamps and the board (common practice)."""

REMEDY = Message("touched_off.make_sign_again_touch_no")


class TouchedOff:
    code = "C160"
    name = "touched_off"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
Where the setup sheet has Z set for each cutter, on the board as it stands by then, cut by all programs before: the
face must be whole under the cutter and 1 mm around it, or the spoilboard bare, with room for the cutter and the nut
beside the board, screws and clamps; and what is typed as Z must put the programs' zero where they have it.

A failure means a cutter set too low or too high by as much as the place has been cut: a sign cut loose, a table cut
into.

What to do: make the programs again, perhaps on a larger board.

Least error seen: 0.005 mm in height, a patch of one cell (0.1 to 0.25 mm)."""

    def run(self, case: Case) -> CheckResult:
        if case.told is None:
            return verdict(self, [], Message("touched_off.no_setup_sheet_says_where"))
        findings: list[Finding] = []
        places: dict[Message, None] = {}
        before = board(case.stock, case.ideal.grid.cell_mm)
        for number, program in enumerate(case.programs):
            step = next((step for step in case.told.steps if _is_for(step, case, number)), None)
            ways = step.sets_z if step else ()
            if step and not ways and step.begins != "changer":
                findings.append(
                    Finding(
                        message=Message("touched_off.cannot_touched_off_no_face", tool=program.tool.name),
                        file=program.file,
                        remedy=Message("touched_off.use_larger_board"),
                    )
                )
            for touch in ways:
                places[
                    Message(
                        "touched_off.x_y", on=Message(f"touch.on.{touch.on}"), x=Typed(touch.x_mm), y=Typed(touch.y_mm)
                    )
                ] = None
                for what in touching_faults(case, program, touch, before):
                    findings.append(
                        Finding(
                            message=Message(
                                "touched_off.z_on",
                                tool=program.tool.name,
                                on=Message(f"touch.on.{touch.on}"),
                                what=what,
                            ),
                            file=program.file,
                            place_mm=(touch.x_mm + case.zero.x_mm, touch.y_mm + case.zero.y_mm),
                            remedy=REMEDY,
                        )
                    )
            before = case.boards[number]
        return verdict(
            self,
            findings,
            Message(
                "touched_off.cutters", count=len(case.programs), places=tuple(places) or Message("touched_off.nowhere")
            ),
        )


def _is_for(step: Step, case: Case, number: int) -> bool:
    """Whether a step is that of a program: the same file, and as many of its cutters go before."""
    program = case.programs[number]
    before = sum(other.file == program.file for other in case.programs[:number])
    told = [other for other in case.told.steps if other.file == program.file] if case.told else []
    return step.file == program.file and told.index(step) == before


def touching_faults(case: Case, program: ProgramUnderTest, touch: Touch, before: HeightMap) -> Iterator[Message]:
    """What is wrong with a way to set Z on the board as it then stands."""
    x, y = touch.x_mm + case.zero.x_mm, touch.y_mm + case.zero.y_mm
    reaches = max(program.tool.diameter_mm, program.tool.shank_mm) / 2
    nut = NUT_DIAMETER_MM[case.machine.collet_series] / 2
    over = program.tool.stickout_mm + (case.stock.thickness_mm if touch.on == "face" else 0.0)
    lands, gap = landing_mm(case, program, touch, before)
    if lands is None:
        yield Message(
            "touched_off.not_all_on" if touch.on == "face" else "touched_off.not_clear",
            place=at(x, y),
        )
    elif gap > SLACK_MM:
        yield Message("touched_off.face_has_been_cut_deep", place=at(x, y), gap=Mm(gap, 2))
    for fixing in case.fixings:
        high = case.stock.thickness_mm + fixing.stands_mm
        radius = nut if over < high + AIR_MM else reaches
        air = float(fixing.area.distance(Point(x, y))) - radius
        if air < AIR_MM - SLACK_MM:
            yield Message("touched_off.in_way", fixing=fixing.name, place=at(x, y))
    if touch.on == "spoilboard" and over < case.stock.thickness_mm + AIR_MM:
        away = float(box(*case.stock.bounds_mm).distance(Point(x, y)))
        if away < nut + AIR_MM - SLACK_MM:
            yield Message("touched_off.nut_meets_board_cutter_stands", place=at(x, y), over=Mm(over))
    if lands is not None:
        off = _zero_off_mm(case, touch, lands)
        if abs(off) > SLACK_MM:
            yield Message("touched_off.too_high" if off > 0 else "touched_off.too_low", off=Mm(abs(off), 2))


def landing_mm(case: Case, program: ProgramUnderTest, touch: Touch, before: HeightMap) -> tuple[float | None, float]:
    """How high over the spoilboard the paper lies that the cutter comes down on, None where it meets another thing;
    and how far the lowest of what is under it lies below the face."""
    x, y = touch.x_mm + case.zero.x_mm, touch.y_mm + case.zero.y_mm
    tool = program.tool
    rim = box(*case.stock.bounds_mm)
    if touch.on == "spoilboard":
        clear = rim.distance(Point(x, y)) >= max(tool.diameter_mm, tool.shank_mm) / 2 + AIM_MM - SLACK_MM
        return (0.0 if clear else None), 0.0
    end = tool.tip_mm / 2 if tool.kind == "v-bit" else 0.0 if tool.kind in ("drill", "ball-nose") else tool.radius_mm
    if not rim.contains(Point(x, y).buffer(end + AIM_MM - SLACK_MM)):
        return None, 0.0
    under = under_mm(before, x, y, end + AIM_MM)
    # What is under its end itself decides how high it stops: the highest of it.
    stops = under_mm(before, x, y, max(end, before.cell_mm))
    return float(stops.max()), case.stock.thickness_mm - float(under.min())


def under_mm(heights: HeightMap, x: float, y: float, radius: float) -> np.ndarray:
    """Heights of the cells within a radius of a place on the board."""
    cell = heights.cell_mm
    i0, i1 = (int(np.floor((x + s * radius - heights.x0_mm) / cell)) + (s > 0) for s in (-1, 1))
    j0, j1 = (int(np.floor((y + s * radius - heights.y0_mm) / cell)) + (s > 0) for s in (-1, 1))
    i, j = np.arange(max(i0, 0), i1 + 1), np.arange(max(j0, 0), j1 + 1)
    i, j = i[i < heights.z_mm.shape[1]], j[j < heights.z_mm.shape[0]]
    dx, dy = heights.x0_mm + i * cell - x, heights.y0_mm + j * cell - y
    near = np.hypot(dx[None, :], dy[:, None]) <= radius + cell / 2
    found: np.ndarray = heights.z_mm[j[0] : j[-1] + 1, i[0] : i[-1] + 1][near]
    return found


def _zero_off_mm(case: Case, touch: Touch, lands: float) -> float:
    """How much too high the programs' Z0 comes to lie."""
    typed = touch.types_mm + (case.stock.thickness_mm if touch.plus_thickness else 0.0)
    # The tip lies on the paper when Z is typed, and Z0 as far below the tip as the figure says.
    return lands + touch.paper_mm - typed - case.zero.z_mm
