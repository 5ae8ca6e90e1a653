"""Options made from the keys of a sign file, shown in their groups."""

from __future__ import annotations

import click

from signgen.spec.keys import KEYS

GROUPS = {f"--{key.name}": key.group for key in KEYS}


def key_options(function: click.decorators.FC) -> click.decorators.FC:
    """One option for every key of a sign file but the text, which has its own place."""
    for key in reversed(KEYS):
        if key.name == "text":
            continue
        if key.kind == "flag":
            option = click.option(f"--{key.name}/--no-{key.name}", help=key.full_help, default=None)
        else:
            option = click.option(f"--{key.name}", metavar=key.metavar, help=key.full_help, default=None)
        function = option(function)
    return function


class KeyCommand(click.Command):
    """A command whose help shows its own options first, then the keys by what they are about."""

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        sections: dict[str, list[tuple[str, str]]] = {"Options": []}
        for param in self.get_params(ctx):
            if isinstance(param, click.Argument):
                continue
            record = param.get_help_record(ctx)
            if record is not None:
                sections.setdefault(GROUPS.get(param.opts[0], "Options"), []).append(record)
        for title, records in sections.items():
            with formatter.section(title):
                formatter.write_dl(records)
