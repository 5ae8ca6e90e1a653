"""Drilling cycles G81 to G89, expanded into the motions that they stand for.

Source: NIST IR 6556, section 3.5.16. A cycle works along the axis that
stands upright on the plane in force; "Z" below is that axis.
"""

from __future__ import annotations

from collections.abc import Callable

from signgen.messages import Message, Num
from signgen.replay.arcs import PLANE_AXES
from signgen.replay.codes import code_name
from signgen.replay.expressions import integer
from signgen.replay.machine import MachineState, Sticky
from signgen.replay.motion import FEED, RAPID
from signgen.replay.refusal import RefusedError
from signgen.replay.words import Line

PECK_CLEARANCE_MM = 0.254
"""G83 comes back down to this much above the depth reached: 0.010 in."""
MOST_MOTIONS_OF_LINE = 100_000
MOST_MOTIONS_OF_CYCLES = 2_000_000
"""A line can ask for any number of holes and pecks; beyond this it is refused, so that no text can exhaust
the reader."""
_DEPTH_SLACK_MM = 1e-9
_NEEDS_SPINDLE = frozenset((840, 860, 870, 880))


def run_cycle(machine: MachineState, line: Line, code: int) -> None:
    """Executes one line of a cycle. Raises: RefusedError before any motion."""
    first, second, third = PLANE_AXES[machine.plane]
    letter, name = "XYZ"[third], code_name(code)
    said = line.say(name, "X", "Y", "Z", "R", "L", "P", "Q", "I", "J", "K")
    before = machine.cycle if machine.cycle is not None and machine.cycle.plane == machine.plane else None
    same = before if before is not None and before.code == code else None
    _refuse_state(machine, line, code, said)

    machine.assume_placed(third)
    bottom = line.values.get(letter, same.bottom if same else None)
    retract = line.values.get("R", before.retract if before else None)
    p, q = line.values.get("P", same.p if same else None), line.values.get("Q", same.q if same else None)
    if bottom is None:
        raise RefusedError(said, Message("reader.first_must_say_how_deep", name=name, letter=letter))
    if retract is None:
        raise RefusedError(said, Message("reader.first_must_say_where_feeding", name=name))
    if code in (820, 860, 880, 890) and (p is None or p < 0):
        raise RefusedError(said, Message("reader.needs_dwell_p_seconds_0", name=name))
    if code == 830 and (q is None or q <= 0):
        raise RefusedError(said, Message("reader.g83_needs_peck_q_greater"))
    if code == 870 and not {"I", "J", "K"} <= line.values.keys():
        raise RefusedError(said, Message("reader.g87_needs_i_j_k"))
    repeats = integer(line.values.get("L", 1.0), said, "L")
    if repeats < 1:
        raise RefusedError(said, Message("reader.l_must_1_more"))

    factor, height = machine.factor, machine.at[third]
    if machine.incremental:
        r_mm = height + retract * factor
        z_mm = r_mm + bottom * factor
    else:
        r_mm, z_mm = retract * factor + machine.shift[third], bottom * factor + machine.shift[third]
    if r_mm < z_mm:
        raise RefusedError(said, Message("reader.r_lies_below_bottom_hole"))
    q_mm = (q or 0.0) * factor
    pecks = (r_mm - z_mm) / q_mm if code == 830 else 1.0
    motions = repeats * (3 * pecks + 4)
    if motions > MOST_MOTIONS_OF_LINE or machine.expanded + motions > MOST_MOTIONS_OF_CYCLES:
        raise RefusedError(said, Message("reader.stands_motions_more_than_reader", motions=Num(motions, 0)))
    machine.expanded += int(motions)

    old_mm = before.old_mm if before else height
    clear_mm = r_mm if machine.return_to_r else max(old_mm, r_mm)
    machine.cycle = Sticky(code=code, plane=machine.plane, bottom=bottom, retract=retract, p=p, q=q, old_mm=old_mm)
    if machine.feed <= 0:
        machine.note(said, Message("reader.cycle_drills_although_no_feed"))
    if height < r_mm:
        machine.straight(RAPID, _with(machine.at, third, r_mm))
    for _ in range(repeats):
        above = machine.target(line, (first, second))
        above[third] = machine.at[third]
        _go(machine, above)
        _go(machine, _with(above, third, r_mm))
        _HOLES[code](machine, third, r_mm, z_mm, clear_mm, p or 0.0, q_mm)


def _refuse_state(machine: MachineState, line: Line, code: int, said: str) -> None:
    if not {"X", "Y", "Z"} & line.values.keys():
        raise RefusedError(said, Message("reader.drilling_cycle_needs_x_y"))
    if {"A", "B", "C"} & line.values.keys():
        raise RefusedError(line.say("A", "B", "C"), Message("reader.no_axis_may_turn_during"))
    if machine.inverse_time:
        raise RefusedError(said, Message("reader.drilling_cycle_may_not_run"))
    if machine.compensating:
        raise RefusedError(said, Message("reader.drilling_cycle_may_not_run_2"))
    if code in _NEEDS_SPINDLE and machine.rpm == 0:
        raise RefusedError(said, Message("reader.needs_turning_spindle", code_name=code_name(code)))
    if code == 840 and machine.rpm < 0:
        raise RefusedError(said, Message("reader.g84_needs_spindle_that_turns"))


def _with(point: list[float], axis: int, value: float) -> list[float]:
    moved = list(point)
    moved[axis] = value
    return moved


def _go(machine: MachineState, end: list[float]) -> None:
    if end != machine.at:
        machine.straight(RAPID, end)


def _feed_out(machine: MachineState, c: int, r: float, z: float, clear: float, p: float, q: float) -> None:
    """G85, and G84 and G89 in so far as the cutter's way goes: down and up at the feed rate."""
    machine.straight(FEED, _with(machine.at, c, z))
    machine.dwell(p)
    machine.straight(FEED, _with(machine.at, c, r))
    _go(machine, _with(machine.at, c, clear))


def _rapid_out(machine: MachineState, c: int, r: float, z: float, clear: float, p: float, q: float) -> None:
    """G81 and G82."""
    machine.straight(FEED, _with(machine.at, c, z))
    machine.dwell(p)
    machine.straight(RAPID, _with(machine.at, c, clear))


def _still_out(machine: MachineState, c: int, r: float, z: float, clear: float, p: float, q: float) -> None:
    """G86 and G88: the spindle stands still on the way out (by hand in G88, which is taken as the same way)."""
    machine.straight(FEED, _with(machine.at, c, z))
    machine.dwell(p)
    direction = machine.direction
    machine.turn(0)
    machine.straight(RAPID, _with(machine.at, c, clear))
    machine.turn(direction)


def _pecks(machine: MachineState, c: int, r: float, z: float, clear: float, p: float, q: float) -> None:
    """G83: out to the clear height after every peck, back to just above the depth reached."""
    done = 1
    while (depth := r - done * q) > z + _DEPTH_SLACK_MM:
        machine.straight(FEED, _with(machine.at, c, depth))
        machine.straight(RAPID, _with(machine.at, c, clear))
        machine.straight(RAPID, _with(machine.at, c, depth + PECK_CLEARANCE_MM))
        done += 1
    machine.straight(FEED, _with(machine.at, c, z))
    machine.straight(RAPID, _with(machine.at, c, clear))


def _back_bore(machine: MachineState, c: int, r: float, z: float, clear: float, p: float, q: float) -> None:
    """G87 needs a cutter that works upwards, which no router has."""
    machine.note("G87", Message("reader.back_boring_not_followed_cutter"), followed=False)
    _go(machine, _with(machine.at, c, clear))


_HOLES: dict[int, Callable[[MachineState, int, float, float, float, float, float], None]] = {
    810: _rapid_out,
    820: _rapid_out,
    830: _pecks,
    840: _feed_out,
    850: _feed_out,
    860: _still_out,
    870: _back_bore,
    880: _still_out,
    890: _feed_out,
}
