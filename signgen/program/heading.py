"""The comments at the top of every program: enough to know, months later, what the file is and how the board lies."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.messages import Message, Sentence, Typed
from signgen.messages.wording import Wording
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

LINE_WIDTH = 96
"""Longer comments go on in the next one: the writer cuts what is over 100, for some controls cut it at less."""


def program_file(number: int, tool: Tool) -> str:
    """Name of a program's file, in the order to run them: '1-v-bit-90.nc', '2-end-mill-6.nc'."""
    size = tool.diameter_mm if tool.angle_deg is None or tool.kind == "drill" else tool.angle_deg
    return f"{number}-{tool.kind}-{size:.6g}.nc"


ONE_FILE = "1-all-cutters.nc"
"""Name of the one file of a job whose dialect changes cutters within it."""


class Heading(Struct, frozen=True, kw_only=True):
    """The lines at a program's top. `own`: those about its cutter, what it does and which it is; the others, of sign,
    board and zero, are the same for all cutters of a job."""

    sign: tuple[str, ...]
    own: tuple[str, ...]
    board: tuple[str, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        return (*self.sign, *self.own, *self.board)


def heading(
    *,
    lines: Sequence[str],
    number: int,
    count: int,
    description: Sequence[Sentence],
    tool: Tool,
    drawing: Drawing,
    stock: Stock,
    material_label: Sentence,
    zero: WorkZero,
    from_behind: bool = False,
    set_at: Sentence = "",
    language: str = "en",
) -> Heading:
    """Names the sign, the program's place in the order, the tool, the board, the datum and Z zero. No date: the same
    input gives the same bytes. `from_behind`: the board lies face down, and its places are as seen then. `set_at`:
    where the cutter is touched off."""
    size = {"width": Typed(drawing.width_mm), "height": Typed(drawing.height_mm)}
    sign = Message("heading.pieces" if drawing.pieces else "heading.sign", text=" / ".join(lines), **size)
    own = [Message("heading.program", number=number, count=count, does=tuple(description))]
    if from_behind:
        own.append(Message("heading.from_behind"))
    own.append(Message("heading.tool", tool=tool.called, shank=Typed(tool.shank_mm)))
    sides = {name: Typed(getattr(stock, f"{name}_mm")) for name in ("width", "height", "thickness")}
    board = [
        Message("heading.board", material=material_label, **sides),
        *(_datum_from_behind(zero, drawing, stock) if from_behind else _datum(zero, stock)),
        Message("heading.z_zero_bottom" if zero.z_mm == 0 else "heading.z_zero_top"),
        Message("heading.top", z=Typed(stock.thickness_mm - zero.z_mm)),
    ]
    if set_at:
        board.append(Message("heading.set_z", ways=set_at))
    return Heading(
        sign=_wrapped([sign], language),
        own=_wrapped(own, language),
        board=_wrapped(board, language),
    )


def worded(sentence: Sentence, language: str) -> str:
    """A sentence as a comment has it: in a language, its letters spelled in ASCII as they usually are."""
    wording = Wording(language)
    return wording.language.in_ascii(wording(sentence))


def _wrapped(sentences: Sequence[Sentence], language: str) -> tuple[str, ...]:
    return tuple(line for each in sentences for line in textwrap.wrap(worded(each, language), LINE_WIDTH))


def _datum(zero: WorkZero, stock: Stock) -> Sequence[Message]:
    if zero.x_mm or zero.y_mm:
        return [Message("heading.datum_board")]
    beside = {"beside": Typed(stock.sign_x_mm), "above": Typed(stock.sign_y_mm)}
    return [Message("heading.datum_sign", **beside), Message("heading.of_corner")]


def _datum_from_behind(zero: WorkZero, drawing: Drawing, stock: Stock) -> Sequence[Message]:
    """The same corner as for the face, which lies right now; X counts to the left from it, negative."""
    if zero.x_mm != drawing.width_mm:
        return [Message("heading.datum_board_behind")]
    beside = {
        "beside": Typed(stock.width_mm - stock.sign_x_mm - drawing.width_mm),
        "above": Typed(stock.sign_y_mm),
    }
    return [Message("heading.datum_sign_behind", **beside), Message("heading.of_corner_behind")]
