"""Lines whose letters are made otherwise than the sign's: what each may be, and how deep."""

from __future__ import annotations

from msgspec.structs import replace

from signgen.messages import Message
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked
from signgen.spec.depths import letter_depth_of
from signgen.spec.finish import Finish
from signgen.spec.keys.lettering import LINE, LINE_KEY_BY_NAME
from signgen.spec.sign_spec import LineSpec, TextSpec


def with_finishes(
    a: Asked, text: TextSpec | None, finish: Finish | None, thickness_mm: float | None, v_bit: Tool | None
) -> TextSpec | None:
    """The text with the depth of every line that has a finish or a depth of its own."""
    if text is None or finish is None:
        return text
    if not text.own_lines:
        if finish == "stroke":
            _must_have_one_face(a, text)
        return text
    rows = tuple(_line(a, row, n, finish, thickness_mm, v_bit) for n, row in enumerate(text.own_lines, 1))
    if any((row.finish or finish) == "stroke" for row in rows):
        _must_have_one_face(a, text)
    return replace(text, own_lines=rows)


def finishes_of(text: TextSpec | None, finish: Finish | None) -> frozenset[Finish]:
    """Every way in which letters are made; none while there is a problem."""
    if text is None or finish is None:
        return frozenset()
    return frozenset(row.finish or finish for row in text.rows)


def _line(a: Asked, row: LineSpec, n: int, finish: Finish, thickness_mm: float | None, v_bit: Tool | None) -> LineSpec:
    if row.finish in (None, finish) and row.depth_mm is None:
        return replace(row, finish=None)
    # Unless it has a depth of its own, a line of another finish has the usual one: that of the sign is for the sign's.
    own = Asked({"depth": row.depth_mm}, LINE_KEY_BY_NAME)
    if finish == "raised":
        what = Message("spec.raised_letters_stand_one_ground")
        own.wrong("finish" if row.finish else "depth", what, Message("spec.give_sign_use_another_finish"))
    elif a.has("panel") and row.finish in ("groove", "stroke"):
        what = Message("spec.v_bit_engraves_board_s_2")
        own.wrong("finish", what, Message("spec.use_recess_through_leave_panel"))
    depth = letter_depth_of(own, row.finish or finish, thickness_mm, v_bit)
    a.take_problems(own, f"{LINE.name} {n}")
    return replace(row, depth_mm=depth if (row.finish or finish) != "through" else None)


def _must_have_one_face(a: Asked, text: TextSpec) -> None:
    if text.font_fallback:
        what = Message("spec.strokes_follow_lines_one_face")
        a.wrong("font-fallback", what, Message("spec.leave_out_use_another_finish"))
