"""Random signs with everything that can be asked for: each must be made, and must pass.

Seeded, so that a run can be repeated, and drawn evenly: a sign differs from the next in everything. (Strategies of
hypothesis vary a few finds and draw the same sign again and again.) What plainly cannot be made, such as holes thinner
than the cutter that is named for them, is not asked for; what is refused all the same is counted by its reason.

    python -m tests.checks.random_signs [COUNT [FIRST-SEED]]

makes signs one after the other and prints a line for each, then how many passed, were refused and failed.
"""

from __future__ import annotations

import json
import sys
import time
import traceback
from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any, Literal

from signgen.borders import BORDERS
from signgen.dialects import DIALECTS
from signgen.errors import AskError, CannotMakeError, CheckFailedError
from signgen.holes import PATTERNS
from signgen.lettering.catalogue import catalogue
from signgen.pipeline import prove
from signgen.shop.load import load_shop
from signgen.shop.tools import Tool
from signgen.spec.keys import KEY_BY_NAME
from tests.asking import spec_of

LEAF = Path(__file__).parents[1] / "borders" / "leaf.svg"
SHOP = load_shop(None)
NOT_LATIN = ("noto-kufi", "noto-sans-hebrew", "noto-sans-devanagari")
LATIN = tuple(face.name for face in catalogue() if not face.name.startswith(NOT_LATIN))
OTHER_SCRIPTS = (
    {"text": ["שלום 5"], "font": "noto-sans-hebrew"},
    {"text": ["سلام ١٧"], "font": "noto-kufi-arabic"},
    {"text": ["Ωmega 5"], "font": "noto-sans"},
    {"text": ["Дом 9"], "font": "noto-sans"},
)
LINES = (
    "17", "4", "12B", "No. 8", "Larkspur", "Fern & Co", "Old Mill", "jolly", "MMXIV", "3/4", "O", "Quay", "W",
    "Ångström", "Öl", "fi ffi", "i!j;", "#1", "100 %", "8½", "--", "A",
)  # fmt: skip
SIZES = ((60, 40), (80, 80), (100, 60), (120, 90), (150, 60), (60, 110), (150, 90), (200, 120), (220, 140))
LARGE_SIZES = ((120, 90), (150, 90), (180, 120), (220, 140))
SHORT = ("17", "4", "7", "O", "W", "A", "XV", "Öl", "12", "H8")
BOLD = ("barlow", "overpass", "atkinson", "roboto-slab", "big-shoulders", "noto-sans")
STENCIL = ("saira-stencil", "overpass")
END_MILLS = tuple(tool for tool in SHOP.tools if tool.kind == "end-mill")
SCREWS = {"M3": 3.4, "M4": 4.5, "M5": 5.5, "M6": 6.6, "#6": 3.58, "#8": 4.37}
"""Least hole that each passes, ISO 273 medium; wood screws by their shank."""

HELIX_MM = 0.31

Kind = Literal["passed", "refused", "failed"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What came of one sign; `why` is the error's text."""

    seed: int
    asked: dict[str, Any]
    kind: Kind
    why: str = ""


def outcome_of(seed: int) -> Outcome:
    """Makes and judges the sign of a seed."""
    asked = sign_of(seed)
    try:
        prove(spec_of(**asked))
    except (AskError, CannotMakeError) as error:
        return Outcome(seed=seed, asked=asked, kind="refused", why=str(error))
    except CheckFailedError as error:
        return Outcome(seed=seed, asked=asked, kind="failed", why=str(error))
    return Outcome(seed=seed, asked=asked, kind="passed")


def sign_of(seed: int) -> dict[str, Any]:
    """What `tests.asking.spec_of` takes, always the same for a seed."""
    rng = Random(seed)
    asked: dict[str, Any] = {"holes": None, "hole_diameter": None, "inset": None}
    finish = rng.choice(["groove", "groove", *KEY_BY_NAME["finish"].choices])
    asked |= {"finish": finish} | _shape(rng, finish) | _making(rng)
    asked |= _holes(rng, float(asked["thickness"]), finish == "raised") | _lettering(rng, finish)
    asked |= _extras(rng, float(asked["thickness"])) | _holding(rng)
    asked |= _finish(rng, asked)
    return asked | _cutters(rng, asked)


def _mm(rng: Random, least: float, most: float) -> str:
    return f"{rng.uniform(least, most):.2f}"


def _sometimes(rng: Random, one_in: int, asked: dict[str, Any]) -> dict[str, Any]:
    return asked if rng.randrange(one_in) == 0 else {}


def _choice(rng: Random, key: str) -> str:
    return rng.choice(KEY_BY_NAME[key].choices)


def _shape(rng: Random, finish: str) -> dict[str, Any]:
    width, height = rng.choice(SIZES if finish == "groove" else LARGE_SIZES)
    border = rng.choice(BORDERS).name
    if border == "circle":
        width = height = min(width, height) + 20
    asked: dict[str, Any] = {"size": f"{width}x{height}", "border": border}
    if border == "path":
        asked |= {"border": f"path:{LEAF}", "path_stretch": True}
    if border in ("rounded", "scalloped"):
        asked |= _sometimes(rng, 2, {"corner_radius": _mm(rng, 4, 12)})
    if border == "arrow":
        asked["arrow_to"] = _choice(rng, "arrow-to")
    return asked


def _making(rng: Random) -> dict[str, Any]:
    return {
        "thickness": rng.choice(["3", "4", "6", "9", "9", "12", "12", "18", "21.3"]),
        "material": rng.choice([material.name for material in SHOP.materials]),
        "machine": rng.choice([machine.name for machine in SHOP.machines]),
    }


def _holes(rng: Random, thickness_mm: float, is_raised: bool) -> dict[str, Any]:
    pattern = rng.choice(PATTERNS).name
    # holes beside a panel want an inset that keeps them on its rim
    if pattern == "none" or is_raised or rng.randrange(4) == 0:
        return {"holes": "none"}
    asked: dict[str, Any] = {"holes": pattern}
    if pattern == "at":
        asked["holes"] = f"at:{_mm(rng, 18, 20)},{_mm(rng, 18, 22)};{_mm(rng, 40, 42)},{_mm(rng, 18, 22)}"
    if pattern == "grid":
        asked["holes"] = "grid:2x2"
    if pattern == "keyholes":
        # They have a size of their own, and go deep into the back.
        return asked if thickness_mm >= 12 else {"holes": "none"}
    form = rng.randrange(6)
    if form < 3:
        asked["hole_diameter"] = rng.choice(["4", "4.5", "5", "6", "7"])
    elif form == 3:
        asked["screw"] = rng.choice(["M4", "M5", "#8"])
    elif form == 4 and thickness_mm >= 6:
        asked |= {"screw": "M4", "countersink": True}
    elif pattern in ("centre", "row", "top-pair"):
        asked |= {"hole_diameter": "5", "slot_length": _mm(rng, 7, 9), "slot_angle": _mm(rng, 0, 180)}
    return asked


def _lettering(rng: Random, finish: str) -> dict[str, Any]:
    if finish != "groove":
        # A cutter of 3 mm must pass between and inside them.
        font = rng.choice(STENCIL if finish == "through" else BOLD)
        return {"text": [rng.choice(SHORT)], "font": font, "letter_spacing": _mm(rng, 4, 6)}
    if rng.randrange(10) == 0:
        return dict(rng.choice(OTHER_SCRIPTS))
    asked: dict[str, Any] = {"text": rng.sample(LINES, rng.choice([1, 1, 1, 2, 2, 3])), "font": rng.choice(LATIN)}
    asked |= _sometimes(rng, 4, {"letter_spacing": _mm(rng, 0, 3)})
    if rng.randrange(6) == 0:
        asked |= {"arc": _mm(rng, 60, 150), "arc_side": rng.choice(["above", "below"])}
    else:
        asked |= _sometimes(rng, 4, {"align": _choice(rng, "align")})
    return asked | _sometimes(rng, 4, {"fit": _choice(rng, "fit")})


def _extras(rng: Random, thickness_mm: float) -> dict[str, Any]:
    asked: dict[str, Any] = {}
    for one_in, key, values in (
        (3, "tolerance", ["0.002", "0.005", "0.02", "0.05"]),
        (4, "breakthrough", ["0", "0.1", "0.5"]),
        (3, "origin", KEY_BY_NAME["origin"].choices),
        (3, "z_zero", KEY_BY_NAME["z-zero"].choices),
        (4, "finish_pass", [_mm(rng, 0.1, 0.5)]),
        (3, "milling", KEY_BY_NAME["milling"].choices),
        (5, "clearance", [_mm(rng, 14, 20)]),
        (5, "clamp_height", [_mm(rng, 2, 12)]),
        (1, "dialect", [dialect.name for dialect in DIALECTS]),
        (4, "line_numbers", [True]),
        (4, "percent_lines", [True]),
        (4, "program_end", KEY_BY_NAME["program-end"].choices),
        (4, "extraction", KEY_BY_NAME["extraction"].choices),
        (6, "warm_up", ["20", "60"]),
        (6, "air_cut", [f"{thickness_mm + 3:g}"]),
    ):
        asked |= _sometimes(rng, one_in, {key: rng.choice(values)})
    return asked


def _holding(rng: Random) -> dict[str, Any]:
    return rng.choice(
        [
            {},
            {},
            {"tabs": rng.choice(["0", "2", "3"])},
            {"tab_spacing": _mm(rng, 60, 120)},
            {"tabs": "3", "tab_shape": "ramped", "tab_height": _mm(rng, 0.5, 1.5), "tab_width": _mm(rng, 5, 8)},
            {"onion_skin": _mm(rng, 0.2, 0.8)},
        ]
    )


def _finish(rng: Random, asked: dict[str, Any]) -> dict[str, Any]:
    finish, more = asked["finish"], dict[str, Any]()
    if finish == "groove":
        more |= _sometimes(rng, 2, {"depth": rng.choice(["0.4", "0.6", "0.8", "1"])})
        more |= _sometimes(rng, 3, {"ridge": rng.choice(["0.03", "0.3"])})
    if finish in ("recess", "raised"):
        # Corners are sharpened in floors deep enough for a cutter at most twice as thick.
        deep = {"sharp_corners": True, "depth": rng.choice(["1.6", "1.8"])}
        more |= deep if rng.randrange(3) == 0 else _sometimes(rng, 2, {"depth": rng.choice(["0.5", "1", "1.4"])})
    if finish == "raised":
        more |= _sometimes(rng, 3, {"panel": _mm(rng, 3, 5)})
    if finish == "through":
        more["bridges"] = rng.choice(["1", "2"])
    plain = asked["holes"] in ("none", "centre") and not asked["border"].startswith(("path", "tag"))
    if finish in ("groove", "recess") and plain:
        more |= _sometimes(rng, 3, {"frame": _mm(rng, 3.5, 5), "frame_width": rng.choice(["0.8", "1.5", "2"])})
        if "frame" in more:
            more |= _sometimes(rng, 2, {"frame_lines": rng.choice(["2", "3"]), "frame_gap": _mm(rng, 1.2, 2)})
    large = min(float(side) for side in asked["size"].split("x")) >= 90
    if large and plain and asked["border"] in ("rectangle", "rounded", "oval", "pill"):
        more |= _trim(rng, finish, "frame" in more)
    return more


def _trim(rng: Random, finish: str, is_framed: bool) -> dict[str, Any]:
    """What only large plain signs have room for, one kind at a time."""
    kind = rng.randrange(5)
    if kind == 0 and not is_framed and finish not in ("groove", "stroke"):
        return {"panel": _mm(rng, 8, 10), "panel_radius": "6", **_sometimes(rng, 2, {"rim": "2", "rim_inset": "7"})}
    if kind == 1 and finish in ("groove", "recess"):
        return {"ornament": rng.choice(["*", "&", "+"]), "ornament_size": _mm(rng, 8, 12)}
    if kind == 2 and not is_framed:
        return {"edge_chamfer": _mm(rng, 0.8, 2)}
    if kind == 3 and finish == "groove":
        return {
            "holes": "keyholes",
            "thickness": "18",
            "hole_diameter": None,
            "screw": None,
            "countersink": None,
            "slot_length": None,
            "slot_angle": None,
        }
    return {}


def _cutters(rng: Random, asked: dict[str, Any]) -> dict[str, Any]:
    more: dict[str, Any] = {}
    if asked["finish"] == "groove" and "countersink" not in asked:
        more |= rng.choice(
            [
                {},
                {"v_bit": rng.choice(["30", "45", "60", "90", "120"])},
                {
                    "v_bit": _mm(rng, 20, 140),
                    "v_bit_diameter": _mm(rng, 4, 16),
                    "v_bit_tip": rng.choice(["0", "0.1", "0.3"]),
                },
            ]
        )
    # Holes are bored on a helix, which needs room.
    widest = min(float(asked["hole_diameter"] or 9), SCREWS.get(asked.get("screw") or "", 9), 6.65) - HELIX_MM
    if asked["border"] == "tag":
        widest = min(widest, 4.0)
    if asked["finish"] == "groove":
        long_enough = [tool for tool in END_MILLS if _fits(tool, widest, float(asked["thickness"]))]
        kind = rng.randrange(3)
        if kind == 1 and long_enough:
            more["end_mill_name"] = rng.choice(long_enough).name
        if kind == 2 and widest > 2.5:
            diameter = rng.uniform(max(2.0, float(asked["thickness"]) / 3), widest)
            more |= _sometimes(rng, 1, {"end_mill": f"{diameter:.2f}", "end_mill_length": "25"})
            if diameter > widest:
                return {key: value for key, value in more.items() if not key.startswith("end_mill")}
    return more


def _fits(tool: Tool, widest_mm: float, thickness_mm: float) -> bool:
    return tool.diameter_mm <= widest_mm and tool.cutting_length_mm > thickness_mm + 0.6


def main(count: int, first: int) -> None:
    kinds: Counter[str] = Counter()
    reasons: Counter[str] = Counter()
    for seed in range(first, first + count):
        begun = time.process_time()
        try:
            outcome = outcome_of(seed)
            kind, why, asked = outcome.kind, outcome.why, outcome.asked
        except Exception:  # a sweep goes on
            kind, why, asked = "CRASHED", traceback.format_exc()[-900:], sign_of(seed)  # type: ignore[assignment]
        kinds[kind] += 1
        if kind == "refused":
            reasons[why.split(":")[0]] += 1
        row = {"seed": seed, "kind": kind, "s": round(time.process_time() - begun, 2), "why": why, "asked": asked}
        print(json.dumps(row, ensure_ascii=False), flush=True)
    print(dict(kinds), dict(reasons))


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:]))
