"""A folder's name from a line of lettering, safe on every system."""

from __future__ import annotations

import re
import unicodedata

LONGEST = 60
"""Characters kept; the shortest limit of a common file system is 255 bytes, and paths add up."""

DEVICES = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))})
"""Names that some systems keep for devices, whatever follows the dot (common knowledge, from memory)."""


def safe_name(text: str) -> str:
    """Lower-case ASCII letters and digits with single hyphens between, never empty, never a device: 'Larkspur Lane' ->
    'larkspur-lane', '../../x' -> 'x', 'Ἀθήνα' -> 'sign'."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    name = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST].rstrip("-")
    if not name:
        return "sign"
    return f"sign-{name}" if name in DEVICES else name
