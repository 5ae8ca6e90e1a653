"""The shop from its files: what ships with signgen, and a file of the user's own that adds to it or replaces rows.

A user's file holds tables [tool.NAME], [material.NAME] and [machine.NAME], laid out as in `data/*.toml`. Its rows
come before those that ship, and a row of the same name takes the place of the other as a whole. With
`only-these-tools = true` at its top the cutters that ship are left out, so that the planner takes none that is not
at hand.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path
from typing import Protocol, TypeVar

from signgen.errors import AskError, Problem, ShopError
from signgen.option import did_you_mean, word
from signgen.shop.collets import SERIES
from signgen.shop.manner import EXTRACTIONS, PROGRAM_ENDS, Manner
from signgen.shop.materials import Machine, Material
from signgen.shop.rows import Row
from signgen.shop.shop import Shop
from signgen.shop.tools import V_BIT_ANGLES, Tool, ToolKind
from signgen.units import NOT_NEGATIVE, POSITIVE, Limits

SHIPPED = ("tools.toml", "materials.toml", "machines.toml")
_DRILL_ANGLES = Limits(least=30, greatest=180)
_RATIO = Limits(least=0, greatest=1, open_below=True)
_RPM = Limits(least=0, greatest=100_000, open_below=True)
_FEED = Limits(least=0, greatest=100_000, open_below=True)
_FLUTES = Limits(least=1, greatest=12)
_ENTRY = Limits(least=0, greatest=45, open_below=True)
_SECONDS = Limits(least=0, greatest=120)
_WARM_UP = Limits(least=0, greatest=1800)
_KINDS: tuple[ToolKind, ...] = ("v-bit", "end-mill", "ball-nose", "drill")
_NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


class _Named(Protocol):
    @property
    def name(self) -> str: ...


N = TypeVar("N", bound=_Named)


def load_shop(user_file: Path | None = None) -> Shop:
    """Cutters, materials and machines; the user's rows first, then those that ship.

    Raises: ShopError with every problem of every file (`where` is the file and the key); AskError when the user's
    file cannot be read.
    """
    problems: list[Problem] = []
    shipped = [_tables(files("signgen.shop").joinpath("data", name).read_bytes(), name, problems) for name in SHIPPED]
    own = {} if user_file is None else _tables(_bytes_of(user_file), user_file.name, problems)
    only_own = own.pop("only-these-tools", False) if own else False
    where = user_file.name if user_file else ""
    if not isinstance(only_own, bool):
        problems.append(Problem(where=f"{where}: only-these-tools", what="It is neither true nor false."))
    sources = [(where, own), *zip(SHIPPED, shipped, strict=True)]
    for file, table in sources:
        for key in table:
            if key not in ("tool", "material", "machine"):
                remedy = did_you_mean(key, ("tool", "material", "machine", "only-these-tools"))
                problems.append(Problem(where=f"{file}: {key}", what="There is no such table.", remedy=remedy))
    tool_sources = sources[:1] if only_own is True else sources
    tools = _rows(tool_sources, "tool", _tool, problems)
    materials = _rows(sources, "material", _material, problems)
    machines = _rows(sources, "machine", _machine, problems)
    if not problems and not any(tool.kind == "v-bit" for tool in tools):
        problems.append(Problem(where=where, what="The shop has no V-bit.", remedy='Add one with kind = "v-bit".'))
    if problems:
        raise ShopError(problems)
    path = None if user_file is None else str(user_file.expanduser().absolute())
    return Shop(tools=tools, materials=materials, machines=machines, user_file=path)


def _bytes_of(path: Path) -> bytes:
    try:
        return path.expanduser().read_bytes()
    except OSError as error:
        raise AskError.at("shop", f"{path} cannot be read: {error.strerror}.", "Look at the path.") from None


def _tables(raw: bytes, where: str, problems: list[Problem]) -> dict[str, object]:
    try:
        return tomllib.loads(raw.decode("utf-8-sig"))
    except UnicodeDecodeError:
        problems.append(Problem(where=where, what="The file is not UTF-8 text.", remedy="Save it as UTF-8."))
    except tomllib.TOMLDecodeError as error:
        problems.append(Problem(where=where, what=f"The file is not valid TOML: {error}.", remedy="Mend that line."))
    return {}


def _rows(
    sources: list[tuple[str, dict[str, object]]], kind: str, make: Callable[[str, Row], N | None],
    problems: list[Problem],
) -> tuple[N, ...]:  # fmt: skip
    """The good rows of one kind, the first of each name; the problems of the bad ones are added."""
    found: dict[str, N | None] = {}
    for file, tables in sources:
        table = tables.get(kind, {})
        if not isinstance(table, dict):
            problems.append(Problem(where=f"{file}: {kind}", what="It is not a table.", remedy=f"Write [{kind}.NAME]."))
            continue
        for name, raw in table.items():
            where = f"{file}: {kind}.{name}"
            if not isinstance(raw, dict):
                problems.append(Problem(where=where, what="It is not a table.", remedy=f"Write [{kind}.NAME]."))
            elif not _NAME.fullmatch(name):
                remedy = "Use a-z, 0-9 and single hyphens; it becomes part of a file's name."
                problems.append(Problem(where=where, what=f"'{name}' is not a name.", remedy=remedy))
            elif name not in found:
                row = Row(where, raw)
                found[name] = make(name, row)
                problems += row.problems
    return tuple(row for row in found.values() if row is not None)


def _tool(name: str, row: Row) -> Tool | None:
    kind = row.choice("kind", _KINDS)
    diameter, shank = row.length("diameter", POSITIVE), row.length("shank", POSITIVE)
    length, stickout = row.length("cutting-length", POSITIVE), row.length("stick-out", POSITIVE)
    flutes = row.count("flutes", _FLUTES)
    pointed = kind in ("v-bit", "drill")
    angle = row.angle("angle", V_BIT_ANGLES if kind == "v-bit" else _DRILL_ANGLES) if pointed else None
    tip = row.length("tip", NOT_NEGATIVE, 0.0) if kind == "v-bit" else 0.0
    if kind is None:
        row.leave("angle", "tip")
    plunges = row.flag("can-plunge", True)
    source = row.text("source")
    if diameter is not None and tip is not None and tip >= diameter:
        what = f"{tip:g} mm is not less than the diameter of {diameter:g} mm."
        row.add("tip", what, "Give the flat at the very tip.")
    if length is not None and stickout is not None and stickout < length:
        what = f"{stickout:g} mm is less than the cutting length of {length:g} mm."
        row.add("stick-out", what, "Measure from the collet to the tip.")
    good = row.finish()
    if kind is None or diameter is None or shank is None or length is None or stickout is None or flutes is None:
        return None
    if tip is None or plunges is None or source is None or not good:
        return None
    return Tool(
        name=name, kind=next(each for each in _KINDS if each == kind), diameter_mm=diameter, shank_mm=shank,
        cutting_length_mm=length, flutes=flutes, angle_deg=angle, tip_mm=tip, stickout_mm=stickout,
        can_plunge=plunges, source=source,
    )  # fmt: skip


def _material(name: str, row: Row) -> Material | None:
    label, grain = row.text("label"), row.flag("grain")
    colour, ground = row.colour("colour"), row.colour("ground")
    cautions = row.sentences("cautions")
    chip, rpm = row.sourced("chip-load-ratio", _RATIO), row.sourced("spindle-rpm", _RPM)
    stepdown = row.sourced("stepdown-ratio", Limits(least=0, greatest=3, open_below=True))
    stepover = row.sourced("stepover-ratio", _RATIO)
    v_step, peck = row.sourced("v-step", POSITIVE), row.sourced("peck-ratio", POSITIVE)
    entry = row.sourced("entry-angle", _ENTRY)
    plunge, ramp = row.sourced("plunge-ratio", _RATIO), row.sourced("ramp-ratio", _RATIO)
    good = row.finish()
    if label is None or grain is None or colour is None or ground is None or cautions is None or chip is None:
        return None
    if rpm is None or stepdown is None or stepover is None or v_step is None or peck is None or entry is None:
        return None
    if plunge is None or ramp is None or not good:
        return None
    return Material(
        name=name, label=label, chip_load_ratio=chip, spindle_rpm=rpm, stepdown_ratio=stepdown,
        stepover_ratio=stepover, v_step_mm=v_step, peck_ratio=peck, entry_deg=entry, plunge_ratio=plunge,
        ramp_ratio=ramp, colour_rgb=colour, ground_rgb=ground, grain=grain, cautions=cautions,
        source="; ".join(row.sources),
    )  # fmt: skip


def _machine(name: str, row: Row) -> Machine | None:
    label, source = row.text("label"), row.text("source")
    travel = row.numbers("travel", 3, POSITIVE)
    feed, rapid = row.numbers("top-feed", 3, _FEED), row.numbers("rapid", 3, _FEED)
    acceleration = row.numbers("acceleration", 3, _FEED)
    corner = row.length("corner-deviation", POSITIVE)
    rpm = row.numbers("spindle-rpm", 2, _RPM)
    start = row.number("spindle-start", _SECONDS)
    collet = row.count("collet", Limits(least=1, greatest=100))
    dialect = row.read("dialect", word, "plain")
    manner = _manner(row)
    if rpm and rpm[0] > rpm[1]:
        row.add("spindle-rpm", f"{rpm[0]:g} is more than {rpm[1]:g}.", "Give the slowest speed first.")
    if collet and collet not in SERIES:
        known = ", ".join(f"{each}" for each in SERIES)
        row.add("collet", f"There is no collet size {collet} in ISO 15488.", f"Choose from: {known}.")
    good = row.finish()
    if label is None or source is None or travel is None or feed is None or rapid is None or acceleration is None:
        return None
    if corner is None or rpm is None or start is None or collet is None or not good:
        return None
    assert dialect is not None
    return Machine(
        name=name, label=label, travel_mm=(travel[0], travel[1], travel[2]),
        top_feed_mm_per_min=(feed[0], feed[1], feed[2]), rapid_mm_per_min=(rapid[0], rapid[1], rapid[2]),
        acceleration_mm_per_s2=(acceleration[0], acceleration[1], acceleration[2]), corner_deviation_mm=corner,
        spindle_min_rpm=rpm[0], spindle_max_rpm=rpm[1], spindle_start_s=start, collet_series=collet, source=source,
        dialect=dialect, manner=manner,
    )  # fmt: skip


def _manner(row: Row) -> Manner:
    """How the machine's control wants its programs framed; what is left out is as usual."""
    end, extraction = row.choice("program-end", PROGRAM_ENDS, "m2"), row.choice("extraction", EXTRACTIONS, "none")
    return Manner(
        line_numbers=row.flag("line-numbers", False) or False,
        percent_lines=row.flag("percent-lines", False) or False,
        program_end=next((each for each in PROGRAM_ENDS if each == end), "m2"),
        extraction=next((each for each in EXTRACTIONS if each == extraction), "none"),
        warm_up_s=row.number("warm-up", _WARM_UP, 0.0) or 0.0,
    )
