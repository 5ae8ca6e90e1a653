"""Sentences before they are put into words, and their wording in a language and in units.

In a table, `{name}` stands for a value and `{{` for a brace. Behind a colon stands how it is said: `{count:hole|holes}`
chooses the form that goes with a number (the number itself is not said), `{count:,}` groups thousands, `{width:bare}`
leaves the unit out, `{names:or}` lists with "or", `{names:plain}` with commas alone, `{names:apart}` with semicolons.
"""

from __future__ import annotations

import string
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple, TypeAlias, Union

from signgen.messages.figures import Units, grouped, measure
from signgen.messages.language import LANGUAGES, Language, language
from signgen.messages.values import Num, Sides, Typed

Value: TypeAlias = Union[str, Path, int, float, Num, Sides, Typed, "Message", tuple["Value", ...]]
"""Texts and paths stand as they are (what the user typed, names of files); tuples are listed, 'a, b and c'."""


class Message:
    """One sentence or part of one: the `key` of its words in every language's table, and the values for their
    `{places}`. Frozen; equal when key and values are. `str()` is the English wording.

    >>> Message("list.pair", first="a", last="b") == Message("list.pair", first="a", last="b")
    True
    """

    __slots__ = ("key", "values")
    key: str
    values: Mapping[str, Value]

    def __init__(self, key: str, /, **values: Value) -> None:
        object.__setattr__(self, "key", key)
        object.__setattr__(self, "values", values)

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"a message is frozen: {name}")

    def __str__(self) -> str:
        return english(self)

    def __repr__(self) -> str:
        return f"Message({', '.join([repr(self.key), *(f'{k}={v!r}' for k, v in self.values.items())])})"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Message) and self.key == other.key and self.values == other.values

    def __hash__(self) -> int:
        return hash((self.key, tuple(self.values.items())))

    def __reduce__(self) -> tuple[object, ...]:
        return _again, (Message, self.key, dict(self.values))


def _again(kind: type[Message], key: str, values: Mapping[str, Value]) -> Message:
    """A message sent from another process."""
    return kind(key, **values)


Sentence = Message | str
"""A message, or text that is nobody's to translate: what the user typed, a word of the operating system."""


class WordedPiece(NamedTuple):
    """Text, and the code of the language that it is in."""

    text: str
    code: str


@cache
def parsed(template: str) -> tuple[tuple[str, str, str], ...]:
    """(text, name, how) of each place of a template, the text standing before it; '' for no name."""
    return tuple((text, name or "", how or "") for text, name, how, _ in string.Formatter().parse(template))


class Wording:
    """`units` for lengths; `gap` stands between a number and its unit. What the language has no words for is said in
    English; its keys are gathered in `lacking`."""

    def __init__(self, tongue: Language | str = "en", units: Units = "mm", gap: str = " ") -> None:
        self.language = language(tongue) if isinstance(tongue, str) else tongue
        self.units: Units = units
        self.gap = gap
        self.lacking: set[str] = set()

    def __call__(self, sentence: Sentence) -> str:
        """As plain text."""
        return "".join(piece.text for piece in self.pieces(sentence))

    def pieces(self, sentence: Sentence) -> Iterator[WordedPiece]:
        """Piece by piece: a sentence that has no words in this language comes in English as a whole."""
        yield from self._pieces(sentence, self.language)

    def lines(self, sentences: Iterable[Sentence]) -> Iterator[str]:
        """Each as plain text; when something had to be said in English, the last one says so."""
        yield from map(self, sentences)
        if self.lacking:
            yield self(Message("words.lacking", language=self.language.code, count=len(self.lacking)))

    def template(self, key: str, tongue: Language | None = None) -> tuple[str, str]:
        """The words of a key with their places, and the code of the language that they are in."""
        tongue = tongue or self.language
        if (own := tongue.table.get(key)) is not None:
            return tongue.code, own
        self.lacking.add(key)
        english = language(LANGUAGES[0])
        return english.code, english.table[key]

    def _pieces(self, sentence: Sentence, tongue: Language) -> Iterator[WordedPiece]:
        if isinstance(sentence, str):
            yield WordedPiece(sentence, tongue.code)
            return
        code, template = self.template(sentence.key, tongue)
        tongue = tongue if code == tongue.code else language(code)
        for text, name, how in parsed(template):
            if text:
                yield WordedPiece(text, tongue.code)
            if name:
                yield from self._value(sentence.values[name], how, tongue)

    def _value(self, value: Value, how: str, tongue: Language) -> Iterator[WordedPiece]:
        if isinstance(value, Message):
            yield from self._pieces(value, tongue)
        elif isinstance(value, tuple):
            yield from self._list(value, how, tongue)
        elif isinstance(value, Num | Sides | Typed):
            yield WordedPiece(measure(value, self.units, tongue.point, self.gap, bare=how == "bare"), tongue.code)
        elif isinstance(value, float):
            yield from self._value(Num(value), how, tongue)
        elif isinstance(value, int):
            yield WordedPiece(_counted(value, how, tongue), tongue.code)
        else:
            yield WordedPiece(str(value), tongue.code)

    def _list(self, values: tuple[Value, ...], how: str, tongue: Language) -> Iterator[WordedPiece]:
        """'a, b and c'."""
        if "|" in how:
            yield WordedPiece(_counted(len(values), how, tongue), tongue.code)
            return
        between = "; " if how == "apart" else ", "
        last = between if how in ("plain", "apart") else f" {_joiner(tongue, how)} "
        for n, value in enumerate(values):
            if n:
                yield WordedPiece(between if n < len(values) - 1 else last, tongue.code)
            yield from self._value(value, "", tongue)


def _joiner(tongue: Language, how: str) -> str:
    """'and' or 'or'."""
    key = "list.or" if how == "or" else "list.and"
    return tongue.table.get(key) or language(LANGUAGES[0]).table[key]


def _counted(value: int, how: str, tongue: Language) -> str:
    if "|" in how:
        forms = how.split("|")
        return forms[min(tongue.plural(value), len(forms) - 1)]
    return grouped(value, tongue.thousands) if how == "," else str(value)


@cache
def _in_english() -> Wording:
    return Wording()


def english(sentence: Sentence) -> str:
    """The English wording, as plain text, in millimetres."""
    return _in_english()(sentence)


def has_words(key: str) -> bool:
    """Whether there is a message of this key: for names that may be ours or a user's."""
    return key in language(LANGUAGES[0]).table
