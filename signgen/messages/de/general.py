"""German: words that every room uses."""

from __future__ import annotations

WORDS = {
    "list.and": "und",
    "list.or": "oder",
    "list.these": "{these}",
    "words.lacking": "{count} dieser Meldungen {count:hat|haben} in dieser Sprache ({language}) noch keine Worte: "
    "Englisch.",
}
