"""The sign before any tool: every area in sign coordinates, all of it checked, in one value."""

from __future__ import annotations

import math

from msgspec import Struct
from shapely.geometry import LineString, MultiLineString, MultiPolygon, Point, Polygon

from signgen.drawing.drawn_line import DrawnLine


class Countersink(Struct, frozen=True, kw_only=True):
    """A cone at the top of a round hole, so that a screw's head lies flush: its diameter at the surface and its full
    angle. It ends where it meets the hole."""

    diameter_mm: float
    angle_deg: float

    @property
    def slope(self) -> float:
        """How much wider its radius gets with each millimetre up: tan(angle / 2). Source: check-values section 8."""
        return math.tan(math.radians(self.angle_deg) / 2)


class Hole(Struct, frozen=True, kw_only=True):
    """A hole right through the board: round, or a slot with round ends.

    (x, y) is its middle, `diameter_mm` how wide it is. `span_mm`: from the middle of one end's circle to the other's,
    0 for a round hole; `angle_deg`: the direction of a slot, anticlockwise from X.
    """

    name: str
    x_mm: float
    y_mm: float
    diameter_mm: float
    span_mm: float = 0.0
    angle_deg: float = 0.0
    sink: Countersink | None = None

    @property
    def ends_mm(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """The middles of the circles at its two ends; of a round hole its middle, twice."""
        half, turn = self.span_mm / 2, math.radians(self.angle_deg)
        along, up = half * math.cos(turn), half * math.sin(turn)
        return (self.x_mm - along, self.y_mm - up), (self.x_mm + along, self.y_mm + up)

    @property
    def face_radius_mm(self) -> float:
        """From its middle line to its rim at the board's top: that of its countersink when it has one."""
        return (self.sink.diameter_mm if self.sink else self.diameter_mm) / 2

    @property
    def sink_depth_mm(self) -> float:
        """How deep its countersink meets the hole: (D - d) / 2 / tan(angle / 2); 0 without one."""
        return (self.sink.diameter_mm - self.diameter_mm) / 2 / self.sink.slope if self.sink else 0.0


class Keyhole(Struct, frozen=True, kw_only=True):
    """A slot for a screw's head, cut from the sign's back: a round entry, and up from it a slot that is wider inside.

    (x, y) is where the screw hangs, `travel_mm` below it the middle of the entry. `entry_mm`, `slot_mm`,
    `undercut_mm`: diameter and widths. `depth_mm` from the back: that of entry and slot; the undercut ends `free_mm`
    higher and is `head_mm` high.
    """

    name: str
    x_mm: float
    y_mm: float
    travel_mm: float
    entry_mm: float
    slot_mm: float
    undercut_mm: float
    depth_mm: float
    head_mm: float
    free_mm: float

    @property
    def entry_at_mm(self) -> tuple[float, float]:
        """The middle of the entry."""
        return self.x_mm, self.y_mm - self.travel_mm

    @property
    def area(self) -> Polygon:
        """All that it takes of the board, at whatever depth, seen from above."""
        way = LineString([self.entry_at_mm, (self.x_mm, self.y_mm)])
        area = way.buffer(self.undercut_mm / 2, quad_segs=32).union(
            Point(self.entry_at_mm).buffer(self.entry_mm / 2, quad_segs=32)
        )
        assert isinstance(area, Polygon)
        return area


class Groove(Struct, frozen=True, kw_only=True):
    """An area engraved with sloping walls that fall from its outline at the cutter's angle.

    The surface at a point inside, at distance s from the outline, lies min(s / tan(angle/2), max_depth) below the
    top; where the limit acts the floor is flat. A bit with a flat tip leaves the bottom of a groove blunt: its tip
    goes only (r - tip/2) / tan(angle/2) deep where the groove is 2 r wide, and strokes narrower than the tip stay
    uncut. `text` is the letter or '' for ornament. `area` is valid, shells counter-clockwise.

    `lines`: of a stroke, what the tip follows at `max_depth_mm`; then the surface at distance q of the nearest line
    lies min((limit_radius - q) / tan(angle/2), max_depth) deep, and the area is all that lies nearer than limit_radius.
    """

    name: str
    text: str
    area: Polygon | MultiPolygon
    angle_deg: float
    tip_mm: float
    max_depth_mm: float
    lines: MultiLineString | None = None

    @property
    def limit_radius_mm(self) -> float:
        """How far from the outline the cutter's middle runs along a wall at the limit: max_depth x tan(angle/2) +
        tip/2."""
        return self.max_depth_mm * math.tan(math.radians(self.angle_deg) / 2) + self.tip_mm / 2


class Recess(Struct, frozen=True, kw_only=True):
    """A flat floor with upright walls, cut by an end mill: a letter sunk into the face, or the ground of a panel.

    Everything within `area` lies `depth_mm` below the board's top, but for inner corners and narrow places where a
    round cutter has no room. With a depth of the board's thickness the area is cut right through. `sharp`: the V-bit
    cuts the corners, as far as the end mill does not reach into them, with walls that slope. `text` is the letter,
    or ''.
    """

    name: str
    text: str
    area: Polygon | MultiPolygon
    depth_mm: float
    sharp: bool = False


class Raised(Struct, frozen=True, kw_only=True):
    """A letter that stands: what a recess round it leaves of the face."""

    name: str
    text: str
    area: Polygon | MultiPolygon


class Tab(Struct, frozen=True, kw_only=True):
    """A bridge that holds the sign in the board: `width_mm` along the edge and `height_mm` up from the stock's
    bottom.

    (x, y) is its middle on the sign's edge; (along_x, along_y) the unit direction of the edge there,
    counter-clockwise. `outline`: which of the drawing's outlines it stands on. `foot_mm`: how far its sides run out
    on both ends between its top and the cut's bottom; 0 for upright ones.
    """

    name: str
    x_mm: float
    y_mm: float
    along_x: float
    along_y: float
    width_mm: float
    height_mm: float
    outline: int = 0
    foot_mm: float = 0.0


BEVEL_BELOW_MM = 0.2
"""How far below a bevel the tip may go, outside the sign: so that the bevel is cut by the flank alone, and not by the
tip, which is never quite sharp (common practice)."""


class Chamfer(Struct, frozen=True, kw_only=True):
    """A bevel of the face's edge all round: `width_mm` of it on the face, falling evenly outwards as steeply as the
    V-bit of that full angle cuts. At distance s inside the edge it lies (width - s) / tan(angle / 2) below the face."""

    width_mm: float
    angle_deg: float

    @property
    def slope(self) -> float:
        """How much wider it gets with each millimetre of depth: tan(angle / 2)."""
        return math.tan(math.radians(self.angle_deg) / 2)

    @property
    def depth_mm(self) -> float:
        """How far below the face the upright edge begins. Source: check-values section 8."""
        return self.width_mm / self.slope


class Drawing(Struct, frozen=True, kw_only=True):
    """Everything that the finished sign has. Nothing overlaps a hole or crosses the edge; names are unique.

    `skin_mm`: what stays of the board under the outside cut, 0 where it goes through but for tabs.
    `cap_height_mm` is that of the smallest of its `lines`. `warnings`: whole sentences about what can be made but may
    disappoint. The drawing of a whole sheet of signs
    (`drawing.nested`) has an edge of several polygons, one for each piece, named in `pieces`; its size is that of
    their bounds.
    """

    width_mm: float
    height_mm: float
    thickness_mm: float
    edge: Polygon | MultiPolygon
    holes: tuple[Hole, ...]
    grooves: tuple[Groove, ...]
    tabs: tuple[Tab, ...]
    cap_height_mm: float
    lines: tuple[DrawnLine, ...] = ()
    warnings: tuple[str, ...] = ()
    pieces: tuple[str, ...] = ()
    skin_mm: float = 0.0
    recesses: tuple[Recess, ...] = ()
    raised: tuple[Raised, ...] = ()
    keyholes: tuple[Keyhole, ...] = ()
    chamfer: Chamfer | None = None

    @property
    def letter_texts(self) -> tuple[str, ...]:
        """The text of every letter, however it is made."""
        return tuple(each.text for family in (self.grooves, self.recesses, self.raised) for each in family)

    def is_through(self, recess: Recess) -> bool:
        """Whether a recess is cut right through the board."""
        return recess.depth_mm >= self.thickness_mm

    @property
    def outlines(self) -> tuple[Polygon, ...]:
        """The edge of each piece: one, but for a sheet of signs."""
        return tuple(self.edge.geoms) if isinstance(self.edge, MultiPolygon) else (self.edge,)
