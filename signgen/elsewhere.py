"""Programs that were written elsewhere: read, run over a board and judged, with what they do in figures."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from pathlib import Path

import numpy as np
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.checks import judge
from signgen.checks.case import make_case, replays_of
from signgen.checks.check import Case
from signgen.checks.parts import cutters_in_turn
from signgen.checks.tip_path import THROUGH_MM
from signgen.errors import AskError, Problem
from signgen.geometry.paths import CCW, CW, LINE
from signgen.job.judged import Judged, fixings_of
from signgen.job.survey import Deepest, ProgramSurvey, Range, Survey
from signgen.messages import Message
from signgen.program.blocks import RAPID, Moves
from signgen.program.estimate import Estimate, estimate
from signgen.replay.heights import HeightMap, board
from signgen.replay.measure import Extent, extents
from signgen.replay.motion import ARC_CCW, ARC_CW, Motions
from signgen.replay.motion import RAPID as READ_RAPID
from signgen.replay.pieces import G17, chorded
from signgen.shop.load import load_shop
from signgen.shop.materials import Machine
from signgen.shop.tools import Tool
from signgen.spec.check_spec import NONE_SAID, CheckSpec, FixingSpec, read_check_spec
from signgen.user_file import MOST_PROGRAM_BYTES, read_bytes, shown

CHORD_MM = 0.01
"""How far the chords of an arc in an upright plane may leave it where only time is reckoned."""

STEEP_RATIO = 0.1
"""Across over down; below it a move counts as going straight down."""

_CHANGE = re.compile(r"[mM][ \t]*0*[ \t]*6")

FRESH_MM = 0.01
"""A place that is lower than before by more has been cut."""


def check_files(
    paths: Sequence[str], asked: Mapping[str, object], tools: Sequence[str], fixings: FixingSpec = NONE_SAID
) -> Judged:
    """The programs in some files, to be run one after the other on one board.

    `asked` are the options of `spec.check_spec.OF_PROGRAMS`; `tools` one cutter in words for each stretch between
    changes of cutter, in the order of use, or one for all.

    Raises: AskError with every problem at once; ShopError when the shop's data is wrong.
    """
    shop_file = asked.get("shop")
    shop = load_shop(Path(str(shop_file)) if shop_file else None)
    problems: list[Problem] = []
    texts = _texts(paths, problems)
    spec: CheckSpec | None = None
    try:
        spec = read_check_spec({key: value for key, value in asked.items() if key != "shop"}, tools, shop)
    except AskError as error:
        problems += error.problems
    if problems or spec is None:
        raise AskError(problems)
    case = make_case(
        drawing=None,
        stock=spec.stock,
        zero=spec.zero,
        machine=spec.machine,
        material=spec.material,
        programs=_programs(texts, spec.tools),
        breakthrough_mm=spec.breakthrough_mm,
        tolerance_mm=0.0,
        cell_mm=fixings.cell_mm,
    )
    case = replace(case, fixings=fixings_of(fixings, case.zero))
    return Judged(path=", ".join(paths), case=case, report=judge(case), survey=survey_of(case))


def _texts(paths: Sequence[str], problems: list[Problem]) -> dict[str, str]:
    found: dict[str, str] = {}
    advice = Message("checking.name_program_or_folder")
    for path in paths:
        if path in found:
            problems.append(
                Problem(where=path, what=Message("checking.named_twice"), remedy=Message("checking.name_each_once"))
            )
            continue
        try:
            found[path] = read_bytes(path, shown(path), MOST_PROGRAM_BYTES, remedy=advice).decode("latin-1")
        except AskError as error:
            problems += error.problems
    return found


def _programs(texts: Mapping[str, str], tools: Sequence[Tool]) -> list[tuple[str, str, Tool]]:
    """(file, text, tool) for each stretch between changes of cutter. Raises: AskError when tools are too few or too
    many."""
    stretches = [(file, text, number) for file, text in texts.items() for number in _cutters(text)]
    if len(tools) == 1 and len({number for _, _, number in stretches}) == 1:
        tools = list(tools) * len(stretches)
    if len(tools) != len(stretches):
        in_turn = tuple(f"{file}{f' T{number}' if number else ''}" for file, _, number in stretches)
        raise AskError.at(
            "tool",
            Message("checking.cutters_given", count=len(tools), wanted=len(stretches), in_turn=in_turn),
            Message("checking.give_tool_for_each"),
        )
    return [(file, text, tool) for (file, text, _), tool in zip(stretches, tools, strict=True)]


def _cutters(text: str) -> tuple[int, ...]:
    """The T numbers in turn; texts without M6 need not be read for that."""
    if not _CHANGE.search(text):
        return (0,)
    return cutters_in_turn(replays_of(text, 1, from_elsewhere=True)[0])


def survey_of(case: Case) -> Survey:
    """What the programs of a case do, in figures."""
    before = board(case.stock, case.ideal.grid.cell_mm)
    programs = []
    for number, after in enumerate(case.boards):
        programs.append(_program(case, number, before, after))
        before = after
    tips = [program.tip for program in programs if program.tip]
    heights = case.boards[-1].z_mm
    through = heights <= THROUGH_MM
    cut = ~through & (heights < np.float32(case.stock.thickness_mm - FRESH_MM))
    return Survey(
        stock=case.stock,
        zero=case.zero,
        material=case.material,
        machine=case.machine,
        cell_mm=case.ideal.grid.cell_mm,
        programs=tuple(programs),
        way_mm=_ways(tips),
        left_mm=float(heights[cut].min()) if cut.any() else None,
        through_mm2=float(through.sum()) * case.ideal.grid.cell_mm**2,
    )


def _ways(tips: Sequence[Extent]) -> tuple[float, float, float]:
    """X and Y over all programs, which share one zero; Z is set again for each cutter."""
    if not tips:
        return (0.0, 0.0, 0.0)
    x, y = (
        max(getattr(tip, axis)[1] for tip in tips) - min(getattr(tip, axis)[0] for tip in tips)
        for axis in ("x_mm", "y_mm")
    )
    return (x, y, max(tip.z_mm[1] - tip.z_mm[0] for tip in tips))


def _program(case: Case, number: int, before: HeightMap, after: HeightMap) -> ProgramSurvey:
    tested, top = case.programs[number], case.stock.thickness_mm
    motions, sunk = tested.replay.motions, case.cuts[number].below(top - FRESH_MM)
    taken = time_of(motions, case.machine, tested.replay.dwell_s if tested.cutters == 1 else 0.0)
    cut = deepest = speeds = feeds = plunges = None
    if len(sunk):
        k, (low_x, low_y, low_z) = sunk.lowest()
        ends = np.concatenate([sunk.start_mm, sunk.end_mm])
        reach = np.tile(sunk.radii_mm(tested.tool, top).max(axis=1), 2)[:, None]
        least, most = (ends[:, :2] - reach).min(axis=0), (ends[:, :2] + reach).max(axis=0)
        cut = ((float(least[0]), float(most[0])), (float(least[1]), float(most[1])))
        deepest = Deepest(depth_mm=top - low_z, line=int(sunk.line[k]), place_mm=(low_x, low_y))
        step = sunk.end_mm - sunk.start_mm
        down = (step[:, 2] < 0) & (np.hypot(step[:, 0], step[:, 1]) < STEEP_RATIO * -step[:, 2])
        feed = motions.feed_mm_per_min[sunk.motion]
        speeds = _range(np.abs(motions.spindle_rpm[sunk.motion]), motions.spindle_rpm[sunk.motion] != 0)
        feeds, plunges = _range(feed, ~down), _range(feed, down)
    kinds = motions.kind
    return ProgramSurvey(
        file=tested.file,
        number=int(motions.tool[-1]) if len(motions) else 0,
        tool=tested.tool,
        lines=tested.replay.line_count,
        rapids=int((kinds == READ_RAPID).sum()),
        straights=int((kinds != READ_RAPID).sum() - ((kinds == ARC_CW) | (kinds == ARC_CCW)).sum()),
        arcs=int(((kinds == ARC_CW) | (kinds == ARC_CCW)).sum()),
        tip=extents(motions),
        cut=cut,
        deepest=deepest,
        speeds=speeds,
        feeds=feeds,
        plunges=plunges,
        minutes=taken.minutes if np.isfinite(taken.minutes) and not tested.replay.faults else None,
        cut_length_mm=taken.cut_length_mm,
        travel_length_mm=taken.travel_length_mm,
        removed_cm3=_removed_cm3(before, after),
    )


def _range(values: NDArray[np.float64], chosen: NDArray[np.bool_]) -> Range | None:
    return (float(values[chosen].min()), float(values[chosen].max())) if chosen.any() else None


def _removed_cm3(before: HeightMap, after: HeightMap) -> float:
    """Of the board alone, not of what lies below it."""
    gone = np.maximum(before.z_mm, 0).sum(dtype=np.float64) - np.maximum(after.z_mm, 0).sum(dtype=np.float64)
    return float(gone) * after.cell_mm**2 / 1000


def time_of(motions: Motions, machine: Machine, dwell_s: float) -> Estimate:
    """Time and lengths of motions as they were read; infinite where a feed is missing."""
    if not len(motions):
        return Estimate(minutes=dwell_s / 60, cut_length_mm=0.0, travel_length_mm=0.0)
    start = tuple(motions.start_mm[0].tolist())
    if ((motions.kind != READ_RAPID) & (motions.feed_mm_per_min <= 0)).any():
        return Estimate(minutes=np.inf, cut_length_mm=0.0, travel_length_mm=0.0)
    return estimate(moves_of(motions), machine, start, dwell_s)


def moves_of(motions: Motions) -> Moves:
    """The same motions as the assembly makes them: arcs in the plane of G17 as arcs, in upright planes as chords."""
    pieces = chorded(motions, np.arange(len(motions)), CHORD_MM, upright_only=True)
    owner = pieces.owner
    kinds = np.full(len(motions), LINE, np.uint8)
    level = motions.plane == G17
    for read, made in ((READ_RAPID, RAPID), (ARC_CW, CW), (ARC_CCW, CCW)):
        kinds[(motions.kind == read) & (level | (read == READ_RAPID))] = made
    return Moves(
        kinds=kinds[owner],
        ends_mm=pieces.end_mm,
        centres_mm=motions.centre_mm[owner],
        feeds_mm_per_min=motions.feed_mm_per_min[owner],
    )
