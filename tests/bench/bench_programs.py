"""What the time of whole programs goes into, by example and machine: `python tests/bench/bench_programs.py`.

Shares are of the time in which the machine moves, without the start of the spindle. `unbraked`: how far off lengths
over feeds would be.
"""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace

from signgen.program.blocks import ToolProgram
from signgen.program.estimate import estimate, times_by_operation
from signgen.shop.load import load_shop
from signgen.shop.materials import Machine
from tests.dialects.jobs import example, programs_of

EXAMPLES = Path(__file__).parents[2] / "examples"


def main() -> None:
    print(f"{'example':20}{'machine':18}{'min':>7}{'cutting':>9}{'entry':>7}{'travel':>8}{'lifts':>7}{'unbraked':>10}")
    for path in sorted(EXAMPLES.glob("*.toml")):
        for machine in load_shop(None).machines:
            programs = programs_of(example(path, machine=machine.name))
            times, alone, lifts = [], 0.0, 0
            for program in programs:
                x, y, z = program.moves.ends_mm[0].tolist()
                times += times_by_operation(program, machine, (x, y, z))
                alone += by_length_alone(program, machine)
                lifts += len(program.notes)
            whole = sum(time.seconds for time in times)
            cutting, entry = (sum(getattr(time, part) for time in times) for part in ("cutting_s", "entry_s"))
            print(
                f"{path.stem:20}{machine.name:18}{whole / 60:7.1f}{cutting / whole:9.1%}{entry / whole:7.1%}"
                f"{1 - (cutting + entry) / whole:8.1%}{lifts:7}{alone / whole - 1:10.0%}",
                flush=True,
            )


def by_length_alone(program: ToolProgram, machine: Machine) -> float:
    """Seconds on a machine that is up to speed at once and takes corners without slowing down."""
    x, y, z = program.moves.ends_mm[0].tolist()
    keen = replace(machine, acceleration_mm_per_s2=(1e9, 1e9, 1e9), corner_tolerance_mm=1e6)
    return 60 * estimate(program.moves, keen, (x, y, z), 0.0).minutes


if __name__ == "__main__":
    main()
