"""What the supervised processes do for the page: everything that reads what a person typed or handed over."""

from __future__ import annotations

import io
import os
import zipfile
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from msgspec import Struct

from signgen.batching.shop import shop_of
from signgen.drawing.draw import draw
from signgen.errors import CheckFailedError, SignGenError, gathered
from signgen.job.summary import found_by_checks, lettering_said
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording
from signgen.pictures.sketch import sketch_svg
from signgen.pipeline import REPORT, make_job, read_sign
from signgen.spec import keys
from signgen.spec.as_typed import named_as_typed
from signgen.spec.keys.lettering import LINE
from signgen.spec.sign_file import dump_sign_file
from signgen.user_file import toml_of
from signgen.web.asking import OWN, asked_from
from signgen.web.typed import command_line
from signgen.words.words import words_in

NICE = 10
"""Proofs step back behind the drawings that somebody is looking at."""

Answer = dict[str, Any]


class Request(Struct, frozen=True, kw_only=True):
    """`kind`: a key of DOES. `wanted`: what the browser sent; `own`: this person's files by name; `language`: that of
    the page, in which problems are said."""

    kind: str
    wanted: object
    language: str
    own: Mapping[str, str] = {}


def answer(request: Request) -> Answer:
    """What the page shows. What is wrong with what was asked is an answer too: `problems`, by the option's name."""
    wording = Wording(request.language)
    try:
        return {"ok": True, **DOES[request.kind](request)}
    except SignGenError as error:
        found: Answer = {"ok": False, "problems": [_problem(each, wording) for each in gathered(error.problems)]}
        if isinstance(error, CheckFailedError):
            found["failed"] = True
        return found


def _problem(problem: Any, wording: Wording) -> dict[str, str]:
    return {"where": problem.where, "what": wording(problem.what), "remedy": wording(problem.remedy)}


def _asked(request: Request) -> dict[str, object]:
    own = {name: Path(path) for name, path in request.own.items()}
    asked = asked_from(request.wanted, own)
    own_language = {} if request.language == LANGUAGES[0] else {"language": request.language}
    return own_language | asked


def _sketch(request: Request) -> Answer:
    asked = _asked(request)
    with named_as_typed(asked):
        spec = read_sign(asked, shop_of)
        drawing = draw(spec)
    words = words_in(request.language)
    wording = Wording(request.language)
    title = " / ".join(spec.text.lines)
    return {
        "svg": sketch_svg(spec, drawing, title),
        "title": title,
        "lettering": lettering_said(drawing, words),
        "warnings": [wording(each) for each in drawing.warnings],
        "command": command_line(_shown(asked, request.own)),
        "file": _without_folders(dump_sign_file(spec), request.own),
    }


def _shown(asked: Mapping[str, object], own: Mapping[str, str]) -> dict[str, object]:
    """What was asked for, with the files handed over by the names that they had, without their folder here."""
    return {name: _renamed(value, own) for name, value in asked.items()}


def _renamed(value: object, own: Mapping[str, str]) -> object:
    if isinstance(value, str):
        return _without_folders(value, own)
    if isinstance(value, list):
        return [_renamed(each, own) for each in value]
    return {name: _renamed(each, own) for name, each in value.items()} if isinstance(value, Mapping) else value


def _without_folders(text: str, own: Mapping[str, str]) -> str:
    for name, path in own.items():
        text = text.replace(path, name)
    return text


def _prove(request: Request) -> Answer:
    os.nice(max(0, NICE - os.nice(0)))
    asked = _asked(request)
    with named_as_typed(asked):
        job = make_job(read_sign(asked, shop_of))
    facts, wording = job.facts, Wording(request.language)
    words = words_in(request.language)
    minutes = sum(program.minutes for program in facts.every_program)
    return {
        "warnings": [wording(each) for each in (*facts.warnings, *found_by_checks(facts))],
        "span": words.span(minutes),
        "least": words.size(facts.least.width_mm, facts.least.height_mm),
        "programs": [
            {"file": each.file, "tool": words.tool(each.tool), "span": words.span(each.minutes)}
            for each in facts.every_program
        ],
        "checks": len(facts.checks.results),
        "report": REPORT,
        "files": dict(job.files),
        "zip": zipped(job.files),
    }


def zipped(files: Mapping[str, bytes]) -> bytes:
    """A zip file with the files at its top, always the same bytes for the same files."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            archive.writestr(zipfile.ZipInfo(name), content, zipfile.ZIP_DEFLATED)
    return buffer.getvalue()


def _open(request: Request) -> Answer:
    """A sign file's keys as the page's fields hold them. Files that it names cannot be had from here."""
    found = toml_of(str(request.wanted).encode(), "sign.toml")
    fields = {name: _field(value) for name, value in found.items()}
    asked_from({name: value for name, value in fields.items() if not _names_a_file(name, value)}, {})
    left_out = [name for name, value in fields.items() if _names_a_file(name, value)]
    return {"fields": {name: value for name, value in fields.items() if name not in left_out}, "left_out": left_out}


def _field(value: object) -> object:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return f"{value:g}" if isinstance(value, float) else str(value)
    if isinstance(value, list):
        return [_field(each) for each in value]
    return {name: _field(each) for name, each in value.items()} if isinstance(value, dict) else value


def _names_a_file(name: str, value: object) -> bool:
    """Whether a value would have to be handed over first."""
    option = keys.KEY_BY_NAME.get(name)
    if name == LINE.name or option is None or name == keys.OUT.name:
        return name == keys.OUT.name
    if not isinstance(value, str):
        return False
    return option.kind == "path" or "/" in value or "\\" in value or value.casefold().startswith("path:")


def _look_at(request: Request) -> Answer:
    """Whether a file that was handed over is what it is said to be. `wanted`: its option, and OWN with its name."""
    assert isinstance(request.wanted, Mapping)
    option, name = str(request.wanted["option"]), str(request.wanted["name"])
    path = Path(request.own[name.removeprefix(OWN)])
    if option == "shop":
        shop_of(path)
    elif option == "border":
        from signgen.borders.svg_file import read_svg_path

        read_svg_path(path)
    else:
        from signgen.lettering.faces import open_face

        open_face(path)
    return {}


def _face(request: Request) -> Answer:
    """A few letters of a face, drawn from its own outlines."""
    from signgen.pictures.specimen import sample_svg

    return {"svg": sample_svg(str(request.wanted))}


DOES: Mapping[str, Callable[[Request], Answer]] = {
    "sketch": _sketch, "prove": _prove, "open": _open, "look": _look_at, "face": _face,
}  # fmt: skip
