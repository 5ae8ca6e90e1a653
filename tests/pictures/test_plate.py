"""Marks on paper."""

from __future__ import annotations

import itertools
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box

from signgen.pictures.plate import Figure, area_path, spread, text_width

SVG = "{http://www.w3.org/2000/svg}"


@given(st.lists(st.floats(0, 100), max_size=12), st.floats(1, 12))
def test_spread_labels_keep_their_order_and_never_overlap(wanted: list[float], size: float) -> None:
    wanted.sort()
    places = spread(wanted, size, -5, 105)
    if places is None:
        assert len(wanted) * size > 110
        return
    assert all(b - a >= size - 1e-6 for a, b in itertools.pairwise(places))
    assert all(-5 + size / 2 - 1e-6 <= p <= 105 - size / 2 + 1e-6 for p in places)


def test_labels_with_room_stay_where_they_are_wanted() -> None:
    assert spread([10, 30, 90], 5, 0, 100) == [10, 30, 90]


def test_two_labels_at_one_place_part_evenly() -> None:
    assert spread([50, 50], 6, 0, 100) == [47, 53]


def test_a_dimension_with_room_has_its_text_between_and_one_without_has_it_beyond() -> None:
    plate = Figure("t", 100, 50, "t", "t")
    plate.across(10, 60, 20, "50")
    plate.across(10, 12, 30, "2")
    wide, narrow = plate.labels
    assert 10 < wide.box[0] < wide.box[2] < 60
    assert narrow.box[0] > 12


def test_a_turned_label_takes_its_room_upwards() -> None:
    plate = Figure("t", 100, 50, "t", "t")
    plate.text("1234", 20, 30, turned=True)
    left, top, right, bottom = plate.labels[0].box
    assert bottom - top == pytest.approx(text_width("1234"))
    assert right - left < 3


def test_the_drawing_parses_and_escapes_its_texts() -> None:
    plate = Figure("t", 100, 50, "A <b> title", "it's & more")
    plate.text("<x> & y", 10, 10)
    plate.area(box(0, 0, 4, 4), fill=plate.hatching("#777", 1))
    root = ET.fromstring(plate.svg())
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("100mm", "50mm", "0 0 100 50")
    assert root.findtext(f"{SVG}text") == "<x> & y"
    assert root.findtext(f"{SVG}title") == "A <b> title"


def test_ids_carry_the_drawings_name_so_that_two_share_a_page() -> None:
    names = []
    for name in ("one", "two"):
        plate = Figure(name, 10, 10, "t", "t")
        plate.hatching("#777", 1)
        names += [element.get("id") for element in ET.fromstring(plate.svg()).iter() if element.get("id")]
    assert len(names) == len(set(names)) == 2


def test_path_data_closes_every_ring() -> None:
    assert area_path(box(0, 0, 2, 1).difference(box(0.5, 0.25, 1, 0.5))).count("Z") == 2
    assert area_path(Polygon()) == ""
