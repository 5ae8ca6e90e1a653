"""An SVG file as what it paints: every shape with its matrix, its paint and what clips it.

What cannot be said exactly in areas and lines (masks, filters, gradients, patterns, texts, pictures, half-transparent
paint) is refused with its line. Source: W3C, Scalable Vector Graphics 1.1 (second edition), and SVG 2 where it is
plainer.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from msgspec import Struct
from msgspec.structs import replace

from signgen.artwork import basic_shapes
from signgen.artwork.colours import Rgb
from signgen.artwork.element import Element, read_elements
from signgen.artwork.lengths import View, length_px
from signgen.artwork.matrix import IDENTITY, Matrix, times, transform_of
from signgen.artwork.outline import Outline
from signgen.artwork.painted import Clip, Painted, Rule
from signgen.artwork.path_data import outline_from
from signgen.artwork.pen import Pen
from signgen.artwork.refused import SAVE_PLAIN, refused
from signgen.artwork.style import style_rules, styled
from signgen.artwork.svg_shapes import FURTHEST, MOST_SEGMENTS, Shapes, Values
from signgen.artwork.viewport import Box, fitted, view_box
from signgen.errors import AskError
from signgen.messages import Message

MOST_PAINTED, MOST_VISITED = 10_000, 40_000
"""Shapes and elements that one file draws, with all that it uses again."""

DEEPEST_USE = 20

_NOT_DRAWN = frozenset(
    ("defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata", "title", "desc", "style", "linearGradient",
     "radialGradient", "meshgradient", "hatch", "solidcolor", "filter", "view", "cursor", "font", "font-face",
     "color-profile", "glyph", "missing-glyph")
)  # fmt: skip
_GROUPS = frozenset(("g", "a"))
_NOT_SAID = frozenset(("text", "tspan", "textPath", "tref", "image", "switch", "flowRoot", "video", "audio", "canvas"))
_LENGTHS = ("x", "y", "width", "height")


class Place(Struct, frozen=True, kw_only=True):
    """Where an element stands: what it inherits, its matrix, the viewport, what clips it, what is used around it."""

    above: Values
    matrix: Matrix
    view: View
    clips: tuple[Clip, ...]
    uses: tuple[str, ...] = ()


class Drawn(Struct, frozen=True, kw_only=True):
    """What a file paints in pixels of 1/96 in. `has_size`: whether the file says how large it is."""

    items: tuple[Painted, ...]
    has_size: bool


def read_svg(raw: bytes, file: str) -> Drawn:
    """Raises: AskError with the file and the line."""
    root = read_elements(raw, file)
    walker = _Walker(root, file)
    items = tuple(walker.root_items())
    return Drawn(items=items, has_size="width" in root.attributes and "height" in root.attributes)


class _Walker:
    def __init__(self, root: Element, file: str) -> None:
        self.root, self.file = root, file
        self.rules = style_rules(root, file)
        self.by_id: dict[str, Element] = {}
        for element in root.walked():
            if element.id:
                self.by_id.setdefault(element.id, element)
        self.shapes = Shapes(file)
        self.segments = self.painted = self.visited = 0

    def _refused(self, element: Element, what: Message, remedy: Message = SAVE_PLAIN) -> AskError:
        return refused(self.file, element.line, what, remedy)

    def root_items(self) -> Iterator[Painted]:
        root = self.root
        box = self._view_box(root)
        size = [
            length_px(root.attributes.get(name, "100%"), 0.0) if "%" not in root.attributes.get(name, "100%") else None
            for name in ("width", "height")
        ]
        wide, high = (value if value and value > 0 else None for value in size)
        if box is None:
            view: View = (wide or FURTHEST, high or FURTHEST)
            into: Box | None = (0.0, 0.0, wide, high) if wide and high else None
            matrix = IDENTITY
        else:
            if wide is None and high is None:
                wide, high = box[2], box[3]
            wide = wide or cast(float, high) * box[2] / box[3]
            high = high or wide * box[3] / box[2]
            into = (0.0, 0.0, wide, high)
            matrix = fitted(box, into, root.attributes.get("preserveAspectRatio", ""))
            view = (box[2], box[3])
        values = self._styled(root, {})
        clips = (_box_clip(into, IDENTITY),) if into and values["overflow"] != "visible" else ()
        place = Place(above={}, matrix=IDENTITY, view=view, clips=clips)
        yield from self._group(root, replace(place, matrix=times(self._transform(root), matrix)), values)

    def _view_box(self, element: Element) -> Box | None:
        text = element.attributes.get("viewBox")
        if text is None:
            return None
        box = view_box(text)
        if box is None:
            raise self._refused(element, Message("art.no_view_box", box=text[:60]))
        return box

    def _styled(self, element: Element, above: Values) -> dict[str, str]:
        return styled(element, above, self.rules, self.file)

    def _transform(self, element: Element) -> Matrix:
        text = element.attributes.get("transform", "")
        matrix = transform_of(text)
        if matrix is None:
            raise self._refused(element, Message("art.no_transform", name=text[:60]))
        for name in ("transform-origin", "transform-box"):
            if text and element.attributes.get(name, "").strip() not in ("", "0 0", "view-box"):
                raise self._refused(element, Message("art.style_changes", name=name), Message("art.apply_styles"))
        return matrix

    def _items(self, element: Element, place: Place, *, used: bool = False) -> Iterator[Painted]:
        """What an element paints. `used`: by a `use`, so that a symbol is drawn."""
        self.visited += 1
        if self.visited > MOST_VISITED:
            raise self._refused(element, Message("art.draws_too_much", most=MOST_VISITED), Message("art.simplify"))
        name = element.name
        if name in _NOT_DRAWN and not (used and name == "symbol"):
            return
        values = self._styled(element, place.above)
        if values["display"] == "none":
            return
        if name in _NOT_SAID:
            if name not in ("text", "tspan", "switch") or element.children or element.text.strip():
                raise self._refused(
                    element,
                    Message("art.not_said", name=name),
                    Message("art.text_to_paths" if name[0] == "t" else "art.redraw"),
                )
            return
        if name not in _GROUPS and name not in basic_shapes.SHAPES and name not in ("svg", "symbol", "use"):
            raise self._refused(element, Message("art.unknown_element", name=name[:40]))
        opacity = self._must_be_said(element, values)
        if opacity == 0:
            return
        place = replace(place, matrix=times(place.matrix, self._transform(element)))
        place = replace(place, clips=place.clips + self._clips(element, values["clip-path"], place))
        if name == "use":
            yield from self._use(element, place, values)
        elif name in ("svg", "symbol"):
            yield from self._viewport(element, place, values)
        elif name in _GROUPS:
            yield from self._group(element, place, values)
        else:
            yield from self._shape(element, place, values)

    def _must_be_said(self, element: Element, values: Values) -> float:
        """The element's opacity, 0 or 1. Raises: AskError for what areas and lines cannot say."""
        for name, usual in (("mask", "none"), ("filter", "none"), ("mix-blend-mode", "normal"), ("clip", "auto"),
                            ("vector-effect", "none")):  # fmt: skip
            if values[name].casefold() != usual:
                raise self._refused(element, Message("art.effect", name=name), Message("art.take_away"))
        for name in ("requiredFeatures", "requiredExtensions", "systemLanguage"):
            if element.attributes.get(name, "").strip():
                raise self._refused(element, Message("art.effect", name=name), Message("art.take_away"))
        return self.shapes.opacity(element, values["opacity"])

    def _group(self, element: Element, place: Place, values: Values) -> Iterator[Painted]:
        inside = replace(place, above=values)
        for child in element.children:
            yield from self._items(child, inside)

    def _viewport(
        self, element: Element, place: Place, values: Values, size: tuple[str | None, str | None] = (None, None)
    ) -> Iterator[Painted]:
        """A nested `svg`, or a `symbol` that is used. `size`: width and height that the `use` says."""
        own = {**element.attributes}
        for name, value in zip(("width", "height"), size, strict=True):
            if value is not None:
                own[name] = value
        lengths = [
            self.shapes.length(element, own.get(name, "100%" if name in ("width", "height") else "0"), whole)
            for name, whole in zip(_LENGTHS, (*place.view, *place.view), strict=True)
        ]
        into: Box = (lengths[0], lengths[1], lengths[2], lengths[3])
        if into[2] <= 0 or into[3] <= 0:
            return
        clips = place.clips
        if values["overflow"] not in ("visible", "auto"):
            clips = (*clips, _box_clip(into, place.matrix))
        box = self._view_box(element)
        inner: Matrix = (1, 0, 0, 1, into[0], into[1])
        view: View = (into[2], into[3])
        if box is not None:
            inner, view = fitted(box, into, own.get("preserveAspectRatio", "")), (box[2], box[3])
        yield from self._group(
            element, replace(place, matrix=times(place.matrix, inner), view=view, clips=clips), values
        )

    def _use(self, element: Element, place: Place, values: Values) -> Iterator[Painted]:
        name = element.attributes.get("href", "").strip().removeprefix("#")
        target = self.by_id.get(name)
        if target is None:
            raise self._refused(element, Message("art.nothing_named", name=name[:40]))
        if name in place.uses or len(place.uses) >= DEEPEST_USE:
            raise self._refused(element, Message("art.uses_itself", name=name[:40]))
        x, y = (
            self.shapes.length(element, element.attributes.get(key, "0"), place.view[axis])
            for axis, key in enumerate(("x", "y"))
        )
        moved = times(place.matrix, (1, 0, 0, 1, x, y))
        place = replace(place, matrix=moved, above=values, uses=(*place.uses, name))
        if target.name in ("svg", "symbol"):
            own = self._styled(target, values)
            if own["display"] == "none" or self._must_be_said(target, own) == 0:
                return
            place = replace(place, matrix=times(place.matrix, self._transform(target)))
            place = replace(place, clips=place.clips + self._clips(target, own["clip-path"], place))
            size = element.attributes.get("width"), element.attributes.get("height")
            yield from self._viewport(target, place, own, size)
        else:
            yield from self._items(target, place)

    def _shape(self, element: Element, place: Place, values: Values) -> Iterator[Painted]:
        if values["visibility"] != "visible":
            return
        outline = self.shapes.outline(element, place.view)
        if not len(outline.starts):
            return
        layers = []
        fill = self.shapes.paint(element, values, "fill")
        if fill is not None and len(outline):
            rule: Rule = "evenodd" if values["fill-rule"] == "evenodd" else "nonzero"
            layers.append(self._layer(element, place, outline, rule, fill))
        stroke = self.shapes.paint(element, values, "stroke")
        pen = self.shapes.pen(element, values, place.view) if stroke is not None else None
        if stroke is not None and pen is not None:
            for end in ("marker-start", "marker-mid", "marker-end"):
                if values[end].casefold() != "none":
                    raise self._refused(element, Message("art.effect", name=end), Message("art.marker_to_paths"))
            layers.append(self._layer(element, place, outline, pen, stroke))
        order = values["paint-order"].split()
        if order and order[0] == "stroke":
            layers.reverse()
        yield from layers

    def _layer(self, element: Element, place: Place, outline: Outline, how: Rule | Pen, colour: Rgb) -> Painted:
        self.painted += 1
        self.segments += len(outline)
        if self.painted > MOST_PAINTED or self.segments > MOST_SEGMENTS:
            raise self._refused(element, Message("art.draws_too_much", most=MOST_SEGMENTS), Message("art.simplify"))
        bounds = outline.mapped(place.matrix).bounds_px()
        if bounds and not all(abs(value) < FURTHEST for value in bounds):  # also what is not finite
            raise self._refused(element, Message("art.too_far"), Message("art.look_at_numbers"))
        return Painted(
            outline=outline, matrix=place.matrix, how=how, colour=colour, clips=place.clips, line=element.line
        )

    def _clips(self, element: Element, text: str, place: Place) -> tuple[Clip, ...]:
        """What `clip-path` leaves of an element. Raises: AskError."""
        if text.casefold() == "none":
            return ()
        name = text.strip().removeprefix("url(").removesuffix(")").strip("\"' ").removeprefix("#")
        target = self.by_id.get(name) if text.startswith("url(") else None
        if target is None or target.name != "clipPath":
            raise self._refused(element, Message("art.effect", name=f"clip-path {text}"[:60]), Message("art.take_away"))
        if target.attributes.get("clipPathUnits", "userSpaceOnUse") != "userSpaceOnUse":
            raise self._refused(element, Message("art.effect", name="clipPathUnits"), Message("art.take_away"))
        mark = f"clip {name}"
        if mark in place.uses or len(place.uses) >= DEEPEST_USE:
            raise self._refused(element, Message("art.uses_itself", name=name[:40]))
        above = self._styled(target, {})
        inside = replace(
            place, above=above, matrix=times(place.matrix, self._transform(target)), clips=(), uses=(*place.uses, mark)
        )
        further = self._clips(target, above["clip-path"], inside)
        shapes = tuple(shape for child in target.children for shape in self._clip_shapes(child, inside))
        return (Clip(shapes=shapes, clips=further),)

    def _clip_shapes(self, element: Element, place: Place) -> Iterator[Painted]:
        """The whole shape of each child of a clip path, whatever paint it has."""
        if element.name in _NOT_DRAWN:
            return
        if element.name == "use":
            name = element.attributes.get("href", "").strip().removeprefix("#")
            target = self.by_id.get(name)
            if target is None or target.name not in basic_shapes.SHAPES or len(place.uses) >= DEEPEST_USE:
                raise self._refused(element, Message("art.nothing_named", name=name[:40]))
            x, y = (
                self.shapes.length(element, element.attributes.get(k, "0"), place.view[n]) for n, k in enumerate("xy")
            )
            own = times(place.matrix, times(self._transform(element), (1, 0, 0, 1, x, y)))
            values = self._styled(element, place.above)
            if values["display"] != "none":
                further = self._clips(element, values["clip-path"], place)
                inside = replace(place, matrix=own, above=values, clips=place.clips + further, uses=(*place.uses, name))
                yield from self._clip_shapes(target, inside)
            return
        if element.name not in basic_shapes.SHAPES:
            raise self._refused(element, Message("art.not_said", name=element.name[:40]), Message("art.redraw"))
        values = self._styled(element, place.above)
        if values["display"] == "none" or values["visibility"] != "visible":
            return
        self._must_be_said(element, {**values, "opacity": "1"})
        place = replace(place, matrix=times(place.matrix, self._transform(element)))
        place = replace(place, clips=place.clips + self._clips(element, values["clip-path"], place))
        outline = self.shapes.outline(element, place.view)
        if len(outline):
            rule: Rule = "evenodd" if values["clip-rule"] == "evenodd" else "nonzero"
            yield self._layer(element, place, outline, rule, (0, 0, 0))


def _box_clip(box: Box, matrix: Matrix) -> Clip:
    x, y, wide, high = box
    outline = outline_from(f"M{x!r} {y!r}h{wide!r}v{high!r}h{-wide!r}z", 10)
    return Clip(shapes=(Painted(outline=outline, matrix=matrix, how="nonzero", colour=(0, 0, 0)),))
