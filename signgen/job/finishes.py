"""How the letters are made, in words for the sheet and in figures for the report."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import shapely

from signgen.drawing.drawing import Drawing
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.job.facts import JobFacts
from signgen.numbers import rounded
from signgen.spec.sign_spec import SignSpec
from signgen.words.words import Words

DEPTH_DECIMALS = 4


def finish_words(facts: JobFacts, words: Words) -> list[str]:
    """Sentences about letters that are no plain grooves, and about the panel."""
    drawing, bridges = facts.drawing, facts.spec.bridges
    said = list(_of_kinds(drawing, words))
    flat = [recess for recess in sunk_letters(drawing) if not drawing.is_through(recess)]
    if flat:
        said.append(words("finish.recess", depth=_lengths(words, [_own_depth_mm(drawing, each) for each in flat])))
    grounds = [recess for recess in drawing.of(Recess) if not recess.is_letter]
    if grounds:
        key = "finish.raised" if any(letter.is_letter for letter in drawing.of(Raised)) else "finish.panel"
        said.append(words(key, depth=_lengths(words, [recess.depth_mm for recess in grounds])))
    if any(drawing.is_through(recess) for recess in drawing.of(Recess)):
        said.append(words("finish.through"))
        if bridges:
            said.append(words.count("finish.bridges", bridges.count, width=words.mm(bridges.width_mm, 2)))
    return [*said, *_trim_words(facts.spec, words)]


def _of_kinds(drawing: Drawing, words: Words) -> Iterator[str]:
    """What every kind says of those that the sign has."""
    for kind in dict.fromkeys(type(feature) for feature in drawing.features):
        own = [feature for feature in drawing.features if type(feature) is kind]
        yield from (words.said(message) for message in kind.messages(own))


def _trim_words(spec: SignSpec, words: Words) -> Iterator[str]:
    """Sentences about what goes round the letters."""
    frame, ornament, rim = spec.frame, spec.ornament, spec.rim
    if frame and frame.lines > 1:
        width, gap = words.mm(frame.width_mm, 2), words.mm(frame.gap_mm, 2)
        yield words("finish.frame", count=frame.lines, width=width, gap=gap)
    if ornament:
        key = "finish.ornament.stands" if spec.finish == "raised" else "finish.ornament"
        yield words(key, character=ornament.text, size=words.mm(ornament.size_mm, 2))
    if rim:
        yield words("finish.rim", width=words.mm(rim.width_mm, 2))


def trim_report(spec: SignSpec) -> dict[str, Any]:
    """Frame, ornament and rim; None for what there is none of."""
    frame, ornament, rim = spec.frame, spec.ornament, spec.rim
    return {
        "frame": None
        if frame is None
        else {
            "insets_mm": [rounded(inset, DEPTH_DECIMALS) for inset in frame.insets_mm],
            "width_mm": rounded(frame.width_mm, DEPTH_DECIMALS),
        },
        "ornament": None
        if ornament is None
        else {
            "character": ornament.text,
            "font": ornament.font,
            "size_mm": rounded(ornament.size_mm, DEPTH_DECIMALS),
        },
        "edge_chamfer": None
        if not spec.chamfer_mm
        else {
            "width_mm": rounded(spec.chamfer_mm, DEPTH_DECIMALS),
            "depth_mm": rounded(spec.chamfer_mm / spec.v_bit.slope, DEPTH_DECIMALS),
        },
        "rim": None
        if rim is None
        else {
            "width_mm": rounded(rim.width_mm, DEPTH_DECIMALS),
            "inset_mm": rounded(rim.inset_mm, DEPTH_DECIMALS),
        },
    }


def sunk_letters(drawing: Drawing) -> list[Recess]:
    """Letters that are recesses, also those cut right through."""
    return [recess for recess in drawing.of(Recess) if recess.is_letter]


def floors_report(facts: JobFacts) -> list[dict[str, Any]]:
    """Every flat floor: what it is, how deep below the face, and whether it goes right through."""
    return [
        {
            "name": recess.name,
            "depth_mm": rounded(recess.depth_mm, DEPTH_DECIMALS),
            "through": facts.drawing.is_through(recess),
            "sharp_corners": recess.sharp,
        }
        for recess in facts.drawing.of(Recess)
    ]


def _own_depth_mm(drawing: Drawing, letter: Recess) -> float:
    """Below what lies round it: the panel's floor when there is one."""
    around = [
        recess.depth_mm
        for recess in drawing.of(Recess)
        if not recess.is_letter and shapely.covers(recess.area, letter.area)
    ]
    return letter.depth_mm - max(around, default=0.0)


def _lengths(words: Words, lengths_mm: list[float]) -> str:
    least, most = words.length(min(lengths_mm), 2), words.length(max(lengths_mm), 2)
    said = least if least == most else words("range", least=least, most=most)
    return words.with_unit(said)
