"""Elements of SVG 1.1 (W3C) by the markup's own calls: a lesson's drawings are few lines each."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from signgen.markup.markup import Html, el

Point = tuple[float, float]


def drawing(size_mm: tuple[str, str], title: str, about: str, *parts: Html, **attributes: Any) -> str:
    """A whole drawing of that paper size, its user units millimetres with Y down; what it shows is told to whoever
    cannot see it."""
    wide, high = size_mm
    return el(
        "svg", el("title", title), el("desc", about), *parts, xmlns="http://www.w3.org/2000/svg", width=f"{wide}mm",
        height=f"{high}mm", viewBox=f"0 0 {wide} {high}", role="img", font_family="sans-serif", **attributes,
    )  # fmt: skip


def line(a: Point, b: Point, **style: Any) -> Html:
    return el("line", x1=_n(a[0]), y1=_n(a[1]), x2=_n(b[0]), y2=_n(b[1]), **_said(style))


def polygon(points: Iterable[Point], **style: Any) -> Html:
    return el("polygon", points=_listed(points), **_said(style))


def polyline(points: Iterable[Point], **style: Any) -> Html:
    """An open line, not filled."""
    return el("polyline", points=_listed(points), fill="none", **_said(style))


def rectangle(corner: Point, size: Point, **style: Any) -> Html:
    return el("rect", x=_n(corner[0]), y=_n(corner[1]), width=_n(size[0]), height=_n(size[1]), **_said(style))


def circle(centre: Point, radius: float, **style: Any) -> Html:
    return el("circle", cx=_n(centre[0]), cy=_n(centre[1]), r=_n(radius), **_said(style))


def path(data: str, **style: Any) -> Html:
    return el("path", d=data, **_said(style))


def text(words: str, place: Point, **style: Any) -> Html:
    return el("text", words, x=_n(place[0]), y=_n(place[1]), **_said(style))


def _listed(points: Iterable[Point]) -> str:
    return " ".join(f"{_n(x)},{_n(y)}" for x, y in points)


def _said(style: dict[str, Any]) -> dict[str, str]:
    return {name: value if isinstance(value, str) else f"{value:g}" for name, value in style.items()}


def _n(value: float) -> str:
    """A hundredth of a millimetre is finer than any printer."""
    return f"{round(value, 2):g}"
