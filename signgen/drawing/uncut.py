"""What of letters and lines a V-bit cannot cut, measured against their outlines: with its flat tip above all."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

import shapely
from msgspec import Struct
from msgspec.structs import replace

from signgen.errors import Problem
from signgen.features.groove import Groove, Stroke
from signgen.geometry.offsets import polygons, unreachable
from signgen.lettering.faces import faces_with
from signgen.messages import Message, Mm, Num
from signgen.spec.sign_spec import SignSpec

MOST_UNCUT_RATIO, MOST_UNCUT_OF_A_PART = 0.1, 0.3
"""Of a letter, and of each of its parts (the dot of an i): from here on it is another letter. As much of an H in
strokes of a seventh of its height is the end of a bar; a square dot that a round tip cuts loses less than 0.22, that of
a circle in it (derived here)."""

LEAST_DEPTH_MM = 0.1
"""What is shallower than this nobody calls cut: few boards are flatter (common practice)."""

LOOK_MM = 0.005
"""How closely outlines are followed when areas are measured."""

QUICK_CHORDS, LARGER, PLAINLY = 4, 1.03, 0.5
"""Of the quick look: chords of a quarter turn, which come nearer to the outline than the arc by a fiftieth of the
radius (1 - cos(pi / 16)): the disc is larger by more than that; and what share of what may stay counts as plain."""

TRIES = 12
"""Halvings in the search for the widest bottom that would do: to a four-thousandth of the one that does not."""

MOST_NAMED = 4
"""So many letters are named; who sees that many knows what to do."""

LEAST_NAMED_TIP_MM = 0.05
"""Nobody grinds or measures a finer flat (common practice)."""

MOST_TIMES = 2.0
"""Letters that would have to be larger than this times are not helped by another face."""

Tried = Callable[[SignSpec], bool]
"""Whether another sign has room for everything and can be cut."""


class Lost(Struct, frozen=True, kw_only=True):
    """A groove of which too much stays uncut: the share, and how narrow a bit would leave little enough, as the radius
    that it has at the face where it counts as cutting."""

    groove: Groove
    ratio: float
    part_ratio: float
    most_radius_mm: float

    @property
    def called(self) -> str:
        return f'"{self.groove.text}"' if self.groove.text else self.groove.name

    @property
    def said(self) -> Message:
        if self.ratio > MOST_UNCUT_RATIO:
            return Message("uncut.of", percent=_percent(self.ratio), letter=self.called)
        return Message("uncut.of_a_part", percent=_percent(self.part_ratio), letter=self.called)


def uncut_ratio(groove: Groove) -> float:
    """The share of the groove that stays uncut or hardly cut. 0 for strokes along lines, which are as wide as the bit
    cuts them."""
    return _ratios(groove, _radius_mm(groove.angle_deg, groove.tip_mm, groove))[0]


def lost_grooves(grooves: Sequence[Groove]) -> tuple[Lost, ...]:
    """Those of which too much stays uncut, the worst first; each letter of the alphabet once."""
    found: dict[str, Lost] = {}
    for groove in grooves:
        if _is_plainly_kept(groove):
            continue
        ratio, of_a_part = _ratios(groove, _radius_mm(groove.angle_deg, groove.tip_mm, groove))
        if _is_lost(ratio, of_a_part):
            most = _most_radius_mm(groove)
            lost = Lost(groove=groove, ratio=ratio, part_ratio=of_a_part, most_radius_mm=most)
            if lost.called not in found or found[lost.called].ratio < ratio:
                found[lost.called] = lost
    return tuple(sorted(found.values(), key=lambda lost: -lost.ratio))


def _is_plainly_kept(groove: Groove) -> bool:
    """Whether a quick look shows that little enough stays uncut: a disc a little larger, which cuts less, leaves less
    than half of what may stay. Most letters are like that, and measuring takes thirty times as long."""
    if isinstance(groove, Stroke):
        return True
    radius_mm = _radius_mm(groove.angle_deg, groove.tip_mm, groove)
    whole = left = 0.0
    for part in polygons(groove.area):
        middles = shapely.buffer(part, -radius_mm * LARGER, quad_segs=QUICK_CHORDS)
        swept = shapely.intersection(part, shapely.buffer(middles, radius_mm, quad_segs=QUICK_CHORDS))
        uncut = part.area - swept.area
        if uncut > PLAINLY * MOST_UNCUT_OF_A_PART * part.area:
            return False
        whole, left = whole + part.area, left + uncut
    return left <= PLAINLY * MOST_UNCUT_RATIO * whole


def lost_problems(spec: SignSpec, lost: Sequence[Lost], would_do: Tried) -> Iterator[Problem]:
    """What is refused, with what would do: found by trying."""
    bit = Message("uncut.tip", tip=Mm(spec.v_bit.tip_mm)) if spec.v_bit.tip_mm else Message("uncut.bit")
    letters = [each for each in lost if each.groove.text]
    if letters:
        named: list[Message] = [each.said for each in letters[:MOST_NAMED]]
        if len(letters) > MOST_NAMED:
            named.append(Message("uncut.more", count=len(letters) - MOST_NAMED))
        yield Problem(
            where="v-bit-tip",
            what=Message(
                "uncut.letters",
                bit=bit,
                letters=tuple(named),
                depth=Mm(LEAST_DEPTH_MM),
                most=_percent(MOST_UNCUT_RATIO),
            ),
            remedy=Message("uncut.use", ways=tuple(_ways(spec, letters, would_do))),
        )
    for each in lost:
        if not each.groove.text:
            yield Problem(
                where="v-bit-tip",
                what=Message("uncut.line", bit=bit, line=each.called, percent=_percent(each.ratio)),
                remedy=Message("uncut.wider_line", bit=_bit(spec, [each])),
            )


def _percent(ratio: float) -> Num:
    return Num(100 * ratio, 0)


def _radius_mm(angle_deg: float, tip_mm: float, groove: Groove) -> float:
    """Half the width of a bit at the face where it is as deep as counts as cutting. What no disc of that radius covers
    inside an outline is not cut as deep as that."""
    return tip_mm / 2 + min(LEAST_DEPTH_MM, groove.max_depth_mm / 2) * math.tan(math.radians(angle_deg) / 2)


def _ratios(groove: Groove, radius_mm: float) -> tuple[float, float]:
    """The shares that a disc cannot cover: of the whole, and of the part of which it is most."""
    if isinstance(groove, Stroke):
        return 0.0, 0.0
    parts = polygons(groove.area)
    left = [sum(each.area for each in unreachable(part, radius_mm, min(LOOK_MM, radius_mm / 4))) for part in parts]
    return sum(left) / groove.area.area, max(each / part.area for each, part in zip(left, parts, strict=True))


def _is_lost(ratio: float, of_a_part: float) -> bool:
    return ratio > MOST_UNCUT_RATIO or of_a_part > MOST_UNCUT_OF_A_PART


def _most_radius_mm(groove: Groove) -> float:
    low, high = 0.0, _radius_mm(groove.angle_deg, groove.tip_mm, groove)
    for _ in range(TRIES):
        middle = (low + high) / 2
        low, high = (low, middle) if _is_lost(*_ratios(groove, middle)) else (middle, high)
    return low


def _ways(spec: SignSpec, lost: Sequence[Lost], would_do: Tried) -> Iterator[Message]:
    """Larger letters, a finer bit, or another face."""
    groove = lost[0].groove
    times = _radius_mm(groove.angle_deg, groove.tip_mm, groove) / min(each.most_radius_mm for each in lost)
    yield _size(spec, times, would_do)
    yield _bit(spec, lost)
    face = _face(spec, would_do) if times <= MOST_TIMES else None
    if face:
        yield Message("uncut.face", face=face)


def _size(spec: SignSpec, times: float, would_do: Tried) -> Message:
    cap = spec.text.cap_height_mm
    if cap is None or spec.text.own_lines:
        return Message("uncut.larger", times=Num(math.ceil(10 * times) / 10))
    higher = math.ceil(10 * times * cap) / 10
    fits = would_do(replace(spec, text=replace(spec.text, cap_height_mm=higher)))
    return Message("uncut.higher" if fits else "uncut.higher_on_larger", height=Mm(higher))


def _bit(spec: SignSpec, lost: Sequence[Lost]) -> Message:
    """A bit that is narrow enough: one of the shop, the nearest in angle, where it has one."""
    mine, least = spec.v_bit, min(lost, key=lambda each: each.most_radius_mm)
    bits = [
        tool
        for tool in spec.shop.tools
        if tool.kind == "v-bit"
        and tool.angle_deg is not None
        and _radius_mm(tool.angle_deg, tool.tip_mm, least.groove) <= least.most_radius_mm
    ]
    best = min(bits, key=lambda bit: abs((bit.angle_deg or 0.0) - (mine.angle_deg or 0.0)), default=None)
    tip = 2 * (least.most_radius_mm - _radius_mm(least.groove.angle_deg, 0.0, least.groove))
    if best:
        return Message("uncut.finer_bit", name=best.name, tip=Mm(best.tip_mm))
    if tip >= LEAST_NAMED_TIP_MM:
        return Message("uncut.finer_tip", tip=Mm(math.floor(100 * tip) / 100))
    return Message("uncut.sharper")


def _face(spec: SignSpec, would_do: Tried) -> str | None:
    """The first face of the catalogue in which these words can be cut as they are."""
    if spec.text.own_lines:
        return None
    words = {character for line in spec.text.lines for character in line if not character.isspace()}
    for name in faces_with("".join(sorted(words))):
        if name != spec.text.font and would_do(replace(spec, text=replace(spec.text, font=name, font_axes=()))):
            return name
    return None
