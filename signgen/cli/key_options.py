"""Options made from the keys of a sign file, shown in layers: what most signs need, and everything."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import click

from signgen.cli.completion import completer
from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import Option
from signgen.spec import keys


def click_options(rows: Sequence[Option]) -> Iterator[click.Option]:
    """An option of the command line for each row; a flag has its opposite, for what a sign file asks for."""
    for key in rows:
        if key.kind == "flag":
            yield click.Option([f"--{key.name}/--no-{key.name}"], help=key.full_help, default=None)
        else:
            yield click.Option(
                [f"--{key.name}"], metavar=key.metavar, help=key.full_help, default=None, shell_complete=completer(key)
            )


def _show_all(ctx: click.Context, _: click.Parameter, wanted: bool) -> None:
    if wanted and not ctx.resilient_parsing:
        assert isinstance(ctx.command, KeyCommand)
        click.echo(ctx.command.full_help(ctx), color=ctx.color)
        ctx.exit()


class KeyCommand(click.Command):
    """A command with an option for every key of a sign file but the text, which has its own place. They are made when
    they are wanted, from the table as it is then. `--help` shows the command's own options and the keys that most signs
    want, each as an example to type; `--help-all` every key, by what they are about."""

    def get_params(self, ctx: click.Context) -> list[click.Parameter]:
        own = super().get_params(ctx)
        every = click.Option(
            ["--help-all"], is_flag=True, is_eager=True, expose_value=False, callback=_show_all,
            help="Show every option and exit.",
        )  # fmt: skip
        return [*own, every, *click_options([key for key in keys.KEYS if key.name != "text"])]

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Raises: AskError with options that mean what an unknown one says."""
        try:
            return super().parse_args(ctx, args)
        except click.NoSuchOption as error:
            raise unknown_option(error.option_name, list(self.get_params(ctx))) from None

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        names = {f"--{key.name}" for key in keys.KEYS}
        options = [param for param in self.get_params(ctx) if isinstance(param, click.Option)]
        own = [param for param in options if param.opts[0] not in names]
        with formatter.section("Options"):
            formatter.write_dl([record for param in own if (record := param.get_help_record(ctx))])
        with formatter.section("What most signs want, as in"):
            formatter.write_dl([(f"--{key.name} {key.example}", key.help) for key in keys.KEYS if key.often])

    def full_help(self, ctx: click.Context) -> str:
        """The help with every key."""
        formatter = ctx.make_formatter()
        self.format_usage(ctx, formatter)
        self.format_help_text(ctx, formatter)
        groups = {f"--{key.name}": key.group for key in keys.KEYS}
        sections: dict[str, list[tuple[str, str]]] = {"Options": []}
        for param in self.get_params(ctx):
            if isinstance(param, click.Option) and (record := param.get_help_record(ctx)):
                sections.setdefault(groups.get(param.opts[0], "Options"), []).append(record)
        for title, records in sections.items():
            with formatter.section(title):
                formatter.write_dl(records)
        return formatter.getvalue().rstrip("\n")


def unknown_option(typed: str, params: Sequence[click.Parameter]) -> AskError:
    """The error for an option that there is not: it offers those that mean the same."""
    from signgen.meant import options_meant

    word = typed.lstrip("-")
    own = [
        Option(name=param.opts[0].lstrip("-"), kind="word", metavar="", help="", group="")
        for param in params
        if isinstance(param, click.Option) and param.opts[0].lstrip("-") not in keys.KEY_BY_NAME
    ]
    close = options_meant(word, [*keys.KEYS, *own])
    remedy = Message("option.did_you_mean", close=tuple(f"--{name}" for name in close))
    if not close:
        remedy = Message("option.search", word=word.replace("-", " "))
    return AskError.at(typed, Message("option.unknown"), remedy)
