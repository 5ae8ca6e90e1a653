"""The setup sheet answers every question, in order, and is safe to open."""

from __future__ import annotations

from collections.abc import Callable
from html.parser import HTMLParser

import pytest
from msgspec.structs import replace

from signgen.checks.check import CheckReport
from signgen.fastening.telling import cutter_of
from signgen.features.groove import Groove
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.markup.markup import VOID
from signgen.pages.setup_sheet import setup_html

Make = Callable[..., JobFacts]
VOID_IN_SVG = frozenset({"path", "line", "rect", "circle", "polygon", "polyline"})


class Reader(HTMLParser):
    """The text under each id; complains about tags that do not pair."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[tuple[str, str | None]] = []
        self.under: dict[str, str] = {}
        self.ids: list[str] = []
        self.links: list[str] = []
        self.tags: list[str] = []

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        values = dict(attributes)
        self.tags.append(tag)
        self.links += [v or "" for k, v in attributes if k in ("src", "href", "xlink:href", "action", "data", "srcset")]
        assert not [k for k, _ in attributes if k.startswith("on")]
        name = values.get("id")
        if name:
            self.ids.append(name)
            self.under[name] = ""
        if tag not in VOID:
            self.open.append((tag, name))

    def handle_startendtag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attributes)
        if tag not in VOID:
            self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open, f"</{tag}> closes nothing"
        assert self.open.pop()[0] == tag

    def handle_data(self, data: str) -> None:
        for _, name in self.open:
            if name:
                self.under[name] += data


def read(html: str) -> Reader:
    reader = Reader()
    reader.feed(html)
    reader.close()
    assert reader.open == []
    return reader


def passages(facts: JobFacts) -> dict[str, str]:
    """Id -> text; blanks of every kind are one blank."""
    return {name: " ".join(text.split()) for name, text in read(setup_html(facts)).under.items()}


@pytest.fixture(scope="module")
def said(facts: JobFacts) -> dict[str, str]:
    return passages(facts)


QUESTIONS = (
    ("What is being made?", "sign-facts", "200 × 120 mm"),
    ("Has anybody proved these programs?", "verdict", "2 of 3 checks passed, 1 with a warning"),
    ("What must I know before anything else?", "warnings", "The wall between 1 and 7 is thin."),
    ("What do I bring to the machine?", "bring", "90 degree V-bit, 12 mm (6 mm shank)"),
    ("How large must the board be?", "board-size", "280 × 200 mm"),
    ("Which way round does the board lie?", "board-way", "280 mm from left to right (X)"),
    ("How does the grain run?", "board-way", "from left to right"),
    (
        "How thick must the board be, and where do I measure?",
        "board-thickness",
        "Made for 12 mm. Measure all",
    ),
    ("What if it is thicker?", "thickness-error", "0.1 mm deeper and 0.2 mm wider"),
    ("How deep and wide do the letters get?", "board-grooves", "leaves"),
    ("How do I prove the bit before the cut?", "board-grooves", "a groove 1 mm deep must be 2 mm wide"),
    ("Where is X0 Y0?", "zero-xy", "40 mm from the left edge and one 40 mm from the front edge"),
    ("Where is Z0 and how do I set it?", "zero-z", "top of the spoilboard"),
    ("How do I know that zero is right?", "zero-proof", "X200 Y120"),
    ("What must the spoilboard be like, and will it be cut?", "spoilboard", "0.3 mm into it"),
    ("Where may I put screws?", "screw-places", "1 X-22.5 Y-22.5"),
    ("How large may their heads be?", "screws", "at most 9 mm wide, level with the face or deeper"),
    ("What lies under the board?", "under", "never reach the table"),
    ("Where may I put clamps?", "clamps", "nut reaches 17 mm beyond the sign"),
    ("What do I do before the first start?", "by-hand", "Run spindle and extraction once by hand"),
    ("How can I try without cutting?", "air-pass", "1-v-bit-90.nc"),
    ("How do I fit a cutter?", "cutter-change", "two thirds of its own length or more"),
    ("Which file comes first?", "program-1", "1-v-bit-90.nc"),
    ("Which cutter?", "program-1-cutter", "90 degree V-bit, 12 mm"),
    ("Which collet?", "program-1-collet", "6-5 (size 16) for its 6 mm shank"),
    ("How fast does it turn?", "program-2-speed", "rpm"),
    ("How fast does it move?", "program-2-feed", "mm/min"),
    ("How long does it take?", "program-1-time", "3 min 20 s"),
    ("How much of it is cutting?", "program-2-time", "86 % cutting, 5 % ways down, 10 % travel"),
    ("How long does each operation take?", "program-2-time", "4 min 30 s: cuts the outside"),
    ("How far does the cutter stick out?", "program-2-fit", "26 mm"),
    ("What do I do after the first program?", "program-2-zero", "Set only Z again"),
    (
        "How do I see that the letters are right?",
        "program-1-right",
        "half as deep as wide up to 6 mm, where the floor is flat",
    ),
    ("How do I see that the holes and the edge are right?", "program-2-right", "4 holes of 7 mm show the spoilboard"),
    ("The sound changes: what now?", "while-load", "a tenth less feed"),
    ("It burns: what now, and by how much?", "while-rub", "A tenth less speed or a tenth more feed"),
    ("It chatters: what now, and by how much?", "while-spring", "a tenth slower"),
    ("Something goes wrong: what now?", "while-stop", "emergency stop"),
    ("How do I get the sign out?", "after-tabs", "4 tabs"),
    ("What do I do with the surface?", "after-sand", "along the grain"),
    ("What is dangerous?", "caution-eyes", "safety glasses"),
    ("May I leave it alone?", "caution-attended", "Never leave a running machine"),
    ("What about dust?", "caution-dust", "mask"),
    ("And fire?", "caution-fire", "Extinguisher"),
    ("What does this material need?", "caution-material", "Birch plywood"),
    ("Whose rules come first?", "caution-first", "manual, the rules of your workshop and local law come first"),
    ("What was checked?", "check-C102", "rapids clear passed 24 rapids"),
    ("What did the warning see?", "check-C120", "0.8 mm thin"),
    ("What are the files?", "files", "sign.toml"),
)
"""A newcomer's questions, the passage that must answer each, and words that it must hold."""


@pytest.mark.parametrize(("question", "passage", "words"), QUESTIONS, ids=[q[0] for q in QUESTIONS])
def test_every_question_is_answered(said: dict[str, str], question: str, passage: str, words: str) -> None:
    # cells of a table stand side by side without a blank between
    assert words.replace(" ", "") in said[passage].replace(" ", ""), said[passage]


def test_questions_are_answered_in_the_order_of_the_work(facts: JobFacts) -> None:
    ids = read(setup_html(facts)).ids
    order = [
        "sign", "bring", "picture", "board", "zero", "board-plan", "fastening", "cautions", "programs",
        "while-cutting", "finishing", "checks", "files",
    ]  # fmt: skip
    assert [name for name in ids if name in order] == order


def test_ids_are_unique_and_tags_pair(facts: JobFacts) -> None:
    ids = read(setup_html(facts)).ids
    assert len(ids) == len(set(ids))


def test_nothing_is_loaded_from_elsewhere_and_nothing_runs(facts: JobFacts) -> None:
    html = setup_html(facts)
    reader = read(html)
    assert all(link.startswith("data:image/") for link in reader.links)
    assert not {"script", "iframe", "object", "embed", "link"} & set(reader.tags)
    assert "url(http" not in html
    assert "@import" not in html


@pytest.mark.parametrize(
    "text", ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "&lt;b&gt;", "</style><script>", "'; --"]
)
def test_the_users_text_is_text_wherever_it_stands(make_facts: Make, text: str) -> None:
    facts = make_facts(lines=(text,), cell=4.0)
    facts = replace(facts, warnings=(f"Watch {text}",), name=text)
    reader = read(setup_html(facts))
    assert "script" not in reader.tags
    assert reader.tags.count("img") == 1
    assert reader.under["sign"].strip() == text
    assert text in reader.under["warnings"]


@pytest.mark.parametrize(("angle", "wider"), [(90.0, "0.2"), (60.0, "0.12"), (120.0, "0.35")])
def test_a_thicker_board_widens_the_groove_by_twice_the_tangent(make_facts: Make, angle: float, wider: str) -> None:
    # 2 x 0.1 x tan(angle / 2): 0.2, 0.1155 and 0.3464
    facts = make_facts(cell=4.0)
    spec = replace(facts.spec, v_bit=replace(facts.spec.v_bit, angle_deg=angle))
    text = passages(replace(facts, spec=spec))["thickness-error"]
    assert f"{wider} mm wider" in text


@pytest.mark.parametrize(
    ("shank", "series", "label"), [(8.0, 16, "8-7"), (6.0, 16, "6-5"), (3.5, 11, "3.5-3.0"), (3.175, 20, "4-3")]
)
def test_the_collet_is_the_one_that_closes_on_the_shank(
    make_facts: Make, shank: float, series: int, label: str
) -> None:
    # Source: ISO 15488 capacities; the collapse of a collet is from memory
    facts = make_facts(cell=4.0)
    first = facts.programs[0]
    tool = replace(first.tool, shank_mm=shank)
    step = replace(facts.set_up.steps[0], cutter=cutter_of(tool, 1, series))
    changed = replace(
        facts,
        set_up=replace(facts.set_up, steps=(step, *facts.set_up.steps[1:])),
        spec=replace(facts.spec, machine=replace(facts.spec.machine, collet_series=series)),
        programs=(replace(first, tool=tool), *facts.programs[1:]),
    )
    assert passages(changed)["program-1-collet"].startswith(f"{label} (size {series})")


def test_z_zero_on_top_is_set_on_top_and_says_what_an_error_does(make_facts: Make) -> None:
    text = passages(make_facts(z_zero="top", cell=4.0))
    assert "Z0 is the top of the board" in text["zero-z"]
    assert "not cut through" in text["thickness-error"]
    assert "wider" not in text["thickness-error"]


def test_a_datum_on_the_board_is_its_corner(make_facts: Make) -> None:
    text = passages(make_facts(origin="stock", cell=4.0))
    assert "front left corner of the board" in text["zero-xy"]
    # the far corner of the sign, 40 mm in from the board's corner
    assert "X240 Y160" in text["zero-proof"]
    assert "X17.5 Y17.5" in text["screw-places"]


def test_where_the_machine_counts_in_inches_screws_do(facts: JobFacts) -> None:
    inches = replace(facts, spec=replace(facts.spec, dialect="inch"))
    text = passages(inches)
    # -22.5 mm
    assert "1 X-0.886 Y-0.886" in text["screw-places"]
    assert "in inches from X0 Y0" in text["fastening"]


def test_a_real_board_says_what_is_left_of_it(make_facts: Make) -> None:
    text = passages(make_facts(real_board=True, cell=4.0))["board-size"]
    assert "280 × 200 mm holds the sign: 40 mm are left to the right of it and 40 mm behind it" in text
    assert "220 × 140 mm" in text


def test_a_board_without_room_for_screws_gets_none_and_no_clamps_either(make_facts: Make) -> None:
    facts = make_facts(margin=12.0, cell=4.0)
    text = passages(facts)
    assert "None can stand on this board" in text["screws"]
    assert "double-sided tape" in text["clamps"]
    assert "screw-places" not in text


def test_letters_that_end_in_a_point_have_no_flat_floor(make_facts: Make) -> None:
    facts = make_facts(cell=0.5)
    groove = replace(facts.drawing.of(Groove)[0], max_depth_mm=9.0)
    text = passages(replace(facts, drawing=facts.drawing.having(Groove, (groove,))))["program-1-right"]
    assert "half as deep as wide, 6 mm at the deepest" in text


def test_only_the_first_program_sets_x_and_y(said: dict[str, str]) -> None:
    assert said["program-1-zero"] == "Set X, Y and Z as in section 2."
    assert "X and Y stay as they are" in said["program-2-zero"]


def test_a_failed_check_is_the_first_thing_to_read(facts: JobFacts) -> None:
    bad = replace(facts.checks.results[2], severity="error")
    text = passages(replace(facts, checks=CheckReport(results=(*facts.checks.results[:2], bad))))
    assert text["verdict"] == "Do not run: 1 of 3 checks failed: C120 wood_left Do not run these programs."


def test_a_sign_without_tabs_is_told_to_be_loose(make_facts: Make) -> None:
    facts = make_facts(cell=1.0)
    free = replace(facts, drawing=facts.drawing.having(Tab, ()))
    text = passages(free)
    assert "loose" in text["program-2-right"]
    assert "No tabs" in text["after-tabs"]


def test_the_page_is_the_same_bytes_twice(make_facts: Make) -> None:
    assert setup_html(make_facts(cell=2.0)) == setup_html(make_facts(cell=2.0))


def test_a_full_sheet_names_every_check_and_details_only_what_was_found(make_facts: Make) -> None:
    facts = make_facts(cell=4.0)
    later = tuple(replace(facts.programs[1], file=f"{i}-end-mill-6.nc") for i in range(2, 7))
    told = replace(facts.set_up, steps=(facts.set_up.steps[0], *facts.set_up.steps[1:] * 5))
    many = replace(facts, programs=(facts.programs[0], *later), boards=(facts.boards[0],) * 6, set_up=told)
    checks = (*(replace(facts.checks.results[0], code=f"C{300 + i}") for i in range(40)), facts.checks.results[2])
    text = passages(replace(many, checks=CheckReport(results=checks)))
    assert text["check-C300"].startswith("C300 rapids clear")
    assert "least height" not in text["check-C339"]
    assert "0.8 mm thin" in text["check-C120"]
