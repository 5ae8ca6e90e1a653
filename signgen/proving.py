"""A sign on a board: its programs, written, read back and judged. What comes out is proved, or nothing does."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry.base import BaseGeometry

from signgen.checks import FROM_BEHIND, judge
from signgen.checks.case import make_case
from signgen.checks.check import Case, CheckReport, ProgramUnderTest
from signgen.checks.fixing import screws_at
from signgen.checks.parts import parts_of
from signgen.checks.trials_clear import cut_bounds
from signgen.dialects import dialect_named
from signgen.dialects.writing import start_up
from signgen.drawing.drawing import Drawing
from signgen.errors import CheckFailedError, Problem
from signgen.fastening.rim_screws import rim_screws
from signgen.fastening.screws import suggest_screws
from signgen.job.facts import JobFacts, ProgramFacts
from signgen.job.verdict import finding_text
from signgen.operations.plan import Plan, Run
from signgen.operations.warnings import run_warnings
from signgen.program.assemble import assemble
from signgen.program.blocks import Program
from signgen.program.estimate import estimate, times_by_operation
from signgen.program.heading import ONE_FILE, heading, program_file
from signgen.program.travel import Travel
from signgen.program.trial import LIFTED, OUTLINE, lifted_program, outline_program
from signgen.replay.reader import read_program
from signgen.replay.sweep import HeightMap
from signgen.shop.stock import (
    Stock,
    WorkZero,
    least_stock,
    must_reach,
    stock_on_board,
    turned_over,
    work_zero,
    zero_turned_over,
)
from signgen.shop.tools import Tool
from signgen.spec.safe_name import safe_name
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import Toolpath
from signgen.toolpath.order import in_order

SAME_PLACE_MM = 0.01
"""So that a way along the outside cut counts as over the bare board."""


class Setup(Struct, frozen=True, kw_only=True):
    """The board, the least board that would do, and the programs' zero on it."""

    stock: Stock
    least: Stock
    zero: WorkZero


def proved(
    spec: SignSpec,
    drawing: Drawing,
    plan: Plan,
    setup: Setup,
    face: HeightMap | None = None,
    screws: tuple[tuple[float, float], ...] | None = None,
) -> JobFacts:
    """The verified job of a drawing on a board: a sign's, or that of a whole sheet of signs. `face`, `screws`: what the
    programs of the face leave, and where screws are already, for what is cut from the back.

    Raises: CannotMakeError; CheckFailedError when a program does not do what was drawn.
    """
    programs = tuple(sign_programs(spec, drawing, plan, setup))
    texts = dialect_named(spec.dialect).write(programs, spec.manner)
    case = sign_case(spec, drawing, plan, setup, texts)
    case = with_trials(case, _trials(spec, plan, case, programs))
    screws = _screws(spec, setup, case) if screws is None else screws
    case = replace(case, fixings=screws_at(screws, setup.zero), face=face)
    report = judge(case) if face is None else judge(case, FROM_BEHIND)
    if not report.passed:
        raise CheckFailedError(failures(report))
    return _facts(spec, plan, programs, setup, case, report, screws)


def sign_case(spec: SignSpec, drawing: Drawing, plan: Plan, setup: Setup, texts: Sequence[str]) -> Case:
    return make_case(
        drawing=drawing,
        stock=setup.stock,
        zero=setup.zero,
        machine=spec.machine,
        material=spec.material,
        programs=[
            (name, text, run.tool)
            for name, run, text in zip(program_names(spec, plan), plan.runs, _by_run(plan, texts), strict=True)
        ],
        breakthrough_mm=spec.breakthrough_mm,
        tolerance_mm=spec.tolerances.total_mm,
        ridge_mm=spec.ridge_mm,
        finish_mm=spec.finish_mm,
        cell_mm=spec.cell_mm,
    )


def program_names(spec: SignSpec, plan: Plan) -> tuple[str, ...]:
    """The file of each run."""
    if dialect_named(spec.dialect).one_file:
        return (f"{plan.prefix}{ONE_FILE}",) * len(plan.runs)
    return tuple(f"{plan.prefix}{program_file(number, run.tool)}" for number, run in enumerate(plan.runs, 1))


def _by_run(plan: Plan, texts: Sequence[str]) -> Sequence[str]:
    """The text that each run is part of."""
    return texts if len(texts) == len(plan.runs) else (texts[0],) * len(plan.runs)


def trial_names(spec: SignSpec, plan: Plan) -> tuple[str, ...]:
    """The files of the programs to try before the cut."""
    lifted = (
        dict.fromkeys(f"{LIFTED}{name}" for name in program_names(spec, plan)) if spec.air_cut_mm is not None else ()
    )
    return (f"{plan.prefix}{OUTLINE}", *lifted)


def _trials(spec: SignSpec, plan: Plan, case: Case, programs: Sequence[Program]) -> Mapping[str, str]:
    """The texts of the programs to try before the cut, by the names of their files."""
    dialect, zero = dialect_named(spec.dialect), case.zero
    x0, y0, x1, y1 = cut_bounds(case)
    corners = (x0 - zero.x_mm, y0 - zero.y_mm, x1 - zero.x_mm, y1 - zero.y_mm)
    over = spec.thickness_mm + spec.clearance_mm - zero.z_mm
    texts = dialect.write([outline_program(programs[0], corners, over, spec.machine)], spec.manner)
    if spec.air_cut_mm is not None:
        texts += dialect.write([lifted_program(program, spec.air_cut_mm) for program in programs], spec.manner)
    return dict(zip(trial_names(spec, plan), texts, strict=True))


def with_trials(case: Case, texts: Mapping[str, str]) -> Case:
    """The case with the programs to try read back, each with the cutters that it is run with."""
    tried = []
    for name, text in texts.items():
        own = [program.tool for program in case.programs if program.file == name.removeprefix(LIFTED)]
        tools = own or [case.programs[0].tool]
        replay = read_program(text, tool_lengths_mm=dict.fromkeys(range(1, 100), 0.0))
        parts = parts_of(replay, len(tools)) if len(tools) > 1 else (replay,)
        tried += [
            ProgramUnderTest(file=name, text=text, tool=tool, replay=part, cutters=len(tools))
            for tool, part in zip(tools, parts, strict=True)
        ]
    return replace(
        case,
        outlines=tuple(program for program in tried if not program.file.startswith(LIFTED)),
        lifted=tuple(program for program in tried if program.file.startswith(LIFTED)),
    )


def setup_of(spec: SignSpec, plan: Plan) -> Setup:
    """Raises: CannotMakeError when the board or the machine is too small."""
    cutter = plan.around_mm
    must_reach((spec.width_mm, spec.height_mm), cutter, spec.machine.travel_mm[:2])
    least = least_stock(spec.width_mm, spec.height_mm, spec.thickness_mm, cutter)
    stock = stock_on_board(least, spec.board_mm, cutter) if spec.board_mm else least
    zero = work_zero(stock, on_board=spec.origin == "stock", at_top=spec.z_zero == "top")
    return Setup(stock=stock, least=least, zero=zero)


def turned_setup(stock: Stock, least: Stock, zero: WorkZero, sign_width_mm: float) -> Setup:
    """The same board, face down."""
    return Setup(
        stock=turned_over(stock, sign_width_mm),
        least=turned_over(least, sign_width_mm),
        zero=zero_turned_over(zero, sign_width_mm),
    )


def sign_programs(spec: SignSpec, drawing: Drawing, plan: Plan, setup: Setup) -> Iterator[Program]:
    # At the board's back, out of the way, as far as the machine goes there.
    furthest = spec.machine.travel_mm[1] - plan.edge.diameter_mm
    park = (0.0, min(setup.stock.bounds_mm[3], max(furthest, drawing.height_mm)))
    grid_mm = dialect_named(spec.dialect).grid_mm
    for number, run in enumerate(plan.runs, 1):
        yield assemble(
            heading=heading(
                lines=spec.text.lines,
                number=number,
                count=len(plan.runs),
                does=run.does,
                tool=run.tool,
                drawing=drawing,
                stock=setup.stock,
                material_label=spec.material.label,
                zero=setup.zero,
                from_behind=bool(plan.prefix),
            ),
            toolpaths=in_order(_named(run), park),
            cutting=run.cutting,
            spindle_start_s=spec.machine.spindle_start_s,
            spindle_least_rpm=spec.machine.spindle_min_rpm,
            zero=setup.zero,
            travel=Travel(
                top_mm=spec.thickness_mm,
                safe_mm=spec.thickness_mm + spec.clearance_mm,
                most_mm=spec.machine.travel_mm[2] - spec.breakthrough_mm,
                bare=None if plan.prefix else _bare(drawing, plan, run.tool),
            ),
            top_z_feed_mm_per_min=spec.machine.top_feed_mm_per_min[2],
            park_xy_mm=park,
            number=number,
            grid_mm=grid_mm,
        )


def _bare(drawing: Drawing, plan: Plan, tool: Tool) -> BaseGeometry:
    """Where neither clamps nor screws can stand, for the outside cut runs there."""
    bare: BaseGeometry = drawing.edge.buffer(plan.edge.diameter_mm - tool.radius_mm + SAME_PLACE_MM)
    return bare


def _named(run: Run) -> list[Toolpath]:
    """The run's toolpaths, named by what they do in the operator's words."""
    return [replace(toolpath, operation=does) for does, toolpath in zip(run.does, run.toolpaths(), strict=True)]


def failures(report: CheckReport) -> Iterator[Problem]:
    """One line for each finding of a check that stops the job."""
    for result in report.results:
        if result.severity == "error":
            for finding in result.findings:
                yield Problem(where=f"{result.code} {result.name}", what=finding_text(finding))


def _screws(spec: SignSpec, setup: Setup, case: Case) -> tuple[tuple[float, float], ...]:
    """Where hold-down screws are suggested, in program coordinates."""
    cutters = [(program.tool, program.replay) for program in case.programs]
    if case.drawing.pieces:
        tools = [tool for tool, _ in cutters]
        return rim_screws(case.drawing, setup.stock, setup.zero, tools, spec.breakthrough_mm)
    return suggest_screws(case.drawing, setup.stock, setup.zero, cutters, spec.machine.collet_series)


def _facts(
    spec: SignSpec,
    plan: Plan,
    programs: tuple[Program, ...],
    setup: Setup,
    case: Case,
    report: CheckReport,
    screws_mm: tuple[tuple[float, float], ...],
) -> JobFacts:
    facts = []
    for run, program, tested in zip(plan.runs, programs, case.programs, strict=True):
        dwell_s = sum(seconds for _, seconds in start_up(program, spec.manner))
        x, y, z = program.moves.ends_mm[0].tolist()
        taken = estimate(program.moves, spec.machine, (x, y, z), dwell_s)
        facts.append(
            ProgramFacts(
                file=tested.file,
                text=tested.text,
                tool=run.tool,
                cutting=run.cutting,
                does=run.does,
                minutes=taken.minutes,
                cut_length_mm=taken.cut_length_mm,
                travel_length_mm=taken.travel_length_mm,
                replay=tested.replay,
                times=times_by_operation(program, spec.machine, (x, y, z)),
            )
        )
    return JobFacts(
        name=safe_name(spec.text.lines[0]),
        spec=spec,
        drawing=case.drawing,
        stock=setup.stock,
        least=setup.least,
        zero=setup.zero,
        programs=tuple(facts),
        boards=case.boards,
        outline=case.outlines[0],
        lifted=case.lifted,
        checks=report,
        screws_mm=screws_mm,
        warnings=(*case.drawing.warnings, *plan.remarks, *run_warnings(plan.runs, spec.material, spec.machine)),
        sense=plan.sense,
        compared=plan.compared,
    )
