"""A language: its table of words and its ways with numbers."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Mapping
from functools import cache

from msgspec import Struct

LANGUAGES = ("en", "de")
"""Each has its folder here. The first is spoken where another one lacks the words."""


class Language(Struct, frozen=True, kw_only=True):
    """`code` as in HTML's lang (BCP 47). `table`: the words for every key, `{name}` for a value (see wording.py).
    `point` parts decimals, `thousands` groups. `spellings`: how letters are usually written where only ASCII may
    stand. `plural(count)`: which of the forms 'hole|holes' goes with it."""

    code: str
    table: Mapping[str, str]
    point: str = "."
    thousands: str = ","
    spellings: Mapping[str, str] = {}
    plural: Callable[[int], int] = lambda count: 0 if count == 1 else 1

    def in_ascii(self, text: str) -> str:
        """The text with its letters spelled as they usually are where only ASCII may stand; others stay."""
        for letter, spelled in self.spellings.items():
            text = text.replace(letter, spelled)
        return text


@cache
def language(code: str) -> Language:
    """From its folder.

    Raises: KeyError for a language that there is none of.
    """
    if code not in LANGUAGES:
        raise KeyError(code)
    found = importlib.import_module(f"signgen.messages.{code}").LANGUAGE
    assert isinstance(found, Language)
    return found


def language_or_english(code: object) -> str:
    """The code of a language that there is, English for any other."""
    return code if isinstance(code, str) and code in LANGUAGES else LANGUAGES[0]


def words_below(package: str) -> Mapping[str, str]:
    """The `WORDS` of every module in a package, as one table.

    Raises: ValueError for a key that stands in two.
    """
    names = sorted(each.name for each in pkgutil.iter_modules(importlib.import_module(package).__path__))
    return together(*(importlib.import_module(f"{package}.{name}").WORDS for name in names))


def together(*tables: Mapping[str, str]) -> Mapping[str, str]:
    """One table of several rooms'.

    Raises: ValueError for a key that stands in two.
    """
    whole: dict[str, str] = {}
    for table in tables:
        if twice := whole.keys() & table.keys():
            raise ValueError(f"two messages are called {', '.join(sorted(twice))}")
        whole |= table
    return whole
