"""C170: a code is read back from the picture of the board by an independent reader."""

from __future__ import annotations

import importlib
from typing import Any

import numpy as np
from numpy.typing import NDArray

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.photographs import photographs
from signgen.drawing.drawing import OrderedPicture
from signgen.messages import Message, Mm

CUT_MM = 0.1
"""Paint stays where the board is cut deeper, once its face is sanded or wiped clean (common practice)."""

LIGHT, DARK = 0.62, 0.16
"""How much light bare wood and dark paint throw back: a contrast of 0.59 (Michelson), where 0.34 is needed (measured
with zxing-cpp on pictures of such codes)."""

PX_PER_MODULE = 5.0
"""Of the picture: a telephone held so that the code fills a third of its view has more."""

Image = NDArray[np.float64]


class CodeReads:
    code = "C170"
    name = "code_reads"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The picture of the simulated board, dark where it is cut and painted, with the quiet zone round the code, is given to a
reader of codes that knows nothing of the drawing (zxing-cpp), as it is and as ten photographs of it: tilted, turned,
blurred, noisy, unevenly lit. The text that it reads must be the text that was ordered, in the picture and in nine of
ten photographs. Without the reader (pip install 'signgen[codes]') nothing is read back, and that is said.

A failure means that telephones would not read the code.

What to do: use larger modules (--code-module), a thinner cutter, or a shorter text.

Least error seen: a code whose lone modules are gone."""

    def run(self, case: Case) -> CheckResult:
        codes = [picture for picture in case.drawing.pictures if picture.code_text]
        if not codes or not case.boards:
            return verdict(self, (), Message("code_reads.none"))
        try:
            reader: Any = importlib.import_module("zxingcpp")
        except ImportError:
            return CheckResult(
                code=self.code, name=self.name, severity=self.severity, findings=(),
                detail=Message("code_reads.not_read_back"), skipped=True, applies=False,
            )  # fmt: skip
        findings, least = [], 10
        for picture in codes:
            image = picture_of_board(case, picture)
            taken = [_read(reader, each) == picture.code_text for each in photographs(image)]
            least = min(least, sum(taken))
            if _read(reader, image) != picture.code_text or sum(taken) < LEAST_READ:
                findings.append(
                    Finding(
                        message=Message("code_reads.not_read", count=sum(taken), module=Mm(picture.module_mm)),
                        remedy=Message("code_reads.larger_modules"),
                    )
                )
        return verdict(self, findings, Message("code_reads.read", count=len(codes), least=least))


LEAST_READ = 9
"""Of ten photographs."""


def picture_of_board(case: Case, picture: OrderedPicture) -> Image:
    """(h, w) what a camera sees right above the code with its quiet zone: 0 black, 1 white, from the top down."""
    x0, y0, x1, y1 = picture.code_box_mm
    board = case.boards[-1]
    step = picture.module_mm / PX_PER_MODULE
    across, up = (max(2, round((b - a) / step)) for a, b in ((x0, x1), (y0, y1)))
    x = x0 + (np.arange(across) + 0.5) * (x1 - x0) / across
    y = y1 - (np.arange(up) + 0.5) * (y1 - y0) / up
    # Each pixel sees a few cells of the virtual board.
    seen: Image = np.zeros((up, across))
    for dx, dy in ((-0.25, -0.25), (-0.25, 0.25), (0.25, -0.25), (0.25, 0.25)):
        column = np.clip(((x + dx * step - board.x0_mm) / board.cell_mm).astype(int), 0, board.z_mm.shape[1] - 1)
        row = np.clip(((y + dy * step - board.y0_mm) / board.cell_mm).astype(int), 0, board.z_mm.shape[0] - 1)
        deep = case.stock.thickness_mm - board.z_mm[np.ix_(row, column)].astype(np.float64)
        seen += np.where(deep > CUT_MM, DARK, LIGHT) / 4
    return seen


def _read(reader: Any, image: Image) -> str | None:
    """The text of the code in a picture; None where there is not exactly one."""
    pixels = np.ascontiguousarray(np.clip(image * 255, 0, 255).astype(np.uint8))
    found = reader.read_barcodes(pixels, formats=reader.BarcodeFormat.QRCode)
    return str(found[0].text) if len(found) == 1 else None
