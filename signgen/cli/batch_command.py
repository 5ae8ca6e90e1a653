"""`signgen batch`: a sign for every row of a list."""

from __future__ import annotations

import math
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click
from msgspec.structs import replace

from signgen.cli.completion import complete_file
from signgen.cli.key_options import KeyCommand
from signgen.errors import AskError, SignGenError
from signgen.messages import Message
from signgen.spec.keys import OUT

if TYPE_CHECKING:
    from signgen.batching.order import Order

MOST_TOLD = 20
"""Rows that cannot be drawn, told one by one; the contact sheet shows all."""


@click.command("batch", cls=KeyCommand)
@click.argument("csv_file", metavar="CSV", required=False, shell_complete=complete_file)
@click.option("--from", "sign_file", metavar="FILE", help="A sign file (TOML) for what is alike in all rows.")
@click.option(
    "--text",
    multiple=True,
    metavar="LINE",
    help="A line of lettering, as in '{name}', or +KEY=VALUE for it; once for each.",
)
@click.option("--columns", is_flag=True, help="List the columns that mean something by their names.")
@click.option("--example", is_flag=True, help="Print a list to begin from, for the sign file and texts given.")
@click.option("--copies", type=click.IntRange(1, 10_000), default=1, help="How many of each sign. Default: 1.")
@click.option("--encoding", metavar="NAME", help="Encoding of the list. Default: UTF-8, or what its mark says.")
@click.option("--worksheet", metavar="NAME", help="Sheet of an .xlsx or .ods file. Default: its first.")
@click.option("--ignore-columns", is_flag=True, help="Leave columns alone that mean nothing here.")
@click.option("--sheet", metavar="WIDTHxHEIGHT", help="Lay the signs on sheets of this size and make whole sheets.")
@click.option("--gap", metavar="LENGTH", help="Between two signs on a sheet. Default: two cuts and 3 mm for the tabs.")
@click.option("--clamp-border", metavar="LENGTH", help="Rim of a sheet that nothing touches. Default: 15 mm.")
@click.option("--no-turn", is_flag=True, help="Lay every sign upright on its sheet.")
@click.option("--keep-grain", is_flag=True, help="Lay signs upright where the material has a grain.")
@click.option("--out", metavar=OUT.metavar, help="Folder to write into. Default: ./ and the list's name.")
@click.option("--quote", is_flag=True, help="Reckon what it costs, by the [prices] of the shop file.")
@click.option("--labels", type=click.Choice(["a4", "letter"]), help="A label for each sign, for label sheets.")
@click.option(
    "--files",
    type=click.Choice(["all", "sheet", "programs"]),
    default="all",
    help="Of each sign: all, no pictures, or programs alone. Default: all.",
)
@click.option("--proof", is_flag=True, help="Draw all signs on a contact sheet, proof.html, and make no programs.")
@click.option("--rows", metavar="NUMBERS", help="Only these rows, as in 19,44-46; made again if they were made before.")
@click.option("--resume", is_flag=True, help="Go on with the batch that is there: only what is new or changed is made.")
@click.option("--fresh", is_flag=True, help="Make all rows anew in place of the batch that is there.")
@click.option("--workers", type=click.IntRange(1, 256), help="Rows made at once. Default: one for each core.")
@click.option("--scheduler", metavar="ADDRESS", help="Hand rows to a Dask cluster, as in tcp://10.0.0.5:8786.")
@click.option("--time-limit", metavar="SECONDS", type=click.FloatRange(1, 1e6), help="For one row. Default: 120.")
@click.option("--memory-limit", metavar="MB", type=click.IntRange(100, 10**9), help="For one row. Default: 2000.")
@click.option("--json", "as_json", is_flag=True, help="Print the report instead of the summary.")
def command(
    csv_file: str | None,
    sign_file: str | None,
    text: tuple[str, ...],
    columns: bool,
    example: bool,
    copies: int,
    encoding: str | None,
    worksheet: str | None,
    ignore_columns: bool,
    sheet: str | None,
    gap: str | None,
    clamp_border: str | None,
    no_turn: bool,
    keep_grain: bool,
    out: str | None,
    quote: bool,
    labels: str | None,
    files: Literal["all", "sheet", "programs"],
    proof: bool,
    rows: str | None,
    resume: bool,
    fresh: bool,
    workers: int | None,
    scheduler: str | None,
    time_limit: float | None,
    memory_limit: int | None,
    as_json: bool,
    **options: str | None,
) -> int:
    """Make a sign for every row of a list: a folder each, as `signgen make` writes it.

    The first row of CSV names the columns. A column called like a key of the sign file gives that key, and any other
    column is used as {column} in the texts of the sign file. An empty cell leaves the key to the sign file.

    With --sheet the signs are laid out on sheets, and each sheet is one job for all its signs.

    A bad row never stops the good ones: errors.csv has it with what is wrong, and the exit code is 1. Mend it there and
    run the batch with errors.csv as its list and the same --out: rows go back to their numbers. The same command with
    --resume goes on where a batch was interrupted, or after the list was changed: what did not change stays.
    """
    from signgen.batching.asked_sheet import read_sheet
    from signgen.batching.order import Order, begin_of, carry_out
    from signgen.batching.report import BATCH
    from signgen.batching.rows_asked import read_rows
    from signgen.batching.run import GO_ON, BatchThereError
    from signgen.batching.summary import failure_lines, summary_text
    from signgen.messages.language import language_or_english
    from signgen.messages.wording import Wording
    from signgen.spec.typed_lines import asked_lines
    from signgen.words.words import words_in

    if time_limit is not None and math.isnan(time_limit):
        raise AskError.at("time-limit", Message("batch_sum.no_seconds"), Message("batch_sum.write_seconds"))
    asked: dict[str, object] = {name.replace("_", "-"): value for name, value in options.items() if value is not None}
    asked |= asked_lines(text)
    if out:
        asked["out"] = out
    if columns or example:
        return _told_of_lists(asked, sign_file, columns=columns)
    if csv_file is None:
        raise AskError.at("CSV", Message("batch.no_list"), Message("batch.name_a_list"))
    on_sheets = read_sheet(sheet, gap, clamp_border, turn=not no_turn, keep_grain=keep_grain)
    order = Order(
        csv_file=Path(csv_file),
        asked=asked,
        sign_file=Path(sign_file) if sign_file else None,
        sheet=on_sheets,
        copies=copies,
        encoding=encoding,
        worksheet=worksheet,
        ignore_columns=ignore_columns,
        quote=quote,
        labels=labels,
        files=files,
        begin=begin_of(resume=resume, fresh=fresh),
        rows=read_rows(rows),
        workers=workers,
        scheduler=scheduler,
        time_limit_s=time_limit,
        memory_limit_mb=memory_limit,
    )
    if proof:
        return _shown(order)
    try:
        try:
            carried = carry_out(order)
        except BatchThereError as error:
            carried = carry_out(replace(order, begin=_asked_to_go_on(error)))
    except KeyboardInterrupt:
        click.echo(
            Wording(language_or_english(asked.get("language")))(Message("batch_sum.stopped", go_on=GO_ON)), err=True
        )
        return 130
    finished, folder = carried.finished, carried.folder
    for line in failure_lines(finished, carried.language):
        click.echo(line, err=True)
    if as_json:
        with (folder / BATCH).open(encoding="utf-8") as report:
            for line in report:
                click.echo(line, nl=False)
    else:
        click.echo(summary_text(finished, folder, carried.language))
        click.echo(words_in(carried.language)("summary.care"))
    return 1 if finished.totals.failed else 0


def _told_of_lists(asked: Mapping[str, object], sign_file: str | None, *, columns: bool) -> int:
    """Print the columns that there are, or a list to begin from; the exit code."""
    from signgen.guide.batch_page import columns_page, example_list
    from signgen.pipeline import gather
    from signgen.spec.placeholders import placeholders

    if columns:
        for line in columns_page():
            click.echo(line)
        return 0
    base = gather(asked, Path(sign_file) if sign_file else None)
    click.echo(example_list(placeholders(base), base), nl=False)
    return 0


def _shown(order: Order) -> int:
    """Make the contact sheet, and say where it lies and which rows cannot be drawn; the exit code."""
    from signgen.batching.order import show
    from signgen.batching.summary import proof_lines

    shown = show(order)
    for tile in shown.failed[:MOST_TOLD]:
        click.echo(f"row {tile.row}: {tile.problem}", err=True)
    if len(shown.failed) > MOST_TOLD:
        click.echo(str(Message("proof.more_failed", count=len(shown.failed) - MOST_TOLD)), err=True)
    for line in proof_lines(shown):
        click.echo(line)
    return 1 if shown.failed else 0


def _asked_to_go_on(error: SignGenError) -> Literal["resume"]:
    """Ask the user who sits at a terminal whether to go on with the batch that is there. Raises: the error."""
    if not (sys.stdin.isatty() and sys.stderr.isatty()):
        raise error
    (problem,) = error.problems
    click.echo(str(problem.what), err=True)
    if not click.confirm(str(Message("batch.go_on_with_it")), err=True):
        raise error
    return "resume"
