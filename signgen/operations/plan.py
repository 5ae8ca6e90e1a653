"""drawing -> operations -> toolpaths: who cuts what, in which order."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.errors import CannotMakeError
from signgen.features.edge import Bevel, Edge
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.recess import Recess
from signgen.features.tab import Tab
from signgen.operations.apart import CutApart
from signgen.operations.bevel import BevelEdge, bevel_beyond_mm
from signgen.operations.choose import Cutters, choose_cutters
from signgen.operations.countersinks import SinkHeads
from signgen.operations.edge import CutOut
from signgen.operations.engrave import Engrave
from signgen.operations.follow_lines import FollowLines
from signgen.operations.groove_floors import Clearing, Compared, clearing_of
from signgen.operations.holes import BoreHoles
from signgen.operations.keyholes import OpenKeyholes, UndercutKeyholes
from signgen.operations.recesses import recess_operations, room_problems, standing_mm2
from signgen.operations.sense import Sense, sense_of
from signgen.operations.sharpen import SharpenCorners
from signgen.operations.slots import MillSlots
from signgen.shop.feeds import cutting_data, thin_feed_mm_per_min
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import Toolpath

LEAST_SAID_MM2 = 0.05
"""Less than that in all corners together nobody sees."""


BACK = "back-"
"""How the names of programs begin that cut the board from its back, face down."""


class Operation(Protocol):
    """What one tool does to features. `does` says it to the operator: 'engraves the letters'."""

    @property
    def tool(self) -> Tool: ...

    @property
    def does(self) -> str: ...

    def toolpath(self) -> Toolpath: ...


class Run(Struct, frozen=True, kw_only=True):
    """Everything that one cutter does before the next is fitted: one program."""

    tool: Tool
    cutting: CuttingData
    operations: tuple[Operation, ...]

    @property
    def does(self) -> tuple[str, ...]:
        return tuple(operation.does for operation in self.operations)

    def toolpaths(self) -> tuple[Toolpath, ...]:
        """Raises: CannotMakeError when a cutter does not fit."""
        return tuple(operation.toolpath() for operation in self.operations)


class Plan(Struct, frozen=True, kw_only=True):
    """`edge`: the cutter of the outside cut, which decides how much board the sign needs around it. `remarks`: whole
    sentences about what other cutters would do; `spoilt`: about letters that come out blunt or in part. `sense`: of
    the engraving, None where there is none. `prefix`: of its programs' names."""

    runs: tuple[Run, ...]
    edge: Tool
    remarks: tuple[str, ...] = ()
    spoilt: tuple[str, ...] = ()
    sense: Sense | None = None
    compared: Compared | None = None
    prefix: str = ""
    bevel_beyond_mm: float = 0.0

    @property
    def around_mm(self) -> float:
        """How far outside the edge the board is cut: by the outside cut, or by the V-bit that bevels the edge."""
        return max(self.edge.diameter_mm, self.bevel_beyond_mm)


def make_plan(drawing: Drawing, spec: SignSpec, cutters: Cutters | None = None) -> Plan:
    """The runs in the order to cut them: the V-bit first, then cutters that only make holes, the edge's cutter last.
    `cutters` when they have been chosen already.

    Raises: CannotMakeError when a cutter does not fit.
    """
    cutters = cutters or choose_cutters(drawing, spec)
    problems = list(room_problems(drawing, spec, cutters.clear)) if cutters.clear else []
    if problems:
        raise CannotMakeError(problems)
    clearing = clearing_of(drawing, cutters, spec)
    sense = sense_of(drawing, spec)
    runs = (_run(tool, cutters, clearing, drawing, spec) for tool in _in_order(cutters))
    return Plan(
        runs=tuple(run for run in runs if run.operations),
        edge=cutters.edge,
        spoilt=sense.warnings if sense else (),
        remarks=(*clearing.remarks, *_round_corners(drawing, cutters)),
        sense=sense,
        compared=clearing.compared,
        bevel_beyond_mm=max((bevel_beyond_mm(bevel, cutters.v_bit) for bevel in drawing.of(Bevel)), default=0.0),
    )


def back_plan(drawing: Drawing, spec: SignSpec) -> Plan | None:
    """The runs from behind on the board as it lies face down (`drawing.of(Keyhole).face_down`); None when there are
    none."""
    how = spec.keyholes
    if how is None or not drawing.of(Keyhole):
        return None
    kinds = ((how.mill, OpenKeyholes), (how.cutter, UndercutKeyholes))
    runs = []
    for tool, operation in kinds:
        cutting = cutting_data(tool, spec.material, spec.machine)
        done = operation(
            keyholes=drawing.of(Keyhole), tool=tool, cutting=cutting, thickness_mm=drawing.thickness_mm
        )  # fmt: skip
        runs.append(Run(tool=tool, cutting=cutting, operations=(done,)))
    return Plan(runs=tuple(runs), edge=how.mill, prefix=BACK)


def _round_corners(drawing: Drawing, cutters: Cutters) -> Iterator[str]:
    """What the end mill leaves standing in recesses that were not asked to be sharp."""
    left = standing_mm2(drawing, cutters.clear.radius_mm) if cutters.clear else 0.0
    if cutters.clear and left >= LEAST_SAID_MM2 and not any(recess.sharp for recess in drawing.of(Recess)):
        yield (
            f"Inner corners stay round: the {cutters.clear.diameter_mm:g} mm end mill does not reach {left:.1f} mm2 "
            "of them."
        )


def _in_order(cutters: Cutters) -> tuple[Tool, ...]:
    """Each cutter once; the edge's own is last, for nothing may follow it."""
    others = {tool for _, tool in cutters.holes} | ({cutters.clear} if cutters.clear else set())
    only_holes = sorted(others - {cutters.edge}, key=lambda tool: (tool.diameter_mm, tool.name))
    return (cutters.v_bit, *only_holes, cutters.edge)


def _run(tool: Tool, cutters: Cutters, clearing: Clearing, drawing: Drawing, spec: SignSpec) -> Run:
    cutting = cutting_data(tool, spec.material, spec.machine)
    operations = tuple(_operations(tool, cutting, cutters, clearing, drawing, spec))
    return Run(tool=tool, cutting=cutting, operations=operations)


def _operations(
    tool: Tool, cutting: CuttingData, cutters: Cutters, clearing: Clearing, drawing: Drawing, spec: SignSpec
) -> Iterator[Operation]:
    """What one cutter does, in the order of cutting."""
    engraved = tuple(groove for groove in drawing.of(Groove) if not isinstance(groove, Stroke))
    strokes = drawing.of(Stroke)
    if tool == cutters.v_bit and engraved:
        yield Engrave(
            grooves=engraved,
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            tolerances=spec.tolerances,
            ridge_mm=spec.ridge_mm,
            cleared=clearing.cleared,
        )
    if tool == cutters.v_bit and strokes:
        yield FollowLines(
            strokes=strokes, tool=tool, cutting=cutting, thickness_mm=drawing.thickness_mm, tolerances=spec.tolerances
        )
    sharp = tuple(recess for recess in drawing.of(Recess) if recess.sharp)
    if tool == cutters.v_bit and sharp and cutters.clear:
        sharpen = SharpenCorners(
            recesses=sharp,
            mill_radius_mm=cutters.clear.radius_mm,
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            tolerances=spec.tolerances,
        )
        # An O has no corners.
        if sharpen.toolpath().cuts:
            yield sharpen
    sunk = tuple(hole for hole in drawing.of(Hole) if hole.sink)
    if tool == cutters.v_bit and sunk:
        yield SinkHeads(holes=sunk, tool=tool, cutting=cutting, thickness_mm=drawing.thickness_mm)
    bevels = drawing.of(Bevel)
    if tool == cutters.v_bit and bevels:
        yield BevelEdge(
            bevels=bevels,
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            tolerances=spec.tolerances,
            climb=spec.climb,
        )
    yield from (operation for operation in clearing.operations if operation.tool == tool)
    if tool == cutters.clear:
        yield from recess_operations(drawing, spec, tool, cutting)
    makers = dict(cutters.holes)
    own = [hole for hole in drawing.of(Hole) if makers[hole.name] == tool]
    holes = tuple(hole for hole in own if not hole.span_mm)
    slots = tuple(hole for hole in own if hole.span_mm)
    if slots:
        yield MillSlots(
            slots=slots,
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            breakthrough_mm=spec.breakthrough_mm,
        )
    if holes:
        yield BoreHoles(
            holes=holes,
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            breakthrough_mm=spec.breakthrough_mm,
            finish_mm=spec.finish_mm,
            finish_feed_mm_per_min=_finish_feed(tool, cutting, spec),
            climb=spec.climb,
        )
    if tool == cutters.edge:
        yield _edge(drawing, tool, cutting, spec)


def _finish_feed(tool: Tool, cutting: CuttingData, spec: SignSpec) -> float:
    """Thin chips let the finishing pass go faster."""
    return thin_feed_mm_per_min(tool, cutting, spec.machine, spec.finish_mm) if spec.finish_mm else 0.0


def _edge(drawing: Drawing, tool: Tool, cutting: CuttingData, spec: SignSpec) -> CutOut | CutApart:
    """The outside cut of the sign, or of every piece on a sheet of signs."""
    cuts = tuple(
        CutOut(
            edge=edge.area,
            tabs=tuple(tab for tab in drawing.of(Tab) if tab.piece == edge.piece),
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            breakthrough_mm=spec.breakthrough_mm,
            tolerances=spec.tolerances,
            skin_mm=edge.skin_mm,
            finish_mm=spec.finish_mm,
            finish_feed_mm_per_min=_finish_feed(tool, cutting, spec),
            climb=spec.climb,
        )
        for edge in drawing.of(Edge)
    )
    return CutApart(cuts=cuts, pieces=drawing.pieces) if drawing.pieces else cuts[0]
