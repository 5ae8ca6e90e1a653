"""Naming what lies at a place of the sign, and the program line that cut there."""

from __future__ import annotations

import math

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import Point
from shapely.geometry.base import BaseGeometry

from signgen.checks.check import Case
from signgen.checks.tip_path import TipPath, joined
from signgen.drawing.drawing import Drawing
from signgen.features.edge import Edge
from signgen.features.recess import Recess
from signgen.geometry.distance import FloatArray, IntArray, nearest_segment, segments_of
from signgen.messages import Message, Mm, Num, Sentence
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

SHARES = np.linspace(0.0, 1.0, 17)
"""Where along a piece its depth at a point is looked up, beside the place nearest to the point."""


def floor_over_mm(drawing: Drawing, area: BaseGeometry, above_mm: float = math.inf) -> float:
    """How deep below the board's top something begins: on the floor of the recess that it lies in, of those less deep
    than `above_mm`; 0 when it begins at the face."""
    around = [
        recess.depth_mm
        for recess in drawing.of(Recess)
        if recess.depth_mm < above_mm and shapely.covers(recess.area, area)
    ]
    return max(around, default=0.0)


def feature_at(drawing: Drawing, x_mm: float, y_mm: float) -> Sentence:
    """The name of the feature at a place, or of the nearest with its distance: "hole top-left", "3.2 mm from the
    edge"."""
    point = Point(x_mm, y_mm)
    distances: list[tuple[float, Sentence]] = [
        (float(shapely.distance(feature.footprint, point)), feature.called)
        for feature in drawing.upward
        if feature.takes and not isinstance(feature, Edge)
    ]
    distances.append((float(shapely.distance(drawing.edge.boundary, point)), Message("places.edge")))
    away, name = min(distances, key=lambda each: each[0])
    return name if away < 0.005 else Message("places.from", away=Mm(away, 2), name=name)


NEAR_MM = 10.0
"""From here on a move is not the one that should have cut a place: wider than the radius of any cutter here."""


def at(x_mm: float, y_mm: float) -> Message:
    """A place in words: "(34.1, 60.2)"."""
    return Message("place.at", x=Num(x_mm, 1), y=Num(y_mm, 1))


def deepest_line(case: Case, x_mm: float, y_mm: float) -> tuple[str, int | None]:
    """(file, line) of the feed move that cut deepest at a place; ("", None) when none reached it."""
    found: tuple[float, str, int | None] = (case.stock.thickness_mm, "", None)
    place = np.array([x_mm, y_mm])
    for program, cuts in zip(case.programs, case.cuts, strict=True):
        if not len(cuts):
            continue
        reach = program.tool.radius_mm + 1e-6
        low = np.minimum(cuts.start_mm[:, :2], cuts.end_mm[:, :2]) - reach
        high = np.maximum(cuts.start_mm[:, :2], cuts.end_mm[:, :2]) + reach
        near = cuts.where(np.flatnonzero(np.all((low <= place) & (place <= high), axis=1)))
        if len(near):
            heights = heights_at(near, program.tool, place)
            k = int(np.argmin(heights))
            if heights[k] < found[0] - 1e-9:
                found = (float(heights[k]), program.file, int(near.line[k]))
    return found[1], found[2]


def nearest_line(case: Case, x_mm: float, y_mm: float) -> tuple[str, int | None]:
    """(file, line) of the feed move below the stock's top that passes nearest to a place; of several passes one above
    the other, the lowest. ("", None) when none comes near: a line that has nothing to do with the place misleads."""
    top = case.stock.thickness_mm
    if not case.cuts:
        return "", None
    pieces = joined([cuts.where(np.flatnonzero(cuts.low_z_mm < top)) for cuts in case.cuts])
    if not len(pieces):
        return "", None
    place = np.array([x_mm, y_mm])
    start, step = pieces.start_mm[:, :2], (pieces.end_mm - pieces.start_mm)[:, :2]
    length = np.einsum("ij,ij->i", step, step)
    share = np.clip(np.einsum("ij,ij->i", place - start, step) / np.where(length > 0, length, 1.0), 0.0, 1.0)
    away = np.hypot(*(start + share[:, None] * step - place).T)
    if away.min() > NEAR_MM:
        return "", None
    near = np.flatnonzero(away <= away.min() + CHECK_MM)
    k = int(near[pieces.low_z_mm[near].argmin()])
    return case.programs[int(pieces.program[k])].file, int(pieces.line[k])


def heights_at(pieces: TipPath, tool: Tool, place: FloatArray) -> FloatArray:
    """(k,) the height to which each piece cuts at a place, infinite where the cutter does not reach."""
    start, step = pieces.start_mm, pieces.end_mm - pieces.start_mm
    length = np.einsum("ij,ij->i", step[:, :2], step[:, :2])
    nearest = np.einsum("ij,ij->i", place - start[:, :2], step[:, :2]) / np.where(length > 0, length, 1.0)
    shares = np.concatenate([np.broadcast_to(SHARES, (len(pieces), len(SHARES))), np.clip(nearest, 0, 1)[:, None]], 1)
    tip = start[:, None, :] + shares[:, :, None] * step[:, None, :]
    away = np.hypot(tip[:, :, 0] - place[0], tip[:, :, 1] - place[1])
    return np.asarray((tip[:, :, 2] + rise_at(tool, away)).min(axis=1))


def rise_at(tool: Tool, away_mm: FloatArray) -> FloatArray:
    """How far above its tip a cutter's underside is at a distance from its axis; infinite beyond its radius."""
    if tool.kind == "ball-nose":
        rise = tool.radius_mm - np.sqrt(np.maximum(tool.radius_mm**2 - away_mm**2, 0.0))
    elif tool.angle_deg is not None:
        rise = np.maximum(away_mm - tool.tip_mm / 2, 0.0) / tool.slope
    else:
        rise = np.zeros_like(away_mm)
    return np.where(away_mm <= tool.radius_mm + 1e-9, rise, np.inf)


def top_mm(case: Case, cells: IntArray) -> FloatArray:
    """(k,) the height of the untouched board at cells, from which depths count down."""
    places = case.ideal.grid.centres_mm(cells)
    return case.drawing.plate.top_mm(places[:, 0], places[:, 1])


def across_mm(case: Case) -> float:
    """How far across the board a wall may be from where it is drawn, for cells: half as much again as the job's
    tolerance."""
    return 1.5 * case.tolerance_mm


def beside_walls(case: Case, face: IntArray, gone_mm: FloatArray) -> NDArray[np.bool_]:
    """(cells,) True for cells of the face that a sloping wall explains, moved outwards by no more than the job's
    tolerance: at a steep wall that is more than 0.05 mm of depth."""
    spared = np.zeros(len(face), dtype=np.bool_)
    steep = [
        (drawn.feature, drawn.feature.limit_mm(CHECK_MM, across_mm(case)))
        for drawn in case.ideal.drawn
        if drawn.feature.limit_mm(0.0, across_mm(case)) > CHECK_MM
    ]
    if not len(face) or not steep:
        return spared
    places = case.ideal.grid.centres_mm(face)
    for feature, limit in steep:
        away, _ = nearest_segment(places, segments_of(feature.footprint), case.ideal.grid.cell_mm)
        slope = across_mm(case) / limit
        spared |= gone_mm <= limit - away / slope
    return spared


def worst_apart(values: FloatArray, places_mm: FloatArray, apart_mm: float = 10.0, most: int = 6) -> list[int]:
    """Indices of the greatest values, each at least `apart_mm` from the ones before it: one for each trouble spot."""
    left = np.ones(len(values), dtype=np.bool_)
    found: list[int] = []
    while left.any() and len(found) < most:
        k = int(np.argmax(np.where(left, values, -np.inf)))
        found.append(k)
        left &= np.hypot(*(places_mm - places_mm[k]).T) > apart_mm
    return found
