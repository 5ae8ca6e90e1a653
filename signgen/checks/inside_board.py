"""C104: the cutter stays over the board while it cuts."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.checks.tip_path import TipPath
from signgen.messages import Message, Mm
from signgen.tolerances import CHECK_MM

SIDES = ("left", "below", "right", "above")
REMEDY = Message("inside_board.lay_larger_board_move_zero")


class InsideBoard:
    code = "C104"
    name = "inside_board"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
While its tip is below the board's top, the whole cutter must stay over the board: outside it are clamps, screws and
the machine, and a cut through the board's rim lets the board spring.

A failure names the side and how far the cutter reaches out.

What to do: lay a larger board (--board), or mend the zero.

Least error seen: 0.05 mm, from the motions alone."""

    def run(self, case: Case) -> CheckResult:
        x0, y0, x1, y1 = case.stock.bounds_mm
        bounds = np.array([x0, y0, -x1, -y1])
        top = case.stock.thickness_mm
        findings = []
        room = np.full(4, np.inf)
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            cutting = cuts.below(top - 1e-6)
            if not len(cutting):
                continue
            for side, (inside, k, place) in enumerate(_room(cutting, cutting.radii_mm(program.tool, top), bounds)):
                room[side] = min(room[side], inside)
                if inside < -CHECK_MM:
                    findings.append(
                        Finding(
                            message=Message(
                                f"inside_board.out_{SIDES[side]}",
                                inside=Mm(-inside, 2),
                                place=at(*place),
                            ),
                            file=program.file,
                            line=int(cutting.line[k]),
                            place_mm=place,
                            remedy=REMEDY,
                            warns=not case.drawn,
                        )
                    )
        least = (
            Message("inside_board.board_left_beside_cut", room=Mm(room.min(), 2))
            if np.isfinite(room).any()
            else Message("checks.nothing_cut")
        )
        return verdict(self, findings, least)


def _room(cutting: TipPath, radii: np.ndarray, bounds: np.ndarray) -> list[tuple[float, int, tuple[float, float]]]:
    """For each side (left, below, right, above): how far inside the board the cutter stays, the piece that comes
    nearest to leaving, and where it does."""
    found = []
    for side in range(4):
        sign = 1 if side < 2 else -1
        ends = np.stack([cutting.start_mm[:, side % 2], cutting.end_mm[:, side % 2]], axis=1) * sign - radii
        inside = ends.min(axis=1) - bounds[side]
        k = int(inside.argmin())
        x, y, _ = (cutting.start_mm if ends[k, 0] < ends[k, 1] else cutting.end_mm)[k].tolist()
        found.append((float(inside[k]), k, (x, y)))
    return found
