"""Signs with wavy outlines, made and judged as a whole: each tab stands as wide as it is drawn."""

from __future__ import annotations

from pathlib import Path

import pytest

from signgen.borders import BORDERS
from signgen.drawing.draw import draw
from signgen.features.tab import Tab
from signgen.operations.plan import make_plan
from signgen.pipeline import make_job
from tests.asking import spec_of
from tests.drawing.test_tabs import waved


@pytest.mark.parametrize(("radius", "out"), [(12, True), (20, True), (12, False)])
def test_a_sign_with_a_wavy_edge_hangs_by_its_tabs(tmp_path: Path, radius: float, out: bool) -> None:
    """No job leaves unless C111 and C112 have found the edge cut and every tab whole."""
    edge = waved(200, 120, radius, out=out)
    x0, y0, x1, y1 = edge.bounds
    way = " L".join(f"{x:.4f},{y:.4f}" for x, y in edge.exterior.coords[:-1])
    box = f"{x0:.3f} {y0:.3f} {x1 - x0:.3f} {y1 - y0:.3f}"
    file = tmp_path / "wavy.svg"
    file.write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{x1 - x0:.3f}mm" height="{y1 - y0:.3f}mm" '
        f'viewBox="{box}"><path d="M{way} Z"/></svg>'
    )
    size = f"{x1 - x0:.2f}x{y1 - y0:.2f}"
    job = make_job(
        spec_of(border=f"path:{file}", size=size, text=["A"], holes=None, hole_diameter=None, inset=None, depth="2")
    )
    assert b"4 of 4 tabs stand" in job.files["report.json"]


@pytest.mark.parametrize("size", ["120x80", "200x120", "400x200"])
@pytest.mark.parametrize("border", [border.name for border in BORDERS if border.name not in ("circle", "path")])
def test_every_border_has_room_for_its_tabs(border: str, size: str) -> None:
    spec = spec_of(border=border, size=size, text=["A"], holes=None, hole_diameter=None, inset=None, depth="2")
    drawing = draw(spec)
    assert len(drawing.of(Tab)) == 4
    # Raises CannotMakeError when they leave no way between them.
    assert make_plan(drawing, spec).runs[-1].toolpaths()
