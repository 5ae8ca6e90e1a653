"""Stretches of ordinary motion lines read as arrays: the same result as line by line, a good deal sooner.

An ordinary line has at most a line number, one of G0 to G3, and words X Y Z I J F, each once, with plain
numbers. Everything else, and every line that would be refused, is left to `parse_line` and `MachineState`, so
there is only one place where a fault is worded.
"""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.replay.arcs import greatest_mismatch_mm
from signgen.replay.expressions import GREATEST_VALUE
from signgen.replay.machine import MachineState
from signgen.replay.motion import FloatArray
from signgen.replay.record import ROW
from signgen.replay.words import LONGEST_LINE

_BAD, _DIGIT, _DOT, _SIGN, _LETTER, _END = range(6)
_COLUMNS = b"GXYZIJFN"
_G, _X, _Z, _I, _J, _F, _N = 0, 1, 3, 4, 5, 6, 7
_LONGEST_NUMBER = 14
"""Characters; up to 14 digits are exact in an integer and their quotient by a power of ten rounds as `float`
does."""


def _classes() -> tuple[NDArray[np.uint8], NDArray[np.uint8]]:
    kind, column = np.zeros(256, np.uint8), np.zeros(256, np.uint8)
    kind[list(b"0123456789")] = _DIGIT
    kind[ord(".")] = _DOT
    kind[list(b"+-")] = _SIGN
    kind[ord("\n")] = _END
    for at, letter in enumerate(_COLUMNS):
        for case in (letter, letter + 32):
            kind[case], column[case] = _LETTER, at
    return kind, column


_KIND, _COLUMN = _classes()
_POWERS = 10.0 ** np.arange(_LONGEST_NUMBER + 1)


class MotionTable(Struct, frozen=True, kw_only=True):
    """Numbers of a chunk's lines: values (n, 8) in the order of `_COLUMNS`, NaN where a line lacks the word;
    plain (n,) whether the line is an ordinary one (values mean something only there)."""

    values: FloatArray
    plain: NDArray[np.bool_]


def scan(chunk: str) -> MotionTable:
    """Takes apart a chunk of whole lines, each ending with a newline."""
    text = chunk.encode("ascii", "replace")
    ends = np.nonzero(np.frombuffer(text, np.uint8) == 10)[0]
    plain = np.diff(ends, prepend=-1) <= LONGEST_LINE + 1
    text = text.translate(None, b" \t")
    chars = np.frombuffer(text, np.uint8)
    kind = _KIND[chars]
    ends = np.nonzero(kind == _END)[0]
    starts = np.concatenate(([0], ends[:-1] + 1))
    plain[np.searchsorted(ends, np.nonzero(kind == _BAD)[0])] = False
    plain &= (kind[starts] == _LETTER) | (kind[starts] == _END)

    words = np.nonzero(kind == _LETTER)[0]
    line = np.searchsorted(ends, words)
    bounds = np.nonzero(kind >= _LETTER)[0]
    length = bounds[np.searchsorted(bounds, words) + 1] - words - 1
    column = _COLUMN[chars[words]]
    number, sound = _numbers(chars, kind, words, length)

    sound &= np.abs(number) <= GREATEST_VALUE
    is_g, is_n = column == _G, column == _N
    sound &= ~is_g | np.isin(number, (0.0, 1.0, 2.0, 3.0))
    sound &= ~is_n | ((words == starts[line]) & (length <= 5) & (kind[np.minimum(words + 1, len(kind) - 1)] == _DIGIT))
    sound[is_n] &= ~_has_dot(kind, words[is_n], length[is_n])
    plain[line[~sound]] = False
    cell = line * len(_COLUMNS) + column
    twice = np.bincount(cell, minlength=len(ends) * len(_COLUMNS)) > 1
    plain &= ~twice.reshape(-1, len(_COLUMNS)).any(axis=1)
    values = np.full(len(ends) * len(_COLUMNS), np.nan)
    values[cell] = number
    return MotionTable(values=values.reshape(-1, len(_COLUMNS)), plain=plain)


def _numbers(
    chars: NDArray[np.uint8], kind: NDArray[np.uint8], words: NDArray[np.intp], length: NDArray[np.intp]
) -> tuple[FloatArray, NDArray[np.bool_]]:
    """Value of the number after each word's letter, and whether it is one: sign, digits, at most one dot, a
    digit at least."""
    mantissa = np.zeros(len(words), np.int64)
    digits, decimals = np.zeros(len(words), np.int64), np.zeros(len(words), np.int64)
    dotted = np.zeros(len(words), bool)
    sound = length <= _LONGEST_NUMBER
    last = len(chars) - 1
    for place in range(min(_LONGEST_NUMBER, int(length.max(initial=0)))):
        at = np.minimum(words + 1 + place, last)
        within = length > place
        here = np.where(within, kind[at], 255)
        digit = here == _DIGIT
        mantissa = np.where(digit, mantissa * 10 + chars[at] - 48, mantissa)
        digits += digit
        decimals += digit & dotted
        dot = here == _DOT
        sound &= ~(dot & dotted)
        dotted |= dot
        if place:
            sound &= here != _SIGN
    sound &= digits > 0
    negative = chars[np.minimum(words + 1, last)] == ord("-")
    number = mantissa / _POWERS[decimals]
    return np.where(negative & (length > 0), -number, number), sound


def _has_dot(kind: NDArray[np.uint8], words: NDArray[np.intp], length: NDArray[np.intp]) -> NDArray[np.bool_]:
    dots = np.concatenate(([0], np.cumsum(kind == _DOT)))
    found: NDArray[np.bool_] = dots[np.minimum(words + 1 + length, len(kind))] > dots[words]
    return found


def ready(machine: MachineState) -> bool:
    """Whether the modes in force let a stretch be read as arrays."""
    return (
        machine.plane == 170
        and not machine.incremental
        and not machine.inverse_time
        and not machine.compensating
        and not machine.ended
    )


def run(machine: MachineState, values: FloatArray, first_line: int) -> int:
    """Executes ordinary lines from the first on, up to one that needs the careful reader; returns how many it
    did."""
    n = len(values)
    codes, feeds = values[:, _G], values[:, _F]
    motion = _carried(codes * 10, float(machine.motion))
    feed = _carried(feeds, machine.feed)
    named = ~np.isnan(values[:, _X : _Z + 1])
    moves: NDArray[np.bool_] = np.asarray(named.any(axis=1))
    offsets = values[:, _I : _J + 1]
    off_centre = ~np.isnan(offsets).all(axis=1)
    arc = moves & ((motion == 20) | (motion == 30))
    stop = ~np.isnan(codes) & ~moves
    stop |= off_centre & ~arc
    stop |= moves & ~(motion <= 30)
    stop |= feeds < 0
    stop |= moves & (motion > 0) & ~(feed > 0)
    stop |= arc & ~((named[:, 0] | named[:, 1]) & off_centre)

    end = np.empty((n, 3))
    for axis in range(3):
        end[:, axis] = _carried(values[:, _X + axis] * machine.factor + machine.shift[axis], machine.at[axis])
    start = np.empty((n, 3))
    start[0], start[1:] = machine.at, end[:-1]
    centre = np.full((n, 2), np.nan)
    a = np.nonzero(arc)[0]
    if len(a):
        centre[a] = start[a, :2] + np.where(np.isnan(offsets[a]), 0.0, offsets[a]) * machine.factor
        near, far = start[a, :2] - centre[a], end[a, :2] - centre[a]
        mismatch = np.abs(np.sqrt(near[:, 0] ** 2 + near[:, 1] ** 2) - np.sqrt(far[:, 0] ** 2 + far[:, 1] ** 2))
        wrong = ~(mismatch <= greatest_mismatch_mm(machine.factor)) | np.isnan(start[a]).any(axis=1)
        stop[a[wrong]] = True

    done = int(np.argmax(stop)) if stop.any() else n
    if not done:
        return 0
    chosen = np.nonzero(moves[:done])[0]
    if len(chosen):
        if machine.modes_before_motion is None:
            machine.modes_before_motion = frozenset(machine.modes)
        rows = np.empty(len(chosen), ROW)
        rows["kind"] = motion[chosen] / 10
        rows["plane"], rows["tool"] = 17, machine.tool
        rows["line"] = first_line + chosen
        rows["start"], rows["end"], rows["centre"] = start[chosen], end[chosen], centre[chosen]
        rows["feed"] = np.where(motion[chosen] == 0, 0.0, feed[chosen] * machine.factor)
        rows["rpm"], rows["dwelt"] = machine.rpm, machine.dwelt_s
        machine.recorder.add_block(rows)
        machine.cycle = None
    machine.at = [float(v) for v in end[done - 1]]
    machine.motion = int(motion[done - 1])
    if not np.isnan(feeds[:done]).all():
        machine.feed, machine.feed_refused = float(feed[done - 1]), False
    return done


def _carried(column: FloatArray, before: float) -> FloatArray:
    """Each value that is not NaN, kept until the next; `before` in front of the first."""
    track = np.concatenate(([before], column))
    valid = ~np.isnan(track)
    valid[0] = True
    filled: FloatArray = track[np.maximum.accumulate(np.where(valid, np.arange(len(track)), 0))]
    return filled[1:]
