"""The sign file's reference, from the rows of options."""

from __future__ import annotations

from collections.abc import Iterator

from signgen.option import Option
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE_KEYS

EXAMPLE = """# A house number. Lengths are millimetres, or texts with a unit.
text = ["17", "Larkspur Lane"]  # lines; "17" alone will do for one
size = "220x140"              # or [220, 140], or "8.5x5.5in"
thickness = 12                # or "12mm", "1/2in"
material = "birch-plywood"
holes = "corners"
hole-diameter = 7
inset = 14
"""

LINES_EXAMPLE = """size = "220x140"
thickness = 12
font = "barlow"       # what a line does not say is as the sign has it

[[line]]
text = "17"
digit-height = "70mm"

[[line]]
text = "Larkspur Lane"
font = "pacifico"
height-ratio = 0.3    # over the height of the sign's other lines
"""
"""Tables stand below all other keys."""


def reference() -> Iterator[str]:
    """Line by line, none wider than 79 characters."""
    yield "A sign file says what a sign is, in TOML, for signgen make --from FILE:"
    yield ""
    yield from _indented(EXAMPLE)
    yield ""
    yield "Its keys are the options of signgen make without their dashes; options typed"
    yield "beside it go before the file's. Paths are seen from the file's folder. Every"
    yield "sign's folder has such a file, sign.toml, with all defaults filled in."
    yield ""
    yield "Lines that are each set in its own way have tables instead of text:"
    yield ""
    yield from _indented(LINES_EXAMPLE)
    yield ""
    yield "On the command line the same is typed behind the line's text:"
    yield ""
    yield '    signgen make "17" +digit-height=70mm "Larkspur Lane" +font=pacifico ...'
    yield ""
    yield "Keys (signgen explain KEY says more of each)"
    group = ""
    for key in (*keys.KEYS, keys.OUT):
        if key.group != group:
            group = key.group
            yield ""
            yield f"  {group}"
        yield _row(key)
    yield ""
    yield "  In a [[line]] table"
    yield from (_row(key) for key in LINE_KEYS)


def value_form(key: Option) -> str:
    """What stands behind the = of a key: choices, an example, or the kind of value."""
    if key.kind == "choice":
        return " | ".join(f'"{choice}"' for choice in key.choices)
    if key.kind == "flag":
        return "true | false"
    if key.kind == "lines":
        return '["TEXT", "TEXT"]'
    if key.kind in ("length", "count", "number", "angle"):
        return key.metavar
    return f'"{key.metavar}"'


def _row(key: Option) -> str:
    return f"    {key.name} = {value_form(key)}"


def _indented(text: str) -> Iterator[str]:
    yield from (f"    {line}".rstrip() for line in text.splitlines())
