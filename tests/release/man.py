"""`python -m tests.release.man`: write the manual pages of every command into dist/man, from where a wheel that is
built afterwards takes them. Made by click-man from the commands themselves."""

from __future__ import annotations

import re
from pathlib import Path

import click
from click_man.core import write_man_pages

from signgen.cli import COMMANDS, group
from signgen.version import __version__

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "dist" / "man"


def dated() -> str:
    """The day of the version's entry in the list of changes, so that the same source gives the same pages."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    found = re.search(rf"^\*\*{re.escape(__version__)}\*\* \((\d{{4}}-\d\d-\d\d)\)", text, re.MULTILINE)
    assert found, f"DEVELOPERS.md has no entry of {__version__}"
    return found[1]


def _whole(name: str) -> click.Command:
    assert isinstance(group, click.Group)
    command = group.get_command(click.Context(group), name)
    assert command is not None
    params = [param for param in command.get_params(click.Context(command)) if param.name != "help"]
    return click.Command(name, params=params, help=command.help)


def write_pages(folder: Path) -> list[str]:
    """Names of the pages; `signgen.1` and one a command."""
    folder.mkdir(parents=True, exist_ok=True)
    # click-man reads tables of commands and of options; ours are made when they are wanted.
    whole = click.Group("signgen", commands={name: _whole(name) for name in COMMANDS}, help=group.help)
    write_man_pages("signgen", whole, version=__version__, target_dir=str(folder), date=dated())
    return sorted(path.name for path in folder.glob("*.1"))


if __name__ == "__main__":
    print(*write_pages(FOLDER))
