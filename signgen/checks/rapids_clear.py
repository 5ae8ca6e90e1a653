"""C102: no rapid goes through what is left of the board at that time."""

from __future__ import annotations

import numpy as np
from msgspec.structs import replace

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.feeds_sane import driven_down, in_air
from signgen.checks.places import at
from signgen.messages import Message, Mm
from signgen.replay.contacts import Contact, rapid_contacts
from signgen.replay.heights import HeightMap, board
from signgen.replay.motion import RAPID

CLEARANCE_MM = 0.5
"""Air that a rapid across the board must keep: boards are seldom flat to less (common practice)."""

WIDENED_CELLS = 1.5
"""A point may pass between the cells of the virtual board; a disc this wide meets at least one (its radius is over
half a cell's diagonal), so pointed cutters are tried a second time with such a tip."""

MOST = 6
REMEDY = Message("rapids_clear.retract_safe_height_before_moving")


class RapidsClear:
    code = "C102"
    name = "rapids_clear"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Every rapid (G0) is tried against the virtual board as it stands at that moment, cut by all moves before it: the
cutter must not meet wood. A rapid across the board must keep 0.5 mm of air over its top, for boards are not flat;
only within what is already cut away may it be lower. A feed straight down that is faster than any plunge into wood
is tried like a rapid. The first move of a program must go up before anything moves
across.

A failure means a broken cutter, a board torn loose, or a machine that has lost its place.

What to do: make the programs again; if the file was edited, restore the retract before the line named.

Least error seen: 0.005 mm of wood under the cutter, 0.0001 mm in the height over the board."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        count, lowest = 0, np.inf
        before = board(case.stock, case.ideal.grid.cell_mm)
        for number, program in enumerate(case.programs):
            findings += _blind(program, case.drawn) + _contacts(case, program, number, before) + _skims(case, program)
            rapids = case.rapids[number]
            count += len(rapids)
            across = np.any(rapids.start_mm[:, :2] != rapids.end_mm[:, :2], axis=1)
            lowest = min(lowest, float(rapids.low_z_mm[across].min(initial=np.inf)))
            before = case.boards[number]
        tried = Message("rapids_clear.rapids_tried_against_board_their", count=count)
        if np.isfinite(lowest):
            air = Mm(lowest - case.stock.thickness_mm, 2)
            tried = Message("rapids_clear.tried_and_lowest", tried=tried, lowest=air)
        return verdict(self, findings, tried)


def _contacts(case: Case, program: ProgramUnderTest, number: int, before: HeightMap) -> list[Finding]:
    """Rapids, and ways down that are only right in the air, that meet wood, each motion once."""
    motions, tool = program.replay.motions, program.tool
    cuts = case.cuts[number]
    fast = np.zeros(len(motions), bool)
    driven, _ = driven_down(case, program, cuts)
    # In a program from elsewhere only those that C106 lets pass: it says of the others that they are fast.
    fast[cuts.motion[driven & (case.drawn | in_air(case.engagement[number], len(cuts)))]] = True
    motions = replace(motions, kind=np.where(fast, RAPID, motions.kind).astype(motions.kind.dtype))
    tools = [tool]
    if tool.angle_deg is not None:
        wide = WIDENED_CELLS * before.cell_mm
        tools.append(replace(tool, kind="v-bit", tip_mm=min(max(tool.tip_mm, wide), tool.diameter_mm)))
    worst: dict[int, Contact] = {}
    for tried in tools:
        for contact in rapid_contacts(before, motions, tried, case.zero, most=MOST):
            known = worst.get(contact.motion)
            if known is None or contact.depth_mm > known.depth_mm:
                worst[contact.motion] = contact
    return [
        Finding(
            message=Message(
                "rapids_clear.goes_into_board",
                how=Message("rapids_clear.fast_way_down" if fast[motion] else "rapids_clear.a_rapid"),
                depth=Mm(contact.depth_mm, 2),
                place=at(*contact.place_mm),
            ),
            file=program.file,
            line=int(motions.line[motion]),
            place_mm=contact.place_mm,
            remedy=REMEDY,
        )
        for motion, contact in sorted(worst.items())
    ]


def _skims(case: Case, program: ProgramUnderTest) -> list[Finding]:
    """Rapids across that keep too little air over the board's top; those below the top are `_contacts`' matter."""
    motions, top = program.replay.motions, case.stock.thickness_mm
    low = np.minimum(motions.start_mm[:, 2], motions.end_mm[:, 2]) + case.zero.z_mm
    across = np.any(motions.start_mm[:, :2] != motions.end_mm[:, :2], axis=1)
    # The first way across comes from a place that the text does not tell, and has no length here.
    known = motions.start_known[:, :2]
    across[:-1] |= (~known[:-1] & known[1:]).any(axis=1)
    bad = np.flatnonzero((motions.kind == RAPID) & across & (low >= top) & (low < top + CLEARANCE_MM - 1e-6))
    return [
        Finding(
            message=Message(
                "rapids_clear.rapid_crosses_over_board_least", low=Mm(low[k] - top, 2), clearance=Mm(CLEARANCE_MM)
            ),
            file=program.file,
            line=int(motions.line[k]),
            place_mm=(float(motions.end_mm[k, 0] + case.zero.x_mm), float(motions.end_mm[k, 1] + case.zero.y_mm)),
            remedy=Message("rapids_clear.raise_safe_height"),
            warns=not case.drawn,
        )
        for k in bad[:MOST]
    ]


def _blind(program: ProgramUnderTest, drawn: bool) -> list[Finding]:
    """The first move that goes across while nobody knows how high the cutter is; before programs from elsewhere the
    operator raises the cutter by hand."""
    motions = program.replay.motions
    known = motions.start_known
    # A place once said stays known, so what a motion says is what is known at the start of the next.
    across = ~known[:-1, 2] & known[1:, :2].any(axis=1)
    # Sent to the machine's own height by G28, G30 or G53, the cutter is up although the text does not say how high.
    homed = [event.line for event in program.replay.events if event.kind == "home"]
    if homed:
        across &= motions.line[:-1] <= min(homed)
    if not across.any():
        return []
    return [
        Finding(
            message=Message("rapids_clear.first_move_goes_across_program"),
            file=program.file,
            line=int(motions.line[int(np.argmax(across))]),
            remedy=Message("rapids_clear.begin_with_retract_safe_height")
            if drawn
            else Message("rapids_clear.raise_cutter_well_over_board"),
            warns=not drawn,
        )
    ]
