"""`signgen check`: programs on disk, judged."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from signgen.cli.completion import complete_file, complete_tool, completer
from signgen.cli.tongue import language_of_folders, language_option
from signgen.errors import said_in
from signgen.messages import Message
from signgen.spec.check_spec import OF_FIXINGS, OF_PROGRAMS

if TYPE_CHECKING:
    from signgen.job.judged import Judged


def key_options(function: click.decorators.FC) -> click.decorators.FC:
    """One option for everything that is asked about programs from elsewhere, and about what holds the board."""
    for option in reversed((*OF_PROGRAMS, *OF_FIXINGS)):
        function = click.option(
            f"--{option.name}", metavar=option.metavar, help=option.full_help, shell_complete=completer(option)
        )(function)
    return function


@click.command("check")
@click.argument("paths", nargs=-1, required=True, metavar="PATH...", shell_complete=complete_file)
@key_options
@click.option(
    "--tool",
    "tools",
    multiple=True,
    metavar="CUTTER",
    shell_complete=complete_tool,
    help="The cutter of each program, in the order of use: a name (signgen list tools), or a kind and its figures, "
    "as in 'end-mill 6' or 'v-bit 60 diameter 12 tip 0.2'.",
)
@click.option("--shop", metavar="FILE", help="Your own shop file, whose rows go before those that ship.")
@click.option("--picture", metavar="FILE", help="Draw what is left of the board, findings marked: a .png or .svg file.")
@click.option("--json", "as_json", is_flag=True, help="Print the findings as JSON.")
@click.option("--page", metavar="OUT.html", help="Write a page that plays the programs move by move.")
@click.option("--hint", type=click.IntRange(1, 3), metavar="N", help="Only a hint: 1 what to look at, 2 where, 3 what.")
@click.option("--all", "everything", is_flag=True, help="Of program files: all that was compared and found, unfolded.")
@click.option("--each", is_flag=True, help="Judge every program file by itself, and print a table.")
@language_option
def command(
    paths: tuple[str, ...], tools: tuple[str, ...], picture: str | None, as_json: bool, hint: int | None,
    everything: bool, each: bool, page: str | None, language: str | None, **options: str | None,
) -> int:  # fmt: skip
    """Judge programs as they stand on disk, before they are run.

    A PATH is a folder that `signgen make` wrote, whose programs are compared with the sign file beside them, or an
    RS-274 file from anywhere: then say which board lies on the machine (--stock) and which cutter is fitted (--tool).
    Several files are programs for one board, in the order to run them.

    Every program is read back and cut on a simulated board. The exit code is 5 when a check fails. Of a file that is
    wrong the likeliest cause comes first, and the rest is folded; --hint helps those who look for it themselves.
    """
    from signgen.job.verdict import verdict_text
    from signgen.words.words import words_in

    asked = {name.replace("_", "-"): value for name, value in options.items() if value is not None}
    with said_in(language or language_of_folders(paths)):
        judged = _each(paths, asked, tools) if each else _judged(paths, asked, tools)
        if picture is not None:
            _draw(judged, picture)
        if page is not None:
            _play(judged, page, language)
    if as_json:
        from signgen.lesson.checked_data import checked_data

        click.echo(json.dumps([checked_data(one, language or "en") for one in judged], indent=1))
    elif hint or each:
        from signgen.lesson.advice import hints, table
        from signgen.messages.wording import Wording

        wording = Wording(language or judged[-1].language)
        click.echo("\n".join(hints(one, hint, wording) for one in judged) if hint else table(judged, wording))
    else:
        from signgen.lesson.advice import advice
        from signgen.messages.wording import Wording

        wording = Wording(language or judged[-1].language)
        told = ["" if everything or one.case.drawn else advice(one, wording) for one in judged]
        click.echo("\n\n".join(text or verdict_text(one, language) for text, one in zip(told, judged, strict=True)))
        click.echo(f"\n{words_in(language or judged[-1].language)('summary.care')}")
    return 0 if all(one.report.passed for one in judged) else 5


def _each(paths: Sequence[str], asked: dict[str, str], tools: Sequence[str]) -> list[Judged]:
    """Every path by itself, with the same board and cutter."""
    return [one for path in paths for one in _judged([path], asked, tools)]


def _judged(paths: Sequence[str], asked: dict[str, str], tools: Sequence[str]) -> list[Judged]:
    """Folders one by one, all files together as the programs of one board."""
    from signgen.elsewhere import check_files
    from signgen.errors import AskError
    from signgen.folder import check_folder
    from signgen.spec.check_spec import read_fixing_spec

    of_fixings = {option.name for option in OF_FIXINGS}
    fixings = read_fixing_spec({name: value for name, value in asked.items() if name in of_fixings})
    asked = {name: value for name, value in asked.items() if name not in of_fixings}
    files = [path for path in paths if not os.path.isdir(path)]  # noqa: PTH112 (Path.is_dir raises for long names)
    if not files and (asked or tools):
        given = ", ".join([*asked, *(["tool"] if tools else [])])
        raise AskError.at(given, Message("checking.folder_knows"), Message("checking.leave_out_or_name_program"))
    judged = [check_folder(Path(path), fixings) for path in paths if path not in files]
    return [*judged, *([check_files(files, asked, tools, fixings)] if files else [])]


def _play(judged: Sequence[Judged], page: str, language: str | None) -> None:
    """Raises: AskError where there are several boards, or nothing moves."""
    from signgen.errors import AskError
    from signgen.files import write_files
    from signgen.playback.preview_html import case_html
    from signgen.words.words import words_in

    if len(judged) > 1:
        raise AskError.at("page", Message("page.several"), Message("page.one_by_one"))
    (one,) = judged
    title = ", ".join(Path(program.file).name for program in one.case.programs)
    made = case_html(one.case, title, words_in(language or one.language))
    write_files(Path(page).parent, {Path(page).name: made.encode()}, "page")


def _draw(judged: Sequence[Judged], picture: str) -> None:
    from signgen.errors import AskError
    from signgen.files import write_files
    from signgen.pictures.board_picture import board_png, board_svg, marks_of

    kind = Path(picture).suffix.lower()
    if kind not in (".png", ".svg"):
        raise AskError.at(
            "picture", Message("checking.neither_png_nor_svg", file=picture), Message("checking.name_either")
        )
    if len(judged) > 1:
        raise AskError.at("picture", Message("checking.several_boards"), Message("checking.one_by_one"))
    (one,) = judged
    marks = marks_of(one.case, one.report)
    content = board_png(one.case, marks) if kind == ".png" else board_svg(one.case, marks).encode()
    write_files(Path(picture).parent, {Path(picture).name: content}, "picture")
