"""What would halve the time of a sign that takes long, found by trying it."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from signgen.errors import SignGenError
from signgen.features.groove import Groove
from signgen.job.facts import JobFacts
from signgen.messages import Message, Mm, Num
from signgen.operations.choose import choose_cutters
from signgen.program.estimate import estimate
from signgen.proving.depth_choice import depths, minutes_at
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.spec.sign_spec import SignSpec

LONG_MIN = 30.0
"""From here on a sign is worth another look (common practice: what somebody stands beside a machine for)."""

WORTH_RATIO = 0.55
"""About half."""

ROUGHER = 2.5
"""Ridges that are so many times higher are still small, and the V-bit's lines half as many or fewer."""

SHALLOW_RATIO = 0.5


def with_quicker(facts: JobFacts) -> JobFacts:
    """The job with a warning before all others where it takes long, and with what about halves it, if anything does."""
    minutes = sum(program.minutes for program in facts.every_program)
    if minutes < LONG_MIN:
        return facts
    found = next(
        (
            (way, less)
            for way, spec in _ways(facts)
            if (less := _minutes(spec)) is not None and less <= WORTH_RATIO * minutes
        ),
        None,
    )
    said = Message("slow.takes", minutes=Num(minutes, 0))
    if found is not None:
        said = Message("slow.takes_with", minutes=Num(minutes, 0), way=found[0], less=Num(found[1], 0))
    return replace(facts, warnings=(said, *facts.warnings))


def _ways(facts: JobFacts) -> Iterator[tuple[Message, SignSpec]]:
    """One option each: what is likely to help first."""
    spec, drawing = facts.spec, facts.drawing
    if spec.end_mill is not None:
        yield Message("slow.no_end_mill"), replace(spec, end_mill=None)
    if drawing.of(Groove) and spec.finish == "groove":
        cutters = choose_cutters(drawing, spec)
        for depth in sorted(depths(drawing, spec), key=lambda depth: minutes_at(depth, drawing, spec, cutters)):
            if depth != spec.depth_mm:
                yield Message("slow.depth", depth=Mm(depth)), replace(spec, depth_mm=depth)
        ridge = round(ROUGHER * spec.cusp_height_mm, 3)
        yield Message("slow.ridge", ridge=Mm(ridge)), replace(spec, cusp_height_mm=ridge)
    if spec.panel is not None:
        depth = round(SHALLOW_RATIO * spec.panel.depth_mm, 2)
        yield Message("slow.panel_depth", depth=Mm(depth)), replace(spec, panel=replace(spec.panel, depth_mm=depth))
    if spec.finish_mm:
        yield Message("slow.no_finish_pass"), replace(spec, finish_mm=0.0)
    others = sorted((each for each in spec.shop.machines if each != spec.machine), key=lambda each: each.travel_mm[0])
    for machine in others:
        yield Message("slow.machine", name=machine.name), replace(spec, machine=machine)


def _minutes(spec: SignSpec) -> float | None:
    """How long a sign takes, by its programs; None when it cannot be made."""
    try:
        minutes = 0.0
        for side in sides_of(spec):
            for program in written(side).made:
                start = program.moves.ends_mm[0].tolist()
                minutes += estimate(program.moves, spec.machine, (start[0], start[1], start[2]), 0.0).minutes
    except SignGenError:
        return None
    return minutes
