"""The language of what a command says, where no sign says it."""

from __future__ import annotations

import click

from signgen.messages.language import LANGUAGES

language_option = click.option(
    "--language",
    type=click.Choice(LANGUAGES),
    help="Language of what is said. Default: the sign's where there is one, else en.",
)
