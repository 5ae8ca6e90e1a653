"""Clearance holes: ISO 273, and shop drill charts for wood screws by ASME B18.6.1."""

import pytest

from signgen.errors import AskError
from signgen.holes.screws import METRIC_CLEARANCE_MM, WOOD_CLEARANCE_IN, clearance_mm, head_of


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
    """A wood screw's shank is 0.060 + 0.013 N inches (ASME B18.6.1): the charts' fractions lie within 0.003 in
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


@pytest.mark.parametrize(
    ("screw", "sharp", "height"),
    [
        ("M3", 6.72, 1.86), ("M4", 8.96, 2.48), ("M5", 11.20, 3.1), ("M6", 13.44, 3.72), ("M8", 17.92, 4.96),
        ("M10", 22.40, 6.2),
    ],
)  # fmt: skip
def test_socket_heads_agree_with_iso_10642(screw, sharp, height):
    """ISO 7046; the published height k is (dk - d) / 2 of a 90 degree cone, which is derived here."""
    head = head_of(screw, "iso10642")
    assert (head.diameter_mm, head.angle_deg) == (sharp, 90)
    assert (head.diameter_mm - float(screw[1:])) / 2 == pytest.approx(height, abs=0.01)


@pytest.mark.parametrize(
    ("screw", "actual", "height"),
    [
        ("M3", 5.5, 1.65), ("M3.5", 7.3, 2.35), ("M4", 8.4, 2.7), ("M5", 9.3, 2.7), ("M6", 11.3, 3.3),
        ("M8", 15.8, 4.65), ("M10", 18.3, 5.0),
    ],
)  # fmt: skip
def test_recessed_heads_agree_with_iso_7046_and_2009(screw, actual, height):
    """The published greatest actual diameters and heights: a sharp edge lies further out than the
    actual one, and the height of its cone is k."""
    head = head_of(screw)
    assert head == head_of(screw, "iso7046")
    assert actual < head.diameter_mm < 1.2 * actual
    assert (head.diameter_mm - float(screw[1:])) / 2 == pytest.approx(height, abs=0.01)


@pytest.mark.parametrize(
    ("screw", "inches"), [("#4", [0.225]), ("#6", [0.279]), ("#8", [0.332]), ("#10", [0.385]), ("#12", [0.438]),
                          ("#14", [0.491, 0.507])],
)  # fmt: skip
def test_flat_wood_screw_heads_agree_with_asme_b18_6_1(screw, inches):
    """ASME B18.6.1, where No. 14 has two printed values; the old rule of the trade, twice the shank, is a rough
    check."""
    head = head_of(screw)
    assert any(head.diameter_mm == pytest.approx(value * 25.4, abs=1e-9) for value in inches)
    assert head.angle_deg == 82
    shank = (0.060 + 0.013 * int(screw[1:])) * 25.4
    assert 1.9 * shank < head.diameter_mm < 2.15 * shank


@pytest.mark.parametrize(
    ("screw", "where"), [("M12", "countersink"), ("M7", "countersink"), ("#7", "screw"), ("x", "screw")]
)
def test_says_which_heads_there_are(screw, where):
    with pytest.raises(AskError) as caught:
        head_of(screw)
    assert caught.value.problems[0].where == where
