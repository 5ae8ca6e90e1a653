"""What was asked for while it is read: values by key, and every problem met on the way."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any, TypeVar

from msgspec.structs import replace

from signgen.errors import AskError, CannotMakeError, Problem
from signgen.messages import Message, Sentence
from signgen.option import Option, Value, did_you_mean, read_option
from signgen.spec.keys import KEY_BY_NAME

T = TypeVar("T")


def is_off(raw: object) -> bool:
    """Whether what was given for an option says that there is to be none of it, as in `tabs = 0`."""
    return raw is False or (isinstance(raw, int | float | str) and str(raw).strip().casefold() in ("0", "none", "no"))


class Asked:
    """Keys with their values, read once. A value that cannot be had comes back as None, with its problem kept; who
    gets None stays silent about it, since what follows from a problem is noise."""

    def __init__(self, asked: Mapping[str, object], keys: Mapping[str, Option] = KEY_BY_NAME) -> None:
        self._keys = keys
        self._given = {key: raw for key, raw in asked.items() if raw is not None}
        self._wrong: list[Problem] = []
        self._cannot: list[Problem] = []
        self._values: dict[str, Value | None] = {}
        for key in self._given:
            if key not in keys:
                self.wrong(key, Message("spec.there_no_such_key"), did_you_mean(key, keys))
            elif (needs := keys[key].needs) and self._lacks(needs):
                what = Message(
                    "spec.there_are_none" if needs.endswith("s") else "spec.there_is_none", what=needs.replace("-", " ")
                )
                self.wrong(key, what, Message("spec.give_it_too", name=needs))

    def _lacks(self, name: str) -> bool:
        """Whether there is none of what an option asks for: not given and not there by default, or given as none."""
        return is_off(self._given[name]) if name in self._given else self._keys[name].default is None

    def has(self, name: str) -> bool:
        """Whether the user gave it (well or badly)."""
        return name in self._given

    def raw(self, name: str) -> object:
        """What the user gave, as it was given; None when nothing was."""
        return self._given.get(name)

    def wrong(self, where: str, what: Sentence, remedy: Sentence = "") -> None:
        """Keep a problem with what was asked."""
        self._wrong.append(Problem(where=where, what=what, remedy=remedy))

    def cannot(self, where: str, what: Sentence, remedy: Sentence = "") -> None:
        """Keep a problem with what can be made."""
        self._cannot.append(Problem(where=where, what=what, remedy=remedy))

    def take_problems(self, other: Asked, where: str) -> None:
        """Keep the problems of keys that stand in a table, with the table's name before each."""
        self._wrong += [problem.below(where) if where else problem for problem in other._wrong]
        self._cannot += [problem.below(where) if where else problem for problem in other._cannot]

    def rename(self, names: Mapping[str, str]) -> None:
        """Tell the problems under the words that were typed instead of the keys of a table that nobody wrote."""
        for problems in (self._wrong, self._cannot):
            problems[:] = [replace(each, where=names.get(each.where, each.where)) for each in problems]

    def attempt(self, make: Callable[[], T]) -> T | None:
        """What a function returns, or None with the problems that it raised kept."""
        try:
            return make()
        except AskError as error:
            self._wrong += error.problems
        except CannotMakeError as error:
            self._cannot += error.problems
        return None

    def value(self, name: str) -> Value | None:
        """The value given, or the key's default; None when there is neither, or when what was given is wrong."""
        if name not in self._values:
            key = self._keys[name]
            raw = self._given.get(name, key.default)
            if raw is None and key.required:
                self.wrong(name, Message("spec.missing"), Message("spec.give", name=name, metavar=key.metavar))
            self._values[name] = None if raw is None else self.attempt(lambda: read_option(key, raw))
        return self._values[name]

    def number(self, name: str) -> float | None:
        """The value of a length, an angle or a number."""
        value = self.value(name)
        return float(value) if isinstance(value, int | float) else None

    def text(self, name: str) -> str | None:
        """The value of a word, a choice or a path."""
        value = self.value(name)
        return value if isinstance(value, str) else None

    def flag(self, name: str) -> bool | None:
        value = self.value(name)
        return value if isinstance(value, bool) else None

    def size(self, name: str) -> tuple[float, float] | None:
        match self.value(name):
            case (float(width), float(height)):
                return width, height
        return None

    def lines(self, name: str) -> tuple[str, ...] | None:
        value = self.value(name)
        return tuple(str(line) for line in value) if isinstance(value, tuple) else None

    def tables(self, name: str) -> tuple[Mapping[str, object], ...] | None:
        value = self.value(name)
        return tuple(row for row in value if isinstance(row, Mapping)) if isinstance(value, tuple) else None

    def plain_fields(self, keys: Iterable[Option]) -> dict[str, Any]:
        """The fields of the spec that take the values of options as they are read; those without a value are left
        out."""
        named = [(key.field, self.value(key.name)) for key in keys if key.field]
        return {field: value for field, value in named if value is not None}

    def kept_by_name(self, keys: Iterable[Option]) -> tuple[tuple[str, Value], ...]:
        """Names and values of those options that the spec keeps by their names; those without a value are left out."""
        free = [key.name for key in keys if key.is_kept_by_name]
        return tuple((name, value) for name in free if (value := self.value(name)) is not None)

    def raise_problems(self) -> None:
        """Raises: AskError with all problems if there is any with what was asked; CannotMakeError if there are only
        problems with what can be made. What was given and nothing has read is a problem: it would be ignored."""
        for name in self._given:
            if name in self._keys and name not in self._values and not any(p.where == name for p in self._wrong):
                self.wrong(name, Message("spec.nothing_reads_here"), Message("spec.leave_out_2"))
        if self._wrong:
            raise AskError([*self._wrong, *self._cannot])
        if self._cannot:
            raise CannotMakeError(self._cannot)
