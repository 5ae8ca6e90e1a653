"""What can be asked for round the lettering: frame, rule, ornaments in the corners, a rim, a bevelled edge."""

from __future__ import annotations

from signgen.option import Option
from signgen.units import Limits

_THIN = Limits(least=0.1, greatest=200)

TRIM: tuple[Option, ...] = (
    Option(
        name="frame", kind="length", metavar="LENGTH", group="Engraving",
        help="Engrave a line all round, with its middle this far inside the edge.", otherwise="no frame",
        write=lambda spec: spec.frame and spec.frame.inset_mm, left_open="none",
        words=("line around", "line round the text", "outline of the sign engraved", "border line",
            "decorative line", "edge line"), example="8", often=True,
    ),
    Option(
        name="frame-width", kind="length", metavar="LENGTH", group="Engraving", limits=_THIN,
        help="Width of the frame's line at the surface.", otherwise="2 mm",
        write=lambda spec: spec.frame and spec.frame.width_mm, left_open="no frame", needs="frame",
        words=("thick frame", "frame thickness"),
    ),
    Option(
        name="frame-lines", kind="count", metavar="N", group="Engraving", limits=Limits(least=1, greatest=6),
        help="Lines of the frame, each inside the one before: 2 for a double frame.", otherwise="1",
        write=lambda spec: spec.frame and spec.frame.lines, left_open="no frame", needs="frame",
        words=("double frame", "double line", "two lines round"),
    ),
    Option(
        name="frame-gap", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=1, greatest=200),
        help="Wood between two lines of the frame at the surface.", otherwise="as wide as the line, at least 1.5 mm",
        write=lambda spec: spec.frame and spec.frame.gap_mm, left_open="no frame", needs="frame",
        words=("between the frame lines",),
    ),
    Option(
        name="rule-width", kind="length", metavar="LENGTH", group="Engraving", limits=_THIN,
        help="Engrave a rule of this width between lines of text.", otherwise="no rule",
        field="rule_width_mm", left_open="none",
        words=("underline", "rule", "separator", "line between", "dividing line"),
    ),
    Option(
        name="ornament", kind="word", metavar="CHARACTER", group="Engraving",
        help="Engrave a character of a face into the four corners: as it is at the top left, mirrored in the others.",
        otherwise="none",
        write=lambda spec: spec.ornament and spec.ornament.text, left_open="none", replaces=("ornament-font",),
        words=("decoration", "corner decoration", "flourish", "symbol", "star", "flower"),
    ),
    Option(
        name="ornament-font", kind="font", metavar="NAME", group="Engraving",
        help="Face of the ornament.", otherwise="that of the letters",
        write=lambda spec: spec.ornament and spec.ornament.font, left_open="no ornament", needs="ornament",
        words=("symbol font", "dingbats"),
    ),
    Option(
        name="ornament-size", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=2, greatest=1000),
        help="Width or height of the ornament, whichever is more.", otherwise="0.15 of the shorter side",
        write=lambda spec: spec.ornament and spec.ornament.size_mm, left_open="no ornament", needs="ornament",
        words=("bigger ornaments", "size of the symbol"),
    ),
    Option(
        name="ornament-inset", kind="length", metavar="LENGTH", group="Engraving",
        limits=Limits(least=1, greatest=1000),
        help="How far inside the edge ornaments stay.", otherwise="0.05 of the shorter side, inside the frame",
        write=lambda spec: spec.ornament and spec.ornament.inset_mm, left_open="no ornament", needs="ornament",
        words=("ornaments further in",),
    ),
    Option(
        name="rim", kind="length", metavar="WIDTH", group="Engraving", limits=Limits(least=0.5, greatest=200),
        help="Let a line of this width stand in the panel all round, as high as the face.", otherwise="none",
        write=lambda spec: spec.rim and spec.rim.width_mm, left_open="none",
        words=("inner rim", "raised line", "raised border"),
    ),
    Option(
        name="rim-inset", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.5, greatest=500),
        help="From the panel's wall to that line: the end mill must pass.",
        otherwise="0.04 of the shorter side, at least 4 mm",
        write=lambda spec: spec.rim and spec.rim.inset_mm, left_open="no rim", needs="rim",
        words=("rim distance",),
    ),
    Option(
        name="edge-chamfer", kind="length", metavar="WIDTH", group="Engraving", limits=Limits(least=0.2, greatest=50),
        help="Bevel the face's edge all round with the V-bit, this wide on the face; a bit of 90 degrees makes 45.",
        otherwise="none",
        write=lambda spec: spec.chamfer_mm or None, left_open="none",
        words=("bevel", "bevelled edge", "chamfer", "slanted edge", "angled edge"),
    ),
)  # fmt: skip
