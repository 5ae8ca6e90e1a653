"""`signgen make`: one sign, from words on the command line or from a sign file."""

from __future__ import annotations

import contextlib
import gc
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

import click

from signgen.cli.completion import complete_file, complete_line
from signgen.cli.key_options import KeyCommand
from signgen.spec.keys import OUT

GARBAGE_EVERY = 20_000
"""Objects made between two looks for garbage. Nearly all that one sign makes lives as long as the process does."""


@contextlib.contextmanager
def rarely_tidied() -> Iterator[None]:
    """While it lasts, garbage is looked for a thirtieth as often as usual, which takes 0.03 s less of a sign. Only for
    a process that makes one: workers of a batch see to their own."""
    usual = gc.get_threshold()
    gc.set_threshold(GARBAGE_EVERY)
    try:
        yield
    finally:
        gc.set_threshold(*usual)


@click.command("make", cls=KeyCommand)
@click.argument("text", nargs=-1, shell_complete=complete_line)
@click.option(
    "--from",
    "sign_file",
    metavar="FILE",
    help="A sign file (TOML); options given here go before its keys.",
    shell_complete=complete_file,
)
@click.option("--out", metavar=OUT.metavar, help=OUT.full_help, shell_complete=complete_file)
@click.option("--json", "as_json", is_flag=True, help="Print the report instead of the summary.")
@click.option("--quiet", is_flag=True, help="Print nothing unless something is wrong.")
def command(
    text: tuple[str, ...],
    sign_file: str | None,
    out: str | None,
    as_json: bool,
    quiet: bool,
    **options: str | bool | None,
) -> None:
    """Make one sign: programs, setup sheet, pictures and report.

    Each TEXT is a line of lettering, and +KEY=VALUE behind it sets that line alone (font, cap-height, digit-height,
    height-ratio, align, arc ...), as in "17" +digit-height=80 "Damson Lane" +font=pacifico. Lengths are millimetres
    unless a unit is written (3.5in, 3 1/2 in). Nothing is written unless every program passes all checks.

    More: `signgen explain OPTION`, or a question in your own words; `signgen explain recipes` for whole commands.
    """
    with rarely_tidied():
        _make(text, sign_file, out, as_json, quiet, options)


def _make(
    text: tuple[str, ...],
    sign_file: str | None,
    out: str | None,
    as_json: bool,
    quiet: bool,
    options: Mapping[str, str | bool | None],
) -> None:
    from signgen.errors import said_in
    from signgen.pipeline import gather
    from signgen.spec.as_typed import named_as_typed
    from signgen.spec.said_units import units_of
    from signgen.spec.typed_lines import asked_lines

    asked: dict[str, object] = {name.replace("_", "-"): value for name, value in options.items() if value is not None}
    asked |= asked_lines(text)
    if out:
        asked["out"] = out
    whole = gather(asked, Path(sign_file) if sign_file else None)
    with said_in(whole.get("language"), units_of(whole)), named_as_typed(whole):
        _make_of(whole, sign_file, as_json, quiet)


def _make_of(whole: Mapping[str, object], sign_file: str | None, as_json: bool, quiet: bool) -> None:
    from signgen.cli.terminal import Waiting, tinted, wants_colour
    from signgen.files import must_have_lines, superseded, write_folder
    from signgen.job.summary import summary_text
    from signgen.pipeline import REPORT, make_job, read_sign
    from signgen.spec.safe_name import safe_name
    from signgen.words.words import words_in

    spec = read_sign(whole)
    words = words_in(spec.language, spec.units)
    folder = Path(str(whole.get("out") or safe_name(spec.text.lines[0])))
    if not whole.get("out"):
        must_have_lines(folder, spec.text.lines)
    with Waiting(quiet=quiet) as waiting:
        job = make_job(spec, lambda stage: waiting.stage(words(f"stage.{stage}")))
        write_folder(folder, job.files, superseded(sign_file, folder))
    if quiet:
        return
    if as_json:
        click.echo(job.files[REPORT].decode().rstrip())
        return
    summary = summary_text(job.facts, folder)
    if wants_colour(sys.stdout):
        summary = tinted(summary, words("summary.checks"), passed=job.facts.checks.passed)
    click.echo(summary, color=True)
