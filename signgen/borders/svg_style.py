"""What a style of an SVG file may say: how a shape looks, never what it is, where it lies or whether it is drawn.

A style that changes the outline (CSS can set `d`, `transform`, `display` ...) is refused by name, for nothing here
reads style sheets. Source of the properties of looks: W3C, Scalable Vector Graphics 1.1 (second edition), appendix N,
property index; those of texts and effects by which a path alone is not changed.
"""

from __future__ import annotations

import re

LOOKS = frozenset(
    (
        "fill", "fill-opacity", "fill-rule", "stroke", "stroke-width", "stroke-opacity", "stroke-linecap",
        "stroke-linejoin", "stroke-miterlimit", "stroke-dasharray", "stroke-dashoffset", "color", "opacity",
        "color-interpolation", "color-interpolation-filters", "color-rendering", "shape-rendering", "image-rendering",
        "text-rendering", "paint-order", "vector-effect", "stop-color", "stop-opacity", "solid-color", "solid-opacity",
        "clip-rule", "isolation", "mix-blend-mode", "enable-background", "overflow", "pointer-events", "cursor",
        "font", "font-family", "font-size", "font-style", "font-variant", "font-weight", "font-stretch", "line-height",
        "letter-spacing", "word-spacing", "text-anchor", "text-align", "text-decoration", "text-indent",
        "text-transform", "writing-mode", "direction", "baseline-shift", "dominant-baseline", "white-space",
        "shape-padding", "shape-margin", "inline-size", "src", "unicode-bidi", "background", "background-color",
        "marker", "marker-start", "marker-mid", "marker-end", "title", "desc",
    )
)  # fmt: skip

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_PROPERTY = re.compile(r"(?:^|[{;])\s*([-\w]+)\s*:")
_RULE = re.compile(r"@\s*([-\w]+)")
_HARMLESS = {"display": ("inline", "block"), "visibility": ("visible",)}


def properties(style: str) -> list[tuple[str, str]]:
    """Names of properties with their values, in lower case, from a style attribute or a whole sheet."""
    plain = _COMMENT.sub(" ", style)
    found = []
    for match in _PROPERTY.finditer(plain):
        value = re.split(r"[;}]", plain[match.end() :], maxsplit=1)[0]
        found.append((match[1].casefold(), value.replace("!important", "").strip().casefold()))
    return found


def more_than_looks(style: str) -> str | None:
    """The first thing in a style that may change what is drawn, as it is written; None when there is none."""
    rule = _RULE.search(_COMMENT.sub(" ", style))
    if rule and rule[1].casefold() not in ("charset", "font-face"):
        return f"@{rule[1]}"
    for name, value in properties(style):
        vendor = name.startswith(("-", "--"))
        if name not in LOOKS and not vendor and value not in _HARMLESS.get(name, ()):
            return f"{name}: {value[:40]}"
    return None


def is_hidden(attributes: dict[str, str]) -> bool:
    """Whether `display: none` takes an element and all in it out of the picture. Source: SVG 1.1, 11.5."""
    told = [*properties(attributes.get("style", "")), ("display", attributes.get("display", "").strip().casefold())]
    return next((value == "none" for name, value in told if name == "display" and value), False)
