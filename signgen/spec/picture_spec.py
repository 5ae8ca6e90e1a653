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
    millimetres. At most one of the sizes is given; neither: by the place. `depth_mm` 0: right through. `colours` of a
    drawing: which of them are cut, or what becomes of each."""

    kind: str
    what: str
    place: Place
    width_mm: float | None
    height_mm: float | None
    rotation_deg: float
    finish: Finish
    depth_mm: float
    colours: str | tuple[ColourUse, ...] = "dark"

    def asked(self) -> dict[str, object]:
        """The keys of its table, complete."""
        place = self.place if isinstance(self.place, str) else f"{self.place[0]:.10g},{self.place[1]:.10g}"
        found: dict[str, object] = {OF_KIND[self.kind][0].name: self.what, "place": place}
        for name, value in (("width", self.width_mm), ("height", self.height_mm)):
            if value is not None:
                found[name] = value
        if self.rotation_deg:
            found["rotation"] = self.rotation_deg
        found["finish"] = self.finish
        if self.finish != "through" and self.depth_mm:
            found["depth"] = self.depth_mm
        if self.colours != "dark":
            found["colours"] = self.colours if isinstance(self.colours, str) else "; ".join(map(_said, self.colours))
        return found


def _said(use: ColourUse) -> str:
    depth = "" if use.depth_mm is None else f" {use.depth_mm:.10g}"
    return f"{use.colour}={use.finish or LEAVE}{depth}"
