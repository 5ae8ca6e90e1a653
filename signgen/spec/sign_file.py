"""The sign file: the same words as the options, one a line, in TOML.

    # A house number. Lengths are millimetres, or texts with a unit.
    text = ["17", "Larkspur Lane"]      # each its own line; "17" alone will do for one
    size = "220x140"                    # or [220, 140], or "8.5x5.5in"
    thickness = 12                      # or "12mm", "1/2in"
    material = "birch-plywood"
    holes = "corners"
    hole-diameter = 7
    inset = 14

Every key is an option of `signgen make` without its dashes, and options on the command line go before the file's
(`merge.py`). Lines that are set each in its own way have a table each instead of their place in `text`:

    font = "barlow"                     # what a line does not say is as the sign has it
    [[line]]
    text = "17"
    digit-height = "102mm"
    [[line]]
    text = "Larkspur Lane"
    font = "pacifico"
    height-ratio = 0.3                  # over the height of the sign's other lines
    align = "left"

A table may hold text, font, font-axes, cap-height or digit-height, height-ratio, align, line-spacing (to the line
above), letter-spacing, finish, depth, arc, arc-side and arc-centre (`lettering_keys.py`); tables stand below all other
keys. Words on the command line, or in a row of a list, take the place of the tables' words, one after the other.

Paths (`font` when it is one, that of `border = "path:..."`, `shop`, `out`) are seen from the folder that the file lies
in.

`sign.toml`, which `make` writes, is such a file with every default filled in, so that the sign comes out the same
when a default changes. What was left to the planner (the end mill, the cap height, the board) stays left to it, as
a comment.
"""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

from signgen.errors import AskError
from signgen.spec.cutters import named_end_mill
from signgen.spec.keys import KEYS
from signgen.spec.lettering_keys import LINE
from signgen.spec.lines import asked_of_line, asked_of_text
from signgen.spec.paths import resolved, resolved_border, resolved_font
from signgen.spec.sign_spec import SignSpec

_PLACE = re.compile(r"^(?P<what>.*?)\s*\(at line (?P<line>\d+), column \d+\)$", re.DOTALL)

_LEFT_OPEN = {
    "font-axes": "the font's own",
    "cap-height": "as large as fits",
    "digit-height": "what goes with the capitals",
    "fit": "nothing to fit",
    "wrap": "lines stay as they are",
    "align": "text on a circle is centred on it",
    "arc": "straight",
    "arc-side": "no circle",
    "arc-centre": "no circle",
    "board": "the least that will do",
    "frame": "none",
    "frame-width": "no frame",
    "frame-lines": "no frame",
    "frame-gap": "no frame",
    "ornament": "none",
    "ornament-font": "no ornament",
    "ornament-size": "no ornament",
    "ornament-inset": "no ornament",
    "rim": "none",
    "rim-inset": "no rim",
    "edge-chamfer": "none",
    "rule-width": "none",
    "panel": "none",
    "bridges": "none",
    "bridge-width": "no bridges",
    "panel-depth": "no panel",
    "panel-radius": "no panel",
    "end-mill": "chosen by the planner",
    "end-mill-length": "chosen by the planner",
    "end-mill-name": "by its diameter, if at all",
    "tabs": "as many as tab-spacing wants",
    "tab-spacing": "by their number",
    "onion-skin": "none",
    "finish-pass": "none",
    "clamp-height": "not said",
    "cell": "by the board and the letters",
    "air-cut": "none",
    "paint": "the bare cut",
    "shop": "what ships with signgen",
}
"""What stands in a comment where the key is left out."""

_NEVER_WRITTEN = ("screw", "screw-fit", "screw-head")
"""The resolved file has the diameters that the screw needs, but for keyholes, which are of a screw."""


def load_sign_file(path: Path) -> dict[str, object]:
    """The keys of a sign file with their values as they stand there, paths made absolute. Whether they are known
    and make sense is for `read_spec` to say.

    Raises: AskError with the file and, where there is one, the line.
    """
    try:
        raw = path.expanduser().read_bytes()
    except OSError as error:
        raise AskError.at(str(path), f"The sign file cannot be read: {error.strerror}.", "Look at the path.") from None
    try:
        keys = tomllib.loads(raw.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise AskError.at(f"{path}:{line}", "The file is not UTF-8 text.", "Save it as UTF-8.") from None
    except RecursionError:
        raise AskError.at(str(path), "Its brackets stand too deep in each other.", "Mend the file.") from None
    except tomllib.TOMLDecodeError as error:
        match = _PLACE.match(str(error))
        where, what = (f"{path}:{match['line']}", match["what"]) if match else (str(path), str(error))
        raise AskError.at(where, f"This is not valid TOML: {what}.", _advice(raw, match)) from None
    folder = path.expanduser().parent
    for key in ("shop", "out"):
        if isinstance(value := keys.get(key), str) and value.strip():
            keys[key] = resolved(value.strip(), folder)
    if isinstance(border := keys.get("border"), str):
        keys["border"] = resolved_border(border.strip(), folder)
    tables = keys.get(LINE.name)
    for table in (keys, *(tables if isinstance(tables, list) else ())):
        for key in ("font", "ornament-font"):
            if isinstance(table, dict) and isinstance(font := table.get(key), str):
                table[key] = resolved_font(font.strip(), folder)
    return keys


def dump_sign_file(spec: SignSpec) -> str:
    """The resolved sign file: reading it gives an equal spec. Keys stand in the order of `signgen make --help`."""
    values = asked_of(spec)
    out = ["# A sign for signgen: `signgen make --from` this file makes it again. Lengths are millimetres."]
    group = ""
    for key in KEYS:
        if key.name not in values and (key.name in _NEVER_WRITTEN or key.name not in _LEFT_OPEN):
            continue
        if key.group != group:
            group = key.group
            out += ["", f"# {group}"]
        if key.name in values:
            out.append(f"{key.name} = {_toml(values[key.name])}")
        else:
            out.append(f"# {key.name}: {_LEFT_OPEN[key.name]}")
    for line in spec.text.own_lines:
        out += ["", f"[[{LINE.name}]]"]
        out += [f"{key} = {_toml(value)}" for key, value in asked_of_line(spec.text, line).items()]
    return "\n".join(out) + "\n"


def asked_of(spec: SignSpec) -> dict[str, object]:
    """What would have to be asked for, every default written out, to get an equal spec from the same shop file."""
    bit, mill, frame, ornament = spec.v_bit, spec.end_mill, spec.frame, spec.ornament
    by_name = mill is not None and named_end_mill(spec.shop, mill.diameter_mm, mill.cutting_length_mm) != mill
    values: dict[str, object] = {
        **asked_of_text(spec.text),
        "size": [spec.width_mm, spec.height_mm],
        "thickness": spec.thickness_mm,
        "material": spec.material.name,
        **spec.border.asked(),
        **spec.holes.asked(),
        **spec.hole_form.asked(),
        "finish": spec.finish,
        "depth": spec.depth_mm,
        "sharp-corners": spec.sharp_corners,
        "ridge": spec.ridge_mm,
        "tolerance": spec.tolerances.total_mm,
        "v-bit": bit.angle_deg,
        "v-bit-diameter": bit.diameter_mm,
        "v-bit-tip": bit.tip_mm,
        "tab-shape": "ramped" if spec.tabs.ramped else "flat",
        "milling": "climb" if spec.climb else "conventional",
        "tab-width": spec.tabs.width_mm,
        "tab-height": spec.tabs.height_mm,
        "breakthrough": spec.breakthrough_mm,
        "machine": spec.machine.name,
        "dialect": spec.dialect,
        "line-numbers": spec.manner.line_numbers,
        "percent-lines": spec.manner.percent_lines,
        "program-end": spec.manner.program_end,
        "extraction": spec.manner.extraction,
        "warm-up": spec.manner.warm_up_s,
        "origin": spec.origin,
        "z-zero": spec.z_zero,
        "language": spec.language,
        "template": spec.template,
        "sheet-format": spec.sheet_format,
        "steps": spec.steps,
        "clearance": spec.clearance_mm,
    }
    optional: dict[str, object] = {
        "board": list(spec.board_mm) if spec.board_mm else None,
        "rule-width": spec.rule_width_mm,
        "bridges": spec.bridges.count if spec.bridges else None,
        "bridge-width": spec.bridges.width_mm if spec.bridges else None,
        "panel": spec.panel.inset_mm if spec.panel else None,
        "panel-depth": spec.panel.depth_mm if spec.panel else None,
        "panel-radius": spec.panel.radius_mm if spec.panel else None,
        "frame": frame.inset_mm if frame else None,
        "frame-width": frame.width_mm if frame else None,
        "frame-lines": frame.lines if frame else None,
        "frame-gap": frame.gap_mm if frame else None,
        "ornament": ornament.text if ornament else None,
        "ornament-font": ornament.font if ornament else None,
        "ornament-size": ornament.size_mm if ornament else None,
        "ornament-inset": ornament.inset_mm if ornament else None,
        "rim": spec.rim.width_mm if spec.rim else None,
        "rim-inset": spec.rim.inset_mm if spec.rim else None,
        "edge-chamfer": spec.chamfer_mm or None,
        "end-mill": mill.diameter_mm if mill and not by_name else None,
        "end-mill-length": mill.cutting_length_mm if mill and not by_name else None,
        "end-mill-name": mill.name if mill and by_name else None,
        "tabs": spec.tabs.count if spec.tabs.spacing_mm is None else None,
        "tab-spacing": spec.tabs.spacing_mm,
        "onion-skin": spec.skin_mm or None,
        "finish-pass": spec.finish_mm or None,
        "clamp-height": spec.clamp_height_mm,
        "cell": spec.cell_mm,
        "air-cut": spec.air_cut_mm,
        "paint": spec.paint,
        "shop": spec.shop.user_file,
    }
    return values | {key: value for key, value in optional.items() if value is not None}


def _toml(value: object) -> str:
    """A value as TOML writes it. JSON's texts are TOML's, since control characters never get this far."""
    match value:
        case str():
            return json.dumps(value, ensure_ascii=False)
        case list():
            return "[" + ", ".join(_toml(each) for each in value) + "]"
        case bool():
            return "true" if value else "false"
        case float() if value.is_integer():
            return str(int(value))
        case _:
            return repr(value)


def _advice(raw: bytes, match: re.Match[str] | None) -> str:
    """What to do about a line that TOML does not take; the usual slip is a text without quotes."""
    lines = raw.decode("utf-8", errors="replace").splitlines()
    line = lines[int(match["line"]) - 1] if match and int(match["line"]) <= len(lines) else ""
    _, equals, value = line.partition("=")
    if equals and value.strip() and value.strip()[0] not in "\"'[{+-.0123456789":
        return f"Put quotes around {value.strip()}."
    return 'Write key = "text", key = 12 or key = ["a", "b"] on each line.'
