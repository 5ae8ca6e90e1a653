"""Programs of one board, side by side with what was drawn: the same whether they were just made or lie on disk."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Protocol

from msgspec import Struct
from msgspec.structs import replace

from signgen.checks import FROM_BEHIND, judge
from signgen.checks.case import make_case
from signgen.checks.check import Case, CheckReport, ProgramUnderTest
from signgen.checks.fixing import Fixing, screws_at
from signgen.checks.parts import parts_of
from signgen.checks.stated import Papers, Stated
from signgen.dialects import dialect_named
from signgen.instructions import SetUp
from signgen.program.trial import LIFTED
from signgen.proving.sides import Side
from signgen.replay.reader import read_program

Points = tuple[tuple[float, float], ...]


class Texts(Protocol):
    """Where the programs of a side come from, and what holds the board."""

    @property
    def side(self) -> Side: ...

    def programs(self) -> Sequence[str]:
        """Their texts: one for each run, or one for all."""
        ...

    def trials(self, case: Case) -> Mapping[str, str]:
        """The texts of the programs to try before the cut, by the names of their files."""
        ...

    def screws_mm(self, case: Case) -> Points:
        """Where screws stand, in program coordinates. Asked of the face only, for the back has the same."""
        ...

    def told(self, case: Case, screws_mm: Points, sides: int) -> SetUp | None:
        """What the setup sheet tells a person to do with this side of a board that is cut from so many; None where
        nothing does."""
        ...

    def papers(self) -> Papers | None:
        """What report and pages beside them say; None where none are written yet."""
        ...

    def clamps(self, case: Case) -> Sequence[Fixing]:
        """Asked of the face only."""
        ...


class JudgedSide(Struct, frozen=True, kw_only=True):
    """`screws_mm` in program coordinates."""

    case: Case
    report: CheckReport
    screws_mm: Points


def judged_sides(both: Sequence[Texts]) -> Iterator[JudgedSide]:
    """The face, then the back, which is judged knowing what the programs of the face leave."""
    face: JudgedSide | None = None
    for texts in both:
        case = case_of(texts.side, texts.programs())
        case = with_trials(case, texts.trials(case))
        if face is None:
            screws = texts.screws_mm(case)
            told = texts.told(case, screws, len(both))
            case = replace(case, fixings=(*screws_at(screws, case.zero), *texts.clamps(case)), told=told)
            case = replace(case, papers=texts.papers())
            face = JudgedSide(case=case, report=judge(case), screws_mm=screws)
            yield face
        else:
            screws = tuple((-x, y) for x, y in face.screws_mm)
            told = texts.told(case, screws, len(both))
            case = replace(case, fixings=screws_at(screws, case.zero), face=face.case.boards[-1], told=told)
            case = replace(case, told_of_face=face.case.told, papers=texts.papers())
            yield JudgedSide(case=case, report=judge(case, FROM_BEHIND), screws_mm=screws)


def case_of(side: Side, texts: Sequence[str]) -> Case:
    """What checks look at. `texts`: one for each run, or one for all."""
    spec, runs = side.spec, side.plan.runs
    by_run = texts if len(texts) == len(runs) else (texts[0],) * len(runs)
    return make_case(
        drawing=side.drawing,
        stock=side.setup.stock,
        zero=side.setup.zero,
        machine=spec.machine,
        material=spec.material,
        programs=[(name, text, run.tool) for name, run, text in zip(side.program_names, runs, by_run, strict=True)],
        stated=stated_of(side),
        breakthrough_mm=spec.breakthrough_mm,
        tolerance_mm=spec.tolerances.total_mm,
        cusp_height_mm=spec.cusp_height_mm,
        finish_mm=spec.finish_mm,
        cell_mm=spec.cell_mm,
    )


def stated_of(side: Side) -> tuple[Stated, ...]:
    """What the setup sheet says of each run."""
    change = dialect_named(side.spec.dialect).change
    return tuple(
        Stated(number=number, change=change, cutting=run.cutting, manner=side.spec.manner)
        for number, run in enumerate(side.plan.runs, 1)
    )


def with_trials(case: Case, texts: Mapping[str, str]) -> Case:
    """The case with the programs to try read back, each with the cutters that it is run with."""
    tried = []
    for name, text in texts.items():
        own = [program for program in case.programs if program.file == name.removeprefix(LIFTED)]
        tools = own or [case.programs[0]]
        replay = read_program(text, tool_lengths_mm=dict.fromkeys(range(1, 100), 0.0))
        parts = parts_of(replay, len(tools)) if len(tools) > 1 else (replay,)
        tried += [
            ProgramUnderTest(
                file=name, text=text, tool=program.tool, replay=part, cutters=len(tools), stated=program.stated
            )
            for program, part in zip(tools, parts, strict=True)
        ]
    return replace(
        case,
        outlines=tuple(program for program in tried if not program.file.startswith(LIFTED)),
        lifted=tuple(program for program in tried if program.file.startswith(LIFTED)),
    )
