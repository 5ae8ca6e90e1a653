import pytest
from msgspec.structs import replace

from signgen.drawing.drawing import Countersink, Hole
from signgen.job.hole_words import hole_noun, hole_sizes

HOLE = Hole(name="hole", x_mm=0, y_mm=0, diameter_mm=7)
SLOT = replace(HOLE, name="slot", diameter_mm=6.6, span_mm=5.4)
SUNK = replace(HOLE, diameter_mm=5.5, sink=Countersink(diameter_mm=10.4, angle_deg=90))


@pytest.mark.parametrize(
    ("holes", "noun", "sizes"),
    [
        ([HOLE], "hole", "⌀ 7"),
        ([HOLE, HOLE], "holes", "⌀ 7"),
        ([HOLE, replace(HOLE, diameter_mm=4)], "holes", "⌀ 4 and ⌀ 7"),
        ([SLOT], "slot", "6.6 × 12"),
        ([SLOT, SLOT], "slots", "6.6 × 12"),
        ([HOLE, SLOT, SLOT], "hole and slots", "6.6 × 12 and ⌀ 7"),
        ([SUNK, SUNK], "holes", "⌀ 5.5 sunk to ⌀ 10.4"),
    ],
)
def test_names_holes_and_their_sizes(holes, noun, sizes):
    assert hole_noun(holes) == noun
    assert hole_sizes(holes, "⌀ ").replace("\u00a0", " ") == sizes
