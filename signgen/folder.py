"""A folder that `make` wrote, judged again: its programs as they are on disk against what was asked for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.checks import both_sides
from signgen.checks.check import Case
from signgen.checks.fixing import Fixing, clamps_at
from signgen.disk.change import must_be_finished
from signgen.errors import AskError, Problem
from signgen.instructions import SetUp
from signgen.job.judged import Judged
from signgen.job.report import stated_instructions, stated_screws
from signgen.pipeline import REPORT, SIGN, gather, read_sign
from signgen.proving.judge_sides import Points, judged_sides
from signgen.proving.sides import Side, sides_of
from signgen.spec.check_spec import NONE_SAID, FixingSpec
from signgen.user_file import MOST_PROGRAM_BYTES, read_bytes
from signgen.whole_sheet import SHEET, laid_out, load_sheet


class OnDisk(Struct, frozen=True, kw_only=True):
    """The programs of one side as they lie in a folder; with the screws of its setup sheet unless others are said."""

    side: Side
    folder: Path
    said: FixingSpec

    def programs(self) -> Sequence[str]:
        return [_text(self.folder, name) for name in dict.fromkeys(self.side.program_names)]

    def trials(self, case: Case) -> Mapping[str, str]:
        return {name: _text(self.folder, name) for name in self.side.trial_names}

    def screws_mm(self, case: Case) -> Points:
        stated = stated_screws(_present(self.folder, REPORT))
        return stated if self.said.screws_mm is None else self.said.screws_mm

    def told(self, case: Case, screws_mm: Points, sides: int) -> SetUp | None:
        told = stated_instructions(_present(self.folder, REPORT))
        return told.set_ups[-1 if self.side.plan.prefix == "" else 0] if told else None

    def clamps(self, case: Case) -> Sequence[Fixing]:
        return clamps_at(self.said.clamps_mm, self.said.clamp_height_mm, case.zero)


def check_folder(folder: Path, said: FixingSpec = NONE_SAID) -> Judged:
    """The programs of a sign or of a whole sheet of signs, judged against the sign file or the sheet file beside them.

    Raises: AskError when the folder is not whole.
    """
    must_be_finished(folder)
    sides = [
        replace(side, spec=replace(side.spec, cell_mm=said.cell_mm or side.spec.cell_mm)) for side in _sides(folder)
    ]
    ours = {name for side in sides for name in (*side.program_names, *side.trial_names)}
    problems = [
        Problem(where=str(folder), what=f"{path.name} does not belong to this sign.", remedy="Move it elsewhere.")
        for path in sorted(folder.glob("*.nc"))
        if path.name not in ours
    ]
    if problems:
        raise AskError(problems)
    face, *back = judged_sides([OnDisk(side=side, folder=folder, said=said) for side in sides])
    report = both_sides(face.report, back[0].report) if back else face.report
    return Judged(path=str(folder), case=face.case, report=report)


def _sides(folder: Path) -> tuple[Side, ...]:
    if (folder / SHEET).is_file():
        return laid_out(load_sheet(folder / SHEET))
    return sides_of(read_sign(gather({}, _present(folder, SIGN))))


def _text(folder: Path, name: str) -> str:
    return read_bytes(_present(folder, name), str(folder), MOST_PROGRAM_BYTES).decode("latin-1")


def _present(folder: Path, name: str) -> Path:
    """A file's path. Raises: AskError when it is missing."""
    path = folder / name
    if not path.is_file():
        raise AskError.at(
            str(folder), f"{name} is missing.", "Name a folder that signgen make wrote, or make the sign again."
        )
    return path
