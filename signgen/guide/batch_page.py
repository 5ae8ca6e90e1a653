"""Lists of signs: what their columns mean, and what a batch writes; and a list to begin from."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping

from signgen.option import Option
from signgen.spec import keys

COPIES = "copies"

ABOUT = """\
A list for signgen batch has a header and a row for each sign: CSV with commas,
semicolons or tabs, or a spreadsheet's own file (.xlsx, .ods; --worksheet names
a sheet of it). The first row names the columns.

  A column called like a key of the sign file gives that key: thickness, font,
  size ... 'Cap Height' and 'cap_height' are cap-height. An empty cell leaves
  it to the sign file and the options typed beside the list.

  A column called copies says how many of a sign. A column called out names the
  row's folder behind its number.

  Any other column is used as {column} in a text:

    signgen batch names.csv --text "{name}" --text "{house} Larkspur Lane" ...

  {row} is the row's number, as a spreadsheet counts: the header is row 1.
  {serial} counts rows from 1 on and {serial:03} writes 001; a column of that
  name goes before. All copies of a row bear the same number. {{ and }} are
  braces. A line of lettering that comes out empty is left out.

  In a spreadsheet's own file a number is read as its value: 7 that is shown as
  007 is 7, unless it was typed as text.

signgen batch --columns lists all columns, and signgen batch --example --from
SIGN.toml prints a list to begin from.

What comes out, in --out (./ and the list's name without it)

  0002-name/ ...      each row's sign, as signgen make writes it
  sheet-01/ ...       with --sheet, each whole sheet instead
  index.html          every sign with its picture, time and verdict, to search
  results.csv         the list, with folder, sheet, place, minutes, cost and
                      verdict behind each row
  errors.csv          rows that failed and why; not there when none did
  quote.csv,
  invoice.csv         with --quote: costs by row, and lines for an invoice
  packing.html        what belongs together, to tick off
  labels.html         with --labels, a label for each sign
                      (--files sheet leaves out the pictures of each sign, and
                      --files programs its setup sheet too, which takes less
                      time: they come again with --files all --resume)
  batch.json          all of it, for other programs
  ledger.jsonl        what is done, by which a batch goes on

Again

  A row that failed is mended in errors.csv: signgen batch OUT/errors.csv with
  the same options and the same --out puts it back under its number.
  --resume goes on after an interruption or a change of the list: rows are
  known by what they ask for and by their number; unchanged ones stay, changed
  ones are made anew, and rows that are gone are said.
  --rows 19,44-46 makes these rows again; with --sheet they get a sheet of
  their own, as for a broken piece on an offcut.
  --fresh makes all anew in place of what is there.
  --proof draws all signs on a contact sheet first, to be approved.
"""

FIRST_ROW, SECOND_ROW = "Quince Cottage", "Tannery"


def reference() -> Iterator[str]:
    """Line by line, none wider than 79 characters."""
    yield from ABOUT.splitlines()


def columns_page(options: tuple[Option, ...] = keys.KEYS) -> Iterator[str]:
    """Every column that means something by its name, with what it is for."""
    width = max(len(key.name) for key in options)
    yield f"{COPIES:<{width}}  How many of this sign."
    yield f"{keys.OUT.name:<{width}}  Name of the row's folder, behind its number."
    for key in options:
        yield f"{key.name:<{width}}  {key.help}"
    yield ""
    yield "Any other column is used as {column} in a text: signgen explain batch."


def example_list(places: tuple[str, ...], base: Mapping[str, object]) -> str:
    """A list of two rows to begin from: a column for each placeholder of a sign file's texts, one for the text where
    there is none, those keys that are needed and not given, and copies."""
    needed = [key for key in keys.KEYS if key.required and key.name not in base and key.name != "text"]
    names = [*(places or (() if "text" in base or "line" in base else ("text",)))]
    header = [*names, *(key.name for key in needed), COPIES]
    rows = [
        [*([words] * len(names)), *(key.example or key.metavar for key in needed), copies]
        for words, copies in ((FIRST_ROW, "1"), (SECOND_ROW, "2"))
    ]
    stream = io.StringIO(newline="")
    csv.writer(stream, lineterminator="\n").writerows([header, *rows])
    return stream.getvalue()
