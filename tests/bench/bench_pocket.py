"""Pockets: a 300 x 200 plaque with raised letters. `python tests/bench/bench_pocket.py` prints a table.

Times are the least of several, in milliseconds of processor time, so that other work on the machine matters less.
`over` is the way cut over the least possible (area over step), `missed` what an opening says is reachable and no disc
along the path covers, `outside` what is cut beyond the area, in mm2. `plunges` go down into solid wood, `lifts` are
further runs that come down where the floor is cleared.
"""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np
import shapely
from shapely.geometry import box
from shapely.geometry.base import BaseGeometry

from signgen.geometry.arcs import fit_all
from signgen.geometry.offsets import inward, opening
from signgen.geometry.pocket import pocket_rings
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines
from signgen.tolerances import Tolerances

TOLERANCES = Tolerances()


def plaque() -> BaseGeometry:
    """The floor round raised letters, 8 mm inside a 300 x 200 edge."""
    lettering = set_lines(["LARKSPUR", "LANE FARM", "EST 1897"], open_face("cinzel"), cap_height_mm=30)
    letters = shapely.union_all([letter.area for letter in lettering.letters])
    return shapely.difference(box(-142, -92, 142, 92), letters)


def milliseconds(work: Callable[[], object], times: int = 5) -> float:
    taken = []
    for _ in range(times):
        begin = time.process_time()
        work()
        taken.append(time.process_time() - begin)
    return min(taken) * 1000


def main() -> None:
    area = plaque()
    print(f"area {area.area:.0f} mm2, {shapely.get_num_coordinates(area)} points")
    titles = ("cutter", "step", "allow", "rings ms", "fit ms", "pieces", "walls", "plunges", "lifts", "rings")
    print(("{:>8}" * 10 + "{:>8}" * 4).format(*titles, "blocks", "over", "missed", "outside"))
    for diameter, step, allowance in (
        (3.0, 1.2, 0.0),
        (3.0, 1.2, 0.2),
        (3.0, 2.1, 0.0),
        (6.0, 2.4, 0.0),
        (2.0, 0.8, 0.0),
    ):
        radius = diameter / 2

        def rings(radius: float = radius, step: float = step, allowance: float = allowance) -> object:
            return pocket_rings(area, radius, step, allowance, TOLERANCES.chord_mm)

        taken = milliseconds(rings, 3)
        pocket = pocket_rings(area, radius, step, allowance, TOLERANCES.chord_mm)
        runs = [run for piece in pocket.pieces for run in piece]
        chains = [chain for run in runs for chain in run.chains]
        flat = [np.column_stack([chain.points_mm, np.zeros(len(chain.points_mm))]) for chain in chains]

        def fit(flat: list[np.ndarray] = flat, loose: float = pocket.loose_mm) -> object:
            walls = fit_all([f for f, c in zip(flat, chains, strict=True) if not c.is_loose], TOLERANCES.fit_mm)  # noqa: B023
            return walls + fit_all([f for f, c in zip(flat, chains, strict=True) if c.is_loose], loose, 45)  # noqa: B023

        fitting = milliseconds(fit, 3)
        paths = fit()
        swept = shapely.union_all(
            [shapely.buffer(shapely.linestrings(c.points_mm), radius, quad_segs=32) for c in chains]
        )
        reachable = shapely.union_all(opening(area, radius, 1e-4))
        least = shapely.union_all(inward(area, radius, 1e-3)).area / step
        numbers = (
            sum(not run.in_the_clear for run in runs),
            sum(run.in_the_clear for run in runs),
            pocket.rings,
            sum(len(path) for path in paths),
        )
        print(
            f"{diameter:8.1f}{step:8.2f}{allowance:8.2f}{taken:8.0f}{fitting:8.0f}{len(pocket.pieces):8}{pocket.walls:8}"
            + "".join(f"{number:8}" for number in numbers)
            + f"{sum(path.length_mm for path in paths) / least:8.3f}"
            + f"{reachable.buffer(-0.01).difference(swept).area:8.4f}{swept.difference(area.buffer(0.005)).area:8.4f}"
        )


if __name__ == "__main__":
    main()
