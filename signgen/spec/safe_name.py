"""A folder's name from a line of lettering, safe on every system and different for different letters.

Letters with marks lose them, Greek and Cyrillic are written in Latin letters, and a text with letters of other scripts
gets eight hexadecimal digits that stand for it. Sources, both from memory: ISO 843:1997 type 2 (transcription) for
Greek, ICAO Doc 9303 part 3, section 6 (passports) for Cyrillic and for Latin letters that are no letter and a mark.
"""

from __future__ import annotations

import re
import unicodedata

LONGEST = 60
"""Characters kept; the shortest limit of a common file system is 255 bytes, and paths add up."""

DEVICES = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))})
"""Names that some systems keep for devices, whatever follows the dot (common knowledge, from memory)."""

_PAIRS = {
    "ß": "ss", "æ": "ae", "œ": "oe", "ø": "oe", "đ": "d", "ð": "d", "ł": "l", "þ": "th", "ı": "i", "ħ": "h", "ŋ": "n",
    "α": "a", "β": "v", "γ": "g", "δ": "d", "ε": "e", "ζ": "z", "η": "i", "θ": "th", "ι": "i", "κ": "k", "λ": "l",
    "μ": "m", "ν": "n", "ξ": "x", "ο": "o", "π": "p", "ρ": "r", "σ": "s", "ς": "s", "τ": "t", "υ": "y", "φ": "f",
    "χ": "ch", "ψ": "ps", "ω": "o",
    "а": "a", "б": "b", "в": "v", "г": "g", "д": "d", "е": "e", "ж": "zh", "з": "z", "и": "i", "к": "k", "л": "l",
    "м": "m", "н": "n", "о": "o", "п": "p", "р": "r", "с": "s", "т": "t", "у": "u", "ф": "f", "х": "kh", "ц": "ts",
    "ч": "ch", "ш": "sh", "щ": "shch", "ъ": "ie", "ы": "y", "ь": "", "э": "e", "ю": "iu", "я": "ia", "є": "ie",
    "і": "i", "ґ": "g", "ў": "u", "ђ": "d", "ј": "j", "љ": "lj", "њ": "nj", "ћ": "c", "џ": "dz", "ѕ": "dz",
}  # fmt: skip


def safe_name(text: str) -> str:
    """Lower-case ASCII letters and digits with single hyphens between, never empty, never a device.

    >>> safe_name("Larkspur Lane"), safe_name("../../x"), safe_name("Ἀθήνα"), safe_name("Мила")
    ('larkspur-lane', 'x', 'athina', 'mila')
    >>> safe_name("東京") == safe_name("大阪")
    False
    """
    plain = "".join(_plain(c) for c in unicodedata.normalize("NFKD", text.casefold()))
    name = re.sub(r"[^a-z0-9?]+", "-", plain).replace("?", "").strip("-")
    strange = "?" in plain
    name = re.sub("-+", "-", name)[:LONGEST].rstrip("-")
    if strange:
        return f"{name or 'sign'}-{_digits(text)}"
    if not name:
        return "sign"
    return f"sign-{name}" if name in DEVICES else name


def _plain(character: str) -> str:
    """A character in ASCII: '?' for a letter that has none, a blank for what is no letter."""
    if character in _PAIRS:
        return _PAIRS[character]
    if character.isascii():
        return character if character.isalnum() else " "
    if unicodedata.combining(character):
        return ""
    return "?" if character.isalnum() else " "


def _digits(text: str) -> str:
    """Eight hexadecimal digits that stand for a text."""
    import hashlib

    return hashlib.sha256(unicodedata.normalize("NFC", text).encode("utf-8", "replace")).hexdigest()[:8]
