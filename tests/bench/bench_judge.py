"""How long judging takes, check by check, and how closely: `python -m tests.bench.bench_judge`. Asserts nothing.

Also the least error that each measuring check sees on the hand-written plate, found by bisection, beside what its
explanation promises.
"""

from __future__ import annotations

import time
from collections.abc import Callable

from msgspec.structs import replace

from signgen.checks import CHECKS, judge
from signgen.checks.case import make_case
from signgen.pipeline import make_job
from tests.asking import spec_of
from tests.checks.plate import CUT_OUT, END_MILL, ENGRAVE, V_BIT, Plate
from tests.checks.test_sabotage import shifted

GOOD = Plate()


def seconds(work: Callable[[], object], times: int = 5) -> float:
    best = float("inf")
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def house_number() -> None:
    facts = make_job(spec_of()).facts
    programs = [(program.file, program.text, program.tool) for program in facts.programs]

    def case() -> object:
        return make_case(
            drawing=facts.drawing,
            stock=facts.stock,
            zero=facts.zero,
            machine=facts.spec.machine,
            material=facts.spec.material,
            programs=programs,
            breakthrough_mm=facts.spec.breakthrough_mm,
            tolerance_mm=facts.spec.tolerances.total_mm,
            cusp_height_mm=facts.spec.cusp_height_mm,
        )

    made = case()
    cells = facts.boards[0].z_mm.size
    print(f"house number, {sum(len(text.splitlines()) for _, text, _ in programs):,} lines, {cells:,} cells")
    print(f"  read, sweep, draw on cells  {seconds(case) * 1000:7.1f} ms")
    print(f"  judge                       {seconds(lambda: judge(made)) * 1000:7.1f} ms")  # type: ignore[arg-type]
    for check in CHECKS:
        taken = seconds(lambda check=check: check.run(made))  # type: ignore[misc]
        print(f"    {check.code} {check.name:<20} {taken * 1000:7.1f} ms  {check.run(made).detail}")  # type: ignore[arg-type]


def least_seen(code: str, spoilt: Callable[[float], Plate], most_mm: float = 1.0) -> float:
    """The least error, to 0.0005 mm, from which on a check speaks."""
    low, high = 0.0, most_mm
    while high - low > 0.0005:
        middle = (low + high) / 2
        result = next(result for result in judge(spoilt(middle).case()).results if result.code == code)
        low, high = (low, middle) if result.findings else (middle, high)
    return high


def errors() -> None:
    def engraved(letter: str, sign: int = 1) -> Callable[[float], Plate]:
        return lambda by: replace(GOOD, engrave=shifted(ENGRAVE, letter, sign * by, 9 if letter == "Z" else 7, 17))

    rows: tuple[tuple[str, str, Callable[[float], Plate]], ...] = (
        ("C116", "groove too deep", engraved("Z", -1)),
        ("C116", "groove too shallow", engraved("Z")),
        ("C116", "groove moved along X", engraved("X")),
        ("C109", "groove too deep", engraved("Z", -1)),
        ("C108", "groove too shallow", engraved("Z")),
        ("C109", "groove moved along X", engraved("X")),
        ("C110", "hole moved along Y", lambda by: replace(GOOD, cut_out=shifted(CUT_OUT, "Y", by, 7, 22))),
        (
            "C111",
            "cutter's radius too small",
            lambda by: replace(GOOD, tools=(V_BIT, replace(END_MILL, diameter_mm=6 - 2 * by))),
        ),
        ("C112", "tab too low", lambda by: GOOD.cutting((64, f"G1 Z{1.5 - by:.4f} F300"))),
        ("C112", "tab too narrow", lambda by: GOOD.cutting((63, f"G1 X{24.5 + by:.4f} Y43"))),
        ("C107", "too deep below the board", lambda by: GOOD.cutting((60, f"G1 X-3 Y20 Z{-0.3 - by:.4f} F400"))),
    )
    print("least error seen on the plate (cells of 0.1 mm)")
    for code, what, spoilt in rows:
        print(f"  {code} {what:<28} {least_seen(code, spoilt):.4f} mm")


if __name__ == "__main__":
    house_number()
    errors()
