"""Where numbers are reckoned from: work zeros, offsets, tool lengths, and places that only the machine knows.

Source: NIST IR 6556, section 3.5 and Appendix B.
"""

from __future__ import annotations

from signgen.messages import Message
from signgen.replay.codes import code_name
from signgen.replay.expressions import integer
from signgen.replay.machine import NOWHERE, MachineState
from signgen.replay.motion import RAPID
from signgen.replay.refusal import RefusedError
from signgen.replay.words import Line


def set_compensation(machine: MachineState, line: Line, code: int) -> None:
    """G40, G41, G42: noted, not followed."""
    if code != 400:
        said = line.say(code_name(code), "D")
        if machine.plane != 170:
            raise RefusedError(said, Message("reader.cutter_compensation_works_in_plane"))
        if machine.compensating:
            raise RefusedError(said, Message("reader.cutter_compensation_on_already_must"))
        at_least_0(line, "D", Message("reader.d_must_number_tool"), needed=False)
        machine.note(said, Message("reader.cutter_compensation_not_followed_path"), followed=False)
    machine.compensating = code != 400


def set_length(machine: MachineState, line: Line, code: int) -> None:
    """G43 and G49: the numbers of where the tool is change, nothing moves."""
    length = 0.0
    if code == 430:
        tool = integer(at_least_0(line, "H", Message("reader.g43_needs_h_number_tool")), line.say("H"), "H")
        length = machine.lengths_mm.get(tool, 0.0)
        if tool and tool not in machine.lengths_mm:
            machine.note(
                line.say("G43", "H"),
                Message("reader.only_machine_knows_tool_s"),
            )
    machine.put(2, machine.at[2] - (length - machine.length_mm))
    machine.length_mm = length
    machine.happened("length", line.say(code_name(code), "H"), -1 if code == 490 else line.values["H"])


def reckon(machine: MachineState) -> None:
    """Brings `machine.shift` up to date with the work zero and the offset in force."""
    zero = machine.zeros.get(machine.zero_code, (0.0, 0.0, 0.0))
    machine.shift = [zero[axis] + machine.offset[axis] for axis in range(3)]


def set_zero(machine: MachineState, line: Line) -> None:
    """G10 L2 P1 to P9: the zero of G54 to G59.3."""
    said = line.say("G10", "L", "P")
    if line.values.get("L") == 20:
        _set_here(machine, line, said)
        return
    if line.values.get("L") != 2 or "P" not in line.values:
        raise RefusedError(said or line.text, Message("reader.g10_needs_l2_p_number"))
    number = integer(line.values["P"], line.spelled["P"], "P")
    if not 1 <= number <= 9:
        raise RefusedError(said, Message("reader.work_zeros_are_numbered_from"))
    machine.note(
        said,
        Message("reader.g10_moves_work_zero_measured"),
    )
    code = 530 + 10 * number if number <= 6 else 584 + number
    zero = machine.zeros.setdefault(code, [0.0, 0.0, 0.0])
    for axis, letter in enumerate("XYZ"):
        if letter in line.values:
            zero[axis] = line.values[letter] * machine.factor
    reckon(machine)


def _set_here(machine: MachineState, line: Line, said: str) -> None:
    """G10 L20: the zero is set so that the tool's place has the values given. After a probe, or where the text has not
    said where the tool is, that is the zero that the operator would have set; else it moves from where it was.
    Common practice of controls: the published rules have L2 only."""
    machine.note(said, Message("reader.g10_l20_sets_zero_tool"))
    for axis, letter in enumerate("XYZ"):
        if letter in line.values:
            value = line.values[letter] * machine.factor
            if machine.at[axis] != machine.at[axis]:
                machine.put(axis, value + machine.shift[axis])
            else:
                zero = machine.zeros.setdefault(machine.zero_code, [0.0, 0.0, 0.0])
                zero[axis] = machine.at[axis] - machine.offset[axis] - value
    reckon(machine)


def set_offset(machine: MachineState, line: Line, code: int) -> None:
    """G92 names the place where the tool is; G92.1 forgets that, G92.2 suspends it, G92.3 takes it up again."""
    if code == 920:
        if not line.values.keys() & {"X", "Y", "Z", "A", "B", "C"}:
            raise RefusedError(line.say("G92"), Message("reader.g92_needs_axis_word"))
        for axis, letter in enumerate("XYZ"):
            if letter in line.values:
                machine.assume_placed(axis)
                here = machine.at[axis] - machine.shift[axis] + machine.offset[axis]
                machine.offset[axis] = here - line.values[letter] * machine.factor
        machine.kept_offset = list(machine.offset)
    elif code == 923:
        machine.offset = list(machine.kept_offset)
    else:
        machine.offset = [0.0, 0.0, 0.0]
        if code == 921:
            machine.kept_offset = [0.0, 0.0, 0.0]
    reckon(machine)


def go_home(machine: MachineState, line: Line, name: str) -> None:
    """G28 and G30: by way of the point that the axis words give, to a place that is unknown here."""
    # G91 G28 Z0, the usual way up, goes by way of where the tool is: nothing moves before it.
    stays = machine.incremental and not any(line.values.get(letter) for letter in "XYZ")
    if line.values.keys() & {"X", "Y", "Z"} and not stays:
        machine.straight(RAPID, machine.target(line, (0, 1, 2)))
    machine.note(name, Message("reader.only_machine_knows_where_goes", name=name))
    machine.at = [NOWHERE, NOWHERE, NOWHERE]
    machine.happened("home", line.text, float(name[1:]))


def at_least_0(line: Line, letter: str, message: Message, needed: bool = True) -> float:
    """The word's value. Raises: RefusedError with `message` when it is missing (though needed) or negative."""
    value = line.values.get(letter)
    if value is None and not needed:
        return 0.0
    if value is None or value < 0:
        raise RefusedError(line.say(letter) or line.text, message)
    return value
