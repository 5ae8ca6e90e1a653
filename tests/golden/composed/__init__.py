"""Forty signs by default options only: each a line of signs.txt, what came out in figures.txt, all on page.png.

`python -m tests.golden.composed` writes both anew: look at the page, and read the difference like code.
"""

from __future__ import annotations

import shlex
from collections.abc import Iterator
from pathlib import Path

import shapely
from PIL import Image, ImageDraw

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.pipeline import read_sign

HERE = Path(__file__).parent
SIGNS, FIGURES, PAGE = HERE / "signs.txt", HERE / "figures.txt", HERE / "page.png"

COLUMNS, WIDE, HIGH, GAP = 5, 250, 190, 12
BOARD, CUT, GROUND = "#d9b98a", "#3a2a18", "#b48f5e"


def asked_of(command: str) -> dict[str, object]:
    """The words and options of a command line of `make`."""
    parts = shlex.split(command)
    options = {parts[i][2:]: parts[i + 1] for i in range(len(parts) - 1) if parts[i].startswith("--")}
    values = {i + 1 for i in range(len(parts)) if parts[i].startswith("--")}
    text = [part for i, part in enumerate(parts) if i not in values and not part.startswith("--")]
    return {"thickness": "15", **options, "text": text}


def drawings() -> Iterator[tuple[str, Drawing]]:
    for command in SIGNS.read_text().splitlines():
        yield command, draw(read_sign(asked_of(command)))


def figures(drawn: list[tuple[str, Drawing]]) -> str:
    """Each line as it stands: role, height and bounds to a tenth of a millimetre."""
    rows = []
    for command, drawing in drawn:
        rows.append(command)
        for line in drawing.lines:
            bounds = " ".join(f"{value:.1f}" for value in line.bounds_mm or ())
            rows.append(f"    {line.role:<7}{line.cap_height_mm:>6.1f}  {bounds}  {line.text}")
    return "\n".join(rows) + "\n"


def page(drawn: list[tuple[str, Drawing]]) -> Image.Image:
    count = -(-len(drawn) // COLUMNS)
    image = Image.new("RGB", (COLUMNS * WIDE, count * HIGH), "white")
    pen = ImageDraw.Draw(image)
    for number, (_, drawing) in enumerate(drawn):
        left, top = number % COLUMNS * WIDE + GAP, number // COLUMNS * HIGH + GAP
        scale = min((WIDE - 2 * GAP) / drawing.width_mm, (HIGH - 2 * GAP) / drawing.height_mm)
        foot = top + drawing.height_mm * scale

        def fill(area, colour, scale=scale, left=left, foot=foot, behind=BOARD):
            for part in shapely.get_parts(area):
                for ring, shade in [(part.exterior, colour), *((hole, behind) for hole in part.interiors)]:
                    pen.polygon([(left + x * scale, foot - y * scale) for x, y in ring.coords], fill=shade)

        fill(drawing.edge, BOARD)
        cut = [feature for feature in drawing.features if feature.kind in ("groove", "recess", "panel", "stroke")]
        for feature in sorted(cut, key=lambda each: -shapely.box(*each.area.bounds).area):
            sunk = feature.kind in ("recess", "panel")
            fill(feature.area, GROUND if sunk else CUT)
        for feature in drawing.features:
            if feature.kind == "raised":
                fill(feature.area, BOARD, behind=GROUND)
        for hole in drawing.of(Hole):
            fill(hole.footprint, "white")
    return image.quantize(32)
