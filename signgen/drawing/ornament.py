"""Lines engraved beside the lettering: a frame inside the edge, a rule between lines of text."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from msgspec.structs import replace
from shapely.geometry import Polygon, box

from signgen.drawing.grooves import groove
from signgen.errors import CannotMakeError
from signgen.features.groove import Groove
from signgen.geometry.offsets import inward, polygons
from signgen.lettering.layout import Lettering
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec


def frame(spec: SignSpec, edge: Polygon) -> tuple[Groove, ...]:
    """The grooves of the frame's lines: bands of the asked width, their middles at their distances inside the edge.
    Raises: CannotMakeError."""
    asked = spec.frame
    if asked is None:
        return ()
    found: list[Groove] = []
    for number, inset in enumerate(asked.insets_mm, 1):
        outer = inward(edge, inset - asked.width_mm / 2, spec.tolerances.chord_mm)
        inner = inward(edge, inset + asked.width_mm / 2, spec.tolerances.chord_mm)
        if len(outer) != 1 or len(inner) != 1:
            raise CannotMakeError.at(
                "frame",
                Message(
                    "drawing.frame_does_not_go_round" if asked.lines == 1 else "drawing.frame_line_does_not_go_round",
                    number=number,
                    inset=Mm(inset),
                ),
                Message("drawing.use_smaller_inset")
                if number == 1
                else Message("drawing.use_fewer_frame_lines_smaller"),
            )
        name = "frame" if asked.lines == 1 else f"frame line {number}"
        title = Message("name.frame_line", number=number) if asked.lines > 1 else None
        found += [
            replace(groove(spec, name, "frame", area), title=title) for area in polygons(outer[0].difference(inner[0]))
        ]
    return tuple(found)


def rules(spec: SignSpec, lettering: Lettering) -> Iterator[Groove]:
    """A rule between each two lines of text, halfway between the lower edge of one's ink and the upper edge of the
    next one's."""
    width = spec.rule_width_mm
    if width is None:
        return
    x0, _, x1, _ = lettering.ink_bounds_mm
    lines = sorted({letter.line for letter in lettering.letters})
    for number, (above, below) in enumerate(itertools.pairwise(lines), start=1):
        bottom = min(letter.area.bounds[1] for letter in lettering.letters if letter.line == above)
        top = max(letter.area.bounds[3] for letter in lettering.letters if letter.line == below)
        y = (bottom + top) / 2
        if bottom - top < 2 * width:
            raise CannotMakeError.at(
                "rule-width",
                Message(
                    "drawing.rule_no_room_between_lines",
                    width=Mm(width),
                    above=above + 1,
                    below=below + 1,
                    bottom=Mm(bottom - top),
                ),
                Message("drawing.use_larger_line_spacing_thinner"),
            )
        rule = groove(spec, f"rule {number}", "rule-width", box(x0, y - width / 2, x1, y + width / 2))
        yield replace(rule, title=Message("name.rule", number=number))
