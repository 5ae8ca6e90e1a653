"""One row of a shop file: each key read by its own rule, every problem kept, nothing guessed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Literal, TypeVar

from signgen.errors import AskError, Problem
from signgen.messages import Message, Sentence
from signgen.messages.wording import has_words
from signgen.option import did_you_mean, flag, pick, word
from signgen.units import Limits, angle_deg, count, length_mm, number

T = TypeVar("T")

_MISSING = object()


class ShopRow:
    """A table of a shop file while it is read. A reader gives None where it added a problem instead of a value;
    `finish` says whether the row is good. `where` is the file and the table, as in 'shop.toml: tool.v-bit-90'."""

    def __init__(self, where: str, table: Mapping[str, object]) -> None:
        self.where = where
        self.problems: list[Problem] = []
        self.sources: list[str] = []
        self._table = table
        self._asked: list[str] = []

    def read(self, key: str, reader: Callable[[object, str], T], default: T | None = None) -> T | None:
        """The value of a key by any reader that takes (raw, where); required unless it has a default."""
        self._asked.append(key)
        raw = self._table.get(key, _MISSING)
        if raw is _MISSING:
            if default is None:
                self.add(key, Message("shop.missing"), Message("shop.give_it", key=key))
            return default
        try:
            return reader(raw, f"{self.where}.{key}")
        except AskError as error:
            self.problems += error.problems
            return None

    def add(self, key: str, what: Sentence, remedy: Sentence) -> None:
        self.problems.append(Problem(where=f"{self.where}.{key}", what=what, remedy=remedy))

    def leave(self, *keys: str) -> None:
        """Call these keys known without reading them, where a problem has made it impossible to say what they mean."""
        self._asked += keys

    def text(self, key: str) -> str | None:
        return self.read(key, word)

    def flag(self, key: str, default: bool | None = None) -> bool | None:
        return self.read(key, flag, default)

    def choice(self, key: str, choices: tuple[str, ...], default: str | None = None) -> str | None:
        return self.read(key, lambda raw, where: pick(word(raw, where), choices, where, key), default)

    def length(self, key: str, limits: Limits, default: float | None = None) -> float | None:
        return self.read(key, lambda raw, where: length_mm(raw, where, limits), default)

    def angle(self, key: str, limits: Limits) -> float | None:
        return self.read(key, lambda raw, where: angle_deg(raw, where, limits))

    def number(self, key: str, limits: Limits, default: float | None = None) -> float | None:
        return self.read(key, lambda raw, where: number(raw, where, limits), default)

    def count(self, key: str, limits: Limits) -> int | None:
        return self.read(key, lambda raw, where: count(raw, where, limits))

    def numbers(self, key: str, n: int, limits: Limits) -> tuple[float, ...] | None:
        """A list of n numbers."""
        return self.read(key, lambda raw, where: _numbers(raw, where, n, limits))

    def sourced(self, key: str, limits: Limits) -> float | None:
        """A number that stands beside its source, `{ value = 0.5, source = "common practice" }`."""
        return self.read(key, lambda raw, where: self._sourced(key, raw, where, limits))

    def sourced_or_none(self, key: str, limits: Limits) -> float | None:
        """The same where nothing may stand."""
        self._asked.append(key)
        return self.sourced(key, limits) if key in self._table else None

    def number_or_none(self, key: str, limits: Limits) -> float | None:
        self._asked.append(key)
        return self.number(key, limits) if key in self._table else None

    def colour(self, key: str) -> tuple[int, int, int] | None:
        return self.read(key, _colour)

    def cautions(self, key: str) -> tuple[Sentence, ...] | None:
        """Whole sentences, or keys of ours."""
        return self.read(key, _cautions)

    def label(self, kind: Literal["material", "machine"], name: str) -> Sentence | None:
        """What the row calls itself; what ships is called in every language and needs no label."""
        if "label" not in self._table and has_words(f"{kind}.{name}"):
            return Message(f"material.{name}") if kind == "material" else Message(f"machine.{name}")
        return self.text("label")

    def texts(self, key: str, default: tuple[str, ...] | None = None) -> tuple[str, ...] | None:
        """A list of words."""
        return self.read(key, _texts, default)

    def finish(self) -> bool:
        """Whether the row is good, after keys that nobody asked for have been called problems."""
        for key in self._table:
            if key not in self._asked:
                self.add(key, Message("shop.there_no_such_key"), did_you_mean(key, self._asked))
        return not self.problems

    def _sourced(self, key: str, raw: object, where: str, limits: Limits) -> float:
        advice = Message("shop.write_value_0_5_source")
        if not isinstance(raw, dict) or set(raw) != {"value", "source"}:
            raise AskError.at(where, Message("shop.number_needs_source_beside"), advice)
        source = word(raw["source"], f"{where}.source")
        self.sources.append(f"{key}: {source}")
        return number(raw["value"], f"{where}.value", limits)


def _numbers(raw: object, where: str, n: int, limits: Limits) -> tuple[float, ...]:
    if not isinstance(raw, list) or len(raw) != n:
        raise AskError.at(
            where, Message("shop.not_list_numbers", text=repr(raw), n=n), Message("shop.write_numbers", n=n)
        )
    return tuple(number(each, where, limits) for each in raw)


def _colour(raw: object, where: str) -> tuple[int, int, int]:
    text = word(raw, where)
    try:
        if len(text) == 7 and text[0] == "#":
            red, green, blue = bytes.fromhex(text[1:])
            return red, green, blue
    except ValueError:
        pass  # the same message as for a text of another length
    raise AskError.at(where, Message("shop.not_colour", text=text), Message("shop.write_rrggbb_dcbf94"))


def _cautions(raw: object, where: str) -> tuple[Sentence, ...]:
    texts = _texts(raw, where)
    return tuple(Message(f"caution.{text}") if has_words(f"caution.{text}") else text for text in texts)


def _texts(raw: object, where: str) -> tuple[str, ...]:
    if not isinstance(raw, list):
        raise AskError.at(where, Message("shop.not_list", text=repr(raw)), Message("shop.write_sentences_none"))
    return tuple(word(each, where) for each in raw)
