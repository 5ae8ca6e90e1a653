"""One element of an SVG file by itself: its outline, its lengths, its paint, its pen."""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast

from signgen.artwork import basic_shapes
from signgen.artwork.colours import Rgb, colour_of
from signgen.artwork.element import Element
from signgen.artwork.lengths import View, across, length_px
from signgen.artwork.outline import Outline
from signgen.artwork.path_data import PathError, outline_from
from signgen.artwork.pen import Cap, Join, Pen
from signgen.artwork.refused import SAVE_PLAIN, refused
from signgen.errors import AskError
from signgen.messages import Message

MOST_SEGMENTS = 100_000
"""Lines and curves that one file draws, with all that it uses again."""

FURTHEST = 1e7
"""Pixels: two and a half kilometres."""

Values = Mapping[str, str]


class Shapes:
    """Reads elements of a file; outlines that are used again are read once."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.outlines: dict[tuple[int, View], Outline] = {}

    def _refused(self, element: Element, what: Message, remedy: Message = SAVE_PLAIN) -> AskError:
        return refused(self.file, element.line, what, remedy)

    def opacity(self, element: Element, text: str) -> float:
        try:
            value = float(text[:-1]) / 100 if text.endswith("%") else float(text)
        except ValueError:
            raise self._refused(element, Message("art.no_number", name=text[:40])) from None
        if 0 < value < 1:
            raise self._refused(element, Message("art.half_transparent"), Message("art.full_colour"))
        return 0.0 if value <= 0 else 1.0

    def outline(self, element: Element, view: View) -> Outline:
        key = (id(element), view)
        if key not in self.outlines:

            def along(name: str, axis: str) -> float:
                whole = {"x": view[0], "y": view[1]}.get(axis, across(view))
                return self.length(element, element.attributes.get(name, "0"), whole)

            try:
                data = basic_shapes.path_data(element.name, element.attributes, along)
                self.outlines[key] = outline_from(data, MOST_SEGMENTS)
            except OverflowError:
                raise self._refused(
                    element, Message("art.draws_too_much", most=MOST_SEGMENTS), Message("art.simplify")
                ) from None
            except PathError as error:
                if str(error):
                    raise self._refused(element, Message("art.path_junk", text=str(error))) from None
                raise self._refused(element, Message("art.path_breaks_off")) from None
            except ValueError:
                raise self._refused(element, Message("art.no_points", name=element.name)) from None
            if not self.outlines[key].is_finite:
                raise self._refused(element, Message("art.too_far"), Message("art.look_at_numbers"))
        return self.outlines[key]

    def length(self, element: Element, text: str, whole: float) -> float:
        value = length_px(text, whole)
        if value is None or not abs(value) < FURTHEST:
            raise self._refused(element, Message("art.no_length", name=text[:40]))
        return value

    def paint(self, element: Element, values: Values, name: str) -> Rgb | None:
        """Its colour; None where there is none."""
        text = values[name].strip()
        if text.casefold() == "none":
            return None
        if self.opacity(element, values[f"{name}-opacity"]) == 0:
            return None
        if text.casefold() == "currentcolor":
            text = values["color"]
            text = "black" if text.casefold() == "currentcolor" else text
        if text.startswith("url("):
            raise self._refused(element, Message("art.gradient", name=name), Message("art.full_colour"))
        if text in ("context-fill", "context-stroke") or (found := colour_of(text)) is None:
            raise self._refused(element, Message("art.no_colour", name=text[:40]), Message("art.full_colour"))
        rgb, alpha = found
        if 0 < alpha < 1:
            raise self._refused(element, Message("art.half_transparent"), Message("art.full_colour"))
        return rgb if alpha else None

    def pen(self, element: Element, values: Values, view: View) -> Pen | None:
        """None for a line that has no width."""
        whole = across(view)
        width = self.length(element, values["stroke-width"], whole)
        if width < 0:
            raise self._refused(element, Message("art.no_length", name=values["stroke-width"][:40]))
        if width == 0:
            return None
        cap, join = values["stroke-linecap"], values["stroke-linejoin"]
        if cap not in ("butt", "round", "square"):
            raise self._refused(element, Message("art.no_pen", name=cap[:40]))
        if join not in ("miter", "round", "bevel", "miter-clip"):
            raise self._refused(element, Message("art.no_pen", name=join[:40]))
        if join in ("miter-clip",):
            raise self._refused(element, Message("art.effect", name=join), Message("art.take_away"))
        limit = length_px(values["stroke-miterlimit"], 1.0)
        dashes: tuple[float, ...] = ()
        if values["stroke-dasharray"].casefold() != "none":
            parts = values["stroke-dasharray"].replace(",", " ").split()
            dashes = tuple(self.length(element, part, whole) for part in parts[:1000])
            if any(dash < 0 for dash in dashes):
                raise self._refused(element, Message("art.no_length", name=values["stroke-dasharray"][:40]))
            dashes = dashes * 2 if len(dashes) % 2 else dashes
            if not any(dashes):
                dashes = ()
        return Pen(
            width=width,
            cap=cast(Cap, cap),
            join=cast(Join, join),
            miter_limit=limit if limit and limit >= 1 else 4.0,
            dashes=dashes,
            dash_offset=self.length(element, values["stroke-dashoffset"], whole),
        )
