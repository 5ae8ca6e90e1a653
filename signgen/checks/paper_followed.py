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
from signgen.checks.tip_path import joined
from signgen.checks.trials_clear import running
from signgen.instructions import Holding, SetUp, Step
from signgen.messages import Message, Mm, MmPerMin, Num, Sentence, Typed
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
"""Engagement is looked at in places, and only those that last count (`engagement.STRETCH`): of a point that falls and
rises it shows a little less than the depth."""

REMEDY = Message("checks.make_sign_again_print_sheet")


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
            return verdict(self, [], Message("paper_followed.no_setup_sheet_says_what"))
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
        corner = Message(f"board.corner.{told.datum.corner.replace(' ', '_')}")
        followed_all = Message("paper_followed.steps_followed", count=count, corner=corner)
        if told.outline:
            shown_by = told.outline
            followed_all = Message("paper_followed.outline_first", followed=followed_all, outline=shown_by)
        return verdict(self, findings, followed_all)


def _said(what: Sentence, file: str = "", place: tuple[float, float] | None = None) -> Finding:
    return Finding(
        message=Message("paper_followed.who_follows_sheet", what=what), file=file, place_mm=place, remedy=REMEDY
    )


def _found(finding: Finding) -> Finding:
    """What another check says of the machine as the sheet sets it up."""
    return replace(finding, message=Message("paper_followed.then", what=finding.message), remedy=REMEDY, line=None)


def _board(case: Case, told: SetUp) -> Iterator[Finding]:
    stock = case.stock
    for name, said, is_so in (
        ("width", told.board.width_mm, stock.width_mm),
        ("height", told.board.height_mm, stock.height_mm),
        ("thickness", told.board.thickness_mm, stock.thickness_mm),
    ):
        if abs(said - is_so) > (STATED_MM if name != "thickness" else 0.006):
            yield _said(Message(f"paper_followed.board.{name}", said=Mm(said), is_so=Mm(is_so)))
    if told.board.face_up != (case.face is None):
        yield _said(Message("paper_followed.lies_face_up" if told.board.face_up else "paper_followed.lies_face_down"))
    if told.outline not in {program.file for program in case.outlines} and case.outlines:
        yield _said(Message("paper_followed.shows_place_there_no_such", outline=told.outline))


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


def _cutter(case: Case, step: Step, k: int) -> Iterator[Message]:
    said, tool = step.cutter, case.programs[k].tool
    if said.name != tool.name:
        yield Message("paper_followed.fitted_which", fitted=said.name, file=step.file, tool=tool.name)
        return
    figures = (
        ("diameter_mm", said.diameter_mm, tool.diameter_mm),
        ("tip_mm", said.tip_mm, tool.tip_mm),
        ("shank_mm", said.shank_mm, tool.shank_mm),
        ("angle_deg", said.angle_deg or 0.0, tool.angle_deg or 0.0),
    )
    for name, value, is_so in figures:
        if abs(value - is_so) > 1e-4:
            yield Message(f"paper_followed.of_cutter.{name}", tool=tool.name, value=Num(value), is_so=Num(is_so))
    collet = collet_for(tool.shank_mm, case.machine.collet_series)
    if collet is None or collet.label != said.collet:
        yield Message("paper_followed.collet_does_not_hold_shank", collet=said.collet, shank=Mm(tool.shank_mm))
    if said.grip_mm < SERIES[case.machine.collet_series].length_mm * LEAST_GRIP_RATIO - STATED_MM:
        yield Message("paper_followed.shank_are_too_little_collet", grip=Mm(said.grip_mm))


def _figures(case: Case, step: Step, k: int) -> Iterator[Message]:
    program, cuts = case.programs[k], case.cuts[k]
    motions = program.replay.motions
    extent = extents(motions)
    if extent is None or not len(cuts):
        return
    if abs(extent.z_mm[0] - step.lowest_z_mm) > 0.006:
        yield Message(
            "paper_followed.said_go_down_z_goes",
            file=step.file,
            said=Typed(step.lowest_z_mm),
            is_so=Typed(extent.z_mm[0]),
        )
    feeding = motions.feed_mm_per_min > 0
    speeds = np.unique(np.abs(motions.spindle_rpm[feeding]))
    if len(speeds) and abs(float(speeds.max()) - step.spindle_rpm) > 1:
        yield Message(
            "paper_followed.said_turn_rpm_turns", file=step.file, said=Num(step.spindle_rpm), is_so=Num(speeds.max())
        )
    feeds = motions.feed_mm_per_min[feeding]
    fastest = max(step.feed_mm_per_min, step.fastest_mm_per_min)
    if len(feeds) and float(feeds.max()) > fastest + 1:
        yield Message(
            "paper_followed.said_feed_most_feeds", file=step.file, said=MmPerMin(fastest), is_so=MmPerMin(feeds.max())
        )
    upright = feeding & np.all(motions.start_mm[:, :2] == motions.end_mm[:, :2], axis=1)
    down = upright & (motions.end_mm[:, 2] < motions.start_mm[:, 2])
    down &= motions.end_mm[:, 2] + case.zero.z_mm < case.stock.thickness_mm - CHECK_MM
    slow = motions.feed_mm_per_min[down]
    if len(slow) and float(slow.min()) > step.plunge_mm_per_min + 1:
        yield Message(
            "paper_followed.said_plunge_does_so",
            file=step.file,
            said=MmPerMin(step.plunge_mm_per_min),
            is_so=MmPerMin(slow.min()),
        )
    deepest = float(case.engagement[k].depth_mm.max(initial=0.0))
    if not deepest - SEEN_MM <= step.pass_mm <= deepest / SAMPLED_RATIO + SEEN_MM:
        yield Message(
            "paper_followed.said_take_once_takes", file=step.file, said=Mm(step.pass_mm), is_so=Mm(deepest, 2)
        )
    deep = case.stock.thickness_mm - case.zero.z_mm - extent.z_mm[0]
    if step.passes and not 0.6 * deep <= step.passes * max(deepest, 1e-9) <= 1.7 * deep + step.pass_mm:
        yield Message("paper_followed.said_cut_in_passes_which", file=step.file, passes=step.passes, deep=Mm(deep, 2))


def _below(case: Case, told: SetUp) -> Iterator[Finding]:
    lows = [float(cuts.low_z_mm.min()) for cuts in case.cuts if len(cuts)]
    deep = max(0.0, -min(lows, default=0.0))
    if told.into_spoilboard_mm < deep - 0.006:
        yield _said(
            Message("paper_followed.cuts_are_said_go_into", said=Mm(told.into_spoilboard_mm), is_so=Mm(deep, 2))
        )
    if told.metal_free_mm < deep + METAL_AIR_MM:
        yield _said(
            Message("paper_followed.metal_may_lie_below_board", metal_free=Mm(told.metal_free_mm), deep=Mm(deep, 2))
        )


def _holding(case: Case, told: SetUp) -> Iterator[Finding]:
    held = told.holding
    if held.screws_mm and held.screw_mm < case.stock.thickness_mm + SCREW_GRIP_MM:
        yield _said(
            Message(
                "paper_followed.screws_do_not_hold_board",
                screw=Mm(held.screw_mm),
                thickness=Mm(case.stock.thickness_mm),
            )
        )
    left, front, right, back = case.stock.bounds_mm
    for x, y in held.screws_mm:
        place = (x + case.zero.x_mm, y + case.zero.y_mm)
        if not (left < place[0] < right and front < place[1] < back):
            yield _said(Message("paper_followed.screw_x_y_misses_board", x=Typed(x), y=Typed(y)), place=place)


def _turned(case: Case, told: SetUp) -> Iterator[Finding]:
    """The back comes first, is measured from the same edges, and has the same holes for screws."""
    face = case.told_of_face
    if face is None:
        return
    if told.number >= face.number:
        yield _said(Message("paper_followed.face_cut_before_back"))
    off = max(abs(told.datum.x_mm - face.datum.x_mm), abs(told.datum.y_mm - face.datum.y_mm))
    if off > STATED_MM or told.datum.corner == face.datum.corner:
        yield _said(Message("paper_followed.back_face_are_measured_from", off=Mm(off, 2)))
    theirs = {(round(-x, 3), round(y, 3)) for x, y in face.holding.screws_mm}
    if {(round(x, 3), round(y, 3)) for x, y in told.holding.screws_mm} != theirs:
        yield _said(Message("paper_followed.screws_face_do_not_go"))


def _zeros(case: Case, told: SetUp, followed: Followed) -> Iterator[Finding]:
    for fault in followed.faults:
        file = told.steps[fault.step].file if fault.step >= 0 else ""
        yield _said(Message("paper_followed.step", step=fault.step + 1, what=fault.what), file)
    for ran, (dx, dy, dz) in moved_zeros(case, followed):
        program = case.programs[ran.program]
        upright = Message("paper_followed.too_high" if dz > 0 else "paper_followed.too_low", off=Mm(abs(dz), 2))
        how = upright if abs(dz) > SAME_Z_MM else Message("paper_followed.aside", x=Mm(dx, 2), y=Mm(dy, 2))
        yield _said(Message("paper_followed.runs", file=program.file, how=how), program.file)
    order = [ran.program for ran in followed.ran]
    if order != sorted(order):
        names = tuple(case.programs[k].file for k in order)
        yield _said(Message("paper_followed.programs_run_in_order", names=names))
    for ran in followed.ran:
        program = case.programs[ran.program]
        if ran.tool.name != program.tool.name:
            yield _said(Message("paper_followed.runs_with", file=program.file, tool=ran.tool.name), program.file)


def _tried(case: Case, followed: Followed) -> Iterator[Finding]:
    """What is run before the cut stays over the board, and over nothing but the board."""
    left, front, right, back = case.stock.bounds_mm
    for tried in followed.tried:
        file, extent = tried.program.file, extents(tried.program.replay.motions)
        if tried.tool.name != tried.program.tool.name:
            yield _said(Message("paper_followed.runs_with", file=file, tool=tried.tool.name), file)
        if extent is None:
            continue
        air = extent.z_mm[0] + tried.zero.z_mm - case.stock.thickness_mm
        if air < CLEARANCE_MM - SAME_Z_MM:
            yield _said(Message("paper_followed.trial_comes_near", file=file, air=Mm(air, 2)), file)
        x, y = (np.array(way) + by for way, by in ((extent.x_mm, tried.zero.x_mm), (extent.y_mm, tried.zero.y_mm)))
        beside = max(left - x[0], x[1] - right, front - y[0], y[1] - back)
        if tried.program in case.outlines and beside > STATED_MM:
            yield _said(Message("paper_followed.trial_beside", file=file, beside=Mm(beside, 2)), file)


def _outcome(case: Case, told: SetUp, followed: Followed) -> Iterator[Finding]:
    """What is left of the board where it is not the very same that the judge has looked at."""
    if followed.last is case.boards[-1]:
        return
    off = np.abs(followed.last.z_mm.astype(np.float64) - case.boards[-1].z_mm)
    worst = np.unravel_index(int(off.argmax()), off.shape)
    if off[worst] > SEEN_MM:
        place = (float(followed.last.x_mm[worst[1]]), float(followed.last.y_mm[worst[0]]))
        yield _said(
            Message("paper_followed.board_comes_out_otherwise", off=Mm(off[worst], 2), place=at(*place)), place=place
        )


def _hit(case: Case, told: SetUp, followed: Followed) -> Iterator[Finding]:
    """Screws and clamps as told, and cutters as far out of their collets as told: what is the same as judged is not
    tried again."""
    tools = {ran.program: ran.tool for ran in followed.ran}
    programs = tuple(replace(program, tool=tools.get(k, program.tool)) for k, program in enumerate(case.programs))
    really = replace(case, programs=programs)
    if programs != case.programs:
        yield from (_found(finding) for finding in CutterReach().run(really).findings)
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
        yield from (_found(finding) for finding in found)


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
    return Fixing(
        name=Message("paper_followed.clamp_outside_dashed_line"), area=outside, stands_mm=held.clamp_stands_mm
    )
