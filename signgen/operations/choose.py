"""Which cutters the job takes: the fewest that can make everything."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Iterator

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.drawing.edge import follows
from signgen.errors import CannotMakeError, Problem
from signgen.features.edge import Bevel
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.messages import Message, Mm
from signgen.operations.recesses import clearers, room_problems
from signgen.shop.bores import LEAST_HELIX_MM, fits, makers
from signgen.shop.tools import MISSING_V_BIT, STOUTEST_MM, Tool
from signgen.spec.edge_mills import edge_mills
from signgen.spec.sign_spec import SignSpec


class Cutters(Struct, frozen=True, kw_only=True):
    """The V-bit, the end mill for the edge (and for floors), and who makes each hole, by the hole's name. `edge`: None
    when the edge is not cut. `clear`: the end mill for recesses, None when there are none."""

    v_bit: Tool
    edge: Tool | None
    holes: tuple[tuple[str, Tool], ...]
    clear: Tool | None = None

    @property
    def through(self) -> tuple[Tool, ...]:
        """Those that the edge and the holes want, each once."""
        return tuple(dict.fromkeys(tool for tool in (self.edge, *(tool for _, tool in self.holes)) if tool))


def choose_cutters(drawing: Drawing, spec: SignSpec, clear_with: Collection[str] | None = None) -> Cutters:
    """Fewest cutters first, then the stoutest for the edge, then the stoutest for the holes. `clear_with`: the names of
    the end mills that may clear recesses; None: all in the shop.

    Raises: CannotMakeError when a named cutter, or every cutter in the shop, is too thick or too short for something.
    """
    reach = spec.thickness_mm + spec.breakthrough_mm
    named = spec.end_mill
    unmade = list(_by_missing_v_bit(drawing, spec))
    if unmade:
        raise CannotMakeError(unmade)
    if named is not None:
        problems = [*_named_problems(named, drawing, reach), *room_problems(drawing, spec, named)]
        if problems:
            raise CannotMakeError(problems)
        return Cutters(
            v_bit=spec.v_bit,
            edge=None if drawing.is_blank else named,
            holes=tuple((hole.name, named) for hole in drawing.of(Hole)),
            clear=named if drawing.of(Recess) else None,
        )
    offered = [tool for tool in spec.shop.tools if not tool.only_named]
    long_enough = [tool for tool in offered if tool.cutting_length_mm >= reach + tool.point_length_mm]
    edges: list[Tool | None] = [None]
    if not drawing.is_blank:
        edges = [*(tool for tool in edge_mills(spec) if all(follows(o, tool.diameter_mm) for o in drawing.outlines))]
        if not edges:
            raise CannotMakeError(_no_edge_mill(spec, reach))
    made_by = {
        (diameter, slot): makers(diameter, offered, reach, slot=slot)
        for diameter, slot in sorted({_size(hole) for hole in drawing.of(Hole)})
    }
    problems = [
        _no_maker(hole, [tool for tool in long_enough if tool.kind == "end-mill"])
        for hole in drawing.of(Hole)
        if not made_by[_size(hole)]
    ]
    in_recesses = [tool for tool in may_clear(drawing, spec) if clear_with is None or tool.name in clear_with]
    if drawing.of(Recess) and not in_recesses:
        problems += room_problems(drawing, spec, None)
    if problems:
        raise CannotMakeError(problems)
    best: tuple[tuple[float, ...], Tool | None, Tool | None, dict[tuple[float, bool], Tool]] | None = None
    clearing: list[Tool | None] = [*in_recesses] or [None]
    for edge, clear in itertools.product(edges, clearing):
        for combination in itertools.product(*made_by.values()):
            count = len({tool for tool in (edge, *combination, clear) if tool})
            stout, thick = (tool.diameter_mm if tool else 0.0 for tool in (edge, clear))
            rank = (count, -stout, -thick, -sum(tool.diameter_mm for tool in combination))
            if best is None or rank < best[0]:
                best = (rank, edge, clear, dict(zip(made_by, combination, strict=True)))
    assert best is not None
    _, edge, clear, by_size = best
    return Cutters(
        v_bit=spec.v_bit,
        edge=edge,
        holes=tuple((hole.name, by_size[_size(hole)]) for hole in drawing.of(Hole)),
        clear=clear,
    )


def _by_missing_v_bit(drawing: Drawing, spec: SignSpec) -> Iterator[Problem]:
    """What only a V-bit cuts, where there is none."""
    if spec.v_bit.name != MISSING_V_BIT:
        return
    sources = {each.source for each in drawing.of(Groove)} | {each.source for each in drawing.of(Bevel)}
    sources |= {"countersink"} if any(hole.sink for hole in drawing.of(Hole)) else set()
    for source in sorted(sources):
        by_mill = Message("choose.letters_by_mill") if source == "text" else Message("choose.leave_it_out")
        where = "finish" if source == "text" else source
        yield Problem(where=where, what=Message("choose.only_v_bit_cuts_it"), remedy=by_mill)


def _no_edge_mill(spec: SignSpec, reach_mm: float) -> Problem:
    """Says which cutter would do if it were named."""
    mills = [tool for tool in spec.shop.tools if tool.kind == "end-mill" and tool.diameter_mm <= STOUTEST_MM]
    unasked = max((tool.cutting_length_mm for tool in mills if not tool.only_named), default=0.0)
    longer = [tool for tool in mills if tool.only_named and tool.cutting_length_mm >= reach_mm]
    if longer:
        best = max(longer, key=lambda tool: (tool.diameter_mm, tool.cutting_length_mm))
        remedy = Message("choose.name_it", name=best.name, length=Mm(best.cutting_length_mm))
    else:
        remedy = Message("cut.use_thinner_board_add_longer")
    what = Message(
        "cut.no_end_mill_shop_reaches",
        thickness=Mm(spec.thickness_mm),
        breakthrough=Mm(spec.breakthrough_mm),
        longest=Mm(unasked),
    )
    return Problem(where="thickness", what=what, remedy=remedy)


def may_clear(drawing: Drawing, spec: SignSpec) -> list[Tool]:
    """The end mills of the shop that could clear all recesses; [] when there are none."""
    offered = [tool for tool in spec.shop.tools if not tool.only_named and tool.diameter_mm <= STOUTEST_MM]
    return clearers(drawing, spec, [spec.end_mill] if spec.end_mill else offered)


def _size(hole: Hole) -> tuple[float, bool]:
    """Its diameter, and whether it is a slot, which no drill can make."""
    return hole.diameter_mm, hole.span_mm > 0


def _named_problems(tool: Tool, drawing: Drawing, reach: float) -> list[Problem]:
    problems = []
    goes_through = not drawing.is_blank or bool(drawing.of(Hole))
    if goes_through and tool.cutting_length_mm < reach:
        problems.append(
            Problem(
                where="end-mill",
                what=Message(
                    "cut.end_mill_cuts_deep_cannot",
                    diameter=Mm(tool.diameter_mm),
                    cutting_length=Mm(tool.cutting_length_mm),
                    reach=Mm(reach),
                ),
                remedy=Message("cut.name_longer_cutter_leave_end"),
            )
        )
    small = [hole for hole in drawing.of(Hole) if not fits(hole.diameter_mm, tool, slot=hole.span_mm > 0)]
    if small:
        hole = min(small, key=_widest_mill_mm)
        widest, room = _widest_mill_mm(hole), hole.diameter_mm - _widest_mill_mm(hole)
        problems.append(
            Problem(
                where="end-mill",
                what=Message(
                    "cut.end_mill_cannot_bore" if room else "cut.end_mill_cannot_mill",
                    diameter=Mm(tool.diameter_mm),
                    name=hole.name,
                    hole=Mm(hole.diameter_mm),
                    room=Mm(room),
                    widest=Mm(widest),
                ),
                remedy=Message("cut.name_end_mill_less_make", widest=Mm(widest), diameter=Mm(tool.diameter_mm + room)),
            )
        )
    return problems


def _widest_mill_mm(hole: Hole) -> float:
    """Diameter of the thickest end mill that makes a hole."""
    return hole.diameter_mm if hole.span_mm else round(hole.diameter_mm - 2 * LEAST_HELIX_MM, 6)


def _no_maker(hole: Hole, mills: list[Tool]) -> Problem:
    thinnest = min((tool.diameter_mm for tool in mills), default=0.0)
    least = thinnest + hole.diameter_mm - _widest_mill_mm(hole)
    return Problem(
        where="hole-diameter",
        what=Message(
            "cut.no_cutter_shop_makes_board",
            name=hole.name,
            diameter=Mm(hole.diameter_mm),
            widest_mill=Mm(_widest_mill_mm(hole)),
            thinnest=Mm(thinnest),
        ),
        remedy=Message("cut.use_hole_more_thinner_board", least=Mm(least)),
    )
