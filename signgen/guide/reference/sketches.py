"""Small pictures of what there is to choose from, drawn from signs as they are drawn for cutting."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from shapely.geometry.base import BaseGeometry

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.features.edge import Edge
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.tab import Tab
from signgen.markup.markup import Html, el
from signgen.numbers import figure
from signgen.pictures.plate import ACCENT, INK, WOOD, area_path
from signgen.pictures.preview import data_uri, preview_jpeg
from signgen.pipeline import prove, read_sign

AROUND_MM = 1.5
LINE_MM = "0.7"
PLATE: Mapping[str, object] = {"text": "A", "thickness": 12, "cap-height": 8}
"""A sign of which only outline and holes are shown."""


def border_sketch(border: str) -> Html:
    """A border's outline at a size that suits it."""
    size = "80x80" if border in ("circle", "octagon") else "120x80"
    drawing = draw(read_sign({**PLATE, "size": size, "border": border}))
    eyes = [(each.footprint, "#fff", INK) for each in drawing.of(Hole)]
    return _svg(drawing, [(drawing.edge, WOOD, INK), *eyes], f"outline of the border {border}")


def holes_sketch(pattern: str) -> Html:
    """Where a pattern's holes are on a plate."""
    asked = {**PLATE, "size": "120x80", "holes": pattern, "thickness": 18}
    if pattern not in ("none", "keyholes"):
        asked["hole-diameter"] = 5
    drawing = draw(read_sign(asked))
    holes = [(each.footprint, "#fff", INK) for each in drawing.of(Hole)]
    slots = [(each.footprint, "none", ACCENT) for each in drawing.of(Keyhole)]
    return _svg(drawing, [(drawing.edge, WOOD, INK), *holes, *slots], f"places of the hole pattern {pattern}")


def face_sketch(face: str, text: str) -> Html:
    """A few words in a face, as they would be engraved."""
    finish = {"finish": "stroke"} if face.startswith("hershey") else {}
    asked = {"text": text, "font": face, "size": "150x32", "thickness": 12, "layout": "filled", "margin": 5, **finish}
    drawing = draw(read_sign(asked))
    letters = [each.footprint for each in drawing.features if not isinstance(each, Edge | Tab)]
    return _svg(drawing, [(area, INK, "none") for area in letters], f"{text} in the face {face}")


def finish_picture(finish: str) -> Html:
    """A letter and a number made in a way, as the simulated cut leaves them."""
    more: dict[str, object] = {"font": "saira-stencil"} if finish == "through" else {}
    if finish == "stroke":
        more = {"font": "hershey-sans"}
    facts = prove(read_sign({"text": "R7", "size": "70x44", "thickness": 9, "finish": finish, **more}))
    return el("img", src=data_uri(preview_jpeg(facts), "jpeg"), alt=f"R7 with the finish {finish}")


def _svg(drawing: Drawing, areas: Iterable[tuple[BaseGeometry, str, str]], about: str) -> Html:
    """Millimetres with Y up, turned over by the group."""
    wide, high = drawing.width_mm + 2 * AROUND_MM, drawing.height_mm + 2 * AROUND_MM
    shapes = [
        el("path", d=area_path(area), fill=fill, stroke=stroke, stroke_width=LINE_MM, fill_rule="evenodd")
        for area, fill, stroke in areas
    ]
    turned = f"translate({AROUND_MM} {figure(high - AROUND_MM, 2)}) scale(1 -1)"
    return el(
        "svg",
        el("title", about),
        el("g", *shapes, transform=turned),
        viewBox=f"0 0 {figure(wide, 2)} {figure(high, 2)}",
        role="img",
    )
