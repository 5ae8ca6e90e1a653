"""The board before the first program, after each of them, and the finished sign, side by side on one sheet."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import TYPE_CHECKING

import numpy as np
from msgspec.structs import replace
from shapely.geometry import box

from signgen.geometry.raster import Grid
from signgen.job.facts import JobFacts
from signgen.lettering.catalogue import catalogue
from signgen.pictures.plate import INK
from signgen.pictures.preview import RUNS_ONLY, with_shadow
from signgen.pictures.relief import Relief, relief
from signgen.replay.heights import HeightMap
from signgen.words.words import words_of

if TYPE_CHECKING:
    from PIL import Image, ImageFont

PANEL_PX = (390, 290)
"""Room for each picture."""
GAP_PX, CAPTION_PX, TEXT_PX = 22, 32, 17
MOST_COLUMNS = 3
LABEL_FACE = "atkinson-regular"
PAPER, TABLE = (255, 255, 255), (150, 146, 138)
"""What lies around the pictures, and what is seen through the board where it is cut through."""
FINER = 1.2
"""Cells of the boards that a panel shows, for each pixel at the least."""


def steps_png(facts: JobFacts, lit: Relief) -> bytes:
    """A PNG with a caption under each picture; `lit` is the finished sign (`preview.sign_relief`)."""
    from PIL import Image, ImageDraw

    words = words_of(facts)
    bare = replace(facts.boards[0], z_mm=np.full_like(facts.boards[0].z_mm, facts.drawing.thickness_mm))
    boards = [(bare, words("steps.board")), *zip(facts.boards, _captions(facts), strict=True)]
    pictures = [(_board(facts, board), caption) for board, caption in boards]
    pictures.append((_finished(lit), words("steps.finished")))
    columns = 2 if len(pictures) == 4 else min(MOST_COLUMNS, len(pictures))
    rows = -(-len(pictures) // columns)
    wide, high = PANEL_PX[0] + GAP_PX, PANEL_PX[1] + CAPTION_PX + GAP_PX
    sheet = Image.new("RGB", (columns * wide + GAP_PX, rows * high + GAP_PX), PAPER)
    pen, face = ImageDraw.Draw(sheet), _face()
    for number, (picture, caption) in enumerate(pictures):
        left, top = GAP_PX + number % columns * wide, GAP_PX + number // columns * high
        sheet.paste(picture, (left + (PANEL_PX[0] - picture.width) // 2, top + (PANEL_PX[1] - picture.height) // 2))
        text = _shortened(caption, lambda part: face.getlength(part), PANEL_PX[0])
        pen.text((left + PANEL_PX[0] // 2, top + PANEL_PX[1] + 8), text, fill=INK, font=face, anchor="ma")
    buffer = io.BytesIO()
    sheet.save(buffer, format="PNG", compress_level=1, compress_type=RUNS_ONLY)
    return buffer.getvalue()


def _face() -> ImageFont.FreeTypeFont:
    """Captions are set in a face of the catalogue, so that they look alike everywhere."""
    from PIL import ImageFont

    return ImageFont.truetype(str(next(face.path for face in catalogue() if face.name == LABEL_FACE)), TEXT_PX)


def _captions(facts: JobFacts) -> list[str]:
    words = words_of(facts)
    return [words("steps.after", number=number, tool=words.tool(program.tool))
            for number, program in enumerate(facts.programs, 1)]  # fmt: skip


def _shortened(text: str, length: Callable[[str], float], room: float) -> str:
    while len(text) > 1 and length(text) > room:
        text = text.removesuffix("…")[:-1].rstrip() + "…"
    return text


def _board(facts: JobFacts, board: HeightMap) -> Image.Image:
    """The whole board, lit, on the table."""
    from PIL import Image

    left, front, right, back = facts.stock.bounds_mm
    size = (right - left, back - front)
    scale = min(PANEL_PX[0] / size[0], PANEL_PX[1] / size[1])
    # finer cells than the picture shows would only be averaged away
    every = max(1, int(1 / (scale * board.cell_mm * FINER)))
    z = board.z_mm[::every, ::every]
    ny, nx = z.shape
    x0, y0, cell = board.x0_mm - left, board.y0_mm - front, board.cell_mm * every
    moved = HeightMap(z_mm=z, grid=Grid(nx=nx, ny=ny, x0_mm=x0, y0_mm=y0, cell_mm=cell))
    lit = relief(moved, box(0, 0, *size), size, facts.drawing.thickness_mm, facts.spec.material, scale)
    picture = Image.new("RGB", (lit.rgb.shape[1], lit.rgb.shape[0]), TABLE)
    picture.paste(Image.fromarray(lit.rgb), (0, 0), Image.fromarray(lit.solid))
    return picture


def _finished(lit: Relief) -> Image.Image:
    """The sign with its shadow, on paper."""
    from PIL import Image

    sign = with_shadow(lit).copy()
    sign.thumbnail(PANEL_PX, reducing_gap=2.0)
    paper = Image.new("RGB", sign.size, PAPER)
    paper.paste(sign, (0, 0), sign)
    return paper
