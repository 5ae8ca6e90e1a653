"""Elements of SVG 1.1 (W3C): drawings are built of these, so that a sign is made without loading a library for it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from signgen.markup.markup import Html, el

Point = tuple[float, float]
SPACES = {"xmlns": "http://www.w3.org/2000/svg", "xmlns:xlink": "http://www.w3.org/1999/xlink"}


def drawing(size_mm: tuple[str, str], title: str, about: str, *parts: Html, **attributes: Any) -> str:
    """A whole drawing of that paper size, its user units millimetres with Y down; what it shows is told to whoever
    cannot see it."""
    wide, high = size_mm
    return el(
        "svg",
        el("title", title),
        el("desc", about),
        *parts,
        **SPACES,
        version="1.1",
        width=f"{wide}mm",
        height=f"{high}mm",
        viewBox=f"0 0 {wide} {high}",
        role="img",
        **attributes,
    )


def line(a: Point, b: Point, **style: Any) -> Html:
    return el("line", x1=a[0], y1=a[1], x2=b[0], y2=b[1], **style)


def polygon(points: Iterable[Point], **style: Any) -> Html:
    return el("polygon", points=_listed(points), **style)


def polyline(points: Iterable[Point], **style: Any) -> Html:
    """An open line, not filled."""
    return el("polyline", points=_listed(points), fill="none", **style)


def rectangle(corner: Point, size: Point, **style: Any) -> Html:
    return el("rect", x=corner[0], y=corner[1], width=size[0], height=size[1], **style)


def circle(centre: Point, radius: float, **style: Any) -> Html:
    return el("circle", cx=centre[0], cy=centre[1], r=radius, **style)


def path(data: str, **style: Any) -> Html:
    return el("path", d=data, **style)


def text(words: str, place: Point, **style: Any) -> Html:
    return el("text", words, x=place[0], y=place[1], **style)


def image(href: str, size: Point, **style: Any) -> Html:
    """A picture from the origin, stretched to the size."""
    link = {"xlink:href": href}
    return el("image", x=0, y=0, width=size[0], height=size[1], preserveAspectRatio="none", **link, **style)


def _listed(points: Iterable[Point]) -> str:
    return " ".join(f"{x},{y}" for x, y in points)
