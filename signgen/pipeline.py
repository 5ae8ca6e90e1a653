"""The whole program read aloud.

spec -> drawing -> operations -> toolpaths -> programs -> text -> replay -> checks -> sheet
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.dialects import DIALECTS
from signgen.drawing.draw import draw
from signgen.drawing.keyholes import face_down
from signgen.job.back_names import PNG, back_names
from signgen.job.facts import JobFacts
from signgen.job.report import report_text
from signgen.operations.plan import back_plan, make_plan
from signgen.pages.back_sheet import back_html
from signgen.pages.setup_pdf import setup_pdf
from signgen.pages.setup_sheet import setup_html
from signgen.pictures.preview import preview_png, preview_svg, sign_relief
from signgen.pictures.relief import Relief
from signgen.pictures.steps import steps_png
from signgen.playback.preview_html import preview_html
from signgen.proving import proved, setup_of, turned_setup
from signgen.shop.load import load_shop
from signgen.shop.shop import Shop
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.sign_file import dump_sign_file, load_sign_file
from signgen.spec.sign_spec import SignSpec
from signgen.template.template import template_files

REPORT = "report.json"
"""Names every file of the job; a folder that holds it is complete."""


class Job(Struct, frozen=True, kw_only=True):
    """A finished, verified job and every file that belongs into its folder, by name."""

    facts: JobFacts
    files: Mapping[str, bytes]


def gather(asked: Mapping[str, object], sign_file: Path | None) -> Mapping[str, object]:
    """What was asked for on the command line (or in a CSV row), on top of a sign file if there is one.

    Raises: AskError when the sign file cannot be read.
    """
    return merged(load_sign_file(sign_file) if sign_file else {}, asked)


def read_sign(asked: Mapping[str, object], shop_of: Callable[[Path | None], Shop] = load_shop) -> SignSpec:
    """Raises: AskError with every problem at once; ShopError when the shop's data is wrong."""
    shop_file = asked.get("shop")
    shop = shop_of(Path(str(shop_file)) if shop_file else None)
    return read_spec(asked, shop, dialects=tuple(dialect.name for dialect in DIALECTS))


def make_job(spec: SignSpec, tell: Callable[[str], None] = lambda stage: None) -> Job:
    """From what was asked for to every file of the job, verified. `tell` hears what begins: "plan", "prove", "draw".

    Raises: AskError, CannotMakeError; CheckFailedError when a program does not do what was drawn.
    """
    facts = prove(spec, tell)
    tell("draw")
    return Job(facts=facts, files=_files(facts))


def prove(spec: SignSpec, tell: Callable[[str], None] = lambda stage: None) -> JobFacts:
    """The verified job without its pictures and pages. Raises: as `make_job`."""
    tell("plan")
    drawing = draw(spec)
    plan = make_plan(drawing, spec)
    tell("prove")
    facts = proved(spec, drawing, plan, setup_of(spec, plan))
    return replace(facts, back=_from_behind(facts))


def _from_behind(facts: JobFacts) -> JobFacts | None:
    """The verified job of what is cut from the back, before the face; None when nothing is."""
    spec, drawing = facts.spec, face_down(facts.drawing)
    plan = back_plan(drawing, spec)
    if plan is None:
        return None
    setup = turned_setup(facts.stock, facts.least, facts.zero, drawing.width_mm)
    screws = tuple((-x, y) for x, y in facts.screws_mm)
    return proved(spec, drawing, plan, setup, face=facts.boards[-1], screws=screws)


def program_files(facts: JobFacts) -> dict[str, bytes]:
    """Every program file of a job by its name, in the order to run them."""
    before = (*((facts.outline,) if facts.outline else ()), *facts.lifted)
    return {program.file: program.text.encode("ascii") for program in (*before, *facts.programs)}


def _setup_sheet(facts: JobFacts, lit: Relief) -> dict[str, bytes]:
    """The sheet in the formats that were asked for. Raises: AskError when there is nothing to write a PDF with."""
    page = setup_html(facts, lit)
    wanted = facts.spec.sheet_format
    html = {"setup.html": page.encode()} if wanted != "pdf" else {}
    return html | ({"setup.pdf": setup_pdf(page)} if wanted != "html" else {})


def _back_sheet(back: JobFacts) -> dict[str, bytes]:
    """The same of the board's back."""
    page = back_html(back)
    return {
        name: setup_pdf(page) if name.endswith(".pdf") else page.encode() for name in back_names(back.spec.sheet_format)
    }


def _files(facts: JobFacts) -> Mapping[str, bytes]:
    files = program_files(facts)
    if facts.back is not None:
        back = facts.back
        files = {**program_files(back), **files, **_back_sheet(back), PNG: preview_png(back)}
    lit = sign_relief(facts)
    files |= {
        **_setup_sheet(facts, lit),
        "preview.svg": preview_svg(facts, lit).encode(),
        "preview.png": preview_png(facts, lit),
        "preview.html": preview_html(facts).encode(),
        **template_files(facts.spec, facts.drawing),
        **({"steps.png": steps_png(facts, lit)} if facts.spec.steps else {}),
        "sign.toml": dump_sign_file(facts.spec).encode(),
    }
    return {**files, REPORT: report_text(facts, [*files, REPORT]).encode()}
