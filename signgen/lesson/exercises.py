"""Exercises: copies of a pupil's programs, each with one fault that the checks are sure to catch."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from random import Random

from msgspec import Struct

from signgen.checks import judge
from signgen.checks.check import Case
from signgen.errors import AskError
from signgen.folder import check_folder
from signgen.lesson.advice import hint
from signgen.lesson.source import Source
from signgen.lesson.spoil import SPOILERS, Spoilt
from signgen.lesson.trials import with_texts
from signgen.markup.markup import Html, el
from signgen.messages import Message
from signgen.messages.wording import Wording
from signgen.pipeline import REPORT, SIGN

FOLDER = "faults"
COPIED = (".nc",)
MOST = len(SPOILERS)
TRIES = 6
"""How often a kind of fault is tried at another line, before it is left out: some lines matter too little."""


class Exercise(Struct, frozen=True, kw_only=True):
    """`caught_by`: codes of the checks that stop it."""

    number: int
    spoilt: Spoilt
    caught_by: tuple[str, ...]


def exercises(folder: Path, source: Source, count: int, seed: int) -> tuple[Exercise, ...]:
    """So many, from easy to hard, the same for a seed. Raises: AskError where the sign itself does not pass, or gives
    too few."""
    judged = check_folder(folder)
    if not judged.report.passed:
        raise AskError.at(str(folder), Message("lesson.not_sound"), Message("lesson.sound_first"))
    # The likeliest cause is looked for among the face's programs alone.
    source = source.face
    rng = Random(seed)
    order = list(SPOILERS)
    rng.shuffle(order)
    found: list[tuple[Spoilt, tuple[str, ...]]] = []
    for spoiler in order:
        if len(found) == count:
            break
        for _ in range(TRIES):
            spoilt = spoiler(source, rng)
            caught = _caught(judged.case, spoilt) if spoilt is not None else ()
            if spoilt is not None and caught:
                found.append((spoilt, caught))
                break
    if len(found) < count:
        raise AskError.at("faults", Message("lesson.few_faults", count=len(found)), Message("lesson.fewer_faults"))
    found.sort(key=lambda each: each[0].grade)
    return tuple(
        Exercise(number=n, spoilt=spoilt, caught_by=caught) for n, (spoilt, caught) in enumerate(found, 1)
    )  # fmt: skip


def _caught(case: Case, spoilt: Spoilt) -> tuple[str, ...]:
    """The checks that find something in the spoilt programs that stops them."""
    report = judge(with_texts(case, spoilt.texts))
    return tuple(result.code for result in report.results if result.stops and result.findings)


def exercise_files(folder: Path, done: Sequence[Exercise]) -> dict[str, bytes]:
    """Each in a folder of its own, whole enough for `signgen check` to judge it."""
    names = [path.name for path in folder.iterdir() if path.suffix in COPIED or path.name in (REPORT, SIGN)]
    made = {}
    for exercise in done:
        for name in sorted(names):
            spoilt = exercise.spoilt.texts.get(name)
            content = (folder / name).read_bytes() if spoilt is None else spoilt.encode("latin-1")
            made[f"{FOLDER}/{exercise.number}/{name}"] = content
    return made


def answers(done: Sequence[Exercise], wording: Wording) -> Html:
    """What the teacher's file has of them: three hints each, the line as it stands and as it should be."""
    parts = []
    for exercise in done:
        cause = exercise.spoilt.cause
        rows = [
            el("li", wording(Message("cause.hint", number=n, hint=hint(cause, n)))) for n in (1, 2, 3)
        ]  # fmt: skip
        if cause.text:
            rows.append(el("li", wording(Message("cause.stands", text=cause.text))))
            rows.append(el("li", wording(Message("lesson.answer", answer=cause.right))))
        rows.append(el("li", wording(Message("lesson.caught_by", codes=exercise.caught_by))))
        head = Message(
            "lesson.exercise", folder=f"{FOLDER}/{exercise.number}", grade=exercise.spoilt.grade
        )  # fmt: skip
        parts.append(el("article", el("h3", wording(head)), el("ul", *rows)))
    title = el("h2", wording(Message("lesson.exercises")))
    return el("section", title, el("p", wording(Message("lesson.exercises_do"))), *parts, id="answers")
