"""The motion of a line: straight, an arc, or a drilling cycle.

Source: NIST IR 6556, sections 3.5.1 to 3.5.3.
"""

from __future__ import annotations

import math

from signgen.messages import Message
from signgen.replay.arcs import PLANE_AXES, arc_centre
from signgen.replay.codes import CYCLES, code_name
from signgen.replay.cycles import run_cycle
from signgen.replay.machine import NOWHERE, MachineState
from signgen.replay.measure import arc_sweep_rad
from signgen.replay.motion import ARC_CCW, ARC_CW, FEED, RAPID
from signgen.replay.refusal import RefusedError
from signgen.replay.words import Line


def move(machine: MachineState, line: Line, motion: int, in_machine_places: bool) -> None:
    """Carries out the motion code in force on the line (800: none). `in_machine_places`: G53 is on the line."""
    if in_machine_places and motion not in (0, 10):
        raise RefusedError(line.text, Message("reader.g53_works_with_g0_g1"))
    if motion not in CYCLES:
        machine.cycle = None
    machine.motion = motion
    if motion == 800:
        return
    if motion in CYCLES:
        run_cycle(machine, line, motion)
        return
    name = code_name(motion)
    if line.values.keys() & {"A", "B", "C"}:
        machine.note(line.say("A", "B", "C"), Message("reader.turning_axes_are_not_followed"), followed=False)
    if in_machine_places:
        if machine.compensating:
            raise RefusedError(line.say("G53"), Message("reader.g53_may_not_used_while"))
        machine.note(line.say("G53"), Message("reader.only_machine_knows_where_g53"))
        for axis, letter in enumerate("XYZ"):
            if letter in line.values:
                machine.put(axis, NOWHERE)
        if "Z" in line.values:
            machine.happened("home", line.text, 53)
        return
    end = machine.target(line, (0, 1, 2))
    if motion in (20, 30):
        _arc(machine, line, motion, end)
        return
    if not line.values.keys() & {"X", "Y", "Z"}:
        return
    if motion == 0:
        machine.straight(RAPID, end)
        return
    if motion == 382:
        machine.note(name, Message("reader.probe_stops_where_touches_which"))
        _feed_mm(machine, line, name, end, 0.0)
        for axis, letter in enumerate("XYZ"):
            if letter in line.values:
                machine.put(axis, NOWHERE)
        return
    machine.straight(FEED, end, _feed_mm(machine, line, name, end, math.dist(machine.at, end)))


def _arc(machine: MachineState, line: Line, motion: int, end: list[float]) -> None:
    name, clockwise = code_name(motion), motion == 20
    first, second, third = PLANE_AXES[machine.plane]
    for axis in (first, second):
        machine.assume_placed(axis)
        if end[axis] != end[axis]:
            end[axis] = machine.at[axis]
    try:
        centre = arc_centre(line, clockwise, machine.plane, machine.at, end, machine.factor, name)
        p = (machine.at[first] - centre[0], machine.at[second] - centre[1])
        q = (end[first] - centre[0], end[second] - centre[1])
        turned = abs(arc_sweep_rad(p, q, clockwise)) * math.hypot(*p)
        feed_mm = _feed_mm(machine, line, name, end, math.hypot(turned, _or_0(end[third] - machine.at[third])))
    except RefusedError:
        # The next line reckons from the arc's end: else one wrong arc would make those after it look wrong too.
        machine.at = end
        raise
    if first > second:
        centre = (centre[1], centre[0])
    machine.record(ARC_CW if clockwise else ARC_CCW, end, centre, feed_mm)


def _feed_mm(machine: MachineState, line: Line, name: str, end: list[float], length_mm: float) -> float:
    """Feed in mm/min. Raises: RefusedError where there is none; the machine is then at the end all the
    same. What is missing is missing from every line that follows: only the first is refused, the others
    move at 0."""
    said = line.say(name, "X", "Y", "Z") or name
    if machine.inverse_time:
        if line.values.get("F", 0.0) <= 0:
            machine.at = end
            raise RefusedError(said, Message("reader.in_inverse_time_g93_every"))
        return _or_0(length_mm) * machine.feed
    if machine.feed <= 0 and not machine.feed_refused:
        machine.at, machine.feed_refused = end, True
        raise RefusedError(said, Message("reader.line_moves_feed_rate_none"))
    return machine.feed * machine.factor


def _or_0(value: float) -> float:
    return value if value == value else 0.0
