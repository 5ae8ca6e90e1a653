"""What can be made as planned and may disappoint all the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from signgen.messages import Message, Mm
from signgen.operations.plan import Run
from signgen.shop.materials import Machine, Material
from signgen.shop.strain import strain_warnings


def run_warnings(runs: Sequence[Run], material: Material, machine: Machine) -> Iterator[Message]:
    """Whole sentences about cutters that are asked for too much, or are not made for what they do here."""
    for run in runs:
        if run.tool.kind == "drill":
            continue
        yield from strain_warnings(run.tool, material, machine, run.cutting, run.cutting.stepdown_mm)
        if run.tool.cut == "compression" and run.cutting.stepdown_mm < run.tool.diameter_mm:
            yield (
                Message("cut.leaves_top_face_clean_only", tool=run.tool.called, stepdown=Mm(run.cutting.stepdown_mm))
            )
