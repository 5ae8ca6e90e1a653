"""Affine maps applied: to many points, by shapely, and how much they stretch."""

from __future__ import annotations

import numpy as np

from signgen.artwork.matrix import Matrix
from signgen.geometry.paths import FloatArray


def applied(matrix: Matrix, points: FloatArray) -> FloatArray:
    """(..., 2) points after the map."""
    a, b, c, d, e, f = matrix
    x, y = points[..., 0], points[..., 1]
    return np.stack([a * x + c * y + e, b * x + d * y + f], axis=-1)


def for_shapely(matrix: Matrix) -> list[float]:
    """As `shapely.affinity.affine_transform` wants it."""
    a, b, c, d, e, f = matrix
    return [a, c, b, d, e, f]


def stretch(matrix: Matrix) -> float:
    """The most by which a length grows: the greater singular value of the linear part."""
    a, b, c, d, _, _ = matrix
    return float(np.linalg.norm(np.array([[a, c], [b, d]]), 2))
