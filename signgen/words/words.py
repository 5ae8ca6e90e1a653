"""What the sheet, the pictures and the summary say, in the language that was asked for."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Protocol

from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.markup.markup import Foreign, Html, Part, joined
from signgen.messages import Message, Mm, Sentence
from signgen.messages.figures import Units, fraction_of_inch
from signgen.messages.figures import figure as inch_figure
from signgen.messages.language import Language, language
from signgen.messages.wording import Wording, parsed
from signgen.numbers import figure, time_parts
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec


class HasLanguage(Protocol):
    """Whatever knows what was asked for."""

    @property
    def spec(self) -> SignSpec: ...


class Words:
    """Says messages by their keys, in one language and in millimetres or inches; what it has no words for comes in
    English and says so (`Foreign`)."""

    def __init__(self, tongue: Language | str, units: Units = "mm") -> None:
        self.wording = Wording(tongue, units, gap="\u00a0")
        self.units = units
        self.language = self.wording.language.code

    def __call__(self, key: str, /, **values: str | int) -> str:
        """A message as plain text."""
        return self.said(Message(key, **values))

    def knows(self, key: str) -> bool:
        """Whether there are words for it in any language."""
        return key in language("en").table

    def said(self, sentence: Sentence) -> str:
        """The same for a message that was made elsewhere."""
        pieces = list(self.wording.pieces(sentence))
        text = "".join(piece.text for piece in pieces)
        own = all(piece.code == self.language for piece in pieces)
        return text if own else Foreign(text, pieces[0].code)

    def told(self, sentence: Sentence) -> Html:
        """The same as markup: what is in another language says so to whoever reads it aloud."""
        pieces = self.wording.pieces(sentence)
        return joined(*(text if code == self.language else Foreign(text, code) for text, code in pieces))

    def html(self, key: str, /, **values: Part) -> Html:
        """A message as markup: values that are markup stay so, everything else is escaped."""
        code, template = self.wording.template(key)
        parts: list[Part] = []
        for text, name, _ in parsed(template):
            parts += [text if code == self.language else Foreign(text, code), values[name] if name else None]
        return joined(*parts)

    def count(self, key: str, number: int, /, **values: str | int) -> str:
        """The message `key.one` or `key.many`, which may name the `{count}`."""
        return self(f"{key}.{'one' if number == 1 else 'many'}", count=number, **values)

    def of(self, group: str) -> dict[str, str]:
        """The messages of a group (`group.name`) by their names."""
        keys = [key for key in language("en").table if key.startswith(f"{group}.")]
        return {key[len(group) + 1 :]: self.wording.template(key)[1] for key in keys}

    def figure(self, value: float, places: int = 1) -> str:
        """A figure to read; what is typed into a machine keeps its point (`numbers.figure`)."""
        text = figure(value, places)
        return text.replace(".", self.wording.language.point)

    def length(self, value: float, places: int = 1) -> str:
        """A length to read, in the units, without their name."""
        if self.units == "mm":
            return self.figure(value, places)
        return inch_figure(Mm(value, places), self.units).replace(".", self.wording.language.point)

    def mm(self, value: float, places: int = 1) -> str:
        """The length with its unit, never parted at a line's end; in inches with the fraction that it exactly is."""
        exact = fraction_of_inch(value) if self.units == "in" else ""
        return self.with_unit(self.length(value, places)) + (f"\u00a0({exact})" if exact else "")

    def with_unit(self, said: str) -> str:
        """Lengths that were said, with their unit behind them."""
        return f"{said}\u00a0{self.units}"

    def size(self, *sides: float) -> str:
        """'220 × 140 mm'."""
        return self.with_unit("\u00a0×\u00a0".join(self.length(side) for side in sides))

    def span(self, minutes: float) -> str:
        """A time to plan by (`numbers.time_parts`)."""
        hours, mins, seconds = time_parts(minutes)
        if hours:
            return self("span.h_min", h=hours, min=mins) if mins else self("span.h", h=hours)
        if mins:
            return self("span.min_s", min=mins, s=seconds) if seconds else self("span.min", min=mins)
        return self("span.s", s=seconds)

    def material(self, facts: HasLanguage) -> str:
        return self.said(facts.spec.material.label)

    def machine(self, facts: HasLanguage) -> str:
        return self.said(facts.spec.machine.label)

    def tool(self, tool: Tool) -> str:
        """What a person calls a cutter."""
        return self.said(tool.called)

    def hole_noun(self, holes: Sequence[Hole]) -> str:
        """'hole', 'holes', 'slots', or 'holes and slots'."""
        slots = sum(hole.span_mm > 0 for hole in holes)
        counts = (("noun.hole", len(holes) - slots), ("noun.slot", slots))
        return self.listed(tuple(self.count(key, n) for key, n in counts if n))

    def hole_sizes(self, holes: Sequence[Hole], mark: str = "") -> str:
        """Every size once, without their unit: '7', '6.6 × 12' for slots, '5.5 sunk to 10.4'; the mark before
        diameters."""
        rows = sorted(holes, key=lambda hole: (hole.diameter_mm, hole.span_mm))
        return self.listed(tuple(dict.fromkeys(self._hole_size(hole, mark) for hole in rows)))

    def _hole_size(self, hole: Hole, mark: str) -> str:
        across = self.length(hole.diameter_mm, 2)
        if hole.span_mm:
            return f"{across}\u00a0×\u00a0{self.length(hole.diameter_mm + hole.span_mm, 2)}"
        sunk = self("noun.sunk", size=f"{mark}{self.length(hole.sink.diameter_mm, 2)}") if hole.sink else ""
        return f"{mark}{across}{sunk}"

    def cap_heights(self, drawing: Drawing) -> str:
        """The height of the capitals without its unit, '22.2', or of the smallest and the largest line, '15.4 to
        60'."""
        least = self.length(drawing.cap_height_mm)
        most = self.length(max((line.cap_height_mm for line in drawing.lines), default=drawing.cap_height_mm))
        return least if least == most else self("range", least=least, most=most)

    def listed(self, words: tuple[str, ...]) -> str:
        """'a', 'a and b', 'a, b and c'."""
        return self.said(Message("list.these", these=words))


@cache
def words_in(language: str, units: Units = "mm") -> Words:
    """Raises: KeyError for a language that there is none of."""
    return Words(language, units)


def words_of(facts: HasLanguage) -> Words:
    """In the language and the units that the sign was asked for in."""
    return words_in(facts.spec.language, facts.spec.units)
