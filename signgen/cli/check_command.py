"""`signgen check`: programs on disk, judged."""

from __future__ import annotations

import json
from pathlib import Path

import click


@click.command("check")
@click.argument("paths", nargs=-1, required=True, metavar="PATH...")
@click.option("--json", "as_json", is_flag=True, help="Print the findings as JSON.")
def command(paths: tuple[str, ...], as_json: bool) -> int:
    """Judge the programs in folders that `signgen make` wrote, against the sign file beside them.

    Every program is read back and cut on a simulated board; the exit code is 5 when a check fails.
    """
    from signgen.pipeline import check_folder
    from signgen.sheet.verdict import verdict_data, verdict_text

    reports = {path: check_folder(Path(path)) for path in paths}
    if as_json:
        click.echo(json.dumps([verdict_data(path, report) for path, report in reports.items()], indent=1))
    else:
        for path, report in reports.items():
            click.echo(verdict_text(path, report))
    return 0 if all(report.passed for report in reports.values()) else 5
