"""A lesson as two files: `pupil.html` to write into, `teacher.html` with every answer."""

from __future__ import annotations

import base64
from collections.abc import Mapping, Sequence
from importlib.resources import files

from signgen.errors import AskError
from signgen.lesson.pages import FIRST, PAGES, SECOND, Maker
from signgen.lesson.source import Source
from signgen.markup.markup import Html, Part, el, raw, unparted
from signgen.markup.page import page
from signgen.messages import Message, Mm
from signgen.messages.values import Sides
from signgen.messages.wording import Wording

PUPIL, TEACHER = "pupil.html", "teacher.html"
LEVELS: Mapping[int, Sequence[str]] = {1: FIRST, 2: SECOND}
EASY_FACE = "atkinson-hyperlegible-next/AtkinsonHyperlegibleNext_400Regular.ttf"
POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:"


def chosen_pages(named: str | None, level: int | None) -> tuple[str, ...]:
    """Names of pages in their order. Raises: AskError for a name that no page has."""
    names = (
        [name.strip() for name in named.split(",") if name.strip()] if named else list(LEVELS.get(level or 0, PAGES))
    )
    for name in names:
        if name not in PAGES:
            raise AskError.at(
                "pages", Message("lesson.no_page", name=name), Message("lesson.name_page", names=tuple(PAGES))
            )  # fmt: skip
    return tuple(name for name in PAGES if name in names)


def pack(
    source: Source, language: str, pages: Sequence[str] = PAGES, *, large: bool = False, easy: bool = False,
    extra: Sequence[Html] = (),
) -> dict[str, bytes]:  # fmt: skip
    """Both files. `extra`: what the teacher's file has behind the answers."""
    wording = Wording(language, gap="\u00a0")
    style = files("signgen.lesson").joinpath("lesson.css").read_text("utf-8") + (_face() if easy else "")
    cls = " ".join(name for name, is_on in (("large", large), ("easy", easy)) if is_on) or None
    made = {}
    for name, maker in zip((PUPIL, TEACHER), Maker.both(source, wording), strict=True):
        answers = maker.answers
        title = maker.say("teacher_title" if answers else "pupil_title", title=source.title)
        body: list[Part] = [el("h1", title), *(_front(maker) if answers else ())]
        body += [each for each in map(maker.page, pages) if each is not None]
        body += extra if answers else ()
        document = page(title, style, el("main", *body, cls=cls), language=wording.language.code, policy=POLICY)
        made[name] = unparted(document).encode()
    return made


def _front(maker: Maker) -> list[Html]:
    """Timetable, materials, outcomes and what to look for."""
    source = maker.source
    materials = maker.rows(
        "materials_rows", board=Sides(source.board_mm, 1, True), thickness=Mm(source.spec.thickness_mm, 2, True),
        material=source.spec.material.label, cutters=tuple(program.tool.called for program in source.programs),
        collets=tuple(sorted({f"{program.tool.shank_mm:g}" for program in source.programs})),
    )  # fmt: skip
    parts = [el("p", maker.say("teacher_about"))]
    for name, rows in (
        ("timetable", maker.rows("timetable_rows")), ("materials", materials),
        ("outcomes", maker.rows("outcomes_rows")), ("watch", maker.rows("watch_rows")),
    ):  # fmt: skip
        parts.append(el("section", el("h2", maker.say(name)), el("ul", *(el("li", row) for row in rows)), id=name))
    return parts


def _face() -> str:
    """The face for easy reading, in the page itself."""
    data = base64.b64encode(files("signgen.fonts_open").joinpath(EASY_FACE).read_bytes()).decode("ascii")
    return raw(f'\n@font-face {{ font-family: "Lesson"; src: url(data:font/ttf;base64,{data}); }}\n')
