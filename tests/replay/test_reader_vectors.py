"""What the published rules accept and refuse.

Source of every vector: NIST IR 6556 (Kramer, Proctor, Messina, 2000).
"""

from __future__ import annotations

import pytest

from signgen.replay.reader import read_program

BEGIN = "G21 G17 G90 G94\nF100 S1000 M3\n"
"""A feed rate and a turning spindle, so that only the line under test can be at fault (it is line 3)."""


def faults_of(line: str, before: str = BEGIN) -> list[int]:
    replay = read_program(f"{before}{line}\nM2\n", start_mm=(0.0, 0.0, 0.0))
    careful = read_program(f"{before}{line}\nM2\n", start_mm=(0.0, 0.0, 0.0), in_batches=False)
    assert replay.faults == careful.faults
    return [fault.line for fault in replay.faults]


ACCEPTED = [
    "g0x +0. 12 34y 7",
    "g40 g1 #3=15 (foo) #4=-7.0 x1",
    "g1 x1 #3=15 (foo) g40 #4=-7.0",
    "G80 M5 (stop motion)",
    "/N5 G1 X1.",
    "G90 G81 G98 X4 Y5 Z1.5 R2.8",
    "G0 X32.5\nG2 X32.5 J2.5",
    "T1 M6 M3 F20 S4000",
    "",
    "   \t ",
    "/",
    "n00009 g1x.5y-.5z+3.f200.",
    "N0 G0 X1\nN0 G0 X2",
    "G1 X-0",
    "G1 X1.0000000000000001",
    "(one) G0 (two) X1 (msg, three)",
    "( MSG,hello)",
    "()",
    "M3.00001",
    "G1 X[1+2*[3-1]**2/4] Y#[2+1] Z-1.",
    "G0 X sin[30] Y atan[1]/[1]",
    "#1=2 #1=3",
    "G38.2 Z-1",
    "G59.1 G61.1 G0 X1",
    "G10 L2 P1 X1 Y2",
    "G92 X1\nG92.2\nG92.3\nG92.1",
    "G28\nG30 X1",
    "G53 G0 X1",
    "G43 H1\nG49",
    "G41 D1\nG40",
    "G93\nG1 X1 F2\nG94",
    "G18 G2 X1 Z1 I1 K0",
    "G19 G3 Y1 Z1 J1",
    "G0 A5",
    "M7\nM8\nM9\nM48\nM49\nM60",
    "M3 M7 M48 M0",
    "G4 P0",
    "G4 P1 G1 X1",
    "S0",
    "G2 X1 Y1 R1",
    "G2 X1 Y1 R-1",
    "G0 X1 G17 G21 G40 G49 G54 G64 G90 G94 G98",
]

REFUSED = [
    ("G0 G1 X1", "group 1 twice"),
    ("M3 M5", "group 7 twice"),
    ("M7 M8", "group 8 twice"),
    ("M3 M7 M48 M0 M6", "five M words"),
    ("X1 X2", "a letter twice"),
    ("G1 X1 X2", "a letter twice"),
    ("(a (b))", "nested comment"),
    ("(a", "open comment"),
    ("G0 X1)", "a closing parenthesis by itself"),
    ("; note", "no comment here"),
    ("O100", "not a letter of the language"),
    ("U5", "not a letter of the language"),
    ("V5", "not a letter of the language"),
    ("W5", "not a letter of the language"),
    ("E5", "not a letter of the language"),
    ("N000009 G0 X1", "six digits"),
    ("N G0 X1", "no digit"),
    ("N-5 G0 X1", "a sign"),
    ("N1.5 G0 X1", "a decimal"),
    ("G0 X1 N5", "line number not first"),
    ("X1 N5", "line number not first"),
    ("(a) N5 G0 X1", "line number after a comment"),
    ("N5 /G0 X1", "block delete not first"),
    ("G1 X1e3", "an exponent"),
    ("G1 X-", "no digit"),
    ("G1 X.", "no digit"),
    ("G1 X", "no number"),
    ("G1 X1..2", "two dots"),
    ("G1 X1,5", "decimal comma"),
    ("G1 X+-1", "two signs"),
    ("G1 X1(a)2", "a comment inside a number"),
    ("G0", "no axis word"),
    ("G1", "no axis word"),
    ("G2 I1", "no axis word"),
    ("G2 X1 Y1", "no centre, no radius"),
    ("G2 Z1 I1", "no axis word in the plane"),
    ("G2 X1 Y1 I1 R2", "both centre and radius"),
    ("G17 G2 X1 Y1 I1 K1", "K in the XY plane"),
    ("G18 G2 X1 Z1 I1 J1", "J in the XZ plane"),
    ("G19 G2 Y1 Z1 J1 I1", "I in the YZ plane"),
    ("G2 X0 Y0 R5", "radius format back to the start"),
    ("G2 X10 Y0 R4.9", "radius too small"),
    ("G2 X10.003 Y0 I5", "radii 0.003 mm apart"),
    ("G80 X1", "G80 with an axis word"),
    ("G80\nX1", "axis word after G80"),
    ("G81 X1 Y1 Z-1", "first cycle without R"),
    ("G81 X1 Y1 R2", "first cycle without Z"),
    ("G81 R2", "cycle without X, Y, Z"),
    ("G81 X1 Z2 R1", "R below Z"),
    ("G81 X1 Z-1 R1 L0", "no repeat"),
    ("G81 X1 Z-1 R1 L-2", "negative repeat"),
    ("G81 X1 Z-1 R1 L1.5", "half a repeat"),
    ("G82 X1 Z-1 R1", "G82 without P"),
    ("G89 X1 Z-1 R1", "G89 without P"),
    ("G83 X1 Z-1 R1", "G83 without Q"),
    ("G83 X1 Z-1 R1 Q0", "Q of nothing"),
    ("G83 X1 Z-1 R1 Q-1", "negative Q"),
    ("G93 G81 X1 Z-1 R1", "cycle in inverse time"),
    ("M5 G84 X1 Z-1 R1", "tapping with a still spindle"),
    ("G81 X1 Z-1 R1 A5", "a turning axis in a cycle"),
    ("G4", "dwell without P"),
    ("G4 P-1", "negative dwell"),
    ("H1", "H without G43"),
    ("G43", "G43 without H"),
    ("G43 H-1", "negative H"),
    ("G43 H1.5", "half an H"),
    ("D1", "D without G41 or G42"),
    ("S-1", "negative speed"),
    ("T-1", "negative tool"),
    ("T1.5", "half a tool"),
    ("F-1", "negative feed"),
    ("P1", "P without a user"),
    ("Q1", "Q without a user"),
    ("L1", "L without a user"),
    ("R1", "R without a user"),
    ("I1", "I without a user"),
    ("G1 X1 I1", "I without a user"),
    ("G81 X1 Z-1 R1 Q1", "Q without a user"),
    ("G5", "not a code of the language"),
    ("G33 Z1", "not a code of the language"),
    ("G40.1", "not a code of the language"),
    ("G90.1", "not a code of the language"),
    ("G95", "not a code of the language"),
    ("G96", "not a code of the language"),
    ("G100", "not a code of the language"),
    ("G-1 X1", "a negative code"),
    ("G1.5 X1", "not a code of the language"),
    ("M98", "not a code of the language"),
    ("M99", "not a code of the language"),
    ("M19", "not a code of the language"),
    ("M3.5", "not a whole number"),
    ("G10 X1 G1 Y1", "two users of the axis words"),
    ("G92 X1 G1", "two users of the axis words"),
    ("G28 X1 G0", "two users of the axis words"),
    ("G92", "no axis word"),
    ("G10 L3 P1 X1", "G10 without L2"),
    ("G10 L2 P10 X1", "no such work zero"),
    ("G10 L2 X1", "G10 without P"),
    ("G80 G53", "G53 going nowhere"),
    ("G80\nG53 X1", "G53 without a motion code in force"),
    ("G61.1 G64", "group 13 twice"),
    ("G53 G2 X1 I1", "G53 with an arc"),
    ("G0 X1\nG53", "G53 going nowhere"),
    ("G93\nG1 X1", "inverse time without F"),
    ("G1 X#0", "no such parameter"),
    ("G1 X#5400", "no such parameter"),
    ("#5400=1", "no such parameter"),
    ("#1", "a setting without a value"),
    ("G1 X[1+]", "an unfinished expression"),
    ("G1 X[1", "an open expression"),
    ("G1 X[1/0]", "no value"),
    ("G1 X ln[-1]", "no value"),
    ("G1 X[[0-2]**0.5]", "no value"),
    ("G1 X[9**9**9]", "too large"),
    ("G1 X" + "9" * 200, "too large"),
    ("G1 X atan[1]", "one value for two"),
    ("G1 X1 é", "not ASCII"),
    ("(caf\u00e9)", "not ASCII"),
    ("G1 X\u0661", "a digit, but not of ASCII"),
    ("G1 X1\x0b", "white space, but not a space or a tab"),
    ("G1 X1" + " " * 252, "257 characters"),
    ("G1 X" + "[" * 100 + "1" + "]" * 100, "nested beyond reason"),
    ("%", "a % line in the middle"),
    ("G0 X1 %", "a % among words"),
]


@pytest.mark.parametrize("line", ACCEPTED)
def test_accepts(line: str) -> None:
    assert faults_of(line) == []


@pytest.mark.parametrize(("line", "reason"), REFUSED)
def test_refuses_on_the_line_itself(line: str, reason: str) -> None:
    assert faults_of(line) == [3 + line.count("\n")], reason


def test_accepts_a_line_of_256_characters() -> None:
    assert faults_of("G1 X1" + " " * 251) == []


def test_refuses_feeding_when_no_feed_rate_was_ever_given() -> None:
    assert faults_of("G1 X1", before="G21\n\n") == [3]
    assert faults_of("G2 X1 I.5", before="G21\n\n") == [3]
    assert faults_of("G1 X1", before="G21\nF0\n") == [3]


def test_names_a_missing_feed_rate_once() -> None:
    assert faults_of("G1 X1\nX2\nX3", before="\n\n") == [3]


def test_a_fault_names_its_words_and_says_why() -> None:
    (fault,) = read_program(BEGIN + "G0 X1\nG1 Y2 H 7\nM2").faults
    assert (fault.line, fault.words) == (4, "H7")
    assert str(fault.message).endswith(".")
    (fault,) = read_program("G0 X1\nG0 G1 X3\nM2").faults
    assert (fault.line, fault.words) == (2, "G0 G1")


def test_goes_on_after_a_fault() -> None:
    replay = read_program("G0 X1 Y1 Z1\nG0 X-\nG0 X3\nM2")
    assert [fault.line for fault in replay.faults] == [2]
    assert replay.motions.end_mm[-1].tolist() == [3.0, 1.0, 1.0]


def test_a_wrong_arc_does_not_make_the_next_one_look_wrong() -> None:
    assert faults_of("G2 X10 Y0 I6\nG2 X20 Y0 I5") == [3]


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("%\nG0 X1\n%\n", 0),
        (" % \nG0 X1\n\t%\n", 0),
        ("\n\n%\nG0 X1\n%", 0),
        ("%\nG0 X1\nM2\n%\n", 0),
        ("%\nG0 X1\n%\nthis is never read\n", 0),
        ("G0 X1\nM2\nthis is never read\n", 0),
        ("G0 X1\nM30\n", 0),
        ("%\nG0 X1\n", 1),
        ("%\nG0 X1\nM2\n", 1),
        ("G0 X1\n", 1),
        ("", 1),
        ("%", 1),
        ("\n\n", 1),
        ("G0 X1\n%\nM2\n", 1),
        ("G0 X1\r\nM2\r\n", 0),
        ("G0 X1\rM2\r", 0),
        ("\n" * 40 + "%\nG0 X1\n%\n", 0),
        ("G0 X1\n" * 40 + "%\nM2\n", 1),
    ],
)
def test_frames_and_ends(text: str, faults: int) -> None:
    """Rules F1 to F7 of the file level."""
    replay = read_program(text)
    assert len(replay.faults) == faults
    assert replay.faults == read_program(text, in_batches=False).faults


def test_counts_every_line() -> None:
    assert read_program("G0 X1\nM2\n\n\n").line_count == 4
    assert read_program("G0 X1\nM2").line_count == 2
    assert read_program("").line_count == 0


def test_mentions_lines_after_the_end() -> None:
    assert any("never run" in str(note.message) for note in read_program("M2\nG0 X1\n").notes)
    assert read_program("%\nM2\n%\n").notes == ()
