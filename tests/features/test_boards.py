"""Boards cut exactly to what a kind allows, for every kind: the checks that know no kind pass them, and see 0.1 mm more
or less. The surfaces are made from `depths` alone, without any program."""

from __future__ import annotations

import numpy as np
import pytest
from msgspec.structs import replace

from signgen.checks.check import Case
from signgen.checks.letters_made import LettersMade
from signgen.checks.not_gouged import NotGouged
from signgen.drawing.drawing import Drawing, Plate
from signgen.features.edge import Edge
from signgen.features.feature import Feature
from signgen.replay.heights import HeightMap
from tests.checks.plate import Plate as Workpiece
from tests.features.samples import HEIGHT_MM, SAMPLES, SIGN, THICKNESS_MM, WIDTH_MM

FURTHER_MM = 0.1
TAKING = [
    pytest.param(each, id=each.name) for each in SAMPLES if each.takes and each.side == "face" and each.kind != "edge"
]


def bare_case(feature: Feature) -> Case:
    drawing = Drawing(
        plate=Plate(width_mm=WIDTH_MM, height_mm=HEIGHT_MM, thickness_mm=THICKNESS_MM),
        features=(Edge(name="edge", area=SIGN), feature),
        cap_height_mm=8,
    )
    case = replace(Workpiece(), drawing=drawing, order=()).case()
    return replace(case, boards=(HeightMap(z_mm=np.zeros((1, 1), np.float32), grid=case.ideal.grid),))


def cut_to(case: Case, depths: np.ndarray) -> Case:
    """The case with the one feature's cells at these depths, and the rest untouched."""
    grid = case.ideal.grid
    z = np.full(grid.nx * grid.ny, THICKNESS_MM, np.float32)
    z[case.ideal.drawn[0].cell] = THICKNESS_MM - np.where(np.isfinite(depths), depths, THICKNESS_MM)
    return replace(case, boards=(HeightMap(z_mm=z.reshape(grid.ny, grid.nx), grid=grid),))


def findings(case: Case) -> tuple[bool, bool]:
    """Whether something is too deep, and whether something is too shallow."""
    return bool(NotGouged().run(case).findings), bool(LettersMade().run(case).findings)


@pytest.mark.parametrize("feature", TAKING)
def test_a_board_as_deep_as_it_must_be_or_may_be_passes_and_a_tenth_of_a_millimetre_beyond_does_not(
    feature: Feature,
) -> None:
    case = bare_case(feature)
    (drawn,) = case.ideal.drawn
    least = np.where(np.isnan(drawn.least_mm), drawn.most_mm, drawn.least_mm)
    assert findings(cut_to(case, least)) == (False, False)
    assert findings(cut_to(case, drawn.most_mm)) == (False, False)
    if (drawn.most_mm < THICKNESS_MM).any():
        assert findings(cut_to(case, drawn.most_mm + FURTHER_MM))[0]
    known = drawn.least_mm < THICKNESS_MM
    if (drawn.least_mm[known] > FURTHER_MM).any():
        assert findings(cut_to(case, np.maximum(least - FURTHER_MM, 0.0)))[1]
    for each in (least, drawn.most_mm):
        assert case.ideal.zone[drawn.cell].min() >= -1, each


@pytest.mark.parametrize("feature", TAKING)
def test_what_is_cut_beside_the_footprint_is_seen(feature: Feature) -> None:
    case = bare_case(feature)
    good = cut_to(case, case.ideal.drawn[0].most_mm)
    z = good.boards[0].z_mm.copy()
    grid = good.ideal.grid
    beside = feature.footprint.buffer(1.0).difference(feature.footprint.buffer(0.4)).intersection(SIGN.buffer(-0.5))
    place = np.array(beside.representative_point().coords[0])
    i, j = np.rint((place - [grid.x0_mm, grid.y0_mm]) / grid.cell_mm).astype(int)
    z[j, i] -= FURTHER_MM
    assert findings(replace(good, boards=(HeightMap(z_mm=z, grid=grid),))) == (True, False)
