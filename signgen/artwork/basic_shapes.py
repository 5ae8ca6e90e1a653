"""Circles, ellipses, rectangles, lines and polygons as path data. Source: W3C, SVG 2, chapter 10, whose equivalent
paths these are: a circle starts at three o'clock, which matters for dashes."""

from __future__ import annotations

from collections.abc import Callable

from signgen.artwork.matrix import NUMBER

SHAPES = frozenset(("path", "rect", "circle", "ellipse", "line", "polyline", "polygon"))

Along = Callable[[str, str], float]
"""The length of an attribute in user units, 0 when it is not there; of the second kind: 'x', 'y' or '' of per cents."""


def path_data(name: str, attributes: dict[str, str], length: Along) -> str:
    """'' for a shape that draws nothing. Raises: ValueError for points that make no sense."""
    match name:
        case "path":
            data = attributes.get("d", "").strip()
            return "" if data == "none" else data
        case "rect":
            return _rect(attributes, length)
        case "circle":
            r = length("r", "")
            return _ellipse(length("cx", "x"), length("cy", "y"), r, r)
        case "ellipse":
            rx, ry = _radii(attributes, length)
            return _ellipse(length("cx", "x"), length("cy", "y"), rx, ry)
        case "line":
            ends = length("x1", "x"), length("y1", "y"), length("x2", "x"), length("y2", "y")
            return "M{!r} {!r}L{!r} {!r}".format(*ends)
    text = attributes.get("points", "")
    if NUMBER.sub("", text).strip(" ,\t\r\n\f"):
        raise ValueError("points")
    numbers = NUMBER.findall(text)
    if len(numbers) % 2:
        raise ValueError("points")
    return f"M{' '.join(numbers)}{'Z' if name == 'polygon' else ''}" if len(numbers) >= 4 else ""


def _radii(attributes: dict[str, str], length: Along) -> tuple[float, float]:
    """What is `auto`, or not there, is as the other one."""
    has = [attributes.get(key, "auto").strip() not in ("", "auto") for key in ("rx", "ry")]
    rx, ry = (length(key, axis) if there else 0.0 for key, axis, there in (("rx", "x", has[0]), ("ry", "y", has[1])))
    return (rx if has[0] else ry), (ry if has[1] else rx)


def _rect(attributes: dict[str, str], length: Along) -> str:
    x, y, wide, high = length("x", "x"), length("y", "y"), length("width", "x"), length("height", "y")
    if wide <= 0 or high <= 0:
        return ""
    rx, ry = _radii(attributes, length)
    rx, ry = min(max(rx, 0.0), wide / 2), min(max(ry, 0.0), high / 2)
    if not rx or not ry:
        return f"M{x!r} {y!r}H{x + wide!r}V{y + high!r}H{x!r}Z"
    arc = f"A{rx!r} {ry!r} 0 0 1 "
    right, low = x + wide, y + high
    return (
        f"M{x + rx!r} {y!r}H{right - rx!r}{arc}{right!r} {y + ry!r}V{low - ry!r}{arc}{right - rx!r} {low!r}"
        f"H{x + rx!r}{arc}{x!r} {low - ry!r}V{y + ry!r}{arc}{x + rx!r} {y!r}Z"
    )


def _ellipse(cx: float, cy: float, rx: float, ry: float) -> str:
    if rx <= 0 or ry <= 0:
        return ""
    arc = f"A{rx!r} {ry!r} 0 0 1 "
    return (
        f"M{cx + rx!r} {cy!r}{arc}{cx!r} {cy + ry!r}{arc}{cx - rx!r} {cy!r}{arc}{cx!r} {cy - ry!r}"
        f"{arc}{cx + rx!r} {cy!r}Z"
    )
