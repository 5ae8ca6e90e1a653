"""`signgen lesson`: a lesson made of a sign."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from signgen.cli.tongue import language_option
from signgen.errors import said_in

if TYPE_CHECKING:
    from signgen.batching.layout import SheetHow
    from signgen.lesson.school_class import PupilsJob, Stint


@click.command("lesson")
@click.argument("what", metavar="FOLDER-or-SIGN-FILE")
@click.option("--out", required=True, metavar="DIR", help="Where to write pupil.html and teacher.html.")
@click.option("--pages", metavar="NAMES", help="Only these pages, as in coordinates,arcs,words.")
@click.option("--level", type=click.IntRange(1, 2), metavar="N", help="Only the pages of the first or second lesson.")
@click.option("--large", is_flag=True, help="In large print.")
@click.option("--easy-face", is_flag=True, help="In a face that is easy to tell apart (Atkinson Hyperlegible).")
@click.option("--faults", type=click.IntRange(1), metavar="N", help="Also N exercises in faults/: programs to mend.")
@click.option("--seed", type=int, default=1, show_default=True, metavar="S", help="Which faults: others for each S.")
@click.option("--class", "names", metavar="CSV", help="A sign, programs and lesson for each row's name; class.html.")
@click.option("--sheet", metavar="WIDTHxHEIGHT", help="With --class: also all signs together, on sheets of this size.")
@language_option
def command(
    what: str, out: str, pages: str | None, level: int | None, large: bool, easy_face: bool, faults: int | None,
    seed: int, names: str | None, sheet: str | None, language: str | None,
) -> int:  # fmt: skip
    """Make a lesson of a sign: pupil.html, a booklet to print and write into, and teacher.html with every answer, its
    tolerance and the line that it comes from.

    A FOLDER is what `signgen make` wrote; of a SIGN-FILE the sign is made into --out first. Everything asked is read
    from the programs on disk.
    """
    from signgen.cli.lesson_files import lesson_files
    from signgen.errors import AskError
    from signgen.files import write_files
    from signgen.lesson.pack import chosen_pages
    from signgen.messages import Message

    with said_in(language):
        chosen = chosen_pages(pages, level)
        if names is not None:
            return _whole_class(what, names, Path(out), language, chosen, sheet, large=large, easy=easy_face)
        if sheet is not None:
            raise AskError.at("sheet", Message("lesson.sheet_of_class"), Message("lesson.name_class"))
        made = lesson_files(what, Path(out), language, chosen, large=large, easy=easy_face, faults=faults, seed=seed)
        for folder in sorted({str(Path(name).parent) for name in made}):
            inside = {Path(name).name: content for name, content in made.items() if str(Path(name).parent) == folder}
            write_files(Path(out) / folder, inside, "out")
    click.echo("\n".join(str(Path(out) / name) for name in made if not name.startswith("faults/")))
    if faults:
        click.echo("\n".join(str(Path(out) / "faults" / str(n)) for n in range(1, faults + 1)))
    return 0


def _whole_class(
    what: str, names: str, out: Path, language: str | None, pages: Sequence[str], sheet: str | None, *, large: bool,
    easy: bool,
) -> int:  # fmt: skip
    """A folder for each pupil, `class.html` and `print-all.html`, and the sheets that they share if those are wanted; 1
    when something could not be made."""
    from signgen.batching.asked_sheet import read_sheet
    from signgen.errors import AskError
    from signgen.files import write_files, write_folder
    from signgen.lesson.school_class import class_page, made_for, print_all, pupils_in
    from signgen.messages import Message
    from signgen.pipeline import gather

    if not Path(what).is_file():
        raise AskError.at(what, Message("lesson.class_needs_file"), Message("lesson.class_name_file"))
    how = read_sheet(sheet, None, None, turn=True, keep_grain=False)
    made = []
    pupils = pupils_in(names, gather({}, Path(what)))
    for one in made_for(pupils, what, language, pages, large=large, easy=easy):
        made.append(one)
        if one.problem:
            click.echo(f"{one.pupil.name}: {one.problem}", err=True)
            continue
        write_folder(out / one.pupil.folder, one.files)
        write_files(out / one.pupil.folder, one.papers, "out")
        click.echo(str(out / one.pupil.folder))
    tongue = language or "en"
    good = [one for one in made if not one.problem]
    shared = _shared(good, what, out, language, how) if how and good else ()
    both = {
        "class.html": class_page(made, tongue, shared or ()).encode(),
        "print-all.html": print_all(made, tongue).encode(),
    }
    write_files(out, both, "out")
    click.echo(str(out / "class.html"))
    return 1 if any(one.problem for one in made) or shared is None else 0


def _shared(
    made: Sequence[PupilsJob], what: str, out: Path, language: str | None, how: SheetHow
) -> Sequence[Stint] | None:
    """The signs together on sheets, in `sheets/`; None where that went wrong, which is told."""
    from signgen.batching.order import Order, carry_out
    from signgen.batching.summary import failure_lines
    from signgen.errors import SignGenError
    from signgen.files import write_files
    from signgen.lesson.class_sheets import FOLDER, LIST, sheet_list, sheets_made

    write_files(out, {LIST: sheet_list([one.pupil for one in made]).encode()}, "out")
    asked: dict[str, object] = {"out": str(out / FOLDER), **({"language": language} if language else {})}
    order = Order(csv_file=out / LIST, asked=asked, sign_file=Path(what), sheet=how, begin="fresh")
    try:
        carried = carry_out(order)
        stints = sheets_made(carried.folder, made, language or "en")
    except SignGenError as error:
        click.echo("\n".join(error.lines()), err=True)
        return None
    for line in failure_lines(carried.finished, carried.language):
        click.echo(line, err=True)
    click.echo(str(out / FOLDER))
    return None if carried.finished.totals.failed else stints
