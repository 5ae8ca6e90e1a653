"""Programs as beginners write them: a square groove 3 mm deep and a hole, each with one fault (data for the tests).

Board 200 x 100 x 12 mm, softwood, 6 mm end mill, X0 Y0 at the bottom left corner, Z0 at the board's top.
"""

from __future__ import annotations

GOOD = """\
(Square for Quince Cottage)
(Tool: 6 mm end mill)
G17 G21 G40 G49 G54 G80 G90 G94
G0 Z20
S14000 M3
G4 P4
G0 X40 Y30
G0 Z2
G1 Z-1.5 F300
G1 X100 F1200
G1 Y70
G1 X40
G1 Y30
G1 Z-3 F300
G1 X100 F1200
G1 Y70
G1 X40
G1 Y30
G0 Z5
G0 X150 Y50
G1 Z-1.5 F300
G2 X160 Y50 I5 J0 F1200
G2 X150 Y50 I-5 J0
G0 Z20
G0 X0 Y0
M5
M2
"""
"""Line 9 goes down, 10 to 13 are the first pass, 21 and 22 the hole's."""

STYLES = {
    "plain": GOOD,
    "numbered and small": "\n".join(f"n{10 * n} {line.lower()}" for n, line in enumerate(GOOD.splitlines(), 1)) + "\n",
    "framed, with semicolons": f"%\nO0042 (square)\n{GOOD.replace('G0 X40 Y30', 'G0 X40 Y30 ; to the corner')}%\n",
    "modal, without repeats": GOOD.replace("G1 Y", "Y").replace("G1 X40\n", "X40\n").replace("G0 X0", "X0"),
    "without spaces": GOOD.replace(" X", "X").replace(" Y", "Y").replace(" Z", "Z").replace(" F", "F"),
}
"""The same program in five manners of writing, all of them right."""


def changed(*pairs: tuple[str, str]) -> str:
    """The good program with the first of each replaced."""
    text = GOOD
    for old, new in pairs:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


def without(line: str) -> str:
    return changed((f"{line}\n", ""))


INCHES = (
    ("G21", "G20"), ("Z20", "Z0.8"), ("X40 Y30", "X1.6 Y1.2"), ("Z2\n", "Z0.1\n"), ("Z-1.5 F300", "Z-0.06 F12"),
    ("X100 F1200", "X4 F47"), ("Y70", "Y2.75"), ("X40\n", "X1.6\n"), ("Y30\n", "Y1.2\n"), ("Z-3 F300", "Z-0.12 F12"),
    ("X100 F1200", "X4 F47"), ("Y70", "Y2.75"), ("X40\n", "X1.6\n"), ("Y30\n", "Y1.2\n"), ("Z5", "Z0.2"),
    ("X150 Y50\n", "X6 Y2\n"), ("Z-1.5 F300", "Z-0.06 F12"), ("X160 Y50 I5 J0 F1200", "X6.4 Y2 I0.2 J0 F47"),
    ("X150 Y50 I-5 J0", "X6 Y2 I-0.2 J0"), ("Z20", "Z0.8"),
)  # fmt: skip


def moved(dx: float, dy: float, dz: float = 0.0) -> str:
    """The good program with its places written from another zero."""
    import re

    def shift(text: str, letter: str, by: float) -> str:
        return re.sub(rf"{letter}(-?[\d.]+)", lambda m: f"{letter}{float(m.group(1)) + by:g}", text)

    lines = [
        line if line.startswith("(") else shift(shift(shift(line, "X", dx), "Y", dy), "Z", dz)
        for line in GOOD.splitlines()
    ]
    return "\n".join(lines) + "\n"


FAULTY: dict[str, tuple[str, str, int | None]] = {
    "O for 0 in X": (changed(("X100", "X1O0")), "letter_digit", 10),
    "O for 0 in G0": (changed(("G0 X40", "GO X40")), "letter_digit", 7),
    "O for 0 at the end": (changed(("Y70", "Y7O")), "letter_digit", 11),
    "small l for 1": (changed(("G1 Y70", "Gl Y70")), "letter_digit", 11),
    "S for 5": (changed(("Z-1.5", "Z-1.S")), "letter_digit", 9),
    "two Os": (changed(("X100", "X1OO")), "letter_digit", 10),
    "decimal comma": (changed(("Z-1.5", "Z-1,5")), "decimal_comma", 9),
    "decimal comma in F": (changed(("F300", "F300,5")), "decimal_comma", 9),
    "minus of a word processor": (changed(("Z-1.5", "Z\u22121.5")), "long_minus", 9),
    "dash for a minus": (changed(("Z-3", "Z\u20133")), "long_minus", 14),
    "byte order mark": ("\ufeff" + GOOD, "byte_mark", 1),
    "umlaut in a comment": (changed(("Square", "Viereck f\u00fcr")), "umlaut", 1),
    "equals sign": (changed(("X100", "X=100")), "equals", 10),
    "colon": (changed(("F300", "F:300")), "equals", 9),
    "comment not closed": (changed(("end mill)", "end mill")), "comment_open", 2),
    "comment not opened": (changed(("(Tool", "Tool")), "comment_open", 2),
    "comment within a comment": (changed(("6 mm", "(6 mm)")), "comment_open", 2),
    "two minus signs": (changed(("Z-3", "Z--3")), "two_signs", 14),
    "two points": (changed(("Z-1.5", "Z-1.5.0")), "two_points", 9),
    "line number in the middle": (changed(("G1 Y70", "G1 N50 Y70")), "line_number", 11),
    "G0 and G1 on a line": (changed(("G1 Y70", "G0 G1 Y70")), "words_group", 11),
    "X twice": (changed(("G1 Y70", "G1 X70 X70")), "letter_twice", 11),
    "plain words": (changed(("M5", "spindle off")), "plain_words", 26),
    "a word that does not exist": (changed(("M5", "M55")), "unknown_code", 26),
    "G5 for G1": (changed(("G1 Y70", "G5 Y70")), "unknown_code", 11),
    "X without a number": (changed(("X100 F", "X F")), "no_number", 10),
    "number without a letter": (changed(("G1 X100 F1200", "G1 X100 1200")), "no_letter", 10),
    "inverted commas": (changed(("M5", '"M5"')), "quotes", 26),
    "no motion word": (changed(("G0 Z20", "Z20")), "no_motion_word", 4),
    "no feed": (changed((" F300", ""), (" F1200", "")), "no_feed", 9),
    "wait without a time": (changed(("G4 P4", "G4")), "dwell_no_time", 6),
    "centre with G1": (changed(("G2 X160", "G1 X160")), "centre_no_arc", 22),
    "arc without a centre": (changed((" I5 J0", "")), "arc_no_centre", 22),
    "centre as a place": (changed(("I5 J0", "I155 J50")), "arc_absolute", 22),
    "arc that does not close": (changed(("I5 J0", "I6 J0")), "arc_ends", 22),
    "wrong sign of I": (changed(("I5 J0", "I-5 J0")), "arc_ends", 22),
    "no end": (without("M2"), "no_end", 26),
    "empty": ("(nothing)\nM2\n", "empty", None),
    "G91": (changed(("G90", "G91")), "g91", 3),
    "G91 after the start": (changed(("G0 X40 Y30", "G91\nG0 X40 Y30")), "g91", 7),
    "G20 with millimetres": (changed(("G21", "G20")), "inches", 3),
    "inches without G20": (changed(*INCHES, ("G20", "G21")), "millimetres", 3),
    "missing minus at once": (changed(("Z-1.5", "Z1.5")), "missing_minus", 9),
    "missing minus in the second pass": (changed(("Z-3", "Z3")), "missing_minus", 14),
    "Z zero at the bottom": (moved(0, 0, 12), "z_zero_bottom", 14),
    "zero in the middle": (moved(-100, -50), "zero_middle", None),
    "zero at the top left": (moved(0, -100), "zero_top_left", None),
    "point left out of X": (changed(("X100 F", "X1000 F")), "lost_point", 10),
    "point left out of Z": (changed(("Z-1.5 F300\nG1 X", "Z-15 F300\nG1 X")), "lost_point", 9),
    "G0 down into the board": (changed(("G1 Z-1.5 F300\nG1", "G0 Z-1.5\nG1")), "rapid_down", 9),
    "G0 across in the board": (changed(("G1 X40\n", "G0 X40\n")), "rapid_across", 12),
    "no spindle": (without("S14000 M3"), "no_spindle", 8),
    "M3 without S": (changed(("S14000 M3", "M3")), "no_speed", 9),
    "M4": (changed(("M3", "M4")), "backwards", 5),
    "M5 too early": (changed(("G0 Z2\n", "G0 Z2\nM5\n")), "spindle_stopped", 10),
    "F and S swapped": (changed(("S14000", "S1200"), ("F1200", "F14000")), "feed_speed_swapped", 9),
    "other cutter in the heading": (changed(("6 mm end", "3 mm end")), "wrong_cutter", 2),
}
