"""Pictures at their sizes: what was asked for as areas and lines with a finish each, and what is wrong with them."""

from __future__ import annotations

import itertools
import math
from collections.abc import Hashable, Iterator, Sequence
from functools import lru_cache
from pathlib import Path

import shapely
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import MultiLineString, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.artwork.codes import QUIET, code_picture, modules_of
from signgen.artwork.colours import DARK_BELOW, Rgb, colour_of, lightness
from signgen.artwork.matrix import Matrix, times
from signgen.artwork.pictograms import NO, picture_of
from signgen.artwork.picture import Picture
from signgen.artwork.read import read_picture
from signgen.drawing.codes import code_depth_mm, dots
from signgen.drawing.drawing import OrderedPicture
from signgen.drawing.grooves import bit_angle_deg
from signgen.drawing.spacing import LEAST_WALL_MM
from signgen.errors import AskError, Problem
from signgen.features.feature import Area
from signgen.features.groove import Groove, Stroke
from signgen.geometry.offsets import area_of, inward, outward, polygons, quad_segs
from signgen.messages import Message, Mm
from signgen.spec.finish import Finish
from signgen.spec.picture_spec import ColourUse, PictureSpec
from signgen.spec.sign_spec import SignSpec
from signgen.tolerances import GRID_MM

LEAST_WOOD_MM = 0.5
"""Wood between two parts of a picture: less crumbles along the grain (common practice)."""

FINE_RATIO = 2e-5
"""Chord for a picture's own area, over its extent."""

CRUMB_RATIO = 0.015
"""What is thinner than this of a pictogram's height beside the bar over it says nothing: left away."""

Key = tuple[Finish, float]


class Part(Struct, frozen=True, kw_only=True):
    """What one finish makes of a picture. `lines`: of strokes; the area is what the bit cuts along them."""

    name: str
    source: str
    area: Area
    finish: Finish
    depth_mm: float
    lines: MultiLineString | None = None


class Shown(Struct, frozen=True, kw_only=True, eq=False):
    """A picture before it has a size: `bounds` in units of its own, turned as asked, Y up."""

    asked: PictureSpec
    name: str
    picture: Picture
    bounds: tuple[float, float, float, float]

    @property
    def size(self) -> tuple[float, float]:
        x0, y0, x1, y1 = self.bounds
        return x1 - x0, y1 - y0

    @property
    def ratio(self) -> float:
        """Width over height."""
        return self.size[0] / self.size[1]

    def stated_height_mm(self) -> float | None:
        """As it was asked for; None when nobody did."""
        if self.asked.module_mm is not None:
            return self.asked.module_mm * self.size[1]
        if self.asked.own_size and self.picture.unit_mm is not None:
            return self.picture.unit_mm * self.size[1]
        if self.asked.height_mm is not None:
            return self.asked.height_mm
        return None if self.asked.width_mm is None else self.asked.width_mm / self.ratio

    def matrix(self, height_mm: float, middle_mm: tuple[float, float]) -> Matrix:
        x0, y0, x1, y1 = self.bounds
        scale = height_mm / (y1 - y0)
        place = (middle_mm[0] - scale * (x0 + x1) / 2, middle_mm[1] - scale * (y0 + y1) / 2)
        return times((scale, 0, 0, scale, *place), _turned(self.asked))


def _turned(asked: PictureSpec) -> Matrix:
    """Y up, and turned."""
    turn = math.radians(asked.rotation_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    return times((cos, sin, -sin, cos, 0, 0), (1, 0, 0, -1, 0, 0))


def shown_of(spec: SignSpec) -> tuple[Shown, ...]:
    """Every picture read. Raises: AskError for what cannot be said in areas and lines, or shows nothing to cut."""
    counts: dict[str, int] = {}
    for asked in spec.pictures:
        counts[asked.kind] = counts.get(asked.kind, 0) + 1
    found, number = [], dict.fromkeys(counts, 0)
    for asked in spec.pictures:
        number[asked.kind] += 1
        name = asked.kind if counts[asked.kind] == 1 else f"{asked.kind} {number[asked.kind]}"
        picture = _read(asked)
        bounds = picture.bounds(_key_of(asked), _turned(asked))
        if asked.kind == "code":
            count = len(modules_of(asked.what, asked.level))
            bounds = (-QUIET, -count - QUIET, count + QUIET, QUIET)
        if bounds is None or bounds[2] <= bounds[0] or bounds[3] <= bounds[1]:
            raise AskError.at(asked.kind, Message("art.nothing_to_cut", file=picture.file), Message("art.use_colours"))
        if asked.own_size and picture.unit_mm is None:
            raise AskError.at("art-size", Message("art.no_own_size", file=picture.file), Message("art.state_a_size"))
        found.append(Shown(asked=asked, name=name, picture=picture, bounds=bounds))
    return tuple(found)


def _read(asked: PictureSpec) -> Picture:
    if asked.kind == "pictogram":
        return picture_of(asked.what)
    if asked.kind == "code":
        return code_picture(asked.what, asked.level)
    path = Path(asked.what)
    try:
        stamp = path.stat()
    except (OSError, ValueError):
        return read_picture(path, asked.kind)  # which says what is wrong
    return _kept(asked.what, asked.kind, stamp.st_mtime_ns, stamp.st_size)


@lru_cache(maxsize=16)
def _kept(path: str, where: str, _changed_ns: int, _size: int) -> Picture:
    """The same file is drawn many times while the best sizes are sought."""
    return read_picture(Path(path), where)


class _KeyOf(Struct, frozen=True, kw_only=True):
    """What becomes of a colour."""

    usual: Key
    colours: str | tuple[ColourUse, ...]

    def __call__(self, rgb: Rgb) -> Hashable | None:
        if isinstance(self.colours, str):
            is_dark = lightness(rgb) < DARK_BELOW
            return self.usual if self.colours == "all" or (self.colours == "dark") == is_dark else None
        for use in self.colours:
            found = colour_of(use.colour)
            if found and found[0] == rgb:
                return None if use.finish is None else (use.finish, use.depth_mm or 0.0)
        return None


def _key_of(asked: PictureSpec) -> _KeyOf:
    return _KeyOf(usual=(asked.finish, asked.depth_mm), colours=asked.colours)


def parts_of(spec: SignSpec, shown: Shown, height_mm: float, middle_mm: tuple[float, float]) -> tuple[Part, ...]:
    """The picture at its size and in its place. Raises: AskError for what is tangled at that size."""
    asked, matrix, chord = shown.asked, shown.matrix(height_mm, middle_mm), spec.tolerances.chord_mm
    key_of = _key_of(asked)
    areas = shown.picture.seen(key_of, matrix, chord)
    many = len(areas) > 1
    found: list[Part] = []
    lines: dict[Hashable, MultiLineString] = {}
    if any(isinstance(key, tuple) and key[0] == "stroke" for key in areas):
        lines = shown.picture.seen_lines(key_of, matrix, chord)
    for number, (key, area) in enumerate(areas.items(), 1):
        assert isinstance(key, tuple)
        finish, depth = key
        ways = None
        if asked.kind == "code":
            depth = code_depth_mm(spec, asked, height_mm / shown.size[1], depth)
        if asked.is_dots:
            ways = dots(asked, matrix)
            area = _along(spec, ways, depth)
        elif finish == "stroke":
            if key not in lines:
                continue
            ways = lines[key]
            area = _along(spec, ways, depth)
        area = _without_crumbs(area, asked, height_mm)
        found.append(
            Part(
                name=f"{shown.name} part {number}" if many else shown.name,
                source=asked.kind,
                area=_on_grid(area),
                finish=finish,
                depth_mm=spec.thickness_mm if finish == "through" else depth,
                lines=ways,
            )
        )
    return tuple(found)


def _without_crumbs(area: Area, asked: PictureSpec, height: float) -> Area:
    """What a bar over a pictogram leaves of it, without bits that are too thin for any cutter."""
    if not (asked.kind == "pictogram" and asked.what.startswith(NO)):
        return area
    thin = CRUMB_RATIO * height
    return area_of(tuple(part for part in polygons(area) if not shapely.buffer(part, -thin / 2, quad_segs=2).is_empty))


def _along(spec: SignSpec, lines: MultiLineString, depth_mm: float) -> Area:
    """What the V-bit cuts along lines."""
    radius = spec.v_bit.radius_at_depth_mm(depth_mm)
    segments = math.ceil(1.5 * quad_segs(radius, spec.tolerances.chord_mm))
    return area_of(polygons(shapely.buffer(lines, radius, quad_segs=segments)))


def _on_grid(area: Area) -> Area:
    """Its corners on the steps on which letters lie."""
    return area_of(polygons(shapely.set_precision(area, GRID_MM)))


def ordered(spec: SignSpec, shown: Shown, height_mm: float, parts: Sequence[Part]) -> OrderedPicture:
    """What the file says of the picture's area, reckoned at its own size. `parts`: of all pictures, as they lie."""
    asked, key_of = shown.asked, _key_of(shown.asked)
    scale = height_mm / shown.size[1]
    fine = max(shown.size) * FINE_RATIO
    areas = shown.picture.seen(key_of, (1, 0, 0, 1, 0, 0), fine)
    kept = [_without_crumbs(area, asked, shown.size[1]).area for key, area in areas.items() if not _is_lines(key)]
    plain = OrderedPicture(
        name=shown.name,
        source=asked.kind,
        of=asked.what,
        area_mm2=sum(kept) * scale**2,
        height_mm=height_mm,
        has_bridges=spec.bridges is not None,
    )
    if asked.kind != "code":
        return plain
    (code,) = (part for part in parts if part.name == shown.name)
    (x0, y0, x1, y1), half = code.area.bounds, height_mm / 2
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    box = (x - half, y - half, x + half, y + half)
    return replace(plain, code_text=asked.what, code_box_mm=box, module_mm=scale)


def _is_lines(key: Hashable) -> bool:
    return isinstance(key, tuple) and key[0] == "stroke"


def grooves_of(spec: SignSpec, parts: Sequence[Part]) -> Iterator[Groove]:
    """Those that the V-bit engraves."""
    for part in parts:
        if part.finish not in ("groove", "stroke"):
            continue
        plain = Groove(
            name=part.name,
            source=part.source,
            area=part.area,
            angle_deg=bit_angle_deg(spec),
            tip_mm=spec.v_bit.tip_mm,
            max_depth_mm=part.depth_mm,
        )
        if part.lines is None:
            yield plain
        else:
            yield Stroke(**{name: getattr(plain, name) for name in plain.__struct_fields__}, lines=part.lines)


def picture_problems(parts: Sequence[Part]) -> Iterator[Problem]:
    """Pictures that run into each other."""
    for one, other in itertools.combinations(parts, 2):
        if _whole(one) != _whole(other) and shapely.distance(one.area, other.area) < LEAST_WALL_MM:
            what = Message("drawing.runs_into", name=other.name, other=one.name)
            yield Problem(where=other.source, what=what, remedy=Message("art.smaller_or_elsewhere", name=other.source))


def _whole(part: Part) -> str:
    """The picture's name, of which colours are parts that may meet."""
    return part.name.partition(" part ")[0]


def thin_warnings(parts: Sequence[Part], heights: dict[str, float]) -> Iterator[Message]:
    """Wood that would stand thinner than holds between two parts of one picture, and the size at which it would."""
    for part in parts:
        height = heights.get(_whole(part))
        if part.finish == "raised" or part.source == "code" or height is None:
            continue
        walls = _thin_walls(part.area, LEAST_WOOD_MM)
        if not walls:
            continue
        thinnest = _thinnest(part.area)
        x, y = walls[0].representative_point().coords[0]
        yield Message(
            "art.thin_wood",
            name=part.name,
            count=len(walls),
            thin=Mm(round(thinnest, 2)),
            x=Mm(round(x, 1)),
            y=Mm(round(y, 1)),
            height=Mm(math.ceil(height * LEAST_WOOD_MM / max(thinnest, LEAST_WOOD_MM / 10))),
            least=Mm(LEAST_WOOD_MM),
        )


def _thin_walls(area: Area, width_mm: float) -> tuple[Polygon, ...]:
    """Where wood between parts of an area is thinner than a width: what growing and shrinking it again fills, but for
    the corners that a disc does not reach, which are no longer than they are wide."""
    grown: BaseGeometry = area_of(outward(area, width_mm / 2, width_mm / 50))
    filled = shapely.difference(area_of(inward(grown, width_mm / 2, width_mm / 50)), area)
    return tuple(part for part in polygons(filled) if _is_wall(part, area, width_mm))


def _is_wall(part: Polygon, area: Area, width_mm: float) -> bool:
    """Whether it leads from one wall to another, and not into a corner: then little else than the area is round it."""
    if part.area < (width_mm / 5) ** 2:
        return False
    outline = part.exterior
    free = shapely.line_merge(shapely.difference(outline, shapely.buffer(area, width_mm / 50)))
    open_sides = [side for side in shapely.get_parts(free) if side.length > width_mm / 4]
    return len(open_sides) != 1


def _thinnest(area: Area) -> float:
    """The width of the thinnest wall, by halving."""
    low, high = 0.0, LEAST_WOOD_MM
    for _ in range(6):
        middle = (low + high) / 2
        low, high = (low, middle) if _thin_walls(area, middle) else (middle, high)
    return high
