"""How long a lesson takes to make, from a folder on disk to both files.

python tests/bench/bench_lesson.py
"""

from __future__ import annotations

import time
from pathlib import Path

from signgen.lesson.pack import pack
from signgen.lesson.source import source_of

GOLDEN = Path(__file__).parent.parent / "golden"


def main() -> None:
    print(f"{'sign':<20}{'lines':>8}{'seconds':>9}")
    for name in ("heron-weir-9", "tannery-workshop", "quince-plate", "quince-cottage"):
        begun = time.perf_counter()
        source = source_of(GOLDEN / name)
        pack(source, "en")
        lines = sum(len(program.lines) for program in source.programs)
        print(f"{name:<20}{lines:>8}{time.perf_counter() - begun:>9.2f}")


if __name__ == "__main__":
    main()
