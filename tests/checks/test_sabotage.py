"""Good programs spoilt in many ways: each is caught by the check that claims it, at the line that does the harm.

The table is data: what was done, the spoilt plate, the check that must speak, and the lines (of the spoilt file) one of
which it must name; () where no line is to blame. `bench_judge` prints the least errors that are seen.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from signgen.checks import CHECKS, judge
from signgen.checks.fixing import clamps_at, screws_at
from signgen.drawing.drawing import Drawing
from signgen.drawing.drawn_line import DrawnLine
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from tests.checks.paper_table import PAPER_TABLE
from tests.checks.places_and_lines import apart
from tests.checks.plate import (
    BEVELLED,
    CUT_OUT,
    DRAWING,
    END_MILL,
    ENGRAVE,
    LETTERED,
    MACHINE,
    RECESSED,
    SKINNED,
    SLOTTED,
    STOCK,
    SUNK,
    TOLD,
    V_BIT,
    ZERO,
    Plate,
    floored,
    tipped,
)
from tests.checks.test_sabotage_told import TOLD_TABLE

GOOD = Plate()
E, C = GOOD.engraving, GOOD.cutting
V_LINES = range(9, 18)
"""The engraving's lines below the safe height."""


def shifted(text: str, letter: str, by_mm: float, first: int = 1, last: int = 10**6) -> str:
    """The text with a number added to every word of one letter, in a range of lines."""
    lines = []
    for number, line in enumerate(text.splitlines(), 1):
        words = line.split(" ") if first <= number <= last and not line.startswith("(") else [line]
        moved = [f"{letter}{float(word[1:]) + by_mm:.4f}" if word[0] == letter else word for word in words]
        lines.append(" ".join(moved))
    return "\n".join(lines) + "\n"


def swapped_axes(text: str) -> str:
    return text.translate(str.maketrans("XY", "YX"))


def without(plate: Plate, first: int, last: int) -> Plate:
    return plate.cutting(*((number, None) for number in range(first, last + 1)))


def moved_block(text: str, first: int, last: int, before: int) -> str:
    """Lines first..last taken out and put before a later line."""
    lines = text.splitlines()
    block = lines[first - 1 : last]
    return "\n".join(lines[: first - 1] + lines[last : before - 1] + block + lines[before - 1 :]) + "\n"


def moved_copy(text: str, first: int, last: int, by_mm: float, gone_from: int = 1, gone_to: int = 0) -> str:
    """Lines first..last once more, beside themselves along X; lines gone_from..gone_to are left out."""
    lines = text.splitlines()
    copy = shifted("\n".join(lines[first - 1 : last]), "X", by_mm).splitlines()
    kept = [line for n, line in enumerate(lines[:last], 1) if not gone_from <= n <= gone_to]
    return "\n".join(kept + copy + lines[last:]) + "\n"


def with_lines(drawing: Drawing, text: str) -> Drawing:
    """The drawing as if some text had been ordered."""
    line = DrawnLine(
        text=text,
        source=0,
        font="barlow",
        label="Barlow",
        cap_height_mm=9,
        digit_height_mm=None,
        x_height_mm=None,
        baseline_mm=13,
        circle=None,
        stroke_mm=None,
        width_ratio=None,
        gaps_mm=(),
        leading_mm=None,
    )
    return replace(drawing, lines=(line,))


TABLE: tuple[tuple[str, Plate, str, tuple[int, ...] | range], ...] = (
    # The text.
    ("a word that no rule knows", E((10, "G1 X12.5 Y17.5 Z6.5 F800 Q5")), "C103", (10,)),
    ("a letter for a digit", E((10, "G1 X12.5 Y17.5 Z6.S F800")), "C103", (10,)),
    ("an arc's centre off by 0.1", C((29, "G2 X0 Y43 I3.1 J0")), "C103", (29,)),
    ("a line of the edge deleted before an arc", C((30, None)), "C103", (30,)),
    ("a tool change inside the file", E((12, "G0 Z14\nM5\nT2 M6\nM3\nG4 P4")), "C103", (17,)),
    ("two units in one file", E((13, "G0 X15 Y15\nG20")), "C103", (14,)),
    ("relative distances left on", E((13, "G91\nG0 X15 Y15")), "C103", (13,)),
    ("relative from the start", E((3, "G17 G21 G40 G49 G54 G80 G91 G94")), "C103", (3,)),
    ("no units stated", E((3, "G17 G40 G49 G54 G80 G90 G94")), "C103", (4,)),
    ("no plane stated", E((3, "G21 G40 G49 G54 G80 G90 G94")), "C103", (4,)),
    ("no work zero stated", E((3, "G17 G21 G40 G49 G80 G90 G94")), "C103", (4,)),
    ("no feed mode stated", E((3, "G17 G21 G40 G49 G54 G80 G90")), "C103", (4,)),
    ("compensation not cancelled", E((3, "G17 G21 G49 G54 G80 G90 G94")), "C103", (4,)),
    ("a curly quote in a comment", E((1, "(plate \u2019 60 x 40)")), "C103", (1,)),
    ("a line of 300 characters", E((1, "(" + "x" * 300 + ")")), "C103", (1,)),
    ("truncated in the middle of a line", replace(GOOD, cut_out=CUT_OUT[:700]), "C103", ()),
    ("truncated after a whole line", replace(GOOD, cut_out="\n".join(CUT_OUT.splitlines()[:50]) + "\n"), "C103", ()),
    ("an empty file", replace(GOOD, engrave=""), "C103", ()),
    # The machine.
    ("inches for millimetres", E((3, "G17 G20 G40 G49 G54 G80 G90 G94")), "C101", range(1, 22)),
    (
        "a machine that is too small along X",
        replace(GOOD, machine=replace(MACHINE, travel_mm=(65.9, 300, 80))),
        "C101",
        (31,),
    ),
    (
        "a machine with too little height",
        replace(GOOD, machine=replace(MACHINE, travel_mm=(300, 300, 14.2))),
        "C101",
        (20,),
    ),
    ("a board that is too small", replace(GOOD, stock=replace(STOCK, sign_x_mm=5.9, width_mm=77.9)), "C104", (27,)),
    (
        "a sign's zero on the board's corner",
        replace(GOOD, stock=replace(STOCK, sign_x_mm=0, sign_y_mm=0)),
        "C104",
        (27, 33),
    ),
    # Rapids.
    ("a retract left out", E((12, None)), "C102", (12,)),
    ("a rapid 0.1 mm too low", E((12, "G0 Z8.9")), "C102", (13,)),
    ("a rapid 0.4 mm over the board", E((12, "G0 Z9.4")), "C102", (13,)),
    ("G0 for G1", E((16, "G0 X12.5 Y17.5 Z6.5")), "C102", (16,)),
    ("a rapid plunge into the face", E((14, "G0 Z8.8")), "C102", (14,)),
    ("a rapid into a pass not yet cut", C((25, "G0 Z4.35")), "C102", (25,)),
    ("the first retract left out", E((4, None)), "C102", (6,)),
    ("the last retract left out", C((81, None)), "C102", (82,)),
    # Before the first cut and after the last.
    ("a first Z that a parked head dives to", E((4, "G0 Z14")), "C141", (4,)),
    ("across before the head is known to be up", E((4, "G0 X10 Y15\nG0 Z40")), "C141", (4,)),
    ("up and across in one line", E((4, "G0 X10 Y15 Z40")), "C141", (4,)),
    ("ends with the cutter in the work", E((17, None), (18, None), (20, None)), "C141", (16,)),
    ("ends beside the work, below its top", C((81, "G1 X-3 Y20"), (83, None)), "C141", (81,)),
    ("ends 5 mm over the board", E((18, "G0 Z14")), "C141", (20,)),
    # The spindle.
    ("the spindle is never started", E((5, None)), "C105", (9, 10)),
    ("the spindle starts late", C((5, None), (11, "G3 X46 Y20 Z8 I-1 J0\nM3 S16000")), "C105", (9, 10)),
    ("no dwell", E((6, None)), "C105", (9, 10)),
    ("a dwell in milliseconds' thousandth", E((6, "G4 P0.004")), "C105", (10, 11)),
    ("a dwell 0.1 s too short", E((6, "G4 P3.9")), "C105", (10,)),
    ("the spindle backwards", E((5, "M4 S16000")), "C105", (10,)),
    ("the spindle stopped half way", E((12, "G0 Z14\nM5")), "C105", (17,)),
    ("started again without a dwell", E((12, "G0 Z14\nM5\nM3")), "C105", (18,)),
    ("a speed that the machine lacks", E((5, "M3 S30000")), "C105", (10,)),
    ("a crawling spindle", E((5, "M3 S1600")), "C105", (10,)),
    ("left running at the end", E((19, None)), "C105", (20,)),
    # Feeds.
    ("a feed tenfold", E((10, "G1 X12.5 Y17.5 Z6.5 F8000")), "C106", (10,)),
    ("a plunge tenfold", C((26, "G1 Z9 F3000")), "C106", (26,)),
    ("a feed of three times the chip load", C((28, "G1 X-3 Y40 F9000")), "C106", (28,)),
    (
        "a plunge at the feed for going across",
        E((11, "G0 Z10\nG0 X12.5 Y17.5\nG1 Z6.5 F750\nG1 X15 Y20 Z9 F800")),
        "C106",
        (13,),
    ),
    (
        "a fast way down beside a groove that is cut",
        E((17, "G1 X10 Y20 Z9\nG0 Z10\nG0 X12.8 Y17.5\nG1 Z6.5 F750")),
        "C102",
        (20,),
    ),
    # Depth.
    ("a millimetre into the table", C((60, "G1 X-3 Y20 Z-1.3 F400")), "C107", (60,)),
    ("Z zero at the top", replace(GOOD, engrave=shifted(ENGRAVE, "Z", -9)), "C107", (10, 16)),
    ("the board's bottom 0.003 mm too deep", C((60, "G1 X-3 Y20 Z-0.303 F400")), "C107", (60,)),
    ("the V-bit below the greatest depth", E((10, "G1 X12.5 Y17.5 Z5.9 F800")), "C107", (10,)),
    (
        "edges shorter than the board",
        replace(GOOD, tools=(V_BIT, replace(END_MILL, cutting_length_mm=9))),
        "C117",
        (60, 20),
    ),
    (
        "the collet's nut on the board",
        replace(GOOD, tools=(V_BIT, replace(END_MILL, stickout_mm=10))),
        "C117",
        (60, 20),
    ),
    ("a V-bit too small for the groove", replace(GOOD, tools=(replace(V_BIT, diameter_mm=4), END_MILL)), "C117", (10,)),
    ("a pass left out", without(GOOD, 38, 48), "C118", (38,)),
    ("straight down to the bottom", C((27, "G1 Z-0.3 F300\nG1 X-3 Y20 F400")), "C118", (27,)),
    (
        "a ramp too steep for a cutter that cannot plunge",
        replace(GOOD, tools=(V_BIT, replace(END_MILL, can_plunge=False))),
        "C114",
        (66,),
    ),
    # Letters.
    ("a groove moved by 0.15", replace(GOOD, engrave=shifted(ENGRAVE, "X", 0.15, 7, 17)), "C109", V_LINES),
    ("a groove moved by 0.03", replace(GOOD, engrave=shifted(ENGRAVE, "X", 0.03, 7, 17)), "C116", V_LINES),
    ("0.06 too deep", replace(GOOD, engrave=shifted(ENGRAVE, "Z", -0.06, 9, 17)), "C109", V_LINES),
    ("0.06 too shallow", replace(GOOD, engrave=shifted(ENGRAVE, "Z", 0.06, 9, 17)), "C108", V_LINES),
    ("0.03 too deep", replace(GOOD, engrave=shifted(ENGRAVE, "Z", -0.03, 9, 17)), "C116", V_LINES),
    ("0.03 too shallow", replace(GOOD, engrave=shifted(ENGRAVE, "Z", 0.03, 9, 17)), "C116", V_LINES),
    ("0.016 too deep", replace(GOOD, engrave=shifted(ENGRAVE, "Z", -0.016, 9, 17)), "C116", V_LINES),
    ("the middle 0.06 too deep", E((10, "G1 X12.5 Y17.5 Z6.44 F800")), "C116", (10, 11)),
    ("a line deleted", E((10, None)), "C108", V_LINES),
    ("a sign flipped", E((10, "G1 X-12.5 Y17.5 Z6.5 F800")), "C109", (10, 11)),
    ("the axes swapped", replace(GOOD, engrave=swapped_axes(ENGRAVE)), "C109", V_LINES),
    ("a bit of 60 degrees fitted", replace(GOOD, tools=(replace(V_BIT, angle_deg=60), END_MILL)), "C108", V_LINES),
    ("a bit of 100 degrees fitted", replace(GOOD, tools=(replace(V_BIT, angle_deg=100), END_MILL)), "C109", V_LINES),
    ("a blunt bit fitted", replace(GOOD, tools=(replace(V_BIT, tip_mm=0.2), END_MILL)), "C116", V_LINES),
    ("the groove's second stroke missing", E((16, None)), "C108", V_LINES),
    ("the engraving of another sign", replace(GOOD, engrave=shifted(ENGRAVE, "X", 12, 7, 17)), "C108", V_LINES),
    ("ridges 0.15 mm high where 0.1 was asked for", floored(0.3), "C108", range(9, 60)),
    # What is not drawn.
    (
        "a stray scratch 0.2 mm wide",
        E((18, "G0 Z14\nG0 X20 Y10\nG1 Z8.9 F300\nG1 X27 Y13.1 F800\nG0 Z14")),
        "C109",
        (20, 21),
    ),
    (
        "a scratch too fine for cells",
        E((18, "G0 Z14\nG0 X20 Y10\nG1 Z8.97 F300\nG1 X27 Y13.1 F800\nG0 Z14")),
        "C116",
        (20, 21),
    ),
    (
        "a cut in the board's waste",
        E((18, "G0 Z14\nG0 X70 Y10\nG1 Z8 F300\nG1 X70 Y15 F800\nG0 Z14")),
        "C109",
        (20, 21),
    ),
    ("a pocket nobody drew", C((23, "G0 Z14\nG0 X25 Y30\nG1 Z8 F300\nG1 X28 F800\nG0 Z14")), "C109", (25, 26)),
    # Holes.
    ("a hole missed", without(GOOD, 7, 23), "C110", ()),
    (
        "a hole not through",
        C((20, None), (21, "G3 X46 Y20 Z0.2 I-1 J0\nG3 X46 Y20 I-1 J0"), (19, None)),
        "C110",
        range(7, 25),
    ),
    (
        "a hole just not through",
        C((19, "G3 X46 Y20 Z0.1 I-1 J0"), (20, "G3 X46 Y20 Z0.01 I-1 J0")),
        "C110",
        range(7, 25),
    ),
    ("a hole moved by 0.1", replace(GOOD, cut_out=shifted(CUT_OUT, "X", 0.1, 7, 22)), "C110", range(7, 23)),
    ("a hole moved by 0.06", replace(GOOD, cut_out=shifted(CUT_OUT, "Y", 0.06, 7, 22)), "C110", range(7, 23)),
    ("an arc's centre off: a wider hole", C((20, "G3 X46 Y20 Z-0.3 I-1.1 J0")), "C110", (20,)),
    (
        "a hole too narrow by 0.1",
        C(*((n, CUT_OUT.splitlines()[n - 1].replace("X46", "X45.93").replace("I-1", "I-0.93")) for n in range(7, 22))),
        "C110",
        range(7, 23),
    ),
    ("no full circle at the hole's bottom", C((20, "G2 X45 Y19 Z-0.3 I-1 J0"), (21, None)), "C110", range(7, 25)),
    (
        "the hole's core left standing",
        replace(
            GOOD,
            drawing=DRAWING.having(Hole, (replace(DRAWING.of(Hole)[0], diameter_mm=14),)),
            cut_out="\n".join(
                line.replace("X46 Y20", "X49 Y20").replace("I-1", "I-4")
                for line in CUT_OUT.splitlines()
                if line != "G1 X45 Y20 F800"
            )
            + "\n",
        ),
        "C110",
        (),
    ),
    # The edge.
    (
        "a smaller cutter fitted",
        replace(GOOD, tools=(V_BIT, replace(END_MILL, diameter_mm=5.8))),
        "C111",
        range(27, 81),
    ),
    ("a larger cutter fitted", replace(GOOD, tools=(V_BIT, replace(END_MILL, diameter_mm=6.2))), "C111", range(27, 81)),
    (
        "a cutter 0.12 mm too small",
        replace(GOOD, tools=(V_BIT, replace(END_MILL, diameter_mm=5.88))),
        "C111",
        range(27, 81),
    ),
    ("the last pass left out", without(GOOD, 60, 80), "C111", range(27, 60)),
    ("the last pass stops half way", C(*((n, None) for n in range(71, 81))), "C111", range(27, 81)),
    (
        "one side 0.1 mm in",
        C((63, "G1 X24.5 Y42.9"), (65, "G1 X35.5 Y42.9"), (68, "G1 X60 Y42.9\nG1 Y43")),
        "C111",
        (63, 65, 68),
    ),
    (
        "one side 0.1 mm out on every pass",
        replace(
            GOOD,
            cut_out="\n".join(
                line.replace("Y43", "Y43.1").replace("Y40 F", "Y40.1 F").replace("Y40 I", "Y40.1 I")
                for line in CUT_OUT.splitlines()
            )
            + "\n",
        ),
        "C111",
        range(27, 81),
    ),
    # Tabs.
    ("a tab not lifted over", C((64, None)), "C112", (64, 65)),
    ("no tab at all", C((64, None), (73, None)), "C112", (64, 65, 72, 73)),
    ("a tab 0.1 mm too low", C((64, "G1 Z1.4 F300")), "C112", (65, 64)),
    ("a tab 0.2 mm too narrow", C((63, "G1 X24.7 Y43")), "C112", (63, 64)),
    ("a tab at another place", C((63, "G1 X14.5 Y43"), (65, "G1 X25.5 Y43 F800")), "C112", (66, 68)),
    ("a tab that is too high", C((64, "G1 Z2.4 F300")), "C111", range(27, 81)),
    (
        "one tab too many",
        C((70, "G1 X63 Y25.5\nG1 Z1.5 F300\nG1 Y14.5 F800\nG1 Z-0.3 F300\nG1 X63 Y0 F800")),
        "C111",
        range(27, 85),
    ),
    (
        "a tab drawn where none was cut",
        replace(
            GOOD,
            drawing=DRAWING.having(
                Tab,
                (
                    *DRAWING.of(Tab),
                    Tab(name="tab 3", x_mm=0, y_mm=20, along_x=0, along_y=-1, width_mm=5, height_mm=1.5),
                ),
            ),
        ),
        "C112",
        (60, 61, 79, 80),
    ),
    # What comes loose.
    ("no tab left standing", C((64, None), (73, None)), "C119", range(60, 85)),
    (
        "a strip cut out of the waste",
        replace(
            GOOD,
            stock=replace(STOCK, width_mm=140),
            cut_out=CUT_OUT.replace(
                "G0 X-3 Y35\n",
                "G0 X80 Y5\nG0 Z10\nG1 Z-0.3 F300\nG1 X110 F800\nG1 Y30\nG1 X80\nG1 Y5\nG0 Z14\nG0 X-3 Y35\n",
            ),
        ),
        "C119",
        (),
    ),
    # Countersinks and slots.
    ("a countersink left out", replace(SUNK, engrave=ENGRAVE), "C120", ()),
    ("a countersink not down to its hole", SUNK.engraving((23, None), (24, None)), "C120", ()),
    (
        "a countersink 0.1 too wide",
        SUNK.engraving((19, "G0 X49.85 Y20"), (22, "G3 X49.85 Y20 I-4.85 J0 F800")),
        "C120",
        (22,),
    ),
    ("a countersink 0.1 too deep", SUNK.engraving((21, "G1 Z8.15 F300")), "C120", (21, 22)),
    ("a countersink 0.1 too shallow", SUNK.engraving((21, "G1 Z8.35 F300"), (23, "G1 X49 Y20 Z7.6 F300")), "C120", ()),
    ("a countersink 0.1 beside its hole", replace(SUNK, engrave=shifted(SUNK.engrave, "X", 0.1, 18, 24)), "C120", ()),
    ("half a countersink", SUNK.engraving((24, "G3 X41 Y20 I-4 J0 F800\nG1 X49 Y20")), "C120", ()),
    ("a slot drawn 0.2 longer", SLOTTED.with_hole(span_mm=4.2), "C110", ()),
    ("a slot drawn in another direction", SLOTTED.with_hole(angle_deg=75), "C110", ()),
    ("a slot drawn as a round hole", SLOTTED.with_hole(span_mm=0), "C110", ()),
    (
        "a slot with one end too far out",
        SLOTTED.cutting((51, "G1 X46 Y22.2 Z-0.3"), (52, "G3 X44 Y22.2 I-1 J0")),
        "C110",
        (51, 52),
    ),
    (
        "a slot not through",
        SLOTTED.cutting((43, "G1 X46 Y22 Z0.2"), *((number, None) for number in range(47, 55))),
        "C110",
        (),
    ),
    ("a skin cut through", SKINNED.cutting((60, "G1 X-3 Y20 Z-0.1 F400")), "C131", (60, 61)),
    # Units and zero.
    ("Z zero at the top, as told apart", replace(GOOD, engrave=shifted(ENGRAVE, "Z", -9)), "C123", (10, 16)),
    ("inches, as told apart", E((3, "G17 G20 G40 G49 G54 G80 G90 G94")), "C123", ()),
    (
        "zero in the board's middle",
        replace(GOOD, cut_out=shifted(shifted(CUT_OUT, "X", -30), "Y", -20)),
        "C123",
        (),
    ),
    ("a cut in the air", replace(GOOD, engrave=shifted(ENGRAVE, "Z", 5, 9)), "C123", (9, 10, 16)),
    # Screws and clamps.
    ("a screw in the edge's way", replace(GOOD, fixings=screws_at([(-8, 20)], ZERO)), "C124", range(27, 84)),
    ("a screw 0.4 mm beside the cut", replace(GOOD, fixings=screws_at([(-10.9, 20)], ZERO)), "C124", range(27, 84)),
    (
        "a rapid through a clamp",
        replace(C((81, "G0 Z14")), fixings=clamps_at([(-6, 44, 2, 49)], 10, ZERO)),
        "C124",
        (83,),
    ),
    (
        "a rapid 0.5 mm over a clamp",
        replace(C((81, "G0 Z14")), fixings=clamps_at([(-6, 47, 2, 50)], 4.5, ZERO)),
        "C124",
        (83,),
    ),
    (
        "the collet's nut in a clamp",
        replace(GOOD, fixings=clamps_at([(-40, 10, -15, 30)], 30, ZERO)),
        "C124",
        range(27, 84),
    ),
    # The text.
    ("a letter missing", LETTERED.engraving(*((n, None) for n in range(19, 30))), "C125", ()),
    ("a letter in part", LETTERED.engraving((26, "G1 Y17")), "C125", ()),
    (
        "a letter twice",
        replace(LETTERED, engrave=moved_copy(LETTERED.engrave, 19, 30, 10)),
        "C125",
        (),
    ),
    (
        "one letter for another",
        replace(LETTERED, engrave=moved_copy(LETTERED.engrave, 19, 30, -10.5, 7, 17)),
        "C125",
        (),
    ),
    ("a letter ordered and not drawn", replace(LETTERED, drawing=with_lines(LETTERED.drawing, "DIN")), "C125", ()),
    ("a letter drawn and not ordered", replace(LETTERED, drawing=with_lines(LETTERED.drawing, "D")), "C125", ()),
    ("a tip hardly narrower than the letter's strokes", tipped(1.92), "C125", ()),
    # Recesses.
    ("a floor too deep", replace(RECESSED, cut_out=RECESSED.cut_out.replace("X23 Z7\n", "X23 Z6.9\n")), "C126", ()),
    ("a floor too shallow", replace(RECESSED, cut_out=RECESSED.cut_out.replace("X23 Z7\n", "X23 Z7.1\n")), "C126", ()),
    (
        "a wall too far out",
        replace(RECESSED, cut_out=RECESSED.cut_out.replace("G1 Y31\nG1 X23\n", "G1 Y31.02\nG1 X23\n")),
        "C126",
        (),
    ),
    (
        "a wall not reached",
        replace(RECESSED, cut_out=RECESSED.cut_out.replace("G1 Y31\nG1 X23\n", "G1 Y30.98\nG1 X23\n")),
        "C126",
        (),
    ),
    ("a floor left out", replace(RECESSED, cut_out=CUT_OUT), "C126", ()),
    # The bevelled edge.
    ("a bevel left out", replace(BEVELLED, engrave=ENGRAVE), "C134", ()),
    ("a bevel 0.1 too wide", BEVELLED.engraving((22, "G1 X0 Y40 Z6.9 F400")), "C134", ()),
    ("a bevel 0.1 too narrow", BEVELLED.engraving((22, "G1 X0 Y40 Z7.1 F400")), "C134", ()),
    ("a bevel that is not all round", BEVELLED.engraving((26, None)), "C134", ()),
    (
        "a bevel 0.1 further in on one side",
        replace(BEVELLED, engrave=BEVELLED.engrave.replace("X60", "X59.9")),
        "C134",
        (),
    ),
    (
        "a bevel by a bit that goes too deep",
        BEVELLED.engraving(
            (20, "G0 X-0.5 Y20"),
            (22, "G1 X-0.5 Y40.5 Z6.5 F400"),
            (23, "G1 X60.5 Y40.5 F800"),
            (24, "G1 X60.5 Y-0.5"),
            (25, "G1 X-0.5 Y-0.5"),
            (26, "G1 X-0.5 Y40.5"),
        ),
        "C107",
        (),
    ),
    # What only warns.
    ("2 mm of wood under a groove", E((10, "G1 X12.5 Y17.5 Z2 F800")), "C115", (10,)),
    ("held from one side", replace(GOOD, drawing=DRAWING.having(Tab, (DRAWING.of(Tab)[0],))), "C132", ()),
    # Order.
    ("the programs in the wrong order", replace(GOOD, order=(1, 0)), "C113", (9, 10)),
    ("the files named in the wrong order", replace(GOOD, files=("2-v-bit-90.nc", "1-end-mill-6.nc")), "C113", ()),
    ("the hole after the edge", replace(GOOD, cut_out=moved_block(CUT_OUT, 7, 23, 82)), "C113", range(64, 82)),
    *PAPER_TABLE,
)


@pytest.mark.parametrize(
    "plate",
    [
        GOOD,
        SUNK,
        BEVELLED,
        SLOTTED,
        RECESSED,
        LETTERED,
        replace(LETTERED, drawing=with_lines(LETTERED.drawing, "D I")),
        SKINNED,
        floored(0.2),
    ],
    ids=["plate", "countersunk", "bevelled", "slotted", "recessed", "lettered", "as ordered", "skinned", "floored"],
)
def test_the_good_plate_passes_every_check(plate: Plate) -> None:
    if plate is GOOD:
        plate = replace(plate, told=TOLD)
    report = judge(plate.case())
    assert [(result.code, str(finding.message)) for result, finding in report.findings()] == []
    assert report.passed
    assert all(str(result.detail) for result in report.results)


@pytest.mark.parametrize(("plate", "code", "lines"), [row[1:] for row in TABLE], ids=[row[0] for row in TABLE])
def test_sabotage_is_caught_by_the_check_that_claims_it(
    plate: Plate, code: str, lines: tuple[int, ...] | range
) -> None:
    case = plate.case()
    report = judge(case)
    assert not report.passed
    assert apart(case, report) == []
    result = next(result for result in report.results if result.code == code)
    assert result.findings, [(other.code, str(finding.message)) for other, finding in report.findings()]
    named = {finding.line for finding in result.findings}
    assert not lines or named & set(lines), [(finding.line, str(finding.message)) for finding in result.findings]


def test_every_check_is_tried() -> None:
    tried = {row[2] for row in (*TABLE, *TOLD_TABLE)}
    assert tried == {check.code for check in CHECKS}
