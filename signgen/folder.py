"""A folder that `make` wrote, judged again: its programs as they are on disk against its sign file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from msgspec.structs import replace

from signgen.checks import FROM_BEHIND, both_sides, judge
from signgen.checks.check import Case
from signgen.checks.fixing import screws_at
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.keyholes import face_down
from signgen.errors import AskError, Problem
from signgen.job.judged import Judged, fixings_of
from signgen.job.report import stated_screws
from signgen.operations.plan import Plan, back_plan, make_plan
from signgen.pipeline import REPORT, gather, read_sign
from signgen.proving import Setup, program_names, setup_of, sign_case, trial_names, turned_setup, with_trials
from signgen.spec.check_spec import NONE_SAID, FixingSpec
from signgen.spec.sign_spec import SignSpec


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
    others = (*program_names(spec, behind), *trial_names(spec, behind)) if behind else ()
    judged = judged_folder(folder, spec, drawing, plan, setup, fixings, others)
    if behind is None:
        return judged
    turned = turned_setup(setup.stock, setup.least, setup.zero, drawing.width_mm)
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
        if path.name not in (*program_names(spec, plan), *trial_names(spec, plan), *others)
    ]
    if problems:
        raise AskError(problems)
    case = _read_case(folder, spec, drawing, plan, setup, fixings)
    case = replace(case, fixings=fixings_of(fixings, case.zero, stated_screws(present(folder, REPORT))))
    return Judged(path=str(folder), case=case, report=judge(case))


def _read_case(folder: Path, spec: SignSpec, drawing: Drawing, plan: Plan, setup: Setup, fixings: FixingSpec) -> Case:
    """The case that a folder's programs make. Raises: AskError when one is missing."""
    names = list(dict.fromkeys(program_names(spec, plan)))
    texts = [present(folder, name).read_bytes().decode("latin-1") for name in names]
    case = sign_case(replace(spec, cell_mm=fixings.cell_mm or spec.cell_mm), drawing, plan, setup, texts)
    tried = {name: present(folder, name).read_bytes().decode("latin-1") for name in trial_names(spec, plan)}
    case = with_trials(case, tried)
    return case


def present(folder: Path, name: str) -> Path:
    """A file's path. Raises: AskError when it is missing."""
    path = folder / name
    if not path.is_file():
        raise AskError.at(
            str(folder), f"{name} is missing.", "Name a folder that signgen make wrote, or make the sign again."
        )
    return path
