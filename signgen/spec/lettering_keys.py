"""What can be asked for of lettering: keys of the sign, and of a line that is set in its own way.

The command line and a sign file share the first; the second stand in the tables of a sign file.
"""

from __future__ import annotations

from signgen.option import Option
from signgen.units import NOT_NEGATIVE, Limits

LETTERING: tuple[Option, ...] = (
    Option(
        name="font", kind="word", metavar="NAME", group="Lettering", default="barlow",
        help="Face of the letters: a name (signgen list fonts), or the path of a font file (FILE.ttc#2 for the second "
        "face of a collection).",
    ),
    Option(
        name="font-axes", kind="word", metavar="AXES", group="Lettering",
        help="Settings of a variable font, as in wght=600,wdth=90.", otherwise="the font's own",
    ),
    Option(
        name="font-fallback", kind="flag", metavar="true", group="Lettering", default="false",
        help="Take characters that the face lacks from other faces that ship.",
    ),
    Option(
        name="cap-height", kind="length", metavar="LENGTH", group="Lettering",
        help="Height of a capital H of the face.", otherwise="as large as fits",
    ),
    Option(
        name="digit-height", kind="length", metavar="LENGTH", group="Lettering",
        help="Height of the figure 1 of the face, instead of cap-height: for house numbers.",
        otherwise="what goes with the capitals",
    ),
    Option(
        name="fit", kind="choice", metavar="HOW", group="Lettering", choices=("together", "each"), default="together",
        help="How lines without a height fill the room: together (alike in height) or each (alike in width).",
    ),
    Option(
        name="wrap", kind="length", metavar="LENGTH", group="Lettering",
        help="Break lines that are wider than this at their spaces.", otherwise="lines stay as they are",
    ),
    Option(
        name="align", kind="choice", metavar="SIDE", group="Lettering", choices=("left", "centre", "right"),
        help="Where lines stand between the margins: left, centre or right.", default="centre",
    ),
    Option(
        name="line-spacing", kind="number", metavar="RATIO", group="Lettering", default=1.6,
        help="From one baseline to the next, over the cap height.", limits=Limits(least=0.5, greatest=10),
    ),
    Option(
        name="letter-spacing", kind="length", metavar="LENGTH", group="Lettering", default=0,
        help="Room added between letters; may be negative.", limits=Limits(least=-50, greatest=500),
    ),
    Option(
        name="arc", kind="length", metavar="RADIUS", group="Lettering",
        help="Set lines along a circle of this radius, on which the letters stand.", otherwise="straight",
    ),
    Option(
        name="arc-side", kind="choice", metavar="SIDE", group="Lettering", choices=("above", "below", "ring"),
        help="Where on the circle: above, below (both read from the left), or ring, all the way round.",
        otherwise="above, when arc is given",
    ),
    Option(
        name="arc-centre", kind="choice", metavar="PLACE", group="Lettering", choices=("line", "sign"),
        help="Where the circle's middle lies: in the middle of the sign, or where it gives the text the line's place.",
        otherwise="line, or sign for a ring",
    ),
    Option(
        name="margin", kind="length", metavar="LENGTH", group="Lettering", limits=NOT_NEGATIVE,
        help="Room to keep between the letters and the edge.",
        otherwise="8 % of the shorter side, and clear of the frame",
    ),
)  # fmt: skip

LINE = Option(
    name="line", kind="tables", metavar="TABLE", group="Lettering",
    help="In a sign file: a table for each line that is set in its own way.",
)  # fmt: skip
"""No option of the command line, which cannot hold tables."""

_AS_THE_SIGN = (
    "font", "font-axes", "cap-height", "digit-height", "align", "line-spacing", "letter-spacing",
    "arc", "arc-side", "arc-centre",
)  # fmt: skip

LINE_KEYS: tuple[Option, ...] = (
    Option(name="text", kind="lines", metavar="TEXT", group="Lettering", help="The line's words.", required=True),
    *(key for key in LETTERING if key.name in _AS_THE_SIGN),
    Option(
        name="height-ratio", kind="number", metavar="RATIO", group="Lettering",
        help="The line's height over that of the sign's lines, given or as large as fits.", otherwise="1",
        limits=Limits(least=0.05, greatest=20),
    ),
    Option(
        name="finish", kind="choice", metavar="NAME", group="Lettering",
        choices=("groove", "recess", "stroke", "through"),
        help="How the line's letters are made, when not as the sign's.", otherwise="as the sign has it",
    ),
    Option(
        name="depth", kind="length", metavar="LENGTH", group="Lettering", help="Depth of the line's letters.",
        otherwise="that of the sign, or what is usual for the finish",
    ),
)  # fmt: skip
"""What a line's own table may hold; what it leaves out is as the sign has it."""

LINE_KEY_BY_NAME: dict[str, Option] = {key.name: key for key in LINE_KEYS}
