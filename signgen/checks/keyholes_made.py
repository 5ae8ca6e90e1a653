"""C150: keyholes are as drawn, and the cutter's head comes out at their entries alone."""

from __future__ import annotations

import numpy as np
import shapely
from shapely.geometry import LineString, Point
from shapely.geometry.base import BaseGeometry

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.places import at, nearest_line
from signgen.checks.tip_path import joined
from signgen.features.keyhole import Keyhole
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm, Mm2
from signgen.replay.heights import HeightMap, board
from signgen.replay.sweep import undercut
from signgen.tolerances import CHECK_MM

REMEDY = Message("keyholes_made.make_programs_again_if_they")
COME_OUT = Message("keyholes_made.lift_cutter_over_entry_only")


class KeyholesMade:
    code = "C150"
    name = "keyholes_made"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
For signs with keyholes, from their backs. The virtual board is compared with the drawing twice: what can be seen from
above must be the entry and the slot, at their depth, and nothing else may be touched; below, the head of the keyhole
cutter must have taken the drawn undercut, at its height. From the motions: while the head is below the surface it may
move level only, at the drawn height, or up and down where it is wholly in the entry, rapids among it. And the cutter
must be the one that was drawn with: its head, its neck, the height of its head.

A failure means a screw that does not go in, slips out or finds no wood to hang on; or a cutter torn off under the wood.

What to do: make the programs again; if the keyhole cutter measures otherwise than its data say, mend the data.

Least error seen: 0.05 mm in width, place and depth, to the cells of the virtual board."""

    def run(self, case: Case) -> CheckResult:
        keyholes = case.drawing.of(Keyhole)
        cutters = [program for program in case.programs if program.tool.kind == "keyhole"]
        findings = [finding for program in cutters for finding in _wrong_cutter(case, program)]
        if keyholes and not cutters:
            findings.append(Finding(message=Message("keyholes_made.no_program_has_keyhole_cutter"), remedy=REMEDY))
        worst = _seen(case, findings)
        below = board(case.stock, case.ideal.grid.cell_mm)
        for program in cutters:
            below = undercut(below, program.replay.motions, program.tool, case.zero)
        worst = max(worst, _below(case, below, findings))
        findings += _head_ways(case)
        detail = Message("keyholes_made.keyholes_compared_depths_off_most", count=len(keyholes), worst=Mm(worst, 3))
        return verdict(self, findings, detail)


def _wrong_cutter(case: Case, program: ProgramUnderTest) -> list[Finding]:
    """Measures of the cutter that do not go with the drawing."""
    tool, found = program.tool, []
    for keyhole in case.drawing.of(Keyhole)[:1]:
        if abs(tool.diameter_mm - keyhole.undercut_mm) > CHECK_MM or abs(tool.head_mm - keyhole.head_mm) > CHECK_MM:
            found.append(
                Message(
                    "keyholes_made.has_head_high_drawing_wants",
                    tool=tool.name,
                    diameter=Mm(tool.diameter_mm),
                    head=Mm(tool.head_mm),
                    undercut=Mm(keyhole.undercut_mm),
                    drawn_head=Mm(keyhole.head_mm),
                )
            )
        if tool.neck_mm > keyhole.slot_mm + 1e-6:
            found.append(
                Message(
                    "keyholes_made.neck_does_not_go_into",
                    tool=tool.name,
                    neck=Mm(tool.neck_mm),
                    slot=Mm(keyhole.slot_mm),
                )
            )
    return [Finding(message=text, file=program.file, remedy=REMEDY) for text in found]


def _seen(case: Case, findings: list[Finding]) -> float:
    """Entries and slots as seen from above, and what else is touched; the worst difference in depth inside them."""
    top, left = case.stock.thickness_mm, case.boards[-1]
    areas = [_opening(keyhole) for keyhole in case.drawing.of(Keyhole)]
    worst = 0.0
    for keyhole, area in zip(case.drawing.of(Keyhole), areas, strict=True):
        off = _difference(
            case, findings, keyhole, left, area, top - keyhole.depth_mm, Message("keyholes_made.not_open_drawn")
        )
        worst = max(worst, off)
    _untouched(case, findings, left, areas, Message("keyholes_made.back_cut_where_nothing_drawn"))
    return worst


def _below(case: Case, below: HeightMap, findings: list[Finding]) -> float:
    """The undercuts."""
    top = case.stock.thickness_mm
    areas = [_way(keyhole).buffer(keyhole.undercut_mm / 2, quad_segs=64) for keyhole in case.drawing.of(Keyhole)]
    worst = 0.0
    for keyhole, area in zip(case.drawing.of(Keyhole), areas, strict=True):
        level = top - keyhole.depth_mm + keyhole.free_mm
        worst = max(
            worst, _difference(case, findings, keyhole, below, area, level, Message("keyholes_made.not_undercut_drawn"))
        )
    _untouched(case, findings, below, areas, Message("keyholes_made.head_keyhole_cutter_cuts_where"))
    return worst


def _way(keyhole: Keyhole) -> LineString:
    return LineString([keyhole.entry_at_mm, (keyhole.x_mm, keyhole.y_mm)])


def _opening(keyhole: Keyhole) -> BaseGeometry:
    """What is open to the back: entry and slot."""
    entry = Point(keyhole.entry_at_mm).buffer(keyhole.entry_mm / 2, quad_segs=64)
    opening: BaseGeometry = _way(keyhole).buffer(keyhole.slot_mm / 2, quad_segs=64).union(entry)
    return opening


def _difference(
    case: Case,
    findings: list[Finding],
    keyhole: Keyhole,
    left: HeightMap,
    area: BaseGeometry,
    level: float,
    what: Message,
) -> float:
    """How far the board is from a level inside an area, with a finding when it is too far."""
    cells = cells_inside(area.buffer(-CHECK_MM), case.ideal.grid)
    if not len(cells):
        return 0.0
    error = left.z_mm.ravel()[cells].astype(np.float64) - level
    k = int(np.abs(error).argmax())
    if abs(error[k]) > CHECK_MM:
        x, y = (float(value) for value in case.ideal.grid.centres_mm(cells[k : k + 1])[0])
        file, line = nearest_line(case, x, y)
        more = Message(
            "keyholes_made.too_high" if error[k] > 0 else "keyholes_made.too_deep",
            error=Mm(abs(error[k]), 2),
            place=at(x, y),
        )
        findings.append(
            Finding(
                message=Message("keyholes_made.said", keyhole=keyhole.called, what=what, more=more),
                file=file,
                line=line,
                place_mm=(x, y),
                remedy=REMEDY,
            )
        )
    return float(abs(error[k]))


def _untouched(case: Case, findings: list[Finding], left: HeightMap, areas: list[BaseGeometry], what: Message) -> None:
    touched = left.z_mm.ravel() < case.stock.thickness_mm - CHECK_MM
    for area in areas:
        touched[cells_inside(area.buffer(CHECK_MM), case.ideal.grid)] = False
    cells = np.flatnonzero(touched)
    if len(cells):
        x, y = (float(value) for value in case.ideal.grid.centres_mm(cells[:1])[0])
        file, line = nearest_line(case, x, y)
        message = Message(
            "keyholes_made.first_in_all",
            what=what,
            place=at(x, y),
            count=Mm2(len(cells) * case.ideal.grid.cell_mm**2, 1),
        )
        findings.append(Finding(message=message, file=file, line=line, place_mm=(x, y), remedy=REMEDY))


def _head_ways(case: Case) -> list[Finding]:
    """Moves of the head below the surface that are neither level at the drawn height nor inside an entry."""
    top, found = case.stock.thickness_mm, []
    entries = [
        (Point(keyhole.entry_at_mm), (keyhole.entry_mm - keyhole.undercut_mm) / 2)
        for keyhole in case.drawing.of(Keyhole)
    ]
    levels = [top - keyhole.depth_mm + keyhole.free_mm for keyhole in case.drawing.of(Keyhole)]
    for number, program in enumerate(case.programs):
        if program.tool.kind != "keyhole":
            continue
        sunk = joined([case.cuts[number], case.rapids[number]]).below(top - 1e-6)
        if not len(sunk):
            continue
        level = np.abs(sunk.start_mm[:, 2] - sunk.end_mm[:, 2]) < 1e-9
        as_drawn = np.zeros(len(sunk), np.bool_)
        for each in levels:
            as_drawn |= level & (np.abs(sunk.end_mm[:, 2] - each) <= CHECK_MM)
        in_entry = np.zeros(len(sunk), np.bool_)
        ends = [shapely.points(end[:, :2]) for end in (sunk.start_mm, sunk.end_mm)]
        for middle, room in entries:
            in_entry |= np.all([shapely.distance(middle, end) <= room + CHECK_MM for end in ends], axis=0)
        bad = np.flatnonzero(~(as_drawn | in_entry))
        if len(bad):
            k = int(bad[0])
            x, y = float(sunk.end_mm[k, 0]), float(sunk.end_mm[k, 1])
            message = Message("keyholes_made.keyhole_cutter_s_head_moves", place=at(x, y))
            found.append(
                Finding(message=message, file=program.file, line=int(sunk.line[k]), place_mm=(x, y), remedy=COME_OUT)
            )
    return found
