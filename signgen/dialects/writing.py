"""Writing programs as RS-274; a dialect is a `Writing` that states where it differs.

Source for the words and their order: NIST IR 6556.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence

import numpy as np
from msgspec import Struct

from signgen.dialects.words import INCHES, MILLIMETRES, Unit, comment, decimal
from signgen.geometry.paths import CCW, CW, LINE
from signgen.messages import Message, Typed
from signgen.program.blocks import RAPID, Drilled, ToolProgram
from signgen.program.heading import worded
from signgen.shop.manner import Change, Manner

WORDS = {LINE: "G1", CW: "G2", CCW: "G3", RAPID: "G0"}

WARM_UP_STEPS = 3
"""A spindle that has stood cold runs up in so many speeds, equally far apart (common practice)."""

MOST_LINES = 99_999
LINE_STEP = 10
"""Line numbers have five digits at most, and may repeat. Source: NIST IR 6556, section 3.3.1."""


def as_they_are(program: ToolProgram) -> ToolProgram:
    return program


class Writing(Struct, frozen=True, kw_only=True):
    """Every line states its motion word, so that a reader may start anywhere; axis words stand where they change.

    `simplify` replaces what the controller does not know, before anything is written. `cycles`: drilled holes are
    written as G81 and G83. `change`: with "none" a file a cutter; else all in one file, and after M6 the operator has
    a pause to set Z anew ("pause"), or the control has each cutter's length in its table ("lengths").
    """

    name: str
    about: str
    unit: Unit = MILLIMETRES
    simplify: Callable[[ToolProgram], ToolProgram] = as_they_are
    cycles: bool = False
    change: Change = "none"

    @property
    def straight(self) -> bool:
        """Whether arcs are written as chords."""
        return self.simplify is not as_they_are

    @property
    def grid_mm(self) -> float:
        return self.unit.grid_mm

    @property
    def inches(self) -> bool:
        return self.unit is INCHES

    @property
    def one_file(self) -> bool:
        return self.change != "none"

    def write(self, programs: Sequence[ToolProgram], manner: Manner) -> tuple[str, ...]:
        files = [programs] if self.one_file else [[program] for program in programs]
        return tuple(_framed(self._lines(each, manner), manner) for each in files)

    def _lines(self, programs: Sequence[ToolProgram], manner: Manner) -> Iterator[str]:
        yield from (comment(line) for line in programs[0].heading)
        for place, program in enumerate(programs[1:], 2):
            for line in program.own_heading:
                yield comment(worded(Message("heading.cutter", place=place, line=line), program.language))
        opening = f"G17 {self.unit.code} G40 G49 G54 G80 G90 G94"
        yield opening
        if manner.comments == "full":
            # Behind the line, for what stands before it is the heading, which says how the board lies.
            for word in opening.split():
                says = Message("remark.word", word=word, does=Message(f"rs.{word.lower()}.short"))
                yield comment(worded(says, programs[0].language))
        for place, program in enumerate(programs, 1):
            yield from self._one(self.simplify(program), place, manner)
        yield {"m2": "M2", "m30": "M30"}[manner.program_end]

    def _one(self, program: ToolProgram, place: int, manner: Manner) -> Iterator[str]:
        """One cutter's work, from the change to the cutter to its spindle's stop."""
        if self.change != "none":
            yield f"T{place} M6"
            if self.change == "pause" and place > 1:
                fit = Message("heading.fit", tool=program.tool.called)
                yield comment(worded(fit, program.language), message=True)
                if program.set_at:
                    set_z = Message("heading.then_set_z", ways=program.set_at)
                    yield comment(worded(set_z, program.language), message=True)
                yield "M0"
            if self.change == "lengths":
                yield f"G43 H{place}"
        if not program.turning:
            yield "M5"
        yield f"G0 Z{self._place(program.moves.ends_mm[0, 2])}"
        if program.turning:
            yield from _spindle_on(program, manner)
        yield from self._motions(program, manner)
        yield "M5"
        if manner.extraction != "none":
            yield "M9"

    def _motions(self, program: ToolProgram, manner: Manner) -> Iterator[str]:
        moves = program.moves
        ends = np.rint(moves.ends_mm / self.grid_mm).astype(np.int64)
        begin = np.vstack([ends[:1], ends[:-1]])
        centres = np.rint(np.nan_to_num(moves.centres_mm) / self.grid_mm).astype(np.int64)
        notes = dict(program.notes)
        pauses = dict(program.pauses)
        remarks: defaultdict[int, list[Message]] = defaultdict(list)
        for index, says in program.remarks if manner.comments == "full" else ():
            remarks[index].append(says)
        drilled = {hole.first: hole for hole in program.drilled} if self.cycles else {}
        decimals = self.unit.decimals
        at: tuple[int | None, int | None, int | None] = (None, None, int(ends[0, 2]))
        feed_now = ""
        through = -1
        rows = zip(
            moves.kinds.tolist(),
            ends.tolist(),
            (centres - begin[:, :2]).tolist(),
            moves.feeds_mm_per_min.tolist(),
            strict=True,
        )
        for index, (kind, end, offset, feed) in enumerate(rows):
            if index in notes:
                yield comment(worded(notes[index], program.language))
            if index in remarks:
                yield from (comment(worded(says, program.language)) for says in remarks[index])
            if index in drilled:
                through = drilled[index].last
                feed_now = self.unit.feed(drilled[index].feed_mm_per_min)
                yield from self._cycle(drilled[index], feed_now)
            arc = kind in (CW, CCW)
            words = [
                letter + decimal(value, decimals)
                for letter, value, old in zip("XYZ", end, at, strict=True)
                if value != old or (arc and letter != "Z")
            ]
            if index == 0 or not words:
                continue
            at = (end[0], end[1], end[2])
            if index <= through:
                continue
            if arc:
                words += [f"I{decimal(offset[0], decimals)}", f"J{decimal(offset[1], decimals)}"]
            if kind != RAPID and (said := self.unit.feed(feed)) != feed_now:
                feed_now = said
                words.append(f"F{said}")
            yield f"{WORDS[kind]} {' '.join(words)}"
            if index in pauses:
                yield comment(worded(pauses[index], program.language), message=True)
                yield "M0"

    def _cycle(self, hole: Drilled, feed: str) -> Iterator[str]:
        """Back to the clear height after it (G99), which is where the plain way ends too."""
        words = f"X{self._place(hole.x_mm)} Y{self._place(hole.y_mm)} Z{self._place(hole.bottom_mm)}"
        words += f" R{self._place(hole.clear_mm)}"
        if hole.in_one_go:
            yield f"G99 G81 {words} F{feed}"
        else:
            yield f"G99 G83 {words} Q{self._place(hole.peck_mm)} F{feed}"
        yield "G80"

    def _place(self, mm: float) -> str:
        return decimal(round(mm / self.grid_mm), self.unit.decimals)


def start_up(program: ToolProgram, manner: Manner) -> tuple[tuple[float, float], ...]:
    """(speed in rpm, seconds to wait at it) before the first cut. The job's first program warms the spindle up, from a
    third of its speed or the slowest that the machine has."""
    rpm = program.cutting.spindle_rpm
    if manner.warm_up_s <= 0 or program.number > 1:
        return ((rpm, program.spindle_start_s),)
    least = max(program.spindle_least_rpm, rpm / WARM_UP_STEPS)
    if least >= rpm:
        return ((rpm, max(manner.warm_up_s, program.spindle_start_s)),)
    each, step = manner.warm_up_s / WARM_UP_STEPS, (rpm - least) / (WARM_UP_STEPS - 1)
    slow = tuple((least + step * n, each) for n in range(WARM_UP_STEPS - 1))
    return (*slow, (rpm, max(each, program.spindle_start_s)))


def _spindle_on(program: ToolProgram, manner: Manner) -> Iterator[str]:
    """Speed, start, extraction, and the time to reach speed."""
    steps = start_up(program, manner)
    if manner.warm_up_s > 0 and program.number == 1:
        warms = Message("heading.warms_up", seconds=Typed(manner.warm_up_s))
        yield comment(worded(warms, program.language))
    for n, (speed, seconds) in enumerate(steps):
        yield f"S{speed:.0f} M3"
        if n == 0 and manner.extraction != "none":
            yield manner.extraction.upper()
        yield f"G4 P{seconds:g}"


def _framed(lines: Iterable[str], manner: Manner) -> str:
    """The file's text: lines numbered and between % lines, if wanted."""
    body = list(lines)
    if manner.line_numbers:
        step = LINE_STEP if len(body) * LINE_STEP <= MOST_LINES else 1
        body = [f"N{(n * step - 1) % MOST_LINES + 1} {line}" for n, line in enumerate(body, 1)]
    if manner.percent_lines:
        body = ["%", *body, "%"]
    return "\n".join(body) + "\n"
