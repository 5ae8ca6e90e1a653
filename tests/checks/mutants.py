"""Good jobs' programs changed at random, by seed: each change is caught, or does no harm.

    python -m tests.checks.mutants [COUNT [JOB [FIRST-SEED]]]

prints a line for each mutant of a job that passes the checks and should not, then how many were caught by what.
"""

from __future__ import annotations

import itertools
import re
import sys
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import cache
from random import Random
from typing import Any

import numpy as np
import shapely
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.checks.check import Case, CheckReport
from signgen.checks.fixing import Fixing
from signgen.checks.tip_path import THROUGH_MM
from signgen.instructions import SetUp
from signgen.proving.judge_sides import JudgedSide, Points, judged_sides
from signgen.proving.sides import Side, sides_of
from signgen.proving.written import Written, written
from tests.asking import spec_of

NEAR_MM = 0.1
"""By as much may a survivor's board differ, upwards or across."""

WASTE_MM = 1.0
"""From the sign outwards, where waste begins that nobody misses."""

FASTER, SLOWER = 2.0, 0.2
"""How far a survivor's feeds may go beyond the fastest and the slowest of the good program."""

_SMALL: dict[str, Any] = {"size": "100x60", "thickness": "9", "text": ["12B"], "holes": "none"}
_HOLED: dict[str, Any] = {**_SMALL, "holes": "side-pair", "hole-diameter": "7", "inset": "10"}

JOBS: tuple[tuple[str, dict[str, Any]], ...] = (
    ("engraved", {**_HOLED}),
    ("changer", {**_HOLED, "dialect": "changer", "text": ["4"]}),
    ("by hand", {**_HOLED, "dialect": "one-file", "extraction": "m8"}),
    ("inches", {**_HOLED, "dialect": "inch", "border": "oval", "size": "120x70"}),
    (
        "no arcs",
        {**_SMALL, "text": ["4"], "dialect": "no-arcs", "border": "rounded", "z-zero": "top", "origin": "stock"},
    ),
    ("cycles", {**_HOLED, "dialect": "cycles", "text": ["i"], "hole-diameter": "5"}),
    ("recess", {**_SMALL, "size": "120x90", "finish": "recess", "text": ["7"], "letter-spacing": "5"}),
    ("raised", {**_SMALL, "size": "120x90", "finish": "raised", "text": ["O"]}),
    ("bevelled, no tabs", {**_SMALL, "edge-chamfer": "1.5", "onion-skin": "0.5"}),
    ("countersunk", {**_HOLED, "size": "140x70", "screw": "M4", "hole-diameter": None, "countersink": True}),
)


class Mutated(Struct, frozen=True):
    """The programs of a side as some change has left them, with everything else as it was made."""

    made: Written
    texts: tuple[str, ...]
    tried: Mapping[str, str]
    screws: Points
    paper: SetUp | None = None

    @property
    def side(self) -> Side:
        return self.made.side

    def programs(self) -> Sequence[str]:
        return self.texts

    def trials(self, case: Case) -> Mapping[str, str]:
        return self.tried

    def screws_mm(self, case: Case) -> Points:
        return self.screws

    def told(self, case: Case, screws_mm: Points, sides: int) -> SetUp | None:
        return self.paper

    def papers(self) -> None:
        return

    def clamps(self, case: Case) -> Sequence[Fixing]:
        return ()


class Good(Struct, frozen=True):
    """A job as it is made: what is spoilt, and what the result is compared with."""

    texts: Mutated
    judged: JudgedSide


@cache
def good(job: int) -> Good:
    (side,) = sides_of(spec_of(**{"hole-diameter": None, "inset": None, **JOBS[job][1]}))
    made = written(side)
    (judged,) = judged_sides([made])
    assert judged.report.passed, [str(finding.message) for _, finding in judged.report.findings()]
    texts = Mutated(
        made=made,
        texts=tuple(made.programs()),
        tried=made.trials(judged.case),
        screws=judged.screws_mm,
        paper=judged.case.told,
    )
    return Good(texts, judged)


Words = re.compile(r"([A-Z])(-?[\d.]+)")
LINES_TO_ADD = (
    "G91", "G20", "G21", "G49", "G43 H2", "G55", "G92 X0", "G92.1", "G4 P600", "M0", "M1", "M5", "M4", "M3", "G18",
    "G41 D1", "#5221=3", "G10 L2 P1 X1", "G28", "T2 M6", "T1 M6", "M2", "G0 Z0", "G0 X0 Y0", "G1 Z1 F500", "M8", "M9",
    "G93", "S9000", "F100",
)  # fmt: skip


def mutated(text: str, rng: Random) -> tuple[str, str]:
    """(what was done, the text) for one random change that a hand, a disk or a careless script may make."""
    lines = text.splitlines()
    code = [n for n, line in enumerate(lines) if not line.startswith("(")]
    n = rng.choice(code)
    line = lines[n]
    kind = rng.randrange(14)
    words = list(Words.finditer(line))
    if kind == 0:
        return _with(lines, n, [], "left out")
    if kind == 1:
        some = rng.randint(2, 12)
        return f"{some} lines from {n + 1} left out", "\n".join(lines[:n] + lines[n + some :]) + "\n"
    if kind == 2:
        return _with(lines, n, [line, line], "twice")
    if kind == 3:
        other = rng.choice(code)
        lines[n], lines[other] = lines[other], line
        return f"lines {n + 1} and {other + 1} swapped", "\n".join(lines) + "\n"
    if kind == 4:
        return _with(lines, n, [line, rng.choice(LINES_TO_ADD)], "and a line after it")
    if kind == 5:
        return _with(lines, n, [f"({line})"], "made a comment")
    if kind == 6:
        return f"ends after line {n + 1}", "\n".join(lines[: n + 1]) + "\n"
    if kind == 7:
        codes = {"G0": "G1", "G1": "G0", "G2": "G3", "G3": "G2", "M3": "M4", "M5": "M3", "M0": "M1", "G83": "G81"}
        first, _, rest = line.partition(" ")
        return _with(lines, n, [f"{codes.get(first, 'G1')} {rest}".strip()], "with another code")
    if not words:
        return _with(lines, n, [], "left out")
    word = rng.choice(words)
    letter, value = word.group(1), float(word.group(2))
    if kind == 8:
        new = f"{letter}{-value:g}"
    elif kind == 9:
        new = f"{letter}{value * rng.choice([10, 0.1, 2, 0.5, 25.4]):.6g}"
    elif kind == 10:
        new = f"{letter}{value + rng.choice([-1, 1]) * rng.choice([0.02, 0.06, 0.11, 0.3, 1, 5]):.6g}"
    elif kind == 11:
        digits = [k for k, c in enumerate(word.group(2)) if c.isdigit()]
        at = rng.choice(digits)
        new = letter + word.group(2)[:at] + rng.choice("0123456789") + word.group(2)[at + 1 :]
    elif kind == 12:
        new = rng.choice("XYZIJFSGMTHP") + word.group(2)
    else:
        new = ""
    return _with(
        lines, n, [(line[: word.start()] + new + line[word.end() :]).strip()], f"with {new} for {word.group()}"
    )


def _with(lines: list[str], n: int, new: list[str], what: str) -> tuple[str, str]:
    return f"line {n + 1} ({lines[n]}) {what}: {new}", "\n".join(lines[:n] + new + lines[n + 1 :]) + "\n"


def mutant(job: int, seed: int) -> tuple[str, tuple[str, ...]]:
    rng = Random(f"{job} {seed}")
    texts = list(good(job).texts.texts)
    at = rng.randrange(len(texts))
    what, texts[at] = mutated(texts[at], rng)
    return f"file {at + 1}, {what}", tuple(texts)


def judged_mutant(job: int, texts: tuple[str, ...]) -> JudgedSide:
    own = good(job).texts
    (judged,) = judged_sides([replace(own, texts=texts)])
    return judged


def caught_by(report: CheckReport) -> list[str]:
    return [result.code for result in report.results if result.stops]


def harm(job: int, judged: JudgedSide) -> list[str]:
    """What a mutant that passed does otherwise than the good job, in words."""
    before, after = good(job).judged.case, judged.case
    found = []
    apart = _apart(job, before, after)
    if apart > NEAR_MM:
        found.append(f"the board differs by {apart:.2f} mm")
    if _told(before) != _told(after):
        found.append("cutters, lengths or stops differ")
    for old, new in zip(before.programs, after.programs, strict=True):
        f, g = (program.replay.motions.feed_mm_per_min for program in (old, new))
        f, g = f[f > 0], g[g > 0]
        if len(g) and (g.max() > FASTER * f.max() or g.min() < SLOWER * f.min()):
            found.append(f"feeds of {g.min():.0f} to {g.max():.0f} for {f.min():.0f} to {f.max():.0f}")
        if abs(new.replay.dwell_s - old.replay.dwell_s) > 1.5:
            found.append(f"waits {new.replay.dwell_s:g} s for {old.replay.dwell_s:g}")
        speeds = [set(np.round(_in_board(case, old.file, "spindle_rpm"), -2)) for case in (before, after)]
        if speeds[0] != speeds[1]:
            found.append(f"speeds of {sorted(speeds[1])} for {sorted(speeds[0])}")
    return found


def _told(case: Case) -> list[tuple[str, str, float]]:
    kinds = ("change", "length", "stop")
    events = [(program.file, event) for program in case.programs for event in program.replay.events]
    told = [(file, event.kind, event.value) for file, event in events if event.kind in kinds]
    return [same for same, _ in itertools.groupby(told)]  # a length stated twice is stated


def _in_board(case: Case, file: str, what: str) -> NDArray[np.float64]:
    found = [
        getattr(program.replay.motions, what)[np.unique(cuts.below(case.stock.thickness_mm - 0.01).motion)]
        for program, cuts in zip(case.programs, case.cuts, strict=True)
        if program.file == file
    ]
    return np.concatenate(found)


def _apart(job: int, before: Case, after: Case) -> float:
    """How far the last boards differ: up or down from everything that lies within NEAR_MM across.

    Below what counts as through lies the spoilboard, which may be scratched more or less. Waste that was to stay whole
    may be cut further than WASTE_MM from the sign: what matters there, fixings and the board's end, has checks.
    """
    old, new = (np.maximum(case.boards[-1].z_mm, THROUGH_MM) for case in (before, after))
    cells = int(np.ceil(NEAR_MM / before.boards[-1].cell_mm))
    low, high = old.copy(), old.copy()
    for dy in range(-cells, cells + 1):
        for dx in range(-cells, cells + 1):
            moved = np.roll(np.roll(old, dy, axis=0), dx, axis=1)
            low, high = np.minimum(low, moved), np.maximum(high, moved)
    gouged = np.where(_waste(job), 0.0, low - new)
    return float(np.maximum(gouged, new - high).max())


@cache
def _waste(job: int) -> NDArray[np.bool_]:
    """(ny, nx) cells of the good job's board outside the sign that nothing cuts."""
    case = good(job).judged.case
    board = case.boards[-1]
    x, y = np.meshgrid(board.x_mm, board.y_mm)
    beside = ~shapely.contains_xy(case.drawing.edge.buffer(WASTE_MM), x, y)
    return beside & (board.z_mm >= case.stock.thickness_mm - 0.01)


def main(count: int, job: int, first: int) -> None:
    caught: Counter[str] = Counter()
    for seed in range(first, first + count):
        what, texts = mutant(job, seed)
        judged = judged_mutant(job, texts)
        codes = caught_by(judged.report)
        caught[codes[0] if codes else "passed"] += 1
        if not codes and (found := harm(job, judged)):
            print(job, seed, found, what, flush=True)
    print(JOBS[job][0], dict(caught))


if __name__ == "__main__":
    given = [int(word) for word in sys.argv[1:]]
    main(*(given + [40, 0, 0][len(given) :]))
