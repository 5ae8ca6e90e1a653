"""Codes on a sign: how deep their modules go, what is too small to be read, and what is to be done with them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry import MultiLineString

from signgen.artwork.codes import QUIET, dark_middles
from signgen.artwork.colours import lightness
from signgen.artwork.mapped import applied
from signgen.artwork.matrix import Matrix
from signgen.drawing.drawing import OrderedPicture
from signgen.errors import Problem
from signgen.messages import Message, Mm
from signgen.spec.paint import paint_rgb
from signgen.spec.picture_spec import PictureSpec
from signgen.spec.sign_spec import SignSpec

DOT_RATIO, GROOVE_RATIO, DOT_MM = 1.3, 1.2, 0.02
"""Width of a dot over the module (below 1 readers fail, 1.2 to 1.4 read best: measured with zxing-cpp), that of the
groove for which a code's depth is chosen, and the length of a dot's line."""

BARE_MM = 0.1
"""Depth at the rim of a V that wiping the face takes the paint from (common practice)."""

CUTTER_RATIO, LEAST_V_MM = 0.78, 1.5
"""Most of a module that an end mill may be wide, and the least module for a V-bit: beyond it lone modules are lost, and
no error correction helps (measured with zxing-cpp)."""

DARK_PAINT = 0.45
"""Lightness (CIE L*, over 100) below which paint is dark enough beside light wood (L* about 0.75)."""


def dots(asked: PictureSpec, matrix: Matrix) -> MultiLineString:
    """A line hardly longer than a point in the middle of each module."""
    middles = applied(matrix, shapely.get_coordinates(dark_middles(asked.what, asked.level)))
    half = np.array([DOT_MM / 2, 0.0])
    return MultiLineString([np.stack([middle - half, middle + half]) for middle in middles])


def code_depth_mm(spec: SignSpec, asked: PictureSpec, module_mm: float, most_mm: float) -> float:
    """By the module: dots as wide as DOT_RATIO of it, grooves a little deeper than one module's V, so that no floors
    are cleared that paint hides; flat ones as asked."""
    if asked.finish == "recess":
        return most_mm
    slope = spec.v_bit.slope
    wide = DOT_RATIO * module_mm + 2 * BARE_MM * slope if asked.is_dots else GROOVE_RATIO * module_mm
    depth = min((wide - spec.v_bit.tip_mm) / 2 / slope, spec.v_bit.reach_mm, spec.thickness_mm / 2)
    return max(0.1, math.floor(1000 * (depth if asked.is_dots else min(depth, most_mm))) / 1000)


def code_problems(spec: SignSpec, pictures: Sequence[OrderedPicture]) -> Iterator[Problem]:
    """Modules that the cutters lose, and paint that is no darker than wood."""
    mills = [tool.diameter_mm for tool in spec.shop.tools if tool.kind == "end-mill" and not tool.only_named]
    thinnest = spec.end_mill.diameter_mm if spec.end_mill else min(mills, default=math.inf)
    codes = [each for each in pictures if each.code_text]
    for code, asked in zip(codes, (each for each in spec.pictures if each.kind == "code"), strict=True):
        is_flat = asked.finish == "recess"
        least = math.ceil(100 * (thinnest / CUTTER_RATIO if is_flat else LEAST_V_MM) - 1e-6) / 100
        if code.module_mm < least - 1e-9:
            what = Message("art.an_end_mill", diameter=Mm(thinnest)) if is_flat else Message("art.the_v_bit")
            size = Mm(round(code.height_mm / code.module_mm * least, 1))
            yield Problem(
                where="code",
                what=Message("art.module_too_small", module=Mm(round(code.module_mm, 2)), what=what),
                remedy=Message("art.use_module", least=Mm(least), size=size),
            )
    if codes and spec.paint and lightness(paint_rgb(spec.paint, "paint")) > DARK_PAINT:
        yield Problem(where="paint", what=Message("art.light_paint"), remedy=Message("art.use_dark_paint"))


def code_warnings(pictures: Sequence[OrderedPicture]) -> Iterator[Message]:
    for code in pictures:
        if code.code_text:
            yield Message("art.paint_code", quiet=Mm(round(QUIET * code.module_mm, 1)))
