"""Section 3: how the board is held, and where nothing may stand."""

from __future__ import annotations

from signgen.sheet.fastening import CLAMP_STANDS_MM, Fastening
from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el, item
from signgen.sheet.numbers import figure, mm, size
from signgen.shop.stock import GAP_MM, SCREW_HEAD_MM


def holding(facts: JobFacts, fastening: Fastening) -> Html:
    deep = facts.spec.breakthrough_mm
    spoilboard = (
        "Flat, smooth and swept clean, for a chip under the board tilts it. "
        f"Cuts go {mm(deep, 2)} into it: that scratch is meant."
    )
    under = (
        "Screws end inside the spoilboard and never reach the table under it. "
        f"No metal within {mm(deep + 1)} below the board where it is cut."
    )
    return el(
        "section",
        el("h2", el("i", "3"), "Hold it down"),
        item("spoilboard", "Spoilboard", spoilboard, tick=True),
        item("under", "What lies under", under),
        _screws(facts),
        item("clamps", "Clamps", _clamps(facts, fastening)),
        id="fastening",
    )


def _screws(facts: JobFacts) -> Html:
    if not facts.screws_mm:
        least = facts.least
        text = (
            "This board has no room for screws outside the cut; "
            f"one of {size(least.width_mm, least.height_mm)} or more has."
        )
        return item("screws", "Screws", text)
    rows = [
        el("span", el("b", str(number)), f" X{figure(x)} Y{figure(y)}", cls="place")
        for number, (x, y) in enumerate(facts.screws_mm, 1)
    ]
    return item(
        "screws", "Screws", "in the waste, measured from X0 Y0: ",
        el("span", *rows, cls="places", id="screw-places"),
        f" Heads up to {mm(SCREW_HEAD_MM)} across, flush or below the top; they clear every cut by {mm(GAP_MM)}. "
        "Drill first, so that the board neither lifts nor splits.",
        tick=True,
    )  # fmt: skip


def _clamps(facts: JobFacts, fastening: Fastening) -> str:
    far, room = mm(fastening.from_sign_mm, 0), mm(fastening.clamp_room_mm, 0)
    if fastening.takes_clamps:
        text = (
            f"Only outside the dashed line, no higher than {mm(CLAMP_STANDS_MM, 0)} over the board: "
            f"the collet's nut reaches {far} beyond the sign, and the head comes in and goes out."
        )
    else:
        text = f"None: the collet's nut reaches {far} beyond the sign, and at most {room} of board lie outside its way."
        if not facts.screws_mm:
            text += (
                " Take a larger board, or hold this one by double-sided tape over its whole back, if it sticks well."
            )
    return f"{text} Between cuts the cutter travels {mm(facts.spec.clearance_mm)} over the board."
