"""One sheet with every pictogram and its name: what to choose from."""

from __future__ import annotations

import io

from signgen.artwork.pictograms import NO, pictograms, picture_of

CELL_PX, PICTURE_PX, ACROSS, FINER = 150, 104, 9, 3
INK, SOFT = "#222222", "#666666"

CROSSED_OUT = ("no-dog", "no-flame")
"""Shown as examples of what a name with no- before it gives."""


def pictogram_sheet() -> bytes:
    """A PNG."""
    from PIL import Image, ImageDraw, ImageFont

    names = [*(each.name for each in pictograms()), *CROSSED_OUT]
    rows = -(-len(names) // ACROSS)
    image = Image.new("RGB", (ACROSS * CELL_PX * FINER, rows * CELL_PX * FINER), "white")
    pen = ImageDraw.Draw(image)
    for number, name in enumerate(names):
        left, top = number % ACROSS * CELL_PX * FINER, number // ACROSS * CELL_PX * FINER
        for ring, fill in _rings(name, (left + CELL_PX * FINER / 2, top + (PICTURE_PX / 2 + 8) * FINER)):
            pen.polygon(ring, fill)
    small = image.reduce(FINER)
    pen, face = ImageDraw.Draw(small), ImageFont.load_default()
    for number, name in enumerate(names):
        left, top = number % ACROSS * CELL_PX, number // ACROSS * CELL_PX
        wide = pen.textlength(name, font=face)
        pen.text((left + (CELL_PX - wide) / 2, top + PICTURE_PX + 20), name, fill=SOFT, font=face)
    buffer = io.BytesIO()
    small.save(buffer, format="PNG")
    return buffer.getvalue()


def _rings(name: str, middle: tuple[float, float]) -> list[tuple[list[tuple[float, float]], str]]:
    """Outlines with what fills them, the larger first."""
    picture = picture_of(name)

    def dark(rgb: tuple[int, int, int]) -> str | None:
        return "ink" if sum(rgb) < 300 or not name.startswith(NO[0]) else None

    bounds = picture.bounds(dark)
    assert bounds is not None, "every pictogram that ships shows something"
    x0, y0, x1, y1 = bounds
    scale = PICTURE_PX * FINER / max(x1 - x0, y1 - y0)
    place = (middle[0] - scale * (x0 + x1) / 2, middle[1] - scale * (y0 + y1) / 2)
    (area,) = picture.seen(dark, (scale, 0, 0, scale, *place), 0.2).values()
    parts = getattr(area, "geoms", [area])
    rings = [
        (ring, fill) for part in parts for ring, fill in [(part.exterior, INK), *((h, "white") for h in part.interiors)]
    ]
    rings.sort(key=lambda each: -each[0].envelope.area)
    return [(list(ring.coords), fill) for ring, fill in rings]
