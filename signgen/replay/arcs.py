"""Centres of arcs as the published rules define them.

Source: NIST IR 6556, section 3.5.3. Coordinates are millimetres.
"""

from __future__ import annotations

import math

from signgen.messages import Message, Mm
from signgen.replay.measure import same_place
from signgen.replay.refusal import RefusedError
from signgen.replay.words import Line

PLANE_AXES: dict[int, tuple[int, int, int]] = {170: (0, 1, 2), 180: (2, 0, 1), 190: (1, 2, 0)}
"""For each plane its two axes, in the order that turns counter-clockwise seen from the end of the third,
which follows."""
MISMATCH_MM = 0.002
MISMATCH_INCH_MM = 0.0002 * 25.4
"""How far the two radii of an arc may differ: 0.002 mm in millimetres, 0.0002 in in inches."""
MISMATCH_SLACK_MM = 1e-9
"""Numbers of the text are decimal, those of the comparison binary."""
_LETTERS, _OFFSETS = "XYZ", "IJK"


def arc_centre(
    line: Line, clockwise: bool, plane: int, start: list[float], end: list[float], factor: float, name: str
) -> tuple[float, float]:
    """Centre of the arc, in the order of `PLANE_AXES[plane]`. `name` is the code in force, 'G2' or 'G3'.

    Raises: RefusedError for every way in which section 3.5.3 calls an arc wrong.
    """
    first, second, third = PLANE_AXES[plane]
    said = line.say(name, "X", "Y", "Z", "I", "J", "K", "R")
    in_plane = _LETTERS[first] in line.values or _LETTERS[second] in line.values
    if not in_plane:
        letters = " or ".join(sorted((_LETTERS[first], _LETTERS[second])))
        raise RefusedError(said, Message("reader.arc_in_plane_needs_full", letters=letters))
    if _OFFSETS[third] in line.values:
        raise RefusedError(said, Message("reader.has_no_meaning_arc_in", offsets=_OFFSETS[third], plane=plane // 10))
    offsets = [line.values.get(_OFFSETS[axis]) for axis in (first, second)]
    if "R" in line.values and offsets != [None, None]:
        raise RefusedError(said, Message("reader.arc_has_either_radius_r"))
    p, q = (start[first], start[second]), (end[first], end[second])
    if "R" in line.values:
        return _centre_from_radius(p, q, line.values["R"] * factor, clockwise, said)
    if offsets == [None, None]:
        raise RefusedError(said, Message("reader.arc_needs_centre_radius"))
    centre = (p[0] + (offsets[0] or 0.0) * factor, p[1] + (offsets[1] or 0.0) * factor)
    mismatch = abs(_distance(p, centre) - _distance(q, centre))
    if not mismatch <= greatest_mismatch_mm(factor):
        raise RefusedError(said, Message("reader.centre_nearer_one_end_arc", mismatch=Mm(mismatch, 4)))
    return centre


def greatest_mismatch_mm(factor: float) -> float:
    """The two radii's allowed difference, for programs in units of `factor` millimetres."""
    return (MISMATCH_MM if factor == 1.0 else MISMATCH_INCH_MM) + MISMATCH_SLACK_MM


def _distance(p: tuple[float, float], q: tuple[float, float]) -> float:
    # Not math.hypot: the batch reader must get the same last bit from numpy.
    dx, dy = p[0] - q[0], p[1] - q[1]
    return math.sqrt(dx * dx + dy * dy)


def _centre_from_radius(
    p: tuple[float, float], q: tuple[float, float], radius: float, clockwise: bool, said: str
) -> tuple[float, float]:
    """R > 0 takes the arc of at most 180 degrees, R < 0 the other one."""
    if same_place(p, q):
        raise RefusedError(said, Message("reader.arc_given_radius_may_not"))
    chord = _distance(p, q)
    if chord / 2 - abs(radius) > MISMATCH_MM:
        raise RefusedError(said, Message("reader.radius_too_small_reach_end"))
    height = math.sqrt(max(0.0, radius * radius - chord * chord / 4))
    left = (radius < 0) == clockwise
    side = height / chord if left else -height / chord
    return ((p[0] + q[0]) / 2 - side * (q[1] - p[1]), (p[1] + q[1]) / 2 + side * (q[0] - p[0]))
