"""What the sheet, the pictures and the summary say, in the language that was asked for."""

from __future__ import annotations

import importlib
import string
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from signgen.sheet.markup import Html, Part, joined
from signgen.sheet.numbers import figure

LANGUAGES = ("en", "de")
"""Each has its table in words_<language>.py; all tables have the same keys."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """One language's table of messages: `{name}` in a message stands for a value. `comma`: decimals follow a comma."""

    language: str
    table: Mapping[str, str]
    comma: bool

    def __call__(self, key: str, **values: str | int) -> str:
        """A message as plain text."""
        return self.table[key].format_map(values) if values else self.table[key]

    def html(self, key: str, **values: Part) -> Html:
        """A message as markup: values that are markup stay so, everything else is escaped."""
        parts: list[Part] = []
        for text, name, _, _ in string.Formatter().parse(self.table[key]):
            parts += [text, values[name] if name else None]
        return joined(*parts)

    def count(self, key: str, number: int, **values: str | int) -> str:
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

    def listed(self, words: tuple[str, ...]) -> str:
        """'a', 'a and b', 'a, b and c'."""
        return f" {self('and')} ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)


@cache
def words_in(language: str) -> Words:
    """Raises: KeyError for a language that there is no table for."""
    if language not in LANGUAGES:
        raise KeyError(language)
    module = importlib.import_module(f"signgen.sheet.words_{language}")
    return Words(language=language, table=module.WORDS, comma=module.COMMA)
