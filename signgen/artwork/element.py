"""An XML file as a tree, read without trusting it: nothing that it names is opened, nothing in it runs.

Document types, entities, instructions to other programs and whatever acts by itself are refused; depth and number of
elements are bounded while expat reads.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from xml.parsers import expat

from msgspec import Struct

from signgen.artwork.refused import refused
from signgen.messages import Message

GREATEST_BYTES = 4_000_000
"""A drawing that is larger has been traced from a picture and would take hours to cut."""

DEEPEST, MOST_ELEMENTS = 200, 20_000
"""Elements in each other (drawing programs make ten), and of one file."""

_SVG = "http://www.w3.org/2000/svg"
_ACTIVE = frozenset(
    ("script", "foreignObject", "iframe", "handler", "listener", "animate", "animateTransform", "animateMotion", "set")
)


class Element(Struct, kw_only=True):
    """`attributes` without their namespaces, `href` whether SVG 2's or XLink's; `text` of a style sheet or of words."""

    name: str
    attributes: dict[str, str]
    line: int
    children: list[Element]
    text: str = ""

    @property
    def id(self) -> str:
        return self.attributes.get("id", "")

    def walked(self) -> Iterator[Element]:
        """Itself and all in it, in the file's order."""
        waiting = [self]
        while waiting:
            one = waiting.pop()
            yield one
            waiting += reversed(one.children)


def read_elements(raw: bytes, file: str) -> Element:
    """The outermost element, which is `svg`. Elements of other namespaces (editors' notes) are left out.

    Raises: AskError with the line.
    """
    reader = _Reader(file)
    try:
        reader.parser.Parse(raw, True)
    except expat.ExpatError as error:
        raise refused(
            file, error.lineno, Message("art.not_well_formed", reason=expat.ErrorString(error.code))
        ) from None
    except (ValueError, LookupError):  # an encoding that Python does not have
        raise refused(file, 1, Message("art.no_known_encoding"), Message("art.save_as_utf8")) from None
    assert reader.root is not None
    return reader.root


class _Reader:
    def __init__(self, file: str) -> None:
        self.file = file
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._text
        self.parser.StartDoctypeDeclHandler = self._doctype
        self.parser.EntityDeclHandler = self._entity
        self.parser.ProcessingInstructionHandler = self._instruction
        self.root: Element | None = None
        self.open: list[Element] = []
        self.foreign = 0
        self.count = 0

    @property
    def line(self) -> int:
        return self.parser.CurrentLineNumber

    def _doctype(self, *_: object) -> None:
        raise refused(self.file, self.line, Message("art.document_type"), Message("art.remove_document_type"))

    def _entity(self, *_: object) -> None:
        raise refused(self.file, self.line, Message("art.entity"))

    def _instruction(self, target: str, _: str) -> None:
        raise refused(self.file, self.line, Message("art.instruction", target=target[:40]))

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        space, _, name = tag.rpartition(" ")
        self.count += 1
        if self.count > MOST_ELEMENTS:
            raise refused(
                self.file, self.line, Message("art.too_many_elements", most=MOST_ELEMENTS), Message("art.simplify")
            )
        if len(self.open) + self.foreign >= DEEPEST:
            raise refused(self.file, self.line, Message("art.too_deep", most=DEEPEST))
        plain = _plain(attributes)
        self._must_be_still(name, plain)
        if self.root is None:
            if name != "svg" or space not in ("", _SVG):
                raise refused(
                    self.file, self.line, Message("art.begins_not_svg", name=name[:40]), Message("art.name_svg_file")
                )
        elif self.foreign or space not in ("", _SVG):
            self.foreign += 1
            return
        element = Element(name=name, attributes=plain, line=self.line, children=[])
        if self.root is None:
            self.root = element
        else:
            self.open[-1].children.append(element)
        self.open.append(element)

    def _text(self, text: str) -> None:
        if self.open and not self.foreign and self.open[-1].name in ("style", "text", "tspan", "textPath"):
            self.open[-1].text += text

    def _end(self, _: str) -> None:
        if self.foreign:
            self.foreign -= 1
        else:
            self.open.pop()

    def _must_be_still(self, name: str, attributes: Mapping[str, str]) -> None:
        if name in _ACTIVE:
            raise refused(self.file, self.line, Message("art.acts", name=name))
        for attribute, value in attributes.items():
            if attribute.casefold().startswith("on"):
                raise refused(self.file, self.line, Message("art.script", name=attribute[:40]))
            if attribute == "href" and not value.strip().startswith("#") and name not in ("a", "image"):
                raise refused(self.file, self.line, Message("art.outside", name=name[:40]))


def _plain(attributes: Mapping[str, str]) -> dict[str, str]:
    """Attributes of no namespace, and XLink's `href` where there is no other."""
    found: dict[str, str] = {}
    for key, value in attributes.items():
        space, _, name = key.rpartition(" ")
        if not space or (name == "href" and name not in attributes):
            found[name] = value
    return found
