"""What was asked for while it is read: values by key, and every problem met on the way."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from signgen.errors import AskError, CannotMakeError, Problem
from signgen.option import Option, Value, did_you_mean, read_option
from signgen.spec.keys import KEY_BY_NAME

T = TypeVar("T")


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
                self.wrong(key, "There is no such key.", did_you_mean(key, keys))

    def has(self, name: str) -> bool:
        """Whether the user gave it (well or badly)."""
        return name in self._given

    def raw(self, name: str) -> object:
        """What the user gave, as it was given; None when nothing was."""
        return self._given.get(name)

    def wrong(self, where: str, what: str, remedy: str = "") -> None:
        """Keep a problem with what was asked."""
        self._wrong.append(Problem(where=where, what=what, remedy=remedy))

    def cannot(self, where: str, what: str, remedy: str = "") -> None:
        """Keep a problem with what can be made."""
        self._cannot.append(Problem(where=where, what=what, remedy=remedy))

    def take_problems(self, other: Asked, where: str) -> None:
        """Keep the problems of keys that stand in a table, with the table's name before each."""
        self._wrong += [problem.below(where) for problem in other._wrong]
        self._cannot += [problem.below(where) for problem in other._cannot]

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
                self.wrong(name, "It is missing.", f"Give {name} {key.metavar}.")
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

    def raise_problems(self) -> None:
        """Raises: AskError with all problems if there is any with what was asked; CannotMakeError if there are only
        problems with what can be made."""
        if self._wrong:
            raise AskError([*self._wrong, *self._cannot])
        if self._cannot:
            raise CannotMakeError(self._cannot)
