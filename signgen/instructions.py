"""What the setup sheet tells a person to do, as figures: pages are rendered from these values, and the judge follows
them on a virtual machine."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

PAPER_MM = 0.1
"""A slip of ordinary paper, 80 g per square metre (common practice)."""

On = Literal["face", "spoilboard"]


class Touch(Struct, frozen=True, kw_only=True):
    """A way to set Z: the cutter is lowered at (x, y), in program coordinates, on to a slip of paper that lies on the
    board's upper face or on the bare spoilboard beside the board. `types_mm` is what is then typed as Z, the paper's
    thickness among it; with `plus_thickness` the board's own thickness, as measured there, is added."""

    on: On
    x_mm: float
    y_mm: float
    paper_mm: float = PAPER_MM
    types_mm: float = PAPER_MM
    plus_thickness: bool = False


MM_PER_INCH = 25.4


def typed(value_mm: float, inches: bool) -> str:
    """A figure as it is typed into a machine that counts in millimetres, or in inches: '110', '4.3307'."""
    text = f"{value_mm / MM_PER_INCH:.4f}" if inches else f"{value_mm:.4f}"
    text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def place_typed(x_mm: float, y_mm: float, inches: bool) -> str:
    """'X110 Y12', or 'X4.3307 Y0.4724 inch'."""
    return f"X{typed(x_mm, inches)} Y{typed(y_mm, inches)}{' inch' if inches else ''}"


def set_at(touches: Sequence[Touch], inches: bool) -> str:
    """Where Z is set, for a comment: 'on the spoilboard at X250 Y70, or on the face at X110 Y12'."""
    return ", or ".join(f"on the {touch.on} at {place_typed(touch.x_mm, touch.y_mm, inches)}" for touch in touches)
