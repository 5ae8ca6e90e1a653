"""English: words that every room uses."""

from __future__ import annotations

WORDS = {
    "list.and": "and",
    "list.or": "or",
    "list.these": "{these}",
    "words.lacking": "{count} of these messages {count:has|have} no words in this language ({language}) yet: in "
    "English.",
}
