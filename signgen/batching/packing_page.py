"""What goes with the signs: the packing list, to tick off, and a label for each sign.

Label sheets are those of the trade, by the sizes that their packs state (common practice, from memory): on A4 three by
eight labels of 70 x 37 mm without room between them, on Letter three by ten of 2 5/8 x 1 inch.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from signgen.batching.outcome import RowOutcome
from signgen.batching.results import places_of
from signgen.markup.markup import Html, el
from signgen.markup.page import page
from signgen.numbers import figure
from signgen.words.words import Words

INCH_MM = 25.4


class LabelSheet(Struct, frozen=True, kw_only=True):
    """Labels on a paper of that size, in millimetres: columns and rows of them, the first one's upper left corner, and
    from one to the next."""

    paper_mm: tuple[float, float]
    across: int
    down: int
    label_mm: tuple[float, float]
    first_mm: tuple[float, float]
    pitch_mm: tuple[float, float]


LABEL_SHEETS = {
    "a4": LabelSheet(
        paper_mm=(210.0, 297.0), across=3, down=8, label_mm=(70.0, 37.0), first_mm=(0.0, 0.5), pitch_mm=(70.0, 37.0)
    ),
    "letter": LabelSheet(
        paper_mm=(8.5 * INCH_MM, 11 * INCH_MM),
        across=3,
        down=10,
        label_mm=(2.625 * INCH_MM, INCH_MM),
        first_mm=(0.1875 * INCH_MM, 0.5 * INCH_MM),
        pitch_mm=(2.75 * INCH_MM, INCH_MM),
    ),
}
"""By the names of papers. Paper: ISO 216 (A4), ANSI Y14.1 (Letter)."""

PACKING_STYLE = """
@page { margin: 12mm; }
body { margin: 0 auto; padding: 4mm; max-width: 190mm; color: #1d262e; background: #fff;
  font: 9pt/1.35 "Liberation Sans", "DejaVu Sans", Arial, Helvetica, sans-serif; }
h1 { margin: 0 0 3mm; font-size: 15pt; overflow-wrap: anywhere; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: 1mm 3mm 1mm 0; border-bottom: .5pt solid #c9cfd3; text-align: left; vertical-align: top; }
th { color: #5d6a74; font-weight: normal; }
tr { break-inside: avoid; }
thead { display: table-header-group; }
td { overflow-wrap: anywhere; }
.box { display: inline-block; width: 3.2mm; height: 3.2mm; border: .7pt solid #1d262e; border-radius: .4mm; }
.failed { color: #8c2f14; }
@media print { body { padding: 0; max-width: none; } }
"""


def packing_html(
    name: str, outcomes: Iterable[RowOutcome], sheets: Sequence[RowOutcome] | None, language: str
) -> Iterator[bytes]:
    """The packing list row by row, in the list's order."""
    words = Words(language)
    columns = ("done", "row", "copies", "words", "size", "place")
    mark = "\N{OBJECT REPLACEMENT CHARACTER}"
    title = words("packing.title", name=name).replace(mark, " ")
    whole = page(
        title,
        PACKING_STYLE,
        el("h1", title),
        el(
            "table",
            el("thead", el("tr", *(el("th", words(f"packing.{each}")) for each in columns))),
            el("tbody", mark),
        ),
        language=words.language,
    )
    before, after = whole.split(mark)
    yield before.encode()
    for outcome, place in _placed(outcomes, sheets, words):
        yield _row(outcome, place, words).encode()
    yield after.encode()


def _placed(
    outcomes: Iterable[RowOutcome], sheets: Sequence[RowOutcome] | None, words: Words
) -> Iterator[tuple[RowOutcome, list[str]]]:
    """Each row with where each of its signs lies."""
    places = places_of(sheets or ())
    for outcome in outcomes:
        if sheets is None:
            yield outcome, [outcome.folder] * outcome.copies
        else:
            told = [
                words("packing.piece", folder=folder, piece=piece["name"])
                for folder, _, piece in places.get(outcome.row, ())
            ]
            yield outcome, told


def _row(outcome: RowOutcome, places: list[str], words: Words) -> Html:
    row, copies = el("td", str(outcome.row)), el("td", f"{outcome.copies} ×")
    if not outcome.made:
        said = " / ".join(filter(None, map(str.strip, outcome.cells)))
        return el(
            "tr", el("td"), row, copies, el("td", said), el("td"), el("td", words("packing.failed")), cls="failed"
        )
    told = outcome.figures
    size = words.size(told["width_mm"], told["height_mm"])
    return el(
        "tr",
        el("td", el("span", cls="box")),
        row,
        copies,
        el("td", " / ".join(told["lines"])),
        el("td", size),
        el("td", ", ".join(dict.fromkeys(places))),
    )


def labels_html(
    name: str, outcomes: Iterable[RowOutcome], sheets: Sequence[RowOutcome] | None, paper: str, language: str
) -> Iterator[bytes]:
    """A label for each sign, copies too: its row, its words and where it lies; page by page."""
    words, sheet = Words(language), LABEL_SHEETS[paper]
    mark = "\N{OBJECT REPLACEMENT CHARACTER}"
    title = words("labels.title", name=name).replace(mark, " ")
    before, after = page(title, _label_style(sheet), mark, language=words.language).split(mark)
    yield before.encode()
    on_page: list[Html] = []
    for outcome, places in _placed(outcomes, sheets, words):
        for place in places if outcome.made else ():
            on_page.append(_label(outcome, place, sheet, len(on_page), words))
            if len(on_page) == sheet.across * sheet.down:
                yield el("section", *on_page).encode()
                on_page = []
    if on_page:
        yield el("section", *on_page).encode()
    yield after.encode()


def _label(outcome: RowOutcome, place: str, sheet: LabelSheet, number: int, words: Words) -> Html:
    down, across = divmod(number, sheet.across)
    x = sheet.first_mm[0] + across * sheet.pitch_mm[0]
    y = sheet.first_mm[1] + down * sheet.pitch_mm[1]
    return el(
        "div",
        el("b", words("labels.row", row=outcome.row)),
        el("span", " / ".join(outcome.figures["lines"])),
        el("small", place),
        style=f"left:{figure(x, 4)}mm;top:{figure(y, 4)}mm",
    )


def _label_style(sheet: LabelSheet) -> str:
    width, height = (figure(value, 4) for value in sheet.paper_mm)
    wide, high = (figure(value, 4) for value in sheet.label_mm)
    return f"""
@page {{ size: {width}mm {height}mm; margin: 0; }}
* {{ box-sizing: border-box; }}
body {{ margin: 0; color: #000; background: #fff;
  font: 10pt/1.2 "Liberation Sans", "DejaVu Sans", Arial, Helvetica, sans-serif; }}
section {{ position: relative; width: {width}mm; height: {height}mm; overflow: hidden; break-after: page; }}
section:last-child {{ break-after: auto; }}
div {{ position: absolute; width: {wide}mm; height: {high}mm; padding: 3mm 5mm; overflow: hidden; }}
b, span, small {{ display: block; overflow-wrap: anywhere; }}
span {{ max-height: 2.4em; overflow: hidden; font-size: 11pt; }}
"""
