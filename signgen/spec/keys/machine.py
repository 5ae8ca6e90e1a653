"""What can be asked for of the machine, its control, its zero, and how finely programs are proved."""

from __future__ import annotations

from signgen.option import Option
from signgen.units import NOT_NEGATIVE, Limits

_OWN = "the machine's own, which is off unless its data say so"
MACHINE: tuple[Option, ...] = (
    Option(
        name="machine", kind="word", metavar="NAME", group="Machine",
        help="The machine that cuts (signgen list machines).", otherwise="the shop's first that goes round the sign",
        write=lambda spec: spec.machine.name,
        replaces=("dialect", "line-numbers", "percent-lines", "program-end", "extraction", "warm-up"),
        words=("router", "which machine", "my router", "travel", "cnc"), example="bench-router", often=True,
    ),
    Option(
        name="dialect", kind="word", metavar="NAME", group="Machine",
        help="How the machine's control wants its programs (signgen list dialects).",
        otherwise="the machine's own, which is plain unless its data say otherwise",
        write=lambda spec: spec.dialect,
        words=("controller", "control", "post", "g-code flavour", "gcode", "flavour"),
    ),
    Option(
        name="line-numbers", kind="flag", metavar="true", group="Machine",
        help="Number the lines of the programs (N10, N20 ...).", otherwise=_OWN,
        write=lambda spec: spec.manner.line_numbers,
        words=("n words", "numbered lines"),
    ),
    Option(
        name="percent-lines", kind="flag", metavar="true", group="Machine",
        help="Put the programs between two lines that hold only %.", otherwise=_OWN,
        write=lambda spec: spec.manner.percent_lines,
        words=("percent sign", "tape marks"),
    ),
    Option(
        name="program-end", kind="choice", metavar="WORD", group="Machine", choices=("m2", "m30"),
        help="The word that ends a program: m2 or m30.", otherwise="the machine's own, which is m2 unless it says so",
        write=lambda spec: spec.manner.program_end,
        words=("end of program", "m30", "m2"),
    ),
    Option(
        name="extraction", kind="choice", metavar="WORD", group="Machine", choices=("none", "m7", "m8"),
        help="The word that switches the dust extraction on with the spindle: m7, m8 or none.",
        otherwise="the machine's own, which is none unless it says so",
        write=lambda spec: spec.manner.extraction,
        words=("dust", "vacuum", "dust collector", "hoover", "air blast"),
    ),
    Option(
        name="warm-up", kind="number", metavar="SECONDS", group="Machine", limits=Limits(least=0, greatest=1800),
        help="How long the spindle runs up to speed in three steps before the first program cuts.",
        otherwise="the machine's own, which is none unless it says so",
        write=lambda spec: spec.manner.warm_up_s,
        words=("warm up", "spindle warm up", "cold spindle"),
    ),
    Option(
        name="comments", kind="choice", metavar="WORD", group="Machine", choices=("short", "full"), default="short",
        help="Comments in programs: each feature's name, or also every pass, ramp and tab and the opening line (full).",
        write=lambda spec: spec.manner.comments,
        words=("explain the program", "commented program", "notes in programs", "remarks", "learn g-code"),
        example="full",
    ),
    Option(
        name="origin", kind="choice", metavar="CORNER", group="Machine", choices=("sign", "stock"), default="sign",
        help="Where X0 Y0 lies: bottom left of the finished sign, or of the board (stock).",
        field="origin",
        words=("zero", "where is zero", "datum", "home", "corner", "x0 y0", "work zero", "start point"),
    ),
    Option(
        name="z-zero", kind="choice", metavar="FACE", group="Machine", choices=("bottom", "top"), default="bottom",
        help="Where Z0 lies: the board's bottom, which is the spoilboard's top, or the board's top.",
        field="z_zero",
        words=("top zero", "touch off", "z height", "surface zero", "zero of z"), example="top",
    ),
    Option(
        name="clamp-height", kind="length", metavar="LENGTH", group="Machine", limits=NOT_NEGATIVE,
        help="How far the highest clamp or screw stands above the board.", otherwise="lower than clearance",
        field="clamp_height_mm", left_open="not said", replaces=("clearance",),
        words=("clamps", "high clamps", "toe clamps"),
    ),
    Option(
        name="clearance", kind="length", metavar="LENGTH", group="Machine", limits=Limits(least=1, greatest=200),
        help="Height above the board for travel where clamps or screws may be.",
        otherwise="10 mm, or 5 mm over the clamps when clamp-height is given",
        write=lambda spec: spec.clearance_mm,
        words=("safe height", "retract", "travel height", "safe z"),
    ),
    Option(
        name="air-cut", kind="length", metavar="HEIGHT", group="Machine", limits=Limits(least=1, greatest=300),
        help="Write every program a second time, lifted by this much, to be run in the air before the cut.",
        otherwise="no air cut",
        write=lambda spec: spec.air_cut_mm, left_open="none",
        words=("dry run", "test run", "practice run", "try in the air", "without cutting"),
    ),
)  # fmt: skip

CELL = Option(
    name="cell", kind="length", metavar="LENGTH", group="Proof", limits=Limits(least=0.02, greatest=0.5),
    help="Size of the cells in which the simulated board is cut and compared with the drawing.",
    otherwise="0.1 to 0.25 mm, by the board and the letters", field="cell_mm",
    left_open="by the board and the letters",
    words=("simulation grid", "resolution of the proof", "finer check", "simulation"),
)  # fmt: skip
