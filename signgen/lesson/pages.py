"""The pages of a lesson: what a pupil reads and is asked, and what stands in the teacher's file for it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from signgen.lesson import drawings, numbers
from signgen.lesson.asked import asked, v_bit
from signgen.lesson.line_facts import LineFacts
from signgen.lesson.line_words import row_of, told
from signgen.lesson.questions import Question
from signgen.lesson.source import ProgramRead, Source
from signgen.lesson.spoilt import spoilt_lines
from signgen.markup.markup import Html, Part, el, joined
from signgen.messages import Message, Mm, Num, Sentence
from signgen.messages.values import Sides, Typed
from signgen.messages.wording import Value, Wording, has_words

FIRST = ("cover", "coordinates", "zero", "cutter", "reading", "words", "fault", "start")
SECOND = ("cover", "feeds", "depth", "passes", "arcs", "tabs", "own", "time", "thickness", "start")
PAGES = (
    "cover", "coordinates", "zero", "cutter", "feeds", "depth", "passes", "arcs", "tabs", "reading", "words", "fault",
    "own", "time", "thickness", "start",
)  # fmt: skip
READ_LINES, EVERY = 20, 3
"""Lines beside plain words, and which of them a pupil fills in: every third."""
OWN_LINES = 20

OWN = """\
G17 G21 G40 G49 G54 G80 G90 G94
G0 Z20
S14000 M3
G4 P4
G0 X20 Y20
G0 Z5
G1 Z-2 F300
G1 X60 F1000
G1 Y60
G1 X20
G1 Y20
G0 Z5
G0 X82 Y40
G1 Z-2 F300
G2 X78 Y40 I-2 J0 F1000
G2 X82 Y40 I2 J0
G0 Z20
G0 X0 Y0
M5
M2
"""
"""The square and the hole of the page `own`."""


class Maker(Struct, frozen=True, kw_only=True):
    """One file in one language: `answers` for the teacher's."""

    source: Source
    wording: Wording
    answers: bool
    questions: dict[str, tuple[Question, ...]]

    @classmethod
    def both(cls, source: Source, wording: Wording) -> tuple[Maker, Maker]:
        """The pupil's and the teacher's, of the same questions."""
        questions = asked(source)
        pupil, teacher = (
            cls(source=source, wording=wording, answers=answers, questions=questions) for answers in (False, True)
        )
        return pupil, teacher

    def say(self, key: str, **values: Value) -> str:
        return self.wording(Message(f"lesson.{key}", **values))

    def rows(self, key: str, **values: Value) -> list[str]:
        """A message of several lines."""
        return self.say(key, **values).split("|")

    def page(self, name: str) -> Html | None:
        """None where this sign has nothing of it: no tabs, no V-bit."""
        body = _BODIES[name](self)
        if body is None:
            return None
        intro = None
        if has_words(f"lesson.intro.{name}"):
            under = numbers.levels(_deepest_cut(self.source))[1] if name == "passes" else ""
            intro = el(
                "p", self.say(f"intro.{name}", thickness=Mm(self.source.spec.thickness_mm, 2, True), under=under)
            )
        return el("section", el("h2", self.say(f"page.{name}")), intro, body, self.asks(name), id=name)

    def asks(self, name: str) -> Html | None:
        questions = self.questions.get(name, ())
        if not questions:
            return None
        return el("ol", *(self.ask(number, question) for number, question in enumerate(questions, 1)), cls="ask")

    def ask(self, number: int, question: Question) -> Html:
        text = el("span", f"{number}. {self.wording(question.ask)}")
        if self.answers:
            where = self.wording(question.source)
            return el("li", text, el("span", self.wording(question.answer), el("small", where), cls="found"))
        return el("li", text, el("span", self.wording(question.unit_said), cls="blank"))


def _deepest_cut(source: Source) -> ProgramRead:
    return max(source.programs, key=lambda program: len(numbers.levels(program)[0]))


def _cover(maker: Maker) -> Html:
    source, say = maker.source, maker.say
    spec = source.spec
    about = say(
        "about", size=Sides((spec.width_mm, spec.height_mm), 1, True), thickness=Mm(spec.thickness_mm, 2, True),
        material=spec.material.label, programs=tuple(dict.fromkeys(program.file for program in source.programs)),
    )  # fmt: skip
    fields = [el("div", say(name), cls="field") for name in ("name", "class", "date")]
    signs = [el("div", say(name), cls="field") for name in ("pupil_signs", "teacher_signs", "date")]
    return joined(
        el("p", about), el("p", say("cover_does")),
        None if source.unit_mm == 1.0 else el("p", say("cover_inches")),
        None if maker.answers else el("div", *fields, cls="fields"),
        None if maker.answers else el("p", say("sign_off")),
        None if maker.answers else el("div", *signs, cls="fields"),
    )  # fmt: skip


def _coordinates(maker: Maker) -> Html:
    source = maker.source
    holes = [hole for program in source.programs for hole in numbers.holes(source, program)]
    return drawings.sign_on_grid(source, holes, maker.say("page.coordinates"), maker.wording)


def _zero(maker: Maker) -> Html:
    source, (x, y) = maker.source, maker.source.zero_on_board_mm
    top, bottom = (Typed(z / source.unit_mm, 4, True) for z in (source.top_mm, source.bottom_mm))
    height = maker.say("zero_bottom", top=top) if source.bottom_mm == 0 else maker.say("zero_top", bottom=bottom)
    where = maker.say("zero_where", x=Mm(x, 2, True), y=Mm(y, 2, True), size=Sides(source.board_mm, 1, True))
    title, wording = maker.say("page.zero"), maker.wording
    face = (drawings.board_and_zero(source, title, wording), el("p", where), el("p", height))
    if not any(program.behind for program in source.programs):
        return joined(*face)
    turned = drawings.board_and_zero(source, maker.say("zero_behind_title"), wording, behind=True)
    return joined(*face, turned, el("p", maker.say("zero_behind")))


def _cutter(maker: Maker) -> Html:
    pictures = [
        el(
            "figure",
            drawings.cutter_side(program.tool, maker.wording(program.called), maker.wording),
            el("figcaption", f"{maker.wording(program.called)}: {maker.wording(program.tool.called)}"),
        )
        for program in maker.source.programs
    ]
    return el("div", *pictures, cls="row")


def _plain(maker: Maker) -> Html:
    return joined()


def _feeds(maker: Maker) -> Html:
    material = maker.source.spec.material.label
    yours = [
        el("li", maker.say("yours", file=program.called, tool=program.tool.called, material=material))
        for program in maker.source.programs
    ]
    return el("ul", *yours)


def _depth(maker: Maker) -> Html | None:
    program = v_bit(maker.source)
    if program is None or not maker.questions["depth"]:
        return None
    deep = maker.questions["depth"][0].value
    return drawings.groove(program.tool, deep, maker.say("page.depth"), maker.wording)


def _passes(maker: Maker) -> Html | None:
    levels, _ = numbers.levels(_deepest_cut(maker.source))
    if len(levels) < 2:
        return None
    return drawings.passes_side(maker.source, levels, maker.say("page.passes"), maker.wording)


def _arcs(maker: Maker) -> Html | None:
    rows = _arc_rows(maker)
    if not rows:
        return None
    pictures = [
        el(
            "figure",
            drawings.arc_picture(row, row.step.text, maker.wording),
            el("figcaption", el("code", row.step.text)),
        )
        for row in rows
    ]
    return el("div", *pictures, cls="row")


def _arc_rows(maker: Maker) -> list[LineFacts]:
    rows: list[LineFacts] = []
    for question in maker.questions["arcs"]:
        if question.kind == "radius":
            rows += [
                row
                for program in maker.source.programs
                for row in program.lines
                if program.file == question.file and row.step.number == question.line
            ]
    return rows


def _tabs(maker: Maker) -> Html | None:
    found = numbers.tabs(maker.source, maker.source.programs[-1])
    if not found:
        return None
    return drawings.tabs_from_above(maker.source, found, maker.say("page.tabs"), maker.wording)


def lines_to_read(source: Source) -> list[tuple[Sentence, LineFacts]]:
    """The first line of each make-up of words, in the order of the programs, filled up with the lines after them."""
    rows = [(program.called, row) for program in source.programs for row in program.lines if row.step.words]
    seen: set[frozenset[str]] = set()
    chosen = []
    for n, (_, row) in enumerate(rows):
        if frozenset(row.step.words) not in seen:
            seen.add(frozenset(row.step.words))
            chosen.append(n)
    chosen = chosen[:READ_LINES]
    chosen += [n for n in range(len(rows)) if n not in chosen][: READ_LINES - len(chosen)]
    return [rows[n] for n in sorted(chosen)]


def _reading(maker: Maker) -> Html:
    rows, shown = [], ""
    for n, (called, row) in enumerate(lines_to_read(maker.source)):
        if (file := maker.wording(called)) != shown:
            rows.append(el("tr", el("th", file, colspan="3", scope="colgroup")))
            shown = file
        empty = n % EVERY == EVERY - 1 and not maker.answers
        does = " ".join(maker.wording(sentence) for sentence in told(row))
        rows.append(
            el(
                "tr",
                el("td", str(row.step.number)),
                el("td", el("code", row.step.text)),
                el("td", "" if empty else does, cls="empty" if empty else None),
            )
        )
    return _table(maker, ("line", "text", "does"), rows)


def _table(maker: Maker, columns: Sequence[str], rows: Sequence[Html]) -> Html:
    head = el("tr", *(el("th", maker.say(f"column_{name}"), scope="col") for name in columns))
    return el("table", el("thead", head), el("tbody", *rows))


def _words(maker: Maker) -> Html:
    rows = [
        el("tr", el("td", el("code", name)), el("td", maker.wording(Message(f"rs.{row_of(name)}.short"))))
        for name in numbers.words_used(maker.source.programs)
    ]
    return _table(maker, ("word", "meaning"), rows)


def _fault(maker: Maker) -> Html:
    parts: list[Part] = []
    for one in spoilt_lines(maker.source):
        parts += [el("p", maker.say("fault_stands", file=one.file, line=one.line)), el("pre", one.spoilt)]
        if maker.answers:
            parts.append(el("p", maker.say("answer", answer=one.right), cls="answer"))
        else:
            parts += [el("p", maker.say("write")), el("div", el("div", ""), cls="lines")]
    return joined(*parts)


def _own(maker: Maker) -> Html:
    target = drawings.own_target(maker.say("page.own"), maker.wording)
    if maker.answers:
        return joined(target, el("p", maker.say("own_answer")), el("pre", OWN))
    return joined(target, el("div", *(el("div", "") for _ in range(OWN_LINES)), cls="lines"))


def _time(maker: Maker) -> Html:
    return joined(
        *(
            el("p", maker.say("time_told", file=program.called, minutes=Num(program.minutes, 1)))
            for program in maker.source.programs
        )
    )


def _start(maker: Maker) -> Html:
    return el("ul", *(el("li", row) for row in maker.rows("start_list")), cls="ticks")


_BODIES: dict[str, Callable[[Maker], Html | None]] = {
    "cover": _cover, "coordinates": _coordinates, "zero": _zero, "cutter": _cutter, "feeds": _feeds, "depth": _depth,
    "passes": _passes, "arcs": _arcs, "tabs": _tabs, "reading": _reading, "words": _words, "fault": _fault,
    "own": _own, "time": _time, "thickness": _plain, "start": _start,
}  # fmt: skip
