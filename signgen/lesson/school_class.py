"""A class: a sign, a lesson and programs for each pupil, and a page for whoever runs the day."""

from __future__ import annotations

import csv
import io
import math
import re
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from types import MappingProxyType

from msgspec import Struct

from signgen.errors import AskError, Problem, SignGenError
from signgen.lesson.pack import PUPIL, pack
from signgen.lesson.source import Source, source_of
from signgen.markup.markup import el, raw
from signgen.markup.page import page
from signgen.messages import Message
from signgen.messages.values import Sides
from signgen.messages.wording import Wording
from signgen.pipeline import gather, make_job, read_sign
from signgen.spec.keys import KEY_BY_NAME
from signgen.spec.placeholders import FIRST_ROW, column_key, counted, filled_of, has_placeholders, placeholders
from signgen.spec.safe_name import safe_name
from signgen.user_file import read_bytes
from signgen.words.words import words_in

NAME, TEXT = "name", "text"
MOST_CSV_BYTES, MOST_PUPILS = 1_000_000, 60
WORKERS = 2
"""Processes at once: those of a small computer; more are not faster on two cores."""
CHANGE_MIN = 4.0
"""Minutes that a fitting costs: stop, change, set Z (common practice)."""


class Pupil(Struct, frozen=True, kw_only=True):
    """One row of the list: the name, the folder, what this sign has of its own, and the same as `cells` of a list for a
    batch with the same sign file, in which placeholders want their columns."""

    name: str
    folder: str
    asked: dict[str, object]
    cells: dict[str, str] = {}


class PupilsJob(Struct, frozen=True, kw_only=True):
    """What came of one: the job's files and the lesson's by name, and figures for the class page, or why there are
    none."""

    pupil: Pupil
    files: dict[str, bytes] = {}
    papers: dict[str, bytes] = {}
    text: str = ""
    board_mm: tuple[float, float] = (0.0, 0.0)
    travel_mm: tuple[float, float] = (0.0, 0.0)
    cutters: tuple[tuple[str, str, float], ...] = ()
    problem: str = ""


def pupils_in(path: str, base: Mapping[str, object] = MappingProxyType({})) -> tuple[Pupil, ...]:
    """The rows of a list for a class. `base`: the sign file; where it has placeholders, as a batch's has, its words
    with the row's cells in them are the sign's, else the column text or the name.

    Raises: AskError for a list that has no names, lacks a column that a placeholder wants, or names two pupils alike.
    """
    raw_text = read_bytes(path, path, MOST_CSV_BYTES).decode("utf-8-sig", "replace")
    delimiter = ";" if raw_text.split("\n", 1)[0].count(";") > raw_text.split("\n", 1)[0].count(",") else ","
    rows = list(csv.DictReader(io.StringIO(raw_text), delimiter=delimiter))
    if not rows or NAME not in rows[0] or len(rows) > MOST_PUPILS:
        raise AskError.at(
            path, Message("lesson.no_names", most=MOST_PUPILS), Message("lesson.write_names")
        )  # fmt: skip
    columns = {column_key(name) for name in rows[0] if name}
    wanted = placeholders(base)
    problems = [
        Problem(where=path, what=Message("lesson.no_column", column=name), remedy=Message("lesson.write_column"))
        for name in wanted
        if column_key(name) not in columns
    ]
    found: list[Pupil] = []
    used: set[str] = set()
    for number, row in enumerate(rows, FIRST_ROW):
        cells = {column_key(key): value.strip() for key, value in row.items() if key and isinstance(value, str)}
        name = cells.get(NAME, "")
        folder = safe_name(name)
        if not name or folder in used:
            what = Message("lesson.name_again" if name else "lesson.name_empty", line=number, name=name)
            problems.append(Problem(where=path, what=what, remedy=Message("lesson.write_names")))
        used.add(folder)
        if not problems:
            found.append(_pupil(name, folder, number, cells, base, {column_key(each) for each in wanted}))
    if problems:
        raise AskError(problems)
    return tuple(found)


def _pupil(
    name: str, folder: str, number: int, cells: Mapping[str, str], base: Mapping[str, object], wanted: set[str]
) -> Pupil:  # fmt: skip
    def place(column: str) -> str:
        return cells[column_key(column)] if column_key(column) in cells else counted(column, number)

    is_key = {key: key in KEY_BY_NAME or key not in {*wanted, NAME} for key in cells}
    own: dict[str, object] = {key: cell for key, cell in cells.items() if cell and is_key[key]}
    if TEXT in own:
        own[TEXT] = [line.strip() for line in str(own[TEXT]).split("|")]
    elif has_placeholders(base):
        filled = ((key, value, filled_of(key, value, place)) for key, value in base.items())
        own = {key: value for key, before, value in filled if value != before and key not in own} | own
    else:
        own[TEXT] = [name]
    said = {key: cells.get(key, "") for key in wanted} | {key: cell for key, cell in cells.items() if is_key[key]}
    lines = own.get(TEXT)
    if isinstance(lines, list):
        said[TEXT] = "\n".join(map(str, lines))  # a cell of several lines, as spreadsheets have them
    return Pupil(name=name, folder=folder, asked=own, cells=said)


def made_for(
    pupils: Sequence[Pupil], sign_file: str, language: str | None, pages: Sequence[str], *, large: bool, easy: bool
) -> Iterator[PupilsJob]:  # fmt: skip
    """In the order of the list; a bad row never stops the others."""
    jobs = [(pupil, sign_file, language, tuple(pages), large, easy) for pupil in pupils]
    with ProcessPoolExecutor(max_workers=WORKERS) as pool:
        yield from pool.map(_one, jobs)


def _one(job: tuple[Pupil, str, str | None, tuple[str, ...], bool, bool]) -> PupilsJob:
    pupil, sign_file, language, pages, large, easy = job
    try:
        spoken = {"language": language} if language else {}
        spec = read_sign(gather(spoken | pupil.asked, Path(sign_file)))
        files = dict(make_job(spec).files)
        with tempfile.TemporaryDirectory() as folder:
            for name, content in files.items():
                (Path(folder) / name).write_bytes(content)
            source = source_of(Path(folder))
        papers = pack(source, language or spec.language, pages, large=large, easy=easy)
    except SignGenError as error:
        return PupilsJob(pupil=pupil, problem=" ".join(error.lines()))
    return PupilsJob(
        pupil=pupil,
        files=files,
        papers=papers,
        text=source.title,
        board_mm=source.board_mm,
        travel_mm=(spec.machine.travel_mm[0], spec.machine.travel_mm[1]),
        cutters=tuple(_cutters(source, language or spec.language)),
    )


def _cutters(source: Source, language: str) -> Iterator[tuple[str, str, float]]:
    wording = Wording(language)
    for program in source.programs:
        yield program.file, wording(program.tool.called), program.minutes


class Load(Struct, frozen=True, kw_only=True):
    """Boards that lie on the machine at once."""

    made: tuple[PupilsJob, ...]

    @property
    def cutters(self) -> tuple[str, ...]:
        """In the order in which they are used; those that several need, once."""
        return tuple(dict.fromkeys(label for one in self.made for _, label, _ in one.cutters))

    def minutes(self, label: str) -> float:
        return sum(minutes for one in self.made for _, other, minutes in one.cutters if other == label)


def loads(made: Sequence[PupilsJob]) -> tuple[Load, ...]:
    """In the order of the list, as many as the machine's travel takes side by side, each on a board of the largest's
    size."""
    good = [one for one in made if not one.problem]
    if not good:
        return ()
    wide, high = (max(one.board_mm[axis] for one in good) for axis in (0, 1))
    travel = good[0].travel_mm
    at_once = max(1, math.floor(travel[0] / wide) * math.floor(travel[1] / high))
    return tuple(Load(made=tuple(good[n : n + at_once])) for n in range(0, len(good), at_once))


class Stint(Struct, frozen=True, kw_only=True):
    """What is on the machine at once: `head` says whose boards or which sheet, `fittings` each cutter in turn."""

    head: Message
    fittings: tuple[Message, ...]


def side_by_side(made: Sequence[PupilsJob], language: str) -> tuple[Stint, ...]:
    """Boards next to each other, as many as the machine takes."""
    words = words_in(language)
    return tuple(
        Stint(
            head=Message("lesson.class_load", names=tuple(one.pupil.name for one in run.made)),
            fittings=tuple(
                Message("lesson.class_fit", cutter=label, time=words.span(run.minutes(label))) for label in run.cutters
            ),
        )
        for run in loads(made)
    )


def class_page(made: Sequence[PupilsJob], language: str, shared: Sequence[Stint] = ()) -> str:
    """Who has which board, what is fitted when, and what went wrong. `shared`: the sheets on which all lie together;
    else each has a board of its own."""
    wording, words = Wording(language), words_in(language)

    def say(key: str, **values: str | int) -> str:
        return wording(Message(f"lesson.class_{key}", **values))

    rows = [
        el(
            "tr",
            el("td", one.pupil.name),
            el("td", one.text or "-"),
            el("td", _board(one, wording)),
            el("td", ", ".join(f"{file}: {label}" for file, label, _ in one.cutters) or one.problem),
            el("td", words.span(sum(minutes for _, _, minutes in one.cutters)) if one.cutters else "-"),
            el("td", "", cls="tick"),
        )
        for one in made
    ]
    columns = ("name", "sign", "board", "programs", "time", "done")
    head = el("tr", *(el("th", say(f"column_{name}"), scope="col") for name in columns))
    stints = shared or side_by_side(made, language)
    alone, together = sum(len(one.cutters) for one in made), sum(len(stint.fittings) for stint in stints)
    day = [
        el("li", wording(stint.head), el("ul", *(el("li", wording(fitting)) for fitting in stint.fittings)))
        for stint in stints
    ]
    fewer = {"alone": alone, "shared": together, "minutes": round((alone - together) * CHANGE_MIN)}
    saved = wording(Message("lesson.class_saved_sheets", **fewer) if shared else Message("lesson.class_saved", **fewer))
    title = say("title", count=len(made))
    body = el(
        "main", el("h1", title), el("table", el("thead", head), el("tbody", *rows)),
        el("section", el("h2", say("day")), el("p", saved), el("ol", *day), el("p", say("care"))),
    )  # fmt: skip
    return page(title, STYLE, body, language=language, policy="default-src 'none'; style-src 'unsafe-inline'")


def _board(one: PupilsJob, wording: Wording) -> str:
    return wording(Message("lesson.class_board", size=Sides(one.board_mm, 1, True))) if not one.problem else "-"


STYLE = raw(
    "@page{margin:14mm}body{font:11pt/1.4 'Liberation Sans','DejaVu Sans',Arial,sans-serif;color:#111;margin:0}"
    "main{max-width:190mm;margin:6mm auto;padding:0 4mm}h1{font-size:1.5em}table{border-collapse:collapse;width:100%}"
    "th,td{text-align:left;vertical-align:top;padding:1mm 2mm 1mm 0;border-bottom:.5pt solid #888}"
    "td{overflow-wrap:anywhere}th{white-space:nowrap}"
    "tr,li{break-inside:avoid}td.tick{border:.8pt solid #111;min-width:9mm}@media print{main{max-width:none;margin:0}}"
)


def print_all(made: Sequence[PupilsJob], language: str) -> str:
    """Every pupil's booklet in one file, each from a new page."""
    texts = [one.papers[PUPIL].decode() for one in made if not one.problem]
    if not texts:
        return ""
    head, _, _ = texts[0].partition("<body>")
    title = Wording(language)(Message("lesson.class_title", count=len(texts)))
    head = head[: head.index("<title>") + 7] + title + head[head.index("</title>") :]
    head = head.replace("</style>", "\nmain + main { break-before: page; }\n</style>")
    bodies = [text.partition("<body>")[2].partition("</body>")[0] for text in texts]
    return f"{head}<body>{''.join(_without_ids(body) for body in bodies)}</body></html>\n"


def _without_ids(body: str) -> str:
    """Names of sections may stand only once in a page."""
    return re.sub(r'(<section) id="[a-z]+"', r"\1", body)
