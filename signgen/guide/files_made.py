"""The files that signgen writes, and what each is."""

from __future__ import annotations

import re

from msgspec import Struct


class FileMade(Struct, frozen=True, kw_only=True):
    """`name` with N for a number and CUTTER for a cutter's name."""

    name: str
    about: str

    def is_called(self, name: str) -> bool:
        """Whether a file of that name is such a one."""
        pattern = re.escape(self.name).replace("CUTTER", r"[a-z0-9.-]+").replace("N", r"[1-9]\d*")
        return re.fullmatch(pattern, name) is not None


OF_A_SIGN: tuple[FileMade, ...] = (
    FileMade(name="0-outline.nc", about="run first, spindle off: it goes round the sign above the board"),
    FileMade(name="N-CUTTER.nc", about="a program for each cutter, in the order to run them"),
    FileMade(name="air-N-CUTTER.nc", about="with --air-cut: the same, lifted over the board"),
    FileMade(name="setup.html", about="the setup sheet, to print and take to the machine"),
    FileMade(name="setup.pdf", about="with --sheet-format pdf or both"),
    FileMade(name="preview.svg", about="the finished sign, to scale"),
    FileMade(name="preview.png", about="the finished sign, drawn from the simulated cut"),
    FileMade(name="preview.html", about="a page that plays every move, without a network"),
    FileMade(name="steps.png", about="with --steps: the board after each program"),
    FileMade(name="back-0-outline.nc", about="with --holes keyholes: the back's, to be run first"),
    FileMade(name="back-N-CUTTER.nc", about="with --holes keyholes: what is cut from behind, before the face"),
    FileMade(name="air-back-N-CUTTER.nc", about="with both: the same, lifted"),
    FileMade(name="setup-back.html", about="with --holes keyholes: the back's setup sheet"),
    FileMade(name="setup-back.pdf", about="the same with --sheet-format pdf or both"),
    FileMade(name="preview-back.png", about="with --holes keyholes: the back as it is cut"),
    FileMade(name="template.html", about="with --template: the holes at full size on paper"),
    FileMade(name="template.svg", about="with --template: the same as a drawing"),
    FileMade(name="report.json", about="all figures, for other programs"),
    FileMade(name="sign.toml", about="what was asked for, every default filled in"),
)

OF_A_BATCH: tuple[FileMade, ...] = (
    FileMade(name="batch.json", about="what became of every row, for other programs"),
    FileMade(name="errors.csv", about="rows that failed, with what is wrong, to be mended and run again"),
    FileMade(
        name="results.csv", about="the list again, with folder, sheet, place, minutes, cost and verdict of every row"
    ),
    FileMade(name="index.html", about="every row with its picture and its papers, to open in a browser"),
    FileMade(name="proof.html", about="with --proof: the contact sheet of all signs"),
    FileMade(name="proof.pdf", about="with --proof, where PDFs can be written: the same"),
    FileMade(name="packing.html", about="what goes with the signs, to tick off"),
    FileMade(name="labels.html", about="with --labels: a label for every sign, to print on sheets of labels"),
    FileMade(name="quote.csv", about="with --quote: what it costs, row by row"),
    FileMade(name="invoice.csv", about="with --quote: the same by positions, for a bill"),
    FileMade(name="ledger.jsonl", about="by which --resume knows what is done"),
)
