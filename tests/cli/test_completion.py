"""Shells complete commands, options and the words behind them."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.shell_completion import CompletionItem, ShellComplete

from signgen.cli import group


def offered(line: str) -> list[CompletionItem]:
    """What is offered for the last word of a line, which may be begun."""
    *words, begun = line.split(" ")[1:]
    return ShellComplete(group, {}, "signgen", "_SIGNGEN_COMPLETE").get_completions(words, begun)


LINES = [
    ("signgen ma", {"make"}),
    ("signgen make --corner-r", {"--corner-radius"}),
    ("signgen make 17 --font pac", {"pacifico"}),
    ("signgen make 17 --font PAC", {"pacifico"}),
    ("signgen make 17 --border sc", {"scalloped"}),
    ("signgen make 17 --material soft", {"softwood", "softwood-plywood"}),
    ("signgen make 17 --align ce", {"centre"}),
    ("signgen make 17 --machine ben", {"bench-router"}),
    ("signgen make 17 --paint re", {"red"}),
    ("signgen make 17 +dig", {"+digit-height="}),
    ("signgen make 17 +font=unif", {"+font=unifraktur"}),
    ("signgen batch rooms.csv --holes top", {"top-pair"}),
    ("signgen list mach", {"machines"}),
    ("signgen feeds end-mill-6 oa", {"oak"}),
    ("signgen feeds end-mill-6", {"end-mill-6"}),
    ("signgen explain C10", {"C101", "C102"}),
    ("signgen check x.nc --material acr", {"acrylic"}),
]


@pytest.mark.parametrize(("line", "words"), LINES, ids=lambda value: value if isinstance(value, str) else "")
def test_words_that_ship_are_offered(line: str, words: set[str]) -> None:
    found = {item.value for item in offered(line)}
    assert found >= words
    assert all(word.casefold().startswith(line.split(" ")[-1].casefold()) for word in found)


@pytest.mark.parametrize("line", ["make 17 --from ", "make 17 --font ./my", "make 17 --shop ", "batch ", "check "])
def test_files_are_left_to_the_shell(line: str) -> None:
    assert [item.type for item in offered(f"signgen {line}")] == ["file"]


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")
def test_one_line_installs_it() -> None:
    """The line of the README, in a shell of its own."""
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    line = 'eval "$(_SIGNGEN_COMPLETE=bash_source signgen)"'
    assert line in readme
    path = f"{Path(sys.executable).parent}:{os.environ['PATH']}"
    ask = f"{line}; complete -p signgen; COMP_WORDS=(signgen make --font pac) COMP_CWORD=3"
    script = f"{ask}; _signgen_completion signgen; echo ${{COMPREPLY[*]}}"
    done = subprocess.run(
        ["bash", "-c", script], capture_output=True, text=True, check=False, env={**os.environ, "PATH": path}
    )
    assert done.stdout.splitlines() == ["complete -o nosort -F _signgen_completion signgen", "pacifico"], done.stderr
