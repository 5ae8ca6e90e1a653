"""How the machine's control wants its programs: what was asked for, else what the machine's row says."""

from __future__ import annotations

from collections.abc import Sequence

from signgen.option import pick
from signgen.shop.manner import COMMENTS, EXTRACTIONS, PROGRAM_ENDS, Manner
from signgen.shop.materials import Machine
from signgen.spec.asked import Asked


def dialect_of(a: Asked, machine: Machine | None, dialects: Sequence[str]) -> str | None:
    """The dialect's name; None when there is a problem."""
    if a.has("dialect"):
        name = a.text("dialect")
        return a.attempt(lambda: pick(name, dialects, "dialect")) if name else None
    if machine is None:
        return None
    own = machine.dialect
    return a.attempt(lambda: pick(own, dialects, f"machine {machine.name}", "dialect"))


def manner_of(a: Asked, machine: Machine | None) -> Manner | None:
    """None when there is a problem."""
    if machine is None:
        return None
    own = machine.manner
    numbers, percents = a.flag("line-numbers"), a.flag("percent-lines")
    end, extraction, warm_up = a.text("program-end"), a.text("extraction"), a.number("warm-up")
    comments = a.text("comments")
    return Manner(
        line_numbers=own.line_numbers if numbers is None else numbers,
        percent_lines=own.percent_lines if percents is None else percents,
        program_end=next((word for word in PROGRAM_ENDS if word == end), own.program_end),
        extraction=next((word for word in EXTRACTIONS if word == extraction), own.extraction),
        comments=next((word for word in COMMENTS if word == comments), own.comments),
        warm_up_s=own.warm_up_s if warm_up is None else warm_up,
    )
