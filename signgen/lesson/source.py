"""What a lesson is made of: a folder that `make` wrote, its programs read from disk, its papers for what a program
cannot say (which cutter is fitted, which board lies there)."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.errors import AskError
from signgen.lesson.line_facts import LineFacts, facts_of
from signgen.messages import Message, Sentence
from signgen.pipeline import REPORT, SIGN, gather, read_sign
from signgen.proving.sides import sides_of
from signgen.replay.steps import ReplayStep, Trace, trace
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec
from signgen.user_file import MOST_JSON_BYTES, MOST_PROGRAM_BYTES, read_bytes


class ProgramRead(Struct, frozen=True, kw_only=True):
    """One cutter's program as it stands on disk, and the cutter that the papers name for it. Where a file holds those
    of several cutters, `place` is which of them (from 1, else 0), and `lines` are those from its change of cutter to
    the next. `behind`: it is cut from the back."""

    file: str
    text: str
    trace: Trace
    lines: tuple[LineFacts, ...]
    tool: Tool
    minutes: float
    place: int = 0
    behind: bool = False

    @property
    def called(self) -> Sentence:
        """Its file, and which cutter of it where there are several."""
        return Message("lesson.part", file=self.file, place=self.place) if self.place else self.file

    @property
    def steps(self) -> tuple[ReplayStep, ...]:
        return tuple(row.step for row in self.lines)


class Source(Struct, frozen=True, kw_only=True):
    """Programs in the order to run them, those from the back first. Heights are as they count: `top_mm` is the board's
    top, `bottom_mm` its bottom. `sign_on_board_mm`: from the board's bottom left corner to the sign's."""

    spec: SignSpec
    drawing: Drawing
    programs: tuple[ProgramRead, ...]
    top_mm: float
    bottom_mm: float
    board_mm: tuple[float, float]
    sign_on_board_mm: tuple[float, float]

    @property
    def title(self) -> str:
        return " / ".join(line.text for line in self.drawing.lines) or "-"

    @property
    def unit_mm(self) -> float:
        """Millimetres of the unit in which the programs count."""
        return self.programs[-1].steps[-1].unit_mm

    @property
    def face(self) -> Source:
        """Without the programs that are cut from the back."""
        return replace(self, programs=tuple(program for program in self.programs if not program.behind))

    @property
    def shift_mm(self) -> tuple[float, float]:
        """Where the sign's bottom left corner lies as the programs count: (0, 0) unless zero is the board's corner."""
        return self.sign_on_board_mm if self.spec.origin == "stock" else (0.0, 0.0)

    @property
    def zero_on_board_mm(self) -> tuple[float, float]:
        """Where X0 Y0 lies from the board's bottom left corner."""
        return (0.0, 0.0) if self.spec.origin == "stock" else self.sign_on_board_mm


def source_of(folder: Path) -> Source:
    """Raises: AskError where the folder is no sign's or lacks a file."""
    if not (folder / SIGN).is_file() or not (folder / REPORT).is_file():
        raise AskError.at(str(folder), Message("lesson.no_sign"), Message("lesson.name_sign"))
    spec = read_sign(gather({}, folder / SIGN))
    try:
        told = json.loads(read_bytes(folder / REPORT, str(folder), MOST_JSON_BYTES))
        rows, stock = told["programs"], told["stock"]
        size = stock["board_mm"] or (stock["min_width_mm"], stock["min_height_mm"])
        at = told["instructions"]["set_ups"][-1]["datum"]
        corner = (float(at["x_mm"]), float(at["y_mm"]))
        behind = told["back"]["programs"] if told.get("back") else []
        programs = (*_programs(folder, behind, behind=True), *_programs(folder, rows, behind=False))
    except (ValueError, KeyError, TypeError) as error:
        raise AskError.at(str(folder), Message("lesson.no_report"), Message("lesson.name_sign")) from error
    top = 0.0 if spec.z_zero == "top" else spec.thickness_mm
    return Source(
        spec=spec,
        drawing=draw(spec),
        programs=programs,
        top_mm=top,
        bottom_mm=top - spec.thickness_mm,
        board_mm=(float(size[0]), float(size[1])),
        sign_on_board_mm=_sign_on_board_mm(spec) if spec.origin == "stock" else corner,
    )


def _sign_on_board_mm(spec: SignSpec) -> tuple[float, float]:
    """Where the sign lies on a board from whose corner the programs count: the papers need not say it."""
    stock = sides_of(spec)[0].setup.stock
    return stock.sign_x_mm, stock.sign_y_mm


def _programs(folder: Path, rows: Sequence[dict[str, object]], *, behind: bool) -> Iterator[ProgramRead]:
    """One for each row of the report; a file of several cutters is taken apart."""
    files = Counter(str(row["file"]) for row in rows)
    done: Counter[str] = Counter()
    for row in rows:
        file = str(row["file"])
        done[file] += 1
        yield _program(folder, row, place=done[file] if files[file] > 1 else 0, behind=behind)


def _of_cutter(lines: tuple[LineFacts, ...], place: int) -> tuple[LineFacts, ...]:
    """The lines of the cutter at a place, from its change of cutter on; what stands before the first is the first's."""
    if not place:
        return lines
    changes = [n for n, row in enumerate(lines) if "M6" in row.step.words]
    bounds = [0, *changes[1:], len(lines)]
    if place >= len(bounds):
        raise ValueError
    return lines[bounds[place - 1] : bounds[place]]


def _program(folder: Path, row: dict[str, object], *, place: int, behind: bool) -> ProgramRead:
    file = str(row["file"])
    if Path(file).name != file or not (folder / file).is_file():
        raise AskError.at(str(folder), Message("lesson.no_program", file=file), Message("lesson.name_sign"))
    text = read_bytes(folder / file, str(folder), MOST_PROGRAM_BYTES).decode("latin-1")
    read = trace(text)
    told = row["tool"]
    if not isinstance(told, dict):
        raise TypeError
    return ProgramRead(
        file=file, text=text, trace=read, lines=_of_cutter(facts_of(read), place), tool=tool_of(told),
        minutes=float(str(row["minutes"])), place=place, behind=behind,
    )  # fmt: skip


def tool_of(told: dict[str, object]) -> Tool:
    """The cutter as the papers name it; what they do not say (how long its edges are) a lesson does not ask."""
    angle = told.get("angle_deg")
    return Tool(
        name=str(told["name"]),
        kind=str(told["kind"]),  # type: ignore[arg-type]
        diameter_mm=float(str(told["diameter_mm"])),
        shank_mm=float(str(told["shank_mm"])),
        cutting_length_mm=1.0,
        stickout_mm=1.0,
        flutes=2,
        angle_deg=None if angle is None else float(str(angle)),
        tip_mm=float(str(told["tip_mm"])),
        source="report.json",
    )
