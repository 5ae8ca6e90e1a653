"""The reference for users: what the command line knows of itself, handed to the page."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import click

from signgen.guide.reference.parts import CommandHelp
from signgen.spec.keys import KEY_BY_NAME


def told_of(group: click.Group, context: click.Context) -> Iterator[CommandHelp]:
    """Every command with its own options; those that are keys of a sign file have a chapter."""
    for name in group.list_commands(context):
        command = group.get_command(context, name)
        assert command is not None
        inner = click.Context(command, info_name=name, parent=click.Context(group, info_name="signgen"))
        records = (
            param.get_help_record(inner)
            for param in command.get_params(inner)
            if isinstance(param, click.Option) and param.opts[0].lstrip("-") not in KEY_BY_NAME
        )
        yield CommandHelp(
            name=name,
            usage=" ".join([inner.command_path, *command.collect_usage_pieces(inner)]),
            about=command.help or "",
            options=tuple(record for record in records if record),
        )


def write_reference(context: click.Context, out: str | None) -> None:
    """Write the page to a file, or print it."""
    from signgen.files import write_files
    from signgen.guide.reference.whole import reference_page

    root = context.find_root()
    assert isinstance(root.command, click.Group)
    page = reference_page(tuple(told_of(root.command, root)))
    if out is None:
        click.echo(page, nl=False)
        return
    path = Path(out)
    write_files(path.parent, {path.name: page.encode()}, "out")
    click.echo(path)
