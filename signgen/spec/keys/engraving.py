"""What can be asked for of how letters and panels are made."""

from __future__ import annotations

from signgen.option import Option
from signgen.spec.keys.trim import TRIM
from signgen.tolerances import DEFAULT_TOLERANCE_MM
from signgen.units import NOT_NEGATIVE, Limits

ENGRAVING: tuple[Option, ...] = (
    Option(
        name="finish", kind="choice", metavar="NAME", group="Engraving",
        choices=("groove", "recess", "raised", "stroke", "through"), default="groove",
        help="How letters are made: groove (by the V-bit), recess (flat, sunk into the face), raised (they stand in a "
        "panel that is sunk), stroke (single lines of one depth), through (cut right through the board).",
        write=lambda spec: spec.finish,
        words=("style", "raised", "carved", "standing out", "stand out", "pocket", "cut out", "stencil",
            "engrave", "relief", "letters stand out", "cut through"), example="raised", often=True,
    ),
    Option(
        name="depth", kind="length", metavar="LENGTH", group="Engraving",
        help="Greatest depth of the letters; wider ones get a flat floor there.",
        otherwise="0.4 of the thickness, as far as the V-bit reaches, or what is quicker by far in wide letters "
        "(3 mm, less in small ones); flat floors 0.25 of it, at most 3 mm; strokes 1 mm",
        write=lambda spec: None if spec.finish == "through" and spec.panel is None else spec.depth_mm,
        left_open="the letters are cut through",
        words=("deep", "how deep", "engraving depth", "cut depth", "deeper", "shallow"), example="3", often=True,
    ),
    Option(
        name="sharp-corners", kind="flag", metavar="true", group="Engraving",
        help="Let the V-bit clean the corners of flat floors that the end mill leaves round.",
        otherwise="only where letters leave no end mill room",
        write=lambda spec: spec.sharp_corners,
        words=("crisp corners", "square corners", "round corners inside letters", "clean corners"),
    ),
    Option(
        name="panel", kind="length", metavar="INSET", group="Engraving", limits=Limits(least=1, greatest=1000),
        help="Sink a panel this far inside the edge, with a rim standing all round.",
        otherwise="none; with raised letters 0.05 of the shorter side",
        write=lambda spec: spec.panel and spec.panel.inset_mm, left_open="none",
        words=("background", "sunk background", "sunk field", "lowered ground", "recessed area"),
    ),
    Option(
        name="panel-depth", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.1, greatest=150),
        help="Depth of the panel's floor below the face.",
        otherwise="that of the letters, less over keyholes in a thin board",
        write=lambda spec: spec.panel and spec.panel.depth_mm, left_open="no panel",
        words=("depth of the background", "deep panel"),
    ),
    Option(
        name="panel-radius", kind="length", metavar="LENGTH", group="Engraving", limits=NOT_NEGATIVE,
        help="Radius of the panel's corners.", otherwise="4 mm",
        write=lambda spec: spec.panel and spec.panel.radius_mm, left_open="no panel",
        words=("rounded panel", "corners of the panel"),
    ),
    Option(
        name="bridges", kind="count", metavar="N", group="Engraving", limits=Limits(least=1, greatest=8),
        help="Hold every inside of letters that are cut through by this many bars of wood.",
        otherwise="2 where an inside would fall out",
        write=lambda spec: spec.bridges and spec.bridges.count, left_open="none",
        words=("stencil", "islands", "inside of letters falls out", "falls out", "counters", "middle of the o"),
    ),
    Option(
        name="bridge-width", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.5, greatest=50),
        help="Width of those bars.", otherwise="a quarter of the thickness, at least 2.5 mm",
        write=lambda spec: spec.bridges and spec.bridges.width_mm, left_open="no bridges", needs="bridges",
        words=("thick bridges", "stronger bridges"),
    ),
    Option(
        name="ridge", kind="length", metavar="LENGTH", group="Engraving", default=0.1,
        help="Height of the ridges that the V-bit may leave where it clears a flat floor.",
        limits=Limits(least=0.005, greatest=2),
        field="cusp_height_mm",
        words=("smooth floor", "scallop height", "cusp height", "rough floor", "tool marks"),
    ),
    *TRIM,
    Option(
        name="tolerance", kind="length", metavar="LENGTH", group="Engraving", default=DEFAULT_TOLERANCE_MM,
        help="How far an engraved wall may lie from the letter's outline.", limits=Limits(least=0.001, greatest=0.2),
        write=lambda spec: spec.tolerances.total_mm,
        words=("accuracy", "precision", "exactness", "resolution"),
    ),
)  # fmt: skip
