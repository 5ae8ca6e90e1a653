"""A program read line by line, with the state that each line leaves: for those who read along with the machine.

Source: NIST IR 6556, section 3.4 (modal groups) and Table 8 (order of execution).
"""

from __future__ import annotations

import re

from msgspec import Struct
from msgspec.structs import replace

from signgen.replay.codes import code_name
from signgen.replay.extras import without_extras
from signgen.replay.machine import MachineState
from signgen.replay.motion import Event, Fault, Motions, Replay
from signgen.replay.reader import Reader
from signgen.replay.refusal import RefusedError
from signgen.replay.words import Line, parse_line

_COMMENT = re.compile(r"\(([^()]*)\)|;(.*)$")


class ReplayStep(Struct, frozen=True, kw_only=True):
    """One line and what it leaves. `number` is 1-based; `words` maps the words' names ("G2", "X", "M3") to how they
    are written, in the order of the line; `values` the numbers of all but G and M. `comments`: what it says in
    comments. `first`, `count`: its motions in the replay. `modal`: the modal words in force after it, those for motion,
    plane, units, distance, feed, zero, spindle and coolant, in that order. `feed` is F as written (0: none yet), per
    minute of the units in force unless `inverse_time`; `speed` is S as written. `ran`: False for what lies behind the
    program's end."""

    number: int
    text: str
    words: dict[str, str]
    values: dict[str, float]
    comments: tuple[str, ...]
    first: int
    count: int
    events: tuple[Event, ...]
    fault: Fault | None
    modal: tuple[str, ...]
    feed: float
    speed: float
    unit_mm: float
    inverse_time: bool
    ran: bool


class Trace(Struct, frozen=True, kw_only=True):
    """A program's replay and its lines."""

    replay: Replay
    steps: tuple[ReplayStep, ...]

    @property
    def motions(self) -> Motions:
        return self.replay.motions


class _Tracing(Reader):
    """Reads as the reader does, and notes the state of the machine after each line."""

    def __init__(self, machine: MachineState, lines: list[str]) -> None:
        super().__init__(machine)
        self.lines, self.steps, self.coolant = lines, list[ReplayStep](), set[str]()

    def take_line(self, raw: str, number: int) -> None:
        machine = self.machine
        motions, events, faults = machine.recorder.count, len(machine.events), len(self.faults)
        super().take_line(raw, number)
        happened = tuple(machine.events[events:])
        for event in happened:
            if event.kind == "coolant":
                self.coolant = set() if event.value == 9 else self.coolant | {f"M{event.value:.0f}"}
        self.steps.append(
            _step(
                self.lines[number - 1], raw, number, machine,
                span=(motions, machine.recorder.count - motions), events=happened,
                fault=self.faults[-1] if len(self.faults) > faults else None, coolant=self.coolant, ran=True,
            )
        )  # fmt: skip


def trace(text: str) -> Trace:
    """The program line by line; what many controls take beyond the rules is left out, as in every check of programs
    from elsewhere. Never raises, whatever the text."""
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    bare, notes = without_extras(plain)
    lines = plain.removesuffix("\n").split("\n")
    reader = _Tracing(MachineState(None, dict.fromkeys(range(1, 1000), 0.0)), lines)
    replay = reader.read(bare, in_batches=False)
    machine = reader.machine
    for number in range(len(reader.steps) + 1, len(lines) + 1):
        reader.steps.append(
            _step(
                lines[number - 1], "", number, machine,
                span=(machine.recorder.count, 0), events=(), fault=None, coolant=reader.coolant, ran=False,
            )
        )  # fmt: skip
    notes = (*notes, *replay.notes)
    return Trace(replay=replace(replay, notes=notes), steps=tuple(reader.steps))


def _step(
    text: str, raw: str, number: int, machine: MachineState, *, span: tuple[int, int], events: tuple[Event, ...],
    fault: Fault | None, coolant: set[str], ran: bool,
) -> ReplayStep:  # fmt: skip
    line = _words(raw, machine)
    return ReplayStep(
        number=number,
        text=text.strip(),
        words=line.spelled,
        values=line.values,
        comments=tuple((a or b).strip() for a, b in _COMMENT.findall(text) if (a or b).strip()),
        first=span[0],
        count=span[1],
        events=events,
        fault=fault,
        modal=_modal(machine, coolant),
        feed=machine.feed,
        speed=machine.speed,
        unit_mm=machine.factor,
        inverse_time=machine.inverse_time,
        ran=ran,
    )


def _words(raw: str, machine: MachineState) -> Line:
    """Its words; none where it cannot be read. Parameters are those after the line, which is as near as a second
    reading comes."""
    try:
        return Line() if raw.strip() == "%" else parse_line(raw, machine.parameters)
    except RefusedError:
        return Line()


def _modal(machine: MachineState, coolant: set[str]) -> tuple[str, ...]:
    spindle = {1: "M3", -1: "M4"}.get(machine.direction, "M5")
    return (
        code_name(machine.motion), code_name(machine.plane), "G20" if machine.factor != 1.0 else "G21",
        "G91" if machine.incremental else "G90", "G93" if machine.inverse_time else "G94",
        code_name(machine.zero_code), spindle, *sorted(coolant),
    )  # fmt: skip
