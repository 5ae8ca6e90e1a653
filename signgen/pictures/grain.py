"""Grain made by arithmetic: the same board every time, on every machine, and no photograph's."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Float32 = NDArray[np.float32]

RING_MM = 6.5
"""Mean distance of growth lines across the board."""


def _lattice(ny: int, nx: int, seed: int) -> Float32:
    """(ny, nx) values in [0, 1) from an integer hash of the place (a multiply-xorshift mix), the same everywhere."""
    n = np.arange(ny * nx, dtype=np.uint32) + np.uint32(seed * 2654435761 % (1 << 32))
    for shift, factor in ((16, 0x7FEB352D), (15, 0x846CA68B)):
        n ^= n >> np.uint32(shift)
        n *= np.uint32(factor)
    n ^= n >> np.uint32(16)
    return (n >> np.uint32(8)).astype(np.float32).reshape(ny, nx) / np.float32(1 << 24)


def _noise(x_mm: Float32, y_mm: Float32, step_x_mm: float, step_y_mm: float, seed: int) -> Float32:
    """(h, w) smooth noise in 0..1 whose features are about step_x by step_y large; x ascends, y descends."""
    from PIL import Image

    w, h = len(x_mm), len(y_mm)
    # nothing finer than half a pixel: on a board of some metres it could not be seen and would take long
    step_x_mm, step_y_mm = (max(step, float(x_mm[-1]) / w / 2) for step in (step_x_mm, step_y_mm))
    columns = max(2, int(np.ceil(float(x_mm[-1]) / step_x_mm)) + 2)
    rows = max(2, int(np.ceil(float(y_mm[0]) / step_y_mm)) + 2)
    image = Image.fromarray(_lattice(rows, columns, seed)[::-1].copy())
    box = (0.5, rows - 0.5 - float(y_mm[0]) / step_y_mm, 0.5 + float(x_mm[-1]) / step_x_mm, rows - 0.5)
    values: Float32 = np.asarray(image.resize((w, h), Image.Resampling.BICUBIC, box=box))
    return values


def wood(x_mm: Float32, y_mm: Float32) -> Float32:
    """(h, w) factors about 1 for a board whose grain runs along X: growth lines that wander, and fine pores."""
    wander = 34 * _noise(x_mm, y_mm, 150.0, 62.0, 3) + 5 * _noise(x_mm, y_mm, 45.0, 18.0, 5)
    phase = (y_mm[:, None] + wander) * np.float32(1 / RING_MM)
    phase -= np.floor(phase)
    # a growth line darkens slowly through the season and ends at once
    late = phase * phase * phase * (1 - np.clip((phase - 0.9) * 10, 0, 1))
    streaks = _noise(x_mm, y_mm, 16.0, 0.6, 7)
    pores = np.maximum(_noise(x_mm, y_mm, 3.2, 0.34, 19) - np.float32(0.72), 0)
    patches = _noise(x_mm, y_mm, 120.0, 25.0, 11)
    tone: Float32 = 1.01 - 0.10 * late + 0.07 * (streaks - 0.5) + 0.06 * (patches - 0.5) - 0.35 * pores
    return tone


def mottle(x_mm: Float32, y_mm: Float32) -> Float32:
    """(h, w) factors about 1 for a board without grain: faint clouds and fibres."""
    clouds = _noise(x_mm, y_mm, 14.0, 14.0, 13)
    fibres = _noise(x_mm, y_mm, 1.1, 0.9, 17)
    tone: Float32 = 1.0 + 0.02 * (clouds - 0.5) + 0.025 * (fibres - 0.5)
    return tone
