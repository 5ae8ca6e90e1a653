"""Several signs on one sheet as one drawing: each moved, perhaps turned by a quarter, its features named after it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from signgen.drawing.drawing import Drawing, Plate
from signgen.features.edge import Bevel
from signgen.features.feature import Feature
from signgen.geometry.motion import Motion, quarter_turn
from signgen.messages import Message


class Placement(Struct, frozen=True, kw_only=True):
    """Where the bottom-left corner of a sign's bounding rectangle comes to lie; `turned`: by a quarter to the left
    first, so that its top looks to the left. `name` is unique on the sheet: '12'."""

    name: str
    x_mm: float
    y_mm: float
    turned: bool


def nested(signs: Sequence[tuple[Drawing, Placement]]) -> Drawing:
    """One drawing of all the signs, with its origin at the bottom-left corner of their common bounding rectangle.

    They must be of one thickness, held and bevelled alike, and lie clear of each other. Features are named '12: hole
    top-left'. The smallest cap height stands for all, since checks look as closely as it asks; figures of single lines
    are left out.

    Raises: ValueError when there is no sign, or they are not alike.
    """
    if len({_alike(drawing) for drawing, _ in signs}) != 1:
        raise ValueError("signs on one sheet have one thickness and are held alike")
    left = min(place.x_mm for _, place in signs)
    low = min(place.y_mm for _, place in signs)
    heights = [drawing.cap_height_mm for drawing, _ in signs if drawing.cap_height_mm]
    plates = [_lying(drawing, place) for drawing, place in signs]
    return Drawing(
        plate=Plate(
            width_mm=max(place.x_mm - left + wide for (wide, _), (_, place) in zip(plates, signs, strict=True)),
            height_mm=max(place.y_mm - low + high for (_, high), (_, place) in zip(plates, signs, strict=True)),
            thickness_mm=signs[0][0].thickness_mm,
        ),
        features=tuple(
            feature
            for drawing, place in signs
            for feature in _placed(drawing, replace(place, x_mm=place.x_mm - left, y_mm=place.y_mm - low))
        ),
        cap_height_mm=min(heights, default=0.0),
        warnings=tuple(dict.fromkeys(warning for drawing, _ in signs for warning in drawing.warnings)),
    )


def _alike(drawing: Drawing) -> tuple[object, ...]:
    """What must be the same for every sign on a sheet."""
    bevels = {(bevel.width_mm, bevel.angle_deg) for bevel in drawing.of(Bevel)}
    return drawing.thickness_mm, drawing.side, drawing.skin_mm, frozenset(bevels)


def _lying(drawing: Drawing, place: Placement) -> tuple[float, float]:
    """Extent along X and Y on the sheet."""
    return (drawing.height_mm, drawing.width_mm) if place.turned else (drawing.width_mm, drawing.height_mm)


def _placed(drawing: Drawing, place: Placement) -> list[Feature]:
    """One sign's features at its place."""
    turn = quarter_turn(drawing.height_mm) if place.turned else Motion()
    motion = replace(turn, x_mm=turn.x_mm + place.x_mm, y_mm=turn.y_mm + place.y_mm)
    return [
        replace(
            feature.moved(motion),
            name=f"{place.name}: {feature.name}",
            title=_of_piece(place.name, feature),
            piece=place.name,
        )
        for feature in drawing.features
    ]


def _of_piece(piece: str, feature: Feature) -> Message:
    return Message("name.of_piece", piece=piece, feature=feature.called)
