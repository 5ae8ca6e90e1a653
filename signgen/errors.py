"""Every error that a user can meet, each with its exit code and the same shape: where, what, what to do."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import Any, ClassVar, Self

from msgspec import Struct
from msgspec.structs import replace

from signgen.messages import Message, Sentence
from signgen.messages.figures import Units
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Value, Wording

MOST_NAMED = 4
"""Things named of which the same is wrong; of more, how many there are."""


class Problem(Struct, frozen=True, kw_only=True):
    """One thing that is wrong.

    `where` is the word that the user typed (an option without its dashes, a key of the sign file, a file and
    its line); `what` says what is wrong with it; `remedy` says what to do. Both are whole sentences.

    >>> str(Problem(where="size", what="5 mm is too little.", remedy="Use at least 10 mm."))
    'size: 5 mm is too little. Use at least 10 mm.'
    """

    where: str
    what: Sentence
    remedy: Sentence = ""

    def __str__(self) -> str:
        return self.said(Wording())

    def said(self, wording: Wording) -> str:
        """In one line."""
        where = f"{self.where}:" if self.where else ""
        return " ".join(part for part in (where, wording(self.what), wording(self.remedy)) if part)

    def below(self, prefix: str) -> Problem:
        """The same problem seen from one level up: `border` + `radius` gives `border.radius`."""
        return replace(self, where=f"{prefix}.{self.where}" if self.where else prefix)


def gathered(problems: Iterable[Problem]) -> Iterator[Problem]:
    """Problems with those once that say the same of several things: the first, and what the others are about."""
    groups: dict[object, list[Problem]] = {}
    for number, problem in enumerate(problems):
        what, remedy = problem.what, problem.remedy
        alike: object = number
        if isinstance(what, Message):
            alike = (problem.where, what.key, remedy.key if isinstance(remedy, Message) else remedy)
        groups.setdefault(alike, []).append(problem)
    for first, *more in groups.values():
        if not more or not isinstance(first.what, Message):
            yield first
            continue
        told = (_told_apart(first.what, each.what) for each in more)
        others = tuple(value for value in told if value is not None)
        if len(others) < len(more):  # the very same, word for word
            yield first
        elif len(others) <= MOST_NAMED:
            yield replace(first, what=Message("problem.and_of", what=first.what, others=others))
        else:
            named, left = others[: MOST_NAMED - 1], len(others) - MOST_NAMED + 1
            yield replace(first, what=Message("problem.and_of_more", what=first.what, others=named, count=left))


def _told_apart(one: Sentence, other: Sentence) -> Value | None:
    """The first value in which two messages of the same key differ; None when they are the same."""
    if not isinstance(one, Message) or not isinstance(other, Message):
        return None
    return next((value for name, value in other.values.items() if one.values.get(name) != value), None)


class SignGenError(Exception):
    """Something that the user can mend. Carries one problem or more; each prints as one line. `exit_code` is what the
    command ends with.

    >>> error = AskError.at("size", "5 mm is too little.", "Use at least 10 mm.")
    >>> [problem.where for problem in error.problems], error.exit_code
    (['size'], 2)
    """

    exit_code: ClassVar[int] = 2
    language: str = LANGUAGES[0]
    units: Units = "mm"

    def __init__(self, problems: Problem | Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = (problems,) if isinstance(problems, Problem) else tuple(problems)
        super().__init__("\n".join(str(problem) for problem in gathered(self.problems)))

    def lines(self) -> Iterator[str]:
        """Each problem in a line, in the error's language; where that had no words, the last line says so."""
        wording = Wording(self.language, self.units)
        yield from (problem.said(wording) for problem in gathered(self.problems))
        yield from wording.lines(())

    @classmethod
    def at(cls, where: str, what: Sentence, remedy: Sentence = "") -> Self:
        """The error with a single problem."""
        return cls(Problem(where=where, what=what, remedy=remedy))


class AskError(SignGenError):
    """What was asked is wrong: a word, a number, a file that cannot be read or a folder that cannot be written.

    >>> import signgen
    >>> try:
    ...     signgen.make("17", size="5x60")
    ... except signgen.AskError as error:
    ...     [problem.where for problem in error.problems]
    ['size', 'thickness']
    """

    exit_code = 2


class ShopError(SignGenError):
    """The shop's data (tools, materials, machines, fonts) is wrong.

    >>> import pathlib, signgen, tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     _ = pathlib.Path(folder, "shop.toml").write_text("[tool.mine]\\nkind = 'spoon'\\n")
    ...     signgen.make("17", size="90x60", thickness=6, shop=f"{folder}/shop.toml")
    Traceback (most recent call last):
        ...
    signgen.errors.ShopError: ...
    """

    exit_code = 3


class CannotMakeError(SignGenError):
    """What was asked is understood and cannot be made: a tool does not fit, there is no room, ...

    >>> import signgen
    >>> signgen.make("17", size="90x60", thickness=6, cap_height=59)
    Traceback (most recent call last):
        ...
    signgen.errors.CannotMakeError: ...
    """

    exit_code = 4


class CheckFailedError(SignGenError):
    """A check of the finished programs failed; no program was written. `case` and `report` are the evidence and what
    the checks say of it, where they are at hand.

    >>> CheckFailedError.at("C102", "A rapid goes through the board.").exit_code
    5
    """

    exit_code = 5
    case: Any = None
    report: Any = None
    draw: Callable[[], bytes] | None = None

    def picture(self) -> bytes | None:
        """A PNG of what the programs would leave of the board, with a mark at each finding."""
        return self.draw() if self.draw else None

    def _repr_png_(self) -> bytes | None:
        return self.picture()


@contextmanager
def said_in(language: object, units: Units = "mm") -> Iterator[None]:
    """Errors raised meanwhile are said in a language, if there is one of that name, and in units."""
    try:
        yield
    except SignGenError as error:
        error.units = units
        if isinstance(language, str) and language in LANGUAGES:
            error.language = language
        raise
