"""C140: the programs to try before the cut touch nothing, and show what will be cut."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from msgspec.structs import replace

from signgen.checks.as_stated import of_change
from signgen.checks.check import Case, Check, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.engagement import engagement_of
from signgen.checks.feeds_sane import FeedsSane
from signgen.checks.fixings_clear import FixingsClear
from signgen.checks.inside_travel import InsideTravel
from signgen.checks.legal_text import LegalText
from signgen.checks.rapids_clear import CLEARANCE_MM, RapidsClear
from signgen.checks.spindle_ready import SpindleReady
from signgen.checks.starts_and_ends import StartsAndEnds
from signgen.checks.stops_and_waits import StopsAndWaits
from signgen.checks.tip_path import COARSE_CHORD_MM, tip_path_of
from signgen.messages import Message, Mm
from signgen.replay.heights import board
from signgen.replay.measure import extents
from signgen.tolerances import CHECK_MM

REMEDY = Message("checks.make_programs_again")

SAME_MM = 0.002
"""How closely an air cut follows its program: both were rounded."""

OF_EACH: tuple[Check, ...] = (
    LegalText(),
    RapidsClear(),
    StartsAndEnds(),
    SpindleReady(),
    StopsAndWaits(),
    FeedsSane(),
    FixingsClear(),
)


class TrialsClear:
    code = "C140"
    name = "trials_clear"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The programs that are run before the cut, the outline (0-outline.nc) and those of an air cut (air-...), are read back
and judged like the others, and every one of their moves must stay 0.5 mm over the board. In the outline the spindle
must stand still throughout, and its rectangle must be the one that the cutters will cut. An air cut must be its
program, motion by motion, higher by one height and nothing else; both fit the cutters that the sheet says.

A failure means that a program which is watched from near touches the board, or shows another place than the one that
will be cut.

What to do: make the programs again; for an air cut that is too low, lift it more (--air-cut).

Least error seen: 0.0001 mm in height, 0.05 mm of the outline."""

    def run(self, case: Case) -> CheckResult:
        trials = (*case.outlines, *case.lifted)
        if not trials:
            return verdict(self, [], Message("trials_clear.there_no_outline_no_air"))
        findings = [*_as_programs(case, trials)]
        air = np.inf
        for program in trials:
            low = _low(case, program)
            air = min(air, float(low.min(initial=np.inf)))
            findings += _touching(program, low)
        shown = Message("trials_clear.no_outline")
        for program in case.lifted:
            findings += _lifted(case, program)
        for program in case.outlines:
            findings += _turning(program)
            apart, more = _shown(case, program)
            findings += more
            shown = Message("trials_clear.outline_off", apart=Mm(apart, 3))
        return verdict(
            self,
            findings,
            Message("trials_clear.tried_over_board_least", count=len(trials), air=Mm(air, 2), shown=shown),
        )


def _as_programs(case: Case, trials: tuple[ProgramUnderTest, ...]) -> Iterator[Finding]:
    """What the checks of all programs find in these, each on a board of its own."""
    bare = board(case.stock, case.ideal.grid.cell_mm)
    run = running(case, trials)
    engagement = tuple(engagement_of(cuts, program.tool, bare) for program, cuts in zip(trials, run.cuts, strict=True))
    alone = replace(run, boards=(bare,) * len(trials), engagement=engagement)
    for check in OF_EACH:
        yield from check.run(alone).findings
    for program in trials:
        if program.stated is not None:
            yield from of_change(program, program.stated)
    # they share the zero with the programs that cut
    yield from (
        finding
        for finding in InsideTravel().run(replace(case, programs=(*case.programs, *trials))).findings
        if any(finding.file == program.file for program in trials)
    )


def running(case: Case, trials: tuple[ProgramUnderTest, ...]) -> Case:
    """The case with these programs' ways for those of the programs that cut."""
    ways = [tip_path_of(program.replay.motions, case.zero, n, COARSE_CHORD_MM) for n, program in enumerate(trials)]
    cuts, rapids = tuple(cuts for cuts, _ in ways), tuple(rapids for _, rapids in ways)
    return replace(case, programs=trials, cuts=cuts, rapids=rapids)


def _low(case: Case, program: ProgramUnderTest) -> np.ndarray:
    """(n,) how far over the board's top each motion stays."""
    motions = program.replay.motions
    return np.minimum(motions.start_mm[:, 2], motions.end_mm[:, 2]) + case.zero.z_mm - case.stock.thickness_mm


def _touching(program: ProgramUnderTest, low: np.ndarray) -> list[Finding]:
    bad = np.flatnonzero(low < CLEARANCE_MM - 1e-6)
    if not len(bad):
        return []
    return [
        Finding(
            message=Message("trials_clear.goes_into_board")
            if low[bad].min() < 0
            else Message("trials_clear.goes_within", clearance=Mm(CLEARANCE_MM)),
            file=program.file,
            line=int(program.replay.motions.line[bad[0]]),
            remedy=REMEDY,
        )
    ]


def _lifted(case: Case, lifted: ProgramUnderTest) -> list[Finding]:
    """Where an air cut is another than its program, higher by one height."""
    own = next(
        (p for p in case.programs if lifted.file.endswith(p.file) and p.tool == lifted.tool),
        None,
    )
    if own is None:
        return [Finding(message=Message("trials_clear.no_program_sign_tried"), file=lifted.file, remedy=REMEDY)]
    cut, air = own.replay.motions, lifted.replay.motions
    n = min(len(cut), len(air))
    step = air.end_mm[:n] - cut.end_mm[:n]
    other = np.hypot(step[:, 0], step[:, 1]) > SAME_MM
    if n:
        other |= np.abs(step[:, 2] - step[0, 2]) > SAME_MM
    other |= cut.kind[:n] != air.kind[:n]
    other |= np.abs(cut.spindle_rpm[:n] - air.spindle_rpm[:n]) > 0.5
    other |= np.abs(cut.feed_mm_per_min[:n] - air.feed_mm_per_min[:n]) > 0.01 * cut.feed_mm_per_min[:n]
    if not other.any() and len(cut) == len(air):
        return []
    line = int(air.line[int(np.argmax(other))]) if other.any() else lifted.replay.line_count
    what = Message("trials_clear.not_lifted_moves_otherwise_from", file=own.file)
    return [Finding(message=what, file=lifted.file, line=line, remedy=REMEDY)]


def _turning(program: ProgramUnderTest) -> list[Finding]:
    motions = program.replay.motions
    bad = np.flatnonzero(motions.spindle_rpm != 0)
    if not len(bad):
        return []
    return [
        Finding(
            message=Message("trials_clear.spindle_turns_in_outline_which"),
            file=program.file,
            line=int(motions.line[bad[0]]),
            remedy=REMEDY,
        )
    ]


def cut_bounds(case: Case) -> tuple[float, float, float, float]:
    """(low x, low y, high x, high y) of everything that the cutters take out of the board's face, sign coordinates;
    infinite the wrong way round when nothing is cut."""
    top = case.stock.thickness_mm
    low, high = np.full(2, np.inf), np.full(2, -np.inf)
    for cutting, cutter in zip(case.cuts, case.programs, strict=True):
        sunk = cutting.below(top - 1e-6)
        if len(sunk):
            for ends, radii in zip((sunk.start_mm, sunk.end_mm), sunk.radii_mm(cutter.tool, top).T, strict=True):
                reach = np.maximum(radii, 0.0)[:, None]
                low = np.minimum(low, (ends[:, :2] - reach).min(axis=0))
                high = np.maximum(high, (ends[:, :2] + reach).max(axis=0))
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def _shown(case: Case, program: ProgramUnderTest) -> tuple[float, list[Finding]]:
    """How far the outline's rectangle is from that of what is cut."""
    way, bounds = extents(program.replay.motions), np.array(cut_bounds(case))
    if way is None or not np.isfinite(bounds).all():
        return 0.0, []
    corners = np.array([way.x_mm[0], way.y_mm[0], way.x_mm[1], way.y_mm[1]])
    apart = float(np.abs(corners + np.array([case.zero.x_mm, case.zero.y_mm] * 2) - bounds).max())
    if apart <= CHECK_MM:
        return apart, []
    what = Message("trials_clear.outline_s_rectangle_differs_from", apart=Mm(apart, 2))
    return apart, [Finding(message=what, file=program.file, remedy=REMEDY)]
