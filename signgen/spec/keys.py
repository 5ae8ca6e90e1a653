"""The one table of everything that can be asked for.

The command line builds its options from KEYS, and a sign file has the same words as its keys, so that neither knows
something that the other does not. Borders and hole patterns bring their own. Importing this must stay cheap:
`signgen make --help` reads it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from msgspec.structs import replace

from signgen.borders import BORDERS
from signgen.holes import PATTERNS
from signgen.holes.form import FORM_OPTIONS
from signgen.option import Option
from signgen.shop.tools import V_BIT_ANGLES
from signgen.spec.cutters import goes_by_name
from signgen.spec.lettering_keys import LETTERING, LINE
from signgen.spec.trim_keys import TRIM
from signgen.tolerances import DEFAULT_TOLERANCE_MM
from signgen.units import NOT_NEGATIVE, Limits

LANGUAGES = ("en", "de")
"""Of everything that people read; each has its table in signgen/words."""

NO_TEMPLATE = "none"


def _merged(families: Iterable[tuple[Option, ...]]) -> tuple[Option, ...]:
    """The options of a whole family, each name once; two members that share a name must share the option."""
    found: dict[str, Option] = {}
    for options in families:
        for option in options:
            if found.setdefault(option.name, option) != option:
                raise ValueError(f"two different options are called {option.name}")
    return tuple(found.values())


def _of_family(options: Iterable[Option], field: str) -> tuple[Option, ...]:
    """The options of an open family, written back by the member that has read them: the spec's border, or its holes."""

    def of_member(name: str) -> Callable[[Any], object]:
        return lambda spec: getattr(spec, field).asked().get(name)

    return tuple(replace(option, write=of_member(option.name)) for option in options)


BORDER_KEYS = _of_family(_merged(border.options for border in BORDERS), "border")
HOLE_KEYS = _of_family(_merged(pattern.options for pattern in PATTERNS), "holes")
FORM_KEYS = _of_family(FORM_OPTIONS, "hole_form")

_BORDER_NAMES = ", ".join(f"{b.name}:{b.argument}" if b.argument else b.name for b in BORDERS)
_HOLE_NAMES = ", ".join(f"{p.name}:{p.argument}" if p.argument else p.name for p in PATTERNS)


def _mill_by_diameter(spec: Any, field: str) -> float | None:
    """A figure of the end mill, None when there is none or it is asked for by its name."""
    mill = spec.end_mill
    return None if mill is None or goes_by_name(spec.shop, mill) else getattr(mill, field)


def _if_tabs(spec: Any, value: object) -> object:
    """What is said of tabs, None when there are none."""
    return value if spec.tabs.count or spec.tabs.spacing_mm is not None else None


_SIGN = (
    Option(
        name="text", kind="lines", metavar="TEXT", group="Sign", required=True,
        help="Lines of lettering.",
        write=lambda spec: None if spec.text.own_lines else spec.text.lines,
    ),
    Option(
        name="size", kind="size", metavar="WIDTHxHEIGHT", group="Sign", required=True,
        help="Size of the finished sign, as in 220x140 or 8.5x5.5in; a border of path:FILE has its own.",
        limits=Limits(least=10, greatest=5000),
        write=lambda spec: (spec.width_mm, spec.height_mm),
    ),
    Option(
        name="thickness", kind="length", metavar="LENGTH", group="Sign", required=True,
        help="Thickness of the board as you measured it, not as it is called.", limits=Limits(least=1, greatest=200),
        field="thickness_mm",
    ),
    Option(
        name="material", kind="word", metavar="NAME", group="Sign", default="birch-plywood",
        help="What the board is made of (signgen list materials).",
        write=lambda spec: spec.material.name,
    ),
    Option(
        name="board", kind="size", metavar="WIDTHxHEIGHT", group="Sign",
        help="Size of the board that you have.", otherwise="the least that will do",
        write=lambda spec: spec.board_mm, left_open="the least that will do",
    ),
)  # fmt: skip

_SHAPE = (
    Option(
        name="border", kind="border", metavar="NAME", group="Shape", help=f"Outline of the sign: {_BORDER_NAMES}.",
        otherwise="rectangle, or rounded when corner-radius is given",
        write=lambda spec: spec.border.asked()["border"],
    ),
    *BORDER_KEYS,
)  # fmt: skip

_HOLES = (
    Option(
        name="holes", kind="word", metavar="PATTERN", group="Holes", default="none",
        help=f"Where holes go: {_HOLE_NAMES}.",
        write=lambda spec: spec.holes.asked()["holes"],
    ),
    *HOLE_KEYS,
    *FORM_KEYS,
)  # fmt: skip

_ENGRAVING = (
    Option(
        name="finish", kind="choice", metavar="NAME", group="Engraving",
        choices=("groove", "recess", "raised", "stroke", "through"), default="groove",
        help="How letters are made: groove (by the V-bit), recess (flat, sunk into the face), raised (they stand in a "
        "panel that is sunk), stroke (single lines of one depth), through (cut right through the board).",
        write=lambda spec: spec.finish,
    ),
    Option(
        name="depth", kind="length", metavar="LENGTH", group="Engraving",
        help="Greatest depth of the letters; wider ones get a flat floor there.",
        otherwise="0.4 of the thickness, as far as the V-bit reaches; flat floors 0.25 of it, at most 3 mm; "
        "strokes 1 mm",
        write=lambda spec: None if spec.finish == "through" and spec.panel is None else spec.depth_mm,
        left_open="the letters are cut through",
    ),
    Option(
        name="sharp-corners", kind="flag", metavar="true", group="Engraving", default="false",
        help="Let the V-bit clean the corners of flat floors that the end mill leaves round.",
        write=lambda spec: spec.sharp_corners,
    ),
    Option(
        name="panel", kind="length", metavar="INSET", group="Engraving", limits=Limits(least=1, greatest=1000),
        help="Sink a panel this far inside the edge, with a rim standing all round.",
        otherwise="none; with raised letters 0.05 of the shorter side",
        write=lambda spec: spec.panel and spec.panel.inset_mm, left_open="none",
    ),
    Option(
        name="panel-depth", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.1, greatest=150),
        help="Depth of the panel's floor below the face.", otherwise="that of the letters",
        write=lambda spec: spec.panel and spec.panel.depth_mm, left_open="no panel",
    ),
    Option(
        name="panel-radius", kind="length", metavar="LENGTH", group="Engraving", limits=NOT_NEGATIVE,
        help="Radius of the panel's corners.", otherwise="4 mm",
        write=lambda spec: spec.panel and spec.panel.radius_mm, left_open="no panel",
    ),
    Option(
        name="bridges", kind="count", metavar="N", group="Engraving", limits=Limits(least=1, greatest=8),
        help="Hold every inside of letters that are cut through by this many bars of wood.", otherwise="none",
        write=lambda spec: spec.bridges and spec.bridges.count, left_open="none",
    ),
    Option(
        name="bridge-width", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.5, greatest=50),
        help="Width of those bars.", otherwise="a quarter of the thickness, at least 2.5 mm",
        write=lambda spec: spec.bridges and spec.bridges.width_mm, left_open="no bridges", needs="bridges",
    ),
    Option(
        name="ridge", kind="length", metavar="LENGTH", group="Engraving", default=0.1,
        help="Height of the ridges that the V-bit may leave where it clears a flat floor.",
        limits=Limits(least=0.005, greatest=2),
        field="ridge_mm",
    ),
    *TRIM,
    Option(
        name="tolerance", kind="length", metavar="LENGTH", group="Engraving", default=DEFAULT_TOLERANCE_MM,
        help="How far an engraved wall may lie from the letter's outline.", limits=Limits(least=0.001, greatest=0.5),
        write=lambda spec: spec.tolerances.total_mm,
    ),
)  # fmt: skip

_CUTTERS = (
    Option(
        name="v-bit", kind="angle", metavar="ANGLE", group="Cutters", limits=V_BIT_ANGLES,
        help="Full angle of the V-bit, in degrees.", otherwise="90, or the shop's first V-bit",
        write=lambda spec: spec.v_bit.angle_deg, replaces=("v-bit-diameter", "v-bit-tip"),
    ),
    Option(
        name="v-bit-diameter", kind="length", metavar="LENGTH", group="Cutters", limits=Limits(least=0.5, greatest=100),
        help="Greatest diameter of the V-bit.", otherwise="the shop's, or 6 mm for an angle that the shop lacks",
        write=lambda spec: spec.v_bit.diameter_mm,
    ),
    Option(
        name="v-bit-tip", kind="length", metavar="LENGTH", group="Cutters", limits=NOT_NEGATIVE,
        help="Diameter of the flat at the V-bit's tip.", otherwise="the shop's, or 0",
        write=lambda spec: spec.v_bit.tip_mm,
    ),
    Option(
        name="end-mill", kind="length", metavar="DIAMETER", group="Cutters", limits=Limits(least=0.5, greatest=50),
        help="Diameter of the end mill to use for everything that the V-bit does not do.",
        otherwise="the fewest of the shop's cutters that can make the sign",
        write=lambda spec: _mill_by_diameter(spec, "diameter_mm"),
        left_open="chosen by the planner", replaces=("end-mill-length", "end-mill-name"),
    ),
    Option(
        name="end-mill-length", kind="length", metavar="LENGTH", group="Cutters",
        help="Cutting length of the end mill.", otherwise="the shop's, or four diameters",
        write=lambda spec: _mill_by_diameter(spec, "cutting_length_mm"),
        left_open="chosen by the planner", needs="end-mill",
    ),
    Option(
        name="end-mill-name", kind="word", metavar="NAME", group="Cutters",
        help="The end mill by its name in the shop (signgen list tools) instead of its diameter, as in down-cut-6.",
        otherwise="by its diameter, or the planner's choice",
        write=lambda spec: spec.end_mill and (spec.end_mill.name if goes_by_name(spec.shop, spec.end_mill) else None),
        left_open="by its diameter, if at all", replaces=("end-mill", "end-mill-length"),
    ),
    Option(
        name="shop", kind="path", metavar="FILE", group="Cutters",
        help="A file of your own cutters, materials and machines (TOML).", otherwise="those that ship with signgen",
        write=lambda spec: spec.shop.user_file, left_open="what ships with signgen",
    ),
)  # fmt: skip

_HOLDING = (
    Option(
        name="tabs", kind="count", metavar="N", group="Holding", default=4, limits=Limits(least=0, greatest=100),
        help="Tabs that hold the sign in the board until you cut them; 0 when tape or screws hold it.",
        otherwise="4, or as many as tab-spacing wants; none with an onion skin",
        write=lambda spec: spec.tabs.count if spec.tabs.spacing_mm is None else None,
        left_open="as many as tab-spacing wants", replaces=("tab-spacing", "onion-skin"),
    ),
    Option(
        name="tab-spacing", kind="length", metavar="LENGTH", group="Holding", limits=Limits(least=20, greatest=2000),
        help="A tab for each such length of the edge, at least three, instead of a number of tabs.",
        otherwise="by their number",
        write=lambda spec: spec.tabs.spacing_mm, left_open="by their number", replaces=("tabs", "onion-skin"),
    ),
    Option(
        name="tab-shape", kind="choice", metavar="SHAPE", group="Holding", choices=("flat", "ramped"), default="flat",
        help="Tabs with upright sides (flat), or with sides that fall at 30 degrees (ramped).",
        write=lambda spec: _if_tabs(spec, "ramped" if spec.tabs.ramped else "flat"), left_open="no tabs", needs="tabs",
    ),
    Option(
        name="tab-width", kind="length", metavar="LENGTH", group="Holding", default=6,
        help="Length of a tab along the edge.", limits=Limits(least=1, greatest=100),
        write=lambda spec: _if_tabs(spec, spec.tabs.width_mm), left_open="no tabs", needs="tabs",
    ),
    Option(
        name="tab-height", kind="length", metavar="LENGTH", group="Holding",
        help="Height of a tab above the board's bottom.", otherwise="a quarter of the thickness, at most 1.5 mm",
        limits=Limits(least=0.2, greatest=100),
        write=lambda spec: _if_tabs(spec, spec.tabs.height_mm), left_open="no tabs", needs="tabs",
    ),
    Option(
        name="onion-skin", kind="length", metavar="LENGTH", group="Holding", limits=Limits(least=0.1, greatest=5),
        help="Leave a skin of this thickness all round instead of tabs, to be cut with a knife and trimmed.",
        otherwise="none: cut right through, but for tabs",
        write=lambda spec: spec.skin_mm or None, left_open="none",
        replaces=("tabs", "tab-spacing", "tab-shape", "tab-width", "tab-height"),
    ),
    Option(
        name="breakthrough", kind="length", metavar="LENGTH", group="Holding", default=0.3,
        help="How far through cuts go into the spoilboard below.", limits=Limits(least=0, greatest=5),
        field="breakthrough_mm",
    ),
)  # fmt: skip

_PASSES = (
    Option(
        name="finish-pass", kind="length", metavar="LENGTH", group="Passes", limits=Limits(least=0.05, greatest=2),
        help="Leave this much on the edge and in bored holes for one last pass of full depth.",
        otherwise="no such pass",
        field="finish_mm", write=lambda spec: spec.finish_mm or None, left_open="none",
    ),
    Option(
        name="milling", kind="choice", metavar="WAY", group="Passes", choices=("climb", "conventional"),
        default="climb",
        help="Which way the cutter goes round the edge and in bored holes; conventional for machines with play.",
        write=lambda spec: "climb" if spec.climb else "conventional",
    ),
)  # fmt: skip

_OWN = "the machine's own, which is off unless its data say so"
_MACHINE = (
    Option(
        name="machine", kind="word", metavar="NAME", group="Machine",
        help="The machine that cuts (signgen list machines).", otherwise="the shop's first",
        write=lambda spec: spec.machine.name,
        replaces=("dialect", "line-numbers", "percent-lines", "program-end", "extraction", "warm-up"),
    ),
    Option(
        name="dialect", kind="word", metavar="NAME", group="Machine",
        help="How the machine's control wants its programs (signgen list dialects).",
        otherwise="the machine's own, which is plain unless its data say otherwise",
        write=lambda spec: spec.dialect,
    ),
    Option(
        name="line-numbers", kind="flag", metavar="true", group="Machine",
        help="Number the lines of the programs (N10, N20 ...).", otherwise=_OWN,
        write=lambda spec: spec.manner.line_numbers,
    ),
    Option(
        name="percent-lines", kind="flag", metavar="true", group="Machine",
        help="Put the programs between two lines that hold only %.", otherwise=_OWN,
        write=lambda spec: spec.manner.percent_lines,
    ),
    Option(
        name="program-end", kind="choice", metavar="WORD", group="Machine", choices=("m2", "m30"),
        help="The word that ends a program: m2 or m30.", otherwise="the machine's own, which is m2 unless it says so",
        write=lambda spec: spec.manner.program_end,
    ),
    Option(
        name="extraction", kind="choice", metavar="WORD", group="Machine", choices=("none", "m7", "m8"),
        help="The word that switches the dust extraction on with the spindle: m7, m8 or none.",
        otherwise="the machine's own, which is none unless it says so",
        write=lambda spec: spec.manner.extraction,
    ),
    Option(
        name="warm-up", kind="number", metavar="SECONDS", group="Machine", limits=Limits(least=0, greatest=1800),
        help="How long the spindle runs up to speed in three steps before the first program cuts.",
        otherwise="the machine's own, which is none unless it says so",
        write=lambda spec: spec.manner.warm_up_s,
    ),
    Option(
        name="origin", kind="choice", metavar="CORNER", group="Machine", choices=("sign", "stock"), default="sign",
        help="Where X0 Y0 lies: bottom left of the finished sign, or of the board (stock).",
        field="origin",
    ),
    Option(
        name="z-zero", kind="choice", metavar="FACE", group="Machine", choices=("bottom", "top"), default="bottom",
        help="Where Z0 lies: the board's bottom, which is the spoilboard's top, or the board's top.",
        field="z_zero",
    ),
    Option(
        name="clamp-height", kind="length", metavar="LENGTH", group="Machine", limits=NOT_NEGATIVE,
        help="How far the highest clamp or screw stands above the board.", otherwise="lower than clearance",
        field="clamp_height_mm", left_open="not said", replaces=("clearance",),
    ),
    Option(
        name="clearance", kind="length", metavar="LENGTH", group="Machine", limits=Limits(least=1, greatest=200),
        help="Height above the board for travel where clamps or screws may be.",
        otherwise="10 mm, or 5 mm over the clamps when clamp-height is given",
        write=lambda spec: spec.clearance_mm,
    ),
    Option(
        name="air-cut", kind="length", metavar="HEIGHT", group="Machine", limits=Limits(least=1, greatest=300),
        help="Write every program a second time, lifted by this much, to be run in the air before the cut.",
        otherwise="no air cut",
        write=lambda spec: spec.air_cut_mm, left_open="none",
    ),
)  # fmt: skip

CELL = Option(
    name="cell", kind="length", metavar="LENGTH", group="Proof", limits=Limits(least=0.02, greatest=0.5),
    help="Size of the cells in which the simulated board is cut and compared with the drawing.",
    otherwise="0.1 to 0.25 mm, by the board and the letters", field="cell_mm",
    left_open="by the board and the letters",
)  # fmt: skip

_PAPERS = (
    Option(
        name="language", kind="choice", metavar="WORD", group="Papers", choices=LANGUAGES, default="en",
        help="Language of the setup sheet, the page with the moves and the summary: en or de.",
        field="language",
    ),
    Option(
        name="template", kind="choice", metavar="PAPER", group="Papers", choices=(NO_TEMPLATE, "a4", "letter"),
        default=NO_TEMPLATE,
        help="Draw a drilling template too, to tape to the wall: the holes at full size on a4 or letter paper.",
        write=lambda spec: spec.template,
    ),
    Option(
        name="sheet-format", kind="choice", metavar="WORD", group="Papers", choices=("html", "pdf", "both"),
        default="html", help="The setup sheet as setup.html, as setup.pdf (needs signgen[pdf]), or both.",
        field="sheet_format",
    ),
    Option(
        name="steps", kind="flag", metavar="true", group="Papers", default="false",
        help="Draw steps.png too: the board after each program.",
        field="steps",
    ),
    Option(
        name="paint", kind="word", metavar="COLOUR", group="Papers",
        help="Paint the letters in the pictures: a name (black, white, red, gold ...) or #rrggbb.",
        otherwise="the bare cut",
        write=lambda spec: spec.paint, left_open="the bare cut",
    ),
)  # fmt: skip

KEYS: tuple[Option, ...] = (
    *_SIGN, *_SHAPE, *LETTERING, *_HOLES, *_ENGRAVING, *_CUTTERS, *_HOLDING, *_PASSES, *_MACHINE, CELL,
    *_PAPERS,
)  # fmt: skip

OUT = Option(
    name="out", kind="path", metavar="DIR", group="Files", help="Folder to write into.",
    otherwise="./ and a safe form of the first line",
)  # fmt: skip
"""A key of a sign file too, but none of the sign's own: the resolved sign file leaves it out."""

KEY_BY_NAME: dict[str, Option] = {key.name: key for key in (*KEYS, OUT, LINE)}
