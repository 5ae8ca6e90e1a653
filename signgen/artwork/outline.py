"""Lines and curves of a shape, before anybody knows how large it will be."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.artwork.mapped import applied
from signgen.artwork.matrix import Matrix
from signgen.geometry.curves import CUBIC, LINE, QUADRATIC, flatten_mixed
from signgen.geometry.paths import FloatArray

IntArray = NDArray[np.int64]
__all__ = ["CUBIC", "LINE", "QUADRATIC", "Outline", "outline_of"]


class Outline(Struct, frozen=True, kw_only=True, eq=False):
    """`kinds` (n,) and `controls` (n, 4, 2) of every line and curve as `flatten_mixed` has them; part i owns those from
    begins[i] to begins[i + 1], starts at starts[i], and ends where it began when closed[i]. A part may have none: a
    dot, if its pen has a round or square end."""

    kinds: IntArray
    controls: FloatArray
    begins: IntArray
    starts: FloatArray
    closed: NDArray[np.bool_]

    def __len__(self) -> int:
        return len(self.kinds)

    @property
    def is_finite(self) -> bool:
        return bool(np.isfinite(self.controls).all() and np.isfinite(self.starts).all())

    def mapped(self, matrix: Matrix) -> Outline:
        """Exact under any affine map."""
        return Outline(
            kinds=self.kinds,
            controls=applied(matrix, self.controls),
            begins=self.begins,
            starts=applied(matrix, self.starts),
            closed=self.closed,
        )

    def parts(self, chord: float) -> list[FloatArray]:
        """(k, 2) points of every part, its start first, no chord further than `chord` from its curve. One that is
        closed does not come back to its start, unless the file says so."""
        points, first = flatten_mixed(self.kinds, self.controls, chord)
        return [
            np.concatenate([start[None], points[first[a] : first[b]]])
            for start, a, b in zip(self.starts, self.begins[:-1], self.begins[1:], strict=True)
        ]

    def bounds_px(self) -> tuple[float, float, float, float] | None:
        """Of the control points, in which the curves lie."""
        if not len(self.starts):
            return None
        points = np.concatenate([self.controls.reshape(-1, 2), self.starts])
        (x0, y0), (x1, y1) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
        return x0, y0, x1, y1


def outline_of(
    kinds: list[int],
    controls: list[tuple[complex, complex, complex, complex]],
    begins: list[int],
    starts: list[complex],
    closed: list[bool],
) -> Outline:
    """From points as complex numbers. `begins` without the last one."""
    raw = np.array(controls, dtype=np.complex128).reshape(-1, 4)
    at = np.array(starts, dtype=np.complex128)
    return Outline(
        kinds=np.array(kinds, dtype=np.int64),
        controls=np.stack([raw.real, raw.imag], axis=-1),
        begins=np.array([*begins, len(kinds)], dtype=np.int64),
        starts=np.stack([at.real, at.imag], axis=-1),
        closed=np.array(closed, dtype=np.bool_),
    )
