"""The job in figures for other programs: `report.json`, whose keys (`schemas/report.py`) others rely on."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from msgspec import ValidationError, convert, to_builtins

from signgen.checks.check import CheckResult
from signgen.disk.ours import FORMAT, REPORT, digest
from signgen.errors import AskError
from signgen.features.feature import told
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.tab import Tab
from signgen.instructions import Instructions
from signgen.job.codes import codes_report
from signgen.job.engraving import engraving_report
from signgen.job.facts import JobFacts, PieceFacts, ProgramFacts
from signgen.job.finishes import floors_report, trim_report
from signgen.job.legibility import legibility_report, lettering_report, texts_report
from signgen.numbers import rounded
from signgen.program.estimate import OperationTime
from signgen.replay.measure import extents
from signgen.replay.motion import Motions
from signgen.spec.keys.papers import NO_TEMPLATE
from signgen.spec.paper import tiling
from signgen.user_file import read_json

VERSION = 1
NO_FILES: Mapping[str, str] = {}
NO_CONTENTS: Mapping[str, bytes] = {}
MM, MINUTES = 4, 2
"""Decimals: programs have four in millimetres, an estimate has not even two."""


def stated_screws(path: Path) -> tuple[tuple[float, float], ...]:
    """Where a report on disk, and the setup sheet beside it, says that screws go; in program coordinates.

    Raises: AskError when the file is no report.
    """
    told = read_json(path, str(path.parent), remedy="Make the sign again.")
    try:
        return tuple((float(x), float(y)) for x, y in told["fastening"]["screws_mm"])
    except (ValueError, KeyError, TypeError, OverflowError):
        what = f"{path.name} is no report of signgen."
        raise AskError.at(str(path.parent), what, "Make the sign again.") from None


def stated_instructions(path: Path) -> Instructions | None:
    """What a report on disk, and the setup sheet beside it, tells a person to do; None where it has nothing of that.

    Raises: AskError when the file is no report.
    """
    try:
        told = json.loads(path.read_text(encoding="utf-8")).get("instructions")
        return None if told is None else convert(told, Instructions)
    except (OSError, ValueError, AttributeError, ValidationError):
        what = f"{path.name} is no report of signgen."
        raise AskError.at(str(path.parent), what, "Make the sign again.") from None


def report(facts: JobFacts, files: Mapping[str, str] = NO_FILES) -> dict[str, Any]:
    """The report as plain values, keys in the order of their schema; extents are those of the programs as read back.

    `files` has everything else that the folder gets with its SHA-256, so that the next make knows what in it is ours.
    """
    spec, drawing, least = facts.spec, facts.drawing, facts.least
    on_board = spec.origin == "stock"
    return {
        "format": FORMAT,
        "version": VERSION,
        "sign": {
            "width_mm": rounded(drawing.width_mm, MM),
            "height_mm": rounded(drawing.height_mm, MM),
            "thickness_mm": rounded(drawing.thickness_mm, MM),
            "units": spec.units,
            "material": spec.material.name,
            "lines": list(spec.text.lines),
            "cap_height_mm": rounded(drawing.cap_height_mm, MM),
            "font": spec.text.font,
            "lettering": [
                {**line, "finish": spec.finish_of(spec.text.rows[line["line"] - 1])}
                for line in lettering_report(drawing)
            ],
            "texts": texts_report(spec.text.lines, drawing),
            "finish": spec.finish,
            "features": [told(feature) for feature in drawing.features],
            "floors": floors_report(facts),
            "trim": trim_report(spec),
            "bridges": spec.bridges.count if spec.bridges else 0,
            "holes": [{"name": hole.name, **hole.facts()} for hole in drawing.of(Hole)],
            "tabs": len(drawing.of(Tab)),
            "skin_mm": rounded(drawing.skin_mm, MM),
        },
        "stock": {
            "min_width_mm": rounded(least.width_mm, MM),
            "min_height_mm": rounded(least.height_mm, MM),
            "datum_x_mm": 0.0 if on_board else rounded(least.sign_x_mm, MM),
            "datum_y_mm": 0.0 if on_board else rounded(least.sign_y_mm, MM),
            "board_mm": None if spec.board_mm is None else [rounded(v, MM) for v in spec.board_mm],
            "z_zero": "bottom" if facts.zero.z_mm == 0 else "top",
        },
        "programs": [_program(program) for program in facts.programs],
        "outline": _outline(facts),
        "air_cut": _air_cut(facts),
        "minutes": rounded(sum(program.minutes for program in facts.programs), MINUTES),
        "shares": _shares([time for program in facts.programs for time in program.times]),
        "checks": [_check(result) for result in facts.checks.results],
        "fastening": {
            "screws_mm": [[rounded(x, MM), rounded(y, MM)] for x, y in facts.screws_mm],
            "datum": spec.origin,
        },
        "instructions": to_builtins(instructions_of(facts)),
        "engraving": engraving_report(facts),
        **_roughing(facts),
        **codes_report(facts),
        "legibility": legibility_report(drawing),
        "warnings": list(map(str, facts.warnings)),
        **_template(facts),
        **_back(facts),
        **({"pieces": [_piece(piece) for piece in facts.pieces]} if facts.pieces else {}),
        "files": [*files, REPORT],
        "sha256": dict(files),
    }  # fmt: skip


def instructions_of(facts: JobFacts) -> Instructions:
    """Of the back, where there is one, and of the face."""
    return Instructions(set_ups=(*((facts.back.set_up,) if facts.back else ()), facts.set_up))


def report_text(facts: JobFacts, files: Mapping[str, bytes] = NO_CONTENTS) -> str:
    """The same as JSON, the same bytes for the same job; `files` has everything else that the folder gets."""
    told = report(facts, {name: digest(content) for name, content in files.items()})
    return json.dumps(told, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


def _outline(facts: JobFacts) -> dict[str, Any] | None:
    """The program that shows what will be cut; its extent is the rectangle that it goes round."""
    if facts.outline is None:
        return None
    return {"file": facts.outline.file, "spindle": False, "extent": _extent(facts.outline.replay.motions)}


def _air_cut(facts: JobFacts) -> dict[str, Any] | None:
    """The programs that run in the air, and how much higher they do."""
    if facts.spec.air_cut_mm is None:
        return None
    files = dict.fromkeys(program.file for program in facts.lifted)
    return {"lifted_mm": rounded(facts.spec.air_cut_mm, MM), "files": list(files)}


def _back(facts: JobFacts) -> dict[str, Any]:
    """What is cut from behind before the face: keyholes in sign coordinates, and the programs in their own."""
    back = facts.back
    if back is None:
        return {}
    return {
        "keyholes": [{"name": keyhole.name, **keyhole.facts()} for keyhole in facts.drawing.of(Keyhole)],
        "back": {
            "programs": [_program(program) for program in back.programs],
            "outline": _outline(back),
            "air_cut": _air_cut(back),
            "minutes": rounded(sum(program.minutes for program in back.programs), MINUTES),
            "checks": [_check(result) for result in back.checks.results],
            "screws_mm": [[rounded(x, MM), rounded(y, MM)] for x, y in back.screws_mm],
            "warnings": list(map(str, back.warnings)),
        },
    }


def _template(facts: JobFacts) -> dict[str, Any]:
    """The drilling template's paper and how many sheets of it, when there is one."""
    spec, drawing = facts.spec, facts.drawing
    if spec.template == NO_TEMPLATE or facts.pieces:
        return {}
    tiles = tiling(drawing.width_mm, drawing.height_mm, spec.template)
    return {"template": {"paper": spec.template, "sheets_across": tiles.across, "sheets_up": tiles.up}}


def _extent(motions: Motions) -> dict[str, list[float]]:
    """Where the tip goes, in program coordinates."""
    extent = extents(motions)
    axes = {} if extent is None else {"x_mm": extent.x_mm, "y_mm": extent.y_mm, "z_mm": extent.z_mm}
    return {axis: [rounded(low, MM), rounded(high, MM)] for axis, (low, high) in axes.items()}


def _program(program: ProgramFacts) -> dict[str, Any]:
    tool, cutting = program.tool, program.cutting
    return {
        "file": program.file,
        "does": list(map(str, program.description)),
        "tool": {
            "name": tool.name,
            "kind": tool.kind,
            "diameter_mm": rounded(tool.diameter_mm, MM),
            "angle_deg": None if tool.angle_deg is None else rounded(tool.angle_deg, MM),
            "tip_mm": rounded(tool.tip_mm, MM),
            "shank_mm": rounded(tool.shank_mm, MM),
        },
        "spindle_rpm": rounded(cutting.spindle_rpm, 0),
        "feed_mm_per_min": rounded(cutting.feed_mm_per_min, 1),
        "plunge_mm_per_min": rounded(cutting.plunge_mm_per_min, 1),
        "minutes": rounded(program.minutes, MINUTES),
        "shares": _shares(program.times),
        "operations": [
            {"does": str(time.description), "minutes": rounded(time.seconds / 60, MINUTES), "shares": _shares((time,))}
            for time in program.times
        ],
        "cut_length_mm": rounded(program.cut_length_mm, 1),
        "travel_length_mm": rounded(program.travel_length_mm, 1),
        "extent": _extent(program.replay.motions),
    }


def _piece(piece: PieceFacts) -> dict[str, Any]:
    """A sign of a whole sheet, by its corner and size as it lies, from the corner of all signs together."""
    return {
        "name": piece.name,
        "row": piece.row,
        "lines": list(piece.lines),
        "x_mm": rounded(piece.x_mm, MM),
        "y_mm": rounded(piece.y_mm, MM),
        "width_mm": rounded(piece.width_mm, MM),
        "height_mm": rounded(piece.height_mm, MM),
        "turned": piece.turned,
    }


def _shares(times: Sequence[OperationTime]) -> dict[str, float]:
    """Of the time in which the machine moves: cutting, getting down into the work, travelling."""
    whole = sum(time.seconds for time in times) or 1.0
    return {
        "cutting": rounded(sum(time.cutting_s for time in times) / whole, 3),
        "entry": rounded(sum(time.entry_s for time in times) / whole, 3),
        "travel": rounded(sum(time.travel_s for time in times) / whole, 3),
    }


def _check(result: CheckResult) -> dict[str, Any]:
    return {
        "code": result.code,
        "name": result.name,
        "severity": result.severity,
        "passed": result.passed,
        "skipped": result.skipped,
        "detail": str(result.detail),
        "findings": [
            {"message": str(finding.message), "file": finding.file, "line": finding.line, "remedy": str(finding.remedy)}
            for finding in result.findings
        ],
    }


def _roughing(facts: JobFacts) -> dict[str, Any]:
    """Which cutter cleared floors before a thinner one finished them, and what that saved, the second fitting reckoned
    in; nothing where none did."""
    found = facts.roughing
    if found is None:
        return {}
    return {
        "roughing": {
            "cleared_by": found.tool.name,
            "finished_by": found.finish[0].tool.name,
            "minutes": rounded(found.minutes, MINUTES),
            "alone_minutes": rounded(found.alone_minutes, MINUTES),
            "saves_minutes": rounded(found.alone_minutes - found.minutes, MINUTES),
        }
    }
