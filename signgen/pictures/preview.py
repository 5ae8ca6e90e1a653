"""The finished sign as it will look, to scale: drawn from the simulated board, so it shows what will be cut."""

from __future__ import annotations

import base64
import io
import math
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.job.facts import JobFacts
from signgen.job.finishes import sunk_letters
from signgen.numbers import figure
from signgen.pictures.plate import area_path
from signgen.pictures.relief import Relief, edge_mask, relief
from signgen.spec.paint import paint_rgb
from signgen.words.words import words_of

if TYPE_CHECKING:
    from PIL import Image
    from shapely.geometry import MultiPolygon, Polygon

PIXELS = 640_000
"""Size of the picture: about 1000 x 640 for a common sign, drawn in a fifteenth of a second."""
LEAST_PX, MOST_PX = 1000, 1600
SHADOW_SHARE = 0.035
"""Margin around the sign, as a share of its longer side, where the shadow falls."""
SHADOW_DARKNESS = 0.45
RIM_FALL_MM, RIM_SOFT_MM, RIM_DARKNESS = 1.3, 0.5, 0.62
"""The shadow that a hole's rim throws into it."""
SHADOW_RGB = (28, 24, 20)
INCH_MM = 25.4
RIM = "#3a2c1c"
RIM_MM = 0.25
JPEG_QUALITY = 88
FINE_QUALITY, FULL_COLOUR = 92, 0
"""In the SVG, which is looked at from near: of every pixel its own colour. Mean error one step of 255, a tenth of a
PNG's time and a third of its size."""
RUNS_ONLY = 3
"""zlib's strategy Z_RLE."""


def sign_relief(facts: JobFacts) -> Relief:
    """The last board, lit, at the resolution of the pictures; its letters painted, if that was asked for."""
    width, height = facts.drawing.width_mm, facts.drawing.height_mm
    wanted = min(MOST_PX, max(LEAST_PX, (PIXELS * width / height) ** 0.5))
    scale = min(wanted / width, MOST_PX / height)
    drawing, board, material = facts.drawing, facts.boards[-1], facts.spec.material
    lit = relief(board, drawing.edge, (width, height), drawing.thickness_mm, material, scale)
    families = (drawing.of(Groove), drawing.of(Raised), _painted_floors(drawing))
    letters = [each.area for family in families for each in family]
    if facts.spec.paint is None or not letters:
        return lit
    rgb = paint_rgb(facts.spec.paint, "paint")
    # letters that stand are painted on their tops, which are the board's face
    coat = replace(material, ground_rgb=rgb, colour_rgb=rgb if drawing.of(Raised) else material.colour_rgb)
    painted = relief(board, drawing.edge, (width, height), drawing.thickness_mm, coat, scale)
    return replace(lit, rgb=_inside_letters(letters, drawing, lit, painted))


def _painted_floors(drawing: Drawing) -> list[Recess]:
    """The floors of letters that are sunk into the face; what is cut through has none."""
    return [letter for letter in sunk_letters(drawing) if not drawing.is_through(letter)]


def _inside_letters(
    areas: Sequence[Polygon | MultiPolygon], drawing: Drawing, bare: Relief, painted: Relief
) -> NDArray[np.uint8]:
    """The painted picture where letters are, the bare one around them."""
    from shapely.ops import unary_union

    h, w = bare.solid.shape
    letters = unary_union(areas)
    share = edge_mask(letters, (drawing.width_mm, drawing.height_mm), (w, h))[..., None].astype(np.uint16)
    mixed = (painted.rgb * share + bare.rgb * (255 - share)) // 255
    return mixed.astype(np.uint8)


def preview_png(facts: JobFacts, lit: Relief | None = None) -> bytes:
    """A PNG, transparent around the sign and in its holes, with the shadow that it throws on what lies under it.

    Its resolution is written in it, so that it prints at the sign's size. `lit`: `sign_relief(facts)` where it
    is at hand.
    """
    lit = lit or sign_relief(facts)
    return _encoded(with_shadow(lit), lit.px_per_mm)


def preview_svg(facts: JobFacts, lit: Relief | None = None) -> str:
    """An SVG of exactly the sign's size in millimetres: the lit board inside the exact outline, its holes open."""
    import svgwrite

    lit = lit or sign_relief(facts)
    words, drawing = words_of(facts), facts.drawing
    width, height = figure(drawing.width_mm, 4), figure(drawing.height_mm, 4)
    svg = svgwrite.Drawing(size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", debug=False)
    svg["role"] = "img"
    lines = " / ".join(line for line in facts.spec.text.lines if line.strip())
    svg.set_desc(
        title=words("svg.title", sign=lines),
        desc=words(
            "svg.about",
            width=words.mm(drawing.width_mm),
            height=words.mm(drawing.height_mm),
            material=words.material(facts),
            count=len(drawing.of(Hole)),
        ),
    )
    outline = area_path(_on_paper(drawing.edge, drawing.height_mm), 4)
    rings = [_ring(hole, drawing.height_mm) for hole in drawing.of(Hole)]
    clip = svg.defs.add(svg.clipPath(id="sign"))
    clip.add(svg.path(d=outline + "".join(rings), clip_rule="evenodd"))
    picture = svg.image(href=data_uri(_fine(lit), "jpeg"), insert=(0, 0), size=(drawing.width_mm, drawing.height_mm))
    picture["preserveAspectRatio"] = "none"
    picture["clip-path"] = "url(#sign)"
    svg.add(picture)
    svg.add(
        svg.path(d="".join([outline, *rings]), fill="none", stroke=RIM, stroke_width=RIM_MM, stroke_linejoin="round")
    )
    return str(svg.tostring()) + "\n"


def preview_jpeg(facts: JobFacts, lit: Relief | None = None) -> bytes:
    """The PNG's picture on white paper, small enough to stand inside the setup sheet."""
    from PIL import Image

    lit = lit or sign_relief(facts)
    sign = with_shadow(lit)
    paper = Image.new("RGBA", sign.size, "white")
    paper.alpha_composite(sign)
    buffer = io.BytesIO()
    paper.convert("RGB").save(buffer, format="JPEG", quality=JPEG_QUALITY)
    return buffer.getvalue()


def _on_paper(edge: Polygon | MultiPolygon, height_mm: float) -> Polygon | MultiPolygon:
    """Y down, as in pictures."""
    from shapely.affinity import affine_transform

    turned: Polygon | MultiPolygon = affine_transform(edge, [1, 0, 0, -1, 0, height_mm])
    return turned


def _ring(hole: Hole, height_mm: float) -> str:
    """Path data of a hole: two arcs that meet, or with straight lines between them for a slot."""
    radius, turn = hole.diameter_mm / 2, math.radians(hole.angle_deg)
    if not hole.span_mm:
        x, y, r, d = (figure(v, 4) for v in (hole.x_mm - radius, height_mm - hole.y_mm, radius, 2 * radius))
        return f"M{x} {y}a{r} {r} 0 1 0 {d} 0a{r} {r} 0 1 0 -{d} 0Z"
    (x0, y0), (x1, y1) = hole.ends_mm
    out_x, out_y = radius * math.sin(turn), radius * math.cos(turn)
    places = ((x0 + out_x, y0 - out_y), (x1 + out_x, y1 - out_y), (x1 - out_x, y1 + out_y), (x0 - out_x, y0 + out_y))
    a, b, c, d = (f"{figure(x, 4)} {figure(height_mm - y, 4)}" for x, y in places)
    arc = f"A{figure(radius, 4)} {figure(radius, 4)} 0 0 0"
    return f"M{a}L{b}{arc} {c}L{d}{arc} {a}Z"


def _fine(lit: Relief) -> bytes:
    """The lit board as a JPEG: what lies outside the sign is cut away by the SVG's own outline."""
    from PIL import Image

    buffer = io.BytesIO()
    Image.fromarray(lit.rgb).save(buffer, format="JPEG", quality=FINE_QUALITY, subsampling=FULL_COLOUR)
    return buffer.getvalue()


@lru_cache(maxsize=1)
def with_shadow(lit: Relief) -> Image.Image:
    """The sign over its own blurred shadow, shifted down and right, away from the light. Several pictures are made
    from it: none may draw on it."""
    from PIL import Image, ImageFilter

    h, w = lit.solid.shape
    margin = round(SHADOW_SHARE * max(w, h))
    fall = margin // 3
    size = (w + 2 * margin, h + 2 * margin)
    solid = Image.fromarray(lit.solid)
    # the shadow is soft: a quarter of the resolution is enough, and sixteen times quicker
    dim = Image.new("L", (size[0] // 4 + 1, size[1] // 4 + 1), 0)
    dim.paste(solid.reduce(4), ((margin + fall) // 4, (margin + fall) // 4))
    dim = dim.filter(ImageFilter.GaussianBlur(fall / 6)).point(lambda v: v * SHADOW_DARKNESS).resize(size)
    dim.paste(_in_holes(solid, lit.px_per_mm), (margin, margin), Image.fromarray(lit.inside))
    shadow = Image.new("RGBA", size, SHADOW_RGB)
    shadow.putalpha(dim)
    sign = Image.fromarray(lit.rgb)
    sign.putalpha(solid)
    shadow.alpha_composite(sign, (margin, margin))
    return shadow


def _in_holes(solid: Image.Image, px_per_mm: float) -> Image.Image:
    """How dark it is in a hole: a crescent under its upper left rim, and light from there on."""
    from PIL import Image, ImageFilter

    half = solid.reduce(2)
    fall = round(RIM_FALL_MM * px_per_mm / 2)
    moved = Image.new("L", half.size, 0)
    moved.paste(half, (fall, fall))
    soft = moved.filter(ImageFilter.GaussianBlur(RIM_SOFT_MM * px_per_mm / 2))
    return soft.point(lambda v: v * RIM_DARKNESS).resize(solid.size)


def _encoded(image: Image.Image, px_per_mm: float) -> bytes:
    buffer = io.BytesIO()
    dots = px_per_mm * INCH_MM
    # runs only: grain repeats nowhere else, and looking for more makes files larger and slower
    image.save(buffer, format="PNG", compress_level=1, compress_type=RUNS_ONLY, dpi=(dots, dots))
    return buffer.getvalue()


def data_uri(picture: bytes, kind: str = "png") -> str:
    """The picture as a link that needs no file beside it; `kind` is png or jpeg."""
    return f"data:image/{kind};base64," + base64.b64encode(picture).decode("ascii")
