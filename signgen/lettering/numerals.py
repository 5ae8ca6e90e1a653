"""Figures beside capitals: whether a house number will look as high as it was asked."""

from __future__ import annotations

from collections.abc import Sequence

from signgen.lettering.faces import Face

SHORT_FIGURES_RATIO = 0.9
"""Figures below this part of a capital's height are told about: in most faces they are within 3 % of each other."""


def numeral_warning(face: Face, lines: Sequence[str]) -> str | None:
    """A sentence when the text has figures that the face draws much shorter than its capitals, else None."""
    ratio = face.digit_height_ratio
    if ratio is None or ratio >= SHORT_FIGURES_RATIO:
        return None
    if not any(character.isdecimal() for line in lines for character in line):
        return None
    return (
        f"The figures of {face.name} are {ratio:.2f} of the height of its capitals. "
        f"For figures of a given height, ask for a cap height {1 / ratio:.2f} times as large, or use another font."
    )
