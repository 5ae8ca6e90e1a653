"""What a lesson is made of: a folder that `make` wrote, its programs read from disk, its papers for what a program
cannot say (which cutter is fitted, which board lies there)."""

from __future__ import annotations

import json
from pathlib import Path

from msgspec import Struct

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.errors import AskError
from signgen.lesson.line_facts import LineFacts, facts_of
from signgen.messages import Message
from signgen.pipeline import REPORT, SIGN, gather, read_sign
from signgen.replay.steps import Trace, trace
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec
from signgen.user_file import MOST_JSON_BYTES, MOST_PROGRAM_BYTES, read_bytes


class ProgramRead(Struct, frozen=True, kw_only=True):
    """One program as it stands on disk, and the cutter that the papers name for it."""

    file: str
    text: str
    trace: Trace
    lines: tuple[LineFacts, ...]
    tool: Tool
    minutes: float


class Source(Struct, frozen=True, kw_only=True):
    """Heights are as the programs count: `top_mm` is the board's top, `bottom_mm` its bottom."""

    spec: SignSpec
    drawing: Drawing
    programs: tuple[ProgramRead, ...]
    top_mm: float
    bottom_mm: float
    board_mm: tuple[float, float]
    datum_mm: tuple[float, float]

    @property
    def title(self) -> str:
        return " / ".join(line.text for line in self.drawing.lines) or "-"

    @property
    def shift_mm(self) -> tuple[float, float]:
        """Where the sign's bottom left corner lies as the programs count: (0, 0) unless zero is the board's corner."""
        return self.datum_mm if self.spec.origin == "stock" else (0.0, 0.0)

    @property
    def zero_on_board_mm(self) -> tuple[float, float]:
        """Where X0 Y0 lies from the board's bottom left corner."""
        return (0.0, 0.0) if self.spec.origin == "stock" else self.datum_mm


def source_of(folder: Path) -> Source:
    """Raises: AskError where the folder is no sign's or lacks a file."""
    if not (folder / SIGN).is_file() or not (folder / REPORT).is_file():
        raise AskError.at(str(folder), Message("lesson.no_sign"), Message("lesson.name_sign"))
    spec = read_sign(gather({}, folder / SIGN))
    try:
        told = json.loads(read_bytes(folder / REPORT, str(folder), MOST_JSON_BYTES))
        rows, stock = told["programs"], told["stock"]
        size = stock["board_mm"] or (stock["min_width_mm"], stock["min_height_mm"])
        datum = (float(stock["datum_x_mm"]), float(stock["datum_y_mm"]))
        if len({row["file"] for row in rows}) < len(rows):
            raise AskError.at(str(folder), Message("lesson.one_file"), Message("lesson.a_file_each"))
        programs = tuple(_program(folder, row) for row in rows)
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
        datum_mm=datum,
    )


def _program(folder: Path, row: dict[str, object]) -> ProgramRead:
    file = str(row["file"])
    if Path(file).name != file or not (folder / file).is_file():
        raise AskError.at(str(folder), Message("lesson.no_program", file=file), Message("lesson.name_sign"))
    text = read_bytes(folder / file, str(folder), MOST_PROGRAM_BYTES).decode("latin-1")
    read = trace(text)
    told = row["tool"]
    if not isinstance(told, dict):
        raise TypeError
    return ProgramRead(
        file=file, text=text, trace=read, lines=facts_of(read), tool=_tool(told), minutes=float(str(row["minutes"]))
    )  # fmt: skip


def _tool(told: dict[str, object]) -> Tool:
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
