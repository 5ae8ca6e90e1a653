"""drawing -> operations: who cuts what, in which order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.errors import CannotMakeError
from signgen.features.edge import Bevel
from signgen.features.keyhole import Keyhole
from signgen.features.recess import Recess
from signgen.messages import Message, Mm, Mm2
from signgen.operations import planners as table
from signgen.operations.bevel import bevel_beyond_mm
from signgen.operations.choose import Cutters, choose_cutters
from signgen.operations.groove_floors import Clearing, Compared, clearing_of
from signgen.operations.planner import EDGE, Known, Operation, PlannedStep, Planner
from signgen.operations.recesses import has_room, room_problems, standing_mm2
from signgen.operations.roughing import Roughing, roughing_of
from signgen.operations.sense import Sense, sense_of
from signgen.shop.materials import CuttingData
from signgen.shop.tools import MISSING_V_BIT, Tool
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import Toolpath

LEAST_SAID_MM2 = 0.05
"""Less than that in all corners together nobody sees."""


BACK = "back-"
"""How the names of programs begin that cut the board from its back, face down."""


class Run(Struct, frozen=True, kw_only=True):
    """Everything that one cutter does before the next is fitted: one program."""

    tool: Tool
    cutting: CuttingData
    steps: tuple[PlannedStep, ...]

    @property
    def operations(self) -> tuple[Operation, ...]:
        return tuple(step.operation for step in self.steps)

    @property
    def description(self) -> tuple[Message, ...]:
        return tuple(operation.description for operation in self.operations)

    def toolpaths(self) -> tuple[Toolpath, ...]:
        """Raises: CannotMakeError when a cutter does not fit."""
        return tuple(step.toolpath for step in self.steps)


class Plan(Struct, frozen=True, kw_only=True):
    """`edge`: the cutter of the outside cut, which decides how much board the sign needs around it,
    None where there is no such cut. `remarks`: whole
    sentences about what other cutters would do; `spoilt`: about letters that come out blunt or in part. `sense`: of
    the engraving, None where there is none. `prefix`: of its programs' names."""

    runs: tuple[Run, ...]
    edge: Tool | None
    remarks: tuple[Message, ...] = ()
    spoilt: tuple[Message, ...] = ()
    sense: Sense | None = None
    compared: Compared | None = None
    roughing: Roughing | None = None
    prefix: str = ""
    bevel_beyond_mm: float = 0.0

    @property
    def around_mm(self) -> float:
        """How far outside the edge the board is cut: by the outside cut, or by the V-bit that bevels the edge."""
        return max(self.edge.diameter_mm if self.edge else 0.0, self.bevel_beyond_mm)


def make_plan(
    drawing: Drawing,
    spec: SignSpec,
    cutters: Cutters | None = None,
    planners: Sequence[Planner] | None = None,
    *,
    twice: bool = False,
) -> Plan:
    """The runs in the order to cut them: the V-bit first, the edge's cutter last. `cutters` when they have been chosen
    already; `twice`: a cutter may be fitted twice where that saves time.

    Raises: CannotMakeError when a cutter does not fit.
    """
    cutters = cutters or choose_cutters(drawing, spec)
    problems = list(room_problems(drawing, spec, cutters.clear)) if cutters.clear else []
    if problems:
        raise CannotMakeError(problems)
    clearing = clearing_of(drawing, cutters, spec)
    sense = sense_of(drawing, spec)
    roughing = roughing_of(drawing, cutters, spec) if twice else None
    job = Known(drawing=drawing, spec=spec, cutters=cutters, clearing=clearing, roughing=roughing)
    return Plan(
        runs=_runs(job, planners),
        edge=cutters.edge,
        roughing=roughing,
        spoilt=sense.warnings if sense else (),
        remarks=(
            *((roughing.remark,) if roughing else ()),
            *clearing.remarks,
            *_round_corners(drawing, cutters),
            *_narrow_places(drawing, cutters),
            *_missing(drawing, spec),
        ),
        sense=sense,
        compared=clearing.compared,
        bevel_beyond_mm=max((bevel_beyond_mm(bevel, cutters.v_bit) for bevel in drawing.of(Bevel)), default=0.0),
    )


def back_plan(drawing: Drawing, spec: SignSpec, planners: Sequence[Planner] | None = None) -> Plan | None:
    """The runs from behind on the board as it lies face down (`drawing.keyholes.face_down`); None when there are
    none."""
    how = spec.keyholes
    if how is None or not drawing.of(Keyhole):
        return None
    cutters = Cutters(v_bit=spec.v_bit, edge=how.mill, holes=())
    job = Known(drawing=drawing, spec=spec, cutters=cutters, clearing=Clearing())
    return Plan(runs=_runs(job, planners), edge=how.mill, prefix=BACK)


def _runs(job: Known, planners: Sequence[Planner] | None) -> tuple[Run, ...]:
    """The steps of all planners, of every one when none are named: those of one cutter together, in the order of the
    planners.

    Raises: ValueError when a feature is made by nobody, or by two.
    """
    features = job.drawing.upward
    steps = [step for planner in (table.PLANNERS if planners is None else planners) for step in planner(features, job)]
    finished = Counter(name for step in steps for name in step.finishes)
    # The edge belongs to both sides, and is cut from the face.
    sides = ("face", "both") if job.drawing.side == "face" else ("back",)
    wanted = Counter(each.name for each in features if each.takes and each.side in sides)
    if finished != wanted:
        wrong = sorted((wanted - finished) + (finished - wanted))
        raise ValueError(f"each feature is finished by one step, but not {', '.join(wrong)}")
    groups: dict[tuple[Tool, bool], list[PlannedStep]] = {}
    for step in steps:
        groups.setdefault((step.operation.tool, step.role.apart), []).append(step)
    return tuple(
        Run(tool=tool, cutting=job.cutting(tool), steps=tuple(own))
        for (tool, _), own in sorted(groups.items(), key=lambda group: _turn(group[0][0], group[1]))
    )


def _turn(tool: Tool, steps: Sequence[PlannedStep]) -> tuple[bool, int, float, str]:
    """When a cutter is fitted: by the least rank of what it does, thin ones first; that of the edge is the last."""
    roles = [step.role for step in steps]
    return EDGE in roles, min(role.rank for role in roles), tool.diameter_mm, tool.name


def _round_corners(drawing: Drawing, cutters: Cutters) -> Iterator[Message]:
    """What the end mill leaves standing in recesses that were not asked to be sharp."""
    left = standing_mm2(drawing, cutters.clear.radius_mm) if cutters.clear else 0.0
    if cutters.clear and left >= LEAST_SAID_MM2 and not any(recess.sharp for recess in drawing.of(Recess)):
        yield (Message("cut.inner_corners_stay_round_end", diameter=Mm(cutters.clear.diameter_mm), left=Mm2(left, 1)))


def _narrow_places(drawing: Drawing, cutters: Cutters) -> Iterator[Message]:
    """What the V-bit makes of recesses because no end mill has room."""
    if cutters.clear and any(
        recess.sharp and not has_room(recess.area, cutters.clear.radius_mm) for recess in drawing.of(Recess)
    ):
        yield Message("cut.v_bit_makes_narrow_places", diameter=Mm(cutters.clear.diameter_mm))


def _missing(drawing: Drawing, spec: SignSpec) -> Iterator[Message]:
    """What is made otherwise because the shop lacks a kind of cutter."""
    if spec.v_bit.name == MISSING_V_BIT and any(recess.is_letter for recess in drawing.of(Recess)):
        yield Message("choose.no_v_bit")
    if drawing.is_blank and not any(tool.kind == "end-mill" for tool in spec.shop.tools):
        yield Message("choose.no_end_mill")
