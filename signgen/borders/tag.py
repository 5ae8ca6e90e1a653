"""A label to hang up: two corners cut off at one end, and an eye there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from msgspec import Struct

from signgen.borders.common import CORNER_CUT, Eye, given, must_fit, ring
from signgen.option import Option
from signgen.units import Limits

if TYPE_CHECKING:
    from shapely.geometry import Polygon

EYE_DIAMETER = Option(
    name="eye-diameter", kind="length", metavar="LENGTH", group="Shape", limits=Limits(least=0.5, greatest=200),
    help="Diameter of the hole that a tag hangs by.", otherwise="a twelfth of the shorter side, 4 to 12 mm",
    words=("hole of the tag",),
)  # fmt: skip
EYE_INSET = Option(
    name="eye-inset", kind="length", metavar="LENGTH", group="Shape",
    help="From a tag's end to the middle of its eye.", otherwise="twice the eye's diameter",
    words=("place of the eye",),
)  # fmt: skip

_CUT_RATIO = 0.25
_EYE_RATIO = 1 / 12
_LEAST_EYE_MM, _GREATEST_EYE_MM = 4.0, 12.0
"""A cord goes through the least, and nobody threads a rope (common practice)."""
_INSET_RATIO = 2.0
"""As with other holes: common practice."""


class Tag(Struct, frozen=True, kw_only=True):
    cut_mm: float
    eye_diameter_mm: float
    eye_inset_mm: float

    name: ClassVar[str] = "tag"
    summary: ClassVar[str] = (
        "A label with two corners cut off and an eye, at the left, or at the top when higher than wide."
    )
    options: ClassVar[tuple[Option, ...]] = (CORNER_CUT, EYE_DIAMETER, EYE_INSET)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Tag:
        shorter = min(width_mm, height_mm)
        eye = given(values, EYE_DIAMETER, min(max(_EYE_RATIO * shorter, _LEAST_EYE_MM), _GREATEST_EYE_MM))
        return cls(
            cut_mm=given(values, CORNER_CUT, _CUT_RATIO * shorter),
            eye_diameter_mm=eye,
            eye_inset_mm=given(values, EYE_INSET, _INSET_RATIO * eye),
        )

    def asked(self) -> dict[str, str | float]:
        return {
            "border": self.name, CORNER_CUT.name: self.cut_mm, EYE_DIAMETER.name: self.eye_diameter_mm,
            EYE_INSET.name: self.eye_inset_mm,
        }  # fmt: skip

    def eyes(self, width_mm: float, height_mm: float) -> tuple[Eye, ...]:
        """The one eye, in the middle of the end that is cut; whether it has wood around it is for the drawing to
        say."""
        if width_mm >= height_mm:
            return (("eye", self.eye_inset_mm, height_mm / 2, self.eye_diameter_mm),)
        return (("eye", width_mm / 2, height_mm - self.eye_inset_mm, self.eye_diameter_mm),)

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Raises: CannotMakeError when the corners meet."""
        w, h, c = width_mm, height_mm, self.cut_mm
        must_fit(CORNER_CUT, c, min(w, h) / 2, w, h)
        if w >= h:
            return ring([(c, 0), (w, 0), (w, h), (c, h), (0, h - c), (0, c)])
        return ring([(0, 0), (w, 0), (w, h - c), (w - c, h), (c, h), (0, h - c)])
