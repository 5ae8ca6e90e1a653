"""The sheet as a browser lays it out and prints it: two sides, nothing cut off, no text over another.

Needs Debian's chromium (`apt-get install chromium`), which `.ci/run` installs; skipped elsewhere.
"""

from __future__ import annotations

import html
import json
import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from msgspec.structs import replace

from signgen.checks.check import CheckReport
from signgen.job.facts import JobFacts
from signgen.pages.setup_sheet import setup_html
from signgen.proving.prove import proved
from signgen.proving.sides import sides_of
from signgen.shop.load import load_shop
from tests.asking import spec_of

Make = Callable[..., JobFacts]
CHROMIUM = shutil.which("chromium")
FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
)  # fmt: skip
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="chromium is not installed")

LOOK = """<script>addEventListener("load", () => {
  const boxes = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const node = walk.currentNode;
    if (!node.data.trim() || node.parentElement.closest("script, title, desc, [aria-hidden=true]")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const r of range.getClientRects())
      if (r.width > 1) boxes.push([node.data.trim().slice(0, 30), r.left, r.top, r.right, r.bottom]);
  }
  const pages = [...document.querySelectorAll(".page")].map(e => e.getBoundingClientRect());
  const inside = (b, p) => b[1] >= p.left && b[3] <= p.right && b[2] >= p.top && b[4] <= p.bottom;
  const out = boxes.filter(b => !pages.some(p => inside(b, p)));
  const over = [];
  for (let i = 0; i < boxes.length; i++) for (let j = 0; j < i; j++) {
    const a = boxes[i], b = boxes[j];
    const w = Math.min(a[3], b[3]) - Math.max(a[1], b[1]), h = Math.min(a[4], b[4]) - Math.max(a[2], b[2]);
    // neighbouring lines share a pixel or two of leading
    if (w > 1 && h > 4) over.push(a[0] + " | " + b[0]);
  }
  document.body.dataset.look = JSON.stringify({count: boxes.length, out: out.map(b => b[0]), over});
});</script></body>"""


def run(tmp_path: Path, page: str, *flags: str) -> str:
    (tmp_path / "page.html").write_text(page, encoding="utf-8")
    command = [
        CHROMIUM or "",
        *FLAGS,
        f"--user-data-dir={tmp_path / 'profile'}",
        *flags,
        f"file://{tmp_path / 'page.html'}",
    ]
    return subprocess.run(command, capture_output=True, text=True, timeout=120, check=True).stdout


def printed(tmp_path: Path, page: str) -> int:
    """Sides of paper."""
    pdf = tmp_path / "page.pdf"
    run(tmp_path, page, "--no-pdf-header-footer", f"--print-to-pdf={pdf}")
    return len(re.findall(rb"/Type\s*/Page\b", pdf.read_bytes()))


def with_checks(facts: JobFacts, count: int) -> JobFacts:
    """As many passed checks with a line each as a real job has."""
    one = replace(
        facts.checks.results[0], detail="4 of 4 measured: off by 0.003 mm and by 0.004 mm at the most, 0.05 mm allowed"
    )
    results = tuple(replace(one, code=f"C{200 + i}") for i in range(count))
    return replace(facts, checks=CheckReport(results=results))


def with_programs(facts: JobFacts, count: int) -> JobFacts:
    middle = tuple(replace(facts.programs[1], file=f"{i}-end-mill-3.nc") for i in range(2, count))
    boards = (*(facts.boards[0] for _ in range(count - 1)), facts.boards[-1])
    programs, steps = (facts.programs[0], *middle, facts.programs[-1]), facts.set_up.steps
    told = replace(facts.set_up, steps=(steps[0], *steps[1:] * (count - 1)))
    return replace(facts, programs=programs, boards=boards, set_up=told)


def common(make_facts: Make) -> JobFacts:
    return with_checks(make_facts(margin=20.0, cell=2.0), 20)


def full(make_facts: Make) -> JobFacts:
    """Much to say: four programs, a dozen holes, warnings, a large board with its zero on top, grey acrylic."""
    acrylic = next(material for material in load_shop().materials if material.name == "acrylic")
    holes = tuple((20.0 + 29.3 * i, 20.0 + (i * 37) % 250) for i in range(13))
    facts = make_facts(
        width=420.0, height=300.0, margin=60.0, cell=2.0, holes=holes, z_zero="top", real_board=True, material=acrylic,
        lines=("The Old Forge and the Bakehouse", "Larkspur Lane 4"),
    )  # fmt: skip
    facts = replace(
        facts, warnings=("Two letters nearly touch and the wall between them may break out, so look there first.",) * 3
    )
    return with_programs(with_checks(facts, 20), 4)


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("job", [common, full])
def test_it_prints_on_two_sides(make_facts: Make, tmp_path: Path, job: Callable[[Make], JobFacts], paper: str) -> None:
    page = setup_html(job(make_facts))
    assert "@page { " in page
    assert printed(tmp_path, page.replace("@page { ", f"@page {{ size: {paper}; ")) <= 2


MADE = {
    "two programs": {"text": ["23", "Plover Row"], "size": "220x150", "holes": None},
    "bored holes and a frame": {
        "text": ["Elderberry", "Forge"], "size": "300x130", "thickness": "16", "material": "hardwood",
        "font": "cinzel", "border": "ogee", "holes": "side-pair", "screw": "M4", "frame": "6",
    },
    "raised letters": {"text": ["RAISED"], "size": "220x120", "finish": "raised", "sharp_corners": "true"},
}  # fmt: skip


@pytest.mark.sweep
@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("sign", MADE)
def test_what_is_really_made_prints_on_two_sides_of_letter(tmp_path: Path, sign: str, language: str) -> None:
    usual = {"hole_diameter": None, "inset": None, "layout": None, "language": language}
    page = setup_html(proved(sides_of(spec_of(**{**usual, **MADE[sign]}))))
    assert printed(tmp_path, page.replace("@page { ", "@page { size: letter; ")) <= 2


@pytest.mark.parametrize("job", [common, full])
def test_no_text_lies_over_another_or_leaves_the_page(
    make_facts: Make, tmp_path: Path, job: Callable[[Make], JobFacts]
) -> None:
    page = setup_html(job(make_facts)).replace("</body>", LOOK)
    dom = run(tmp_path, page, "--window-size=1100,2400", "--dump-dom")
    found = re.search(r'data-look="(.*?)"', dom)
    assert found, dom[-2000:]
    look = json.loads(html.unescape(found[1]))
    assert look["count"] > 150
    assert look["out"] == []
    assert look["over"] == []
