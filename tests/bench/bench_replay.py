"""Reading and simulating: time and memory. `python tests/bench/bench_replay.py`.

The programs are random but alike in kind to real ones: lettering by a V-bit in short sloped moves, floors by a small
end mill in level lines, edges by a larger one, holes by helical arcs. Targets: geometry.md sections 6 and 10.
"""

from __future__ import annotations

import gc
import math
import resource
import subprocess
import sys
import time
from collections.abc import Callable

import numpy as np

from signgen.replay import fast
from signgen.replay.boxes import boxes_of
from signgen.replay.contacts import rapid_contacts
from signgen.replay.heights import board
from signgen.replay.motion import RAPID, Motions
from signgen.replay.pieces import straight_pieces
from signgen.replay.reader import read_program
from signgen.replay.sweep import carve
from signgen.replay.swept import Profile
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool, ToolKind

BEGIN = ["(a sign)", "G17 G21 G40 G49 G54 G80 G90 G94", "S16000 M3", "G4 P4", "G0 Z25"]
END = ["G0 Z25", "M5", "M2", ""]
ZERO = WorkZero(x_mm=0.0, y_mm=0.0, z_mm=0.0)


def a_tool(kind: ToolKind, diameter_mm: float, angle_deg: float | None = None) -> Tool:
    return Tool(
        name=kind,
        kind=kind,
        diameter_mm=diameter_mm,
        shank_mm=6.0,
        cutting_length_mm=25.0,
        flutes=2,
        angle_deg=angle_deg,
        stickout_mm=35.0,
        source="made up for a benchmark",
    )


def wander(count: int, step_mm: float, low: float, high: float, width: float, height: float, seed: int) -> list[str]:
    """Feed moves of `step_mm` that keep turning a little, from low to high and back; a new stroke every 50."""
    dice = np.random.default_rng(seed)
    angle = np.cumsum(dice.normal(0, 0.3, count))
    track = np.cumsum(np.column_stack((np.cos(angle), np.sin(angle))) * step_mm, axis=0) + dice.uniform(0, 999, 2)
    room = np.array([width - 20, height - 20])
    track = 10 + np.abs(track % (2 * room) - room)
    z = low + (high - low) * (0.5 + 0.5 * np.sin(np.arange(count) / 7))
    lines = []
    for k, ((x, y), depth) in enumerate(zip(track, z, strict=True)):
        if k % 50 == 0:
            lines += ["G0 Z14", f"G0 X{x:.4f} Y{y:.4f}", f"G1 Z{depth:.4f} F500", "F1500"]
        lines.append(f"G1 X{x:.4f} Y{y:.4f}" + (f" Z{depth:.4f}" if high > low else ""))
    return lines


def bores(holes: int, turns: int, width: float, height: float) -> list[str]:
    """Helices of radius 2 down to 0.3 mm below the board."""
    lines = []
    for hole in range(holes):
        x, y = 14 + (width - 28) * (hole % 2), 14 + (height - 28) * (hole // 2 % 2)
        lines += ["G0 Z14", f"G0 X{x + 2:.4f} Y{y:.4f}", "G1 Z12 F500"]
        lines += [f"G3 X{x + 2:.4f} I-2 J0 Z{12 - 12.3 * (k + 1) / turns:.4f}" for k in range(turns)]
        lines += [f"G3 X{x + 2:.4f} I-2 J0"]
    return lines


def program(*parts: list[str]) -> str:
    return "\n".join([*BEGIN, *(line for part in parts for line in part), *END])


def best_of(times: int, action: Callable[[], object]) -> tuple[float, float]:
    """Least seconds by the clock and of the processor (which other work on the machine does not lengthen as much)."""
    clock, processor = [], []
    for _ in range(times):
        gc.collect()
        began, worked = time.perf_counter(), time.process_time()
        action()
        clock.append(time.perf_counter() - began)
        processor.append(time.process_time() - worked)
    return min(clock), min(processor)


def row(what: str, seconds: tuple[float, float], target: str) -> None:
    clock, processor = (value * 1000 for value in seconds)
    print(f"{what:<58} {clock:8.0f} ms {processor:8.0f} ms   {target}")


def simulate(jobs: list[tuple[Motions, Tool]], stock: Stock, cell_mm: float, compiled: bool = False) -> np.ndarray:
    """What is left, by the arrays or by the compiled extra."""
    uncut = board(stock, cell_mm)
    z = uncut.z_mm.copy()
    for motions, tool in jobs:
        chosen = np.nonzero(motions.kind != RAPID)[0]
        carve(z, uncut.grid, motions, chosen, tool, ZERO, stock.thickness_mm, compiled)
    return z


def cells_swept(jobs: list[tuple[Motions, Tool]], stock: Stock, cell_mm: float) -> int:
    """Cells of all boxes, which is what the time goes by."""
    uncut = board(stock, cell_mm)
    return sum(
        boxes_of(uncut.grid, pieces, Profile.of(tool), stock.thickness_mm).cells
        for motions, tool in jobs
        for pieces in straight_pieces(motions, np.nonzero(motions.kind != RAPID)[0], np.zeros(3))
    )


def compiled_rows(jobs: list[tuple[Motions, Tool]], stock: Stock) -> None:
    if not fast.is_there():
        print("the compiled sweep: not installed (pip install 'signgen[fast]')")
        return
    load = "import time; t = time.perf_counter(); import numba; print(time.perf_counter() - t)"
    seconds = float(subprocess.run([sys.executable, "-c", load], capture_output=True, text=True, check=True).stdout)
    row("  load the compiled sweep", (seconds, seconds), "")
    simulate(jobs, stock, 2.0, compiled=True)  # compiles, or takes what was compiled before
    for cell_mm in (0.2, 0.1, 0.05):
        seconds_taken = best_of(3, lambda cell_mm=cell_mm: simulate(jobs, stock, cell_mm, True))  # type: ignore[misc]
        same = np.array_equal(simulate(jobs, stock, cell_mm), simulate(jobs, stock, cell_mm, True))
        swept = cells_swept(jobs, stock, cell_mm) / 1e6
        row(f"  compiled at {cell_mm} mm, {swept:.0f} M cells swept", seconds_taken, f"bit for bit the same: {same}")


def main() -> None:
    print(f"{'':<58} {'clock':>11} {'processor':>11}")
    text = program(wander(46_000, 0.4, 9.5, 12.0, 300, 200, 1))
    lines = text.count("\n")
    row(f"read {lines:,} lines", best_of(5, lambda: read_program(text)), "target 350 ms")
    row("  the same line by line", best_of(2, lambda: read_program(text, in_batches=False)), "")
    small = program(wander(2700, 0.4, 9.5, 12.0, 260, 180, 4), bores(4, 12, 260, 180))
    row(f"read {small.count(chr(10)):,} lines", best_of(5, lambda: read_program(small)), "")

    stock = Stock(width_mm=300, height_mm=200, thickness_mm=12, sign_x_mm=0, sign_y_mm=0)
    jobs = [
        (read_program(program(wander(39_000, 0.4, 9.5, 12.0, 300, 200, 1))).motions, a_tool("v-bit", 12, 90)),
        (read_program(program(wander(12_000, 1.5, 9.0, 9.0, 300, 200, 2))).motions, a_tool("end-mill", 3)),
        (
            read_program(program(wander(4_000, 4.0, 0.0, 0.0, 300, 200, 3), bores(8, 12, 300, 200))).motions,
            a_tool("end-mill", 6),
        ),
    ]
    count = sum(len(motions) for motions, _ in jobs)
    for cell_mm, target in ((0.2, "noted 500 ms"), (0.1, "target 1500 ms"), (0.05, "noted 4300 ms")):
        seconds = best_of(3, lambda cell_mm=cell_mm: simulate(jobs, stock, cell_mm))  # type: ignore[misc]
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        memory = f"peak {peak:.0f} MB" + (" (target 400)" if cell_mm == 0.1 else "")
        row(f"simulate {count:,} moves of 3 cutters at {cell_mm} mm", seconds, f"{target}; {memory}")
    compiled_rows(jobs, stock)

    stock = Stock(width_mm=260, height_mm=180, thickness_mm=12, sign_x_mm=0, sign_y_mm=0)
    one = [(read_program(small).motions, a_tool("end-mill", 6))]
    row(
        f"simulate {len(one[0][0]):,} moves at 0.2 mm, 260 x 180 mm",
        best_of(5, lambda: simulate(one, stock, 0.2)),
        "target 150 ms",
    )
    uncut = board(stock, 0.2)
    seconds = best_of(3, lambda: rapid_contacts(uncut, *one[0], ZERO))
    row("  its rapids against the wood of their time", seconds, "")
    dive = [line.replace("G0 Z14", "G0 Z11.5") for line in wander(30_000, 0.4, 9.5, 12.0, 260, 180, 5)]
    worst = read_program(program(dive)).motions
    found = rapid_contacts(uncut, worst, a_tool("v-bit", 12, 90), ZERO)
    seconds = best_of(1, lambda: rapid_contacts(uncut, worst, a_tool("v-bit", 12, 90), ZERO))
    row(f"  {math.ceil(30_000 / 50) * 2} rapids below the top, {len(found)} of them in wood", seconds, "")


if __name__ == "__main__":
    main()
