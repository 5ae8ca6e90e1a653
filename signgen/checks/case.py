"""From program texts to everything that checks look at: read back, swept, and set beside the drawing."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import groupby

from msgspec.structs import replace
from shapely.geometry import box

from signgen.checks.check import Case, ProgramUnderTest
from signgen.checks.effort import must_be_bearable
from signgen.checks.engagement import engagement_of
from signgen.checks.ideal import ideal_board, kerf_allowed_mm
from signgen.checks.parts import parts_of
from signgen.checks.stated import Stated
from signgen.checks.tip_path import CHORD_MM, COARSE_CHORD_MM, tip_path_of
from signgen.drawing.drawing import Drawing, Plate
from signgen.errors import AskError
from signgen.features.edge import BEVEL_BELOW_MM, Bevel, Edge
from signgen.messages import Message, Mm, Sides
from signgen.replay.extras import without_extras
from signgen.replay.heights import HeightMap, board
from signgen.replay.motion import Replay
from signgen.replay.reader import read_program
from signgen.replay.sweep import cut
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

FINEST_MM, COARSEST_MM = 0.1, 0.25
"""Cells that show what a check must see (a line of 0.2 mm) and cost no more than they are worth."""

USUAL_CELLS, MOST_CELLS = 1_300_000, 8_000_000
"""As many cells as a board is given when nothing speaks against it, and as many as it is given in any case."""

BEARABLE_CELLS = 40_000_000
"""As many cells as may be asked for: 160 MB for each map, and half a dozen of them at once."""

LENGTHS: Mapping[int, float] = dict.fromkeys(range(1, 1000), 0.0)
"""By their numbers, as if every cutter were set by its tip."""

_CHANGE = re.compile(r"^[^(\n]*M0*6\b", re.MULTILINE)

CELLS_PER_CAP_HEIGHT = 80
"""Small lettering asks for finer cells: a stroke is about an eighth of its height, ten cells across."""


def make_case(
    *,
    drawing: Drawing | None,
    stock: Stock,
    zero: WorkZero,
    machine: Machine,
    material: Material,
    programs: Sequence[tuple[str, str, Tool]],
    stated: Sequence[Stated] = (),
    breakthrough_mm: float,
    tolerance_mm: float,
    cusp_height_mm: float = 0.0,
    finish_mm: float = 0.0,
    cell_mm: float | None = None,
) -> Case:
    """The case that the programs (file, text, tool), in the order in which they are to be run, make with the drawing.
    Programs of one name that follow each other are one text, with a change of cutter between them. Without a drawing
    the case is one of a bare board, and the texts are from elsewhere: what many controls take beyond the rules is
    noted, and does not keep them from being read.

    `finish_mm` is what was asked to be left for a last pass, and so how much further out the passes before may reach.
    `boards[i]` is what the feed moves of programs 0 to i leave. The cell is chosen by `cell_size_mm` when none is
    given. `stated`: what the sheet says of each program. Raises: AskError when so fine a cell would need more memory
    than a small computer has.
    """
    drawn = drawing is not None
    drawing = drawing or bare_board(stock)
    left = board(stock, cell_size_mm(stock, drawing.cap_height_mm) if cell_mm is None else _bearable(cell_mm, stock))
    boards: list[HeightMap] = []
    cutters = Counter(file for file, _, _ in programs)
    under_test, cuts, rapids, engagement = [], [], [], []
    texts = [(text, len(list(group))) for (_, text), group in groupby(programs, lambda row: row[:2])]
    replays = [replay for text, count in texts for replay in replays_of(text, count, from_elsewhere=not drawn)]
    tools = [tool for _, _, tool in programs]
    must_be_bearable([file for file, _, _ in programs], replays, tools, stock, zero, left.cell_mm)
    for number, ((file, text, tool), replay) in enumerate(zip(programs, replays, strict=True)):
        motions = replay.motions
        cutting, moving = tip_path_of(motions, zero, number, CHORD_MM if tool.kind == "v-bit" else COARSE_CHORD_MM)
        engagement.append(engagement_of(cutting, tool, left))
        left = cut(left, motions, tool, zero)
        boards.append(left)
        cuts.append(cutting)
        rapids.append(moving)
        under_test.append(
            ProgramUnderTest(
                file=file,
                text=text,
                tool=tool,
                replay=replay,
                cutters=cutters[file],
                stated=stated[number] if stated else None,
            )
        )
    through = [
        tool.diameter_mm
        for (_, _, tool), cutting in zip(programs, cuts, strict=True)
        if len(cutting) and cutting.low_z_mm.min() <= drawing.skin_mm + CHECK_MM
    ]
    kerf_mm = max(kerf_allowed_mm(max(through), finish_mm) if through else 0.0, _bevel_mm(drawing, programs))
    return Case(
        drawing=drawing,
        stock=stock,
        zero=zero,
        machine=machine,
        material=material,
        programs=tuple(under_test),
        boards=tuple(boards),
        cuts=tuple(cuts),
        rapids=tuple(rapids),
        engagement=tuple(engagement),
        ideal=ideal_board(drawing, left.grid, kerf_mm),
        breakthrough_mm=breakthrough_mm,
        tolerance_mm=tolerance_mm,
        cusp_height_mm=cusp_height_mm,
        drawn=drawn,
    )


def _bevel_mm(drawing: Drawing, programs: Sequence[tuple[str, str, Tool]]) -> float:
    """How far outside the edge a V-bit may cut that bevels it: as far as inside, and its tip goes a little deeper and
    may be flat."""
    tips = [tool.tip_mm for _, _, tool in programs if tool.kind == "v-bit"]
    wide = [bevel.width_mm + 2 * BEVEL_BELOW_MM * bevel.slope for bevel in drawing.of(Bevel)]
    return max(wide) + max(tips) if wide and tips else 0.0


def bare_board(stock: Stock) -> Drawing:
    """What stands for a drawing where there is none: the board's own outline, and nothing on it. Letters as tall as
    the board are not there to ask for fine cells."""
    return Drawing(
        plate=Plate(width_mm=stock.width_mm, height_mm=stock.height_mm, thickness_mm=stock.thickness_mm),
        features=(Edge(name="edge", source="board", area=box(*stock.bounds_mm)),),
        cap_height_mm=max(stock.width_mm, stock.height_mm),
    )


def replays_of(text: str, cutters: int, *, from_elsewhere: bool) -> Sequence[Replay]:
    """One for each cutter that a text is meant for. With several, or one that the machine fits by itself, tool lengths
    are the control's business: Z is the tip's."""
    if from_elsewhere:
        text, extras = without_extras(text)
        replay = read_program(text, tool_lengths_mm=LENGTHS)
        return parts_of(replace(replay, notes=(*extras, *replay.notes)), cutters)
    if cutters == 1 and not _CHANGE.search(text):
        return [read_program(text)]
    return parts_of(read_program(text, tool_lengths_mm=LENGTHS), cutters)


def cell_size_mm(stock: Stock, cap_height_mm: float) -> float:
    """Cell for a board: 0.1 to 0.25 mm, so that work stays bounded and small letters keep their strokes; coarser only
    for boards larger than half a square metre."""
    area = stock.width_mm * stock.height_mm
    usual = min(math.sqrt(area / USUAL_CELLS), cap_height_mm / CELLS_PER_CAP_HEIGHT)
    return max(min(max(usual, FINEST_MM), COARSEST_MM), math.sqrt(area / MOST_CELLS))


def _bearable(cell_mm: float, stock: Stock) -> float:
    least = math.sqrt(stock.width_mm * stock.height_mm / BEARABLE_CELLS)
    if cell_mm < least:
        what = Message("case.board_x_has_too_many", board=Sides((stock.width_mm, stock.height_mm)), cell=Mm(cell_mm))
        raise AskError.at("cell", what, Message("case.use_more", least=Mm(math.ceil(least * 1000) / 1000)))
    return cell_mm
