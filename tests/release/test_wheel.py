"""What is released works where its source is not: built, installed in a fresh environment, used as the README says."""

from __future__ import annotations

import json
import os
import re
import shlex
import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest
from msgspec import Struct

from signgen.cli import COMMANDS
from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.schemas.formats import NAMES
from signgen.version import __version__
from tests.release.man import dated

pytestmark = pytest.mark.sweep

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SHOWN = re.findall(r"^    (?:.*bin/)?(signgen (?:make|batch) .*)$", README, re.MULTILINE)
PYTHON = re.findall(r"^    (?:import signgen|job[. =].*)$", README, re.MULTILINE)
"""The README's lines of Python."""


class Built(Struct, frozen=True, kw_only=True):
    """The two files of a release, and the environment into which the wheel was installed."""

    sdist: Path
    wheel: Path
    home: Path

    def run(self, *words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
        """A program of the environment, which knows nothing of the repository."""
        kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
        done = subprocess.run(
            [str(self.home / "bin" / words[0]), *words[1:]],
            cwd=cwd,
            env=kept,
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.returncode == 0, f"{' '.join(words)}\n{done.stdout}\n{done.stderr}"
        return done


@pytest.fixture(scope="module")
def source(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What git has of the working tree, so that nothing built earlier comes along; with manual pages."""
    folder = tmp_path_factory.mktemp("source")
    names = subprocess.run(
        ["git", "ls-files", "-co", "--exclude-standard", "-z"], cwd=ROOT, capture_output=True, check=True
    )
    for name in filter(None, names.stdout.decode().split("\0")):
        if (ROOT / name).is_file():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes((ROOT / name).read_bytes())
    subprocess.run([sys.executable, "-m", "tests.release.man"], cwd=folder, check=True, capture_output=True)
    return folder


@pytest.fixture(scope="module")
def built(source: Path, tmp_path_factory: pytest.TempPathFactory) -> Built:
    out, home = tmp_path_factory.mktemp("dist"), tmp_path_factory.mktemp("environment")
    for command in (
        [sys.executable, "-m", "build", "-o", str(out), str(source)],
        [sys.executable, "-m", "venv", str(home)],
    ):
        done = subprocess.run(command, capture_output=True, text=True, check=False, cwd=out)
        assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-2000:]
    (wheel,), (sdist,) = out.glob("*.whl"), out.glob("*.tar.gz")
    made = Built(sdist=sdist, wheel=wheel, home=home)
    made.run("pip", "install", "-q", str(wheel), "mypy", "jsonschema", cwd=out)
    return made


def test_both_hold_what_is_needed_and_nothing_else(built: Built) -> None:
    with zipfile.ZipFile(built.wheel) as wheel, tarfile.open(built.sdist) as sdist:
        inside = set(wheel.namelist())
        packed = {name.partition("/")[2] for name in sdist.getnames()}
    needed = {"signgen/py.typed", "signgen/examples/class.ipynb", "signgen/examples/heron-weir-9.toml"}
    needed |= {f"signgen/schemas/{name}.schema.json" for name in NAMES}
    needed |= {
        f"signgen/fonts_open/{face.path.parent.name}/{face.path.name}" for face in (*catalogue(), *stroke_catalogue())
    }
    tracked = subprocess.run(["git", "ls-files", "signgen"], cwd=ROOT, capture_output=True, text=True, check=True)
    needed |= set(tracked.stdout.split())
    assert needed - inside == set()
    assert any(name.endswith("share/man/man1/signgen-make.1") for name in inside)
    tops = {name.split("/")[0] for name in inside}
    assert tops == {"signgen", f"signgen-{__version__}.dist-info", f"signgen-{__version__}.data"}
    assert {"pyproject.toml", "README.md", "LICENSE", "fonts_open/catalogue.toml"} <= packed


def test_the_wheel_says_what_it_is(built: Built, tmp_path: Path) -> None:
    told = built.run("pip", "show", "-v", "signgen", cwd=tmp_path).stdout
    assert f"Version: {__version__}" in told
    where = built.run("python", "-c", "import signgen; print(signgen.__file__)", cwd=tmp_path).stdout
    assert Path(where.strip()).is_relative_to(built.home)
    assert "All that signgen needs is here." in built.run("signgen", "doctor", cwd=tmp_path).stdout


def test_every_command_has_its_manual_page(built: Built) -> None:
    pages = built.home / "share" / "man" / "man1"
    names = {path.name for path in pages.glob("signgen*")}
    assert names == {"signgen.1", *(f"signgen-{name}.1" for name in COMMANDS)}
    make = (pages / "signgen-make.1").read_text(encoding="utf-8")
    assert "cap\\-height" in make
    assert dated() in make


@pytest.fixture(scope="module")
def here(built: Built, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the examples in it, copied out of the wheel."""
    folder = tmp_path_factory.mktemp("here")
    built.run("signgen", "list", "examples", "--copy", "examples", cwd=folder)
    return folder


@pytest.mark.parametrize("line", SHOWN)
def test_the_readmes_commands_work(built: Built, here: Path, line: str) -> None:
    words = shlex.split(line)
    built.run(*words, cwd=here)
    made = here / words[words.index("--out") + 1]
    assert (made / ("batch.json" if words[1] == "batch" else "setup.html")).stat().st_size > 500


def test_python_works_as_the_readme_shows_it(built: Built, here: Path) -> None:
    assert len(PYTHON) == 4
    (here / "readme.py").write_text("\n".join(line.strip() for line in PYTHON) + "\n", encoding="utf-8")
    built.run("python", "readme.py", cwd=here)
    assert (here / "out" / "17" / "setup.html").is_file()


def test_a_users_script_is_checked_by_what_the_wheel_says_of_itself(built: Built, tmp_path: Path) -> None:
    (tmp_path / "script.py").write_text(
        'import signgen\njob: signgen.Job = signgen.make("A", size="90x60", thickness=6)\n'
        "minutes: float = job.programs[0].minutes\n"
    )
    built.run("mypy", "--strict", "script.py", cwd=tmp_path)


def test_reports_fit_the_schemas_that_the_wheel_prints(built: Built, tmp_path: Path) -> None:
    schema = json.loads(built.run("signgen", "explain", "schema", "report", cwd=tmp_path).stdout)
    words = ("signgen", "make", "A", "--size", "90x60", "--thickness", "6", "--json")
    report = json.loads(built.run(*words, cwd=tmp_path).stdout)
    (tmp_path / "both.json").write_text(json.dumps([schema, report]))
    code = (
        "import json, jsonschema; s, r = json.load(open('both.json')); jsonschema.Draft202012Validator(s).validate(r)"
    )
    built.run("python", "-c", code, cwd=tmp_path)
