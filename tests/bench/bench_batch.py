"""Batches: seconds, rate, processor time and peak memory by rows and workers; every row is made, verified and written.

    python tests/bench/bench_batch.py [ROWS]

Plaques of 160 x 60 mm with a name and a house number, all different, from a fixed seed. Memory is the peak of resident
pages: of the process that was started, and of the largest worker. Processor time is user and system together, in
milliseconds a row: of the process that was started, and of its workers with their start; it says something on a busy
machine too, though a busy machine makes it longer. The last lines compare two workers with one on the same rows, and
the memory of many rows with that of a hundred. ROWS: 1000 unless given.
"""

from __future__ import annotations

import json
import os
import random
import resource
import subprocess
import sys
import tempfile
import threading
import time
from dataclasses import dataclass
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


def used_s(process: int) -> float:
    """Processor time of a running process without its children, 0 when it has ended."""
    try:
        fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    except OSError:
        return 0.0
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    seconds: float
    parent_s: float
    workers_s: float
    parent_mb: float
    worker_mb: float


def run(rows: int, workers: int) -> Measured:
    """What a batch took; processor times are of all its rows together."""
    dice, first, last = random.Random(7), FIRST.split(), LAST.split()
    with tempfile.TemporaryDirectory() as folder:
        base = Path(folder)
        names = [f"{dice.choice(first)} {dice.choice(last)},{number}" for number in range(1, rows + 1)]
        (base / "names.csv").write_text("\n".join(["name,number", *names]) + "\n", encoding="utf-8")
        (base / "plaque.toml").write_text(SIGN, encoding="utf-8")
        words = ["names.csv", "--from", "plaque.toml", "--out", "out", "--workers", str(workers)]
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        start = time.perf_counter()
        batch = subprocess.Popen([*COMMAND, *words], cwd=base, stdout=subprocess.PIPE, env=os.environ)
        peaks = [0.0, 0.0, 0.0]

        def watch() -> None:
            while batch.poll() is None:
                peaks[0] = max(peaks[0], peak_mb(batch.pid))
                peaks[1] = max([peaks[1], *map(peak_mb, children(batch.pid))])
                peaks[2] = max(peaks[2], used_s(batch.pid))
                time.sleep(0.1)

        watcher = threading.Thread(target=watch)
        watcher.start()
        batch.communicate()
        seconds = time.perf_counter() - start
        watcher.join()
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        report = json.loads((base / "out" / "batch.json").read_text(encoding="utf-8"))
        assert report["totals"]["made"] == rows, report["rows_failed"][:3]
        used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        return Measured(
            seconds=seconds, parent_s=peaks[2], workers_s=used - peaks[2], parent_mb=peaks[0], worker_mb=peaks[1]
        )


def main() -> None:
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    print("  rows  workers  seconds  rows/s  parent ms  workers ms  parent MB  worker MB  load before", flush=True)
    found = {}
    for rows, workers in ((100, 1), (100, 2), (most, 2)):
        load = os.getloadavg()[0]
        got = found[rows, workers] = run(rows, workers)
        print(
            f"{rows:6}  {workers:7}  {got.seconds:7.1f}  {rows / got.seconds:6.2f}  {1000 * got.parent_s / rows:9.1f}  "
            f"{1000 * got.workers_s / rows:10.1f}  {got.parent_mb:9.0f}  {got.worker_mb:9.0f}  {load:11.1f}",
            flush=True,
        )
    one, two, many = found[100, 1], found[100, 2], found[most, 2]
    print(f"two workers are {one.seconds / two.seconds:.2f} times one (wanted: 1.7)")
    print(
        f"{most} rows take {many.seconds:.0f} s (wanted: {0.24 * most:.0f}), and "
        f"{many.parent_mb - two.parent_mb:+.0f} MB in the parent and {many.worker_mb - two.worker_mb:+.0f} MB in a "
        "worker beside a hundred rows"
    )


if __name__ == "__main__":
    main()
