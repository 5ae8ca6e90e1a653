"""The codes of the language and the modal groups that they belong to.

Source: NIST IR 6556, Tables 4, 5 and 7. G codes are kept times ten (G59.1
is 591).
"""

from __future__ import annotations

NON_MODAL, MOTION, PLANE, DISTANCE, FEED_MODE, UNITS, RADIUS_COMP = 0, 1, 2, 3, 5, 6, 7
LENGTH_OFFSET, CYCLE_RETURN, WORK_ZERO, PATH_CONTROL = 8, 10, 12, 13
STOPPING, TOOL_CHANGE, SPINDLE, COOLANT, OVERRIDES = 4, 6, 7, 8, 9

G_GROUPS: dict[int, int] = {
    **dict.fromkeys((0, 10, 20, 30, 382, 800, 810, 820, 830, 840, 850, 860, 870, 880, 890), MOTION),
    **dict.fromkeys((170, 180, 190), PLANE),
    **dict.fromkeys((900, 910), DISTANCE),
    **dict.fromkeys((930, 940), FEED_MODE),
    **dict.fromkeys((200, 210), UNITS),
    **dict.fromkeys((400, 410, 420), RADIUS_COMP),
    **dict.fromkeys((430, 490), LENGTH_OFFSET),
    **dict.fromkeys((980, 990), CYCLE_RETURN),
    **dict.fromkeys((540, 550, 560, 570, 580, 590, 591, 592, 593), WORK_ZERO),
    **dict.fromkeys((610, 611, 640), PATH_CONTROL),
    **dict.fromkeys((40, 100, 280, 300, 530, 920, 921, 922, 923), NON_MODAL),
}
M_GROUPS: dict[int, int] = {
    **dict.fromkeys((0, 1, 2, 30, 60), STOPPING),
    **dict.fromkeys((6,), TOOL_CHANGE),
    **dict.fromkeys((3, 4, 5), SPINDLE),
    **dict.fromkeys((7, 8, 9), COOLANT),
    **dict.fromkeys((48, 49), OVERRIDES),
}
AXIS_USERS = frozenset((100, 280, 300, 920))
"""Non-modal codes that take the axis words of their line for themselves."""
CYCLES = frozenset((810, 820, 830, 840, 850, 860, 870, 880, 890))

WORD_USERS: dict[str, frozenset[int]] = {
    "D": frozenset((410, 420)),
    "H": frozenset((430,)),
    "I": frozenset((20, 30, 870)),
    "J": frozenset((20, 30, 870)),
    "K": frozenset((20, 30, 870)),
    "L": CYCLES | {100},
    "P": frozenset((40, 100, 820, 860, 880, 890)),
    "Q": frozenset((830,)),
    "R": CYCLES | {20, 30},
}
"""Which codes give a meaning to a word; without one of them in force on its line the word is refused
(a rule of this project)."""


def code_name(tenths: int) -> str:
    """'G1' for 10, 'G59.1' for 591."""
    return f"G{tenths // 10}" + (f".{tenths % 10}" if tenths % 10 else "")
