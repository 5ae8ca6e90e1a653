"""The contact sheet: every sign of a list as it will look, for somebody to look through and sign before any is made.

Signs are drawn and their cutters chosen, as `make` does it; programs are made, and proved, when the batch is.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from pathlib import Path

from msgspec import Struct

from signgen.batching.outcome import failed
from signgen.batching.pool import Pool, PoolLimits
from signgen.batching.progress import Progress
from signgen.batching.proof_page import proof_pages
from signgen.batching.recipe import Recipe, Task
from signgen.batching.rows_asked import RowsAsked
from signgen.batching.shop import shop_of
from signgen.batching.table import Table
from signgen.batching.tile import Tile
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.errors import AskError, SignGenError, said_in
from signgen.files import write_file
from signgen.messages import Message
from signgen.messages.wording import Wording
from signgen.operations.choose import choose_cutters
from signgen.pictures.plain_picture import plain_svg
from signgen.pipeline import read_sign
from signgen.spec.as_typed import named_as_typed
from signgen.spec.paint import paint_rgb
from signgen.spec.sign_spec import SignSpec

PROOF, PROOF_PDF = "proof.html", "proof.pdf"
MARK = '<meta name="generator" content="signgen proof"'
"""In the head of every contact sheet: no other file of its name is overwritten."""
_HEAD_BYTES = 2000


class Proved(Struct, frozen=True, kw_only=True):
    """A contact sheet: how many signs it shows and how many cannot be drawn; `no_pdf` says why there is no PDF."""

    path: Path
    shown: int
    failed: tuple[Tile, ...]
    no_pdf: str


def make_proof(
    table: Table, recipe: Recipe, out: Path, rows: RowsAsked | None, workers: int, limits: PoolLimits
) -> Proved:
    """Write the contact sheet of a list, or of some of its rows, as a page and as a PDF.

    Raises: AskError when the folder cannot be written or holds such a file that is not ours.
    """
    _must_be_ours(out)
    if rows:
        rows.must_be_in(table)
    language = str(recipe.base.get("language") or "en")
    tiles = sorted(_tiles(table, recipe, rows, workers, limits, language), key=lambda tile: tile.row)
    page = proof_pages(table.path.name, tiles, language)
    write_file(out / PROOF, (part.encode() for part in page))
    (out / PROOF_PDF).unlink(missing_ok=True)
    pdf, no_pdf = _pdf("".join(page))
    if pdf:
        write_file(out / PROOF_PDF, [pdf])
    bad = tuple(tile for tile in tiles if tile.problem)
    return Proved(path=out / PROOF, shown=len(tiles) - len(bad), failed=bad, no_pdf=no_pdf)


def _must_be_ours(out: Path) -> None:
    """Raises: AskError."""
    path = out / PROOF
    mine = path.is_file() and MARK.encode() in path.read_bytes()[:_HEAD_BYTES]
    for name in (PROOF, PROOF_PDF):
        if (out / name).exists() and not mine:
            raise AskError.at("out", Message("batch.not_ours", path=str(out / name)), Message("files.move_the_file"))


def _tiles(
    table: Table, recipe: Recipe, rows: RowsAsked | None, workers: int, limits: PoolLimits, language: str
) -> Iterator[Tile]:
    bad: list[Tile] = []
    count = table.count if rows is None else sum(record.row in rows for record in table.rows())
    progress = Progress(count, "rows")

    def tasks() -> Iterator[Task]:
        for record in table.rows():
            if rows is not None and record.row not in rows:
                continue
            try:
                with said_in(recipe.base.get("language")):
                    task = recipe.task(record)
                yield task
            except SignGenError as error:
                bad.append(Tile(row=record.row, words=_cells(record.cells), problem=failed(record.row, error).message))

    with Pool(partial(tile_of, language=language), max(1, min(workers, count)), limits) as pool:
        for done in pool.run(tasks()):
            tile = done.result or Tile(row=done.item.row, words=done.item.folder, problem=done.lost)
            progress.add(failed=bool(tile.problem))
            yield tile
    progress.close()
    yield from bad


def _cells(cells: tuple[str, ...]) -> str:
    return " / ".join(cell.strip() for cell in cells if cell.strip())


def tile_of(task: Task, language: str) -> Tile:
    """What the contact sheet shows of a row."""
    try:
        with said_in(task.asked.get("language")), named_as_typed(task.asked):
            spec = read_sign(task.asked, shop_of)
            drawing = draw(spec)
            choose_cutters(drawing, spec)
    except SignGenError as error:
        words = " / ".join(map(str, _lines(task)))
        return Tile(row=task.row, words=words, copies=task.copies, problem=failed(task.row, error).message)
    say = Wording(language)
    return Tile(
        row=task.row,
        words=" / ".join(spec.text.lines),
        copies=task.copies,
        size_mm=(drawing.width_mm, drawing.height_mm, drawing.thickness_mm),
        material=say(spec.material.label),
        warnings=tuple(say(warning) for warning in drawing.warnings),
        picture=_picture(drawing, spec),
    )


def _lines(task: Task) -> list[object]:
    text = task.asked.get("text")
    return list(text) if isinstance(text, list | tuple) else [text or task.folder]


def _picture(drawing: Drawing, spec: SignSpec) -> str:
    paint = paint_rgb(spec.paint, "paint") if spec.paint else None
    return plain_svg(drawing, spec.material, paint, " / ".join(spec.text.lines))


def _pdf(page: str) -> tuple[bytes, str]:
    """The page as a PDF, or why there is none."""
    from signgen.pages.setup_pdf import plain_pdf

    try:
        return plain_pdf(page), ""
    except AskError as error:
        return b"", str(error.problems[0])
