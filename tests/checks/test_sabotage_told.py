"""What programs tell the control, and say of themselves, spoilt against the setup sheet: wrong cutters and lengths,
pauses that are gone, stops in the wood, feeds that burn, headings and air cuts of something else.

Each row: what was done, the spoilt job, the check that must speak, and the line that it must name (None: any).
"""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from signgen.checks import judge
from tests.checks.told import (
    BY_HAND,
    CHANGER,
    EXTRACTED,
    IN_THE_AIR,
    PLAIN,
    REPORTED,
    SAID,
    TOOLS,
    Told,
    edited,
    line_of,
    saying,
)

Row = tuple[str, Told, str, int | None]


def row(what: str, job: Told, code: str, word: str, new: str | None, *, text: int = 0, at: int = 0) -> Row:
    """A row whose line that begins with a word is replaced; `at`: how far after that line the harm is named."""
    spoilt, line = job.with_word(word, new, text=text)
    return what, spoilt, code, line + at


def air(what: str, word: str, new: str | None, at: int = 0) -> Row:
    assert IN_THE_AIR.lifted
    line = line_of(IN_THE_AIR.lifted, word)
    return what, Told(lifted=edited(IN_THE_AIR.lifted, ((line, new),))), "C140", line + at


V_TOLD = dict(SAID.programs[0]["tool"])  # type: ignore[call-overload]
WAY_TOLD = dict(SAID.programs[0]["extent"])  # type: ignore[call-overload]
CORNER = "bottom-left corner of the finished sign"
T1, T2 = line_of(CHANGER.texts[0], "T1"), line_of(CHANGER.texts[0], "T2")

TOLD_TABLE: tuple[Row, ...] = (
    # Which cutter.
    ("a changer's two cutters swapped", CHANGER.spoilt((T1, "T2 M6"), (T2, "T1 M6")), "C142", T1),
    row("T2 is T5", CHANGER, "C142", "T2", "T5 M6"),
    row("T2 is T1", CHANGER, "C142", "T2", "T1 M6", at=1),
    row("the second cutter is never called", CHANGER, "C142", "T2", None, at=0),
    row("no M6 after T2", CHANGER, "C142", "T2", "T2", at=1),
    row("the first cutter is never called", CHANGER, "C142", "T1", None, at=1),
    row("a cutter is called in a file for one", PLAIN, "C142", "G17", "G17 G21 G40 G49 G54 G80 G90 G94\nT2 M6", at=1),
    row("by hand, T2 is T3", BY_HAND, "C142", "T2", "T3 M6"),
    # Which length.
    row("G43 H2 is H1", CHANGER, "C142", "G43 H2", "G43 H1"),
    row("G43 H2 is H99", CHANGER, "C142", "G43 H2", "G43 H99"),
    row("G43 H1 is H2", CHANGER, "C142", "G43 H1", "G43 H2"),
    row("G43 H2 is left out", CHANGER, "C142", "G43 H2", None),
    row("G43 H1 is left out", CHANGER, "C142", "G43 H1", None),
    row("G49 for G43", CHANGER, "C142", "G43 H2", "G49"),
    row("G49 after G43", CHANGER, "C142", "G43 H2", "G43 H2\nG49", at=1),
    row("G49 between two cuts", CHANGER, "C142", "G0 Z14", "G0 Z14\nG49", at=1),
    row("a length where Z is set by the tip", PLAIN, "C142", "G0 Z40", "G43 H3\nG0 Z40"),
    # The pause for a change by hand.
    row("the pause for the change is left out", BY_HAND, "C142", "M0", None),
    row("the pause can be switched off", BY_HAND, "C142", "M0", "M1"),
    row("the pause is a dwell", BY_HAND, "C142", "M0", "G4 P5", at=1),
    row("the pause names another cutter", BY_HAND, "C144", "(MSG", "(MSG, fit the 3 mm end mill)", at=1),
    row("a stop between two cuts", PLAIN, "C142", "G0 Z14", "G0 Z14\nM0", at=1),
    # Speed and extraction.
    row("another speed than the sheet's", PLAIN, "C142", "M3", "M3 S12000"),
    row("the extraction is never switched on", EXTRACTED, "C142", "M8", None, at=4),
    row("mist for extraction", EXTRACTED, "C142", "M8", "M7", at=5),
    row("the extraction off half way", EXTRACTED, "C142", "G0 Z14", "G0 Z14\nM9", at=1),
    row("a word for extraction that the sheet does not name", PLAIN, "C142", "G4", "M8\nG4 P4"),
    # Stops and waits.
    row("an hour's dwell", PLAIN, "C143", "G4", "G4 P3600"),
    row("a dwell in the wood", PLAIN, "C143", "G1 X12.5", "G1 X12.5 Y17.5 Z6.5 F800\nG4 P2", at=1),
    row("a stop in the wood", PLAIN, "C143", "G1 X12.5", "G1 X12.5 Y17.5 Z6.5 F800\nM0", at=1),
    row("a stop in the wood that can be switched off", PLAIN, "C143", "G1 X12.5", "G1 X12.5 Y17.5 Z6.5 F800 M1"),
    row("the spindle stopped in the wood", PLAIN, "C143", "G1 X12.5", "G1 X12.5 Y17.5 Z6.5 F800\nM5", at=1),
    row("seventy dwells", PLAIN, "C143", "G4", "G4 P4\n" * 70),
    # Feeds.
    (
        "a feed of 10 mm/min throughout",
        replace(PLAIN, texts=tuple(re.sub(r" F\d+", " F10", text) for text in PLAIN.texts)),
        "C106",
        line_of(PLAIN.texts[0], "G1 X12.5"),
    ),
    row("one feed of 100 mm/min", PLAIN, "C106", "G1 X12.5", "G1 X12.5 Y17.5 Z6.5 F100"),
    # Ways down.
    (
        "a bore down at 43 degrees, for rounds of its helix are left out",
        PLAIN.spoilt(*((line_of(PLAIN.texts[1], f"G3 X46 Y20 Z{z} "), None) for z in (8, 7, 6, 5, 4)), text=1),
        "C114",
        line_of(PLAIN.texts[1], "G3 X46 Y20 Z8 "),
    ),
    # Parameters.
    row("a parameter that holds a work zero", PLAIN, "C103", "G17", "#5221=10\nG17 G21 G40 G49 G54 G80 G90 G94"),
    row("a parameter that is the program's own", PLAIN, "C103", "G17", "#1=10\nG17 G21 G40 G49 G54 G80 G90 G94"),
    # Headings.
    row("the heading names another cutter", PLAIN, "C144", "(Tool", "(Tool: 60 degree V-bit, 12 mm, 6 mm shank)"),
    row("the heading names another shank", PLAIN, "C144", "(Tool", f"(Tool: {TOOLS[0].label}, 8 mm shank)"),
    row("the heading names no cutter", PLAIN, "C144", "(Tool", "(Fool: 90 degree V-bit, 12 mm, 6 mm shank)", at=-2),
    row("the second cutter's heading names another", CHANGER, "C144", "(Cutter 2. Tool", "(Cutter 2. Tool: 5 mm mill)"),
    row("the heading says Z0 at the other face", PLAIN, "C144", "(Z0", "(Z0: top of the board)", text=1),
    row("the heading says the top elsewhere", PLAIN, "C144", "(The board's top", "(The board's top is at Z0)"),
    row("the heading says another board", PLAIN, "C144", "(Board", "(Board: 84 x 64 x 12 mm, Wood)"),
    row("the heading says X0 Y0 elsewhere", PLAIN, "C144", "(X0 Y0", "(X0 Y0: bottom-left corner of the board)"),
    row("the heading says X0 Y0 beside", PLAIN, "C144", "(X0 Y0", f"(X0 Y0: {CORNER}, 14 mm right of and 12 mm above)"),
    # Air cuts.
    ("an air cut of another program", Told(lifted=IN_THE_AIR.lifted.replace("Y43", "Y44")), "C140", None),
    air("an air cut with a line left out", "G1 X60", None),
    air("an air cut at another speed", "M3", "M3 S9000", at=2),
    air("an air cut at another feed", "G1 X-3 Y20 Z26.675", "G1 X-3 Y20 Z26.675 F1990"),
    # Report and pages.
    ("a report that names another cutter", saying(tool={**V_TOLD, "angle_deg": 60.0}), "C145", None),
    ("a report that says another speed", saying(spindle_rpm=12000.0), "C145", None),
    ("a report that says another feed", saying(feed_mm_per_min=990.0), "C145", None),
    ("a report that says another depth", saying(extent={**WAY_TOLD, "z_mm": [6.0, 40.0]}), "C145", None),
    ("a report of another file", saying(file="1-v-bit-60.nc"), "C145", None),
    ("a report that says Z zero at the other face", Told(papers=replace(SAID, z_zero="top")), "C145", None),
    ("a report of one program only", Told(papers=replace(SAID, programs=SAID.programs[:1])), "C145", None),
    ("a setup sheet that was changed", Told(papers=replace(SAID, changed=["setup.html"])), "C145", None),
)  # fmt: skip


@pytest.mark.parametrize(
    "job",
    [PLAIN, CHANGER, BY_HAND, IN_THE_AIR, EXTRACTED, REPORTED],
    ids=["plain", "changer", "by hand", "in the air", "extracted", "reported"],
)
def test_the_good_job_passes_every_check(job: Told) -> None:
    report = judge(job.case())
    assert [(result.code, str(finding.message)) for result, finding in report.findings()] == []
    assert report.passed


@pytest.mark.parametrize(("job", "code", "line"), [row[1:] for row in TOLD_TABLE], ids=[row[0] for row in TOLD_TABLE])
def test_what_is_told_otherwise_is_caught_at_its_line(job: Told, code: str, line: int | None) -> None:
    report = judge(job.case())
    assert not report.passed
    result = next(result for result in report.results if result.code == code)
    assert result.stops, [(other.code, str(finding.message)) for other, finding in report.findings()]
    named = {finding.line for finding in result.findings}
    assert line is None or line in named, [(finding.line, str(finding.message)) for finding in result.findings]
