"""From what was named to the files of a lesson."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path


def lesson_files(
    what: str, out: Path, language: str | None, pages: Sequence[str], *, large: bool, easy: bool,
    faults: int | None = None, seed: int = 1,
) -> dict[str, bytes]:  # fmt: skip
    """Of a folder that `make` wrote, or of a sign file, whose sign is made into `out` first."""
    from signgen.lesson.pack import pack
    from signgen.lesson.source import source_of

    folder = made_folder(what, out)
    source = source_of(folder)
    tongue = language or source.spec.language
    if not faults:
        return pack(source, tongue, pages, large=large, easy=easy)
    from signgen.lesson.exercises import answers, exercise_files, exercises
    from signgen.messages.wording import Wording

    done = exercises(folder, source, faults, seed)
    made = pack(source, tongue, pages, large=large, easy=easy, extra=(answers(done, Wording(tongue)),))
    return made | exercise_files(folder, done)


def made_folder(what: str, out: Path) -> Path:
    """The folder with the sign's programs. Raises: AskError, CannotMakeError, CheckFailedError."""
    if Path(what).is_dir():
        return Path(what)
    from signgen.files import superseded, write_folder
    from signgen.pipeline import gather, make_job, read_sign

    job = make_job(read_sign(gather({}, Path(what))))
    write_folder(out, job.files, superseded(what, out))
    return out
