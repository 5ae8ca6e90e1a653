"""What `explain` says of the words of RS-274: rule, picture, and an example whose effect the reader itself tells.

Source: NIST IR 6556, "The NIST RS274NGC Interpreter - Version 3", sections 3.2 to 3.8 and Tables 4 to 7 (numbers of
sections, and the examples marked as the standard's, from memory).
"""

from __future__ import annotations

import textwrap

from msgspec import Struct

from signgen.guide import rs274_pictures as picture
from signgen.lesson.line_facts import facts_of
from signgen.lesson.line_words import told
from signgen.messages import Message
from signgen.messages.wording import Wording
from signgen.replay.codes import G_GROUPS, M_GROUPS, NON_MODAL, STOPPING, code_name
from signgen.replay.steps import trace

WIDTH = 79
BEFORE = "G17 G21 G40 G49 G54 G80 G90 G94\nF600 S12000 M3"
"""What every example stands behind."""


class Code(Struct, frozen=True):
    """`key` is the row of the tables; `names` all words that it explains; `given` lines that run before the example.
    The last line of the example is the one that is told."""

    key: str
    section: str
    picture: str
    example: str
    given: str = "G0 X1 Y2 Z3"
    names: tuple[str, ...] = ()
    from_standard: bool = False

    @property
    def words(self) -> tuple[str, ...]:
        return self.names or (self.key,)


_FIVE = ("G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3")
CODES: tuple[Code, ...] = (
    Code("G0", "3.5.1", picture.RAPID, "G0 X40 Y25"),
    Code("G1", "3.5.2", picture.LINE, "G1 X40 Y25 F900"),
    Code("G2", "3.5.3", picture.CLOCKWISE, "G17 G2 X10 Y16 I3 J4 Z9", "G0 X7 Y7 Z0", from_standard=True),
    Code("G3", "3.5.3", picture.COUNTER, "G3 X10 Y20 I0 J10", "G0 X10 Y0 Z-1"),
    Code("G4", "3.5.4", picture.WAIT, "G4 P2.5"),
    Code("G10", "3.5.5", picture.ZERO, "G10 L2 P1 X3.5 Y17.2", from_standard=True),
    Code("G17", "3.5.6", picture.PLANES, "G17"),
    Code("G18", "3.5.6", picture.PLANES, "G18"),
    Code("G19", "3.5.6", picture.PLANES, "G19"),
    Code("G20", "3.5.7", picture.UNITS, "G20"),
    Code("G21", "3.5.7", picture.UNITS, "G21"),
    Code("G28", "3.5.8", picture.HOME, "G28 Z20"),
    Code("G30", "3.5.8", picture.HOME, "G30 Z20"),
    Code("G38.2", "3.5.9", picture.PROBE, "G38.2 Z-5 F60"),
    Code("G40", "3.5.10", picture.BESIDE, "G40"),
    Code("G41", "3.5.10", picture.BESIDE, "G41 D1"),
    Code("G42", "3.5.10", picture.BESIDE, "G42 D1"),
    Code("G43", "3.5.11", picture.LENGTH, "G43 H1"),
    Code("G49", "3.5.11", picture.LENGTH, "G49"),
    Code("G53", "3.5.12", picture.ZERO, "G53 G0 Z0"),
    Code("G54", "3.5.13", picture.ZERO, "G54"),
    Code("G55", "3.5.13", picture.ZERO, "G55", names=_FIVE),
    Code("G61", "3.5.14", picture.CORNER, "G61", names=("G61", "G61.1")),
    Code("G64", "3.5.14", picture.CORNER, "G64"),
    Code("G80", "3.5.15", picture.MODAL, "G80"),
    Code("G81", "3.5.16.3", picture.DRILL, "G90 G81 G98 X4 Y5 Z1.5 R2.8", from_standard=True),
    Code("G82", "3.5.16.4", picture.DRILL, "G82 X4 Y5 Z1.5 R2.8 P0.5"),
    Code("G83", "3.5.16.5", picture.PECK, "G83 X4 Y5 Z-6 R2.8 Q2"),
    Code("G84", "3.5.16.6", picture.DRILL, "G84 X4 Y5 Z1.5 R2.8"),
    Code("G85", "3.5.16.7", picture.DRILL, "G85 X4 Y5 Z1.5 R2.8"),
    Code("G86", "3.5.16.8", picture.DRILL, "G86 X4 Y5 Z1.5 R2.8 P0.5"),
    Code("G87", "3.5.16.9", picture.DRILL, "G87 X4 Y5 Z1.5 R2.8 I1 J0 K4"),
    Code("G88", "3.5.16.10", picture.DRILL, "G88 X4 Y5 Z1.5 R2.8 P0.5"),
    Code("G89", "3.5.16.11", picture.DRILL, "G89 X4 Y5 Z1.5 R2.8 P0.5"),
    Code("G90", "3.5.17", picture.ABSOLUTE, "G90\nG1 X25"),
    Code("G91", "3.5.17", picture.STEPS, "G91\nG1 X15"),
    Code("G92", "3.5.18", picture.ZERO, "G92 X7", "G0 X4 Y0 Z3", ("G92", "G92.1", "G92.2", "G92.3"), True),
    Code("G93", "3.5.19", picture.FEED, "G93 G1 X21 F2"),
    Code("G94", "3.5.19", picture.FEED, "G94 G1 X21 F600"),
    Code("G98", "3.5.20", picture.DRILL, "G98 G81 X4 Y5 Z1.5 R2.8"),
    Code("G99", "3.5.20", picture.DRILL, "G99 G81 X4 Y5 Z1.5 R2.8"),
    Code("M0", "3.6.1", picture.STOP, "M0"),
    Code("M1", "3.6.1", picture.STOP, "M1"),
    Code("M2", "3.6.1", picture.END, "M2"),
    Code("M30", "3.6.1", picture.END, "M30"),
    Code("M60", "3.6.1", picture.STOP, "M60"),
    Code("M3", "3.6.2", picture.TURNS, "S16000 M3"),
    Code("M4", "3.6.2", picture.TURNS, "S16000 M4"),
    Code("M5", "3.6.2", picture.TURNS, "M5"),
    Code("M6", "3.6.3", picture.TOOL, "T2 M6"),
    Code("M7", "3.6.4", picture.AIR, "M7"),
    Code("M8", "3.6.4", picture.AIR, "M8"),
    Code("M9", "3.6.4", picture.AIR, "M9"),
    Code("M48", "3.6.5", picture.FEED, "M48"),
    Code("M49", "3.6.5", picture.FEED, "M49"),
    Code("A", "2.1.1", picture.AXES, "G1 X5 A90", names=("A", "B", "C")),
    Code("D", "3.5.10", picture.BESIDE, "G41 D1"),
    Code("F", "3.7.1", picture.FEED, "G1 X21 F900"),
    Code("H", "3.5.11", picture.LENGTH, "G43 H1"),
    Code("I", "3.5.3", picture.CENTRE, "G3 X10 Y20 I0 J10", "G0 X10 Y0 Z-1"),
    Code("J", "3.5.3", picture.CENTRE, "G3 X10 Y20 I0 J10", "G0 X10 Y0 Z-1"),
    Code("K", "3.5.3", picture.PLANES, "G18 G2 X10 Z3 I5 K0", "G0 X0 Y0 Z3"),
    Code("L", "3.5.16", picture.DRILL, "G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3", from_standard=True),
    Code("N", "3.3.1", picture.WRITING, "N10 G1 X20 Y5 F900"),
    Code("P", "3.5.4", picture.WAIT, "G4 P2.5"),
    Code("Q", "3.5.16.5", picture.PECK, "G83 X4 Y5 Z-6 R2.8 Q2"),
    Code("R", "3.5.3.1", picture.CLOCKWISE, "G17 G2 X10 Y15 R20 Z5", "G0 X7 Y7 Z0", from_standard=True),
    Code("S", "3.7.2", picture.TURNS, "S16000 M3"),
    Code("T", "3.7.3", picture.TOOL, "T2 M6"),
    Code("X", "2.1.1", picture.AXES, "G1 X40"),
    Code("Y", "2.1.1", picture.AXES, "G1 Y25"),
    Code("Z", "2.1.1", picture.HEIGHT, "G1 Z-1.5"),
    Code("percent", "3.1", picture.FRAME, "%", "", ("%",)),
    Code("comment", "3.3.4", picture.WRITING, "(to the corner)", names=("comment", "( )", "()")),
    Code("modal", "3.4", picture.MODAL, "G1 X10\nY20", names=("modal", "modal words", "modal group")),
)  # fmt: skip


def code_text(code: Code, language: str) -> str:
    """The page of a word: none of its lines is wider than 79 characters."""
    wording = Wording(language)
    short = wording(Message(f"rs.{code.key.lower()}.short"))
    parts = [_filled(f"{', '.join(code.words)}: {short}")]
    parts += [_filled(wording(Message("rs_page.rule", rule=Message(f"rs.{code.key.lower()}"))))]
    others = _others(code)
    if others:
        parts.append(_filled(wording(Message("rs_page.group", others=tuple(others)))))
    elif code.key[0] in "GM" and code.key[1:2].isdigit():
        parts.append(_filled(wording(Message("rs.once"))))
    parts += [
        wording(Message("rs.picture")),
        *(f"    {line}".rstrip() for line in code.picture.strip("\n").split("\n")),
    ]
    parts += [_filled(wording(Message("rs_page.example", example=code.example.replace("\n", "  /  "))))]
    parts += [_filled(wording(Message("rs_page.example_does", does=does(code, wording))))]
    source = Message("rs_page.source_own" if code.from_standard else "rs_page.source", section=code.section)
    parts.append(_filled(wording(source)))
    return "\n".join(parts)


def does(code: Code, wording: Wording) -> str:
    """What the last line of the example does, by the reader of programs."""
    before = "" if code.key == "percent" else f"{BEFORE}\n{code.given}\n"
    found = facts_of(trace(f"{before}{code.example}\n"))
    return " ".join(wording(sentence) for sentence in told(found[-1]))


def _others(code: Code) -> list[str]:
    """The other words of its modal group, as they are written."""
    letter, number = code.key[0], code.key[1:]
    groups = {"G": G_GROUPS, "M": M_GROUPS}.get(letter)
    if groups is None or not number.replace(".", "").isdigit():
        return []
    value = round(float(number) * (10 if letter == "G" else 1))
    if groups[value] in (NON_MODAL, STOPPING):
        return []
    alike = [other for other in groups if groups[other] == groups[value] and other != value]
    return [code_name(other) if letter == "G" else f"M{other}" for other in alike]


def _filled(text: str) -> str:
    return textwrap.fill(" ".join(text.split()), width=WIDTH, break_on_hyphens=False)
