"""One line of a program carried out on the machine, in the order that the rules say.

Source: NIST IR 6556, sections 3.4 to 3.8 (order of execution: Table 8).
"""

from __future__ import annotations

from signgen.messages import Message
from signgen.replay.codes import (
    AXIS_USERS,
    G_GROUPS,
    MOTION,
    NON_MODAL,
    RADIUS_COMP,
    WORD_USERS,
    WORK_ZERO,
    code_name,
)
from signgen.replay.expressions import integer
from signgen.replay.machine import MachineState
from signgen.replay.refusal import RefusedError
from signgen.replay.travel import move
from signgen.replay.words import Line
from signgen.replay.zeros import at_least_0, go_home, reckon, set_compensation, set_length, set_offset, set_zero

INCH_MM = 25.4


def execute(machine: MachineState, line: Line) -> None:
    """Runs one line in the order of Table 8. Raises: RefusedError; what comes before the refused word has
    then taken effect."""
    groups = {G_GROUPS[code]: code for code in line.g}
    motion = _motion_of(machine, line, groups)
    _refuse_words_without_user(machine, line, motion)
    if line.skippable:
        machine.note(line.text, Message("reader.whether_line_that_begins_with"))
    for index in sorted(machine.parameters.unset):
        machine.note(f"#{index}", Message("reader.parameter_holds_what_machine_has", index=index))
    machine.parameters.unset.clear()
    machine.parameters.values.update(line.settings)
    for index in line.settings:
        machine.happened("stored", f"#{index}", index)
    _feed_speed_and_tool(machine, line, groups)
    _spindle(machine, line)
    if 40 in line.g:
        seconds = at_least_0(line, "P", Message("reader.g4_needs_p_seconds_0"))
        machine.dwell(seconds)
        machine.happened("dwell", line.say("G4", "P"), seconds)
    _modes(machine, line, groups)
    non_modal = groups.get(NON_MODAL)
    if non_modal in (280, 300):
        go_home(machine, line, code_name(non_modal))
    elif non_modal == 100:
        set_zero(machine, line)
    elif non_modal is not None and non_modal >= 920:
        set_offset(machine, line, non_modal)
    if motion is not None:
        move(machine, line, motion, non_modal == 530)
    elif non_modal == 530:
        raise RefusedError(line.text, Message("reader.g53_needs_g0_g1_place"))
    for code in (0, 1, 60):
        if code in line.m:
            machine.happened("stop", f"M{code}", code)
    machine.ended = 2 in line.m or 30 in line.m


def _motion_of(machine: MachineState, line: Line, groups: dict[int, int]) -> int | None:
    """The motion code that acts on this line (800 for an explicit G80), or None."""
    axes = line.values.keys() & {"X", "Y", "Z", "A", "B", "C"}
    taken = groups.get(NON_MODAL) in AXIS_USERS
    explicit = groups.get(MOTION)
    if explicit == 800:
        if axes and not taken:
            raise RefusedError(
                line.say("G80", "X", "Y", "Z", "A", "B", "C"), Message("reader.g80_ends_motion_moves_no")
            )
        return explicit
    if explicit is not None:
        if taken:
            words = line.say(code_name(explicit), *(code_name(code) for code in line.g))
            raise RefusedError(words, Message("reader.two_codes_line_both_want"))
        if not axes:
            raise RefusedError(line.say(code_name(explicit)), Message("reader.motion_code_has_no_axis"))
        return explicit
    if taken or not axes:
        return None
    if machine.motion == 800 and groups.get(NON_MODAL) == 530 and "G80" not in machine.modes:
        machine.note(line.say("G53"), Message("reader.no_motion_code_in_force"))
        return 0
    if machine.motion == 800:
        raise RefusedError(line.say("X", "Y", "Z", "A", "B", "C"), Message("reader.no_motion_code_in_force_2"))
    return machine.motion


def _refuse_words_without_user(machine: MachineState, line: Line, motion: int | None) -> None:
    active = {*line.g, motion}
    for letter in line.values:
        users = WORD_USERS.get(letter)
        if users is not None and not users & active:
            raise RefusedError(line.spelled[letter], Message("reader.nothing_on_line_gives_meaning", letter=letter))


def _feed_speed_and_tool(machine: MachineState, line: Line, groups: dict[int, int]) -> None:
    mode = groups.get(5)
    if mode is not None:
        machine.inverse_time = mode == 930
    for letter in "FST":
        if line.values.get(letter, 0.0) < 0:
            raise RefusedError(line.spelled[letter], Message("reader.may_not_negative", letter=letter))
    if "F" in line.values:
        machine.feed, machine.feed_refused = line.values["F"], False
    if "S" in line.values:
        machine.speed = line.values["S"]
        machine.turn(machine.direction)
    if "T" in line.values:
        machine.selected = integer(line.values["T"], line.spelled["T"], "T")
        if not machine.tool_numbers or machine.tool_numbers[-1] != machine.selected:
            machine.tool_numbers.append(machine.selected)
    if 6 in line.m:
        machine.turn(0)
        machine.tool = machine.selected
        machine.happened("change", line.say("T", "M6"), machine.tool)


def _spindle(machine: MachineState, line: Line) -> None:
    for code, direction in ((3, 1), (4, -1), (5, 0)):
        if code in line.m:
            machine.turn(direction)
            machine.happened("spindle", line.say("S", f"M{code}"), machine.rpm)
    for code in (7, 8, 9):
        if code in line.m:
            machine.happened("coolant", f"M{code}", code)


def _modes(machine: MachineState, line: Line, groups: dict[int, int]) -> None:
    for group, code in groups.items():
        if group not in (NON_MODAL, MOTION) or code == 800:
            machine.modes.add(code_name(code))
    plane, units, comp = groups.get(2), groups.get(6), groups.get(RADIUS_COMP)
    if plane is not None:
        machine.plane = plane
    if units is not None:
        factor = INCH_MM if units == 200 else 1.0
        if factor != machine.factor and (machine.recorder.count or machine.feed):
            machine.note(
                line.say(code_name(units)),
                Message("reader.units_change_after_feed_rate"),
            )
        machine.factor = factor
    if comp is not None:
        set_compensation(machine, line, comp)
    length = groups.get(8)
    if length is not None:
        set_length(machine, line, length)
    zero = groups.get(WORK_ZERO)
    if zero is not None:
        if zero != 540:
            name = code_name(zero)
            machine.note(name, Message("reader.only_machine_knows_where_zero", name=name))
        machine.zero_code = zero
        reckon(machine)
    distance, cycle_return = groups.get(3), groups.get(10)
    if distance is not None:
        machine.incremental = distance == 910
    if cycle_return is not None:
        machine.return_to_r = cycle_return == 990
