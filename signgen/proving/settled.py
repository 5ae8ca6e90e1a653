"""What nobody said, chosen so that the sign can be made.

Defaults are right for most signs. Where a sign cannot be made with one, and can with another choice that is as good,
that is taken; what the user states is never touched.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Mapping

from signgen.drawing.draw import draw
from signgen.errors import SignGenError
from signgen.lettering.catalogue import stroke_catalogue
from signgen.operations.choose import choose_cutters
from signgen.proving.depth_choice import quicker_depth_mm
from signgen.shop.tools import MISSING_V_BIT
from signgen.spec.sign_spec import SignSpec

Asked = Mapping[str, object]
Read = Callable[[Asked], SignSpec]

USUAL_BRIDGES = 2
"""For each inside of letters that are cut through: one lets it swing (common practice)."""

SHALLOW_MM = 1.5
"""Of a panel's ground over keyholes, where the usual depth leaves too little wood; it still throws a shadow (common
practice)."""


def settled(asked: Asked, spec: SignSpec, read: Read) -> SignSpec:
    """The sign as asked, with other choices for what was left open where it cannot be made with the usual ones. As it
    is when no choice helps: what is wrong is for the drawing and the planner to say."""
    return _quicker(*_made(asked, spec, read), read)


def _quicker(asked: Asked, spec: SignSpec, read: Read) -> SignSpec:
    """With the depth of grooves that is quicker by far than the usual one, where none was stated."""
    if asked.get("depth") is not None or spec.finish != "groove":
        return spec
    try:
        drawing = draw(spec)
        depth = quicker_depth_mm(drawing, spec, choose_cutters(drawing, spec))
    except SignGenError:
        return spec  # said when it is made
    return read({**asked, "depth": depth}) if depth is not None else spec


def _made(asked: Asked, spec: SignSpec, read: Read) -> tuple[Asked, SignSpec]:
    """What is asked with the first choices that can be made, if any were needed."""
    choices = list(_choices(asked, spec))
    if not choices or can_be_made(spec):
        return asked, spec
    for count in range(1, len(choices) + 1):
        for some in itertools.combinations(choices, count):
            chosen = {**asked, **dict(some)}
            other = _read(read, chosen)
            if other is not None and can_be_made(other):
                return chosen, other
    return asked, spec


def _choices(asked: Asked, spec: SignSpec) -> Iterator[tuple[str, object]]:
    """Keys that were left open, each with what may help."""
    finishes = {spec.finish, *(row.finish for row in spec.text.rows)}
    in_lines = {face.name for face in stroke_catalogue()}
    open_keys: dict[str, tuple[object, bool]] = {
        "sharp-corners": (True, bool(finishes & {"raised", "recess"})),
        "bridges": (USUAL_BRIDGES, "through" in finishes),
        "finish": (
            "recess" if spec.v_bit.name == MISSING_V_BIT else "stroke",
            spec.v_bit.name == MISSING_V_BIT
            or (spec.finish == "groove" and any(row.font in in_lines for row in spec.text.rows)),
        ),
        "edge": ("none", not any(tool.kind == "end-mill" for tool in spec.shop.tools) and spec.end_mill is None),
        "panel-depth": (SHALLOW_MM, spec.panel is not None and spec.keyholes is not None and "depth" not in asked),
    }
    for key, (value, helps) in open_keys.items():
        if helps and asked.get(key) is None:
            yield key, value


def _read(read: Read, asked: Asked) -> SignSpec | None:
    try:
        return read(asked)
    except SignGenError:
        return None


def can_be_made(spec: SignSpec) -> bool:
    """Whether everything has room and cutters for all of it are at hand."""
    try:
        choose_cutters(draw(spec), spec)
    except SignGenError:
        return False
    return True
