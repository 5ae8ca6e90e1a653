"""Every border with every hole pattern in three sizes: a valid drawing, and (in the long run) programs that pass every
check."""

from __future__ import annotations

import itertools
from pathlib import Path
from typing import Any

import pytest
import shapely
from shapely.geometry import LineString

from signgen.borders import BORDERS, Border
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.tab import Tab
from signgen.holes import PATTERNS
from signgen.pipeline import make_job
from tests.asking import spec_of

LEAF = Path(__file__).parent / "borders" / "leaf.svg"
SIZES = ((90.0, 60.0), (160.0, 160.0), (240.0, 300.0))


def asked(border: type[Border], pattern: str, size: tuple[float, float]) -> dict[str, Any]:
    width, height = (min(size), min(size)) if border.name == "circle" else size
    argument = {
        "at": f":{width * 0.3},{height * 0.55};{width * 0.7},{height * 0.55}",
        "grid": ":3x2",
    }.get(pattern, "")
    return {
        "text": ["17"],
        "size": f"{width}x{height}",
        "border": f"path:{LEAF}" if border.argument else border.name,
        "path_stretch": True if border.argument else None,
        "holes": pattern + argument,
        "hole_diameter": None if pattern in ("none", "keyholes") else "4",
        "inset": None,
    }


def assert_valid(drawing: Drawing) -> None:
    assert drawing.edge.is_valid
    assert drawing.edge.exterior.is_ccw
    assert not drawing.edge.interiors
    assert drawing.edge.bounds == pytest.approx((0, 0, drawing.width_mm, drawing.height_mm), abs=1e-5)
    holes = [LineString(hole.ends_mm).buffer(hole.face_radius_mm) for hole in drawing.of(Hole)]
    assert all(drawing.edge.contains(hole) for hole in holes)
    holes += [keyhole.footprint for keyhole in drawing.of(Keyhole)]
    assert all(drawing.edge.buffer(-1.99).contains(keyhole.footprint) for keyhole in drawing.of(Keyhole))
    for one, other in itertools.combinations(holes, 2):
        assert not one.intersects(other)
    for groove in drawing.of(Groove):
        assert groove.area.is_valid
        assert drawing.edge.contains(groove.area)
        assert not any(hole.intersects(groove.area) for hole in holes[: len(drawing.of(Hole))])
    names = [part.name for part in (*drawing.of(Groove), *drawing.of(Hole), *drawing.of(Tab))]
    assert len(names) == len(set(names))
    assert len(drawing.of(Tab)) == 4
    for tab in drawing.of(Tab):
        assert drawing.edge.exterior.distance(shapely.Point(tab.x_mm, tab.y_mm)) < 1e-6


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]:g}x{size[1]:g}")
@pytest.mark.parametrize("border", BORDERS, ids=lambda border: border.name)
def test_every_border_with_every_hole_pattern_makes_a_valid_drawing(
    border: type[Border], size: tuple[float, float]
) -> None:
    for pattern in PATTERNS:
        assert_valid(draw(spec_of(**asked(border, pattern.name, size))))


@pytest.mark.sweep
@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]:g}x{size[1]:g}")
@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda pattern: pattern.name)
@pytest.mark.parametrize("border", BORDERS, ids=lambda border: border.name)
def test_every_border_with_every_hole_pattern_makes_verified_programs(
    border: type[Border], pattern: Any, size: tuple[float, float]
) -> None:
    job = make_job(spec_of(**asked(border, pattern.name, size), cap_height=f"{min(12, min(size) / 8)}"))
    assert job.facts.checks.passed
    cutting = [name for name in job.files if name.endswith(".nc") and not name.removeprefix("back-").startswith("0-")]
    assert len(cutting) == len(job.facts.every_program)


FORMS = {
    "slots": {"slot_length": "10", "slot_angle": "90"},
    "narrow slots": {"slot_length": "9", "hole_diameter": "6"},
    "wide slots": {"slot_length": "30", "hole_diameter": "15"},
    "countersunk M4": {"screw": "M4", "hole_diameter": None, "countersink": True},
    "countersunk M5, socket head": {
        "screw": "M5", "hole_diameter": None, "countersink": True, "screw_head": "iso10642", "v_bit": "60",
    },
    "countersunk No 8": {"screw": "#8", "hole_diameter": None, "countersink": True},
    "wide heads, small bit": {
        "hole_diameter": "8", "head_diameter": "12", "countersink": True, "v_bit": "90", "v_bit_diameter": "6",
    },
}  # fmt: skip


@pytest.mark.sweep
@pytest.mark.parametrize("border", ["rectangle", "oval", "arrow", "tag"])
@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_every_form_of_hole_makes_verified_programs(form: dict[str, Any], border: str) -> None:
    own = next(each for each in BORDERS if each.name == border)
    changes = {**asked(own, "side-pair", (240.0, 160.0)), "cap_height": "10", "inset": "50", **form}
    job = make_job(spec_of(**changes))
    assert job.facts.checks.passed
    assert any(hole.span_mm or hole.sink for hole in job.facts.drawing.of(Hole))
