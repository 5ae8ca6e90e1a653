"""A height map as a lit surface: the colours of the finished sign, before anything is cut away from the picture."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon

from signgen.pictures.grain import mottle, wood
from signgen.replay.heights import HeightMap
from signgen.shop.materials import Material

Float32 = NDArray[np.float32]
UInt8 = NDArray[np.uint8]

LIGHT = np.array([-0.52, 0.55, 0.655], dtype=np.float32)
"""Towards the light: from the upper left, as drawings have been shaded by custom, 41 degrees above the board."""
AMBIENT = np.float32(0.46)
"""Share of the light that reaches a wall turned away from it."""
SINK = np.float32(0.16)
"""How much darker the deepest place is than the face: the sky that a groove's bottom sees is narrower."""
FRESH_MM = 0.12
"""Depth from which a place shows the fresh cut only; shallower ones show the face through, as a light scratch
does."""
OVERSAMPLE = 3
"""Rows and columns in a pixel when an outline is drawn, so that its edge comes out soft."""


class Relief(Struct, frozen=True, kw_only=True, eq=False):
    """`rgb` (h, w, 3), row 0 at the top (greatest Y), the sign's bounding rectangle exactly; `solid` (h, w):
    255 where the finished sign is, 0 outside its edge and where a cutter went through; `inside` (h, w): the same
    with its holes filled; `px_per_mm`."""

    rgb: UInt8
    solid: UInt8
    inside: UInt8
    px_per_mm: float


def relief(
    board: HeightMap,
    edge: Polygon | MultiPolygon,
    size_mm: tuple[float, float],
    thickness_mm: float,
    material: Material,
    px_per_mm: float,
) -> Relief:
    """The part of a board inside the sign's bounding rectangle (0, 0) to `size_mm`, lit.

    The outside is cut away along `edge`, for the tabs are cut by hand; whatever else is missing is missing in the
    map.
    """
    w = max(1, round(size_mm[0] * px_per_mm))
    h = max(1, round(size_mm[1] * px_per_mm))
    through = board.z_mm <= 0.0
    pitch = np.float32(size_mm[0] / w)
    z = _resampled(np.where(through, np.float32(thickness_mm), board.z_mm), board, size_mm, (w, h)).copy()
    # a pixel on the edge is half of the sign and half of the groove around it, or of a tab: the sign's own top goes
    # on
    rim = edge.buffer(-1.2 * max(board.cell_mm, float(pitch)))
    z[edge_mask(rim, size_mm, (w, h)) < 255] = thickness_mm
    depth = np.clip(thickness_mm - z, 0.0, None)
    rgb = _coloured(_light(z, depth, pitch), depth, _texture(material.grain, w, h, float(pitch)), material)
    open_share = _softened(_resampled(through.astype(np.float32), board, size_mm, (w, h)))
    inside = edge_mask(edge, size_mm, (w, h))
    solid = np.minimum(inside, (255.0 * (1.0 - open_share) + 0.5).astype(np.uint8))
    return Relief(rgb=rgb, solid=solid, inside=inside, px_per_mm=w / size_mm[0])


@lru_cache(maxsize=2)
def _texture(grain: bool, w: int, h: int, pitch_mm: float) -> Float32:
    """(h, w) factors about 1; the same for every sign of a size and kind of material, as in a batch."""
    pitch = np.float32(pitch_mm)
    x_mm = (np.arange(w, dtype=np.float32) + 0.5) * pitch
    y_mm = (h - np.arange(h, dtype=np.float32) - 0.5) * pitch
    texture = wood(x_mm, y_mm) if grain else mottle(x_mm, y_mm)
    texture.setflags(write=False)
    return texture


def edge_mask(edge: Polygon | MultiPolygon, size_mm: tuple[float, float], size_px: tuple[int, int]) -> UInt8:
    """(h, w): 255 inside the outline, 0 outside, between on its edge."""
    from PIL import Image, ImageDraw

    w, h = size_px
    image = Image.new("L", (w * OVERSAMPLE, h * OVERSAMPLE), 0)
    scale = np.array([w * OVERSAMPLE / size_mm[0], -h * OVERSAMPLE / size_mm[1]])
    draw = ImageDraw.Draw(image)
    parts = [part for part in getattr(edge, "geoms", [edge]) if not part.is_empty]
    # a part may stand in another's hole, as letters stand in a frame: the wider is drawn first
    parts.sort(key=lambda part: -math.prod(np.subtract(part.bounds[2:], part.bounds[:2])))
    rings = [(ring, ink) for part in parts for ring, ink in ((part.exterior, 255), *((r, 0) for r in part.interiors))]
    for ring, ink in rings:
        points = np.asarray(ring.coords)[:, :2] * scale + np.array([0.0, h * OVERSAMPLE])
        # Pillow fills the pixels that the outline runs over, so the outline goes through pixel centres
        draw.polygon([(x, y) for x, y in (points - 0.5).tolist()], fill=ink)
    return np.asarray(image.reduce(OVERSAMPLE))


def _resampled(values: Float32, board: HeightMap, size_mm: tuple[float, float], size_px: tuple[int, int]) -> Float32:
    """The map at the pixels' centres, flipped so that row 0 is the top; finer maps are averaged, coarser ones
    interpolated."""
    from PIL import Image

    ny, nx = values.shape
    left = (0.0 - board.x0_mm) / board.cell_mm + 0.5
    right = (size_mm[0] - board.x0_mm) / board.cell_mm + 0.5
    low = (0.0 - board.y0_mm) / board.cell_mm + 0.5
    high = (size_mm[1] - board.y0_mm) / board.cell_mm + 0.5
    pad = max(0, *(int(np.ceil(miss)) for miss in (-left, -low, right - nx, high - ny)))
    if pad:
        values = np.pad(values, pad, mode="edge")
        left, right, low, high, ny = left + pad, right + pad, low + pad, high + pad, ny + 2 * pad
    image = Image.fromarray(np.ascontiguousarray(values[::-1]))
    box = (left, ny - high, right, ny - low)
    pixels: Float32 = np.asarray(image.resize(size_px, Image.Resampling.BILINEAR, box=box))
    return pixels


def _light(z: Float32, depth: Float32, pitch: np.float32) -> Float32:
    """(h, w) brightness, 1 on the flat face: a matt surface, a light from one side and the sky."""
    slope_x = np.zeros_like(z)
    slope_y = np.zeros_like(z)
    slope_x[:, 1:-1] = (z[:, 2:] - z[:, :-2]) / (2 * pitch)
    slope_y[1:-1] = (z[:-2] - z[2:]) / (2 * pitch)
    facing = LIGHT[2] - slope_x * LIGHT[0] - slope_y * LIGHT[1]
    facing /= np.sqrt(1 + slope_x * slope_x + slope_y * slope_y) * LIGHT[2]
    deepest = max(float(depth.max()), 1e-6)
    brightness: Float32 = AMBIENT + (1 - AMBIENT) * np.maximum(facing, 0)
    brightness *= 1 - SINK * depth / np.float32(deepest)
    return brightness


def _coloured(brightness: Float32, depth: Float32, texture: Float32, material: Material) -> UInt8:
    """Face and fresh cut, each with its grain, times the light."""
    fresh = np.minimum(depth / np.float32(FRESH_MM), 1)
    tone = brightness * texture
    rgb = np.empty((*depth.shape, 3), dtype=np.uint8)
    for channel, (face, ground) in enumerate(zip(material.colour_rgb, material.ground_rgb, strict=True)):
        value = (face + (ground - face) * fresh) * tone
        np.clip(value, 0, 255, out=value)
        rgb[..., channel] = value
    return rgb


def _softened(share: Float32) -> Float32:
    """An indicator of 0 and 1 with its staircase rounded: blurred by three pixels, then steepened about a half."""
    blurred = share.copy()
    blurred[1:-1] = (share[:-2] + 2 * share[1:-1] + share[2:]) / 4
    across = blurred.copy()
    across[:, 1:-1] = (blurred[:, :-2] + 2 * blurred[:, 1:-1] + blurred[:, 2:]) / 4
    steep: Float32 = np.clip((across - 0.5) * np.float32(1.8) + np.float32(0.5), 0, 1)
    return steep
