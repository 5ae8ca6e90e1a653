"""`preview.html`: the board as the programs leave it, with every move to play back. One file that loads nothing."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path

from msgspec import Struct

from signgen.checks.check import Case
from signgen.errors import AskError
from signgen.job.facts import JobFacts
from signgen.job.title import title
from signgen.markup.markup import Html, el, raw
from signgen.markup.page import page
from signgen.messages import Message
from signgen.numbers import rounded
from signgen.playback.packing import PER_MM, pack
from signgen.playback.timing import motion_seconds
from signgen.replay.heights import HeightMap
from signgen.replay.motion import Replay
from signgen.replay.swept import Profile
from signgen.shop.materials import Machine, Material
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool
from signgen.words.words import Words, words_of

SCRIPTS = ("moves.js", "carve.js", "light.js", "listing.js", "overlay.js", "solid.js", "controls.js")
"""In the order in which they need each other; the last one starts the page."""
MOST_CELLS = 1_500_000
"""Of the page's own simulation; larger boards are simulated there on every second or third cell."""
POLICY = "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:"
"""The browser itself refuses to load anything."""


class Played(Struct, frozen=True, kw_only=True):
    """One program to play: its text as it stands, what it makes the machine do, and how long that takes."""

    file: str
    text: str
    replay: Replay
    tool: Tool
    minutes: float


class Scene(Struct, frozen=True, kw_only=True):
    """What is played, on which board."""

    title: str
    about: str
    board: HeightMap
    top_mm: float
    zero: WorkZero
    machine: Machine
    material: Material
    programs: tuple[Played, ...]


def preview_html(facts: JobFacts) -> str:
    """The page, from the doctype on. The board in it is cut by the page itself from the moves that the programs'
    texts make; the simulation that judged them is not in it."""
    words = words_of(facts)
    sign = facts.drawing
    about = words(
        "page.about", size=words.size(sign.width_mm, sign.height_mm), thickness=words.mm(sign.thickness_mm, 2),
        material=words.material(facts), programs=words.count("programs", len(facts.programs)),
    )  # fmt: skip
    scene = Scene(
        title=title(facts), about=about, board=facts.boards[-1], top_mm=sign.thickness_mm, zero=facts.zero,
        machine=facts.spec.machine, material=facts.spec.material,
        programs=tuple(
            Played(file=each.file, text=each.text, replay=each.replay, tool=each.tool, minutes=each.minutes)
            for each in facts.programs
        ),
    )  # fmt: skip
    return scene_html(scene, words)


def case_html(case: Case, title: str, words: Words) -> str:
    """The page that plays programs which were judged, whoever wrote them; those that move nothing are left out.
    Raises: AskError when none moves."""
    stock = case.stock
    programs = tuple(
        Played(file=Path(each.file).name, text=each.text, replay=each.replay, tool=each.tool, minutes=0.0)
        for each in case.programs
        if len(each.replay.motions)
    )
    if not programs:
        raise AskError.at("page", Message("page.nothing"), Message("page.other_file"))
    about = words(
        "page.about", size=words.size(stock.width_mm, stock.height_mm), thickness=words.mm(stock.thickness_mm, 2),
        material=words.said(case.material.label), programs=words.count("programs", len(programs)),
    )  # fmt: skip
    scene = Scene(
        title=title, about=about, board=case.boards[-1], top_mm=stock.thickness_mm, zero=case.zero,
        machine=case.machine, material=case.material, programs=programs,
    )  # fmt: skip
    return scene_html(scene, words)


def scene_html(facts: Scene, words: Words) -> str:
    """The page of a scene."""
    folder = files("signgen.playback")
    script = "".join(folder.joinpath("script", name).read_text("utf-8") for name in SCRIPTS)
    return page(
        words("page.title", sign=facts.title),
        folder.joinpath("preview.css").read_text("utf-8"),
        el("header", el("h1", facts.title), el("p", facts.about)),
        el("noscript", el("p", words("page.noscript"))),
        _main(facts, words),
        el("script", raw(_data(facts, words)), type="application/json", id="job"),
        el("script", raw(f'"use strict";\n{script}')),
        language=words.language,
        policy=POLICY,
    )


def _main(facts: Scene, words: Words) -> Html:
    board = facts.board
    ny, nx = board.z_mm.shape
    stage = el(
        "div",
        el("canvas", id="flat"), el("canvas", id="over"), el("canvas", id="solid", hidden=""),
        id="stage", tabindex="0", role="img", aria_label=words("page.stage", sign=facts.title),
    )  # fmt: skip
    section = el("canvas", id="section", role="img", aria_label=words("page.section_label"))
    programs = [el("option", program.file, value=str(i)) for i, program in enumerate(facts.programs)]
    film = el(
        "div",
        el("button", words("page.play"), id="play", type="button", disabled="", aria_pressed="false"),
        el("button", "\u25c0", id="back", type="button", disabled="", aria_label=words("page.back")),
        el("button", "\u25b6", id="on", type="button", disabled="", aria_label=words("page.on")),
        el("input", id="when", type="range", min="0", max="1", step="any", value="1", disabled="",
           aria_label=words("page.slider")),
        el("output", "", id="clock", for_="when"),
        cls="bar",
    )  # fmt: skip
    choice = el(
        "div",
        el("label", words("page.speed"), el("select", id="speed", disabled="")),
        el("label", words("page.which"),
           el("select", el("option", words("page.all"), value=""), *programs, id="which", disabled="")),
        el("label", el("input", id="air", type="checkbox", disabled=""), words("page.air")),
        el("label", el("input", id="grid", type="checkbox", disabled=""), words("page.grid")),
        el("button", words("page.view"), id="view", type="button", disabled="", aria_pressed="false"),
        cls="bar",
    )  # fmt: skip
    return el(
        "main",
        el("div", stage, section, cls="frame", style=f"--shape: {nx / ny:.4f}"),
        el(
            "div",
            el("div", el("p", "", id="doing"), el("p", "", id="depth", aria_live="off"), cls="said"),
            _readout(words),
            el("div", film, choice, cls="controls", role="group", aria_label=words("page.controls")),
            el("p", words("page.opening"), id="status", role="status"),
            el("details", el("summary", words("page.keys")), _keys(words), el("p", words("page.hint_flat"), id="hint")),
            cls="beside",
        ),
    )


def _readout(words: Words) -> Html:
    """The line that runs with its neighbours, where the tip is, and what is in force."""
    names = ("x", "y", "z", "f", "s")
    cells = [el("div", el("dt", name.upper()), el("dd", "", id=f"at-{name}")) for name in names]
    lines = [
        el("code", "", id=f"line-{name}", cls="now" if name == "now" else None) for name in ("before", "now", "after")
    ]
    return el(
        "div",
        el("div", *lines, id="lines"),
        el("dl", *cells, cls="at"),
        el("p", words("page.modal"), " ", el("code", "", id="modal")),
        id="readout", role="group", aria_label=words("page.readout"),
    )  # fmt: skip


def _keys(words: Words) -> Html:
    rows = []
    for name, text in words.of("keys").items():
        rows += [el("dt", el("kbd", words(f"key.{name}"))), el("dd", text)]
    return el("dl", *rows)


def _data(facts: Scene, words: Words) -> str:
    """What the script works on, as JSON in which no text can end its element."""
    machine, material = facts.machine, facts.material
    runs = []
    for program in facts.programs:
        seconds = motion_seconds(program.replay.motions, machine)
        runs.append((program.replay.motions, seconds, max(0.0, 60 * program.minutes - float(seconds.sum()))))
    packed = pack(runs, facts.zero)
    data = {
        "language": words.language,
        "words": words.of("play"),
        "grid": _grid(facts.board),
        "top": rounded(facts.top_mm, 4),
        "zero": [rounded(facts.zero.x_mm, 4), rounded(facts.zero.y_mm, 4)],
        "zeroHeight": rounded(facts.zero.z_mm, 4),
        "face": material.colour_rgb,
        "ground": material.ground_rgb,
        "grain": material.grain,
        "programs": [
            _program(program, first, words) for program, first in zip(facts.programs, packed.firsts, strict=True)
        ],
        "perMm": PER_MM,
        "moves": packed.moves,
        "arcs": packed.arcs,
        "packed": packed.text,
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")


def _grid(board: HeightMap) -> dict[str, float]:
    """Cells of the page's board: those of the simulated one, or every few of them."""
    ny, nx = board.z_mm.shape
    every = 1
    while -(-nx // every) * -(-ny // every) > MOST_CELLS:
        every += 1
    return {
        "nx": -(-nx // every),
        "ny": -(-ny // every),
        "x0": board.x0_mm,
        "y0": board.y0_mm,
        "cell": board.cell_mm * every,
    }


def _program(program: Played, first: int, words: Words) -> dict[str, object]:
    return {
        "file": program.file,
        "label": words.tool(program.tool),
        "first": first,
        "tool": _tool(program.tool),
        "text": program.text.replace("\r\n", "\n").replace("\r", "\n"),
    }


def _tool(tool: Tool) -> dict[str, object]:
    """The cutter as its underside: see carve.js."""
    profile = Profile.of(tool)
    return {
        "radius": profile.radius_mm,
        "tip": profile.tip_mm,
        "rise": 0 if profile.flat else profile.rise,
        "ball": profile.ball,
        "edge": tool.cutting_length_mm,
        "shank": tool.shank_mm,
        "length": tool.stickout_mm,
    }
