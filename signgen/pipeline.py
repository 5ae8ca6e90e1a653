"""The whole program read aloud.

spec -> drawing -> operations -> toolpaths -> programs -> text -> replay -> checks -> sheet
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry.base import BaseGeometry

from signgen.checks import FROM_BEHIND, both_sides, judge
from signgen.checks.case import make_case
from signgen.checks.check import Case, CheckReport, ProgramUnderTest
from signgen.checks.fixing import screws_at
from signgen.checks.parts import parts_of
from signgen.checks.trials_clear import cut_bounds
from signgen.dialects import DIALECTS, dialect_named
from signgen.dialects.writing import start_up
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.keyholes import face_down
from signgen.errors import AskError, CheckFailedError, Problem
from signgen.operations.plan import Plan, Run, back_plan, make_plan
from signgen.operations.warnings import run_warnings
from signgen.program.assemble import assemble
from signgen.program.blocks import Program
from signgen.program.estimate import estimate, times_by_operation
from signgen.program.heading import ONE_FILE, heading, program_file
from signgen.program.travel import Travel
from signgen.program.trial import LIFTED, OUTLINE, lifted_program, outline_program
from signgen.replay.reader import read_program
from signgen.replay.sweep import HeightMap
from signgen.sheet.back_names import PNG, back_names
from signgen.sheet.back_sheet import back_html
from signgen.sheet.job_facts import JobFacts, ProgramFacts
from signgen.sheet.judged import Judged, fixings_of
from signgen.sheet.preview import preview_png, preview_svg, sign_relief
from signgen.sheet.preview_html import preview_html
from signgen.sheet.relief import Relief
from signgen.sheet.report import report_text, stated_screws
from signgen.sheet.rim_screws import rim_screws
from signgen.sheet.screws import suggest_screws
from signgen.sheet.setup_pdf import setup_pdf
from signgen.sheet.setup_sheet import setup_html
from signgen.sheet.steps import steps_png
from signgen.sheet.template import template_files
from signgen.sheet.verdict import finding_text
from signgen.shop.load import load_shop
from signgen.shop.shop import Shop
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
from signgen.spec.check_spec import NONE_SAID, FixingSpec
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.safe_name import safe_name
from signgen.spec.sign_file import dump_sign_file, load_sign_file
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import Toolpath
from signgen.toolpath.order import in_order

SAME_PLACE_MM = 0.01
"""So that a way along the outside cut counts as over the bare board."""

REPORT = "report.json"
"""Names every file of the job; a folder that holds it is complete."""


class Job(Struct, frozen=True, kw_only=True):
    """A finished, verified job and every file that belongs into its folder, by name."""

    facts: JobFacts
    files: Mapping[str, bytes]


class Setup(Struct, frozen=True, kw_only=True):
    """The board, the least board that would do, and the programs' zero on it."""

    stock: Stock
    least: Stock
    zero: WorkZero


def gather(asked: Mapping[str, object], sign_file: Path | None) -> Mapping[str, object]:
    """What was asked for on the command line (or in a CSV row), on top of a sign file if there is one.

    Raises: AskError when the sign file cannot be read.
    """
    return merged(load_sign_file(sign_file) if sign_file else {}, asked)


def read_sign(asked: Mapping[str, object], shop_of: Callable[[Path | None], Shop] = load_shop) -> SignSpec:
    """Raises: AskError with every problem at once; ShopError when the shop's data is wrong."""
    shop_file = asked.get("shop")
    shop = shop_of(Path(str(shop_file)) if shop_file else None)
    return read_spec(asked, shop, dialects=tuple(dialect.name for dialect in DIALECTS))


def make_job(spec: SignSpec, tell: Callable[[str], None] = lambda stage: None) -> Job:
    """From what was asked for to every file of the job, verified. `tell` hears what begins: "plan", "prove", "draw".

    Raises: AskError, CannotMakeError; CheckFailedError when a program does not do what was drawn.
    """
    facts = prove(spec, tell)
    tell("draw")
    return Job(facts=facts, files=_files(facts))


def prove(spec: SignSpec, tell: Callable[[str], None] = lambda stage: None) -> JobFacts:
    """The verified job without its pictures and pages. Raises: as `make_job`."""
    tell("plan")
    drawing = draw(spec)
    plan = make_plan(drawing, spec)
    tell("prove")
    facts = proved(spec, drawing, plan, setup_of(spec, plan))
    return replace(facts, back=_from_behind(facts))


def _from_behind(facts: JobFacts) -> JobFacts | None:
    """The verified job of what is cut from the back, before the face; None when nothing is."""
    spec, drawing = facts.spec, face_down(facts.drawing)
    plan = back_plan(drawing, spec)
    if plan is None:
        return None
    setup = _turned(facts.stock, facts.least, facts.zero, drawing.width_mm)
    screws = tuple((-x, y) for x, y in facts.screws_mm)
    return proved(spec, drawing, plan, setup, face=facts.boards[-1], screws=screws)


def _turned(stock: Stock, least: Stock, zero: WorkZero, sign_width_mm: float) -> Setup:
    """The same board, face down."""
    return Setup(
        stock=turned_over(stock, sign_width_mm),
        least=turned_over(least, sign_width_mm),
        zero=zero_turned_over(zero, sign_width_mm),
    )


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
    programs = tuple(_programs(spec, drawing, plan, setup))
    texts = dialect_named(spec.dialect).write(programs, spec.manner)
    case = _case(spec, drawing, plan, setup, texts)
    case = _with_trials(case, _trials(spec, plan, case, programs))
    screws = _screws(spec, setup, case) if screws is None else screws
    case = replace(case, fixings=screws_at(screws, setup.zero), face=face)
    report = judge(case) if face is None else judge(case, FROM_BEHIND)
    if not report.passed:
        raise CheckFailedError(failures(report))
    return _facts(spec, plan, programs, setup, case, report, screws)


def check_folder(folder: Path, fixings: FixingSpec = NONE_SAID) -> Judged:
    """The programs on disk in a folder that `make` wrote, judged against the sign file beside them; with the screws of
    its setup sheet unless others are said.

    Raises: AskError when the folder is not whole.
    """
    spec = read_sign(gather({}, present(folder, "sign.toml")))
    drawing = draw(spec)
    plan = make_plan(drawing, spec)
    setup = setup_of(spec, plan)
    behind = back_plan(face_down(drawing), spec)
    others = (*_names(spec, behind), *_trial_names(spec, behind)) if behind else ()
    judged = judged_folder(folder, spec, drawing, plan, setup, fixings, others)
    if behind is None:
        return judged
    turned = _turned(setup.stock, setup.least, setup.zero, drawing.width_mm)
    back = _read_case(folder, spec, face_down(drawing), behind, turned, fixings)
    screws = tuple((-x, y) for x, y in stated_screws(present(folder, REPORT)))
    back = replace(back, fixings=screws_at(screws, turned.zero), face=judged.case.boards[-1])
    return replace(judged, report=both_sides(judged.report, judge(back, FROM_BEHIND)))


def judged_folder(
    folder: Path,
    spec: SignSpec,
    drawing: Drawing,
    plan: Plan,
    setup: Setup,
    fixings: FixingSpec = NONE_SAID,
    others: Sequence[str] = (),
) -> Judged:
    """The programs on disk that belong to a job, judged; `others` belong there too. Raises: AskError when the folder is
    not whole."""
    problems = [
        Problem(where=str(folder), what=f"{path.name} does not belong to this sign.", remedy="Move it elsewhere.")
        for path in sorted(folder.glob("*.nc"))
        if path.name not in (*_names(spec, plan), *_trial_names(spec, plan), *others)
    ]
    if problems:
        raise AskError(problems)
    case = _read_case(folder, spec, drawing, plan, setup, fixings)
    case = replace(case, fixings=fixings_of(fixings, case.zero, stated_screws(present(folder, REPORT))))
    return Judged(path=str(folder), case=case, report=judge(case))


def _read_case(folder: Path, spec: SignSpec, drawing: Drawing, plan: Plan, setup: Setup, fixings: FixingSpec) -> Case:
    """The case that a folder's programs make. Raises: AskError when one is missing."""
    names = list(dict.fromkeys(_names(spec, plan)))
    texts = [present(folder, name).read_bytes().decode("latin-1") for name in names]
    case = _case(replace(spec, cell_mm=fixings.cell_mm or spec.cell_mm), drawing, plan, setup, texts)
    tried = {name: present(folder, name).read_bytes().decode("latin-1") for name in _trial_names(spec, plan)}
    case = _with_trials(case, tried)
    return case


def present(folder: Path, name: str) -> Path:
    """A file's path. Raises: AskError when it is missing."""
    path = folder / name
    if not path.is_file():
        raise AskError.at(
            str(folder), f"{name} is missing.", "Name a folder that signgen make wrote, or make the sign again."
        )
    return path


def _case(spec: SignSpec, drawing: Drawing, plan: Plan, setup: Setup, texts: Sequence[str]) -> Case:
    return make_case(
        drawing=drawing,
        stock=setup.stock,
        zero=setup.zero,
        machine=spec.machine,
        material=spec.material,
        programs=[
            (name, text, run.tool)
            for name, run, text in zip(_names(spec, plan), plan.runs, _by_run(plan, texts), strict=True)
        ],
        breakthrough_mm=spec.breakthrough_mm,
        tolerance_mm=spec.tolerances.total_mm,
        ridge_mm=spec.ridge_mm,
        finish_mm=spec.finish_mm,
        cell_mm=spec.cell_mm,
    )


def _names(spec: SignSpec, plan: Plan) -> tuple[str, ...]:
    """The file of each run."""
    if dialect_named(spec.dialect).one_file:
        return (f"{plan.prefix}{ONE_FILE}",) * len(plan.runs)
    return tuple(f"{plan.prefix}{program_file(number, run.tool)}" for number, run in enumerate(plan.runs, 1))


def _by_run(plan: Plan, texts: Sequence[str]) -> Sequence[str]:
    """The text that each run is part of."""
    return texts if len(texts) == len(plan.runs) else (texts[0],) * len(plan.runs)


def _trial_names(spec: SignSpec, plan: Plan) -> tuple[str, ...]:
    """The files of the programs to try before the cut."""
    lifted = dict.fromkeys(f"{LIFTED}{name}" for name in _names(spec, plan)) if spec.air_cut_mm is not None else ()
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
    return dict(zip(_trial_names(spec, plan), texts, strict=True))


def _with_trials(case: Case, texts: Mapping[str, str]) -> Case:
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


def _programs(spec: SignSpec, drawing: Drawing, plan: Plan, setup: Setup) -> Iterator[Program]:
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


def program_files(facts: JobFacts) -> dict[str, bytes]:
    """Every program file of a job by its name, in the order to run them."""
    before = (*((facts.outline,) if facts.outline else ()), *facts.lifted)
    return {program.file: program.text.encode("ascii") for program in (*before, *facts.programs)}


def _setup_sheet(facts: JobFacts, lit: Relief) -> dict[str, bytes]:
    """The sheet in the formats that were asked for. Raises: AskError when there is nothing to write a PDF with."""
    page = setup_html(facts, lit)
    wanted = facts.spec.sheet_format
    html = {"setup.html": page.encode()} if wanted != "pdf" else {}
    return html | ({"setup.pdf": setup_pdf(page)} if wanted != "html" else {})


def _back_sheet(back: JobFacts) -> dict[str, bytes]:
    """The same of the board's back."""
    page = back_html(back)
    return {
        name: setup_pdf(page) if name.endswith(".pdf") else page.encode() for name in back_names(back.spec.sheet_format)
    }


def _files(facts: JobFacts) -> Mapping[str, bytes]:
    files = program_files(facts)
    if facts.back is not None:
        back = facts.back
        files = {**program_files(back), **files, **_back_sheet(back), PNG: preview_png(back)}
    lit = sign_relief(facts)
    files |= {
        **_setup_sheet(facts, lit),
        "preview.svg": preview_svg(facts, lit).encode(),
        "preview.png": preview_png(facts, lit),
        "preview.html": preview_html(facts).encode(),
        **template_files(facts.spec, facts.drawing),
        **({"steps.png": steps_png(facts, lit)} if facts.spec.steps else {}),
        "sign.toml": dump_sign_file(facts.spec).encode(),
    }
    return {**files, REPORT: report_text(facts, [*files, REPORT]).encode()}
