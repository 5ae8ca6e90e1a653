"""C151: enough wood stays between keyholes and what is cut into the face."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.drawing.keyholes import LEAST_OVER_MM
from signgen.features.keyhole import Keyhole
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm

SLACK_MM = 0.1
"""For cells and for the tolerance of grooves."""
REMEDY = Message("wood_over_keyholes.engrave_less_deep_depth_move")


class WoodOverKeyholes:
    code = "C151"
    name = "wood_over_keyholes"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
For signs with keyholes: the virtual board as the programs of the face leave it, turned over, is laid over the one cut
from the back. Over every keyhole and 1.5 mm around it at least 1.4 mm of wood must stay between the two; so no letter
breaks through, and no hole and no edge comes near.

A failure means a face that breaks in, or a screw's head that shows in a letter.

What to do: engrave less deep, move the keyholes, or use a thicker board.

Least error seen: 0.1 mm, to the cells of the virtual board."""

    def run(self, case: Case) -> CheckResult:
        if case.face is None:
            return verdict(
                self,
                [
                    Finding(
                        message=Message("wood_over_keyholes.nothing_known_face"),
                        remedy=Message("wood_over_keyholes.make_sign_again"),
                    )
                ],
                "",
            )
        findings: list[Finding] = []
        least = np.inf
        face, width = case.face, case.drawing.width_mm
        ny, nx = face.z_mm.shape
        for keyhole in case.drawing.of(Keyhole):
            area = keyhole.footprint.buffer(LEAST_OVER_MM)
            places = case.ideal.grid.centres_mm(cells_inside(area, case.ideal.grid))
            i = np.rint((width - places[:, 0] - face.x0_mm) / face.cell_mm).astype(np.intp)
            j = np.rint((places[:, 1] - face.y0_mm) / face.cell_mm).astype(np.intp)
            inside = (i > 0) & (i < nx - 1) & (j > 0) & (j < ny - 1)
            i, j, places = i[inside], j[inside], places[inside]
            around = [face.z_mm[j + dj, i + di] for dj in (-1, 0, 1) for di in (-1, 0, 1)]
            left = np.min(around, axis=0).astype(np.float64) - keyhole.depth_mm
            if not inside.all() or not len(left):
                message = Message("wood_over_keyholes.reaches_out_board", keyhole=keyhole.called)
                findings.append(Finding(message=message, remedy=REMEDY))
                continue
            k = int(left.argmin())
            least = min(least, float(left[k]))
            if left[k] < LEAST_OVER_MM - SLACK_MM:
                x, y = float(places[k, 0]), float(places[k, 1])
                stays = max(0.0, float(left[k]))
                message = Message(
                    "wood_over_keyholes.only_wood_stay_between_face",
                    stays=Mm(stays, 2),
                    keyhole=keyhole.called,
                    place=at(x, y),
                )
                findings.append(Finding(message=message, place_mm=(x, y), remedy=REMEDY))
        detail = (
            Message("wood_over_keyholes.wood_least_wanted", least=Mm(least, 2), least_over=Mm(LEAST_OVER_MM))
            if np.isfinite(least)
            else Message("wood_over_keyholes.no_wood")
        )
        return verdict(self, findings, detail)
