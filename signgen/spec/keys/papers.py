"""What can be asked for of the sheet, the pictures and the template."""

from __future__ import annotations

from signgen.messages.language import LANGUAGES
from signgen.option import Option

NO_TEMPLATE = "none"

PAPERS: tuple[Option, ...] = (
    Option(
        name="language", kind="choice", metavar="WORD", group="Papers", choices=LANGUAGES, default="en",
        help="Language of the setup sheet, the page with the moves and the summary: en or de.",
        field="language",
        words=("german", "english", "deutsch", "translate", "sprache"), example="de",
    ),
    Option(
        name="template", kind="choice", metavar="PAPER", group="Papers", choices=(NO_TEMPLATE, "a4", "letter"),
        default=NO_TEMPLATE,
        help="Draw a drilling template too, to tape to the wall: the holes at full size on a4 or letter paper.",
        write=lambda spec: spec.template,
        words=("drilling template", "wall template", "paper template", "mark the holes on the wall", "wall"),
        example="a4",
    ),
    Option(
        name="sheet-format", kind="choice", metavar="WORD", group="Papers", choices=("html", "pdf", "both"),
        default="html", help="The setup sheet as setup.html, as setup.pdf (needs signgen[pdf]), or both.",
        field="sheet_format",
        words=("pdf", "print the sheet", "printing"),
    ),
    Option(
        name="units", kind="choice", metavar="UNIT", group="Papers", choices=("mm", "in"),
        help="Units of the sheet, the summary and errors: mm, or in (inches to a thousandth, with the fraction on a "
        "rule where it is exact). What is typed into the machine is in the program's units.",
        otherwise="in where the size or the thickness is written in inches, else mm",
        write=lambda spec: spec.units,
        words=("units of the sheet", "sheet in inches", "fractions on the sheet"), example="in",
    ),
    Option(
        name="steps", kind="flag", metavar="true", group="Papers", default="false",
        help="Draw steps.png too: the board after each program.",
        field="steps",
        words=("stages", "pictures of each step", "step by step pictures"),
    ),
    Option(
        name="paint", kind="word", metavar="COLOUR", group="Papers",
        help="Paint the letters in the pictures: a name (black, white, red, gold ...) or #rrggbb.",
        otherwise="the bare cut",
        write=lambda spec: spec.paint, left_open="the bare cut",
        words=("colour", "color", "painted", "stain", "ink", "gold", "black letters", "fill colour"),
        example="black",
    ),
)  # fmt: skip
