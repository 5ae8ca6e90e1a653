"""signgen from Python: the same bytes as the command, the same options, errors with their evidence."""

from __future__ import annotations

import pkgutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from msgspec.structs import replace

import signgen
from signgen.checks.check import Case, CheckResult, Finding
from signgen.checks.cutter_reach import CutterReach
from signgen.cli import group

ROOT = Path(__file__).parents[2]
SIGN = {"size": "90x60", "thickness": 6, "holes": "corners", "hole_diameter": 5, "border": "rounded"}


@pytest.fixture(scope="module")
def job() -> signgen.Job:
    return signgen.make("17", **SIGN)  # type: ignore[arg-type]


def test_makes_the_bytes_that_the_command_makes(job: signgen.Job, tmp_path: Path) -> None:
    words = [word for name, value in SIGN.items() for word in (f"--{name.replace('_', '-')}", str(value))]
    done = CliRunner().invoke(group, ["make", "17", *words, "--out", str(tmp_path / "command")])
    assert done.exception is None
    job.save(tmp_path / "python")
    folders = [{path.name: path.read_bytes() for path in (tmp_path / name).iterdir()} for name in ("command", "python")]
    assert folders[0] == folders[1]


def test_a_job_shows_what_was_made(job: signgen.Job) -> None:
    assert repr(job).startswith("<signgen.Job '17', 90 x 60 x 6 mm, ")
    assert job.drawing["edge"].bounds == (0, 0, 90, 60)
    assert all(area.is_valid and not area.is_empty for area in job.drawing.values())
    assert [program.file for program in job.programs] == [each["file"] for each in job.report["programs"]]
    assert job.programs[0].text.encode() == job.files[job.programs[0].file]
    assert job.preview.startswith(b"\x89PNG")
    assert "<iframe" in job._repr_html_()
    with pytest.raises(TypeError):
        job.files["x"] = b""  # type: ignore[index]


def test_lengths_are_numbers_or_texts_with_a_unit(job: signgen.Job) -> None:
    other = signgen.make(
        "17", size=(90.0, "6cm"), thickness="6 mm", holes="corners", hole_diameter="5mm", border="rounded", font=None
    )
    assert other.files == job.files


def test_all_problems_come_at_once_by_the_options_names() -> None:
    with pytest.raises(signgen.AskError) as caught:
        signgen.make("17", size="x", thicknes=6)  # type: ignore[call-arg]
    assert [problem.where for problem in caught.value.problems] == ["thicknes", "size", "thickness"]


def test_check_judges_folders_and_programs_from_anywhere(job: signgen.Job, tmp_path: Path) -> None:
    folder = job.save(tmp_path / "sign")
    assert signgen.check(folder).passed
    program = folder / job.programs[0].file
    program.write_text(program.read_text().replace("Z-", "Z-9"))
    judged = signgen.check(program, stock="110x80x6", tools=["v-bit 90"], z_zero="bottom", cell=0.5)
    assert judged.report["passed"] == judged.passed
    assert judged.picture().startswith(b"\x89PNG")
    with pytest.raises(signgen.AskError):
        signgen.check(folder, program)


def test_a_failed_check_brings_its_picture(monkeypatch: pytest.MonkeyPatch) -> None:
    real = CutterReach.run

    def found(self: CutterReach, case: Case) -> CheckResult:
        finding = Finding(message="made up", file="1-v-bit-90.nc", line=9, place_mm=(10.0, 10.0))
        return replace(real(self, case), findings=(finding,))

    monkeypatch.setattr(CutterReach, "run", found)
    with pytest.raises(signgen.CheckFailedError) as caught:
        signgen.make("17", **SIGN)  # type: ignore[arg-type]
    picture = caught.value.picture()
    assert picture is not None
    assert picture.startswith(b"\x89PNG")


def test_a_program_is_read_from_its_path_or_its_text(job: signgen.Job, tmp_path: Path) -> None:
    file = job.save(tmp_path / "sign") / job.programs[0].file
    read = signgen.read_program(file)
    assert len(read.motions) == len(job.programs[0].motions)
    assert len(signgen.read_program(text=job.programs[0].text).motions) == len(read.motions)
    with pytest.raises(signgen.AskError):
        signgen.read_program(tmp_path / "none")
    with pytest.raises(TypeError):
        signgen.read_program()


def test_a_batch_makes_a_folder_for_each_row(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text("name\nA\n\u0007\n")
    done = signgen.batch(
        tmp_path / "list.csv", text="{name}", out=tmp_path / "out", size="60x40", thickness=6, workers=1
    )
    assert (done.made, done.failed) == (1, 1)
    assert done.report["rows"] == 2
    assert (done.folder / "0002-a" / "report.json").is_file()
    assert "control character" in done.failures[0]


def test_importing_loads_nothing_heavy_and_everything_named_is_there() -> None:
    code = "import sys, signgen; print(*sorted({'numpy', 'shapely', 'click', 'fontTools'} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert done.stdout.strip() == ""
    for name in signgen.__all__:
        assert getattr(signgen, name) is not None
    assert set(signgen.__all__) <= set(dir(signgen))
    with pytest.raises(AttributeError):
        signgen.nothing  # noqa: B018


USER = """
import signgen
from signgen import Job

def plaque(name: str, width: float) -> Job:
    return signgen.make(name, size=(width, 60), thickness="6mm", border="rounded", holes="corners", hole_diameter=5)

job = plaque("Anna", 120.0)
minutes: float = sum(program.minutes for program in job.programs)
area: float = job.drawing["edge"].area
folder = job.save("out")
passed: bool = signgen.check(folder).passed
"""


@pytest.mark.sweep
def test_a_users_script_passes_strict_type_checks(tmp_path: Path) -> None:
    script = tmp_path / "script.py"
    script.write_text(USER)
    wrong = tmp_path / "wrong.py"
    wrong.write_text('import signgen\nsigngen.make("A", size="1x1", thicknes=6)\n')
    command = [sys.executable, "-m", "mypy", "--strict", f"--config-file={ROOT / 'pyproject.toml'}"]
    for file, good in ((script, True), (wrong, False)):
        done = subprocess.run([*command, str(file)], cwd=ROOT, capture_output=True, text=True, check=False)
        assert (done.returncode == 0) is good, done.stdout


def test_no_room_of_the_package_takes_the_place_of_what_is_offered() -> None:
    rooms = {room.name for room in pkgutil.iter_modules(signgen.__path__)}
    assert not rooms & set(signgen.__all__)
