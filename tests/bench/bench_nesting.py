"""Nesting against the area bound and against rectpack: sheets, what is used of the last one, seconds.

    python tests/bench/bench_nesting.py

Sheets of 1220 x 610 mm with a border of 15 mm, a gap of 15 mm; random rectangles with a fixed seed. rectpack is given
30 combinations of algorithm and order, and its best counts.
"""

from __future__ import annotations

import random
import time

import rectpack

from signgen.geometry.rectangles import Size, nest
from tests.geometry.test_rectangles import least_sheets

SHEET: Size = (1190.0, 580.0)
GAP = 15
ALGORITHMS = (
    rectpack.MaxRectsBssf, rectpack.MaxRectsBlsf, rectpack.MaxRectsBaf, rectpack.MaxRectsBl,
    rectpack.GuillotineBssfSas, rectpack.SkylineMwfl,
)  # fmt: skip
ORDERS = (
    rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI, rectpack.SORT_DIFF
)  # fmt: skip


def reference(sizes: list[Size], turn: bool) -> tuple[int, float]:
    """(sheets, mm2 of the last that is used) of the best combination."""
    found = []
    for algorithm in ALGORITHMS:
        for order in ORDERS:
            packer = rectpack.newPacker(pack_algo=algorithm, sort_algo=order, rotation=turn)
            for width, height in sizes:
                packer.add_rect(int(width) + GAP, int(height) + GAP)
            packer.add_bin(int(SHEET[0]) + GAP, int(SHEET[1]) + GAP, count=float("inf"))
            packer.pack()
            last = sum(each[3] * each[4] for each in packer.rect_list() if each[0] == len(packer) - 1)
            found.append((len(packer), float(last)))
    return min(found)


def main() -> None:
    print("   n    sides  turn  bound  ours  last      s  rectpack  last      s")
    whole = (SHEET[0] + GAP) * (SHEET[1] + GAP)
    for n in (50, 200, 500):
        for low, high in ((60, 180), (40, 300)):
            dice = random.Random(n + high)
            sizes = [(float(dice.randint(low, high)), float(dice.randint(low, high))) for _ in range(n)]
            for turn in (True, False):
                start = time.perf_counter()
                places = nest(sizes, SHEET, GAP, [turn] * n)
                ours_s = time.perf_counter() - start
                ours = max(place.sheet for place in places) + 1
                last = sum(
                    (size[0] + GAP) * (size[1] + GAP)
                    for size, place in zip(sizes, places, strict=True)
                    if place.sheet == ours - 1
                )
                start = time.perf_counter()
                theirs, their_last = reference(sizes, turn)
                theirs_s = time.perf_counter() - start
                bound = least_sheets(sizes, SHEET, GAP)
                print(
                    f"{n:4} {low:4}-{high:3} {turn!s:>5} {bound:6} {ours:5} {last / whole:5.0%} {ours_s:6.2f}", end=""
                )
                print(f" {theirs:9} {their_last / whole:5.0%} {theirs_s:6.2f}", flush=True)


if __name__ == "__main__":
    main()
