"""What nobody would type on purpose: a clear error, the right exit code and nothing left behind."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

SIGN = ["A", "--size", "100x60", "--thickness", "9"]


def run(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "signgen", *words]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, env=dict(os.environ), check=False)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "deep.toml").write_text("x = " + "[" * 5000)
    (tmp_path / "loop").symlink_to("loop")
    (tmp_path / "names.csv").write_text("name\nAnna\n")
    (tmp_path / "plaque.toml").write_text('text = "{name}"\nsize = "160x60"\nthickness = 9\n')
    return tmp_path


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (["make", "A", "--from", "deep.toml", "--out", "o"], 2, "deep.toml: "),
        (["make", *SIGN, "--shop", "deep.toml", "--out", "o"], 3, "deep.toml: "),
        (["make", *SIGN, "--border", "path:loop", "--out", "o"], 2, "border: "),
        (["make", *SIGN, "--out", "o" * 300], 2, "out: "),
        (["batch", "names.csv", "--from", "plaque.toml", "--out", "o", "--time-limit", "nan"], 2, "time-limit: "),
        (["batch", "names.csv", "--from", "plaque.toml", "--out", "o", "--memory-limit", "9" * 24], 2, "memory-limit"),
    ],
)
def test_it_is_refused_in_a_sentence(folder: Path, words: list[str], code: int, told: str) -> None:
    before = sorted(path.name for path in folder.iterdir())
    said = run(folder, *words)
    assert (said.returncode, "Traceback" in said.stderr) == (code, False), said.stderr
    assert told in said.stderr
    assert sorted(path.name for path in folder.iterdir()) == before
