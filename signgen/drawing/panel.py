"""The panel that is sunk into the face, and what letters become by their finish."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Polygon

from signgen.drawing.bridges import with_bridges
from signgen.drawing.grooves import engraved, groove
from signgen.drawing.pictures import Part, grooves_of
from signgen.errors import CannotMakeError
from signgen.features.feature import Feature
from signgen.features.groove import Groove
from signgen.features.raised import Raised
from signgen.features.recess import Panel, Recess
from signgen.geometry.offsets import area_of, inward, outward, polygons
from signgen.lettering.layout import Letter, Lettering
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec
from signgen.spec.trim import clear_of_wall_mm

LEAST_PANEL_MM = 6.35
"""Narrower than the thickest cutter that is chosen unasked, a panel is a groove."""


class Made(Struct, frozen=True, kw_only=True):
    """The letters and the panel as features of a drawing."""

    grooves: tuple[Groove, ...] = ()
    recesses: tuple[Recess, ...] = ()
    raised: tuple[Raised, ...] = ()

    @property
    def features(self) -> tuple[Feature, ...]:
        return (*self.grooves, *self.recesses, *self.raised)


def panel_area(spec: SignSpec, edge: Polygon) -> Polygon | None:
    """The panel's outline, None when there is none. Raises: CannotMakeError when it has no room."""
    asked = spec.panel
    if asked is None:
        return None
    chord = spec.tolerances.chord_mm
    inner = inward(edge, asked.inset_mm, chord)
    if asked.radius_mm and inner:
        inner = outward(area_of(inward(area_of(inner), asked.radius_mm, chord)), asked.radius_mm, chord)
    if len(inner) != 1 or not inward(inner[0], LEAST_PANEL_MM / 2, chord):
        raise CannotMakeError.at(
            "panel",
            Message("drawing.panel_inside_edge_corners_no", inset=Mm(asked.inset_mm), radius=Mm(asked.radius_mm)),
            Message("drawing.use_smaller_panel_inset_panel"),
        )
    return inner[0]


def text_inset_mm(spec: SignSpec) -> float:
    """How far inside the edge letters may begin so that a cutter passes between them and the panel's wall, or its
    rim."""
    if spec.panel is None:
        return 0.0
    return clear_of_wall_mm((spec.width_mm, spec.height_mm), spec.panel, spec.rim)


def rim_area(spec: SignSpec, panel: Polygon | None) -> Polygon | None:
    """The line that stands in the panel, None when there is none. Raises: CannotMakeError when it has no room."""
    asked = spec.rim
    if asked is None or panel is None:
        return None
    outer = inward(panel, asked.inset_mm, spec.tolerances.chord_mm)
    inner = inward(panel, asked.reach_mm, spec.tolerances.chord_mm)
    if len(outer) != 1 or len(inner) != 1 or not inward(inner[0], LEAST_PANEL_MM / 2, spec.tolerances.chord_mm):
        raise CannotMakeError.at(
            "rim",
            Message("drawing.rim_wide_inside_panel_does", width=Mm(asked.width_mm), inset=Mm(asked.inset_mm)),
            Message("drawing.use_narrower_rim_smaller_rim"),
        )
    return Polygon(outer[0].exterior, [inner[0].exterior])


def made(
    spec: SignSpec,
    lettering: Lettering,
    panel: Polygon | None,
    ornaments: Sequence[tuple[str, Polygon | MultiPolygon]] = (),
    pictures: Sequence[Part] = (),
) -> Made:
    """Every letter by the finish of its line, and the panel with what stands in it. Ornaments are grooves, but where
    letters are raised they stand as well."""
    rim, stand = rim_area(spec, panel), spec.finish == "raised"
    standing = [Raised(name="rim", source="rim", area=rim)] if rim else []
    standing += [Raised(name=name, source="ornament", area=area) for name, area in ornaments if stand]
    standing += [Raised(name=p.name, source=p.source, area=p.area) for p in pictures if p.finish == "raised"]
    if panel is not None and standing:
        panel = panel.difference(shapely.union_all([each.area for each in standing]))
    ground = () if panel is None or spec.panel is None else (panel, spec.panel.depth_mm)
    grooves, sunk, raised = [], [], []
    for letter in lettering.letters:
        line = spec.text.rows[lettering.rows[letter.line].measured.line.source]
        name = f"{letter.name} '{letter.text}'"
        title = Message("name.shows", name=letter.title, text=letter.text)
        match spec.finish_of(line):
            case "groove" | "stroke":
                grooves.append(replace(engraved(spec, name, letter, spec.depth_of(line)), title=title))
            case "raised":
                raised.append(Raised(name=name, title=title, source="text", text=letter.text, area=letter.area))
            case "recess":
                depth = (ground[1] if ground else 0.0) + spec.depth_of(line)
                sunk.append(replace(_sunk(letter, name, depth, spec.sharp_corners), title=title))
            case "through":
                whole = replace(_sunk(letter, name, spec.thickness_mm, sharp=False), title=title)
                bridges = spec.bridges
                sunk.append(with_bridges(whole, bridges.count, bridges.width_mm) if bridges else whole)
    sunk += _sunk_pictures(spec, pictures, ground[1] if ground else 0.0)
    recesses = tuple(sunk)
    if raised and ground:
        letters = shapely.union_all([letter.area for letter in raised])
        recesses = (_floor("ground", ground[0].difference(letters), ground[1], spec.sharp_corners), *recesses)
    elif ground:
        # Where letters are sunk deeper the panel's floor is cut as well: in one piece it is quicker.
        recesses = (_floor("panel", ground[0], ground[1], sharp=False), *recesses)
    grooves += [groove(spec, name, "ornament", area) for name, area in ornaments if not stand]
    grooves += grooves_of(spec, pictures)
    return Made(grooves=tuple(grooves), recesses=recesses, raised=(*raised, *standing))


def _sunk_pictures(spec: SignSpec, pictures: Sequence[Part], ground_mm: float) -> Iterator[Recess]:
    for part in pictures:
        if part.finish == "recess":
            yield Recess(
                name=part.name, source=part.source, area=part.area, depth_mm=ground_mm + part.depth_mm,
                sharp=spec.sharp_corners,
            )  # fmt: skip
        elif part.finish == "through":
            whole = Recess(name=part.name, source=part.source, area=part.area, depth_mm=spec.thickness_mm)
            yield with_bridges(whole, spec.bridges.count, spec.bridges.width_mm) if spec.bridges else whole


def _sunk(letter: Letter, name: str, depth_mm: float, sharp: bool) -> Recess:
    return Recess(name=name, source="text", text=letter.text, area=letter.area, depth_mm=depth_mm, sharp=sharp)


def _floor(name: str, area: Polygon | MultiPolygon, depth_mm: float, sharp: bool) -> Panel:
    return Panel(name=name, source="panel", area=area_of(polygons(area)), depth_mm=depth_mm, sharp=sharp)
