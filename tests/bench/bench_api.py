"""How long it takes to import signgen, and to make a sign from Python beside the command.

python tests/bench/bench_api.py [RUNS]
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

OPTIONS = {"size": "220x140", "thickness": "12", "holes": "corners", "hole_diameter": "7"}
TEXT = ("17", "Larkspur Lane")
SCRIPT = f"import signgen; signgen.make(*{TEXT!r}, **{OPTIONS!r}).save('out')"


def seconds(command: list[str], folder: Path) -> tuple[float, float]:
    """Of a process, from its start to its end: on the clock, and of the processor."""
    begun, before = time.perf_counter(), os.times()
    subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL)
    after = os.times()
    used = after.children_user + after.children_system - before.children_user - before.children_system
    return time.perf_counter() - begun, used


def main() -> None:
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 7
    words = [word for name, value in OPTIONS.items() for word in (f"--{name.replace('_', '-')}", value)]
    commands = {
        "python, nothing imported": [sys.executable, "-c", "pass"],
        "import signgen": [sys.executable, "-c", "import signgen"],
        "signgen.make and save": [sys.executable, "-c", SCRIPT],
        "signgen make": [sys.executable, "-m", "signgen", "make", *TEXT, *words, "--out", "out"],
    }
    with tempfile.TemporaryDirectory() as name:
        taken = {what: [seconds(command, Path(name)) for _ in range(runs)] for what, command in commands.items()}
    print(f"{'what':<28}{'clock, least':>14}{'median':>10}{'processor, least':>19} s")
    for what, times in taken.items():
        clock, used = zip(*times, strict=True)
        print(f"{what:<28}{min(clock):>14.3f}{median(clock):>10.3f}{min(used):>19.3f}")
    least = {what: min(used for _, used in times) for what, times in taken.items()}
    print(f"importing alone: {least['import signgen'] - least['python, nothing imported']:.3f} s of the processor")


if __name__ == "__main__":
    main()
