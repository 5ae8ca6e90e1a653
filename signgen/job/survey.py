"""What programs from elsewhere do, in figures: what a careful operator asks before pressing start."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from signgen.numbers import figure, span
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


def survey_lines(survey: Survey) -> Iterator[str]:
    """For people at a terminal."""
    stock, machine = survey.stock, survey.machine
    yield "What they do" if len(survey.programs) > 1 else "What it does"
    yield _row("board", f"{_by(stock.width_mm, stock.height_mm, stock.thickness_mm)} mm, {survey.material.label}")
    yield _row("", f"X0 Y0 {_zero(survey)}; Z0 at its {'top' if survey.zero.z_mm else 'bottom'}")
    reach = "fits" if survey.fits else "IS TOO SMALL"
    ways = ", ".join(
        f"{axis} {figure(way)} of {figure(travel)}"
        for axis, way, travel in zip("XYZ", survey.way_mm, machine.travel_mm, strict=True)
    )
    yield _row("machine", f"{machine.label} {reach}: {ways} mm")
    if len(survey.programs) > 1 and survey.minutes is not None:
        yield _row("time", f"{span(survey.minutes)} in all, without changes of cutter")
    yield _row("leaves", _left(survey))
    for program in survey.programs:
        yield from _program_lines(program, stock)


def _program_lines(program: ProgramSurvey, stock: Stock) -> Iterator[str]:
    yield f"  {program.file}: {program.tool.label}{f' (T{program.number})' if program.number else ''}"
    yield _row(
        "reads",
        f"{program.lines:,} lines: {program.rapids:,} rapids, {program.straights:,} lines, {program.arcs:,} arcs",
    )
    if program.tip is None:
        return
    tip = program.tip
    goes = ", ".join(
        f"{axis} {figure(low, 3)} to {figure(high, 3)}"
        for axis, (low, high) in zip("XYZ", (tip.x_mm, tip.y_mm, tip.z_mm), strict=True)
    )
    yield _row("tip", f"{goes} (as the program counts)")
    if program.cut is None or program.deepest is None:
        yield _row("cuts", "nothing: it never comes below the board's top")
    else:
        (x0, x1), (y0, y1) = program.cut
        yield _row(
            "cuts",
            f"from {figure(x0)} to {figure(x1)} of {figure(stock.width_mm)} mm from the board's left side, "
            f"from {figure(y0)} to {figure(y1)} of {figure(stock.height_mm)} mm from its lower side",
        )
        yield _row("deepest", _deepest(program.deepest, stock.thickness_mm))
        yield _row("runs", _runs(program))
        yield _row("removes", f"{figure(program.removed_cm3, 2)} cm3 of wood")
    if program.minutes is not None:
        yield _row(
            "time",
            f"{span(program.minutes)}: {figure(program.cut_length_mm, 0)} mm at a feed, "
            f"{figure(program.travel_length_mm, 0)} mm of rapids",
        )


def _row(name: str, said: str) -> str:
    return f"    {name:<8} {said}"


def _by(*lengths: float) -> str:
    return " x ".join(figure(length, 2) for length in lengths)


def _zero(survey: Survey) -> str:
    x, y = survey.zero.x_mm, survey.zero.y_mm
    if (x, y) == (0.0, 0.0):
        return "at its bottom left corner"
    return f"{figure(x, 2)} mm right of and {figure(y, 2)} mm above its bottom left corner"


def _deepest(deepest: Deepest, thickness_mm: float) -> str:
    x, y = deepest.place_mm
    through = deepest.depth_mm - thickness_mm
    said = f"{figure(deepest.depth_mm, 3)} mm below the board's top, line {deepest.line}, at ({x:.1f}, {y:.1f})"
    if through > 0:
        return f"{said}: through, and {figure(through, 3)} mm into what lies below"
    return f"{said}: {figure(-through, 3)} mm above its bottom"


def _runs(program: ProgramSurvey) -> str:
    def said(values: Range) -> str:
        low, high = (f"{value:,.0f}" for value in values)
        return low if low == high else f"{low} to {high}"

    parts = [f"{said(program.speeds)} rpm" if program.speeds else "with the spindle off"]
    if program.feeds:
        parts.append(f"{said(program.feeds)} mm/min across")
    if program.plunges:
        parts.append(f"{said(program.plunges)} mm/min straight down")
    return ", ".join(parts)


def _left(survey: Survey) -> str:
    through = f"{figure(survey.through_mm2 / 100)} cm2 cut through" if survey.through_mm2 else "nothing cut through"
    least = "" if survey.left_mm is None else f"; the thinnest wood elsewhere is {figure(survey.left_mm, 2)} mm"
    return through + least


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
