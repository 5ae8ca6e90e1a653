"""The small plate as a whole job: a setup sheet that says which cutters run how, in the three ways of changing them."""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from signgen.checks.case import make_case
from signgen.checks.check import Case, ProgramUnderTest
from signgen.checks.parts import parts_of
from signgen.checks.stated import Papers, Stated
from signgen.replay.measure import extents
from signgen.replay.reader import read_program
from signgen.shop.feeds import cutting_data
from signgen.shop.manner import Change, Manner
from tests.checks.plate import (
    BREAKTHROUGH_MM,
    CUT_OUT,
    DRAWING,
    END_MILL,
    ENGRAVE,
    MACHINE,
    MATERIAL,
    STOCK,
    V_BIT,
    ZERO,
    Edit,
    edited,
)

TOOLS = (V_BIT, END_MILL)
FILES = ("1-v-bit-90.nc", "2-end-mill-6.nc")
ONE = "1-all-cutters.nc"
LIFT_MM = 20.0

_BOARD = """\
(Board: 84 x 64 x 9 mm, Wood)
(X0 Y0: bottom-left corner of the finished sign, 12 mm right of and 12 mm above)
(the board's bottom-left corner)
(Z0: bottom of the board, which is the top of the spoilboard)
(The board's top is at Z9)
"""
_MODES = "G17 G21 G40 G49 G54 G80 G90 G94\n"


def _body(text: str) -> str:
    """From the first Z to the spindle's stop and the way out, without the end; at the speed on the sheet."""
    lines = text.splitlines()
    return "\n".join(lines[3:-1]) + "\n"


def _speed(place: int) -> str:
    return f"S{cutting_data(TOOLS[place], MATERIAL, MACHINE).spindle_rpm:.0f}"


BODIES = tuple(_body(text).replace("S16000", _speed(k)) for k, text in enumerate((ENGRAVE, CUT_OUT)))
HEADINGS = tuple(
    f"(Sign: plate, 60 x 40 mm)\n(Program {k} of 2: cuts)\n(Tool: {tool.label}, 6 mm shank)\n{_BOARD}"
    for k, tool in enumerate(TOOLS, 1)
)
SINGLE = tuple(f"{heading}{_MODES}{body}M2\n" for heading, body in zip(HEADINGS, BODIES, strict=True))
_SECOND = f"(Cutter 2. Program 2 of 2: cuts)\n(Cutter 2. Tool: {TOOLS[1].label}, 6 mm shank)\n"
CHANGED = f"{HEADINGS[0]}{_SECOND}{_MODES}T1 M6\nG43 H1\n{BODIES[0]}T2 M6\nG43 H2\n{BODIES[1]}M2\n"
PAUSED = (
    f"{HEADINGS[0]}{_SECOND}{_MODES}T1 M6\n{BODIES[0]}T2 M6\n"
    f"(MSG, fit the {TOOLS[1].label} and set Z0 anew)\nM0\n{BODIES[1]}M2\n"
)


def _raised(text: str) -> str:
    """Every Z of a program higher by as much as an air cut is."""
    lines = []
    for line in text.splitlines():
        words = [line] if line.startswith("(") else line.split(" ")
        lines.append(" ".join(f"Z{float(w[1:]) + LIFT_MM:g}" if w[0] == "Z" else w for w in words))
    return "\n".join(lines) + "\n"


class Told(Struct, frozen=True):
    """The job's case, ready to be spoilt. `texts`: one for each cutter, or one for all."""

    change: Change = "none"
    texts: tuple[str, ...] = SINGLE
    manner: Manner = Manner()
    lifted: str | None = None
    papers: Papers | None = None

    def case(self) -> Case:
        one = len(self.texts) == 1
        stated = tuple(
            Stated(number=k, change=self.change, cutting=cutting_data(tool, MATERIAL, MACHINE), manner=self.manner)
            for k, tool in enumerate(TOOLS, 1)
        )
        case = make_case(
            drawing=DRAWING,
            stock=STOCK,
            zero=ZERO,
            machine=MACHINE,
            material=MATERIAL,
            programs=[(ONE if one else FILES[k], self.texts[0 if one else k], TOOLS[k]) for k in range(2)],
            stated=stated,
            breakthrough_mm=BREAKTHROUGH_MM,
            tolerance_mm=0.01,
        )
        case = replace(case, papers=self.papers)
        if self.lifted is None:
            return case
        name = f"air-{FILES[1]}"
        (replay,) = parts_of(read_program(self.lifted), 1)
        air = ProgramUnderTest(file=name, text=self.lifted, tool=TOOLS[1], replay=replay, stated=stated[1])
        return replace(case, lifted=(air,))

    def spoilt(self, *edits: Edit, text: int = 0) -> Told:
        """With lines of a text replaced, or left out where the new text is None."""
        texts = list(self.texts)
        texts[text] = edited(texts[text], edits)
        return replace(self, texts=tuple(texts))

    def with_word(self, word: str, new: str | None, *, text: int = 0, which: int = 0) -> tuple[Told, int]:
        """With the `which`th line that is, or begins with, some words replaced or left out; and its number."""
        number = line_of(self.texts[text], word, which)
        return self.spoilt((number, new), text=text), number


def line_of(text: str, word: str, which: int = 0) -> int:
    return [n for n, line in enumerate(text.splitlines(), 1) if line.startswith(word)][which]


def _said(place: int) -> dict[str, Any]:
    """What a report says of a program."""
    tool, cutting = TOOLS[place], cutting_data(TOOLS[place], MATERIAL, MACHINE)
    way = extents(read_program(SINGLE[place]).motions)
    assert way
    return {
        "file": FILES[place],
        "tool": {name: getattr(tool, name) for name in OF_TOOL},
        **{name: getattr(cutting, name) for name in ("spindle_rpm", "feed_mm_per_min", "plunge_mm_per_min")},
        "extent": {axis: list(getattr(way, axis)) for axis in ("x_mm", "y_mm", "z_mm")},
    }


OF_TOOL = ("name", "kind", "diameter_mm", "angle_deg", "tip_mm", "shank_mm")
SAID = Papers(programs=[_said(0), _said(1)], z_zero="bottom", changed=[])


def saying(**changes: Any) -> Told:
    """The job with a report that says something else of its first program."""
    return Told(papers=replace(SAID, programs=[{**SAID.programs[0], **changes}, SAID.programs[1]]))


PLAIN = Told()
REPORTED = Told(papers=SAID)
CHANGER = Told("lengths", (CHANGED,))
BY_HAND = Told("pause", (PAUSED,))
IN_THE_AIR = Told(lifted=_raised(SINGLE[1]))
EXTRACTED = Told(
    texts=tuple(text.replace("G4 P4\n", "M8\nG4 P4\n").replace("M5\nG0 X0", "M5\nM9\nG0 X0") for text in SINGLE),
    manner=Manner(extraction="m8"),
)
