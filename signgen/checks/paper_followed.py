"""C161: who follows the setup sheet to the letter gets the sign that was drawn."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from msgspec.structs import replace
from shapely.geometry import Polygon, box

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.cutter_reach import CutterReach
from signgen.checks.fixing import Fixing, screws_at
from signgen.checks.fixings_clear import AIR_MM, FixingsClear, low_parts
from signgen.checks.operator import SAME_Z_MM, Followed, follow, moved_zeros
from signgen.checks.places import at
from signgen.checks.rapids_clear import CLEARANCE_MM
from signgen.checks.trials_clear import running
from signgen.checks.way import joined
from signgen.instructions import Holding, SetUp, Step
from signgen.replay.measure import extents
from signgen.shop.collets import SERIES, collet_for
from signgen.shop.stock import HEAD_STANDS_MM, SCREW_HEAD_MM
from signgen.tolerances import CHECK_MM

STATED_MM = 0.06
"""Printed figures are rounded to a tenth at the coarsest."""

SEEN_MM = 0.05
"""A board that differs by less in height does not differ (as C108 and C109 see)."""

CLAMPS_REACH_MM = 60.0
"""How far beyond the board a clamp's body stands (common practice)."""

SCREW_GRIP_MM = 8.0
"""Of a screw in the spoilboard: twice its thickness at the least (common practice)."""

METAL_AIR_MM = 0.5

HAIR_MM = 1e-6

LEAST_GRIP_RATIO = 0.66
"""Two thirds of the collet's length (from memory)."""

SAMPLED_RATIO = 0.75
"""Bites are looked at in places, and only those that last count (`bites.STRETCH`): of a point that falls and rises they
show a little less than its depth."""

REMEDY = "Make the sign again, and print its sheet anew."


class PaperFollowed:
    code = "C161"
    name = "paper_followed"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
What the setup sheet tells a person to do, done to the letter on a virtual machine: the board is laid, screws and clamps
are put where the sheet has them, zero is set, each cutter is fitted as far out as told and touched off, the outline and
the air cuts are run, then the files in the sheet's order, with pauses and changes where the sheet has them. The head is
parked somewhere, and cutters are as long as they please. The same cuts must come of it that were judged, nothing be
hit, and every figure that is printed (speeds, feeds, deepest Z, passes, collets, lengths of screws, how deep cuts go
below the board) hold.

A failure means a sheet that would lead somebody astray: the wrong cutter, a zero off by a cutter's length, a screw in
the way.

What to do: make the sign again and print its sheet anew.

Least error seen: 0.006 mm in Z, 0.06 mm in X and Y, 0.05 mm in what is left of the board."""

    def run(self, case: Case) -> CheckResult:
        told = case.told
        if told is None:
            return verdict(self, [], "no setup sheet says what to do")
        findings = [
            *_board(case, told),
            *_steps(case, told),
            *_below(case, told),
            *_holding(case, told),
            *_turned(case, told),
        ]
        # Positions are typed in the texts' own unit.
        inches = any("\nG17 G20 " in program.text or "G20" in program.text[:4000] for program in case.programs)
        followed = follow(case, told, inches)
        findings += _zeros(case, told, followed)
        findings += _tried(case, followed)
        findings += _outcome(case, told, followed)
        findings += _hit(case, told, followed)
        count = len(told.steps)
        shown = f", {told.outline} first" if told.outline else ""
        return verdict(self, findings, f"{count} steps followed from {told.datum.corner} on{shown}")


def _said(what: str, file: str = "", place: tuple[float, float] | None = None) -> Finding:
    return Finding(message=f"Who follows the sheet: {what}.", file=file, place_mm=place, remedy=REMEDY)


def _board(case: Case, told: SetUp) -> Iterator[Finding]:
    stock = case.stock
    for name, said, is_so in (
        ("wide", told.board.width_mm, stock.width_mm),
        ("deep from front to back", told.board.height_mm, stock.height_mm),
        ("thick", told.board.thickness_mm, stock.thickness_mm),
    ):
        if abs(said - is_so) > (STATED_MM if name != "thick" else 0.006):
            yield _said(f"the board is said to be {said:g} mm {name}, the programs are for {is_so:g} mm")
    if told.board.face_up != (case.face is None):
        yield _said(f"the board lies face {'up' if told.board.face_up else 'down'}, the wrong way round")
    if told.outline not in {program.file for program in case.outlines} and case.outlines:
        yield _said(f"{told.outline} shows the place, and there is no such program")


def _steps(case: Case, told: SetUp) -> Iterator[Finding]:
    """Every figure of the steps against the cutters and the programs themselves."""
    parts: dict[str, int] = {}
    for step in told.steps:
        parts[step.file] = parts.get(step.file, -1) + 1
        own = [k for k, program in enumerate(case.programs) if program.file == step.file]
        if parts[step.file] >= len(own):
            continue
        k = own[parts[step.file]]
        for what in (*_cutter(case, step, k), *_figures(case, step, k)):
            yield _said(what, step.file)


def _cutter(case: Case, step: Step, k: int) -> Iterator[str]:
    said, tool = step.cutter, case.programs[k].tool
    if said.name != tool.name:
        yield f"{said.name} is fitted for {step.file}, which is for {tool.name}"
        return
    figures = (
        ("diameter", said.diameter_mm, tool.diameter_mm),
        ("flat tip", said.tip_mm, tool.tip_mm),
        ("shank", said.shank_mm, tool.shank_mm),
        ("angle", said.angle_deg or 0.0, tool.angle_deg or 0.0),
    )
    for name, value, is_so in figures:
        if abs(value - is_so) > 1e-4:
            yield f"the {name} of {tool.name} is said to be {value:g}, and is {is_so:g}"
    collet = collet_for(tool.shank_mm, case.machine.collet_series)
    if collet is None or collet.label != said.collet:
        yield f"collet {said.collet} does not hold a shank of {tool.shank_mm:g} mm"
    if said.grip_mm < SERIES[case.machine.collet_series].length_mm * LEAST_GRIP_RATIO - STATED_MM:
        yield f"{said.grip_mm:g} mm of shank are too little for the collet"


def _figures(case: Case, step: Step, k: int) -> Iterator[str]:
    program, cuts = case.programs[k], case.cuts[k]
    motions = program.replay.motions
    extent = extents(motions)
    if extent is None or not len(cuts):
        return
    if abs(extent.z_mm[0] - step.lowest_z_mm) > 0.006:
        yield f"{step.file} is said to go down to Z{step.lowest_z_mm:g}, and goes to Z{extent.z_mm[0]:g}"
    feeding = motions.feed_mm_per_min > 0
    speeds = np.unique(np.abs(motions.spindle_rpm[feeding]))
    if len(speeds) and abs(float(speeds.max()) - step.spindle_rpm) > 1:
        yield f"{step.file} is said to turn at {step.spindle_rpm:g} rpm, and turns at {speeds.max():g}"
    feeds = motions.feed_mm_per_min[feeding]
    fastest = max(step.feed_mm_per_min, step.fastest_mm_per_min)
    if len(feeds) and float(feeds.max()) > fastest + 1:
        yield f"{step.file} is said to feed at {fastest:g} mm/min at the most, and feeds at {feeds.max():g}"
    upright = feeding & np.all(motions.start_mm[:, :2] == motions.end_mm[:, :2], axis=1)
    down = upright & (motions.end_mm[:, 2] < motions.start_mm[:, 2])
    down &= motions.end_mm[:, 2] + case.zero.z_mm < case.stock.thickness_mm - CHECK_MM
    slow = motions.feed_mm_per_min[down]
    if len(slow) and float(slow.min()) > step.plunge_mm_per_min + 1:
        yield f"{step.file} is said to plunge at {step.plunge_mm_per_min:g} mm/min, and does so at {slow.min():g}"
    deepest = float(case.bites[k].depth_mm.max(initial=0.0))
    if not deepest - SEEN_MM <= step.pass_mm <= deepest / SAMPLED_RATIO + SEEN_MM:
        yield f"{step.file} is said to take {step.pass_mm:g} mm at once, and takes {deepest:.2f}"
    deep = case.stock.thickness_mm - case.zero.z_mm - extent.z_mm[0]
    if step.passes and not 0.6 * deep <= step.passes * max(deepest, 1e-9) <= 1.7 * deep + step.pass_mm:
        yield f"{step.file} is said to cut in {step.passes} passes, which do not make {deep:.2f} mm"


def _below(case: Case, told: SetUp) -> Iterator[Finding]:
    lows = [float(cuts.low_z_mm.min()) for cuts in case.cuts if len(cuts)]
    deep = max(0.0, -min(lows, default=0.0))
    if told.into_spoilboard_mm < deep - 0.006:
        yield _said(f"cuts are said to go {told.into_spoilboard_mm:g} mm into the spoilboard, and go {deep:.2f}")
    if told.metal_free_mm < deep + METAL_AIR_MM:
        yield _said(f"metal may lie {told.metal_free_mm:g} mm below the board, and cuts go {deep:.2f} mm below it")


def _holding(case: Case, told: SetUp) -> Iterator[Finding]:
    held = told.holding
    if held.screws_mm and held.screw_mm < case.stock.thickness_mm + SCREW_GRIP_MM:
        yield _said(f"screws of {held.screw_mm:g} mm do not hold a board of {case.stock.thickness_mm:g} mm")
    left, front, right, back = case.stock.bounds_mm
    for x, y in held.screws_mm:
        place = (x + case.zero.x_mm, y + case.zero.y_mm)
        if not (left < place[0] < right and front < place[1] < back):
            yield _said(f"the screw at X{x:g} Y{y:g} misses the board", place=place)


def _turned(case: Case, told: SetUp) -> Iterator[Finding]:
    """The back comes first, is measured from the same edges, and has the same holes for screws."""
    face = case.told_of_face
    if face is None:
        return
    if told.number >= face.number:
        yield _said("the face is cut before the back")
    off = max(abs(told.datum.x_mm - face.datum.x_mm), abs(told.datum.y_mm - face.datum.y_mm))
    if off > STATED_MM or told.datum.corner == face.datum.corner:
        yield _said(f"back and face are measured from different places, {off:.2f} mm apart")
    theirs = {(round(-x, 3), round(y, 3)) for x, y in face.holding.screws_mm}
    if {(round(x, 3), round(y, 3)) for x, y in told.holding.screws_mm} != theirs:
        yield _said("the screws of the face do not go into the holes of the back")


def _zeros(case: Case, told: SetUp, followed: Followed) -> Iterator[Finding]:
    for fault in followed.faults:
        file = told.steps[fault.step].file if fault.step >= 0 else ""
        yield _said(f"at step {fault.step + 1}, {fault.what}", file)
    for ran, (dx, dy, dz) in moved_zeros(case, followed):
        program = case.programs[ran.program]
        upright = f"{abs(dz):.2f} mm too {'high' if dz > 0 else 'low'}"
        how = upright if abs(dz) > SAME_Z_MM else f"{dx:.2f}, {dy:.2f} mm aside"
        yield _said(f"{program.file} runs {how}", program.file)
    order = [ran.program for ran in followed.ran]
    if order != sorted(order):
        names = ", ".join(case.programs[k].file for k in order)
        yield _said(f"the programs run in the order {names}")
    for ran in followed.ran:
        program = case.programs[ran.program]
        if ran.tool.name != program.tool.name:
            yield _said(f"{program.file} runs with {ran.tool.name}", program.file)


def _tried(case: Case, followed: Followed) -> Iterator[Finding]:
    """What is run before the cut stays over the board, and over nothing but the board."""
    left, front, right, back = case.stock.bounds_mm
    for tried in followed.tried:
        file, extent = tried.program.file, extents(tried.program.replay.motions)
        if tried.tool.name != tried.program.tool.name:
            yield _said(f"{file} runs with {tried.tool.name}", file)
        if extent is None:
            continue
        air = extent.z_mm[0] + tried.zero.z_mm - case.stock.thickness_mm
        if air < CLEARANCE_MM - SAME_Z_MM:
            yield _said(f"{file}, which is to touch nothing, comes {air:.2f} mm over the board", file)
        x, y = (np.array(way) + by for way, by in ((extent.x_mm, tried.zero.x_mm), (extent.y_mm, tried.zero.y_mm)))
        beside = max(left - x[0], x[1] - right, front - y[0], y[1] - back)
        if tried.program in case.outlines and beside > STATED_MM:
            yield _said(f"{file} shows a place {beside:.2f} mm beside the board", file)


def _outcome(case: Case, told: SetUp, followed: Followed) -> Iterator[Finding]:
    """What is left of the board where it is not the very same that the judge has looked at."""
    if followed.last is case.boards[-1]:
        return
    off = np.abs(followed.last.z_mm.astype(np.float64) - case.boards[-1].z_mm)
    worst = np.unravel_index(int(off.argmax()), off.shape)
    if off[worst] > SEEN_MM:
        place = (float(followed.last.x_mm[worst[1]]), float(followed.last.y_mm[worst[0]]))
        yield _said(f"the board comes out {off[worst]:.2f} mm otherwise at {at(*place)}", place=place)


def _hit(case: Case, told: SetUp, followed: Followed) -> Iterator[Finding]:
    """Screws and clamps as told, and cutters as far out of their collets as told: what is the same as judged is not
    tried again."""
    tools = {ran.program: ran.tool for ran in followed.ran}
    programs = tuple(replace(program, tool=tools.get(k, program.tool)) for k, program in enumerate(case.programs))
    really = replace(case, programs=programs)
    if programs != case.programs:
        yield from (_said(finding.message.rstrip("."), finding.file) for finding in CutterReach().run(really).findings)
    yield from _fixings_hit(case, told, really, same=programs == case.programs)
    if followed.tried:
        trials = tuple(replace(tried.program, tool=tried.tool) for tried in followed.tried)
        same = all(tried.tool == tried.program.tool for tried in followed.tried)
        yield from _fixings_hit(case, told, running(case, trials), same=same)


def _fixings_hit(case: Case, told: SetUp, really: Case, *, same: bool) -> Iterator[Finding]:
    """Screws and clamps in the way of programs as they really run."""
    fixings: list[Fixing] = []
    screws = _screws(told.holding, case)
    if not same or {_where(fixing) for fixing in screws} != {_where(fixing) for fixing in case.fixings}:
        fixings += screws
    if told.holding.clamp_line_mm and not _stays_inside(really, told.holding):
        fixings.append(_clamps(told.holding, case))
    if fixings:
        found = FixingsClear().run(replace(really, fixings=tuple(fixings))).findings
        yield from (_said(finding.message.rstrip("."), finding.file, finding.place_mm) for finding in found)


def _where(fixing: Fixing) -> tuple[float, ...]:
    return tuple(round(value, 3) for value in (*fixing.area.bounds, fixing.stands_mm))


def _screws(held: Holding, case: Case) -> tuple[Fixing, ...]:
    """Heads as wide and high as told."""
    wider = (held.head_mm - SCREW_HEAD_MM) / 2
    plain = screws_at(held.screws_mm, case.zero)
    if wider == 0 and held.stands_mm == HEAD_STANDS_MM:
        return plain
    return tuple(replace(screw, area=screw.area.buffer(wider), stands_mm=held.stands_mm) for screw in plain)


def _stays_inside(case: Case, held: Holding) -> bool:
    """Whether cutter, shank and nut surely stay inside the line, clear of it, wherever they come as low as a clamp: by
    their distance from the straights of the line, which has no bays. What is not sure is measured."""
    line = np.array(held.clamp_line_mm) + (case.zero.x_mm, case.zero.y_mm)
    along = np.roll(line, -1, axis=0) - line
    length = np.hypot(along[:, 0], along[:, 1])
    turned = np.sign((line[:, 0] * along[:, 1] - line[:, 1] * along[:, 0]).sum())
    inwards = np.stack([-along[:, 1], along[:, 0]], axis=1) * turned / length[:, None]
    reach = (line * inwards).sum(axis=1)
    level = case.stock.thickness_mm + held.clamp_stands_mm + AIR_MM - HAIR_MM
    for number, program in enumerate(case.programs):
        for low in low_parts(joined([case.cuts[number], case.rapids[number]]), program.tool, level, case):
            if not len(low.parts):
                continue
            radius = max(program.tool.radius_mm, low.radius_mm or 0.0)
            ends = np.concatenate([low.parts.start_mm[:, :2], low.parts.end_mm[:, :2]])
            if float((ends @ inwards.T - reach).min()) < radius + AIR_MM:
                return False
    return True


def _clamps(held: Holding, case: Case) -> Fixing:
    """Clamps everywhere at once that the sheet allows them."""
    line = Polygon([(x + case.zero.x_mm, y + case.zero.y_mm) for x, y in held.clamp_line_mm])
    outside = box(*case.stock.bounds_mm).buffer(CLAMPS_REACH_MM, join_style="mitre").difference(line)
    return Fixing(name="a clamp outside the dashed line", area=outside, stands_mm=held.clamp_stands_mm)
