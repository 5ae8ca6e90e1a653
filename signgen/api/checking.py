"""`signgen.check` and `signgen.read_program`: programs on disk, judged and read."""

from __future__ import annotations

import os
from collections.abc import Sequence
from typing import Any, TypedDict, Unpack

from signgen.checks.check import CheckResult, Finding
from signgen.elsewhere import check_files
from signgen.errors import AskError
from signgen.folder import check_folder
from signgen.job.judged import Judged
from signgen.lesson.checked_data import checked_data
from signgen.messages import Message
from signgen.pictures.board_picture import board_png, marks_of
from signgen.replay.motion import Replay
from signgen.replay.reader import read_program as read_text
from signgen.spec.check_spec import OF_FIXINGS, read_fixing_spec
from signgen.user_file import MOST_PROGRAM_BYTES, read_bytes, shown

Length = str | float
Path = str | os.PathLike[str]


class CheckAsked(TypedDict, total=False):
    """The options of `signgen check`, hyphens as underscores."""

    stock: str
    zero: str
    z_zero: str
    material: str
    machine: str
    breakthrough: Length
    shop: Path
    screws: str
    clamps: str
    clamp_height: Length
    cell: Length


class Verdict:
    """What the checks say of the programs of one board. Places are millimetres, on the sign where one was drawn, else
    on the board, (0, 0) its lower left corner.

    >>> import signgen, tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     verdict = signgen.check(signgen.make("7", size="60x40", thickness=6).save(f"{folder}/7"))
    >>> verdict.passed, verdict.findings, verdict.checks[0].code
    (True, (), 'C103')
    >>> verdict.picture()[1:4]
    b'PNG'
    """

    def __init__(self, judged: Judged) -> None:
        self._judged = judged

    @property
    def passed(self) -> bool:
        """Whether no check failed; there may be warnings."""
        return self._judged.report.passed

    @property
    def checks(self) -> tuple[CheckResult, ...]:
        """Every check, also those that did not apply or were skipped."""
        return tuple(self._judged.report.results)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found, each with its file, line and place."""
        return tuple(finding for result in self.checks for finding in result.findings)

    @property
    def report(self) -> dict[str, Any]:
        """What `signgen check --json` prints of one board, by the schema of `signgen explain schema check`."""
        return checked_data(self._judged)

    def picture(self) -> bytes:
        """A PNG of what is left of the board, with a mark at each finding."""
        return board_png(self._judged.case, marks_of(self._judged.case, self._judged.report))

    def __repr__(self) -> str:
        count = len(self.findings)
        found = f"{count} finding{'' if count == 1 else 's'}"
        return f"<signgen.Verdict {self._judged.path!r}, {'passed' if self.passed else 'failed'}, {found}>"

    def _repr_png_(self) -> bytes:
        return self.picture()


def check(*paths: Path, tools: Sequence[str] = (), **asked: Unpack[CheckAsked]) -> Verdict:
    """Judge programs as they stand on disk: one folder that `make` wrote, or RS-274 files from anywhere in the order to
    run them on one board; then `stock` ("300x200x12", millimetres) and `tools`, a cutter in words for each, must be
    said. Programs that fail are no error: see `Verdict.passed`.

    Raises: AskError with every problem at once; ShopError.

    Source of the reading: NIST IR 6556, The NIST RS274NGC Interpreter - Version 3.

    >>> import pathlib, signgen, tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     file = pathlib.Path(folder, "groove.nc")
    ...     words = "G21 G90 G17 G94 G54;S9000 M3;G0 Z20;G0 X20 Y20;G1 Z10 F300;G1 X60;G0 Z20;M5;M2;"
    ...     _ = file.write_text(words.replace(";", "\\n"))
    ...     verdict = signgen.check(file, stock="100x80x12", tools=["end-mill 6"])
    >>> [(program["lines"], program["deepest"]["depth_mm"]) for program in verdict.report["survey"]["programs"]]
    [(9, 2.0)]
    """
    names = [os.fspath(path) for path in paths]
    given = {name.replace("_", "-"): _word(value) for name, value in asked.items() if value is not None}
    of_fixings = {option.name for option in OF_FIXINGS}
    said = read_fixing_spec({name: value for name, value in given.items() if name in of_fixings})
    of_programs = {name: value for name, value in given.items() if name not in of_fixings}
    folders = [name for name in names if os.path.isdir(name)]  # noqa: PTH112 (Path.is_dir raises for long names)
    if not names or (folders and (len(names) > 1 or of_programs or tools)):
        raise AskError.at("paths", Message("api.one_board"), Message("api.name_one_folder"))
    if folders:
        from pathlib import Path as Folder

        return Verdict(check_folder(Folder(folders[0]), said))
    return Verdict(check_files(names, of_programs, tools, said))


def _word(value: object) -> str:
    return value if isinstance(value, str) else os.fspath(value) if isinstance(value, os.PathLike) else f"{value}"


def read_program(path: Path | None = None, *, text: str | None = None) -> Replay:
    """A program read as a machine would: its motions in millimetres as arrays, each with its line number, and what is
    wrong with it. Give its path, or its text.

    >>> import signgen
    >>> read = signgen.read_program(text="G21 G90 G17 M3 S9000\\nG0 X1 Y2 Z5\\nG1 Z-1 F300\\nM2\\n")
    >>> read.motions.end_mm.tolist(), read.motions.line.tolist(), read.faults
    ([[1.0, 2.0, 5.0], [1.0, 2.0, -1.0]], [2, 3], ())

    Raises: AskError when the file cannot be read. Never for what stands in it.

    Source: NIST IR 6556, The NIST RS274NGC Interpreter - Version 3.
    """
    if (path is None) == (text is None):
        raise TypeError("give a path or a text")
    if text is None:
        assert path is not None
        text = read_bytes(path, shown(path), MOST_PROGRAM_BYTES).decode("latin-1")
    return read_text(text)
