"""Words of the trade: `term.tab` says what a tab is, `term.tab.words` what it is called, each language its own way. A
new word is a row in both tables."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from signgen.messages import Message
from signgen.messages.language import LANGUAGES, language
from signgen.messages.wording import Wording


class Term(Struct, frozen=True, kw_only=True):
    """`key` is the word by which the tables know it."""

    key: str

    @property
    def meaning(self) -> Message:
        """What it means and what to do about it, in whole sentences."""
        return Message(f"term.{self.key}")

    def names(self, wording: Wording) -> tuple[str, ...]:
        """Its name and other words for the same thing."""
        return tuple(wording(Message(f"term.{self.key}.words")).split(", "))


def terms() -> Iterator[Term]:
    """All of them, in the order of the English table."""
    for key in language(LANGUAGES[0]).table:
        if key.startswith("term.") and not key.endswith(".words"):
            yield Term(key=key.removeprefix("term."))
