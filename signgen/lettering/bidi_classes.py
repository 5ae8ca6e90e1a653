"""Characters of no fixed direction given one: the weak and neutral rules of the bidirectional algorithm.

Source: Unicode Standard Annex #9, rules W1 to W7 and N0 to N2; see `bidi`.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from functools import cache

INITIATORS = ("LRI", "RLI", "FSI")
"""Classes that begin an isolate."""

_NEUTRAL = ("B", "S", "WS", "ON", "FSI", "LRI", "RLI", "PDI")
_SAME_BRACKET = {"\u2329": "\u3008", "\u232a": "\u3009"}


def resolve_classes(
    characters: Sequence[str], originals: Sequence[str], run: list[str], sos: str, eos: str, direction: str
) -> None:
    """Every class in `run` made L, R, EN or AN, in place, for one isolating run sequence.

    `originals` are the classes before overrides; `sos` and `eos` the directions, L or R, that the sequence meets at its
    ends; `direction` its own.
    """
    _weak(run, sos)
    _brackets(characters, originals, run, sos, direction)
    _neutral(run, sos, eos, direction)


def _weak(run: list[str], sos: str) -> None:
    before = sos
    for i, kind in enumerate(run):  # W1
        if kind == "NSM":
            run[i] = "ON" if before in ("PDI", *INITIATORS) else before
        before = run[i]
    strong = sos
    for i, kind in enumerate(run):  # W2, W3
        if kind in ("L", "R", "AL"):
            strong = kind
        elif kind == "EN" and strong == "AL":
            run[i] = "AN"
        if kind == "AL":
            run[i] = "R"
    for i in range(1, len(run) - 1):  # W4
        pair = (run[i - 1], run[i + 1])
        if (run[i] in ("ES", "CS") and pair == ("EN", "EN")) or (run[i] == "CS" and pair == ("AN", "AN")):
            run[i] = pair[0]
    i = 0
    while i < len(run):  # W5
        end = i
        while end < len(run) and run[end] == "ET":
            end += 1
        if end > i and ((i > 0 and run[i - 1] == "EN") or (end < len(run) and run[end] == "EN")):
            run[i:end] = ["EN"] * (end - i)
        i = max(end, i + 1)
    strong = sos
    for i, kind in enumerate(run):
        if kind in ("ES", "ET", "CS"):  # W6
            run[i] = "ON"
        elif kind in ("L", "R"):
            strong = kind
        elif kind == "EN" and strong == "L":  # W7
            run[i] = "L"


@cache
def _bracket_partners() -> dict[str, str]:
    """Closing bracket of each opening one.

    Source: BidiBrackets.txt. It holds the mirrored characters of the categories Ps and Pe; a closing one follows its
    opening one, but for the four of U+298D to U+2990, which are crossed. A test compares them.
    """
    pairs = {"\u298d": "\u2990", "\u298f": "\u298e"}
    opening = ""
    for character in map(chr, (*range(0x20, 0x3100), *range(0xFE50, 0xFF70))):
        if character in "\u298d\u298e\u298f\u2990" or not unicodedata.mirrored(character):
            continue
        if unicodedata.category(character) == "Ps":
            opening = character
        elif unicodedata.category(character) == "Pe" and opening:
            pairs[opening] = character
            opening = ""
    return pairs


def _bracket_pairs(characters: Sequence[str], run: Sequence[str]) -> list[tuple[int, int]]:
    """Index pairs of matching brackets, by the opening one (BD16)."""
    partners = _bracket_partners()
    closing = set(partners.values())
    stack: list[tuple[str, int]] = []
    pairs: list[tuple[int, int]] = []
    for i, character in enumerate(characters):
        if run[i] != "ON":
            continue
        if character in partners:
            if len(stack) == 63:
                return []
            stack.append((_SAME_BRACKET.get(partners[character], partners[character]), i))
        elif character in closing:
            same = _SAME_BRACKET.get(character, character)
            for depth in range(len(stack) - 1, -1, -1):
                if stack[depth][0] == same:
                    pairs.append((stack[depth][1], i))
                    del stack[depth:]
                    break
    return sorted(pairs)


def _brackets(characters: Sequence[str], originals: Sequence[str], run: list[str], sos: str, direction: str) -> None:
    """N0: both brackets of a pair take the direction of what they hold, or of what stands before them."""

    def strong(kind: str) -> str:
        return "R" if kind in ("EN", "AN", "R") else "L" if kind == "L" else ""

    for opening, closing in _bracket_pairs(characters, run):
        inside = {strong(kind) for kind in run[opening + 1 : closing]} - {""}
        if not inside:
            continue
        chosen = direction
        if direction not in inside:
            before = next((strong(kind) for kind in reversed(run[:opening]) if strong(kind)), sos)
            chosen = before if before != direction else direction
        for i in (opening, closing):
            run[i] = chosen
            for j in range(i + 1, len(run)):
                if originals[j] != "NSM":
                    break
                run[j] = chosen


def _neutral(run: list[str], sos: str, eos: str, direction: str) -> None:
    """Neutral stretches take the direction of both their neighbours, or else that of the embedding (N1, N2)."""
    i = 0
    while i < len(run):
        end = i
        while end < len(run) and run[end] in _NEUTRAL:
            end += 1
        if end > i:
            left, right = (
                "R" if kind in ("EN", "AN") else kind
                for kind in (run[i - 1] if i else sos, run[end] if end < len(run) else eos)
            )
            run[i:end] = [left if left == right else direction] * (end - i)
        i = max(end, i + 1)
