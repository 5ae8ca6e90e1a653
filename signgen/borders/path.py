"""An outline drawn elsewhere: the one closed path of an SVG file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.chain import Chain
from signgen.borders.common import NoEyes, Point, ring
from signgen.errors import AskError, CannotMakeError
from signgen.messages import Message, Mm, Num
from signgen.option import Option
from signgen.user_file import LOOK, expanded, shown, why

if TYPE_CHECKING:
    from shapely.geometry import Polygon

PATH_STRETCH = Option(
    name="path-stretch", kind="flag", metavar="true", group="Shape",
    help="Let the outline of a file lose its proportions to fill the size.",
    words=("stretch the outline", "distort"),
)  # fmt: skip

STRETCH_RATIO = 0.005
"""Proportions that differ by less were meant to be the same: sizes are written in round numbers."""

_BOUNDS_RATIO = 1e-6
"""Chord for the own size, over it: far below what can be measured."""


class PathOutline(NoEyes, frozen=True, kw_only=True):
    """`chain` at its own size with the lower left corner of its bounds at (0, 0); `file` in absolute form."""

    file: str
    chain: Chain
    own_size_mm: tuple[float, float]
    stretch: bool

    name: ClassVar[str] = "path"
    summary: ClassVar[str] = "The one closed path of an SVG file, at its own size or scaled to the sign's."
    options: ClassVar[tuple[Option, ...]] = (PATH_STRETCH,)
    argument: ClassVar[str] = "FILE.svg"

    @classmethod
    def from_options(
        cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float
    ) -> PathOutline:
        """Raises: AskError when the file is not one closed path that does not cross itself, or its proportions are
        not the sign's."""
        file, chain, own = _own(argument)
        stretch = values.get(PATH_STRETCH.name) is True
        off = (width_mm / height_mm) / (own[0] / own[1])
        if not stretch and not 1 / (1 + STRETCH_RATIO) <= off <= 1 + STRETCH_RATIO:
            high, wide = width_mm * own[1] / own[0], height_mm * own[0] / own[1]
            raise AskError.at(
                "size",
                Message(
                    "border.x_other_proportions_than_path",
                    width=Mm(width_mm),
                    height=Mm(height_mm),
                    own_width=Mm(own[0]),
                    own_height=Mm(own[1]),
                ),
                Message(
                    "border.use_size_of_path",
                    width=Num(width_mm),
                    high=Num(round(high, 2)),
                    wide=Num(round(wide, 2)),
                    height=Num(height_mm),
                ),
            )
        return cls(file=str(file), chain=chain, own_size_mm=own, stretch=stretch)

    def asked(self) -> dict[str, str | float]:
        asked: dict[str, str | float] = {"border": f"{self.name}:{self.file}"}
        return asked | {PATH_STRETCH.name: True} if self.stretch else asked

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Scaled to the sign's size, chorded then, and fitted to its rectangle to the last digit. Raises:
        CannotMakeError when chords cross where the curves only just do not."""
        from signgen.geometry.offsets import polygons

        x_scale, y_scale = width_mm / self.own_size_mm[0], height_mm / self.own_size_mm[1]
        points = self.chain.mapped(lambda p: (p[0] * x_scale, p[1] * y_scale)).points(chord_mm)
        (x0, y0), (x1, y1) = _bounds(points)
        area = ring(((x - x0) * width_mm / (x1 - x0), (y - y0) * height_mm / (y1 - y0)) for x, y in points)
        if not area.is_valid:
            raise CannotMakeError.at("border", _crossing(area), Message("border.draw_outline_so_keeps_clear"))
        return polygons(area)[0]


def own_size_mm(argument: str) -> tuple[float, float]:
    """The size at which the file draws its path, in whole microns. Raises: AskError as for the border itself."""
    return _own(argument)[2]


def _own(argument: str) -> tuple[FilePath, Chain, tuple[float, float]]:
    # Most signs have another border, and `--help` lists all of them.
    from signgen.borders.svg_chain import chain_of
    from signgen.borders.svg_file import read_svg_path

    try:
        file = expanded(argument, "border").resolve()
    except (OSError, ValueError, RuntimeError) as error:  # RuntimeError: links that lead round in a circle
        raise AskError.at("border", Message("files.unread", path=shown(argument), why=why(error)), LOOK) from None
    path = read_svg_path(file)
    chain = chain_of(path)
    (x0, y0), (x1, y1) = _bounds(chain.points(_fine(chain)))
    size = (round(x1 - x0, 3), round(y1 - y0, 3))
    if min(size) <= 0:
        raise AskError.at(path.where, Message("border.path_no_width_no_height"), Message("border.draw_closed_outline"))
    area = ring(chain.points(max(size) * 1e-5))
    if not area.is_valid or area.area == 0:
        raise AskError.at(path.where, _crossing(area), Message("border.draw_outline_so_keeps_clear"))
    return file, chain.mapped(lambda p: (p[0] - x0, p[1] - y0)), size


def _fine(chain: Chain) -> float:
    points = [chain.start, *(p for each in chain.segments for p in each.points)]
    (x0, y0), (x1, y1) = _bounds(points)
    return max(x1 - x0, y1 - y0, 1e-9) * _BOUNDS_RATIO


def _bounds(points: list[Point]) -> tuple[Point, Point]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return (min(xs), min(ys)), (max(xs), max(ys))


def _crossing(area: Polygon) -> Message:
    """Where an outline crosses itself, as GEOS says it: 'Self-intersection[12 34]'."""
    from shapely.validation import explain_validity

    _, _, place = explain_validity(area).partition("[")
    x_y = place.rstrip("]").split()
    if len(x_y) != 2:
        return Message("border.path_encloses_nothing")
    (x0, y0, _, _), x, y = area.bounds, float(x_y[0]), float(x_y[1])
    return Message("border.path_crosses_touches_itself_from", x=Mm(round(x - x0, 2)), y=Mm(round(y - y0, 2)))
