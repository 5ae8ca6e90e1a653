"""What programs from elsewhere do, in figures: what a careful operator asks before pressing start."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from signgen.messages import Message, Mm, Num, Sides, Typed
from signgen.messages.wording import Wording
from signgen.numbers import time_parts
from signgen.replay.measure import Extent
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

Range = tuple[float, float]


class Deepest(Struct, frozen=True, kw_only=True):
    """How far below the board's top a tip goes at a feed, the line and the place (board coordinates)."""

    depth_mm: float
    line: int
    place_mm: tuple[float, float]


class ProgramSurvey(Struct, frozen=True, kw_only=True):
    """One cutter's work. `tip` is where its tip goes, in program coordinates; `cut` the part of the board that its
    whole width meets (board coordinates), None when it cuts nothing; `feeds` and `plunges` mm/min in the board,
    across and straight down; `minutes` None where the text could not be read throughout."""

    file: str
    number: int
    tool: Tool
    lines: int
    rapids: int
    straights: int
    arcs: int
    tip: Extent | None
    cut: tuple[Range, Range] | None
    deepest: Deepest | None
    speeds: Range | None
    feeds: Range | None
    plunges: Range | None
    minutes: float | None
    cut_length_mm: float
    travel_length_mm: float
    removed_cm3: float


class Survey(Struct, frozen=True, kw_only=True):
    """`way_mm`: how far the tip goes along each axis over all programs. `left_mm`: the thinnest wood left where the
    board was cut and not cut through, None when there is none. `through_mm2`: area that was cut through."""

    stock: Stock
    zero: WorkZero
    material: Material
    machine: Machine
    cell_mm: float
    programs: tuple[ProgramSurvey, ...]
    way_mm: tuple[float, float, float]
    left_mm: float | None
    through_mm2: float

    @property
    def minutes(self) -> float | None:
        """Of all programs, without the operator's time."""
        each = [program.minutes for program in self.programs]
        return None if None in each else sum(minutes or 0.0 for minutes in each)

    @property
    def fits(self) -> bool:
        """Whether the machine reaches as far as the tip goes."""
        return all(way <= travel for way, travel in zip(self.way_mm, self.machine.travel_mm, strict=True))


def survey_lines(survey: Survey, wording: Wording) -> Iterator[str]:
    """For people at a terminal."""
    yield wording(Message("survey.they_do" if len(survey.programs) > 1 else "survey.it_does"))
    rows = list(_rows(survey))
    for program in survey.programs:
        rows.append(("", Message("survey.program", file=program.file, tool=_numbered(program))))
        rows += _program_rows(program, survey.stock)
    width = max(len(wording(Message(f"survey.row.{name}"))) for name, _ in rows if name and name != "more")
    for name, said in rows:
        if not name:
            yield f"  {wording(said)}"
            continue
        label = wording(Message(f"survey.row.{name}")) if name != "more" else ""
        yield f"    {label:<{width}} {wording(said)}"


Row = tuple[str, Message]
"""The key of a row's label, 'more' for none and '' for a heading; and what it says."""


def _rows(survey: Survey) -> Iterator[Row]:
    stock, machine = survey.stock, survey.machine
    board = Sides((stock.width_mm, stock.height_mm, stock.thickness_mm), 2, True)
    yield "board", Message("survey.board", board=board, material=survey.material.label)
    yield "more", Message("survey.zero_top" if survey.zero.z_mm else "survey.zero_bottom", where=_zero(survey))
    ways = tuple(
        Message("survey.way", axis=axis, way=Num(way, 1, True), travel=Mm(travel, 1, True))
        for axis, way, travel in zip("XYZ", survey.way_mm, machine.travel_mm, strict=True)
    )
    yield "machine", Message("survey.fits" if survey.fits else "survey.too_small", machine=machine.label, ways=ways)
    if len(survey.programs) > 1 and survey.minutes is not None:
        yield "time", Message("survey.time_in_all", span=span_said(survey.minutes))
    yield "leaves", _left(survey)


def _numbered(program: ProgramSurvey) -> Message:
    tool = program.tool.called
    return Message("survey.tool_numbered", tool=tool, number=program.number) if program.number else tool


def _program_rows(program: ProgramSurvey, stock: Stock) -> Iterator[Row]:
    counts = {"rapids": program.rapids, "straights": program.straights, "arcs": program.arcs}
    yield "reads", Message("survey.reads", lines=program.lines, **counts)
    if program.tip is None:
        return
    tip = program.tip
    goes = tuple(
        Message("survey.goes", axis=axis, low=Typed(low, 3, True), high=Typed(high, 3, True))
        for axis, (low, high) in zip("XYZ", (tip.x_mm, tip.y_mm, tip.z_mm), strict=True)
    )
    yield "tip", Message("survey.tip", goes=goes)
    if program.cut is None or program.deepest is None:
        yield "cuts", Message("survey.cuts_nothing")
    else:
        (x0, x1), (y0, y1) = program.cut
        across = {"x0": Num(x0, 1, True), "x1": Num(x1, 1, True), "width": Mm(stock.width_mm, 1, True)}
        along = {"y0": Num(y0, 1, True), "y1": Num(y1, 1, True), "height": Mm(stock.height_mm, 1, True)}
        yield "cuts", Message("survey.cuts", **across, **along)
        yield "deepest", _deepest(program.deepest, stock.thickness_mm)
        yield "runs", Message("list.plain", these=tuple(_runs(program)))
        yield "removes", Message("survey.removes", volume=Num(program.removed_cm3, 2, True))
    if program.minutes is not None:
        fed, rapid = Mm(program.cut_length_mm, 0), Mm(program.travel_length_mm, 0)
        yield "time", Message("survey.time", span=span_said(program.minutes), feed=fed, rapid=rapid)


def span_said(minutes: float) -> Message:
    """A time to plan by."""
    parts = zip(("h", "min", "s"), time_parts(minutes), strict=True)
    values = {unit: value for unit, value in parts if value}
    return Message(f"span.{'_'.join(values)}", **values)


def _zero(survey: Survey) -> Message:
    x, y = survey.zero.x_mm, survey.zero.y_mm
    if (x, y) == (0.0, 0.0):
        return Message("survey.at_corner")
    return Message("survey.from_corner", right=Mm(x, 2, True), above=Mm(y, 2, True))


def _deepest(deepest: Deepest, thickness_mm: float) -> Message:
    x, y = deepest.place_mm
    through = deepest.depth_mm - thickness_mm
    place = Message("place.at", x=Num(x, 1), y=Num(y, 1))
    said = Message("survey.deepest", depth=Mm(deepest.depth_mm, 3, True), line=deepest.line, place=place)
    by = Mm(abs(through), 3, True)
    return Message("survey.deepest_through" if through > 0 else "survey.deepest_above", said=said, by=by)


def _runs(program: ProgramSurvey) -> Iterator[Message]:
    def said(values: Range) -> Message:
        low, high = (round(value) for value in values)
        return (
            Message("spindle_ready.at", speed=low) if low == high else Message("spindle_ready.said", low=low, high=high)
        )

    yield Message("survey.turns", speed=said(program.speeds)) if program.speeds else Message("survey.spindle_off")
    if program.feeds:
        yield Message("survey.across", feed=said(program.feeds))
    if program.plunges:
        yield Message("survey.straight_down", feed=said(program.plunges))


def _left(survey: Survey) -> Message:
    area = Num(survey.through_mm2 / 100, 1, True)
    through = Message("survey.cut_through", area=area) if survey.through_mm2 else Message("survey.nothing_through")
    if survey.left_mm is None:
        return through
    return Message("survey.thinnest", through=through, left=Mm(survey.left_mm, 2, True))


def survey_data(survey: Survey) -> dict[str, object]:
    """The same for programs; the words are those of report.json where it has them."""
    return {
        "stock": {
            "width_mm": survey.stock.width_mm,
            "height_mm": survey.stock.height_mm,
            "thickness_mm": survey.stock.thickness_mm,
            "datum_x_mm": survey.zero.x_mm,
            "datum_y_mm": survey.zero.y_mm,
            "z_zero": "top" if survey.zero.z_mm else "bottom",
            "material": survey.material.name,
        },
        "machine": {"name": survey.machine.name, "way_mm": list(survey.way_mm), "fits": survey.fits},
        "minutes": survey.minutes,
        "least_left_mm": survey.left_mm,
        "through_mm2": survey.through_mm2,
        "programs": [_program_data(program) for program in survey.programs],
    }


def _program_data(program: ProgramSurvey) -> dict[str, object]:
    tip, cut, deepest = program.tip, program.cut, program.deepest
    return {
        "file": program.file,
        "tool": {
            "kind": program.tool.kind,
            "diameter_mm": program.tool.diameter_mm,
            "angle_deg": program.tool.angle_deg,
            "tip_mm": program.tool.tip_mm,
            "number": program.number,
        },
        "lines": program.lines,
        "rapids": program.rapids,
        "straights": program.straights,
        "arcs": program.arcs,
        "extent": tip and {"x_mm": list(tip.x_mm), "y_mm": list(tip.y_mm), "z_mm": list(tip.z_mm)},
        "cut": cut and {"x_mm": list(cut[0]), "y_mm": list(cut[1])},
        "deepest": deepest and {"depth_mm": deepest.depth_mm, "line": deepest.line, "place_mm": list(deepest.place_mm)},
        "spindle_rpm": program.speeds and list(program.speeds),
        "feed_mm_per_min": program.feeds and list(program.feeds),
        "plunge_mm_per_min": program.plunges and list(program.plunges),
        "minutes": program.minutes,
        "cut_length_mm": program.cut_length_mm,
        "travel_length_mm": program.travel_length_mm,
        "removed_cm3": program.removed_cm3,
    }
