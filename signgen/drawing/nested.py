"""Several signs on one sheet as one drawing: each moved, perhaps turned by a quarter, its features named after it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace
from shapely import affinity
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.polygon import orient

from signgen.drawing.drawing import Drawing, Groove, Hole, Raised, Recess, Tab

MOVED = frozenset(
    {
        "width_mm",
        "height_mm",
        "edge",
        "holes",
        "grooves",
        "tabs",
        "cap_height_mm",
        "lines",
        "warnings",
        "pieces",
        "recesses",
        "raised",
    }
)
"""Fields of a drawing that nesting makes anew. All others must be the same for every sign on the sheet."""

ALIKE = tuple(sorted(name for name in Drawing.__struct_fields__ if name not in MOVED))


class Placement(Struct, frozen=True, kw_only=True):
    """Where the bottom-left corner of a sign's bounding rectangle comes to lie; `turned`: by a quarter to the left
    first, so that its top looks to the left. `name` is unique on the sheet: '12'."""

    name: str
    x_mm: float
    y_mm: float
    turned: bool


def nested(signs: Sequence[tuple[Drawing, Placement]]) -> Drawing:
    """One drawing of all the signs, with its origin at the bottom-left corner of their common bounding rectangle.

    They must be of one thickness, alike in everything but their features, and lie clear of each other. Features are
    named '12: hole top-left'. The smallest cap height stands for all, since checks look as closely as it asks; figures
    of single lines are left out.

    Raises: ValueError when there is no sign, or they are not alike.
    """
    alike = {tuple(getattr(drawing, name) for name in ALIKE) for drawing, _ in signs}
    if len(alike) != 1:
        raise ValueError("signs on one sheet have one thickness and are held alike")
    left = min(place.x_mm for _, place in signs)
    low = min(place.y_mm for _, place in signs)
    placed = [
        _placed(drawing, replace(place, x_mm=place.x_mm - left, y_mm=place.y_mm - low), number)
        for number, (drawing, place) in enumerate(signs)
    ]
    heights = [drawing.cap_height_mm for drawing in placed if drawing.cap_height_mm]
    return replace(
        signs[0][0],
        width_mm=max(place.x_mm - left + _size(drawing, place)[0] for drawing, place in signs),
        height_mm=max(place.y_mm - low + _size(drawing, place)[1] for drawing, place in signs),
        edge=MultiPolygon([outline for drawing in placed for outline in drawing.outlines]),
        holes=tuple(hole for drawing in placed for hole in drawing.holes),
        grooves=tuple(groove for drawing in placed for groove in drawing.grooves),
        recesses=tuple(recess for drawing in placed for recess in drawing.recesses),
        raised=tuple(letter for drawing in placed for letter in drawing.raised),
        tabs=tuple(tab for drawing in placed for tab in drawing.tabs),
        cap_height_mm=min(heights, default=0.0),
        lines=(),
        warnings=tuple(dict.fromkeys(warning for drawing in placed for warning in drawing.warnings)),
        pieces=tuple(place.name for _, place in signs),
    )


def _size(drawing: Drawing, place: Placement) -> tuple[float, float]:
    """Extent along X and Y on the sheet."""
    return (drawing.height_mm, drawing.width_mm) if place.turned else (drawing.width_mm, drawing.height_mm)


def _placed(drawing: Drawing, place: Placement, outline: int) -> Drawing:
    """One sign at its place; the number of its outline on the sheet is `outline`."""
    to = _Way(place, drawing.height_mm)
    return replace(
        drawing,
        edge=to.area(drawing.edge),
        holes=tuple(to.hole(hole) for hole in drawing.holes),
        grooves=tuple(to.groove(groove) for groove in drawing.grooves),
        recesses=tuple(to.recess(recess) for recess in drawing.recesses),
        raised=tuple(to.letter(letter) for letter in drawing.raised),
        tabs=tuple(to.tab(tab, outline) for tab in drawing.tabs),
    )


class _Way(Struct, frozen=True):
    """From a sign's own coordinates to the sheet's: (x, y) goes to (x + a, y + b), or turned to (h - y + a, x + b)."""

    place: Placement
    height_mm: float

    def point(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        if self.place.turned:
            x_mm, y_mm = self.height_mm - y_mm, x_mm
        return x_mm + self.place.x_mm, y_mm + self.place.y_mm

    @property
    def matrix(self) -> list[float]:
        a, b = self.place.x_mm, self.place.y_mm
        return [0.0, -1.0, 1.0, 0.0, self.height_mm + a, b] if self.place.turned else [1.0, 0.0, 0.0, 1.0, a, b]

    def area(self, area: Polygon | MultiPolygon) -> Polygon | MultiPolygon:
        moved = affinity.affine_transform(area, self.matrix)
        if isinstance(moved, MultiPolygon):
            return MultiPolygon([orient(part) for part in moved.geoms])
        outline: Polygon = orient(moved)
        return outline

    def hole(self, hole: Hole) -> Hole:
        x, y = self.point(hole.x_mm, hole.y_mm)
        angle = hole.angle_deg + 90.0 if self.place.turned else hole.angle_deg
        return replace(hole, name=self.named(hole.name), x_mm=x, y_mm=y, angle_deg=angle)

    def groove(self, groove: Groove) -> Groove:
        lines = groove.lines if groove.lines is None else affinity.affine_transform(groove.lines, self.matrix)
        return replace(groove, name=self.named(groove.name), area=self.area(groove.area), lines=lines)

    def recess(self, recess: Recess) -> Recess:
        return replace(recess, name=self.named(recess.name), area=self.area(recess.area))

    def letter(self, letter: Raised) -> Raised:
        return replace(letter, name=self.named(letter.name), area=self.area(letter.area))

    def tab(self, tab: Tab, outline: int) -> Tab:
        x, y = self.point(tab.x_mm, tab.y_mm)
        along = (-tab.along_y, tab.along_x) if self.place.turned else (tab.along_x, tab.along_y)
        return replace(
            tab, name=self.named(tab.name), x_mm=x, y_mm=y, along_x=along[0], along_y=along[1], outline=outline
        )

    def named(self, name: str) -> str:
        return f"{self.place.name}: {name}"
