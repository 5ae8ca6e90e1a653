"""A folder that `make` wrote, judged again: its programs as they are on disk against what was asked for."""

from __future__ import annotations

import json
from collections.abc import Collection, Mapping, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.checks import both_sides
from signgen.checks.check import Case
from signgen.checks.fixing import Fixing, clamps_at
from signgen.checks.stated import Papers
from signgen.disk.change import must_be_finished
from signgen.disk.ours import digest_of_file
from signgen.errors import AskError, Problem
from signgen.instructions import SetUp
from signgen.job.judged import Judged
from signgen.job.report import stated_instructions, stated_screws
from signgen.messages import Message
from signgen.pipeline import REPORT, SIGN, gather, read_sign
from signgen.proving.judge_sides import Points, judged_sides
from signgen.proving.sides import Side, sides_of
from signgen.spec.check_spec import NONE_SAID, FixingSpec
from signgen.user_file import MOST_JSON_BYTES, MOST_PROGRAM_BYTES, read_bytes
from signgen.whole_sheet import SHEET, laid_out, load_sheet

ENDINGS = frozenset(
    [
        ".nc",
        ".ngc",
        ".tap",
        ".gcode",
        ".gc",
        ".g",
        ".cnc",
        ".iso",
        ".eia",
        ".din",
        ".mpf",
        ".fnc",
        ".prg",
        ".min",
        ".dnc",
        ".cls",
        ".apt",
    ]
)
"""How programs for machine tools are called on controls of all kinds (common practice, from memory)."""


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

    def papers(self) -> Papers:
        report = _report(self.folder)
        behind = self.side.plan.prefix != ""
        part = report.get("back", {}) if behind else report
        stock = report.get("stock")
        programs = part.get("programs") if isinstance(part, dict) else None
        return Papers(
            programs=[one for one in programs if isinstance(one, dict)] if isinstance(programs, list) else [],
            z_zero=str(stock.get("z_zero")) if isinstance(stock, dict) else None,
            changed=[] if behind else _changed(self.folder, report),
        )

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
        Problem(
            where=str(folder), what=Message("checking.not_of_this_sign", name=name), remedy=Message("checking.move_it")
        )
        for name in _strange(folder, ours)
    ]
    if problems:
        raise AskError(problems)
    face, *back = judged_sides([OnDisk(side=side, folder=folder, said=said) for side in sides])
    report = both_sides(face.report, back[0].report) if back else face.report
    return Judged(path=str(folder), case=face.case, report=report, language=sides[0].spec.language)


def _strange(folder: Path, ours: Collection[str]) -> list[str]:
    """Names in the folder that somebody at the machine may take for a program of this sign: those with an ending that
    programs have, and those that are called like one of ours but for the ending."""
    stems = {Path(name).stem.lower() for name in ours}
    return [
        path.name
        for path in sorted(folder.iterdir())
        if path.name not in ours and (path.suffix.lower() in ENDINGS or path.stem.lower() in stems)
    ]


def _report(folder: Path) -> dict[str, object]:
    """The report as it is on disk; empty where it is none, which `stated_screws` refuses."""
    try:
        told = json.loads(read_bytes(_present(folder, REPORT), str(folder), MOST_JSON_BYTES))
    except ValueError:
        return {}
    return told if isinstance(told, dict) else {}


def _changed(folder: Path, report: Mapping[str, object]) -> list[str]:
    """Pages and pictures that are there and no longer what make wrote. Programs are judged by what they do, and the
    sign file is what they are judged against."""
    kept = report.get("sha256")
    return [
        name
        for name, wanted in (kept.items() if isinstance(kept, dict) else ())
        if Path(name).name == name
        and not name.endswith((".nc", ".toml", ".json"))
        and (folder / name).is_file()
        and digest_of_file(folder / name) != wanted
    ]


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
            str(folder), Message("checking.file_missing", name=name), Message("checking.name_folder_or_make_again")
        )
    return path
