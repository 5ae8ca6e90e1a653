"""The table of least walls: every two sorts of things have their row, a row beside it or a reason, and too little
wood is refused for every pair."""

from __future__ import annotations

import itertools
from typing import Self

import pytest
from msgspec.structs import replace
from shapely.geometry import Polygon, box

from signgen.drawing.spacing import LEAST_WALL_MM, apart_mm, close_pairs, inside_mm, off_outline_mm
from signgen.drawing.walls import BESIDE, INSIDE, WALLS, sort_of, wall_between, wall_problems
from signgen.features.edge import Edge
from signgen.features.feature import Feature
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.geometry.motion import Motion
from tests.asking import english, spec_of
from tests.features.samples import SAMPLES

SPEC = spec_of()
SIGN = Edge(name="edge", area=box(0, 0, 200, 100))
SORTS = sorted({sort for row in WALLS for sort in (*row.of, *row.to)} | {"tab"})


class Dot(Feature, frozen=True, kw_only=True):
    """A kind that the table has never heard of."""

    area: Polygon
    kind = "dot"

    @property
    def footprint(self) -> Polygon:
        return self.area

    def moved(self, motion: Motion) -> Self:
        return replace(self, area=motion.polygon(self.area))


def dot(x0: float, y0: float, name: str = "dot") -> Dot:
    return Dot(name=name, source="dots", area=box(x0, y0, x0 + 4, y0 + 4))


def line(x0: float, x1: float) -> Groove:
    area = box(x0, 40, x1, 60)
    return Groove(name="frame", source="frame", area=area, angle_deg=90, tip_mm=0, max_depth_mm=2)


def said(*features: Feature) -> list[tuple[str, str]]:
    problems = list(wall_problems(SPEC, (SIGN, *features)))
    return [(each.where, english([each.what])[0]) for each in problems]


def test_every_kind_is_in_the_table() -> None:
    assert {sort_of(sample, 9.0) for sample in SAMPLES} - {"groove", "stroke"} <= set(SORTS)


@pytest.mark.parametrize(("one", "other"), list(itertools.combinations_with_replacement(SORTS, 2)))
def test_no_two_known_sorts_are_left_to_the_default_unseen(one: str, other: str) -> None:
    assert wall_between(one, other) not in (BESIDE, INSIDE)
    assert wall_between(one, other) == wall_between(other, one)


@pytest.mark.parametrize(
    "other", [dot(50, 40, "dot 2"), line(50, 60), Hole(name="hole 1", x_mm=53, y_mm=42, diameter_mm=6)]
)
def test_a_kind_that_the_table_does_not_know_is_kept_apart_from_all_others(other: Feature) -> None:
    assert not said(dot(50 - 4 - LEAST_WALL_MM, 40), other)
    (problem,) = said(other, dot(50 - 4 - 0.4, 40))
    assert problem == ("dots", f"Only 0.4 mm of wood would stay between dot and {other.name}.")
    (problem,) = said(other, dot(49, 40))
    assert problem == ("dots", f"dot runs into {other.name}.")


def test_it_is_kept_inside_the_sign_too() -> None:
    assert not said(dot(1, 1))
    assert said(dot(0.5, 1)) == [("dots", "dot lies outside the sign or within 1 mm of its edge.")]
    assert said(dot(300, 1)) == [("dots", "dot lies outside the sign or within 1 mm of its edge.")]


def test_of_each_thing_only_the_nearest_is_said() -> None:
    assert said(dot(50, 40, "dot 1"), dot(40, 40, "dot 2"), dot(45.2, 40, "dot 3")) == [
        ("dots", "Only 0.8 mm of wood would stay between dot 3 and dot 1.")
    ]
    assert [what for _, what in said(dot(50, 40, "dot 1"), dot(41.5, 40, "dot 2"), dot(45.8, 40, "dot 3"))] == [
        "Only 0.2 mm of wood would stay between dot 3 and dot 1."
    ]


def test_measures_by_hand() -> None:
    hole, plate = Hole(name="hole", x_mm=10, y_mm=10, diameter_mm=6), dot(20, 8)
    assert apart_mm(hole, plate) == pytest.approx(20 - 10 - 3)
    assert inside_mm(hole, SIGN) == pytest.approx(10 - 3)
    assert inside_mm(replace(hole, x_mm=-10), SIGN) == pytest.approx(-10 - 3)
    assert off_outline_mm(replace(hole, x_mm=-10), SIGN) == pytest.approx(10 - 3)
    assert list(close_pairs((hole, plate, dot(30, 8)), 6.5)) == [(1, 2)]
