"""Colours of SVG, and how light they are."""

from __future__ import annotations

import re

Rgb = tuple[int, int, int]

_FRACTION = re.compile(
    r"rgba?\(\s*([\d.]+)(%?)[\s,]+([\d.]+)%?[\s,]+([\d.]+)%?\s*(?:[,/]\s*([\d.]+)(%?)\s*)?\)", re.ASCII
)

DARK_BELOW = 0.65
"""Paint is dark whose lightness (CIE L*, over 100) is less: black, red (0.53), blue and any usual green are; yellow,
light grey and white are not."""


def colour_of(text: str) -> tuple[Rgb, float] | None:
    """Red, green, blue, and the opacity from 0 to 1; None for what is no colour."""
    plain = text.strip()
    if found := _FRACTION.fullmatch(plain.casefold()):
        scale = 2.55 if found[2] else 1.0
        red, green, blue = (min(255, round(float(found[n]) * scale)) for n in (1, 3, 4))
        alpha = float(found[5]) / (100 if found[6] else 1) if found[5] else 1.0
        return (red, green, blue), min(1.0, alpha)
    if plain.casefold() == "transparent":
        return (0, 0, 0), 0.0
    from PIL import ImageColor  # the names of CSS; only where a file is read

    try:
        rgb = ImageColor.getrgb(plain)
    except ValueError:
        return None
    return (rgb[0], rgb[1], rgb[2]), (rgb[3] / 255 if len(rgb) > 3 else 1.0)


def lightness(rgb: Rgb) -> float:
    """0 black, 1 white, as the eye sees it. Source: IEC 61966-2-1 (sRGB); CIE 1976 L*."""
    linear = [c / 255 / 12.92 if c <= 10 else ((c / 255 + 0.055) / 1.055) ** 2.4 for c in rgb]
    y = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    return 1.16 * y ** (1 / 3) - 0.16 if y > 0.008856 else 9.033 * y
