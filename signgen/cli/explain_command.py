"""`signgen explain`: what a code or a word means."""

from __future__ import annotations

import textwrap

import click


@click.command("explain")
@click.argument("what", nargs=-1, required=True, metavar="WHAT")
def command(what: tuple[str, ...]) -> None:
    """Say what a check's code (C102) or a word of the trade (tab, datum, collet) means, and what to do."""
    from signgen.checks import EVERY_CHECK
    from signgen.errors import AskError
    from signgen.option import did_you_mean
    from signgen.spec.glossary import GLOSSARY

    asked = " ".join(what).strip().casefold()
    known: dict[str, str] = {term.casefold(): text for term, text in GLOSSARY.items()}
    for check in EVERY_CHECK:
        title = f"{check.code} {check.name.replace('_', ' ')} ({check.severity}). {check.explanation}"
        known[check.code.casefold()] = known[check.name.casefold()] = title
        known.setdefault(check.name.replace("_", " ").casefold(), title)
    if asked not in known:
        raise AskError.at("explain", f"Nothing is known of '{' '.join(what)}'.", did_you_mean(asked, known))
    for paragraph in known[asked].split("\n\n"):
        click.echo(textwrap.fill(paragraph, width=79))
