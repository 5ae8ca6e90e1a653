"""What the sheet, the pictures and the report are drawn from: the finished job, without how it was made."""

from __future__ import annotations

from msgspec import Struct

from signgen.checks.check import CheckReport, ProgramUnderTest
from signgen.drawing.drawing import Drawing
from signgen.features.keyhole import Keyhole
from signgen.instructions import SetUp
from signgen.messages import Sentence
from signgen.operations.groove_floors import Compared
from signgen.operations.roughing import Roughing
from signgen.operations.sense import Sense
from signgen.program.estimate import OperationTime
from signgen.replay.heights import HeightMap
from signgen.replay.motion import Replay
from signgen.shop.materials import CuttingData
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec


class ProgramFacts(Struct, frozen=True, kw_only=True):
    """One program: its file name, text, what it does in plain words ('engraves the letters'), and its estimates, also
    for each operation. Where all cutters' programs are in one file, each of them has that file and its text."""

    file: str
    text: str
    tool: Tool
    cutting: CuttingData
    description: tuple[Sentence, ...]
    minutes: float
    cut_length_mm: float
    travel_length_mm: float
    replay: Replay
    times: tuple[OperationTime, ...] = ()


class PieceFacts(Struct, frozen=True, kw_only=True):
    """One sign of a whole sheet: its number on the plan, its lines, the row of the list that it comes from, and the
    corner and size of its bounds as it lies, in sign coordinates; `turned` by a quarter to the left."""

    name: str
    lines: tuple[str, ...]
    row: int
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    turned: bool


class JobFacts(Struct, frozen=True, kw_only=True):
    """A finished, verified job. `stock`: the board that lies there (the real one when the user named it);
    `least`: the least board
    that would do, the same value when no real board was named. `boards[i]`: the stock after program i.
    `screws_mm`: suggested
    places for hold-down screws in program coordinates. `warnings`: whole sentences to read before cutting.
    `set_up`: what the sheet tells a person to do, as figures.
    `sense`: of the engraving, None where there is none. `compared`: what other cutters would take for its flat floors;
    `roughing`: what a thicker cutter cleared first, and what that saved.
    `back`: the job of what is cut from behind, before the face, its drawing mirrored; None when nothing is."""

    name: str
    spec: SignSpec
    drawing: Drawing
    stock: Stock
    least: Stock
    zero: WorkZero
    programs: tuple[ProgramFacts, ...]
    boards: tuple[HeightMap, ...]
    checks: CheckReport
    screws_mm: tuple[tuple[float, float], ...]
    warnings: tuple[Sentence, ...]
    set_up: SetUp
    pieces: tuple[PieceFacts, ...] = ()
    outline: ProgramUnderTest | None = None
    lifted: tuple[ProgramUnderTest, ...] = ()
    sense: Sense | None = None
    compared: Compared | None = None
    roughing: Roughing | None = None
    back: JobFacts | None = None

    @property
    def face_down(self) -> bool:
        """Whether this is the job of a board's back: its zero is the corner that lies right."""
        return bool(self.drawing.of(Keyhole)) and self.zero.x_mm >= self.drawing.width_mm

    @property
    def every_program(self) -> tuple[ProgramFacts, ...]:
        """In the order to run them, those from behind first."""
        return (*(self.back.programs if self.back else ()), *self.programs)
