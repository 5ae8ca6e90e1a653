"""The one path of an SVG file and its scale, read without trusting the file.

Nothing that the file names is ever opened, and nothing in it runs: entities, document types, scripts and references
to elsewhere are refused. Source: W3C, Scalable Vector Graphics 1.1 (second edition), 7.6 transform lists, 7.7
viewBox, 8.3 path data; CSS 2.1 section 4.3.2: 1 px = 1/96 in.
"""

from __future__ import annotations

import math
import re
from pathlib import Path
from xml.parsers import expat

from msgspec import Struct

from signgen.artwork.basic_shapes import SHAPES, path_data
from signgen.artwork.lengths import PX_MM, length_px
from signgen.artwork.matrix import NUMBER, Matrix, times, transform_of
from signgen.borders.svg_style import is_hidden, more_than_looks
from signgen.errors import AskError
from signgen.messages import Message
from signgen.user_file import read_bytes

GREATEST_BYTES = 4_000_000
"""An outline that is larger has been traced from a picture and would take hours to cut."""

_SVG = "http://www.w3.org/2000/svg"
_MM_PER_UNIT = {
    "": PX_MM, "px": PX_MM, "pt": 25.4 / 72, "pc": 25.4 / 6, "in": 25.4, "cm": 10.0, "mm": 1.0,
}  # fmt: skip
_NOT_DRAWN = frozenset(
    (
        "defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata", "title", "desc", "style",
        "linearGradient", "radialGradient", "filter", "view", "cursor", "font", "font-face", "color-profile",
    )
)  # fmt: skip
_GROUPS = frozenset(("g", "a")) | SHAPES
_CUTS = ("clip-path", "mask", "filter", "requiredFeatures", "requiredExtensions", "systemLanguage")
"""Attributes by which less of a shape is seen than it is, or another one, or none."""
_DEEPEST = 200
"""Elements in each other: drawing programs make ten."""
_FURTHEST = 1e9
_DRAWN = frozenset(("text", "image", "use", "switch", "svg"))
_ACTIVE = frozenset(
    ("script", "foreignObject", "iframe", "handler", "listener", "animate", "animateTransform", "animateMotion", "set")
)
_LENGTH = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Z]*)\s*", re.ASCII)


class SvgPath(Struct, frozen=True, kw_only=True):
    """Path data, where it stands, and the matrix from its numbers to millimetres (Y still down)."""

    data: str
    where: str
    matrix: Matrix


def read_svg_path(file: Path) -> SvgPath:
    """The only path that the file draws.

    Raises: AskError, with the line where there is one, for a file that cannot be read, is enormous, is no SVG, holds
    anything active or from elsewhere, or draws anything but one path.
    """
    raw = read_bytes(file, "border", GREATEST_BYTES)
    reader = _Reader(file)
    try:
        reader.parser.Parse(raw, True)
    except expat.ExpatError as error:
        what = Message("border.no_well_formed_svg", reason=expat.ErrorString(error.code))
        raise AskError.at(f"{file}:{error.lineno}", what, Message("border.save_plain_svg_again")) from None
    return reader.only_path()


class _Reader:
    """Walks the elements as expat meets them and keeps the paths that are drawn."""

    def __init__(self, file: Path) -> None:
        self.file = file
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._text
        self.parser.StartDoctypeDeclHandler = self._doctype
        self.parser.EntityDeclHandler = self._entity
        self.parser.ProcessingInstructionHandler = self._instruction
        self.matrices: list[Matrix] = []
        self.undrawn = 0
        self.paths: list[SvgPath] = []
        self.sheet: list[str] | None = None

    @property
    def _where(self) -> str:
        return f"{self.file}:{self.parser.CurrentLineNumber}"

    def _refuse(self, what: Message, remedy: Message) -> AskError:
        error = AskError.at(self._where, what, remedy)
        assert isinstance(error, AskError)
        return error

    def _doctype(self, *_: object) -> None:
        raise self._refuse(Message("border.file_document_type_may_hide"), Message("border.remove_line_begins_doctype"))

    def _entity(self, *_: object) -> None:
        raise self._refuse(Message("border.file_declares_entity"), Message("border.save_plain_svg"))

    def _instruction(self, target: str, _: str) -> None:
        raise self._refuse(
            Message("border.file_instruction_another_program", target=target), Message("border.save_plain_svg")
        )

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        space, _, name = tag.rpartition(" ")
        self._refuse_active(name, attributes)
        if not self.matrices:
            if name != "svg" or space not in ("", _SVG):
                raise self._refuse(Message("border.file_begins_not_svg", name=name), Message("border.name_svg_file"))
            self.matrices.append(times(self._scale(attributes), self._transform(attributes)))
            return
        if len(self.matrices) >= _DEEPEST:
            raise self._refuse(Message("border.elements_stand_too_deep_each"), Message("border.save_plain_svg"))
        if self.undrawn == 0 and is_hidden(attributes):
            self.matrices.append(self.matrices[-1])
            self.undrawn += 1
            return
        self.matrices.append(times(self.matrices[-1], self._transform(attributes)))
        if name == "style" and space in ("", _SVG):
            self.sheet = []
        if space not in ("", _SVG):
            self.undrawn += 1  # an editor's own notes
        elif self.undrawn or name in _NOT_DRAWN:
            self.undrawn += 1
        elif name in _DRAWN:
            raise self._refuse(Message("border.file_also_draws", name=name), Message("border.keep_one_path_alone_turn"))
        elif name not in _GROUPS:
            raise self._refuse(Message("border.element_not_known", name=name[:40]), Message("border.save_plain_svg"))
        elif name in SHAPES and (data := self._data(name, attributes)):
            self.paths.append(SvgPath(data=data, where=self._where, matrix=self.matrices[-1]))

    def _data(self, name: str, attributes: dict[str, str]) -> str:
        """A shape as path data; '' for one that draws nothing."""

        def along(key: str, _: str) -> float:
            text = attributes.get(key, "0")
            value = None if "%" in text else length_px(text, 0.0)
            if value is None or abs(value) >= _FURTHEST:
                raise self._refuse(Message("art.no_length", name=text[:40]), Message("border.save_plain_svg_again"))
            return value

        try:
            return path_data(name, attributes, along)
        except ValueError:
            what = Message("art.no_points", name=name)
            raise self._refuse(what, Message("border.save_plain_svg_again")) from None

    def _text(self, text: str) -> None:
        if self.sheet is not None:
            self.sheet.append(text)

    def _end(self, _: str) -> None:
        if self.sheet is not None:
            self._refuse_style("".join(self.sheet))
            self.sheet = None
        self.matrices.pop()
        self.undrawn = max(0, self.undrawn - 1)

    def _refuse_active(self, name: str, attributes: dict[str, str]) -> None:
        if name in _ACTIVE:
            raise self._refuse(Message("border.file_holds_does_more_than", name=name), Message("border.save_plain_svg"))
        for attribute, value in attributes.items():
            plain = attribute.rpartition(" ")[2]
            if attribute.casefold().startswith("on"):
                raise self._refuse(Message("border.element_script", plain=plain), Message("border.save_plain_svg"))
            if plain == "href" and not value.strip().startswith("#"):
                raise self._refuse(
                    Message("border.file_refers_something_outside_itself"), Message("border.save_plain_svg")
                )
            if plain == "style" and not is_hidden(attributes):
                self._refuse_style(value)
            if plain in _CUTS and value.strip().casefold() != "none":
                raise self._refuse(Message("border.element_is_cut", name=plain), Message("border.take_it_away"))
            if plain in ("transform-origin", "transform-box"):
                what = Message("border.element_has", name=plain)
                raise self._refuse(what, Message("border.apply_transform_path_itself"))
            if plain == "visibility" and value.strip().casefold() != "visible":
                raise self._refuse(Message("border.hidden_by_visibility"), Message("border.delete_or_show"))

    def _refuse_style(self, style: str) -> None:
        if more := more_than_looks(style):
            raise self._refuse(Message("border.style_says", more=more), Message("border.apply_it_or_take_away"))

    def _scale(self, attributes: dict[str, str]) -> Matrix:
        """From the numbers of the outermost element to millimetres; an equal scale both ways, the smaller one, as
        `preserveAspectRatio` does when nothing is said."""
        box = [float(n) for n in NUMBER.findall(attributes.get("viewBox", ""))]
        if "viewBox" not in attributes:
            return (PX_MM, 0, 0, PX_MM, 0, 0)
        if len(box) != 4 or not box[2] > 0 or not box[3] > 0:
            raise self._refuse(
                Message("border.no_view_box", box=attributes["viewBox"]), Message("border.save_plain_svg_again")
            )
        scales = [self._size(attributes.get(side), length) for side, length in (("width", box[2]), ("height", box[3]))]
        given = [scale for scale in scales if scale is not None]
        scale = min(given, default=PX_MM)
        return (scale, 0, 0, scale, -scale * box[0], -scale * box[1])

    def _size(self, text: str | None, length: float) -> float | None:
        """Millimetres for each unit of the view box along one side; None when the side has no size of its own."""
        found = _LENGTH.fullmatch(text or "")
        if not found or found[2] not in _MM_PER_UNIT:
            return None
        size = float(found[1]) * _MM_PER_UNIT[found[2]]
        return size / length if size > 0 else None

    def _transform(self, attributes: dict[str, str]) -> Matrix:
        text = attributes.get("transform", "")
        matrix = transform_of(text)
        if matrix is None:
            raise self._refuse(
                Message("border.transform_makes_no_sense", text=text[:60]), Message("border.apply_path_itself")
            )
        return matrix

    def only_path(self) -> SvgPath:
        if not self.paths:
            raise AskError.at(
                "border", Message("border.draws_no_path", file=self.file), Message("border.keep_one_closed_path")
            )
        if len(self.paths) > 1:
            raise AskError.at(
                self.paths[1].where,
                Message("border.file_draws_paths", count=len(self.paths)),
                Message("border.keep_one_alone_unite_them"),
            )
        if not all(math.isfinite(n) and abs(n) < _FURTHEST for n in self.paths[0].matrix):
            raise AskError.at(
                self.paths[0].where, Message("border.path_reaches_further_than_anybody"), Message("border.look_numbers")
            )
        return self.paths[0]
