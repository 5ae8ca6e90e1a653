"""What boards are made of, as far as cutting is concerned."""

from __future__ import annotations

from msgspec import Struct

from signgen.messages import Sentence
from signgen.shop.manner import USUAL, Manner


class Material(Struct, frozen=True, kw_only=True):
    """One kind of board. The ratios are to the cutter's diameter; `chip_load_ratio` is feed per tooth over diameter.

    `v_step_mm` is the greatest depth that a V-bit takes at once; `entry_deg` the steepest ramp of a cutter going
    down; `colour_rgb` and `ground_rgb` what its face and a fresh cut look like in pictures; `cautions` whole
    sentences for the sheet. `specific_force_n_per_mm2`: the force that one square millimetre of chip takes, which is
    also the work per volume in thousandths of W s; `least_chip_mm` below which an edge rubs, `most_chip_ratio` (to the
    diameter) above which it breaks out: None where nobody knows. `also`: other words for it.
    """

    name: str
    label: Sentence
    chip_load_ratio: float
    spindle_rpm: float
    stepdown_ratio: float
    stepover_ratio: float
    v_step_mm: float
    peck_ratio: float
    entry_deg: float
    plunge_ratio: float
    ramp_ratio: float
    colour_rgb: tuple[int, int, int]
    ground_rgb: tuple[int, int, int]
    grain: bool
    cautions: tuple[Sentence, ...]
    source: str
    specific_force_n_per_mm2: float | None = None
    least_chip_mm: float | None = None
    most_chip_ratio: float | None = None
    also: tuple[str, ...] = ()


class Machine(Struct, frozen=True, kw_only=True):
    """A router's limits. Travel is the room for the cutter's centre, from one end of each axis to the other. `dialect`
    and `manner`: how its control wants programs unless the sign says otherwise."""

    name: str
    label: Sentence
    travel_mm: tuple[float, float, float]
    top_feed_mm_per_min: tuple[float, float, float]
    rapid_mm_per_min: tuple[float, float, float]
    acceleration_mm_per_s2: tuple[float, float, float]
    corner_tolerance_mm: float
    spindle_min_rpm: float
    spindle_max_rpm: float
    spindle_start_s: float
    collet_series: int
    source: str
    dialect: str = "plain"
    manner: Manner = USUAL
    spindle_power_w: float | None = None


class CuttingData(Struct, frozen=True, kw_only=True):
    """How one cutter runs in one material on one machine (made by `shop.feeds.cutting_data`).

    `stepdown_mm` is the depth of a pass, of a drill's peck for a drill; `ramp_mm_per_min` goes along the ramp.
    """

    spindle_rpm: float
    chip_load_mm: float
    feed_mm_per_min: float
    plunge_mm_per_min: float
    ramp_mm_per_min: float
    stepdown_mm: float
    stepover_mm: float
    entry_deg: float
