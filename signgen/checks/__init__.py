"""Judging finished programs: what they do to the board against what was drawn.

`judge(case)` runs every check of `CHECKS` in its order. A new check is one file and one line here; its code is never
used again for anything else.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from signgen.checks.as_stated import AsStated
from signgen.checks.check import Case, Check, CheckReport, CheckResult
from signgen.checks.code_reads import CodeReads
from signgen.checks.cutter_reach import CutterReach
from signgen.checks.depth_limit import DepthLimit
from signgen.checks.edge_bevelled import EdgeBevelled
from signgen.checks.edge_size import EdgeSize
from signgen.checks.feeds_sane import FeedsSane
from signgen.checks.fixings_clear import FixingsClear
from signgen.checks.groove_walls import GrooveWalls
from signgen.checks.headings_true import HeadingsTrue
from signgen.checks.heads_seated import HeadsSeated
from signgen.checks.held_round import HeldRound
from signgen.checks.holes_made import HolesMade
from signgen.checks.inside_board import InsideBoard
from signgen.checks.inside_travel import InsideTravel
from signgen.checks.keyholes_made import KeyholesMade
from signgen.checks.legal_text import LegalText
from signgen.checks.letters_made import LettersMade
from signgen.checks.not_gouged import NotGouged
from signgen.checks.nothing_loose import NothingLoose
from signgen.checks.paper_followed import PaperFollowed
from signgen.checks.papers_agree import PapersAgree
from signgen.checks.pass_depth import PassDepth
from signgen.checks.programs_in_order import ProgramsInOrder
from signgen.checks.ramp_angle import RampAngle
from signgen.checks.rapids_clear import RapidsClear
from signgen.checks.recesses_made import RecessesMade
from signgen.checks.skin_holds import SkinHolds
from signgen.checks.spindle_ready import SpindleReady
from signgen.checks.starts_and_ends import StartsAndEnds
from signgen.checks.stops_and_waits import StopsAndWaits
from signgen.checks.tabs_hold import TabsHold
from signgen.checks.text_as_ordered import TextAsOrdered
from signgen.checks.touched_off import TouchedOff
from signgen.checks.trials_clear import TrialsClear
from signgen.checks.units_plausible import UnitsPlausible
from signgen.checks.wood_left import WoodLeft
from signgen.checks.wood_over_keyholes import WoodOverKeyholes
from signgen.messages import Message
from signgen.replay.motion import Replay

READABLE = LegalText()

CHECKS: tuple[Check, ...] = (
    READABLE,
    UnitsPlausible(),
    InsideTravel(),
    InsideBoard(),
    FixingsClear(),
    RapidsClear(),
    StartsAndEnds(),
    SpindleReady(),
    StopsAndWaits(),
    AsStated(),
    HeadingsTrue(),
    PapersAgree(),
    FeedsSane(),
    DepthLimit(),
    CutterReach(),
    PassDepth(),
    RampAngle(),
    TextAsOrdered(),
    LettersMade(),
    GrooveWalls(),
    NotGouged(),
    RecessesMade(),
    HolesMade(),
    HeadsSeated(),
    EdgeSize(),
    EdgeBevelled(),
    TabsHold(),
    HeldRound(),
    SkinHolds(),
    NothingLoose(),
    ProgramsInOrder(),
    WoodLeft(),
    TrialsClear(),
    TouchedOff(),
    PaperFollowed(),
)
"""In the order in which an operator would ask: can it be read, does it fit, is it safe, is the sign as drawn."""

MOST_REFUSED = 20
"""Lines that may be refused before nothing is said of the others: what has more is hardly a program."""

OF_KEYHOLES: tuple[Check, ...] = (KeyholesMade(), WoodOverKeyholes())

OF_CODES: tuple[Check, ...] = (CodeReads(),)
"""Where the sign has any."""

_OF_THE_SIGN = frozenset(
    ["C125", "C108", "C116", "C109", "C126", "C110", "C120", "C111", "C112", "C132", "C131", "C119", "C113", "C115"]
)
"""Checks of what the face and the outside get."""

FROM_BEHIND: tuple[Check, ...] = (*(check for check in CHECKS if check.code not in _OF_THE_SIGN), *OF_KEYHOLES)
"""Of programs that cut a board from its back: those of their manners, and those of what they make."""

EVERY_CHECK: tuple[Check, ...] = (*CHECKS, *OF_KEYHOLES, *OF_CODES)


def judge(case: Case, checks: Sequence[Check] | None = None) -> CheckReport:
    """Every check's result, in order; those of a sign's face when none are named. READABLE is the first. When a text of
    ours holds refused words, nothing is known about what it makes a machine do: the other checks are then listed as
    skipped. Of a program from elsewhere they judge the rest, and say so. Without a drawing, those that need one are
    listed as such that do not apply."""
    results = [READABLE.run(case)]
    readable = bool(case.programs) and all(_is_clear(program.replay, case.drawn) for program in case.programs)
    in_part = not case.drawn and all(_is_clear_in_part(program.replay) for program in case.programs)
    if checks is None:
        has_codes = case.drawn and any(picture.code_text for picture in case.drawing.pictures)
        checks = (*CHECKS, *OF_CODES) if has_codes else CHECKS
    for check in checks[1:]:
        if not case.drawn and check.needs_drawing:
            results.append(_left_out(check, Message("checks.needs_drawing_there_none"), applies=False))
        elif not readable and not in_part:
            results.append(_left_out(check, Message("checks.programs_cannot_read_throughout"), applies=True))
        elif not readable:
            result = check.run(case)
            results.append(replace(result, detail=Message("checks.in_part", detail=result.detail)))
        else:
            results.append(check.run(case))
    return CheckReport(results=tuple(results))


def both_sides(face: CheckReport, back: CheckReport) -> CheckReport:
    """One report of what is cut from both sides of a board: a check that looked at both has what it saw on both. Places
    on the back are left to the words, for they count from another corner."""
    found = {result.code: result for result in back.results}
    unplaced = {
        code: tuple(replace(finding, place_mm=None) for finding in result.findings) for code, result in found.items()
    }
    merged = [
        replace(
            result,
            findings=(*result.findings, *unplaced[result.code]),
            detail=Message("checks.from_behind", detail=result.detail, behind=found[result.code].detail),
            severity="error" if found[result.code].stops else result.severity,
            skipped=result.skipped or found[result.code].skipped,
        )
        if result.code in found
        else result
        for result in face.results
    ]
    looked = {result.code for result in face.results}
    only_back = [replace(each, findings=unplaced[each.code]) for each in back.results if each.code not in looked]
    return CheckReport(results=(*merged, *only_back))


def _is_clear(replay: Replay, drawn: bool) -> bool:
    """Whether it is known what the machine does. A program from elsewhere may lack its end: what goes before is clear
    all the same."""
    return replay.fault_count <= (replay.bad_end and not drawn)


def _is_clear_in_part(replay: Replay) -> bool:
    """Whether the rest of a program from elsewhere says enough without the few lines that are refused."""
    return len(replay.motions) > 0 and replay.fault_count <= MOST_REFUSED


def _left_out(check: Check, why: Message, *, applies: bool) -> CheckResult:
    return CheckResult(
        code=check.code,
        name=check.name,
        severity=check.severity,
        findings=(),
        detail=why,
        skipped=True,
        applies=applies,
    )
