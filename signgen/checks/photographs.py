"""A picture as telephones would photograph it: tilted, turned, blurred, noisy, unevenly lit; always the same ten."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

Image = NDArray[np.float64]

COUNT, SEED = 10, 18004
TILT, TURN_RAD, BLUR_PX, NOISE, LIGHT_FALL = 0.16, 0.5, 0.9, 0.04, 0.25
"""The most of each: corners moved in over the side (a tilt of about 30 degrees), turned either way, the blur's
deviation, the noise's over white, and how much darker one side is."""

MARGIN = 0.35
"""Board beyond the picture on each side, over its size; it is as light as the picture's rim."""


def photographs(picture: Image) -> Iterator[Image]:
    """Ten of them, the harder the later."""
    chance = np.random.default_rng(SEED)
    rim = float(np.median(np.concatenate([picture[0], picture[-1], picture[:, 0], picture[:, -1]])))
    for number in range(1, COUNT + 1):
        share = number / COUNT
        seen = _tilted(picture, rim, chance.uniform(0, TILT * share, (4, 2)), chance.uniform(-1, 1) * TURN_RAD * share)
        seen = _blurred(seen, BLUR_PX * share)
        fall = np.linspace(1.0, 1.0 - LIGHT_FALL * share, seen.shape[1])
        yield np.clip(seen * fall + chance.normal(0, NOISE * share, seen.shape), 0, 1)


def _tilted(picture: Image, rim: float, inward: Image, turn: float) -> Image:
    """Seen in perspective. `inward` (4, 2): how far each corner moves in, over the picture's sides."""
    high, wide = picture.shape
    out_h, out_w = round(high * (1 + 2 * MARGIN)), round(wide * (1 + 2 * MARGIN))
    signs = np.array([(1, 1), (-1, 1), (-1, -1), (1, -1)])
    corners = np.array([(0, 0), (wide, 0), (wide, high), (0, high)], float)
    moved = corners + inward * signs * (wide, high)
    middle = np.array([wide / 2, high / 2])
    spin = np.array([(np.cos(turn), -np.sin(turn)), (np.sin(turn), np.cos(turn))])
    placed = (moved - middle) @ spin.T + (out_w / 2, out_h / 2)
    # The projective map from the photograph back to the picture, from its four corners (plane projective geometry).
    rows, right = [], []
    for (x, y), (u, v) in zip(placed, corners, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    a = np.append(np.linalg.solve(np.array(rows), np.array(right)), 1.0).reshape(3, 3)
    y, x = np.mgrid[0:out_h, 0:out_w] + 0.5
    depth = a[2, 0] * x + a[2, 1] * y + a[2, 2]
    u = (a[0, 0] * x + a[0, 1] * y + a[0, 2]) / depth - 0.5
    v = (a[1, 0] * x + a[1, 1] * y + a[1, 2]) / depth - 0.5
    inside = (u >= 0) & (v >= 0) & (u <= wide - 1) & (v <= high - 1)
    u0, v0 = np.clip(np.floor(u).astype(int), 0, wide - 2), np.clip(np.floor(v).astype(int), 0, high - 2)
    s, t = np.clip(u - u0, 0, 1), np.clip(v - v0, 0, 1)
    top = picture[v0, u0] * (1 - s) + picture[v0, u0 + 1] * s
    low = picture[v0 + 1, u0] * (1 - s) + picture[v0 + 1, u0 + 1] * s
    return np.where(inside, top * (1 - t) + low * t, rim)


def _blurred(picture: Image, deviation_px: float) -> Image:
    reach = max(1, int(np.ceil(3 * deviation_px)))
    weight = np.exp(-0.5 * (np.arange(-reach, reach + 1) / deviation_px) ** 2)
    weight /= weight.sum()
    padded = np.pad(picture, reach, mode="edge")
    rows = np.apply_along_axis(lambda line: np.convolve(line, weight, "valid"), 1, padded)
    return np.apply_along_axis(lambda line: np.convolve(line, weight, "valid"), 0, rows)
