"""What somebody means who does not know a thing's name: words of a question against the words that things go by."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Generic, TypeVar

from msgspec import Struct

from signgen.option import Option

K = TypeVar("K")

_IDLE_WORDS = """
    a an and are as at be but by can could did do does for from get gets give go had has have how i if in is it its
    just like made make makes me must my of on one or our please set should sign signs so some that the their them then
    there they this to use used want was we what when where which who why will with would you your
"""
_IDLE = frozenset(_IDLE_WORDS.split())
"""Words that any question holds."""

_PLURALS = ("ies", "es", "s")
_ENDINGS = ("ing", "ed", "er", "e", "y")
_LEAST_STEM = 3
MISSING_SHARE = 0.6
"""What a phrase loses for each of its words that the question lacks, over what the word would have given."""
BESIDE_SHARE = 0.35
"""What words of other phrases of the same thing give beside the best phrase."""
SPELT_ALIKE = 0.8
"""How alike a slip of the finger is to the word that was meant."""


def stems(text: str) -> tuple[str, ...]:
    """The words that say something, without their endings, in order: 'bigger letters' -> bigg, lett."""
    words = re.findall(r"[^\W_]+", text.casefold())
    return tuple(_stem(word) for word in words if word not in _IDLE)


def _stem(word: str) -> str:
    for endings in (_PLURALS, _ENDINGS):
        ending = next((each for each in endings if word.endswith(each)), "")
        if len(word) - len(ending) >= _LEAST_STEM:
            word = word.removesuffix(ending)
    return word[:-1] if len(word) > _LEAST_STEM and word[-1] == word[-2] else word


class Found(Struct, Generic[K], frozen=True, kw_only=True):
    """A thing that a question may mean; the larger the score, the likelier."""

    thing: K
    score: float


class Meanings(Generic[K]):
    """Things with the phrases that they go by. Words that many things share say little (inverse document frequency;
    source: Manning, Raghavan, Schütze, Introduction to Information Retrieval, section 6.2)."""

    def __init__(self, things: Sequence[tuple[K, Iterable[str]]]) -> None:
        self._things = [
            (thing, {frozenset(stems(each)) for each in phrases} - {frozenset()}) for thing, phrases in things
        ]
        of_things = [frozenset().union(*phrases) for _, phrases in self._things]
        counts: dict[str, int] = {}
        for words in of_things:
            for word in words:
                counts[word] = counts.get(word, 0) + 1
        self._weight: Mapping[str, float] = {word: math.log(1 + len(things) / n) for word, n in counts.items()}

    def meant_by(self, question: str) -> list[Found[K]]:
        """Things that the question's words lead to, the likeliest first; in the order given when equally likely."""
        asked = frozenset(stems(question))
        found = [Found(thing=thing, score=self._score(asked, phrases)) for thing, phrases in self._things]
        return sorted((each for each in found if each.score > 0), key=lambda each: -each.score)

    def _score(self, asked: frozenset[str], phrases: Iterable[frozenset[str]]) -> float:
        best, reached = 0.0, frozenset[str]()
        for phrase in phrases:
            hit = phrase & asked
            score = self._sum(hit) - MISSING_SHARE * self._sum(phrase - asked)
            reached |= hit
            best = max(best, score)
        return best + BESIDE_SHARE * self._sum(reached) if best > 0 else 0.0

    def _sum(self, words: Iterable[str]) -> float:
        return sum(self._weight.get(word, 0.0) for word in words)


def options_meant(word: str, options: Sequence[Option]) -> list[str]:
    """Names of the options that a word which is no option means, at most three, the likeliest first: those that people
    call so, else those whose name is this one with a slip of the finger."""
    from difflib import get_close_matches  # only when something is wrong anyway

    by_words = Meanings([(option.name, (option.name, *option.words)) for option in options]).meant_by(word)
    spelt = get_close_matches(word.casefold(), [option.name for option in options], n=2, cutoff=SPELT_ALIKE)
    full = frozenset(stems(word))
    said_so = [each.thing for each in by_words if _goes_by(each.thing, full, options)]
    likely = [each.thing for each in by_words if each.score >= by_words[0].score / 2]
    return list(dict.fromkeys([*said_so, *spelt] or likely or _misspelt(word, options)))[:3]


def _misspelt(word: str, options: Sequence[Option]) -> list[str]:
    """Options of which people say a word like this one."""
    from difflib import get_close_matches

    said = {phrase: option.name for option in options for phrase in option.words}
    return [said[each] for each in get_close_matches(word.casefold(), said, n=2, cutoff=SPELT_ALIKE)]


def _goes_by(name: str, words: frozenset[str], options: Sequence[Option]) -> bool:
    """Whether an option is called exactly so."""
    option = next(each for each in options if each.name == name)
    return any(frozenset(stems(phrase)) == words for phrase in (option.name, *option.words))
