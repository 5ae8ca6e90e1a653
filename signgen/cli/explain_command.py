"""`signgen explain`: what an option, a code or a word means, and answers to questions."""

from __future__ import annotations

import click

from signgen.cli.tongue import language_option
from signgen.errors import said_in
from signgen.messages.language import LANGUAGES


@click.command("explain")
@click.argument("what", nargs=-1, required=True, metavar="WHAT")
@language_option
def command(what: tuple[str, ...], language: str | None) -> None:
    """Say what an option (cap-height), a check's code (C102) or a word of the trade (tab, datum, collet) means, or
    answer a question in plain words ("how do I make the number bigger?").

    recipes shows commands for usual signs, sign-file all keys of a sign file.
    """
    from signgen.guide.pages import explained

    with said_in(language):
        click.echo(explained(" ".join(what), language or LANGUAGES[0]))
