"""From a view box to the viewport that shows it. Source: W3C, SVG 1.1 (second edition), 7.7 and 7.8."""

from __future__ import annotations

from signgen.artwork.matrix import NUMBER, Matrix

Box = tuple[float, float, float, float]
"""x, y, width, height."""

_ALONG = {"min": 0.0, "mid": 0.5, "max": 1.0}


def view_box(text: str) -> Box | None:
    """None for four numbers that are no box."""
    numbers = [float(n) for n in NUMBER.findall(text)]
    if len(numbers) != 4 or NUMBER.sub("", text).strip(" ,\t\r\n\f") or not (numbers[2] > 0 and numbers[3] > 0):
        return None
    return numbers[0], numbers[1], numbers[2], numbers[3]


def fitted(box: Box, into: Box, how: str) -> Matrix:
    """The matrix that lays a view box into a viewport as `preserveAspectRatio` says."""
    words = how.split()
    if words and words[0] == "defer":
        words = words[1:]
    align = words[0] if words else "xMidYMid"
    across, up = into[2] / box[2], into[3] / box[3]
    if align == "none":
        return (across, 0, 0, up, into[0] - box[0] * across, into[1] - box[1] * up)
    scale = max(across, up) if "slice" in words[1:] else min(across, up)
    x_share, y_share = _ALONG.get(align[1:4].lower(), 0.5), _ALONG.get(align[5:8].lower(), 0.5)
    return (
        scale, 0, 0, scale,
        into[0] - box[0] * scale + x_share * (into[2] - box[2] * scale),
        into[1] - box[1] * scale + y_share * (into[3] - box[3] * scale),
    )  # fmt: skip
