"""How the letters are made, in words for the sheet and in figures for the report."""

from __future__ import annotations

from typing import Any

import shapely

from signgen.drawing.drawing import Drawing, Recess
from signgen.sheet.job_facts import JobFacts
from signgen.sheet.numbers import rounded
from signgen.sheet.words import Words

DEPTH_DECIMALS = 4


def finish_words(facts: JobFacts, words: Words) -> list[str]:
    """Sentences about letters that are no plain grooves, and about the panel."""
    drawing, bridges = facts.drawing, facts.spec.bridges
    said = []
    strokes = [groove for groove in drawing.grooves if groove.lines is not None]
    if strokes:
        wide = _lengths(words, [2 * stroke.limit_radius_mm for stroke in strokes])
        deep = _lengths(words, [stroke.max_depth_mm for stroke in strokes])
        said.append(words("finish.stroke", width=wide, depth=deep))
    flat = [recess for recess in sunk_letters(drawing) if not drawing.is_through(recess)]
    if flat:
        said.append(words("finish.recess", depth=_lengths(words, [_own_depth_mm(drawing, each) for each in flat])))
    grounds = [recess for recess in drawing.recesses if not recess.text]
    if grounds:
        key = "finish.raised" if drawing.raised else "finish.panel"
        said.append(words(key, depth=_lengths(words, [recess.depth_mm for recess in grounds])))
    if any(drawing.is_through(recess) for recess in drawing.recesses):
        said.append(words("finish.through"))
        if bridges:
            said.append(words.count("finish.bridges", bridges.count, width=words.mm(bridges.width_mm, 2)))
    return said


def sunk_letters(drawing: Drawing) -> list[Recess]:
    """Letters that are recesses, also those cut right through."""
    return [recess for recess in drawing.recesses if recess.text]


def floors_report(facts: JobFacts) -> list[dict[str, Any]]:
    """Every flat floor: what it is, how deep below the face, and whether it goes right through."""
    return [
        {
            "name": recess.name,
            "depth_mm": rounded(recess.depth_mm, DEPTH_DECIMALS),
            "through": facts.drawing.is_through(recess),
            "sharp_corners": recess.sharp,
        }
        for recess in facts.drawing.recesses
    ]


def _own_depth_mm(drawing: Drawing, letter: Recess) -> float:
    """Below what lies round it: the panel's floor when there is one."""
    around = [
        recess.depth_mm for recess in drawing.recesses if not recess.text and shapely.covers(recess.area, letter.area)
    ]
    return letter.depth_mm - max(around, default=0.0)


def _lengths(words: Words, lengths_mm: list[float]) -> str:
    least, most = words.figure(min(lengths_mm), 2), words.figure(max(lengths_mm), 2)
    said = least if least == most else words("range", least=least, most=most)
    return f"{said}\N{NO-BREAK SPACE}mm"
