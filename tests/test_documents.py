"""Documents that cannot drift: what the README shows is run, what it names is there."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMANDS = re.findall(r"^    (.*signgen (?:make|batch) .*)$", README, re.MULTILINE)


def section(title: str) -> str:
    return re.split(r"^## ", README, flags=re.MULTILINE)[
        [part.splitlines()[0] for part in re.split(r"^## ", README, flags=re.MULTILINE)].index(title)
    ]


def test_begins_with_the_job_in_one_paragraph() -> None:
    lines = README.splitlines()
    assert lines[0] == "# signgen"
    paragraph = README.split("\n\n")[1]
    assert len(paragraph) > 300
    assert not paragraph.startswith(("#", "!", "-", "|"))


def test_has_two_set_up_commands_and_ci_calls_the_second() -> None:
    commands = [line for line in README.splitlines() if line.startswith("    python3 -m venv")]
    assert len(commands) == 2
    assert "signgen make" in commands[0]
    assert "pytest" in commands[1]
    ci = (ROOT / ".ci" / "run").read_text()
    assert "/^## Test/" in ci
    assert section("Test").count("    python3") == 1


@pytest.mark.parametrize("line", COMMANDS)
def test_every_command_of_the_readme_makes_what_it_says(line: str, tmp_path: Path) -> None:
    words = shlex.split(line[line.index("signgen ") :])
    out = tmp_path / "out"
    words[words.index("--out") + 1] = str(out)
    done = subprocess.run(
        [sys.executable, "-m", *words], cwd=ROOT, capture_output=True, text=True, env={**os.environ}, check=False
    )
    assert done.returncode == 0, done.stderr
    names = {path.name for path in out.iterdir()}
    if words[1] == "batch":
        assert "batch.json" in names
        return
    assert {"setup.html", "preview.svg", "preview.png", "report.json", "sign.toml"} <= names
    assert any(name.endswith(".nc") for name in names)


def test_every_example_is_in_the_readme_with_its_picture() -> None:
    for path in (ROOT / "examples").glob("*.toml"):
        assert f"examples/{path.name}" in README
        assert f"examples/{path.stem}.png" in README
        assert path.with_suffix(".png").is_file()


def test_every_command_and_exit_code_is_in_the_readme() -> None:
    from signgen import cli

    for name in cli.COMMANDS:
        assert f"`signgen {name}" in README
    for code in (0, 1, 2, 3, 4, 5):
        assert re.search(rf"[ :]{code} ", section("Commands"))


def test_links_lead_to_files_that_are_there() -> None:
    for document in ("README.md", "DEVELOPERS.md"):
        for target in re.findall(r"\]\(([^)#]+)\)", (ROOT / document).read_text(encoding="utf-8")):
            assert (ROOT / target).exists(), f"{document} links to {target}"
