"""`index.html` of a finished batch: every row with its picture, verdict, minutes and cost, to search and to open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from signgen.batching.outcome import RowOutcome
from signgen.batching.quote import Cost
from signgen.batching.results import places_of
from signgen.markup.markup import Html, el, joined, raw
from signgen.markup.page import page
from signgen.words.words import Words

STYLE = """
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 70rem; color: #1d262e; background: #fff;
  font: 15px/1.4 "Liberation Sans", "DejaVu Sans", Arial, Helvetica, sans-serif; }
h1 { margin: 0 0 .3rem; font-size: 1.6rem; overflow-wrap: anywhere; }
p { margin: 0 0 .8rem; }
input { width: 100%; max-width: 30rem; padding: .4rem .6rem; font: inherit;
  border: 1px solid #5d6a74; border-radius: 4px; }
table { width: 100%; margin-top: 1rem; border-collapse: collapse; }
th, td { padding: .4rem .6rem .4rem 0; border-bottom: 1px solid #c9cfd3; text-align: left; vertical-align: middle; }
th { color: #5d6a74; font-weight: normal; }
.sheets { display: flex; flex-wrap: wrap; gap: 1rem; }
.sheets img { display: block; width: 14rem; }
td img { display: block; width: 7rem; max-height: 5rem; object-fit: contain; }
td.words { overflow-wrap: anywhere; }
.number { text-align: right; white-space: nowrap; }
.failed { color: #8c2f14; }
@media print { input, label { display: none; } tr { break-inside: avoid; } }
"""
SCRIPT = """
const box = document.getElementById("search"), rows = [...document.querySelectorAll("tbody tr")];
const shown = document.getElementById("shown");
box.addEventListener("input", () => {
  const wanted = box.value.toLocaleLowerCase().split(/\\s+/).filter(Boolean);
  let count = 0;
  for (const row of rows) {
    const text = row.textContent.toLocaleLowerCase();
    row.hidden = !wanted.every((word) => text.includes(word));
    count += !row.hidden;
  }
  shown.textContent = wanted.length ? `${count} / ${rows.length}` : "";
});
"""
POLICY = "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src 'self' file:"

_HERE = "\N{OBJECT REPLACEMENT CHARACTER}"
"""Stands for the rows while the page around them is made: there may be any number of them."""

PAPERS = ("setup-back.html", "setup-back.pdf", "setup.html", "setup.pdf", "preview.html")
"""What is opened from here, where a folder has it."""


def index_html(
    out: Path,
    name: str,
    outcomes: Iterable[RowOutcome],
    sheets: Sequence[RowOutcome] | None,
    costs: Mapping[int, Cost],
    currency: str,
    about: str,
    language: str,
) -> Iterator[bytes]:
    """The page part by part, for the folder `out`. `sheets` None: each sign has a folder of its own; `about`: the batch
    in a sentence."""
    words = Words(language)
    columns = ["row", "picture", "words", "copies", "minutes", *(["cost"] if costs else []), "verdict"]
    whole = page(
        words("index.title", name=name).replace(_HERE, " "),
        STYLE,
        el("h1", words("index.title", name=name).replace(_HERE, " ")),
        el("p", about),
        _sheets(out, sheets, words) if sheets is not None else None,
        el("label", words("index.search"), for_="search"),
        el("br"),
        el("input", id="search", type="search"),
        " ",
        el("span", id="shown", role="status"),
        el(
            "table",
            el("thead", el("tr", *(el("th", words(f"index.{each}"), scope="col") for each in columns))),
            el("tbody", raw(_HERE)),
        ),
        el("script", raw(SCRIPT)),
        language=words.language,
        policy=POLICY,
    )
    before, after = whole.split(_HERE)
    yield before.encode()
    places = places_of(sheets or ())
    for outcome in outcomes:
        folders = dict.fromkeys(folder for folder, _, _ in places.get(outcome.row, ())) or [outcome.folder]
        cost = costs.get(outcome.row) if costs else None
        amount = f"{outcome.copies * cost.whole:.2f} {currency}" if cost else ""
        yield _row(out, outcome, folders, amount, bool(costs), words).encode()
    yield after.encode()


def _row(out: Path, outcome: RowOutcome, folders: Iterable[str], amount: str, reckoned: bool, words: Words) -> Html:
    said = " / ".join(outcome.figures["lines"] if outcome.made else filter(None, map(str.strip, outcome.cells)))
    first = [el("td", str(outcome.row)), el("td", said, cls="words"), el("td", str(outcome.copies), cls="number")]
    if not outcome.made:
        told = words("batch.verdict_failed", where=outcome.field_named, what=outcome.message)
        empty = [el("td")] * (2 if reckoned else 1)
        return el("tr", first[0], el("td"), *first[1:], *empty, el("td", told, cls="failed words"))
    alone = outcome.folder
    return el(
        "tr",
        first[0],
        el("td", _picture(out, alone) if alone else None),
        *first[1:],
        el("td", words.span(outcome.copies * outcome.figures["minutes"]), cls="number"),
        el("td", amount, cls="number") if reckoned else None,
        el("td", words("batch.verdict_verified"), *(_links(out, folder, words) for folder in folders)),
    )


def _picture(out: Path, folder: str) -> Html | None:
    """None where no pictures were wanted."""
    there = (out / folder / "preview.png").is_file()
    return el("img", src=f"{folder}/preview.png", alt="", loading="lazy") if there else None


def _links(out: Path, folder: str, words: Words) -> Html:
    """A folder and its papers."""
    there = [name for name in PAPERS if (out / folder / name).is_file()]
    parts = [joined(" ", el("a", words(f"index.{name.split('.')[0]}"), href=f"{folder}/{name}")) for name in there]
    return joined(el("br"), el("a", folder, href=f"{folder}/"), *parts)


def _sheets(out: Path, sheets: Sequence[RowOutcome], words: Words) -> Html:
    """Whole sheets with their pictures."""
    made = [sheet for sheet in sheets if sheet.made]
    return el(
        "div",
        *(
            el("p", _picture(out, each.folder), words.span(each.figures["minutes"]), _links(out, each.folder, words))
            for each in made
        ),
        cls="sheets",
    )
