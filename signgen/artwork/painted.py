"""What a drawing paints, in its order, before anybody knows how large it will be."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from signgen.artwork.colours import Rgb
from signgen.artwork.matrix import Matrix
from signgen.artwork.outline import Outline
from signgen.artwork.pen import Pen

Rule = Literal["nonzero", "evenodd"]


class Painted(Struct, frozen=True, kw_only=True, eq=False):
    """An outline in units of its own and the matrix to the picture's, in which Y runs down; filled by a rule or drawn
    with a pen; what of it is seen lies in every one of `clips`. `line`: of the file, 0 where nobody counts."""

    outline: Outline
    matrix: Matrix
    how: Rule | Pen
    colour: Rgb
    clips: tuple[Clip, ...] = ()
    line: int = 0


class Clip(Struct, frozen=True, kw_only=True, eq=False):
    """What lies in any of `shapes`, as far as it lies in every one of `clips`."""

    shapes: tuple[Painted, ...]
    clips: tuple[Clip, ...] = ()
