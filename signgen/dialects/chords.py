"""Arcs as straight lines, for controllers that do not know them, or not as helices."""

from __future__ import annotations

import numpy as np
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.geometry.paths import CCW, CW, LINE, FloatArray
from signgen.program.blocks import Moves, ToolProgram


def without_arcs(program: ToolProgram) -> ToolProgram:
    """Every arc as chords."""
    return _chorded(program, np.isin(program.moves.kinds, (CW, CCW)))


def without_helices(program: ToolProgram) -> ToolProgram:
    """Arcs that rise or fall as chords; level ones stay."""
    z = program.moves.ends_mm[:, 2]
    return _chorded(program, np.isin(program.moves.kinds, (CW, CCW)) & (np.diff(z, prepend=z[0]) != 0))


def _chorded(program: ToolProgram, chosen: NDArray[np.bool_]) -> ToolProgram:
    moves = program.moves
    begin = np.vstack([moves.ends_mm[:1], moves.ends_mm[:-1]])
    spoke, out = begin[:, :2] - moves.centres_mm, moves.ends_mm[:, :2] - moves.centres_mm
    turn = np.arctan2(spoke[:, 0] * out[:, 1] - spoke[:, 1] * out[:, 0], np.einsum("ij,ij->i", spoke, out))
    closed = np.all(begin[:, :2] == moves.ends_mm[:, :2], axis=1)
    turn = np.where(moves.kinds == CCW, np.mod(turn, 2 * np.pi), -np.mod(-turn, 2 * np.pi))
    turn = np.where(closed, np.where(moves.kinds == CCW, 2 * np.pi, -2 * np.pi), turn)
    radius = np.hypot(*spoke.T)
    chord = program.arc_chord_mm
    # Sagitta R (1 - cos h) = chord gives the half angle h. Source: plane geometry, derived here.
    half = 2 * np.arcsin(np.sqrt(np.clip(chord / np.maximum(2 * radius, chord), 0, 0.5)))
    count = np.where(chosen, np.maximum(np.ceil(np.abs(turn) / (2 * half)), 1), 1).astype(np.intp)
    owner = np.repeat(np.arange(len(moves)), count)
    last = np.cumsum(count) - 1
    share = (np.arange(len(owner)) - (last - count + 1)[owner] + 1) / count[owner]
    ends = _on_the_way(moves, begin, spoke, turn, owner, share, chosen)
    ends = np.round(ends / program.grid_mm) * program.grid_mm
    ends[last] = moves.ends_mm
    kinds = np.where(chosen, LINE, moves.kinds).astype(np.uint8)[owner]
    first = last - count + 1
    return replace(
        program,
        moves=Moves(
            kinds=kinds,
            ends_mm=ends,
            centres_mm=np.where(chosen[:, None], np.nan, moves.centres_mm)[owner],
            feeds_mm_per_min=moves.feeds_mm_per_min[owner],
        ),
        notes=tuple((int(first[index]), text) for index, text in program.notes),
        remarks=tuple((int(first[index]), says) for index, says in program.remarks),
        owners=program.owners[owner],
        roles=program.roles[owner],
        drilled=tuple(
            replace(hole, first=int(first[hole.first]), last=int(last[hole.last])) for hole in program.drilled
        ),
    )


def _on_the_way(
    moves: Moves,
    begin: FloatArray,
    spoke: FloatArray,
    turn: FloatArray,
    owner: NDArray[np.intp],
    share: FloatArray,
    chosen: NDArray[np.bool_],
) -> FloatArray:
    """(m, 3) the places at a share of each owner's way."""
    ends = begin[owner] + share[:, None] * (moves.ends_mm - begin)[owner]
    angle, arm = (share * turn[owner]), spoke[owner]
    x = arm[:, 0] * np.cos(angle) - arm[:, 1] * np.sin(angle)
    y = arm[:, 0] * np.sin(angle) + arm[:, 1] * np.cos(angle)
    on_arc = moves.centres_mm[owner] + np.column_stack([x, y])
    ends[:, :2] = np.where(chosen[owner][:, None], on_arc, ends[:, :2])
    return np.asarray(ends)
