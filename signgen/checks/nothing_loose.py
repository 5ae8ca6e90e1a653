"""C119: no piece comes loose while a cutter turns."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.checks.tip_path import THROUGH_MM
from signgen.features.tab import Tab
from signgen.geometry.components import connected
from signgen.messages import Message

DUST_MM2 = 1.0
"""Splinters smaller than this are dust."""


class NothingLoose:
    code = "C119"
    name = "nothing_loose"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
After each program, everything that still stands on the virtual board must hang together with the board's rim: the
sign by its tabs, and no core inside a hole, no cut-off strip. A sign for which no tabs were asked may be free after
the last program, for then tape or screws hold it.

A failure means that a piece of wood can jump into the cutter, or the cutter drag it along.

What to do: make the programs again; ask for tabs (--tabs).

Least error seen: a piece of 1 mm2; a bridge of two cells (0.2 to 0.5 mm) counts as holding, and C112 looks at the
tabs."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        counts: list[Message] = []
        grid = case.ideal.grid
        known: set[int] = set()
        for number, (program, heights) in enumerate(zip(case.programs, case.boards, strict=True)):
            runs = connected(heights.z_mm > 2 * THROUGH_MM)
            area = runs.sizes() * grid.cell_mm**2
            counts.append(Message("nothing_loose.after", count=int((area >= DUST_MM2).sum()), file=program.file))
            row, column = np.divmod(runs.start, grid.nx)
            at_rim = (row == 0) | (row == grid.ny - 1) | (column == 0) | ((runs.stop - 1) % grid.nx == grid.nx - 1)
            held = np.zeros(runs.count, dtype=np.bool_)
            held[runs.piece[at_rim]] = True
            free = np.flatnonzero(~held & (area >= DUST_MM2))
            allowed = case.drawn and not case.drawing.of(Tab) and number == len(case.programs) - 1
            sign = 0.5 * min(outline.area for outline in case.drawing.outlines)
            for piece in free:
                own = np.flatnonzero(runs.piece == piece)
                middle = int((runs.start[own[len(own) // 2]] + runs.stop[own[len(own) // 2]]) // 2)
                if (allowed and area[piece] > sign) or middle in known:
                    continue
                known.add(middle)
                x, y = (float(value) for value in grid.centres_mm(np.array([middle]))[0])
                findings.append(
                    Finding(
                        message=Message(
                            "nothing_loose.piece_mm2_loose_after_program", area=round(area[piece]), place=at(x, y)
                        ),
                        file=program.file,
                        line=_last_through(case, number),
                        place_mm=(x, y),
                        remedy=Message("nothing_loose.leave_tabs_clear_whole_what")
                        if case.drawn
                        else Message("nothing_loose.make_sure_that_tape_screws"),
                        warns=not case.drawn,
                    )
                )
        return verdict(
            self, findings, Message("nothing_loose.pieces_board", counts=tuple(counts) or Message("list.none"))
        )


def _last_through(case: Case, number: int) -> int | None:
    """The line of the last cut through the board, which is where a piece comes loose at the latest."""
    cuts = case.cuts[number]
    through = np.flatnonzero(cuts.low_z_mm <= THROUGH_MM)
    if not len(through):
        return None
    return int(cuts.line[through[-1]])
