"""`signgen explain FILE`: a program line by line."""

from __future__ import annotations

import json
from pathlib import Path

import click

from signgen.errors import AskError
from signgen.messages import Message


def is_program(word: str) -> bool:
    """Whether a word to explain is a file that is there. Words of the trade that are also names of folders stay
    words."""
    try:
        return Path(word).is_file()
    except (OSError, ValueError):
        return False


def read_out(file: str, language: str, line: int | None, page: str | None, as_json: bool) -> None:
    """Prints what a program does, or writes it as a page. Raises: AskError when there is no such file or line."""
    from signgen.files import write_files
    from signgen.lesson.read_aloud import lines_data, lines_page, read_aloud
    from signgen.messages.wording import Wording
    from signgen.user_file import MOST_PROGRAM_BYTES, read_bytes, shown

    if not is_program(file):
        raise AskError.at(file, Message("line.needs_file", what=file), Message("line.name_file"))
    text = read_bytes(file, shown(file), MOST_PROGRAM_BYTES).decode("latin-1")
    wording, name = Wording(language), Path(file).name
    if page is not None:
        write_files(Path(page).parent, {Path(page).name: lines_page(name, text, wording).encode()}, "page")
    elif as_json:
        click.echo(json.dumps(lines_data(name, text, line, wording), ensure_ascii=False, indent=1))
    else:
        click.echo(read_aloud(name, text, line, wording))
