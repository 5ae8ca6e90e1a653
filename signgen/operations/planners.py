"""Who makes what: a planner for each kind of work, in the order of cutting with one cutter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeVar

from signgen.features.edge import Bevel, Edge
from signgen.features.feature import Feature
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.recess import Recess
from signgen.features.tab import Tab
from signgen.operations.apart import CutApart
from signgen.operations.bevel import BevelEdge
from signgen.operations.countersinks import SinkHeads
from signgen.operations.edge import CutOut
from signgen.operations.engrave import Engrave
from signgen.operations.follow_lines import FollowLines
from signgen.operations.holes import BoreHoles
from signgen.operations.keyholes import OpenKeyholes, UndercutKeyholes
from signgen.operations.planner import (
    CLEARING,
    EDGE,
    HOLE,
    ROUGHING,
    UNDERCUT,
    V_BIT,
    Known,
    PlannedStep,
    Planner,
    names_of,
)
from signgen.operations.recesses import recess_operations
from signgen.operations.sharpen import SharpenCorners
from signgen.operations.slots import MillSlots
from signgen.shop.tools import Tool

Kind = TypeVar("Kind", bound=Feature)


def of(kind: type[Kind], features: Sequence[Feature]) -> tuple[Kind, ...]:
    """The features of a kind, variants of it among them."""
    return tuple(feature for feature in features if isinstance(feature, kind))


def engraving(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    grooves = tuple(each for each in of(Groove, features) if not isinstance(each, Stroke))
    if grooves:
        tool = job.cutters.v_bit
        operation = Engrave(
            grooves=grooves,
            tool=tool,
            cutting=job.cutting(tool),
            thickness_mm=job.thickness_mm,
            tolerances=job.spec.tolerances,
            cusp_height_mm=job.spec.cusp_height_mm,
            cleared=job.clearing.cleared,
        )
        yield PlannedStep(role=V_BIT, operation=operation, finishes=names_of(grooves))


def strokes(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    found = of(Stroke, features)
    if found:
        tool = job.cutters.v_bit
        operation = FollowLines(
            strokes=found, tool=tool, cutting=job.cutting(tool), thickness_mm=job.thickness_mm,
            tolerances=job.spec.tolerances,
        )  # fmt: skip
        yield PlannedStep(role=V_BIT, operation=operation, finishes=names_of(found))


def sharp_corners(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    """Of recesses, before the end mill clears their floors."""
    sharp = tuple(recess for recess in of(Recess, features) if recess.sharp)
    tool, mill = job.cutters.v_bit, job.cutters.clear
    if sharp and mill:
        operation = SharpenCorners(
            recesses=sharp,
            mill_radius_mm=mill.radius_mm,
            tool=tool,
            cutting=job.cutting(tool),
            thickness_mm=job.thickness_mm,
            tolerances=job.spec.tolerances.upright,
        )
        step = PlannedStep(role=V_BIT, operation=operation)
        # An O has no corners.
        if step.toolpath.cuts:
            yield step


def countersinks(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    sunk = tuple(hole for hole in of(Hole, features) if hole.sink)
    if sunk:
        tool = job.cutters.v_bit
        operation = SinkHeads(holes=sunk, tool=tool, cutting=job.cutting(tool), thickness_mm=job.thickness_mm)
        yield PlannedStep(role=V_BIT, operation=operation)


def bevels(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    found = of(Bevel, features)
    if found:
        tool = job.cutters.v_bit
        operation = BevelEdge(
            bevels=found, tool=tool, cutting=job.cutting(tool), thickness_mm=job.thickness_mm,
            tolerances=job.spec.tolerances.upright, climb=job.spec.climb,
        )  # fmt: skip
        yield PlannedStep(role=V_BIT, operation=operation, finishes=names_of(found))


def groove_floors(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    """What is quicker done by an end mill that the job uses anyway; the V-bit has finished the grooves' walls."""
    for operation in job.clearing.operations:
        yield PlannedStep(role=CLEARING, operation=operation)


def roughing(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    """What a thicker cutter clears of recesses, before the thin one goes along their walls and into narrow places."""
    if job.roughing:
        yield from (PlannedStep(role=ROUGHING, operation=operation) for operation in job.roughing.rough)


def recesses(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    tool = job.cutters.clear
    if job.roughing:
        for last in job.roughing.finish:
            yield PlannedStep(role=CLEARING, operation=last, finishes=tuple(floor.name for floor in last.floors))
    elif tool:
        for operation in recess_operations(job.drawing, job.spec, tool, job.cutting(tool)):
            yield PlannedStep(
                role=CLEARING, operation=operation, finishes=tuple(floor.name for floor in operation.floors)
            )


def slots(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    found = tuple(hole for hole in of(Hole, features) if hole.span_mm)
    for tool, own in _by_maker(found, job).items():
        operation = MillSlots(
            slots=own, tool=tool, cutting=job.cutting(tool), thickness_mm=job.thickness_mm,
            breakthrough_mm=job.spec.breakthrough_mm,
        )  # fmt: skip
        yield PlannedStep(role=HOLE, operation=operation, finishes=names_of(own))


def holes(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    found = tuple(hole for hole in of(Hole, features) if not hole.span_mm)
    for tool, own in _by_maker(found, job).items():
        operation = BoreHoles(
            holes=own,
            tool=tool,
            cutting=job.cutting(tool),
            thickness_mm=job.thickness_mm,
            breakthrough_mm=job.spec.breakthrough_mm,
            finish_mm=job.spec.finish_mm,
            finish_feed_mm_per_min=job.finish_feed(tool),
            climb=job.spec.climb,
        )
        yield PlannedStep(role=HOLE, operation=operation, finishes=names_of(own))


def _by_maker(own: Sequence[Hole], job: Known) -> dict[Tool, tuple[Hole, ...]]:
    makers = dict(job.cutters.holes)
    tools = dict.fromkeys(makers[hole.name] for hole in own)
    return {tool: tuple(hole for hole in own if makers[hole.name] == tool) for tool in tools}


def keyholes(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    """From behind: opened by an end mill, so that the keyhole cutter need not plunge."""
    found, how = of(Keyhole, features), job.spec.keyholes
    if found and how is not None:
        opened = OpenKeyholes(
            keyholes=found, tool=how.mill, cutting=job.cutting(how.mill), thickness_mm=job.thickness_mm
        )
        undercut = UndercutKeyholes(
            keyholes=found, tool=how.cutter, cutting=job.cutting(how.cutter), thickness_mm=job.thickness_mm
        )
        yield PlannedStep(role=HOLE, operation=opened)
        yield PlannedStep(role=UNDERCUT, operation=undercut, finishes=names_of(found))


def edges(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    """The outside cut of the sign, or of every piece on a sheet of signs; from the face, when all else is done."""
    found, tool, spec = [edge for edge in of(Edge, features) if edge.takes], job.cutters.edge, job.spec
    if job.drawing.side != "face" or not found or tool is None:
        return
    cuts = tuple(
        CutOut(
            edge=edge.area,
            tabs=tuple(tab for tab in of(Tab, features) if tab.piece == edge.piece),
            tool=tool,
            cutting=job.cutting(tool),
            thickness_mm=job.thickness_mm,
            breakthrough_mm=spec.breakthrough_mm,
            tolerances=spec.tolerances.upright,
            skin_mm=edge.skin_mm,
            finish_mm=spec.finish_mm,
            finish_feed_mm_per_min=job.finish_feed(tool),
            climb=spec.climb,
        )
        for edge in found
    )
    pieces = job.drawing.pieces
    operation = CutApart(cuts=cuts, pieces=pieces) if pieces else cuts[0]
    yield PlannedStep(role=EDGE, operation=operation, finishes=names_of(found))


PLANNERS: tuple[Planner, ...] = (
    engraving,
    strokes,
    sharp_corners,
    countersinks,
    bevels,
    groove_floors,
    roughing,
    recesses,
    slots,
    holes,
    keyholes,
    edges,
)
