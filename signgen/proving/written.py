"""The programs of one side of a board, as they are made now."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry.base import BaseGeometry

from signgen import instructions
from signgen.checks.check import Case
from signgen.checks.fixing import Fixing
from signgen.checks.trials_clear import cut_bounds
from signgen.dialects import dialect_named
from signgen.fastening.rim_screws import rim_screws
from signgen.fastening.screws import suggest_screws
from signgen.fastening.telling import ToldRun as Told
from signgen.fastening.telling import set_up_of
from signgen.fastening.touching import touched_discs, touches_of
from signgen.instructions import SetUp, Touch
from signgen.operations.plan import Run
from signgen.program.assemble import assemble
from signgen.program.blocks import ToolProgram
from signgen.program.heading import heading
from signgen.program.travel import Travel
from signgen.program.trial import lifted_program, outline_program
from signgen.proving.judge_sides import Points
from signgen.proving.sides import Side
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Toolpath
from signgen.toolpath.order import in_order

Touches = tuple[tuple[Touch, ...], ...]

SAME_PLACE_MM = 0.01
"""So that a way along the outside cut counts as over the bare board."""


class Written(Struct, frozen=True, kw_only=True):
    """`made`: one program for each run; `set_ways`: how Z is set for its cutter."""

    side: Side
    made: tuple[ToolProgram, ...]
    set_ways: Touches

    def programs(self) -> Sequence[str]:
        return dialect_named(self.side.spec.dialect).write(self.made, self.side.spec.manner)

    def trials(self, case: Case) -> Mapping[str, str]:
        spec, zero = self.side.spec, case.zero
        dialect = dialect_named(spec.dialect)
        x0, y0, x1, y1 = cut_bounds(case)
        corners = (x0 - zero.x_mm, y0 - zero.y_mm, x1 - zero.x_mm, y1 - zero.y_mm)
        over = spec.thickness_mm + spec.clearance_mm - zero.z_mm
        texts: list[str] = []
        if self.side.shows_place:
            texts += dialect.write([outline_program(self.made[0], corners, over, spec.machine)], spec.manner)
        if spec.air_cut_mm is not None:
            texts += dialect.write([lifted_program(program, spec.air_cut_mm) for program in self.made], spec.manner)
        return dict(zip(self.side.trial_names, texts, strict=True))

    def screws_mm(self, case: Case) -> Points:
        """Where they are suggested."""
        spec, cutters = self.side.spec, [(program.tool, program.replay) for program in case.programs]
        if case.drawing.is_blank:
            return ()
        if case.drawing.pieces:
            tools = [tool for tool, _ in cutters]
            return rim_screws(case.drawing, case.stock, case.zero, tools, spec.breakthrough_mm)
        touched = touched_discs(self.set_ways, case.zero, [tool for tool, _ in cutters])
        return suggest_screws(case.drawing, case.stock, case.zero, cutters, spec.machine.collet_series, touched)

    def told(self, case: Case, screws_mm: Points, sides: int) -> SetUp:
        side, behind = self.side, bool(self.side.plan.prefix)
        runs = [
            Told(
                file=program.file,
                tool=run.tool,
                cutting=run.cutting,
                replay=program.replay,
                bite_mm=float(engagement.depth_mm.max(initial=0.0)),
            )
            for run, program, engagement in zip(side.plan.runs, case.programs, case.engagement, strict=True)
        ]
        shown = case.outlines[0] if case.outlines else None
        return set_up_of(
            spec=side.spec,
            drawing=case.drawing,
            stock=case.stock,
            zero=case.zero,
            runs=runs,
            touches=self.set_ways,
            screws_mm=screws_mm,
            shown=(shown.tool, shown.replay) if shown else None,
            outline=shown.file if shown else "",
            number=1 if behind else sides,
            face_down=behind,
        )

    def papers(self) -> None:
        """None: they are written when the programs have been judged."""
        return

    def clamps(self, case: Case) -> Sequence[Fixing]:
        """None: the sheet says where clamps may stand, and the person decides."""
        return ()


def written(side: Side) -> Written:
    """Raises: CannotMakeError when a cutter does not fit."""
    ways = touching(side)
    return Written(side=side, made=tuple(_programs(side, ways)), set_ways=ways)


def touching(side: Side) -> Touches:
    """How Z can be set for each run's cutter."""
    tools = [run.tool for run in side.plan.runs]
    stock, zero = side.setup.stock, side.setup.zero
    behind = bool(side.plan.prefix)
    return touches_of(side.drawing, stock, zero, tools, side.plan.around_mm, side.spec.machine, face_down=behind)


def _programs(side: Side, ways: Touches) -> Iterator[ToolProgram]:
    spec, drawing, plan, setup = side.spec, side.drawing, side.plan, side.setup
    # At the board's back, out of the way, as far as the machine goes there.
    furthest = spec.machine.travel_mm[1] - (plan.edge.diameter_mm if plan.edge else 0.0)
    park = (0.0, min(setup.stock.bounds_mm[3], max(furthest, drawing.height_mm)))
    dialect = dialect_named(spec.dialect)
    called = {feature.name: feature.called for feature in drawing.features}
    called.update({name: said for feature in drawing.features for name, said in feature.parts_called.items()})
    for number, (run, touches) in enumerate(zip(plan.runs, ways, strict=True), 1):
        set_at = instructions.set_at(touches, dialect.inches)
        told = heading(
            lines=spec.text.lines,
            number=number,
            count=len(plan.runs),
            description=run.description,
            tool=run.tool,
            drawing=drawing,
            stock=setup.stock,
            material_label=spec.material.label,
            zero=setup.zero,
            from_behind=bool(plan.prefix),
            set_at=set_at,
            language=spec.language,
        )
        yield assemble(
            heading=told.lines,
            own_heading=told.own,
            language=spec.language,
            toolpaths=in_order(_named(run), park),
            cutting=run.cutting,
            spindle_start_s=spec.machine.spindle_start_s,
            spindle_least_rpm=spec.machine.spindle_min_rpm,
            zero=setup.zero,
            travel=Travel(
                top_mm=spec.thickness_mm,
                safe_mm=spec.thickness_mm + spec.clearance_mm,
                most_mm=spec.machine.travel_mm[2] - spec.breakthrough_mm,
                bare=None if plan.prefix else _bare(side, run.tool),
            ),
            top_z_feed_mm_per_min=spec.machine.top_feed_mm_per_min[2],
            park_xy_mm=park,
            number=number,
            grid_mm=dialect.grid_mm,
            arc_chord_mm=spec.tolerances.arc_chord_mm,
            set_at=set_at,
            called=called,
        )


def _bare(side: Side, tool: Tool) -> BaseGeometry | None:
    """Where neither clamps nor screws can stand, for the outside cut runs there; None where there is no such cut."""
    if side.plan.edge is None:
        return None
    beside = side.plan.edge.diameter_mm - tool.radius_mm + SAME_PLACE_MM
    bare: BaseGeometry = side.drawing.edge.buffer(beside)
    return bare


def _named(run: Run) -> list[Toolpath]:
    """The run's toolpaths, named by what they do in the operator's words."""
    return [replace(toolpath, operation=does) for does, toolpath in zip(run.description, run.toolpaths(), strict=True)]
