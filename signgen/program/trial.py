"""Programs to try before anything is cut: one that goes round all that will be cut, and the programs in the air."""

from __future__ import annotations

import numpy as np
from msgspec.structs import replace

from signgen.geometry.paths import LINE
from signgen.messages import Message, Typed
from signgen.program.blocks import RAPID, TRAVEL, Moves, ToolProgram
from signgen.program.heading import worded
from signgen.shop.materials import Machine

OUTLINE = "0-outline.nc"
"""First by its number, for it is run first."""

LIFTED = "air-"
"""How the names of lifted programs begin; the rest is the name of the program itself."""

SHOWING_MM_PER_MIN = 2000.0
"""Slow enough to stop by hand (common practice: a third of a small router's rapids)."""

CORNERS = ("front_left", "front_right", "back_right", "back_left")


def outline_program(
    first: ToolProgram, corners_mm: tuple[float, float, float, float], z_mm: float, machine: Machine
) -> ToolProgram:
    """Once round the rectangle (low x, low y, high x, high y; program coordinates) at a height, counter-clockwise from
    the front left, with a pause at each corner and the spindle still; it comes from as high as `first` does, and goes
    back there. Written and fitted like `first`, which is the next to run."""
    x0, y0, x1, y1 = corners_mm
    high = float(first.moves.ends_mm[0, 2])
    ways = [(RAPID, x0, y0, high), (RAPID, x0, y0, high), (RAPID, x0, y0, z_mm)]
    ways += [(LINE, x, y, z_mm) for x, y in ((x1, y0), (x1, y1), (x0, y1), (x0, y0))]
    ways.append((RAPID, x0, y0, high))
    feed = min(SHOWING_MM_PER_MIN, *machine.top_feed_mm_per_min[:2])
    kinds = np.array([kind for kind, *_ in ways], np.uint8)
    n = len(ways)
    grid = first.grid_mm
    return replace(
        first,
        heading=(first.heading[0], worded(Message("trial.shows"), first.language), *first.heading[2:]),
        number=0,
        moves=Moves(
            kinds=kinds,
            ends_mm=np.round(np.array([place for _, *place in ways]) / grid) * grid,
            centres_mm=np.full((n, 2), np.nan),
            feeds_mm_per_min=np.where(kinds == RAPID, 0.0, feed),
        ),
        notes=(),
        remarks=(),
        operations=(Message("trial.shows_what"),),
        owners=np.zeros(n, np.intp),
        roles=np.full(n, TRAVEL, np.uint8),
        drilled=(),
        turning=False,
        pauses=tuple(
            (index, Message("trial.under_cutter", corner=Message(f"board.corner.{corner}")))
            for index, corner in enumerate(CORNERS, 2)
        ),
    )


def lifted_program(program: ToolProgram, by_mm: float) -> ToolProgram:
    """The same program, higher by as much; its heading says so first."""
    by_mm = round(by_mm / program.grid_mm) * program.grid_mm
    moves = program.moves
    return replace(
        program,
        heading=(worded(Message("trial.in_the_air", by=Typed(by_mm)), program.language), *program.heading),
        moves=replace(moves, ends_mm=moves.ends_mm + np.array([0.0, 0.0, by_mm])),
        drilled=tuple(
            replace(hole, clear_mm=hole.clear_mm + by_mm, bottom_mm=hole.bottom_mm + by_mm) for hole in program.drilled
        ),
    )
