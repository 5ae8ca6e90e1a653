"""What each line of a sign is there for, read from its words.

A house number is looked for first, else the title; a name goes with it; details are read by who stands before the sign.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from signgen.spec.roles import Role

_NUMBER = re.compile(r"(?:(?:no|nr|n°|№|#)\s*\.?\s*)?\d{1,5}(?:\s?[-–/+]\s?\d{1,5})?\s?[a-z]?", re.IGNORECASE)
"""'17', '12a', '3-5', '12/1', 'No. 5'."""

_YEAR = re.compile(r"1\d{3}|20\d{2}")
_YEARS = re.compile(r"(?:1\d{3}|20\d{2})\s?[-–—/+]\s?(?:1\d{3}|20\d{2})")

_DETAIL = re.compile(
    r"""
    .*@.* | (?:https?://|www\.).* | \S+\.(?:org|com|net|de|at|ch|uk|eu)(?:/\S*)?   # addresses of the network
    | [\d\s()+/.–—:-]*\d[\d\s()+/.–—:-]*                                           # telephone numbers, spans of years
    | .*\b\d{1,2}(?:[:.]\d{2})?\s?(?:am|pm|h|uhr)\b.*                              # hours
    | .*\b\d{1,2}[:.]\d{2}\s?[-–]\s?\d{1,2}[:.]\d{2}\b.*
    | .*\b(?:1\d{3}|20\d{2})\s?[-–—]\s?(?:1\d{3}|20\d{2})\b.*
    | (?:\*|†|born|died|geb\.|gest\.|est\.|estd\.?|since|founded|established|seit|gegr\.).*
    | \d{1,2}[.\s]\s?\w+\.?\s\d{4}(?:\s?[-–—].*)?
    | (?:the|a|of|at|and|&|by|und|am|im|an\ der|in|bei|the\ home\ of|home\ of|welcome\ to|willkommen\ (?:bei|in|im)
      |in\ (?:loving\ |fond\ )?memory\ of|remembering|in\ (?:stillem\ |liebem\ )?gedenken\ an|zur\ erinnerung\ an
      |im\ gedenken\ an
      |dedicated\ to|presented\ (?:by|to)|gewidmet)
    """,
    re.IGNORECASE | re.VERBOSE,
)
"""Dates, hours, telephone numbers, addresses, and words that lead up to a name."""

ALIKE_RATIO = 1.6
"""Two single words whose numbers of letters differ by no more are one title in two lines ('Quince' over 'Cottage')."""

NAMES = 2
"""So many lines may be a name; more of them are details."""


def roles_of(texts: Sequence[str], said: Sequence[Role | None] = ()) -> tuple[Role, ...]:
    """The role of every line; `said`: what the user says of each, None where nothing.

    A sign has a number or a title, unless the user says otherwise of every line; where the words show neither, the
    first line is the title.
    """
    stated = [*said, *[None] * (len(texts) - len(said))]
    roles: list[Role | None] = list(stated)
    open_lines = [i for i, role in enumerate(roles) if role is None]
    if "number" not in stated and "title" not in stated:
        number = next((i for i in open_lines if _is_house_number(texts, i)), None)
        if number is not None:
            roles[number] = "number"
    for i in open_lines:
        if roles[i] is None and _DETAIL.fullmatch(texts[i].strip()):
            roles[i] = "detail"
    if "number" not in roles and "title" not in roles:
        lead = next((i for i in open_lines if roles[i] is None), open_lines[0] if open_lines else None)
        if lead is not None:
            roles[lead] = "title"
            for i in range(lead + 1, len(texts)):
                if roles[i] is not None or not _alike(texts[lead], texts[i]):
                    break
                roles[i] = "title"
    names = 0
    for i, role in enumerate(roles):
        if role is None:
            names += 1
            roles[i] = "name" if names <= NAMES else "detail"
    return tuple(role for role in roles if role is not None)


def _is_house_number(texts: Sequence[str], i: int) -> bool:
    """A year below other words is when something was built, not where somebody lives."""
    text = texts[i].strip()
    if not _NUMBER.fullmatch(text) or _YEARS.fullmatch(text):
        return False
    return i == 0 or not _YEAR.fullmatch(text)


def _alike(one: str, other: str) -> bool:
    a, b = one.strip(), other.strip()
    if not a or not b or " " in a or " " in b or a.isupper() != b.isupper():
        return False
    return max(len(a), len(b)) <= ALIKE_RATIO * min(len(a), len(b))
