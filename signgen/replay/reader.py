"""A program's text read as a machine would: `read_program`.

Source: NIST IR 6556, "The NIST RS274NGC Interpreter - Version 3".
Nothing here knows how this project writes programs.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

import numpy as np
from numpy.typing import NDArray

from signgen.messages import Message, Sentence
from signgen.replay import batch
from signgen.replay.execute import execute
from signgen.replay.machine import MachineState
from signgen.replay.motion import Fault, Replay
from signgen.replay.refusal import RefusedError
from signgen.replay.words import parse_line

_CHUNK_CHARS = 1 << 19
"""About 25,000 lines at a time: enough for arrays to pay, little enough for memory."""
_LEAST_STRETCH = 24
"""Ordinary lines in a row; below this arrays cost more than they save."""
MOST_FAULTS = 1000
_PERCENT = re.compile(r"^[ \t]*%[ \t]*$", re.MULTILINE)


def read_program(
    text: str,
    *,
    start_mm: tuple[float, float, float] | None = None,
    tool_lengths_mm: Mapping[int, float] | None = None,
    in_batches: bool = True,
) -> Replay:
    """What the program makes the machine do. Never raises, whatever the text.

    `start_mm` is where the tool's tip stands before the first line (unknown when omitted); `tool_lengths_mm`
    what G43 H adds, by number. `in_batches=False` reads every line by itself: slower, with the same result.
    """
    reader = Reader(MachineState(start_mm, dict(tool_lengths_mm or {})))
    return reader.read(text.replace("\r\n", "\n").replace("\r", "\n"), in_batches)


class Reader:
    """The file level (section 3.1): % lines, the end, and a fault for each line that is refused."""

    def __init__(self, machine: MachineState) -> None:
        self.machine = machine
        self.faults: list[Fault] = []
        self.fault_count = 0
        self.framed = False
        self.percents = 0
        self.begun = False
        self.bad_end = False

    def read(self, text: str, in_batches: bool) -> Replay:
        line_count, after_end = 0, ""
        for chunk in _chunks(text):
            if self._over:
                after_end += chunk
            else:
                done = self._chunk(chunk, line_count, in_batches)
                after_end = "".join(chunk.splitlines(keepends=True)[done:]) if self._over else ""
            line_count += chunk.count("\n")
        self._end(after_end, line_count)
        machine, motions = self.machine, self.machine.recorder.motions()
        modes = machine.modes_before_motion if machine.modes_before_motion is not None else frozenset(machine.modes)
        return Replay(
            motions=motions,
            faults=tuple(self.faults),
            ended=self._over,
            spindle_on_at_end=machine.rpm != 0,
            units_stated=bool(modes & {"G20", "G21"}),
            modes_before_motion=modes,
            tool_numbers=tuple(machine.tool_numbers),
            line_count=line_count,
            notes=tuple(machine.notes.values()),
            events=tuple(machine.events),
            fault_count=self.fault_count,
            dwell_s=machine.dwell_s,
            bad_end=self.bad_end,
        )

    @property
    def _over(self) -> bool:
        return self.machine.ended or (self.framed and self.percents == 2)

    def _refuse(self, line: int, words: str, message: Sentence) -> None:
        self.fault_count += 1
        if len(self.faults) < MOST_FAULTS:
            self.faults.append(Fault(line=line, words=words, message=message))

    def _chunk(self, chunk: str, before: int, in_batches: bool) -> int:
        """Runs a chunk that follows line `before`; returns how many of its lines were run."""
        lines = chunk.split("\n")
        lines.pop()
        table = batch.scan(chunk) if in_batches else None
        stretch = _stretches(table) if table is not None else None
        at, careful = 0, 0
        patience = _LEAST_STRETCH
        while at < len(lines) and not self._over:
            if table is not None and stretch is not None and at >= careful:
                upto = int(stretch[at])
                if upto - at >= _LEAST_STRETCH and batch.ready(self.machine):
                    done = batch.run(self.machine, table.values[at:upto], before + at + 1)
                    self.begun = self.begun or not np.isnan(table.values[at : at + done]).all()
                    at += done
                    if at < upto:
                        # Something in there needs care. Each such stop doubles the careful stretch after it, so that a
                        # text full of them costs no more than reading every line by itself.
                        patience = _LEAST_STRETCH if done > 16 * patience else 2 * patience
                        careful = at + patience
                    continue
            self.take_line(lines[at], before + at + 1)
            at += 1
        return at

    def take_line(self, raw: str, number: int) -> None:
        """Runs one line by itself."""
        self.machine.line_number = number
        bare = raw.strip(" \t")
        if not bare or bare == "/":
            return
        if bare == "%":
            self.percents += 1
            if not self.begun:
                self.framed = True
            elif not self.framed:
                self._refuse(number, "%", Message("reader.line_in_middle_without_one"))
            self.begun = True
            return
        self.begun = True
        try:
            execute(self.machine, parse_line(raw, self.machine.parameters))
        except RefusedError as refusal:
            self._refuse(number, refusal.words, refusal.message)

    def _end(self, left: str, line_count: int) -> None:
        """What can only be said at the end of the text; `left` are the lines after the program's end."""
        percent = _PERCENT.search(left)
        if self.framed and self.percents < 2 and not (self._over and percent):
            self._refuse(max(1, line_count), "%", Message("reader.program_begins_with_line_has"))
            self.bad_end = True
        elif not self._over:
            message = Message("reader.program_never_ends_has_neither")
            self._refuse(max(1, line_count), "", message)
            self.bad_end = True
        elif left[: percent.start() if percent else None].strip() or (percent and left[percent.end() :].strip()):
            self.machine.note("", Message("reader.lines_after_program_s_end"))


def _chunks(text: str) -> Iterator[str]:
    """The text in pieces of whole lines, each line with its newline, the last one too."""
    at = 0
    while at < len(text):
        cut = text.find("\n", at + _CHUNK_CHARS)
        piece = text[at:] if cut < 0 else text[at : cut + 1]
        at += len(piece)
        yield piece if piece.endswith("\n") else piece + "\n"


def _stretches(table: batch.MotionTable) -> NDArray[np.intp]:
    """For each line, the next line at or after it that is no ordinary one."""
    n = len(table.plain)
    stops = np.where(table.plain, n, np.arange(n))
    return np.minimum.accumulate(stops[::-1])[::-1]
