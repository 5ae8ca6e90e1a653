"""How long a lesson takes to make, from a folder on disk to both files, and a class of twenty from a sign file.

python tests/bench/bench_lesson.py
"""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from signgen.lesson.pack import pack
from signgen.lesson.pages import PAGES
from signgen.lesson.school_class import Pupil, made_for, print_all
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
    with tempfile.TemporaryDirectory() as folder:
        sign = Path(folder) / "sign.toml"
        sign.write_text('text = ["x"]\nsize = "160x60"\nthickness = 10\nmaterial = "softwood"\n')
        pupils = [
            Pupil(name=f"Pupil {chr(65 + n)}", folder=f"pupil-{n}", asked={"text": [f"Pupil {chr(65 + n)}"]})
            for n in range(20)
        ]
        begun = time.perf_counter()
        made = list(made_for(pupils, str(sign), "en", PAGES, large=False, easy=False))
        print_all(made, "en")
        print(f"{'class of 20':<28}{time.perf_counter() - begun:>9.2f}")


if __name__ == "__main__":
    main()
