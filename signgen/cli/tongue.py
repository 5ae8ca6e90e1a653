"""The language of what a command says: as asked for, else the sign's where a sign is read, else English."""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from pathlib import Path

import click

from signgen.messages.language import LANGUAGES

language_option = click.option(
    "--language",
    type=click.Choice(LANGUAGES),
    help="Language of what is said. Default: the sign's where there is one, else en.",
)


def language_of_folders(paths: Sequence[str]) -> str | None:
    """The language of the first sign in some folders, before more is read of them; None where there is none to be
    found: whatever is wrong with a sign file is said by who reads it."""
    for path in paths:
        try:
            said = tomllib.loads((Path(path) / "sign.toml").read_text(encoding="utf-8")).get("language")
        except (OSError, ValueError):
            continue
        if said in LANGUAGES:
            return str(said)
    return None
