"""A sentence before it is put into words: which one, and what it is about."""

from __future__ import annotations

from collections.abc import Mapping

from signgen.messages.values import Value


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
        from signgen.messages.wording import english

        return english(self)

    def __repr__(self) -> str:
        return f"Message({', '.join([repr(self.key), *(f'{k}={v!r}' for k, v in self.values.items())])})"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Message) and self.key == other.key and self.values == other.values

    def __hash__(self) -> int:
        return hash((self.key, tuple(self.values.items())))

    def __reduce__(self) -> tuple[object, ...]:
        return _again, (self.key, dict(self.values))


def _again(key: str, values: Mapping[str, Value]) -> Message:
    """A message sent from another process."""
    return Message(key, **values)


Sentence = Message | str
"""A message, or text that is nobody's to translate: what the user typed, a word of the operating system."""
