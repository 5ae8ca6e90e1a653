"""`signgen batch`: a sign for every row of a list."""

from __future__ import annotations

from pathlib import Path

import click

from signgen.cli.make_command import key_options
from signgen.spec.keys import OUT


@click.command("batch")
@click.argument("csv_file", metavar="CSV")
@click.option("--from", "sign_file", metavar="FILE", help="A sign file (TOML) for what is alike in all rows.")
@click.option("--text", multiple=True, metavar="LINE", help="A line of lettering, as in '{name}'; once for each line.")
@key_options
@click.option("--copies", type=click.IntRange(1, 10_000), default=1, help="How many of each sign. Default: 1.")
@click.option("--encoding", metavar="NAME", help="Encoding of the list. Default: UTF-8, or what its mark says.")
@click.option("--ignore-columns", is_flag=True, help="Leave columns alone that mean nothing here.")
@click.option("--out", metavar=OUT.metavar, help="Folder to write into. Default: ./ and the list's name.")
def command(
    csv_file: str,
    sign_file: str | None,
    text: tuple[str, ...],
    copies: int,
    encoding: str | None,
    ignore_columns: bool,
    out: str | None,
    **options: str | None,
) -> int:
    """Make a sign for every row of a list: a folder each, as `signgen make` writes it.

    The first row of CSV names the columns. A column called like a key of the sign file gives that key, and any other
    column is used as {column} in the texts of the sign file. An empty cell leaves the key to the sign file. A bad row
    never stops the good ones; the exit code is 1 when there was one.
    """
    from signgen.batch.recipe import make_recipe
    from signgen.batch.run import run_batch
    from signgen.batch.table import open_table
    from signgen.pipeline import gather
    from signgen.spec.safe_name import safe_name

    asked: dict[str, object] = {name.replace("_", "-"): value for name, value in options.items() if value is not None}
    if text:
        asked["text"] = list(text)
    if out:
        asked["out"] = out
    base = gather(asked, Path(sign_file) if sign_file else None)
    table = open_table(Path(csv_file), encoding)
    recipe = make_recipe(table, base, copies=copies, ignore_columns=ignore_columns)
    folder = Path(str(base.get("out") or safe_name(Path(csv_file).stem)))
    failures = 0
    for outcome in run_batch(table, recipe, folder):
        if not outcome.made:
            failures += 1
            click.echo(f"row {outcome.row}: {outcome.field_named}: {outcome.message}", err=True)
    click.echo(f"{table.count - failures} of {table.count} signs are in {folder}.")
    return 1 if failures else 0
