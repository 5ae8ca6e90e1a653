"""Clearance holes: ISO 273 (check-values 6.1), and shop drill charts for wood screws by ASME B18.6.1 (6.3)."""

import pytest

from signgen.errors import AskError
from signgen.holes.screws import METRIC_CLEARANCE_MM, WOOD_CLEARANCE_IN, clearance_mm


@pytest.mark.parametrize(
    ("screw", "fine", "medium", "coarse"),
    [
        ("M3", 3.2, 3.4, 3.6), ("M3.5", 3.7, 3.9, 4.2), ("M4", 4.3, 4.5, 4.8), ("M5", 5.3, 5.5, 5.8),
        ("M6", 6.4, 6.6, 7), ("M8", 8.4, 9, 10), ("M10", 10.5, 11, 12), ("M12", 13, 13.5, 14.5),
    ],
)  # fmt: skip
def test_metric_screws_agree_with_iso_273(screw, fine, medium, coarse):
    assert clearance_mm(screw) == medium
    assert [clearance_mm(screw, fit) for fit in ("fine", "medium", "coarse")] == [fine, medium, coarse]


@pytest.mark.parametrize(
    ("screw", "mm"),
    [
        ("#4", 7 / 64 * 25.4), ("#6", 9 / 64 * 25.4), ("#8", 4.365625), ("#10", 4.7625), ("#12", 5.55625),
        ("#14", 6.35),
    ],
)  # fmt: skip
def test_wood_screws_agree_with_the_drill_chart(screw, mm):
    assert clearance_mm(screw) == pytest.approx(mm, abs=1e-12)


def test_holes_agree_with_the_shanks():
    """A wood screw's shank is 0.060 + 0.013 N inches (check-values 6.3): the charts' fractions lie within 0.003 in
    under it (wood gives way) to 0.008 in over it. ISO 273 holes are wider than the thread."""
    for n, hole in WOOD_CLEARANCE_IN.items():
        assert -0.003 < float(hole) - (0.060 + 0.013 * n) < 0.0081
    for name, row in METRIC_CLEARANCE_MM.items():
        assert float(name[1:]) < row[0] < row[1] < row[2]


@pytest.mark.parametrize(
    ("typed", "same"), [("m5", "M5"), ("M 5", "M5"), ("No 8", "#8"), ("no.8", "#8"), ("# 8", "#8")]
)
def test_takes_other_ways_of_writing(typed, same):
    assert clearance_mm(typed) == clearance_mm(same)


@pytest.mark.parametrize("screw", ["M7", "M", "#7", "#", "8", "5mm", "M5x20", ""])
def test_offers_the_tables_for_an_unknown_screw(screw):
    with pytest.raises(AskError, match=r"^screw: There is no screw .* Choose from: M3, .*#14\.$"):
        clearance_mm(screw)


def test_a_wood_screw_has_no_fit():
    with pytest.raises(AskError, match=r"^screw-fit: "):
        clearance_mm("#8", "fine")
