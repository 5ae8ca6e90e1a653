"""What the sheet, the pictures and the summary say, in the language that was asked for."""

from __future__ import annotations

import importlib
import re
import string
from collections.abc import Mapping, Sequence
from functools import cache
from typing import Protocol

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.markup.markup import Html, Part, el, joined
from signgen.numbers import figure, time_parts
from signgen.shop.tools import Tool
from signgen.spec.keys.papers import LANGUAGES
from signgen.spec.sign_spec import SignSpec


class Asked(Protocol):
    """Whatever knows what was asked for."""

    @property
    def spec(self) -> SignSpec: ...


class Words(Struct, frozen=True, kw_only=True):
    """One language's table of messages: `{name}` in a message stands for a value. `comma`: decimals follow a comma.
    `names` and `phrases` are for what other parts of the program call things and say in English."""

    language: str
    table: Mapping[str, str]
    comma: bool
    names: Mapping[str, str]
    phrases: Sequence[tuple[str, str]]

    def __call__(self, key: str, /, **values: str | int) -> str:
        """A message as plain text."""
        return self.table[key].format_map(values) if values else self.table[key]

    def html(self, key: str, /, **values: Part) -> Html:
        """A message as markup: values that are markup stay so, everything else is escaped."""
        parts: list[Part] = []
        for text, name, _, _ in string.Formatter().parse(self.table[key]):
            parts += [text, values[name] if name else None]
        return joined(*parts)

    def count(self, key: str, number: int, /, **values: str | int) -> str:
        """The message `key.one` or `key.many`, which may name the `{count}`."""
        return self(f"{key}.{'one' if number == 1 else 'many'}", count=number, **values)

    def of(self, group: str) -> dict[str, str]:
        """The messages of a group (`group.name`) by their names."""
        return {key[len(group) + 1 :]: text for key, text in self.table.items() if key.startswith(f"{group}.")}

    def figure(self, value: float, places: int = 1) -> str:
        """A figure to read; what is typed into a machine keeps its point (`numbers.figure`)."""
        text = figure(value, places)
        return text.replace(".", ",") if self.comma else text

    def mm(self, value: float, places: int = 1) -> str:
        """The length with its unit, never parted at a line's end."""
        return f"{self.figure(value, places)}\u00a0mm"

    def size(self, width: float, height: float) -> str:
        """'220 × 140 mm'."""
        return f"{self.figure(width)}\u00a0×\u00a0{self.figure(height)}\u00a0mm"

    def span(self, minutes: float) -> str:
        """A time to plan by (`numbers.time_parts`)."""
        hours, mins, seconds = time_parts(minutes)
        if hours:
            return self("span.h_min", h=hours, min=mins) if mins else self("span.h", h=hours)
        if mins:
            return self("span.min_s", min=mins, s=seconds) if seconds else self("span.min", min=mins)
        return self("span.s", s=seconds)

    def name(self, kind: str, name: str, otherwise: str) -> str:
        """What a thing of the shop's or a check is called; its English name where this language has none."""
        return self.names.get(f"{kind} {name}", otherwise)

    def material(self, facts: Asked) -> str:
        return self.name("material", facts.spec.material.name, facts.spec.material.label)

    def machine(self, facts: Asked) -> str:
        return self.name("machine", facts.spec.machine.name, facts.spec.machine.label)

    def said(self, english: str) -> str | None:
        """What another part of the program says, in this language; None where it is not known."""
        if self.language == "en":
            return english
        for pattern, text in self.phrases:
            if match := re.fullmatch(pattern, english):
                return text.format(*(self._numeral(group) for group in match.groups()))
        return None

    def _numeral(self, text: str) -> str:
        return text.replace(".", ",") if self.comma and re.fullmatch(r"-?\d+\.\d+", text) else text

    def told(self, english: str) -> Html:
        """The same as markup, sentence by sentence; what is not known stays English, and says so to whoever reads it
        aloud."""
        if self.said(english) is not None:
            return joined(self.said(english))
        parts: list[Part] = []
        for sentence in re.split(r"(?<=[.!?]) (?=[A-Z])", english):
            text = self.said(sentence)
            parts += [" " if parts else None, el("span", sentence, lang="en") if text is None else text]
        return joined(*parts)

    def tool(self, tool: Tool) -> str:
        """What a person calls a cutter."""
        angle = "" if tool.angle_deg is None else self.figure(tool.angle_deg, 3)
        flat = self("tool.flat", tip=self.figure(tool.tip_mm, 3)) if tool.kind == "v-bit" and tool.tip_mm else ""
        cut = self(f"tool.cut.{tool.cut}") if tool.kind != "v-bit" and tool.cut and tool.cut != "up-cut" else ""
        return self(f"tool.{tool.kind}", size=self.figure(tool.diameter_mm, 4), angle=angle, cut=cut) + flat

    def hole_noun(self, holes: Sequence[Hole]) -> str:
        """'hole', 'holes', 'slots', or 'holes and slots'."""
        slots = sum(hole.span_mm > 0 for hole in holes)
        counts = (("noun.hole", len(holes) - slots), ("noun.slot", slots))
        return self.listed(tuple(self.count(key, n) for key, n in counts if n))

    def hole_sizes(self, holes: Sequence[Hole], mark: str = "") -> str:
        """Every size once, in millimetres: '7', '6.6 × 12' for slots, '5.5 sunk to 10.4'; the mark before
        diameters."""
        rows = sorted(holes, key=lambda hole: (hole.diameter_mm, hole.span_mm))
        return self.listed(tuple(dict.fromkeys(self._hole_size(hole, mark) for hole in rows)))

    def _hole_size(self, hole: Hole, mark: str) -> str:
        across = self.figure(hole.diameter_mm, 2)
        if hole.span_mm:
            return f"{across}\u00a0×\u00a0{self.figure(hole.diameter_mm + hole.span_mm, 2)}"
        sunk = self("noun.sunk", size=f"{mark}{self.figure(hole.sink.diameter_mm, 2)}") if hole.sink else ""
        return f"{mark}{across}{sunk}"

    def cap_heights(self, drawing: Drawing) -> str:
        """The height of the capitals in millimetres, '22.2', or of the smallest and the largest line, '15.4 to
        60'."""
        least = self.figure(drawing.cap_height_mm)
        most = self.figure(max((line.cap_height_mm for line in drawing.lines), default=drawing.cap_height_mm))
        return least if least == most else self("range", least=least, most=most)

    def listed(self, words: tuple[str, ...]) -> str:
        """'a', 'a and b', 'a, b and c'."""
        return f" {self('and')} ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)


@cache
def words_in(language: str) -> Words:
    """From its table in words_<language>.py; all tables have the same keys.

    Raises: KeyError for a language that there is none for.
    """
    if language not in LANGUAGES:
        raise KeyError(language)
    module = importlib.import_module(f"signgen.words.words_{language}")
    return Words(language=language, table=module.WORDS, comma=module.COMMA, names=module.NAMES, phrases=module.PHRASES)


def words_of(facts: Asked) -> Words:
    """In the language that the sign was asked for in."""
    return words_in(facts.spec.language)
