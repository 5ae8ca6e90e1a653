"""A board's programs, written, read back and judged. What comes out is proved, or nothing does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from signgen.checks.check import CheckReport
from signgen.dialects.writing import start_up
from signgen.errors import CheckFailedError, Problem
from signgen.job.facts import JobFacts, ProgramFacts
from signgen.job.verdict import finding_told
from signgen.operations.warnings import run_warnings
from signgen.program.estimate import estimate, times_by_operation
from signgen.proving.judge_sides import JudgedSide, judged_sides
from signgen.proving.sides import Side
from signgen.proving.written import Written, written
from signgen.spec.safe_name import safe_name


def proved(sides: Sequence[Side]) -> JobFacts:
    """The verified job of a board: its face's, with that of its back when something is cut from there.

    Raises: CannotMakeError; CheckFailedError when a program does not do what was drawn.
    """
    both = [written(side) for side in sides]
    jobs = []
    for texts, judged in zip(both, judged_sides(both), strict=True):
        if not judged.report.passed:
            error = CheckFailedError(_failures(judged.report))
            error.case, error.report = judged.case, judged.report
            raise error
        jobs.append(_facts(texts, judged))
    return replace(jobs[0], back=jobs[1] if jobs[1:] else None)


def _failures(report: CheckReport) -> Iterator[Problem]:
    """One line for each finding of a check that stops the job."""
    for result in report.results:
        if result.severity == "error":
            for finding in result.findings:
                yield Problem(where=f"{result.code} {result.name}", what=finding_told(finding))


def _facts(texts: Written, judged: JudgedSide) -> JobFacts:
    side, case = texts.side, judged.case
    assert case.told is not None
    spec, plan = side.spec, side.plan
    return JobFacts(
        name=safe_name(spec.text.lines[0]),
        spec=spec,
        drawing=case.drawing,
        stock=case.stock,
        least=side.setup.least,
        zero=case.zero,
        programs=tuple(_programs(texts, judged)),
        boards=case.boards,
        outline=case.outlines[0] if case.outlines else None,
        lifted=case.lifted,
        checks=judged.report,
        screws_mm=judged.screws_mm,
        set_up=case.told,
        warnings=(
            *plan.spoilt,
            *case.drawing.warnings,
            *plan.remarks,
            *run_warnings(plan.runs, spec.material, spec.machine),
        ),
        sense=plan.sense,
        compared=plan.compared,
        roughing=plan.roughing,
    )


def _programs(texts: Written, judged: JudgedSide) -> Iterator[ProgramFacts]:
    spec = texts.side.spec
    for run, program, tested in zip(texts.side.plan.runs, texts.made, judged.case.programs, strict=True):
        dwell_s = sum(seconds for _, seconds in start_up(program, spec.manner))
        x, y, z = program.moves.ends_mm[0].tolist()
        taken = estimate(program.moves, spec.machine, (x, y, z), dwell_s)
        yield ProgramFacts(
            file=tested.file,
            text=tested.text,
            tool=run.tool,
            cutting=run.cutting,
            description=run.description,
            minutes=taken.minutes,
            cut_length_mm=taken.cut_length_mm,
            travel_length_mm=taken.travel_length_mm,
            replay=tested.replay,
            times=times_by_operation(program, spec.machine, (x, y, z)),
        )
