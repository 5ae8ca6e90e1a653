"""What can be made as planned and may disappoint all the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from signgen.operations.plan import Run
from signgen.shop.materials import Machine, Material
from signgen.shop.strain import strain_warnings


def run_warnings(runs: Sequence[Run], material: Material, machine: Machine) -> Iterator[str]:
    """Whole sentences about cutters that are asked for too much, or are not made for what they do here."""
    for run in runs:
        if run.tool.kind == "drill":
            continue
        yield from strain_warnings(run.tool, material, machine, run.cutting, run.cutting.stepdown_mm)
        if run.tool.cut == "compression" and run.cutting.stepdown_mm < run.tool.diameter_mm:
            yield (
                f"The {run.tool.label} leaves the top face clean only where the first pass is deeper than the part of "
                f"its edges that pulls up, often a diameter; the passes here are {run.cutting.stepdown_mm:g} mm."
            )
