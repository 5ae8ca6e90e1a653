"""Time and size of the sheet and the pictures. `python tests/bench/bench_sheet.py`.

A board of 260 x 180 mm at 0.2 mm, the shape of the house number; the least of five runs. The first call of each pays
for its imports and is shown apart.
"""

from __future__ import annotations

import importlib.util
import sys
import time
from collections.abc import Callable
from pathlib import Path

from signgen.fastening.fastening import fastening_of
from signgen.fastening.screws import suggest_screws
from signgen.job.report import report_text
from signgen.pages.setup_sheet import setup_html
from signgen.pictures.preview import preview_jpeg, preview_png, preview_svg, sign_relief


def main() -> None:
    # the hand-made job asks for its sign as the tests do
    sys.path.insert(0, str(Path(__file__).parents[2]))
    spec = importlib.util.spec_from_file_location("hand_made", Path(__file__).parents[1] / "by_hand.py")
    assert spec is not None
    assert spec.loader is not None
    hand_made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(hand_made)
    facts = hand_made.build_facts(width=220.0, height=140.0, margin=20.0, cell=0.2)
    cutters = [(program.tool, program.replay) for program in facts.programs]
    lit = sign_relief(facts)
    tasks: dict[str, Callable[[], object]] = {
        "relief": lambda: sign_relief(facts),
        "preview.png": lambda: preview_png(facts, lit),
        "preview.svg": lambda: preview_svg(facts, lit),
        "picture of the sheet": lambda: preview_jpeg(facts, lit),
        "keep-out areas": lambda: fastening_of(facts),
        "screws": lambda: suggest_screws(facts.drawing, facts.stock, facts.zero, cutters, 16),
        "setup.html": lambda: setup_html(facts, lit),
        "report.json": lambda: report_text(facts),
    }
    print(f"{'':22}{'first ms':>10}{'ms':>8}{'kB':>8}")
    for name, task in tasks.items():
        times = []
        for _ in range(6):
            start = time.perf_counter()
            result = task()
            times.append(1000 * (time.perf_counter() - start))
        kilobytes = f"{len(result) / 1000:8.0f}" if isinstance(result, str | bytes) else ""
        print(f"{name:22}{times[0]:>10.0f}{min(times[1:]):>8.0f}{kilobytes}")


if __name__ == "__main__":
    main()
