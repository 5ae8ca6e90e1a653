"""A line of a program in plain words."""

from __future__ import annotations

import math
from collections.abc import Iterator

from signgen.lesson.line_facts import LEVEL_MM, STILL_MM, LineFacts
from signgen.messages import Message, Mm, MmPerMin, Num, Sentence
from signgen.messages.values import Typed
from signgen.messages.wording import has_words
from signgen.replay.motion import ARC_CCW, ARC_CW, RAPID

PLACES = 4
"""Decimals of places and lengths: those of the programs."""
STEEP_RATIO = 0.02
"""Down over across, from which a cut that goes down is called a ramp."""
_MOTIONS = frozenset(("G0", "G1", "G2", "G3", "G38.2", "G81", "G82", "G83", "G84", "G85", "G86", "G87", "G88", "G89"))
_OF_MOTION = frozenset("XYZIJKRQL")
_ENDS = ("M2", "M30")


def told(facts: LineFacts) -> tuple[Message, ...]:
    """Whole sentences: what its words set, then where it goes, then which pass that is."""
    step = facts.step
    if not step.ran:
        return (Message("line.never"),)
    if step.fault is not None:
        return (Message("line.fault", why=step.fault.message),)
    beside = tuple(step.comments)
    if not step.words and not facts.step.count:
        return (_wordless(facts),)
    said = [*_settings(facts), *_travel(facts)]
    said += [Message("line.end", word=step.words[name]) for name in _ENDS if name in step.words]
    said += [Message("line.comment_beside", text=text) for text in beside]
    return tuple(said) or (Message("line.unread", words=step.text),)


def _wordless(facts: LineFacts) -> Message:
    step = facts.step
    if step.comments:
        return Message("line.comment", text="; ".join(step.comments))
    if step.text == "%":
        return Message("line.percent")
    return Message("line.number_only" if step.text else "line.empty")


def _settings(facts: LineFacts) -> Iterator[Message]:
    """What words other than those of motion do, in the order in which the machine takes them."""
    step = facts.step
    starts = {"M3", "M4"} & set(step.words)
    for name, spelled in step.words.items():
        if name in _OF_MOTION or name in _MOTIONS or name in _ENDS or name in ("P", "G4"):
            continue
        if name == "F":
            yield Message("line.word_f", word=spelled, feed=Typed(step.feed), unit=_unit(facts))
        elif name == "S":
            runs = not starts and ("M3" in step.modal or "M4" in step.modal)
            yield Message("line.word_s_runs" if runs else "line.word_s", word=spelled, rpm=Typed(step.speed))
        elif name == "T":
            yield Message("line.word_t", word=spelled, tool=Typed(step.values["T"]))
        elif name in ("M3", "M4"):
            yield Message("line.word_m3" if name == "M3" else "line.word_m4", word=spelled, rpm=Typed(step.speed))
        elif name == "M5":
            yield Message("line.word_m5", word=spelled)
        elif has_words(f"rs.{row_of(name)}.short"):
            yield Message("line.word", word=spelled, short=Message(f"rs.{row_of(name)}.short"))
    for event in step.events:
        if event.kind == "dwell":
            yield Message("line.dwell", words=event.words, seconds=Num(event.value))
        elif event.kind == "stored":
            yield Message("line.stored", words=event.words)


def row_of(name: str) -> str:
    """The row of the tables in which a word is explained: 'g55' for G57, 'a' for B and C."""
    if name[:3] in ("G55", "G56", "G57", "G58", "G59"):
        return "g55"
    if name.startswith("G92"):
        return "g92"
    return {"G61.1": "g61", "B": "a", "C": "a"}.get(name, name.lower())


def _unit(facts: LineFacts) -> Message:
    if facts.step.inverse_time:
        return Message("line.inverse")
    return Message("line.mm_per_min" if facts.step.unit_mm == 1.0 else "line.inch_per_min")


def _travel(facts: LineFacts) -> Iterator[Message]:
    step, start, end = facts.step, facts.start_mm, facts.end_mm
    words = " ".join(step.words[name] for name in step.words if name in _MOTIONS or name in _OF_MOTION) or step.text
    if start is None or end is None:
        if step.words.keys() & (_MOTIONS | {"X", "Y", "Z"}) and not step.words.keys() & {"G10", "G92"}:
            yield Message("line.unread", words=words)
        return
    yield _move(facts, words, start, end)
    if facts.arc is not None and abs(end[2] - start[2]) >= LEVEL_MM:
        yield Message("line.helix", from_z=_typed(facts, start[2]), to_z=_typed(facts, end[2]))
    if facts.since and step.modal[0] in _MOTIONS:
        yield Message("line.in_force", word=step.modal[0], line=facts.since)
    if facts.kind == RAPID or step.count > 1:
        return
    under = Message("line.feature", text=facts.under) if facts.under else Message("line.feature_none")
    if facts.pass_number:
        level = Message("line.level", z=_typed(facts, end[2]))
        yield Message(
            "line.pass", pass_number=facts.pass_number, passes=facts.passes, level=level, feature=under
        )  # fmt: skip
    elif end[2] < start[2] - LEVEL_MM:
        yield Message("line.way_down", feature=under)


def _move(
    facts: LineFacts, words: str, start: tuple[float, float, float], end: tuple[float, float, float]
) -> Message:  # fmt: skip
    length = Mm(facts.length_mm, PLACES - 1, True)
    here, there = _place(facts, start), _place(facts, end)
    heights = {"from_z": _typed(facts, start[2]), "to_z": _typed(facts, end[2])}
    across = math.hypot(end[0] - start[0], end[1] - start[1])
    if facts.step.count > 1:
        return Message("line.many", words=words, count=facts.step.count, length=length, place=there)
    pace = _pace(facts)
    if facts.arc is not None:
        centre = Message(
            "line.centre", x=_typed(facts, facts.arc.centre_mm[0]), y=_typed(facts, facts.arc.centre_mm[1])
        )
        return Message(
            "line.arc_cw" if facts.kind == ARC_CW else "line.arc_ccw",
            words=words, start=here, place=there, centre=centre, radius=Mm(facts.arc.radius_mm, PLACES, True),
            turned=Num(facts.arc.turned_deg, 1, True), length=length, pace=pace,
        )  # fmt: skip
    if not facts.start_known and facts.kind == RAPID:
        named = " ".join(f"{axis}{facts.step.values[axis]:g}" for axis in "XYZ" if axis in facts.step.values)
        return Message("line.first", words=words, place=named or there)
    if facts.length_mm < STILL_MM:
        return Message("line.still", words=words)
    if facts.kind == RAPID:
        if across < STILL_MM:
            return Message("line.rapid_up" if end[2] > start[2] else "line.rapid_down", words=words, **heights)
        return Message("line.rapid", words=words, start=here, place=there, length=length)
    if across < STILL_MM:
        return Message(
            "line.feed_up" if end[2] > start[2] else "line.feed_down", words=words, length=length, pace=pace, **heights
        )
    ramp = start[2] - end[2] > STEEP_RATIO * across
    return Message(
        "line.feed_ramp" if ramp else "line.feed", words=words, start=here, place=there, length=length, pace=pace
    )  # fmt: skip


def _pace(facts: LineFacts) -> Sentence:
    if facts.seconds is None:
        return ""
    return Message("line.pace", feed=MmPerMin(facts.feed_mm_per_min), seconds=Num(facts.seconds, 2, True))


def _typed(facts: LineFacts, mm: float) -> Typed:
    """As the program writes it, in its own unit."""
    return Typed(mm / facts.step.unit_mm, PLACES, True)


def _place(facts: LineFacts, place: tuple[float, float, float]) -> Message:
    x, y, z = (_typed(facts, value) for value in place)
    return Message("line.place", x=x, y=y, z=z)


def is_arc(facts: LineFacts) -> bool:
    """Whether the line moves on one arc."""
    return facts.arc is not None and facts.kind in (ARC_CW, ARC_CCW)
