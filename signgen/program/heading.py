"""The comments at the top of every program: enough to know, months later, what the file is and how the board lies."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from signgen.drawing.drawing import Drawing
from signgen.messages import Sentence
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


def heading(
    *,
    lines: Sequence[str],
    number: int,
    count: int,
    does: Sequence[Sentence],
    tool: Tool,
    drawing: Drawing,
    stock: Stock,
    material_label: Sentence,
    zero: WorkZero,
    from_behind: bool = False,
    set_at: str = "",
) -> tuple[str, ...]:
    """Names the sign, the program's place in the order, the tool, the board, the datum and Z zero. No date: the same
    input gives the same bytes. `from_behind`: the board lies face down, and its places are as seen then. `set_at`:
    where the cutter is touched off."""
    if from_behind:
        datum, corner = _datum_from_behind(zero, drawing, stock)
    elif zero.x_mm == 0 and zero.y_mm == 0:
        datum = (
            f"X0 Y0: bottom-left corner of the finished sign, {stock.sign_x_mm:g} mm right of and "
            f"{stock.sign_y_mm:g} mm above"
        )
        corner = "the board's bottom-left corner"
    else:
        datum, corner = "X0 Y0: bottom-left corner of the board", ""
    at_bottom = zero.z_mm == 0
    z_zero = "Z0: bottom of the board, which is the top of the spoilboard" if at_bottom else "Z0: top of the board"
    top = f"The board's top is at Z{stock.thickness_mm - zero.z_mm:g}"
    return tuple(
        line
        for text in (
            f"{'' if drawing.pieces else 'Sign: '}{' / '.join(lines)}, {drawing.width_mm:g} x {drawing.height_mm:g} mm",
            f"Program {number} of {count}: {', '.join(map(str, does))}",
            "From the back: board face down, turned over like a page, run before the face" if from_behind else "",
            f"Tool: {tool.label}, {tool.shank_mm:g} mm shank",
            f"Board: {stock.width_mm:g} x {stock.height_mm:g} x {stock.thickness_mm:g} mm, {material_label}",
            datum,
            corner,
            z_zero,
            top,
            f"Set Z {set_at}" if set_at else "",
        )
        for line in textwrap.wrap(text, LINE_WIDTH)
    )


def _datum_from_behind(zero: WorkZero, drawing: Drawing, stock: Stock) -> tuple[str, str]:
    """The same corner as for the face, which lies right now; X counts to the left from it, negative."""
    if zero.x_mm != drawing.width_mm:
        return "X0 Y0: bottom-right corner of the board as it lies now, the sign at negative X", ""
    right = stock.width_mm - stock.sign_x_mm - drawing.width_mm
    return (
        f"X0 Y0: bottom-right corner of the finished sign as it lies now, {right:g} mm left of and "
        f"{stock.sign_y_mm:g} mm above",
        "the board's bottom-right corner, the sign at negative X",
    )
