"""What can be asked for of lettering: keys of the sign, and of a line that is set in its own way.

The command line and a sign file share the first; the second stand in the tables of a sign file.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from msgspec.structs import replace

from signgen.option import Option
from signgen.spec.roles import ROLES
from signgen.units import NOT_NEGATIVE, Limits

AXIS_DECIMALS = 4
"""Fonts have steps of 1/65536."""


def axes_text(axes: Iterable[tuple[str, float]]) -> str | None:
    """Settings of a variable font as they are asked for; None for none."""
    return ",".join(f"{tag}={_plain(value)}" for tag, value in axes) or None


def _plain(value: float) -> str:
    return f"{value:.{AXIS_DECIMALS}f}".rstrip("0").rstrip(".")


def _fit_of(text: Any) -> str | None:
    """How the lines of a TextSpec fill the room, where they do."""
    filled = text.layout == "filled" and any(row.is_fitted for row in text.rows)
    return text.fit if filled else None


_STYLE: tuple[Option, ...] = (
    Option(
        name="font", kind="font", metavar="NAME", group="Lettering", default="barlow",
        help="Face of the letters: a name (signgen list fonts), or the path of a font file (FILE.ttc#2 for the second "
        "face of a collection).",
        write=lambda line: line.font, replaces=("font-axes",),
        words=("typeface", "face", "lettering style", "own font", "script", "serif", "handwriting",
            "fancy letters", "ttf"), example="pacifico", often=True,
    ),
    Option(
        name="font-axes", kind="word", metavar="AXES", group="Lettering",
        help="Settings of a variable font, as in wght=600,wdth=90.", otherwise="the font's own",
        write=lambda line: axes_text(line.font_axes), left_open="the font's own",
        words=("bold", "weight", "variable font", "thin letters", "heavier letters", "italic", "wider letters"),
    ),
    Option(
        name="cap-height", kind="length", metavar="LENGTH", group="Lettering",
        help="Height of a capital H of the face.", otherwise="as large as fits",
        write=lambda line: line.cap_height_mm, left_open="as large as fits", replaces=("digit-height", "fit"),
        words=("height", "letter height", "text height", "letter size", "text size", "font size", "bigger letters",
            "larger letters", "smaller letters", "height of letters", "bigger text", "how high are letters",
            "how tall"), example="30", often=True,
    ),
    Option(
        name="digit-height", kind="length", metavar="LENGTH", group="Lettering",
        help="Height of the figure 1 of the face, instead of cap-height: for house numbers.",
        otherwise="what goes with the capitals",
        write=lambda line: line.digit_height_mm, left_open="what goes with the capitals",
        replaces=("cap-height", "fit"),
        words=("number height", "number bigger", "bigger number", "larger number", "figures", "digits",
            "size of the number", "house number height", "numeral"), example="90", often=True,
    ),
    Option(
        name="align", kind="choice", metavar="SIDE", group="Lettering", choices=("left", "centre", "right"),
        help="Where lines stand between the margins: left, centre or right.", default="centre",
        write=lambda line: line.align if line.arc is None else None, left_open="text on a circle is centred on it",
        words=("left", "right", "centre", "center", "justify", "alignment", "move text", "position of the text"),
        example="left", often=True,
    ),
    Option(
        name="line-spacing", kind="number", metavar="RATIO", group="Lettering", limits=Limits(least=0.5, greatest=10),
        help="From one baseline to the next, over the cap height.", otherwise="by the layout; 1.6 when it is filled",
        write=lambda line: line.line_spacing,
        words=("leading", "between lines", "distance of lines", "lines too close", "space between lines"),
    ),
    Option(
        name="letter-spacing", kind="length", metavar="LENGTH", group="Lettering",
        limits=Limits(least=-50, greatest=500),
        help="Room added between letters; may be negative.",
        otherwise="0; capitals alone get 7 % of their height when the layout is composed",
        write=lambda line: line.letter_spacing_mm,
        words=("tracking", "kerning", "spread letters", "letters too close", "space between letters", "spacing",
            "wider apart"),
    ),
    Option(
        name="arc", kind="length", metavar="RADIUS", group="Lettering",
        help="Set lines along a circle of this radius, on which the letters stand.", otherwise="straight",
        write=lambda line: line.arc and line.arc.radius_mm, left_open="straight",
        words=("curved", "curved text", "bent text", "text in a circle", "round text", "along a circle",
            "text on a curve"), example="90",
    ),
    Option(
        name="arc-side", kind="choice", metavar="SIDE", group="Lettering", choices=("above", "below", "ring"),
        help="Where on the circle: above, below (both read from the left), or ring, all the way round.",
        otherwise="above, when arc is given",
        write=lambda line: line.arc and line.arc.side, left_open="no circle",
        words=("text below the circle", "text round a circle", "ring of text"),
    ),
    Option(
        name="arc-centre", kind="choice", metavar="PLACE", group="Lettering", choices=("line", "sign"),
        help="Where the circle's middle lies: in the middle of the sign, or where it gives the text the line's place.",
        otherwise="line, or sign for a ring",
        write=lambda line: line.arc and line.arc.centre, left_open="no circle",
        words=("middle of the circle",),
    ),
)  # fmt: skip
"""How a line is set. `write` reads them back from a LineSpec."""


def _of_usual_line(write: Callable[[Any], object]) -> Callable[[Any], object]:
    """The same of a whole SignSpec: its lines as they are set unless a line's table says otherwise."""
    return lambda spec: write(spec.text.usual_line(""))


_OF_THE_SIGN = {row.name: replace(row, write=_of_usual_line(row.write)) for row in _STYLE if row.write}

LETTERING: tuple[Option, ...] = (
    _OF_THE_SIGN["font"],
    _OF_THE_SIGN["font-axes"],
    Option(
        name="font-fallback", kind="flag", metavar="true", group="Lettering", default="false",
        help="Take characters that the face lacks from other faces that ship.",
        write=lambda spec: spec.text.font_fallback,
        words=("missing letters", "missing characters", "accents", "umlauts", "no such letter"),
    ),
    _OF_THE_SIGN["cap-height"],
    _OF_THE_SIGN["digit-height"],
    Option(
        name="fit", kind="choice", metavar="HOW", group="Lettering", choices=("together", "each"), default="together",
        help="How lines without a height fill the room: together (alike in height) or each (alike in width).",
        write=lambda spec: _fit_of(spec.text),
        left_open="nothing to fit", replaces=("cap-height", "digit-height"),
        words=("fill the sign", "same width", "same height", "fill the width", "stretch"),
    ),
    Option(
        name="wrap", kind="length", metavar="LENGTH", group="Lettering",
        help="Break lines that are wider than this at their spaces.", otherwise="lines stay as they are",
        write=lambda spec: spec.text.wrap_mm, left_open="lines stay as they are",
        words=("break lines", "long text", "too long", "line break", "new line"),
    ),
    _OF_THE_SIGN["align"],
    _OF_THE_SIGN["line-spacing"],
    _OF_THE_SIGN["letter-spacing"],
    _OF_THE_SIGN["arc"],
    _OF_THE_SIGN["arc-side"],
    _OF_THE_SIGN["arc-centre"],
    Option(
        name="margin", kind="length", metavar="LENGTH", group="Lettering", limits=NOT_NEGATIVE,
        help="Room to keep between the letters and the edge.",
        otherwise="by the layout; 8 % of the shorter side when it is filled, and clear of the frame",
        write=lambda spec: spec.text.margin_mm if spec.text.margin_stated or spec.text.layout == "filled" else None,
        words=("padding", "room at the edge", "space around the text", "distance from the edge"),
    ),
    Option(
        name="layout", kind="choice", metavar="HOW", group="Lettering", choices=("composed", "filled"),
        help="How sizes and places are chosen that nobody states: composed (a line leads, the others follow in "
        "proportion, room is left round them) or filled (as large as the margins allow).",
        otherwise="composed, or filled with fit or wrap", write=lambda spec: spec.text.layout,
        words=("composition", "arrangement", "proportions", "proportion of the lines", "spread over the sign"),
    ),
)  # fmt: skip

LINE = Option(
    name="line", kind="tables", metavar="TABLE", group="Lettering",
    help="In a sign file: a table for each line that is set in its own way.", replaces=("text",),
)  # fmt: skip
"""No option of the command line, which cannot hold tables."""

LINE_KEYS: tuple[Option, ...] = (
    Option(name="text", kind="lines", metavar="TEXT", group="Lettering", help="The line's words.", required=True),
    *_STYLE,
    Option(
        name="height-ratio", kind="number", metavar="RATIO", group="Lettering",
        help="The line's height over that of the sign's lines, given or as large as fits.", otherwise="1",
        limits=Limits(least=0.05, greatest=20),
        write=lambda line: None if line.height_ratio == 1 else line.height_ratio,
        words=("half as high", "relative height"),
    ),
    Option(
        name="finish", kind="choice", metavar="NAME", group="Lettering",
        choices=("groove", "recess", "stroke", "through"),
        help="How the line's letters are made, when not as the sign's.", otherwise="as the sign has it",
        write=lambda line: line.finish,
    ),
    Option(
        name="depth", kind="length", metavar="LENGTH", group="Lettering", help="Depth of the line's letters.",
        otherwise="that of the sign, or what is usual for the finish",
        write=lambda line: line.depth_mm,
    ),
    Option(
        name="role", kind="choice", metavar="WORD", group="Lettering", choices=ROLES,
        help="What the line is there for: number or title (it leads), name (it goes with it), detail.",
        otherwise="read from its words", write=lambda line: line.role,
        words=("main line", "leading line", "important line", "emphasis", "which line is biggest", "subtitle"),
    ),
)  # fmt: skip
"""What a line's own table may hold; what it leaves out is as the sign has it."""

LINE_KEY_BY_NAME: dict[str, Option] = {key.name: key for key in LINE_KEYS}
