"""The whole program read aloud.

spec -> drawing -> operations -> toolpaths -> programs -> text -> replay -> checks -> pages
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Literal

from msgspec import Struct

from signgen.dialects import DIALECTS
from signgen.disk.ours import REPORT as REPORT
from signgen.job.back_names import BACK, PNG
from signgen.job.facts import JobFacts
from signgen.job.report import report_text
from signgen.pages.back_sheet import back_html
from signgen.pages.setup_pdf import setup_pdf
from signgen.pages.setup_sheet import setup_html
from signgen.pictures.preview import preview_png, preview_svg, sign_relief
from signgen.pictures.relief import Relief
from signgen.pictures.steps import steps_png
from signgen.playback.preview_html import preview_html
from signgen.proving.prove import proved
from signgen.proving.settled import settled
from signgen.proving.sides import sides_of
from signgen.proving.slow import with_quicker
from signgen.shop.load import load_shop
from signgen.shop.shop import Shop
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.sign_file import dump_sign_file, load_sign_file, stamped
from signgen.spec.sign_spec import SignSpec
from signgen.template.template import template_files

SIGN = "sign.toml"

Files = Mapping[str, bytes]
"""By their names."""

Wanted = Literal["all", "sheet", "programs"]
"""Every file; without pictures and the page that plays the moves; without the setup sheet too."""


class MadeJob(Struct, frozen=True, kw_only=True):
    """A finished, verified job and every file that belongs into its folder, by name."""

    facts: JobFacts
    files: Files


def gather(asked: Mapping[str, object], sign_file: Path | None) -> Mapping[str, object]:
    """What was asked for on the command line (or in a CSV row), on top of a sign file if there is one.

    Raises: AskError when the sign file cannot be read.
    """
    return merged(load_sign_file(sign_file) if sign_file else {}, asked)


def read_sign(asked: Mapping[str, object], shop_of: Callable[[Path | None], Shop] = load_shop) -> SignSpec:
    """What was asked, complete.

    Raises: AskError with every problem at once; ShopError when the shop's data is wrong.
    """
    shop_file = asked.get("shop")
    shop = shop_of(Path(str(shop_file)) if shop_file else None)
    dialects = tuple(dialect.name for dialect in DIALECTS)

    def read(asked: Mapping[str, object]) -> SignSpec:
        return read_spec(asked, shop, dialects=dialects)

    return settled(asked, read(asked), read)


def make_job(spec: SignSpec, tell: Callable[[str], None] = lambda stage: None, wanted: Wanted = "all") -> MadeJob:
    """From what was asked for to every file that is wanted of the job, verified. `tell` hears what begins: "plan",
    "prove", "draw".

    Raises: AskError, CannotMakeError; CheckFailedError when a program does not do what was drawn.
    """
    facts = prove(spec, tell)
    tell("draw")
    asked = {SIGN: stamped(dump_sign_file(spec)).encode()}
    return drawn(facts, setup_html, template_files(spec, facts.drawing), asked, wanted)


def prove(spec: SignSpec, tell: Callable[[str], None] = lambda stage: None) -> JobFacts:
    """The verified job without its pictures and pages. Raises: as `make_job`."""
    tell("plan")
    sides = sides_of(spec)
    tell("prove")
    return with_quicker(proved(sides))


def drawn(
    facts: JobFacts,
    page: Callable[[JobFacts, Relief], str],
    templates: Files,
    asked: Files,
    wanted: Wanted = "all",
) -> MadeJob:
    """A sign's or a whole sheet's job with every file that is wanted. `page` writes its setup sheet; `asked`: the file
    that it is made from again. Raises: AskError when there is nothing to write a PDF with."""
    files: dict[str, bytes] = {}
    if facts.back is not None:
        files |= _programs(facts.back)
    files |= _programs(facts)
    if wanted != "programs":
        files |= {**_pages(facts, page, pictures=wanted == "all"), **templates}
    files |= asked
    return MadeJob(facts=facts, files={**files, REPORT: report_text(facts, files).encode()})


def _pages(facts: JobFacts, page: Callable[[JobFacts, Relief], str], *, pictures: bool) -> dict[str, bytes]:
    """The setup sheets, and the `pictures` with the page that plays the moves."""
    files: dict[str, bytes] = {}
    if facts.back is not None:
        files |= _papers(back_html(facts.back), BACK, facts.spec)
        files |= {PNG: preview_png(facts.back)} if pictures else {}
    lit = sign_relief(facts)
    files |= _papers(page(facts, lit), "setup", facts.spec)
    if pictures:
        files |= {
            "preview.svg": preview_svg(facts, lit).encode(),
            "preview.png": preview_png(facts, lit),
            "preview.html": preview_html(facts).encode(),
        }
    return files | ({"steps.png": steps_png(facts, lit)} if facts.spec.steps else {})


def _programs(facts: JobFacts) -> dict[str, bytes]:
    """Every program file of a job by its name, in the order to run them."""
    before = (*((facts.outline,) if facts.outline else ()), *facts.lifted)
    return {program.file: program.text.encode("ascii") for program in (*before, *facts.programs)}


def _papers(page: str, name: str, spec: SignSpec) -> dict[str, bytes]:
    """A page in the formats that were asked for. Raises: AskError when there is nothing to write a PDF with."""
    html = {f"{name}.html": page.encode()} if spec.sheet_format != "pdf" else {}
    return html | ({f"{name}.pdf": setup_pdf(page)} if spec.sheet_format != "html" else {})
