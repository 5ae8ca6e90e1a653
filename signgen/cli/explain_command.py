"""`signgen explain`: what an option, a code or a word means, and answers to questions."""

from __future__ import annotations

import click


@click.command("explain")
@click.argument("what", nargs=-1, required=True, metavar="WHAT")
def command(what: tuple[str, ...]) -> None:
    """Say what an option (cap-height), a check's code (C102) or a word of the trade (tab, datum, collet) means, or
    answer a question in plain words ("how do I make the number bigger?").

    recipes shows commands for usual signs, sign-file all keys of a sign file.
    """
    from signgen.guide.pages import explained

    click.echo(explained(" ".join(what)))
