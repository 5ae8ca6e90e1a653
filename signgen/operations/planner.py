"""What a planner is given and what it gives back."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cached_property
from typing import Protocol

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.features.feature import Feature
from signgen.messages import Message
from signgen.operations.choose import Cutters
from signgen.operations.groove_floors import Clearing
from signgen.operations.roughing import Roughing
from signgen.shop.feeds import cutting_data, thin_feed_mm_per_min
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import Toolpath


class Operation(Protocol):
    """What one tool does to features. `description` says it to the operator: 'engraves the letters'."""

    @property
    def tool(self) -> Tool: ...

    @property
    def description(self) -> Message: ...

    def toolpath(self) -> Toolpath: ...


class Role(Struct, frozen=True):
    """What a cutter is for. Cutters are fitted in the order of the least `rank` of their roles, each once; the one that
    has the edge comes last, whatever else it does. What is done `apart` has a program of its own, and its cutter is
    fitted again for the rest."""

    name: str
    rank: int = 1
    apart: bool = False


V_BIT, ROUGHING, CLEARING, HOLE, UNDERCUT, EDGE = (
    Role("v-bit", 0),
    Role("roughing", 1, apart=True),
    Role("clearing", 2),
    Role("hole", 2),
    Role("undercut", 3),
    Role("edge", 4),
)


class PlannedStep(Struct, frozen=True, kw_only=True, dict=True):
    """An operation with the role of its cutter, and the names of the features that are as drawn once it is done: each
    feature that takes wood is finished by one step."""

    role: Role
    operation: Operation
    finishes: tuple[str, ...] = ()

    @cached_property
    def toolpath(self) -> Toolpath:
        """Made when it is first asked for, and once. Raises: CannotMakeError when a cutter does not fit."""
        return self.operation.toolpath()


class Known(Struct, frozen=True, kw_only=True):
    """What is known of the job: the sign, what was asked for, the cutters chosen for it, what an end mill clears of
    the grooves' floors, and what a thicker one clears of recesses first."""

    drawing: Drawing
    spec: SignSpec
    cutters: Cutters
    clearing: Clearing
    roughing: Roughing | None = None

    @property
    def thickness_mm(self) -> float:
        return self.drawing.thickness_mm

    def cutting(self, tool: Tool) -> CuttingData:
        """Raises: CannotMakeError when the machine cannot turn it."""
        return cutting_data(tool, self.spec.material, self.spec.machine)

    def finish_feed(self, tool: Tool) -> float:
        """Of the finishing pass, mm/min: thin chips let it go faster. 0 where there is none."""
        finish = self.spec.finish_mm
        return thin_feed_mm_per_min(tool, self.cutting(tool), self.spec.machine, finish) if finish else 0.0


Planner = Callable[[Sequence[Feature], Known], Iterator[PlannedStep]]
"""The features of the side that lies up, and what is known of the job -> what is done for those that it makes."""


def names_of(features: Sequence[Feature]) -> tuple[str, ...]:
    return tuple(feature.name for feature in features)
