"""Ways to spoil a pupil's programs, from easy to hard: each changes what one look at a rule, a sheet or a neighbour
line finds. Several come from the tables that test the checks."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from random import Random

from msgspec import Struct

from signgen.lesson.likely import Cause
from signgen.lesson.line_facts import LineFacts
from signgen.lesson.source import ProgramRead, Source
from signgen.messages.values import Typed
from signgen.messages.wording import Value
from signgen.replay.motion import RAPID

FURTHER_MM = 10.0
"""How far a place is moved: more than any tolerance, less than a board."""
EASY, MIDDLE, HARD = 1, 2, 3


class Spoilt(Struct, frozen=True, kw_only=True):
    """`texts` are the programs that changed, by file; `cause` is the answer, from which the hints are made."""

    name: str
    grade: int
    texts: dict[str, str]
    cause: Cause


Spoiler = Callable[[Source, Random], Spoilt | None]


def _line(
    name: str, grade: int, program: ProgramRead, row: LineFacts, text: str, **values: Value
) -> Spoilt | None:  # fmt: skip
    """With one line changed, which is the answer."""
    raw = program.text.splitlines()[row.step.number - 1]
    if text == raw:
        return None
    lines = program.text.splitlines()
    lines[row.step.number - 1] = text
    cause = Cause(
        kind=name, file=program.file, line=row.step.number, text=text.strip(), right=raw.strip(),
        values={"wrong": "", "right": "", **values},
    )  # fmt: skip
    return Spoilt(name=name, grade=grade, texts={program.file: "\n".join(lines) + "\n"}, cause=cause)


def _rows(source: Source, rng: Random, wanted: Callable[[LineFacts], bool]) -> tuple[ProgramRead, LineFacts] | None:
    """A line of that kind, by chance."""
    found = [(program, row) for program in source.programs for row in program.lines if wanted(row)]
    return rng.choice(found) if found else None


def _raw(program: ProgramRead, row: LineFacts) -> str:
    return program.text.splitlines()[row.step.number - 1]


def letter(source: Source, rng: Random) -> Spoilt | None:
    """O for 0 in a place."""
    at = _rows(source, rng, lambda row: bool(row.count_of_words and re.search(r"X[-\d.]*\d0", row.step.text)))
    if at is None:
        return None
    text = re.sub(r"(X[-\d.]*\d)0", r"\1O", _raw(*at), count=1)
    return _line("letter_digit", EASY, *at, text, wrong="O", right="0")


def comma(source: Source, rng: Random) -> Spoilt | None:
    at = _rows(source, rng, lambda row: bool(row.count_of_words and re.search(r"\d\.\d", row.step.text)))
    if at is None:
        return None
    found = re.search(r"\d+\.\d+", _raw(*at))
    wrong = found.group().replace(".", ",") if found else ""
    text = re.sub(r"(\d)\.(\d)", r"\1,\2", _raw(*at), count=1)
    return _line("decimal_comma", EASY, *at, text, wrong=wrong, right=wrong.replace(",", "."))


def no_start(source: Source, rng: Random) -> Spoilt | None:
    """M3 left out."""
    at = _rows(source, rng, lambda row: "M3" in row.step.words)
    return _line("no_spindle", EASY, *at, re.sub(r" ?M3", "", _raw(*at))) if at else None


def no_end(source: Source, rng: Random) -> Spoilt | None:
    at = _rows(source, rng, lambda row: "M2" in row.step.words or "M30" in row.step.words)
    return _line("no_end", EASY, *at, re.sub(r"M(2|30)\b", "", _raw(*at))) if at else None


def steps(source: Source, rng: Random) -> Spoilt | None:
    """G91 for G90."""
    at = _rows(source, rng, lambda row: "G90" in row.step.words)
    return _line("g91", MIDDLE, *at, _raw(*at).replace("G90", "G91")) if at else None


def unit(source: Source, rng: Random) -> Spoilt | None:
    at = _rows(source, rng, lambda row: "G21" in row.step.words)
    return _line("inches", MIDDLE, *at, _raw(*at).replace("G21", "G20")) if at else None


def backwards(source: Source, rng: Random) -> Spoilt | None:
    at = _rows(source, rng, lambda row: "M3" in row.step.words)
    return _line("backwards", MIDDLE, *at, _raw(*at).replace("M3", "M4")) if at else None


def centre(source: Source, rng: Random) -> Spoilt | None:
    """The sign of I."""

    def far(row: LineFacts) -> bool:
        return row.arc is not None and abs(row.step.values.get("I", 0.0)) > 1 and row.arc.turned_deg < 170

    at = _rows(source, rng, far)
    if at is None:
        return None
    text = re.sub(r"I(-?)", lambda m: "I" if m.group(1) else "I-", _raw(*at), count=1)
    wrong = re.search(r"I[-\d.]+", text)
    return _line("sign_of_i", MIDDLE, *at, text, wrong=wrong.group() if wrong else "")


def rapid(source: Source, rng: Random) -> Spoilt | None:
    """G0 where the cutter goes down into the wood."""
    at = _rows(
        source, rng,
        lambda row: "G1" in row.step.words and row.end_mm is not None and row.start_mm is not None
        and row.end_mm[2] < row.start_mm[2] - 0.5 and row.end_mm[2] < source.top_mm - 0.5 and "X" not in row.step.words,
    )  # fmt: skip
    return _line("rapid_down", MIDDLE, *at, re.sub(r"G1\b", "G0", _raw(*at))) if at else None


def place(source: Source, rng: Random) -> Spoilt | None:
    """A straight cut that ends beside where it should."""

    def cuts(row: LineFacts) -> bool:
        return row.kind != RAPID and row.arc is None and "X" in row.step.values and row.pass_number > 0

    at = _rows(source, rng, cuts)
    if at is None:
        return None
    wrong = at[1].step.values["X"] + FURTHER_MM
    text = re.sub(r"X-?[\d.]+", f"X{wrong:g}", _raw(*at), count=1)
    return _line("wrong_place", HARD, *at, text, wrong=f"X{wrong:g}", right=f"X{at[1].step.values['X']:g}")


def too_deep(source: Source, rng: Random) -> Spoilt | None:
    """A height that is a millimetre too low."""

    def cuts(row: LineFacts) -> bool:
        return row.kind != RAPID and "Z" in row.step.values and (row.end_mm or (0, 0, 0))[2] < source.top_mm - 0.5

    at = _rows(source, rng, cuts)
    if at is None:
        return None
    wrong = at[1].step.values["Z"] - 1
    text = re.sub(r"Z-?[\d.]+", f"Z{wrong:g}", _raw(*at), count=1)
    return _line("wrong_height", HARD, *at, text, wrong=f"Z{wrong:g}", right=f"Z{at[1].step.values['Z']:g}")


def comment(source: Source, rng: Random) -> Spoilt | None:
    """A heading that names another height of the board's top, or size of the cutter: `false_comment`."""
    top = re.compile(rf"Z{re.escape(f'{source.top_mm:g}')}\)$")
    at = _rows(source, rng, lambda row: _heads(row) and bool(top.search(row.step.text)))
    if at is None:
        return None
    text = re.sub(r"Z-?[\d.]+\)$", f"Z{source.top_mm + 3:g})", _raw(*at).rstrip())
    return _line("false_comment", HARD, *at, text)


def cutter(source: Source, rng: Random) -> Spoilt | None:
    """A heading that names another cutter than the sheet: `wrong_cutter`."""
    program = rng.choice(source.programs)
    size = program.tool.diameter_mm
    # the board and the sign are named by two sizes with an x between them, the cutter by its own
    named = re.compile(rf"(?<![\d.x]){re.escape(f'{size:g}')} mm")
    row = next((row for row in program.lines if _heads(row) and named.search(row.step.text)), None)
    if row is None:
        return None
    text = _raw(program, row).replace(f"{size:g} mm", f"{size + 2:g} mm", 1)
    said = text.strip().strip("()")
    return _line("wrong_cutter", HARD, program, row, text, said=said, fitted=program.tool.called)


def _heads(row: LineFacts) -> bool:
    """Whether the line is a comment of the heading."""
    return bool(row.step.comments) and not row.step.words and not row.under


def swap(source: Source, rng: Random) -> Spoilt | None:
    """Two programs under each other's names."""
    if len(source.programs) < 2 or source.programs[0].place:
        return None
    first, second = source.programs[:2]
    cause = Cause(kind="swapped", file=first.file, values={"first": first.file, "second": second.file})
    return Spoilt(
        name="swapped", grade=HARD, texts={first.file: second.text, second.file: first.text}, cause=cause
    )  # fmt: skip


def speed(source: Source, rng: Random) -> Spoilt | None:
    """S that is half of what it should be."""
    at = _rows(source, rng, lambda row: "S" in row.step.values)
    if at is None:
        return None
    right = at[1].step.values["S"]
    text = re.sub(r"S[\d.]+", f"S{right / 2:g}", _raw(*at))
    return _line("wrong_speed", HARD, *at, text, rpm=Typed(right / 2))


SPOILERS: Sequence[Spoiler] = (
    letter, comma, no_start, no_end, steps, unit, backwards, centre, rapid, place, too_deep, comment, cutter, swap,
    speed,
)  # fmt: skip
"""From easy to hard."""
