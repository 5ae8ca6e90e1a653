"""The sign before any tool: every area in sign coordinates, all of it checked, in one value."""

from __future__ import annotations

from typing import TypeVar

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Polygon

from signgen.drawing.drawn_line import DrawnLine
from signgen.features.edge import Edge
from signgen.features.feature import Feature, FloatArray, Side
from signgen.features.recess import Recess
from signgen.messages import Sentence

Kind = TypeVar("Kind", bound=Feature)


class Plate(Struct, frozen=True, kw_only=True):
    """The wood that the sign is cut from, as large as the sign (the board is larger)."""

    width_mm: float
    height_mm: float
    thickness_mm: float

    def top_mm(self, x_mm: FloatArray, y_mm: FloatArray) -> FloatArray:
        """The height of the untouched board at places, from which every depth counts down: flat, so the same
        everywhere. `x_mm` and `y_mm` broadcast; the result is read-only."""
        return np.broadcast_to(np.float64(self.thickness_mm), np.broadcast_shapes(np.shape(x_mm), np.shape(y_mm)))


class OrderedPicture(Struct, frozen=True, kw_only=True):
    """A picture as its file says it: `of` the file, `name` that with which the names of its features begin, `area_mm2`
    of all that is not drawn in lines, at its height. `has_bridges`: bars of wood may stand across it. Of a code: what
    it says, (x0, y0, x1, y1) with its quiet zone, and the width of a module."""

    name: str
    source: str
    of: str
    area_mm2: float
    height_mm: float
    has_bridges: bool = False
    code_text: str = ""
    code_box_mm: tuple[float, float, float, float] = (0.0, 0.0, 0.0, 0.0)
    module_mm: float = 0.0


class Drawing(Struct, frozen=True, kw_only=True):
    """Everything that the finished sign has. Nothing overlaps a hole or crosses the edge; names are unique.

    `features` in the order in which they are made of a kind, with an edge for each piece: one, but for a sheet of signs
    (`drawing.nested`), whose size is that of their bounds. `side`: the one that lies up.
    `cap_height_mm` is that of the smallest of its `lines`. `warnings`: whole sentences about what can be made but may
    disappoint.
    """

    plate: Plate
    features: tuple[Feature, ...]
    cap_height_mm: float
    lines: tuple[DrawnLine, ...] = ()
    pictures: tuple[OrderedPicture, ...] = ()
    warnings: tuple[Sentence, ...] = ()
    side: Side = "face"

    @property
    def width_mm(self) -> float:
        return self.plate.width_mm

    @property
    def height_mm(self) -> float:
        return self.plate.height_mm

    @property
    def thickness_mm(self) -> float:
        return self.plate.thickness_mm

    def of(self, kind: type[Kind]) -> tuple[Kind, ...]:
        """The features of a kind, variants of it among them, in order."""
        return tuple(feature for feature in self.features if isinstance(feature, kind))

    def first(self, kind: type[Kind]) -> Kind | None:
        """The first feature of a kind, which may stand for all where they are alike; None when there is none."""
        return next((feature for feature in self.features if isinstance(feature, kind)), None)

    def having(self, kind: type[Kind], features: tuple[Kind, ...]) -> Drawing:
        """The same with other features of a kind."""
        return replace(self, features=(*(each for each in self.features if not isinstance(each, kind)), *features))

    @property
    def upward(self) -> tuple[Feature, ...]:
        """The features that are cut from the side that lies up."""
        return tuple(feature for feature in self.features if feature.side in (self.side, "both"))

    @property
    def letters(self) -> tuple[Feature, ...]:
        """The letters of the text, however they are made."""
        return tuple(feature for feature in self.features if feature.source == "text")

    def is_through(self, recess: Recess) -> bool:
        """Whether a recess is cut right through the board."""
        return recess.depth_mm >= self.thickness_mm

    @property
    def edge(self) -> Polygon | MultiPolygon:
        """All that is sign, seen from above: an area of several polygons on a sheet of signs."""
        edges = self.outlines
        return edges[0] if not self.pieces else MultiPolygon(edges)

    @property
    def outlines(self) -> tuple[Polygon, ...]:
        """The edge of each piece: one, but for a sheet of signs."""
        return tuple(edge.area for edge in self.of(Edge))

    @property
    def pieces(self) -> tuple[str, ...]:
        """The names of the pieces of a sheet; none of a single sign."""
        return tuple(edge.piece for edge in self.of(Edge) if edge.piece)

    @property
    def is_blank(self) -> bool:
        """Whether the board is already to size: its own edge is the sign's, and stays."""
        return not any(edge.takes for edge in self.of(Edge))

    @property
    def skin_mm(self) -> float:
        """What stays under the outside cut: the same for all pieces of a sheet."""
        return max(edge.skin_mm for edge in self.of(Edge))
