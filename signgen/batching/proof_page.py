"""The page of the contact sheet: pictures in the list's order, numbers, sizes, warnings, and lines to sign."""

from __future__ import annotations

from collections.abc import Sequence

from signgen.batching.tile import Tile
from signgen.markup.markup import Html, el, raw
from signgen.markup.page import page
from signgen.words.words import Words

STYLE = """
@page { size: A4; margin: 12mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 4mm; max-width: 190mm; color: #1d262e; background: #fff;
  font: 8pt/1.3 "Liberation Sans", "DejaVu Sans", Arial, Helvetica, sans-serif; }
h1 { margin: 0 0 1mm; font-size: 15pt; overflow-wrap: anywhere; }
p { margin: 0 0 2mm; }
.row { display: flex; gap: 4mm; margin: 0 0 3mm; break-inside: avoid; }
figure { flex: 0 0 57mm; width: 57mm; margin: 0; padding: 1.5mm; border: .4pt solid #c9cfd3; border-radius: 1mm; }
.art { height: 36mm; text-align: center; }
svg { width: 53mm; height: 36mm; }
figcaption { margin-top: 1mm; overflow-wrap: anywhere; }
figcaption b { font-size: 9pt; }
.box { float: right; width: 4mm; height: 4mm; border: .7pt solid #1d262e; border-radius: .5mm; }
.warning { display: block; color: #8c2f14; }
.failed { border: 1.6pt solid #8c2f14; }
.sign { display: flex; gap: 8mm; margin: 8mm 0 2mm; break-inside: avoid; }
.sign span { flex: 1; padding-top: 1mm; border-top: .7pt solid #1d262e; color: #5d6a74; }
@media print { body { padding: 0; max-width: none; } }
"""
ACROSS = 3


def proof_pages(name: str, tiles: Sequence[Tile], language: str) -> tuple[str, ...]:
    """The whole document in parts."""
    words = Words(language)
    signs, bad = sum(tile.copies for tile in tiles if not tile.problem), sum(bool(tile.problem) for tile in tiles)
    about = words("proof.about", rows=len(tiles), signs=signs)
    rows = [el("div", *(_tile(tile, words) for tile in tiles[i : i + ACROSS]), cls="row")
            for i in range(0, len(tiles), ACROSS)]  # fmt: skip
    whole = page(
        words("proof.title", name=name),
        STYLE,
        el("h1", words("proof.title", name=name)),
        el("p", about, " ", words("proof.failed", count=bad) if bad else None),
        el("p", words("proof.only_drawn")),
        *rows,
        el("p", words("proof.sign")),
        el("div", *(el("span", words(f"proof.{each}")) for each in ("name", "date", "signature")), cls="sign"),
        language=words.language,
    )
    mark = el("meta", name="generator", content="signgen proof")
    head, rest = whole.split("<head>", 1)
    return head, "<head>", mark, rest


def _tile(tile: Tile, words: Words) -> Html:
    number = words("proof.row", row=tile.row)
    copies = f", {tile.copies} ×" if tile.copies != 1 else ""
    if tile.problem:
        return el(
            "figure",
            el("figcaption", el("b", f"{number}{copies}"), " ", tile.words),
            el("span", tile.problem, cls="warning"),
            cls="failed",
        )
    width, height, thickness = tile.size_mm
    size = f"{words.figure(width)} × {words.figure(height)} × {words.figure(thickness, 2)} mm"
    return el(
        "figure",
        el("div", raw(tile.picture), cls="art"),
        el(
            "figcaption",
            el("span", cls="box"),
            el("b", f"{number}{copies}"), " ", tile.words, el("br"),
            f"{size}, {tile.material}",
            *(el("span", warning, cls="warning") for warning in tile.warnings),
        ),
    )  # fmt: skip
