"""What was asked for, complete: every default filled in, every name turned into a value that can work."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from signgen.borders import Border
from signgen.holes import HolePattern
from signgen.holes.form import HoleForm
from signgen.shop.manner import Manner
from signgen.shop.materials import Machine, Material
from signgen.shop.shop import Shop
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances


@dataclass(frozen=True, slots=True, kw_only=True)
class TextSpec:
    """Lines of lettering. `font` is a catalogue name or a path. `cap_height_mm` None: as large as fits.

    `line_spacing` is baseline to baseline over cap height; `letter_spacing_mm` is added between letters.
    """

    lines: tuple[str, ...]
    font: str
    cap_height_mm: float | None
    align: Literal["left", "centre", "right"]
    line_spacing: float
    letter_spacing_mm: float
    margin_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TabSpec:
    count: int
    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameSpec:
    """A line engraved at a distance inside the edge. None in SignSpec when not asked for."""

    inset_mm: float
    width_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SignSpec:
    """Millimetres throughout. `depth_mm` is the greatest depth of letters. `end_mill` None: the planner chooses; a
    Tool here was named by the user and is kept to. `board_mm` None: the least board."""

    width_mm: float
    height_mm: float
    thickness_mm: float
    material: Material
    text: TextSpec
    border: Border
    holes: HolePattern
    hole_form: HoleForm
    finish: Literal["groove"]
    depth_mm: float
    v_bit: Tool
    end_mill: Tool | None
    tabs: TabSpec
    frame: FrameSpec | None
    rule_width_mm: float | None
    ridge_mm: float
    board_mm: tuple[float, float] | None
    machine: Machine
    dialect: str
    manner: Manner
    origin: Literal["sign", "stock"]
    z_zero: Literal["bottom", "top"]
    breakthrough_mm: float
    clearance_mm: float
    tolerances: Tolerances
    shop: Shop
