"""A picture as it was asked for, complete."""

from __future__ import annotations

from msgspec import Struct

from signgen.spec.finish import Finish
from signgen.spec.keys.pictures import OF_KIND

Place = str | tuple[float, float]

LEAVE = "leave"
"""What a colour is for that is not cut."""


class ColourUse(Struct, frozen=True, kw_only=True):
    """What becomes of a colour as it was written: `finish` None to leave it, `depth_mm` None as usual."""

    colour: str
    finish: Finish | None
    depth_mm: float | None


class PictureSpec(Struct, frozen=True, kw_only=True):
    """`kind`: the option that asks for it; `what`: the file in absolute form. `place`: a word or the middle in
    millimetres. At most one of the sizes is given, and none with `own_size`, which is as large as the file says;
    neither: by the place. `depth_mm` 0: right through. `colours` of a drawing: which of them are cut, or what becomes
    of each. `module_mm`, `level`: of a code."""

    kind: str
    what: str
    place: Place
    width_mm: float | None
    height_mm: float | None
    rotation_deg: float
    finish: Finish
    depth_mm: float
    colours: str | tuple[ColourUse, ...] = "dark"
    module_mm: float | None = None
    level: str = "M"
    own_size: bool = False

    def asked(self) -> dict[str, object]:
        """The keys of its table, complete."""
        place = self.place if isinstance(self.place, str) else f"{self.place[0]:.10g},{self.place[1]:.10g}"
        lengths = {"width": self.width_mm, "height": self.height_mm, "module": self.module_mm}
        found: dict[str, object] = {OF_KIND[self.kind][0].name: self.what, "place": place}
        found |= {name: value for name, value in lengths.items() if value is not None}
        if self.own_size:
            found["size"] = "file"
        if self.rotation_deg:
            found["rotation"] = self.rotation_deg
        if self.kind == "code":
            found["level"] = self.level
        found["finish"] = "dots" if self.is_dots else self.finish
        if self.finish != "through" and self.depth_mm and not self.is_dots:
            found["depth"] = self.depth_mm
        if self.colours != "dark":
            found["colours"] = self.colours if isinstance(self.colours, str) else "; ".join(map(_said, self.colours))
        return found

    @property
    def is_dots(self) -> bool:
        """Whether each module of a code is one plunge of the V-bit, whose depth goes by the module."""
        return self.kind == "code" and self.finish == "stroke"


def _said(use: ColourUse) -> str:
    depth = "" if use.depth_mm is None else f" {use.depth_mm:.10g}"
    return f"{use.colour}={use.finish or LEAVE}{depth}"
