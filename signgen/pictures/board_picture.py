"""The board after all programs, seen from above, with the places that findings name: `signgen check --picture`."""

from __future__ import annotations

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace
from shapely.affinity import translate
from shapely.geometry import box

from signgen.checks.check import Case, CheckReport
from signgen.numbers import figure
from signgen.pictures.preview import data_uri
from signgen.pictures.relief import Relief, relief

if TYPE_CHECKING:
    from PIL import Image

PIXELS = 1_200_000
LEAST_PX, MOST_PX = 600, 2400
BELOW_RGB = (70, 74, 80)
"""What is seen where the board is cut through."""

MARK_RGB, MARK_INK_RGB = (196, 24, 48), (255, 255, 255)
ZERO_RGB = (16, 92, 160)
RING_PX, LINE_PX, TEXT_PX = 16, 4, 20
INCH_MM = 25.4


class Mark(Struct, frozen=True, kw_only=True):
    """A finding's place, in board coordinates from the board's bottom left corner, and its number in the report."""

    number: int
    x_mm: float
    y_mm: float


def marks_of(case: Case, report: CheckReport) -> tuple[Mark, ...]:
    """A mark for each finding that has a place on the board, numbered as the report counts findings."""
    return tuple(
        Mark(number=number, x_mm=place[0] + case.stock.sign_x_mm, y_mm=place[1] + case.stock.sign_y_mm)
        for number, (_, finding) in enumerate(report.findings(), 1)
        if (place := finding.place_mm) is not None
    )


def board_png(case: Case, marks: Sequence[Mark]) -> bytes:
    """A PNG of the whole board, waste and tabs and all, marks and the zero of the programs drawn over it."""
    lit = _lit(case)
    image = _flat(lit)
    _draw_zero(image, case, lit.px_per_mm)
    _draw_marks(image, case, marks, lit.px_per_mm)
    return _encoded(image, lit.px_per_mm)


def board_svg(case: Case, marks: Sequence[Mark]) -> str:
    """The same as an SVG of the board's size in millimetres, in which marks stay sharp and can be clicked through."""
    import svgwrite

    lit = _lit(case)
    stock, unit = case.stock, _unit_mm(case)
    width, height = figure(stock.width_mm, 4), figure(stock.height_mm, 4)
    svg = svgwrite.Drawing(size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", debug=False)
    svg["role"] = "img"
    svg.set_desc(title="The board after all programs", desc=f"{len(marks)} places are marked.")
    picture = svg.image(
        href=data_uri(_encoded(_flat(lit), lit.px_per_mm)), insert=(0, 0), size=(stock.width_mm, stock.height_mm)
    )
    picture["preserveAspectRatio"] = "none"
    svg.add(picture)
    x, y = _zero_place(case)
    for dx, dy in ((4 * unit, 0.0), (0.0, -4 * unit)):
        svg.add(svg.line((x, y), (x + dx, y + dy), stroke=_hex(ZERO_RGB), stroke_width=unit / 3))
    svg.add(svg.circle((x, y), unit / 2, fill=_hex(ZERO_RGB)))
    for mark in marks:
        place = (mark.x_mm, stock.height_mm - mark.y_mm)
        svg.add(svg.circle(place, unit, fill="none", stroke=_hex(MARK_RGB), stroke_width=unit / 4))
        label = svg.text(f"{mark.number}", (place[0] + 1.3 * unit, place[1] - 1.1 * unit), fill=_hex(MARK_RGB))
        label["font-size"] = figure(1.6 * unit, 3)
        label["font-family"] = "sans-serif"
        label["font-weight"] = "bold"
        label["stroke"] = "white"
        label["stroke-width"] = figure(unit / 4, 3)
        label["paint-order"] = "stroke"
        svg.add(label)
    return str(svg.tostring()) + "\n"


def _lit(case: Case) -> Relief:
    """The whole board lit, moved so that its bottom left corner is the origin, as `relief` wants it."""
    stock, last = case.stock, case.boards[-1]
    grid = replace(last.grid, x0_mm=last.x0_mm + stock.sign_x_mm, y0_mm=last.y0_mm + stock.sign_y_mm)
    moved = replace(last, grid=grid)
    size = (stock.width_mm, stock.height_mm)
    across = min(MOST_PX, max(LEAST_PX, (PIXELS * size[0] / size[1]) ** 0.5))
    scale = min(across / size[0], MOST_PX / size[1])
    edge = translate(box(*stock.bounds_mm), stock.sign_x_mm, stock.sign_y_mm)
    return relief(moved, edge, size, stock.thickness_mm, case.material, scale)


def _flat(lit: Relief) -> Image.Image:
    from PIL import Image

    below = Image.new("RGB", (lit.rgb.shape[1], lit.rgb.shape[0]), BELOW_RGB)
    below.paste(Image.fromarray(lit.rgb), (0, 0), Image.fromarray(lit.solid))
    return below


def _encoded(image: Image.Image, px_per_mm: float) -> bytes:
    buffer = io.BytesIO()
    dots = px_per_mm * INCH_MM
    image.save(buffer, format="PNG", compress_level=1, dpi=(dots, dots))
    return buffer.getvalue()


def _unit_mm(case: Case) -> float:
    """What a mark's ring measures on a board of this size, about as large as it is in the PNG."""
    return max(case.stock.width_mm, case.stock.height_mm) / 80


def _zero_place(case: Case) -> tuple[float, float]:
    """Of the programs' X0 Y0 in a picture whose Y runs down."""
    return case.zero.x_mm + case.stock.sign_x_mm, case.stock.height_mm - case.zero.y_mm - case.stock.sign_y_mm


def _draw_zero(image: Image.Image, case: Case, px_per_mm: float) -> None:
    """The zero as a dot with its two axes."""
    from PIL import ImageDraw

    draw = ImageDraw.Draw(image)
    x, y = (value * px_per_mm for value in _zero_place(case))
    draw.line([(x, y), (x + 4 * RING_PX, y)], fill=ZERO_RGB, width=LINE_PX)
    draw.line([(x, y), (x, y - 4 * RING_PX)], fill=ZERO_RGB, width=LINE_PX)
    draw.ellipse([x - RING_PX / 2, y - RING_PX / 2, x + RING_PX / 2, y + RING_PX / 2], fill=ZERO_RGB)


def _draw_marks(image: Image.Image, case: Case, marks: Sequence[Mark], px_per_mm: float) -> None:
    """A ring about each place, its number beside it; those off the board at the nearest place of the picture's
    rim."""
    from PIL import ImageDraw, ImageFont

    draw = ImageDraw.Draw(image)
    font = ImageFont.load_default(TEXT_PX)
    for mark in marks:
        x = min(max(mark.x_mm * px_per_mm, 0.0), image.width - 1.0)
        y = min(max((case.stock.height_mm - mark.y_mm) * px_per_mm, 0.0), image.height - 1.0)
        draw.ellipse([x - RING_PX, y - RING_PX, x + RING_PX, y + RING_PX], outline=MARK_RGB, width=LINE_PX)
        # The number goes to the side on which there is room.
        right = x + RING_PX + 2 * TEXT_PX < image.width
        at = (x + (RING_PX if right else -RING_PX), min(max(y - RING_PX, TEXT_PX), image.height - 1.0))
        draw.text(
            at,
            f"{mark.number}",
            fill=MARK_RGB,
            font=font,
            anchor="lb" if right else "rb",
            stroke_width=2,
            stroke_fill=MARK_INK_RGB,
        )


def _hex(rgb: tuple[int, int, int]) -> str:
    return "#" + bytes(rgb).hex()
