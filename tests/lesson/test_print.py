"""A lesson's pages as Chromium lays them out on A4 and Letter: nothing runs over, everything is grey."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from signgen.lesson.pack import PUPIL, TEACHER, pack
from signgen.lesson.source import source_of
from tests.browsing import browser

__all__ = ["browser"]
GOLDEN = Path(__file__).parent.parent / "golden"
WIDTHS = {"A4": 680, "Letter": 703}
"""Pixels of 1/96 inch between the margins of 15 mm."""

OVER = """() => [...document.querySelectorAll("main, main *:not(svg *)")]
  .filter((e) => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline")
  .map((e) => `${e.tagName} ${e.id} ${e.textContent.slice(0, 40)}`)"""
OUTSIDE = """() => [...document.querySelectorAll("svg text")].filter((e) => {
  const a = e.getBoundingClientRect(), b = e.ownerSVGElement.getBoundingClientRect();
  return a.left < b.left - 1 || a.right > b.right + 1 || a.top < b.top - 1 || a.bottom > b.bottom + 1;
}).map((e) => e.textContent)"""
COLOURED = """() => [...document.querySelectorAll("body, body *")].flatMap((e) => {
  const style = getComputedStyle(e);
  return [style.color, style.backgroundColor, style.borderBottomColor, style.fill, style.stroke];
}).filter((each) => { const [r, g, b] = each.match(/[\\d.]+/g) ?? [0, 0, 0]; return r !== g || g !== b; })"""


@pytest.mark.parametrize("name", ["heron-weir-9", "quince-plate"])
@pytest.mark.parametrize(("language", "large"), [("en", False), ("de", True)])
def test_nothing_runs_over_and_everything_is_grey(browser: Any, tmp_path: Path, name, language, large) -> None:
    made = pack(source_of(GOLDEN / name), language, large=large, easy=large)
    for file in (PUPIL, TEACHER):
        (tmp_path / file).write_bytes(made[file])
        for width in WIDTHS.values():
            page = browser.new_page(viewport={"width": width, "height": 1000})
            page.goto(f"file://{tmp_path / file}")
            assert page.evaluate(OVER) == []
            assert page.evaluate(OUTSIDE) == []
            assert page.evaluate(COLOURED) == []
            page.close()
