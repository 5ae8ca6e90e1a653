"""How long a lesson takes to make by the command: from a folder on disk to both files, and a class of twenty from one
sign file. Seconds of the processor, for the clock depends on what else runs; a class is shared by two processes, so
half of its seconds count.

Wanted: 2 s for a pack, 60 s for a class of twenty on two cores.

python tests/bench/bench_lesson.py
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from signgen.lesson.school_class import WORKERS

GOLDEN = Path(__file__).parent.parent / "golden"
PACK_S, CLASS_S, PUPILS = 2.0, 60.0, 20
SIGN = 'text = ["x"]\nsize = "220x140"\nthickness = 12\nmaterial = "birch-plywood"\ncap-height = 40\n'


def ran(*arguments: str) -> tuple[float, float]:
    """(seconds of the processor, of the clock) of the command with all its processes."""
    before, begun = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    done = subprocess.run([sys.executable, "-m", "signgen", "lesson", *arguments], capture_output=True, check=False)
    if done.returncode:
        raise SystemExit(done.stderr.decode())
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, time.perf_counter() - begun


def main() -> None:
    print(f"{'command':<28}{'processor':>10}{'clock':>8}{'wanted':>8}")
    with tempfile.TemporaryDirectory() as place:
        out = Path(place) / "out"
        for name in ("heron-weir-9", "tannery-workshop", "quince-plate", "quince-cottage"):
            busy, clock = ran(str(GOLDEN / name), "--out", str(out))
            print(f"{name:<28}{busy:>10.2f}{clock:>8.2f}{PACK_S:>8.1f}")
        sign, names = Path(place) / "sign.toml", Path(place) / "names.csv"
        sign.write_text(SIGN)
        names.write_text("name\n" + "\n".join(f"Pupil {chr(65 + n)}" for n in range(PUPILS)) + "\n")
        busy, clock = ran(str(sign), "--class", str(names), "--out", str(out))
        print(f"{f'class of {PUPILS}, shared by {WORKERS}':<28}{busy / WORKERS:>10.2f}{clock:>8.2f}{CLASS_S:>8.1f}")


if __name__ == "__main__":
    main()
