"""What holds the sign until the end, by labelling what the simulated cutters leave over the spoilboard.

Source: connected components of an image, scipy.ndimage.label (the reference).
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
import pytest
import scipy.ndimage
import shapely

from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.pipeline import prove
from signgen.spec.sign_spec import SignSpec
from tests.asking import spec_of
from tests.dialects.jobs import example

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
COARSE = {"size": "120x90", "text": ["17"], "depth": "1", "cell": "0.4"}
ASKED: dict[str, SignSpec] = {
    "three tabs": spec_of(tabs="3", **COARSE),
    "six ramped tabs, by their spacing": spec_of(tab_spacing="75", tab_shape="ramped", **COARSE),
    "round": spec_of(**COARSE | {"size": "110x110"}, border="circle", holes="centre", inset=None, hole_diameter="5"),
    "finishing pass": spec_of(finish_pass="0.3", **COARSE),
    "conventional": spec_of(milling="conventional", **COARSE),
}
THROUGH_MM = 1e-3
"""Over the spoilboard's plane by more than this is board; below it the cutter went through."""


@cache
def proved(name: str) -> JobFacts:
    return prove(ASKED[name])


def left_of(facts: JobFacts) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """(heights, on the sign, in the groove around it, on the frame) on the last board; places within a cell of the
    sign's outline or of the groove's far side belong to none."""
    last, drawing = facts.boards[-1], facts.drawing
    cutter = facts.programs[-1].tool.diameter_mm
    x, y = np.meshgrid(last.x_mm, last.y_mm)
    apart = shapely.distance(drawing.edge, shapely.points(x.ravel(), y.ravel())).reshape(x.shape)
    on = shapely.contains_xy(shapely.buffer(drawing.edge, -last.cell_mm), x, y)
    groove = (apart > last.cell_mm) & (apart < cutter - last.cell_mm)
    return last.z_mm, on, groove, apart > cutter + last.cell_mm


def pieces(solid: np.ndarray) -> tuple[np.ndarray, int]:
    labels, count = scipy.ndimage.label(solid, structure=np.ones((3, 3)))
    return labels, count


def the_one(labels: np.ndarray, where: np.ndarray) -> int:
    """The label of the largest piece there."""
    found, counts = np.unique(labels[where & (labels > 0)], return_counts=True)
    return int(found[np.argmax(counts)])


@pytest.mark.parametrize("name", ASKED)
def test_the_sign_hangs_on_the_frame_by_every_tab_asked_for_and_by_nothing_else(name: str) -> None:
    facts = proved(name)
    z, sign, groove, frame = left_of(facts)
    labels, _ = pieces(z > THROUGH_MM)
    assert the_one(labels, sign) == the_one(labels, frame)
    bridges, count = pieces((z > THROUGH_MM) & groove)
    # The cutter's roundness leaves points at a tab's ends, of which a cell may lie apart.
    across = [n for n in range(1, count + 1) if (bridges == n).sum() > 2]
    assert len(across) == len(facts.drawing.of(Tab)) >= 3
    cell, reach = facts.boards[-1].cell_mm, facts.programs[-1].tool.diameter_mm
    middles = [
        np.argwhere(bridges == n).mean(axis=0)[::-1] * cell + (facts.boards[-1].x0_mm, facts.boards[-1].y0_mm)
        for n in across
    ]
    for tab in facts.drawing.of(Tab):
        assert min(np.hypot(*(middle - (tab.x_mm, tab.y_mm))) for middle in middles) < reach


@pytest.mark.parametrize("name", ASKED)
def test_it_is_free_when_the_tabs_are_cut(name: str) -> None:
    facts = proved(name)
    z, sign, groove, frame = left_of(facts)
    rim = ~(sign | frame)
    labels, _ = pieces((z > THROUGH_MM) & ~rim)
    assert the_one(labels, sign) != the_one(labels, frame)
    # and by each tab it is held: with all others cut it still hangs
    bridges, count = pieces((z > THROUGH_MM) & rim)
    for n in range(1, count + 1):
        if (bridges == n)[groove].sum() <= 2:
            continue
        labels, _ = pieces((z > THROUGH_MM) & (~rim | (bridges == n)))
        assert the_one(labels, sign) == the_one(labels, frame)


@pytest.mark.parametrize("name", ["three tabs", "six ramped tabs, by their spacing", "finishing pass"])
def test_each_tab_is_as_high_as_asked_in_its_middle(name: str) -> None:
    facts = proved(name)
    z, _, groove, _ = left_of(facts)
    bridges, count = pieces((z > THROUGH_MM) & groove)
    for n in range(1, count + 1):
        assert z[bridges == n].max() == pytest.approx(facts.drawing.of(Tab)[0].height_mm, abs=1e-3)


def test_a_skin_holds_it_all_round_as_thick_as_asked() -> None:
    facts = prove(spec_of(onion_skin="0.6", **COARSE))
    z, sign, groove, frame = left_of(facts)
    assert np.allclose(z[groove], 0.6, atol=1e-3)
    labels, _ = pieces(z > THROUGH_MM)
    assert the_one(labels, sign) == the_one(labels, frame)
    labels, _ = pieces(z > 0.6 + THROUGH_MM)
    assert the_one(labels, sign) != the_one(labels, frame)


@pytest.mark.sweep
@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
@pytest.mark.parametrize("machine", ["desktop-router", "bench-router"])
def test_every_example_hangs_by_its_tabs_and_is_free_without_them(path: Path, machine: str) -> None:
    ASKED[path.stem] = example(path, machine=machine)
    test_the_sign_hangs_on_the_frame_by_every_tab_asked_for_and_by_nothing_else(path.stem)
    test_it_is_free_when_the_tabs_are_cut(path.stem)
    del ASKED[path.stem]
    proved.cache_clear()
