"""Batches: seconds, rate and peak memory by rows and workers; every row is made, verified and written.

    python tests/bench/bench_batch.py [ROWS]

Plaques of 160 x 60 mm with a name and a house number, all different, from a fixed seed. Memory is the peak of resident
pages: of the process that was started, and of the largest worker. The last line compares two workers with one on the
same rows, which says something only on a machine with two idle cores. ROWS: 1000 unless given.
"""

from __future__ import annotations

import json
import os
import random
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

FIRST = """
Anna Bo Clara Dmitri Elif Finn Greta Hugo Ida Jonas Kaja Lars Mira Nils Oda Pia Quirin Rosa Sven Thea Uli Vera Wim Yara
Zoë"""
LAST = """
Ackermann Brook Carver Dale Elm Field Gale Heath Ivers Jessop Kerr Lark Moor Nash Oakes Pell Quill Reed Stone Thorn
Underhill Vale West Yarrow"""
SIGN = 'text = ["{name}", "{number} Larkspur Lane"]\nsize = "160x60"\nthickness = 9\nholes = "row"\nhole-diameter = 5\n'
COMMAND = [sys.executable, "-c", "from signgen.cli import main; main()", "batch"]


def peak_mb(process: int) -> float:
    """Peak of resident memory of a running process, 0 when it has ended."""
    try:
        lines = Path(f"/proc/{process}/status").read_text().splitlines()
    except OSError:
        return 0.0
    return next((int(line.split()[1]) / 1000 for line in lines if line.startswith("VmHWM")), 0.0)


def children(process: int) -> list[int]:
    try:
        return [int(word) for word in Path(f"/proc/{process}/task/{process}/children").read_text().split()]
    except OSError:
        return []


def run(rows: int, workers: int) -> tuple[float, float, float]:
    """(seconds, MB of the parent, MB of its largest worker)."""
    dice, first, last = random.Random(7), FIRST.split(), LAST.split()
    with tempfile.TemporaryDirectory() as folder:
        base = Path(folder)
        names = [f"{dice.choice(first)} {dice.choice(last)},{number}" for number in range(1, rows + 1)]
        (base / "names.csv").write_text("\n".join(["name,number", *names]) + "\n", encoding="utf-8")
        (base / "plaque.toml").write_text(SIGN, encoding="utf-8")
        words = ["names.csv", "--from", "plaque.toml", "--out", "out", "--workers", str(workers)]
        start = time.perf_counter()
        batch = subprocess.Popen([*COMMAND, *words], cwd=base, stdout=subprocess.PIPE, env=os.environ)
        peaks = [0.0, 0.0]

        def watch() -> None:
            while batch.poll() is None:
                peaks[0] = max(peaks[0], peak_mb(batch.pid))
                peaks[1] = max([peaks[1], *map(peak_mb, children(batch.pid))])
                time.sleep(0.1)

        watcher = threading.Thread(target=watch)
        watcher.start()
        batch.communicate()
        seconds = time.perf_counter() - start
        watcher.join()
        report = json.loads((base / "out" / "batch.json").read_text(encoding="utf-8"))
        assert report["totals"]["made"] == rows, report["rows_failed"][:3]
        return seconds, peaks[0], peaks[1]


def main() -> None:
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    print("  rows  workers  seconds  rows/s  parent MB  worker MB  load before", flush=True)
    rates = {}
    for rows, workers in ((100, 1), (100, 2), (most, 2)):
        load = os.getloadavg()[0]
        seconds, parent, worker = run(rows, workers)
        rates[rows, workers] = rows / seconds
        print(
            f"{rows:6}  {workers:7}  {seconds:7.1f}  {rows / seconds:6.2f}  {parent:9.0f}  {worker:9.0f}  {load:11.1f}",
            flush=True,
        )
    print(f"two workers are {rates[100, 2] / rates[100, 1]:.2f} times one")


if __name__ == "__main__":
    main()
