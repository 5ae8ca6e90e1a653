"""The order in which the letters of mixed left-to-right and right-to-left text stand on a line.

Source: Unicode Standard Annex #9, "Unicode Bidirectional Algorithm", rules P2 to L2; the rule that a function
carries out is named beside it. Held against BidiTest.txt and BidiCharacterTest.txt of the Unicode character database.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence

from msgspec import Struct

from signgen.lettering.bidi_classes import INITIATORS, resolve_classes

MOST_DEPTH = 125
"""Deepest embedding (BD2)."""

_EMBEDDINGS = {"LRE": "L", "RLE": "R", "LRO": "L", "RLO": "R"}
_REMOVED = ("LRE", "RLE", "LRO", "RLO", "PDF", "BN")
_RIGHT_TO_LEFT = ("R", "AL", "AN", "RLE", "RLO", "RLI")
_UNASSIGNED = ((0x0590, 0x05FF, "R"), (0x0600, 0x07BF, "AL"), (0x0860, 0x08FF, "AL"), (0xFB1D, 0xFB4F, "R"))


class BidiRun(Struct, frozen=True, kw_only=True):
    """Characters start to end (exclusive) of one direction; at an odd level they read right to left."""

    start: int
    end: int
    level: int

    @property
    def right_to_left(self) -> bool:
        return self.level % 2 == 1


def runs(text: str) -> tuple[BidiRun, ...]:
    """The runs of a line as they stand from left to right; its direction is that of its first strong letter (P2)."""
    classes = [bidi_class(character) for character in text]
    if not any(kind in _RIGHT_TO_LEFT for kind in classes):
        return (BidiRun(start=0, end=len(text), level=0),) if text else ()
    base = paragraph_level(classes)
    logical: list[BidiRun] = []
    last = base
    for index, level in enumerate(levels(text, classes, base)):
        last = last if level is None else level
        if logical and logical[-1].level == last:
            logical[-1] = BidiRun(start=logical[-1].start, end=index + 1, level=last)
        else:
            logical.append(BidiRun(start=index, end=index + 1, level=last))
    return tuple(visual_order(logical))


def visual_order(logical: Sequence[BidiRun]) -> list[BidiRun]:
    """Runs from left to right (L2): every stretch at or above each level reversed, the deepest first."""
    order = list(logical)
    for level in range(max((run.level for run in order), default=0), 0, -1):
        index = 0
        while index < len(order):
            end = index
            while end < len(order) and order[end].level >= level:
                end += 1
            order[index:end] = reversed(order[index:end])
            index = end + 1
    return order


def bidi_class(character: str) -> str:
    """The character's bidirectional class; unassigned ones take their block's default."""
    kind = unicodedata.bidirectional(character)
    if kind:
        return kind
    code = ord(character)
    return next((default for low, high, default in _UNASSIGNED if low <= code <= high), "L")


def paragraph_level(classes: Sequence[str]) -> int:
    """0 or 1 by the first strong character outside isolates (P2, P3); 0 when there is none."""
    depth = 0
    for kind in classes:
        if kind in INITIATORS:
            depth += 1
        elif kind == "PDI":
            depth = max(0, depth - 1)
        elif depth == 0 and kind in ("L", "R", "AL"):
            return int(kind != "L")
    return 0


def levels(text: str, classes: Sequence[str], base: int) -> list[int | None]:
    """The embedding level of each character of one line; None for those that X9 removes."""
    embedding, kinds = _explicit(classes, base)
    result: list[int | None] = [None if classes[i] in _REMOVED else embedding[i] for i in range(len(classes))]
    for sequence in _isolating_sequences(classes, embedding):
        _resolve(text, classes, kinds, embedding, sequence, base)
        for i in sequence:
            level, kind = embedding[i], kinds[i]
            if level % 2 == 0:
                result[i] = level + {"R": 1, "AN": 2, "EN": 2}.get(kind, 0)  # I1
            else:
                result[i] = level + (kind in ("L", "EN", "AN"))  # I2
    trailing = True
    for i in range(len(classes) - 1, -1, -1):  # L1
        if classes[i] in ("B", "S"):
            result[i], trailing = base, True
        elif classes[i] in ("WS", "PDI", *INITIATORS):
            result[i] = base if trailing else result[i]
        elif classes[i] not in _REMOVED:
            trailing = False
    return result


def _explicit(classes: Sequence[str], base: int) -> tuple[list[int], list[str]]:
    """Level of every character by embeddings and isolates (X1 to X8), and classes with overrides applied."""
    matching = _matching_pdi(classes)
    stack: list[tuple[int, str, bool]] = [(base, "", False)]
    embedding, kinds = [base] * len(classes), list(classes)
    lost_isolates = lost_embeddings = open_isolates = 0
    for i, kind in enumerate(classes):
        level, override, _ = stack[-1]
        embedding[i] = level
        if kind == "PDI":
            if lost_isolates:
                lost_isolates -= 1
            elif open_isolates:
                lost_embeddings = 0
                while not stack[-1][2]:
                    stack.pop()
                stack.pop()
                open_isolates -= 1
            level, override, _ = stack[-1]
            embedding[i] = level
        if kind in _EMBEDDINGS or kind in INITIATORS:
            right = _EMBEDDINGS.get(kind) == "R" or kind == "RLI"
            if kind == "FSI":
                right = paragraph_level(classes[i + 1 : matching.get(i, len(classes))]) == 1
            deeper = (level + 1) | 1 if right else (level + 2) & ~1
            isolate = kind in INITIATORS
            if isolate and override:
                kinds[i] = override
            if deeper <= MOST_DEPTH and not lost_isolates and not lost_embeddings:
                open_isolates += isolate
                stack.append((deeper, _EMBEDDINGS[kind] if kind in ("LRO", "RLO") else "", isolate))
            elif isolate:
                lost_isolates += 1
            elif not lost_isolates:
                lost_embeddings += 1
        elif kind == "PDF":
            if not lost_isolates:
                if lost_embeddings:
                    lost_embeddings -= 1
                elif not stack[-1][2] and len(stack) > 1:
                    stack.pop()
        elif kind == "B":
            embedding[i] = base
        elif override and kind != "BN":
            kinds[i] = override
    return embedding, kinds


def _matching_pdi(classes: Sequence[str]) -> dict[int, int]:
    """Index of the isolate's end for each of its initiators that has one (BD9)."""
    found: dict[int, int] = {}
    waiting: list[int] = []
    for i, kind in enumerate(classes):
        if kind in INITIATORS:
            waiting.append(i)
        elif kind == "PDI" and waiting:
            found[waiting.pop()] = i
    return found


def _isolating_sequences(classes: Sequence[str], embedding: Sequence[int]) -> list[list[int]]:
    """Indices of each isolating run sequence (X10, BD13), characters that X9 removes left out."""
    kept = [i for i, kind in enumerate(classes) if kind not in _REMOVED]
    level_runs: list[list[int]] = []
    for i in kept:
        if level_runs and embedding[level_runs[-1][-1]] == embedding[i]:
            level_runs[-1].append(i)
        else:
            level_runs.append([i])
    matching = _matching_pdi(classes)
    beginning = {run[0]: run for run in level_runs}
    continued = {matching[run[-1]] for run in level_runs if run[-1] in matching}
    sequences: list[list[int]] = []
    for run in level_runs:
        if run[0] in continued and classes[run[0]] == "PDI":
            continue
        sequence = list(run)
        while classes[sequence[-1]] in INITIATORS and matching.get(sequence[-1]) in beginning:
            sequence += beginning[matching[sequence[-1]]]
        sequences.append(sequence)
    return sequences


def _resolve(
    text: str, classes: Sequence[str], kinds: list[str], embedding: Sequence[int], sequence: list[int], base: int
) -> None:
    """Weak and neutral classes of one sequence made L, R, EN or AN (W1 to W7, N0 to N2), in `kinds`."""
    level = embedding[sequence[0]]
    before = next((embedding[i] for i in range(sequence[0] - 1, -1, -1) if classes[i] not in _REMOVED), base)
    after = base
    if classes[sequence[-1]] not in INITIATORS:
        following = range(sequence[-1] + 1, len(classes))
        after = next((embedding[i] for i in following if classes[i] not in _REMOVED), base)
    sos, eos = ("R" if max(level, other) % 2 else "L" for other in (before, after))
    run = [kinds[i] for i in sequence]
    resolve_classes(
        [text[i] for i in sequence], [classes[i] for i in sequence], run, sos, eos, "R" if level % 2 else "L"
    )
    for i, kind in zip(sequence, run, strict=True):
        kinds[i] = kind
