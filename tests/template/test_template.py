"""The drilling template at full size: measured in the drawing, and on paper as Debian's Chromium prints it."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import defaultdict
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from numpy.typing import NDArray

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.pipeline import make_job
from signgen.spec.paper import BAR_MM, EDGE_MM, OVERLAP_MM, STRIP_MM, tiling
from signgen.spec.sign_spec import SignSpec
from signgen.template.template import CHECK_MM, MARK_MM, template_html, template_svg
from tests.asking import spec_of
from tests.pages.test_print import FLAGS

CHROMIUM, RASTER = shutil.which("chromium"), shutil.which("pdftoppm")
NS = "{http://www.w3.org/2000/svg}"
DPI = 254
"""Ten pixels a millimetre."""
LARGE = {"size": "380x300", "border": "scalloped", "inset": None, "hole_diameter": None, "screw": "M5"}


def drawn(**changes: object) -> tuple[SignSpec, Drawing]:
    spec = spec_of(**{"template": "a4", **changes})
    return spec, draw(spec)


def pages(page: str) -> list[ElementTree.Element]:
    return [ElementTree.fromstring(svg) for svg in re.findall(r"<svg.*?</svg>", page, flags=re.DOTALL)]


def points(way: ElementTree.Element) -> NDArray[np.float64]:
    return np.array([[float(v) for v in pair.split(",")] for pair in way.attrib["points"].split()])


def rings(svg: ElementTree.Element, diameter: float) -> list[tuple[float, float]]:
    """Middles of the closed lines of this width and height."""
    found = []
    for way in svg.iter(f"{NS}polyline"):
        low, high = points(way).min(axis=0), points(way).max(axis=0)
        if np.allclose(high - low, diameter, atol=0.002):
            found.append(tuple(((low + high) / 2).tolist()))
    return found


def test_one_page_has_every_hole_where_it_is_from_the_corner() -> None:
    spec, drawing = drawn()
    (svg,) = pages(template_html(spec, drawing))
    assert (svg.attrib["width"], svg.attrib["height"]) == ("297mm", "210mm")
    assert svg.attrib["viewBox"] == "0 0 297 210"
    x, y, _, high = tiling(220, 140, "a4").window_of(0, 0)
    left, base = EDGE_MM + BAR_MM - x, EDGE_MM + STRIP_MM + high
    assert y < 0
    wanted = [(left + hole.x_mm, base - hole.y_mm) for hole in drawing.of(Hole)]
    np.testing.assert_allclose(sorted(rings(svg, 7.0)), sorted(wanted), atol=0.002)


def test_every_sheet_has_two_bars_of_100_mm() -> None:
    for page in (*pages(template_html(*drawn(**LARGE))), *pages(template_svg(*drawn()))):
        lines = [[float(line.attrib[k]) for k in ("x1", "y1", "x2", "y2")] for line in page.iter(f"{NS}line")]
        assert sum(abs(x2 - x1) == pytest.approx(CHECK_MM) and y1 == y2 for x1, y1, x2, y2 in lines) == 1
        assert sum(abs(y2 - y1) == pytest.approx(CHECK_MM) and x1 == x2 for x1, y1, x2, y2 in lines) == 1


def marks(svg: ElementTree.Element) -> dict[str, tuple[float, float]]:
    """Number -> middle of every registration mark."""
    middles = [(float(c.attrib["cx"]), float(c.attrib["cy"])) for c in svg.iter(f"{NS}circle")]
    assert {float(c.attrib["r"]) for c in svg.iter(f"{NS}circle")} <= {MARK_MM}
    numbers = {}
    for text in svg.iter(f"{NS}text"):
        if text.attrib.get("font-weight") == "bold":
            x, y = float(text.attrib["x"]), float(text.attrib["y"])
            numbers[str(text.text)] = min(middles, key=lambda m: abs(m[0] - x) + abs(m[1] - y))
    return numbers


@pytest.mark.parametrize("size", ["380x300", "390x120", "150x390"])
def test_sheets_laid_on_each_others_marks_put_every_hole_in_its_place(size: str) -> None:
    """Pasting as a person does: each sheet is moved until its marks cover those of the sheets that lie already."""
    spec, drawing = drawn(**{**LARGE, "size": size})
    sheets = pages(template_html(spec, drawing))
    tiles = tiling(spec.width_mm, spec.height_mm, "a4")
    assert len(sheets) == tiles.across * tiles.up > 1
    moved = {0: np.zeros(2)}
    lying = {number: np.array(at) for number, at in marks(sheets[0]).items()}
    while len(moved) < len(sheets):
        for i, sheet in enumerate(sheets):
            common = [n for n in marks(sheet) if n in lying]
            if i in moved or not common:
                continue
            shifts = np.array([lying[n] - np.array(marks(sheet)[n]) for n in common])
            assert len(common) >= 2
            np.testing.assert_allclose(shifts, np.broadcast_to(shifts[0], shifts.shape), atol=0.003)
            moved[i] = shifts[0]
            lying |= {n: np.array(at) + shifts[0] for n, at in marks(sheet).items()}
    found = {tuple(np.round(np.array(at) + moved[i], 2)) for i, sheet in enumerate(sheets) for at in rings(sheet, 5.5)}
    assert len(found) == len(drawing.of(Hole))
    x0, y0 = min(x for x, _ in found), max(y for _, y in found)
    low_x, low_y = min(h.x_mm for h in drawing.of(Hole)), min(h.y_mm for h in drawing.of(Hole))
    on_sign = sorted((x - x0 + low_x, y0 - y + low_y) for x, y in found)
    np.testing.assert_allclose(on_sign, sorted((h.x_mm, h.y_mm) for h in drawing.of(Hole)), atol=0.02)


def test_marks_stand_on_two_sheets_each_and_clear_of_holes() -> None:
    spec, drawing = drawn(**LARGE)
    seen: dict[str, int] = defaultdict(int)
    for sheet in pages(template_html(spec, drawing)):
        for number, (x, y) in marks(sheet).items():
            seen[number] += 1
            assert all(np.hypot(x - u, y - v) > 5.5 / 2 + MARK_MM for u, v in rings(sheet, 5.5))
    assert set(seen.values()) == {2}
    assert sorted(map(int, seen)) == list(range(1, len(seen) + 1))


def test_a_mark_lies_wholly_on_both_of_its_sheets() -> None:
    assert OVERLAP_MM > 2 * 1.6 * MARK_MM


def test_a_slot_is_drawn_whole_and_the_level_line_goes_through_the_upper_holes() -> None:
    spec, drawing = drawn(slot_length="15")
    (svg,) = pages(template_html(spec, drawing))
    spans = [np.ptp(points(way), axis=0) for way in svg.iter(f"{NS}polyline")]
    assert sum(np.allclose(span, (15, 7), atol=0.01) for span in spans) == 4
    # a text is drawn twice, first what clears the lines around it
    texts = [str(text.text) for text in svg.iter(f"{NS}text") if "stroke" not in text.attrib]
    assert "level; 192\u00a0mm between the outer holes" in texts
    assert texts.count("7\u00a0×\u00a015") == 4
    assert "14 / 126" in texts


def test_the_folder_gets_it_only_when_asked() -> None:
    files = make_job(spec_of(template="letter", language="de")).files
    assert {"template.html", "template.svg"} <= set(files)
    page = files["template.html"].decode()
    assert '<html lang="de">' in page
    assert "size: 279.4mm 215.9mm" in page
    assert "Bohrschablone: 17 / Larkspur Lane" in page
    assert "template.html mit 100\u00a0% drucken" in files["setup.html"].decode()
    assert b'"sheets_across": 1' in files["report.json"]
    assert "template.html" not in make_job(spec_of()).files


def test_a_sign_cannot_write_into_the_page() -> None:
    spec, drawing = drawn(text=["<b>17</b>"], font="atkinson")
    assert "<b>17" not in template_html(spec, drawing) + template_svg(spec, drawing)


def printed(tmp_path: Path, page: str) -> list[NDArray[np.bool_]]:
    """Each sheet of paper as (rows, columns) of dark pixels, DPI to the inch."""
    from PIL import Image

    (tmp_path / "page.html").write_text(page, encoding="utf-8")
    profile, pdf = tmp_path / "profile", tmp_path / "page.pdf"
    subprocess.run(
        [CHROMIUM or "", *FLAGS, f"--user-data-dir={profile}", "--no-pdf-header-footer", f"--print-to-pdf={pdf}",
         f"file://{tmp_path / 'page.html'}"],
        check=True, capture_output=True, timeout=120,
    )  # fmt: skip
    subprocess.run([RASTER or "", "-r", f"{DPI}", "-gray", f"{pdf}", f"{tmp_path / 'sheet'}"], check=True, timeout=120)
    return [np.asarray(Image.open(path)) < 140 for path in sorted(tmp_path.glob("sheet-*.pgm"))]


def middle_of(dark: NDArray[np.bool_], x: float, y: float, far: float = 9.0) -> tuple[float, float]:
    """Where the longest upright and level lines within `far` of a place are, in mm from the sheet's upper left."""
    scale = DPI / 25.4
    x0, y0 = round((x - far) * scale), round((y - far) * scale)
    cut = dark[y0 : y0 + round(2 * far * scale), x0 : x0 + round(2 * far * scale)]
    columns, rows = cut.sum(axis=0), cut.sum(axis=1)
    at_x = float(np.mean(np.flatnonzero(columns > 0.9 * columns.max())))
    at_y = float(np.mean(np.flatnonzero(rows > 0.9 * rows.max())))
    return (x0 + at_x + 0.5) / scale, (y0 + at_y + 0.5) / scale


@pytest.mark.skipif(CHROMIUM is None or RASTER is None, reason="needs chromium and pdftoppm (poppler-utils)")
@pytest.mark.parametrize(("paper", "size"), [("a4", (297.0, 210.0)), ("letter", (279.4, 215.9))])
def test_on_paper_a_bar_is_100_mm_and_holes_are_as_far_apart_as_on_the_sign(
    tmp_path: Path, paper: str, size: tuple[float, float]
) -> None:
    spec, drawing = drawn(template=paper)
    (dark,) = printed(tmp_path, template_html(spec, drawing))
    scale = DPI / 25.4
    assert (dark.shape[1] / scale, dark.shape[0] / scale) == pytest.approx(size, abs=0.15)
    level = dark[round((EDGE_MM + STRIP_MM - 3.0) * scale)]
    assert np.ptp(np.flatnonzero(level)) / scale == pytest.approx(CHECK_MM, abs=0.35)  # ends are a tick's width wider
    x, _, _, high = tiling(220, 140, paper).window_of(0, 0)
    left, base = EDGE_MM + BAR_MM - x, EDGE_MM + STRIP_MM + high
    for hole in drawing.of(Hole):
        at = middle_of(dark, left + hole.x_mm, base - hole.y_mm)
        assert at == pytest.approx((left + hole.x_mm, base - hole.y_mm), abs=0.15)


@pytest.mark.skipif(CHROMIUM is None or RASTER is None, reason="needs chromium and pdftoppm (poppler-utils)")
def test_a_large_template_prints_a_sheet_a_page(tmp_path: Path) -> None:
    page = template_html(*drawn(**LARGE))
    assert len(printed(tmp_path, page)) == 4
