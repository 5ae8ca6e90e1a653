"""Which face sets which character, where a line may borrow from the faces of the catalogue what its own face lacks."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping, Sequence

from signgen.lettering.catalogue import catalogue
from signgen.lettering.face import Face
from signgen.lettering.faces import open_face


def faces_of(face: Face, text: str, missing: Sequence[str], scripts: Sequence[str | None]) -> tuple[Face, ...]:
    """The face of every character: the line's own, or for one of `missing` a face of the catalogue that has it.

    `scripts`: of each character, None for those that all share. One face for everything that is missing is taken
    before several, one for all letters of a script before one for each, and the catalogue's order decides between
    equals. A face that lacks most of the text's letters of a script sets none of them (many faces of Latin have Δ and Ω
    as signs). A mark goes with its letter, and so do the spaces and points between two borrowed letters, so that a word
    or a phrase is set in one face where it can be. A character that no face has stays with the line's own.
    """
    script_of = dict(zip(text, scripts, strict=True))
    borrowed = _borrowed([*missing, *_stragglers(missing, script_of)], script_of)
    found = [borrowed.get(character, face) for character in text]
    for i in range(1, len(text)):
        if _follows(text[i]) and found[i] is not found[i - 1]:
            one = found[i - 1] if found[i - 1].has(text[i]) else found[i]
            if one.has(text[i - 1]):
                found[i - 1] = found[i] = one
    last: int | None = None
    for i, own in enumerate(found):
        if own is not face:
            between = range(last + 1, i) if last is not None and found[last] is own else range(0)
            if all(_is_shared(text[k]) and own.has(text[k]) for k in between):
                for k in between:
                    found[k] = own
            last = i
    return tuple(found)


def _stragglers(missing: Sequence[str], script_of: Mapping[str, str | None]) -> list[str]:
    """Letters that the face has, of scripts of which it lacks most letters of the text."""
    found: list[str] = []
    for script in dict.fromkeys(script_of.values()):
        letters = [character for character in script_of if script_of[character] == script]
        present = [character for character in letters if character not in missing]
        if script is not None and 2 * len(present) < len(letters):
            found += present
    return found


def _borrowed(missing: Sequence[str], script_of: Mapping[str, str | None]) -> dict[str, Face]:
    """The face for each character that is missing, left out where there is none."""
    whole = _first_with(missing)
    if whole is not None:
        return dict.fromkeys(missing, whole)
    found: dict[str, Face] = {}
    for script in dict.fromkeys(map(script_of.get, missing)):
        letters = [character for character in missing if script_of.get(character) == script]
        together = _first_with(letters)
        for character in letters:
            one = together or _first_with([character])
            if one is not None:
                found[character] = one
    return found


def _first_with(characters: Sequence[str]) -> Face | None:
    """The first face of the catalogue that has all the characters."""
    return next(
        (face for face in map(open_face, (e.name for e in catalogue())) if all(map(face.has, characters))), None
    )


def _follows(character: str) -> bool:
    """Whether a character only makes sense in the face of the one before: marks, joiners, variation selectors."""
    return unicodedata.category(character).startswith("M") or character in "\u200c\u200d"


def _is_shared(character: str) -> bool:
    """Whether a character between two letters goes with them: spaces, points, and the unseen marks of direction."""
    return unicodedata.category(character)[0] in "ZP" or unicodedata.category(character) == "Cf"
