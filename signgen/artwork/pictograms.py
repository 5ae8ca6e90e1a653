"""The pictograms that ship with signgen, as `pictograms_open/catalogue.toml` lists them, and "no X" made of any."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

from msgspec import Struct

from signgen import pictograms_open
from signgen.artwork.matrix import IDENTITY
from signgen.artwork.painted import Painted, Rule
from signgen.artwork.path_data import outline_from
from signgen.artwork.pen import Pen
from signgen.artwork.picture import Picture
from signgen.artwork.read import read_picture
from signgen.option import pick

NO = ("no-", "no ")
"""What stands before a name for the thing with a ring round it and a bar over it."""

ROUND_RATIO = 1.08
"""Radius of the ring's inner side over half the diagonal of the square that holds the thing, whose corners are seldom
full."""

RING_RATIO, BAR_RATIO, GAP_RATIO = 0.16, 0.12, 0.055
"""Widths of ring and bar, and of the wood left beside the bar, over the ring's inner radius (common practice)."""

_BLACK, _WHITE = (0, 0, 0), (255, 255, 255)


class Pictogram(Struct, frozen=True, kw_only=True):
    """`name` is what a user types; the paths are absolute."""

    name: str
    path: Path
    licence: str
    licence_path: Path
    origin: str
    origin_file: str
    sha256: str


@cache
def pictograms() -> tuple[Pictogram, ...]:
    """Every one that ships, by name."""
    file = pictograms_open.__file__
    assert file is not None, "signgen.pictograms_open has an __init__.py"
    folder = Path(file).parent
    with (folder / "catalogue.toml").open("rb") as stream:
        rows = tomllib.load(stream)["pictogram"]
    return tuple(
        Pictogram(
            name=row["name"],
            path=folder / row["file"],
            licence=row["licence"],
            licence_path=folder / row["licence_file"],
            origin=row["origin"],
            origin_file=row["origin_file"],
            sha256=row["sha256"],
        )
        for row in rows
    )


def known_name(name: str, where: str) -> str:
    """A name as the catalogue writes it, with `no-` before it where the thing is not wanted. Raises: AskError that
    offers close matches."""
    names = [each.name for each in pictograms()]
    plain = name.strip().casefold()
    if plain not in names and plain.startswith(NO):
        return NO[0] + pick(plain[len(NO[0]) :].strip().replace(" ", "-"), names, where)
    return pick(plain.replace(" ", "-"), names, where)


@cache
def picture_of(name: str) -> Picture:
    """A pictogram by its known name."""
    by_name = {each.name: each for each in pictograms()}
    if name in by_name:
        return read_picture(by_name[name].path, "pictogram")
    return _with_bar(read_picture(by_name[name.removeprefix(NO[0])].path, "pictogram"))


def _with_bar(picture: Picture) -> Picture:
    """The thing in a ring, with a bar from the upper left to the lower right over it."""
    bounds = picture.bounds(lambda _: "all")
    assert bounds is not None, "every pictogram that ships shows something"
    x0, y0, x1, y1 = bounds
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    inner = ROUND_RATIO * max(x1 - x0, y1 - y0) / 2**0.5
    ring, bar = RING_RATIO * inner, BAR_RATIO * inner
    middle = inner + ring / 2
    reach = middle / 2**0.5
    line = f"M{x - reach!r} {y - reach!r}L{x + reach!r} {y + reach!r}"
    arc = f"A{middle!r} {middle!r} 0 0 1 "
    circle = f"M{x + middle!r} {y!r}{arc}{x - middle!r} {y!r}{arc}{x + middle!r} {y!r}Z"
    drawn = (
        (line, Pen(width=bar + 2 * GAP_RATIO * inner), _WHITE),
        (line, Pen(width=bar), _BLACK),
        (circle, Pen(width=ring), _BLACK),
    )
    more = tuple(_painted(data, pen, colour) for data, pen, colour in drawn)
    return Picture(file=f"no-{picture.file}", items=(*picture.items, *more), unit_mm=None)


def _painted(data: str, how: Rule | Pen, colour: tuple[int, int, int]) -> Painted:
    return Painted(outline=outline_from(data, 100), matrix=IDENTITY, how=how, colour=colour)
