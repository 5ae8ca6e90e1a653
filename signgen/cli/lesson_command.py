"""`signgen lesson`: a lesson made of a sign."""

from __future__ import annotations

from pathlib import Path

import click

from signgen.cli.tongue import language_option
from signgen.errors import said_in


@click.command("lesson")
@click.argument("what", metavar="FOLDER-or-SIGN-FILE")
@click.option("--out", required=True, metavar="DIR", help="Where to write pupil.html and teacher.html.")
@click.option("--pages", metavar="NAMES", help="Only these pages, as in coordinates,arcs,words.")
@click.option("--level", type=click.IntRange(1, 2), metavar="N", help="Only the pages of the first or second lesson.")
@click.option("--large", is_flag=True, help="In large print.")
@click.option("--easy-face", is_flag=True, help="In a face that is easy to tell apart (Atkinson Hyperlegible).")
@click.option("--faults", type=click.IntRange(1), metavar="N", help="Also N exercises in faults/: programs to mend.")
@click.option("--seed", type=int, default=1, show_default=True, metavar="S", help="Which faults: others for each S.")
@language_option
def command(
    what: str, out: str, pages: str | None, level: int | None, large: bool, easy_face: bool, faults: int | None,
    seed: int, language: str | None,
) -> None:  # fmt: skip
    """Make a lesson of a sign: pupil.html, a booklet to print and write into, and teacher.html with every answer, its
    tolerance and the line that it comes from.

    A FOLDER is what `signgen make` wrote; of a SIGN-FILE the sign is made into --out first. Everything asked is read
    from the programs on disk.
    """
    from signgen.cli.lesson_files import lesson_files
    from signgen.files import write_files
    from signgen.lesson.pack import chosen_pages

    with said_in(language):
        chosen = chosen_pages(pages, level)
        made = lesson_files(what, Path(out), language, chosen, large=large, easy=easy_face, faults=faults, seed=seed)
        for folder in sorted({str(Path(name).parent) for name in made}):
            inside = {Path(name).name: content for name, content in made.items() if str(Path(name).parent) == folder}
            write_files(Path(out) / folder, inside, "out")
    click.echo("\n".join(str(Path(out) / name) for name in made if not name.startswith("faults/")))
    if faults:
        click.echo("\n".join(str(Path(out) / "faults" / str(n)) for n in range(1, faults + 1)))
