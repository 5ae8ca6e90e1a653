"""Options made from the keys of a sign file, shown in their groups."""

from __future__ import annotations

from collections.abc import Iterator

import click

from signgen.option import Option
from signgen.spec import keys


def click_options(rows: tuple[Option, ...]) -> Iterator[click.Option]:
    """An option of the command line for each row; a flag has its opposite, for what a sign file asks for."""
    for key in rows:
        if key.kind == "flag":
            yield click.Option([f"--{key.name}/--no-{key.name}"], help=key.full_help, default=None)
        else:
            yield click.Option([f"--{key.name}"], metavar=key.metavar, help=key.full_help, default=None)


class KeyCommand(click.Command):
    """A command with an option for every key of a sign file but the text, which has its own place. They are made when
    they are wanted, from the table as it is then. Its help shows the command's own options first, then the keys by what
    they are about."""

    def get_params(self, ctx: click.Context) -> list[click.Parameter]:
        own = super().get_params(ctx)
        return [*own, *click_options(tuple(key for key in keys.KEYS if key.name != "text"))]

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        groups = {f"--{key.name}": key.group for key in keys.KEYS}
        sections: dict[str, list[tuple[str, str]]] = {"Options": []}
        for param in self.get_params(ctx):
            if isinstance(param, click.Argument):
                continue
            record = param.get_help_record(ctx)
            if record is not None:
                sections.setdefault(groups.get(param.opts[0], "Options"), []).append(record)
        for title, records in sections.items():
            with formatter.section(title):
                formatter.write_dl(records)
