"""The contact sheet: the board, what each program makes of it, and the finished sign; painted letters."""

from __future__ import annotations

import io

import numpy as np
import pytest
from PIL import Image
from shapely.ops import unary_union

from signgen.errors import AskError
from signgen.features.groove import Groove
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.job.facts import JobFacts
from signgen.pictures.preview import sign_relief
from signgen.pictures.relief import edge_mask
from signgen.pictures.steps import CAPTION_PX, GAP_PX, PANEL_PX, TABLE, steps_png
from signgen.pipeline import make_job
from tests.asking import spec_of


@pytest.fixture(scope="module")
def house() -> JobFacts:
    return make_job(spec_of(paint="red")).facts


@pytest.fixture(scope="module")
def panels(house: JobFacts) -> list[np.ndarray]:
    """Each panel's pixels; two columns for two programs."""
    image = np.asarray(Image.open(io.BytesIO(steps_png(house, sign_relief(house)))).convert("RGB")).astype(int)
    wide, high = PANEL_PX[0] + GAP_PX, PANEL_PX[1] + CAPTION_PX + GAP_PX
    assert image.shape[:2] == (2 * high + GAP_PX, 2 * wide + GAP_PX)
    found = []
    for number in range(4):
        left, top = GAP_PX + number % 2 * wide, GAP_PX + number // 2 * high
        found.append(image[top : top + PANEL_PX[1], left : left + PANEL_PX[0]])
    return found


def table(panel: np.ndarray) -> int:
    """Pixels through which the table is seen."""
    return int((np.abs(panel - np.array(TABLE)).max(axis=2) < 3).sum())


def test_each_step_shows_what_its_program_did(panels: list[np.ndarray]) -> None:
    bare, engraved, cut_out, finished = panels
    assert np.abs(engraved - bare).max() > 60
    # letters are a part of the face, the cut around the sign is another
    assert 0.005 < (np.abs(engraved - bare).max(axis=2) > 20).mean() < 0.2
    assert table(bare) == table(engraved) == 0
    assert table(cut_out) > 1000
    assert np.abs(finished - cut_out).mean() > 3


def test_captions_are_written_below(house: JobFacts) -> None:
    image = np.asarray(Image.open(io.BytesIO(steps_png(house, sign_relief(house)))).convert("L"))
    low = image[GAP_PX + PANEL_PX[1] + 4 : GAP_PX + PANEL_PX[1] + CAPTION_PX, :]
    assert (low < 90).sum() > 200


def test_paint_colours_letters_and_nothing_else(house: JobFacts) -> None:
    bare, painted = sign_relief(make_job(spec_of()).facts).rgb.astype(int), sign_relief(house).rgb.astype(int)
    differs = np.abs(painted - bare).max(axis=2) > 8
    assert 0.01 < differs.mean() < 0.2
    red, green, _ = painted[differs].mean(axis=0)
    assert red > 2.5 * green
    h, w = differs.shape
    scale = w / house.drawing.width_mm
    rows, columns = np.nonzero(differs)
    low_x = min(groove.area.bounds[0] for groove in house.drawing.of(Groove))
    high_y = max(groove.area.bounds[3] for groove in house.drawing.of(Groove))
    assert columns.min() == pytest.approx(low_x * scale, abs=3)
    assert rows.min() == pytest.approx(h - high_y * scale, abs=3)


def test_steps_are_drawn_only_when_asked_for() -> None:
    assert "steps.png" not in make_job(spec_of()).files
    assert "steps.png" in make_job(spec_of(steps="true")).files


@pytest.mark.parametrize("word", ["gold", "#205c38", "Black"])
def test_colours_by_name_and_by_figures(word: str) -> None:
    assert spec_of(paint=word).paint == word


def test_an_unknown_colour_is_refused_with_those_that_are_known() -> None:
    with pytest.raises(AskError) as refused:
        spec_of(paint="blak")
    assert "Did you mean black?" in str(refused.value.problems[0])


def changed_by_paint(**words: str) -> tuple[JobFacts, np.ndarray]:
    """The sign, and which pixels of its picture black paint changes."""
    bare, facts = sign_relief(make_job(spec_of(**words)).facts), make_job(spec_of(paint="black", **words)).facts
    return facts, np.abs(sign_relief(facts).rgb.astype(int) - bare.rgb.astype(int)).max(axis=2) > 40


@pytest.mark.parametrize(
    ("finish", "kind"), [("recess", Recess), ("raised", Raised)], ids=["floors of sunk letters", "tops of raised"]
)
def test_letters_that_are_no_grooves_are_painted_where_a_brush_paints_them(
    finish: str, kind: type[Recess | Raised]
) -> None:
    facts, changed = changed_by_paint(text="17", font="atkinson", finish=finish)
    letters = unary_union([each.area for each in facts.drawing.of(kind) if each.text])
    size = facts.drawing.width_mm, facts.drawing.height_mm
    inside = edge_mask(letters, size, (changed.shape[1], changed.shape[0])) > 0
    assert not (changed & ~inside).any()
    assert (changed & inside).sum() > 0.75 * inside.sum()


def test_letters_that_are_cut_through_have_nothing_to_paint() -> None:
    _, changed = changed_by_paint(text="17", font="atkinson", finish="through")
    assert not changed.any()
