"""The chapter of what there is to choose from, with pictures, and that of the shop that ships."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Sequence

from signgen.borders import BORDERS
from signgen.dialects import DIALECTS
from signgen.errors import AskError
from signgen.guide.reference.parts import Chapter, anchor, cards, code, table
from signgen.guide.reference.sketches import border_sketch, face_sketch, finish_picture, holes_sketch
from signgen.holes import PATTERNS
from signgen.lettering.catalogue import CatalogueFace, catalogue, stroke_catalogue
from signgen.markup.markup import Html, Part, el, joined
from signgen.option import Option
from signgen.pictures.specimen import ALPHABETS, PHRASES
from signgen.shop.load import load_shop
from signgen.spec.keys import KEY_BY_NAME

ARGUMENTS = {"grid": "3x2", "at": "20,20;100,60"}
"""For pictures of patterns that want something behind their colon."""

FINISHES = {
    "groove": "Carved: as deep as the letter is wide, down to the greatest depth.",
    "recess": "Flat letters sunk into the face.",
    "raised": "Letters stand in a panel that is sunk round them.",
    "stroke": "Single lines of one width.",
    "through": "Cut right through the board.",
}


def choices_chapter() -> Chapter:
    finishes = KEY_BY_NAME["finish"].choices
    parts: list[Part] = [
        _part("Borders"), cards(_borders()),
        _part("Hole patterns"), cards(_patterns()),
        _part("Finishes"), cards((finish_picture(name), name, FINISHES[name]) for name in finishes),
        _part("Faces"), cards(_faces()),
    ]  # fmt: skip
    return Chapter(title="What there is to choose from", parts=parts)


def _part(title: str) -> Html:
    return el("h3", title, id=anchor(title))


def _borders() -> Iterator[tuple[Html, str, Part]]:
    for border in BORDERS:
        name = f"{border.name}:{border.argument}" if border.argument else border.name
        about = joined(border.summary, *_reads(border.options))
        yield (border_sketch(border.name) if not border.argument else el("p", "an outline of your own")), name, about


def _patterns() -> Iterator[tuple[Html, str, Part]]:
    for pattern in PATTERNS:
        name = f"{pattern.name}:{pattern.argument}" if pattern.argument else pattern.name
        typed = f"{pattern.name}:{ARGUMENTS[pattern.name]}" if pattern.argument else pattern.name
        about = joined(pattern.summary, *_reads(pattern.options))
        yield holes_sketch(typed), name, about


def _reads(options: Sequence[Option]) -> Iterator[Part]:
    """The options that it reads, never parted at a line's end."""
    for number, option in enumerate(options):
        yield ", " if number else " Reads "
        yield el("span", f"--{option.name}", cls="whole")
    yield "." if options else None


def _faces() -> Iterator[tuple[Html, str, Part]]:
    for face in (*catalogue(), *stroke_catalogue()):
        about = f"{face.label}: {face.role}; {', '.join(face.scripts)}; {face.licence}."
        yield _face(face), face.name, about


def _face(face: CatalogueFace) -> Html:
    """A phrase of the first script of which it has every letter, accents too; else letters of its alphabet."""
    phrases = [PHRASES[script] for script in face.scripts if script in PHRASES]
    letters = ["".join(ALPHABETS[script][0].split()[:7]) for script in face.scripts if script in ALPHABETS]
    for text in (*phrases, *letters):
        with contextlib.suppress(AskError):
            return face_sketch(face.name, text)
    return el("p", face.label)


def shop_chapter() -> Chapter:
    shop = load_shop(None)
    tools = [
        (code(tool.name), tool.label, f"{tool.cutting_length_mm:g} mm", f"{tool.shank_mm:g} mm", tool.source)
        for tool in shop.tools
    ]
    materials = [
        (code(each.name), ", ".join([str(each.label), *each.also]), f"{each.chip_load_ratio:g}",
         f"{each.stepdown_ratio:g}", f"{each.entry_deg:g} degrees", each.source)
        for each in shop.materials
    ]  # fmt: skip
    machines = [
        (code(each.name), str(each.label), " x ".join(f"{way:g}" for way in each.travel_mm) + " mm",
         f"{each.spindle_min_rpm:g} to {each.spindle_max_rpm:g} rpm", each.source)
        for each in shop.machines
    ]  # fmt: skip
    return Chapter(
        title="The shop that ships",
        parts=(
            el("p", "A shop file of your own goes before it (--shop)."),
            _part("Cutters"), table(("Name", "What it is", "Cuts deep", "Shank", "Source"), tools),
            _part("Materials"),
            table(("Name", "What it is", "Chip over diameter", "Pass over diameter", "Ramps", "Sources"), materials),
            _part("Machines"), table(("Name", "What it is", "Travel", "Spindle", "Source"), machines),
            _part("Dialects of RS-274"),
            table(("Name", "What it is"), [(code(each.name), each.about) for each in DIALECTS]),
        ),
    )  # fmt: skip
