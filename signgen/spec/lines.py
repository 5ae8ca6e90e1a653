"""The lettering asked for: the lines, how the sign has them set, and what a line's own table says otherwise."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Literal, get_args

from msgspec.structs import replace

from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import written
from signgen.spec.asked import Asked
from signgen.spec.finish import finish_of
from signgen.spec.keys.lettering import AXIS_DECIMALS, LINE, LINE_KEY_BY_NAME, LINE_KEYS
from signgen.spec.paths import resolved_font
from signgen.spec.roles import ROLES
from signgen.spec.sign_spec import Align, ArcSpec, LineSpec, TextSpec
from signgen.units import Limits, number

Axes = tuple[tuple[str, float], ...]

_SETTING = re.compile(r"\s*(?P<tag>[!-~]{1,4}?)\s*=\s*(?P<value>[^=]+?)\s*")
_AXIS_VALUES = Limits(least=-32768, greatest=32767.99)
"""Source: OpenType specification, table fvar: axis values are numbers of 16.16 bits."""


def text_of(a: Asked) -> TextSpec | None:
    """The lettering, its margin still 0, which depends on the sign; None when there is a problem."""
    usual = _style(a, None)
    fit, wrap, fallback, layout = a.text("fit"), a.number("wrap"), a.flag("font-fallback"), a.text("layout")
    if a.has(LINE.name):
        if a.has("text"):
            a.wrong("text", Message("spec.every_table_own", name=LINE.name), Message("spec.leave_text_out_tables"))
        tables = a.tables(LINE.name)
        if tables is None or usual is None:
            return None
        read = [_line(a, table, n, usual) for n, table in enumerate(tables, 1)]
        rows = tuple(row for row in read if row is not None)
        if len(rows) < len(read):
            return None
    else:
        lines = a.lines("text")
        if lines is None or usual is None:
            return None
        rows = tuple(replace(usual, text=text) for text in lines)
    if fit is None or fallback is None or (wrap is None and a.has("wrap")):
        return None
    _check_whole(a, rows)
    filled = layout == "filled" or (layout is None and _is_filled(a))
    text = TextSpec(
        lines=tuple(row.text for row in rows),
        font=usual.font,
        font_axes=usual.font_axes,
        font_fallback=fallback,
        cap_height_mm=usual.cap_height_mm,
        digit_height_mm=usual.digit_height_mm,
        fit="each" if fit == "each" else "together",
        wrap_mm=wrap,
        align=usual.align,
        line_spacing=usual.line_spacing,
        letter_spacing_mm=usual.letter_spacing_mm,
        arc=usual.arc,
        margin_mm=0.0,
        margin_stated=a.has("margin") and not filled,
        layout="filled" if filled else "composed",
    )
    return text if text.rows == rows else replace(text, own_lines=rows)


def asked_of_line(text: TextSpec, line: LineSpec) -> dict[str, object]:
    """The keys of a line's table: its words and what differs from the sign's lines."""
    usual, own = written(LINE_KEYS, text.usual_line("")), written(LINE_KEYS, line)
    values = {key: value for key, value in own.items() if value != usual.get(key)}
    if line.font != text.font and line.font_axes:
        values["font-axes"] = own["font-axes"]  # a font of its own comes without the sign's
    if line.arc is not None and line.arc != text.arc:
        values |= {key: own[key] for key in ("arc", "arc-side", "arc-centre")}
    return {"text": line.text, **values}


def with_words(tables: object, words: object) -> object:
    """Tables of lines with other words, one after the other: lines that are too many go, and more words than tables are
    set as the sign has it. What is no tables, or no words, comes back for `read_spec` to say so."""
    parts = [words] if isinstance(words, str) else words
    if not isinstance(tables, list | tuple) or not all(isinstance(table, Mapping) for table in tables):
        return tables
    if not isinstance(parts, list | tuple) or not all(isinstance(part, str) for part in parts):
        return tables
    lines = [line for part in parts for line in part.splitlines()]
    styles: list[Mapping[str, object]] = [*tables, *[{}] * len(lines)]
    return [{**styles[i], "text": line} for i, line in enumerate(lines)]


def _line(a: Asked, table: Mapping[str, object], n: int, usual: LineSpec) -> LineSpec | None:
    """The line of a table."""
    own = Asked(table, LINE_KEY_BY_NAME)
    style = _style(own, usual)
    lines = own.lines("text")
    finish = finish_of(own) if own.has("finish") else None
    depth = own.number("depth") if own.has("depth") else None
    role = next((each for each in ROLES if each == own.text("role")), None) if own.has("role") else None
    if lines is not None and len(lines) != 1:
        own.wrong("text", Message("spec.holds_lines", count=len(lines)), Message("spec.give_each_own", name=LINE.name))
    a.take_problems(own, f"{LINE.name} {n}")
    if style is None or lines is None:
        return None
    return replace(style, text=lines[0], finish=finish, depth_mm=depth, role=role)


def _style(a: Asked, usual: LineSpec | None) -> LineSpec | None:
    """How a line is set: by its own keys, and where it has none as usual; `usual` None: by the sign's keys and their
    defaults. None when there is a problem."""
    font, axes = _font(a, usual)
    heights = _heights(a, usual)
    align = usual.align if usual and not a.has("align") else _align(a.text("align"))
    line_spacing = usual.line_spacing if usual and not a.has("line-spacing") else a.number("line-spacing")
    letter_spacing = usual.letter_spacing_mm if usual and not a.has("letter-spacing") else a.number("letter-spacing")
    spacings = (("line-spacing", line_spacing), ("letter-spacing", letter_spacing))
    arc, arc_is_right = _arc(a, usual)
    if arc is not None and a.has("align"):
        a.wrong("align", Message("spec.text_circle_centred"), Message("spec.leave_align_out_arc"))
    if font is None or axes is None or heights is None or align is None or not arc_is_right:
        return None
    if any(a.has(key) and read is None for key, read in spacings):
        return None
    cap_height, digit_height, ratio = heights
    return LineSpec(
        text="",
        font=font,
        font_axes=axes,
        cap_height_mm=cap_height,
        digit_height_mm=digit_height,
        height_ratio=ratio,
        align=align,
        line_spacing=line_spacing,
        letter_spacing_mm=letter_spacing,
        arc=arc,
    )


def _align(name: str | None) -> Align | None:
    return next((choice for choice in get_args(Align) if choice == name), None)


def _font(a: Asked, usual: LineSpec | None) -> tuple[str | None, Axes | None]:
    """Another font than the sign's comes without its axes."""
    if usual and not a.has("font"):
        font: str | None = usual.font
        axes: Axes | None = usual.font_axes
    else:
        given = a.text("font")
        font = resolved_font(given, Path()) if given else None
        axes = usual.font_axes if usual and font == usual.font else ()
    if a.has("font-axes"):
        text = a.text("font-axes")
        axes = a.attempt(lambda: _axes(text)) if text else None
    return font, axes


def _axes(text: str) -> Axes:
    """Settings of axes by their tags. Raises: AskError."""
    found: dict[str, float] = {}
    for part in text.split(","):
        match = _SETTING.fullmatch(part)
        if match is None:
            raise AskError.at(
                "font-axes", Message("spec.no_setting", text=part.strip()), Message("spec.write_them_wght_600_wdth")
            )
        if match["tag"] in found:
            raise AskError.at(
                "font-axes", Message("spec.set_twice", tag=match["tag"]), Message("spec.set_each_axis_once")
            )
        found[match["tag"]] = round(number(match["value"], "font-axes", _AXIS_VALUES), AXIS_DECIMALS)
    return tuple(sorted(found.items()))


def _heights(a: Asked, usual: LineSpec | None) -> tuple[float | None, float | None, float] | None:
    """(cap height, digit height, ratio): at most one height."""
    cap, digit = (a.number(key) if a.has(key) else None for key in ("cap-height", "digit-height"))
    ratio = a.number("height-ratio") if usual and a.has("height-ratio") else 1.0
    if ratio is None or (cap is None and a.has("cap-height")) or (digit is None and a.has("digit-height")):
        return None
    if cap is not None and digit is not None:
        a.wrong("digit-height", Message("spec.height_capitals_given_too"), Message("spec.give_cap_height_digit_height"))
    if usual is None:
        return cap, digit, 1.0
    if cap is not None or digit is not None:
        if a.has("height-ratio"):
            a.wrong("height-ratio", Message("spec.line_s_height_given_too"), Message("spec.give_one_them"))
        return cap, digit, 1.0
    if usual.is_fitted:
        return None, None, ratio
    return _times(usual.cap_height_mm, ratio), _times(usual.digit_height_mm, ratio), 1.0


def _times(height_mm: float | None, ratio: float) -> float | None:
    """Rounded to a micron, so that the resolved sign file reads well."""
    return height_mm if height_mm is None or ratio == 1 else max(0.001, round(height_mm * ratio, 3))


def _arc(a: Asked, usual: LineSpec | None) -> tuple[ArcSpec | None, bool]:
    """The circle, None for a straight line; and whether all is right about it."""
    base = usual.arc if usual else None
    radius = a.number("arc") if a.has("arc") else base.radius_mm if base else None
    side = a.text("arc-side") if a.has("arc-side") else base.side if base else "above"
    usual_centre = base.centre if base and not a.has("arc-side") else "sign" if side == "ring" else "line"
    centre = a.text("arc-centre") if a.has("arc-centre") else usual_centre
    if radius is None:
        for key in ("arc-side", "arc-centre"):
            if a.has(key) and not a.has("arc"):
                a.wrong(key, Message("spec.there_no_arc"), Message("spec.give_arc_too_leave_out"))
        return None, not a.has("arc")
    if side == "ring" and centre == "line":
        a.wrong("arc-centre", Message("spec.ring_lies_round_middle_sign"), Message("spec.leave_arc_centre_out"))
        return None, False
    sides: tuple[Literal["above", "below", "ring"], ...] = ("above", "below", "ring")
    for one in sides:
        if side == one and centre is not None:
            return ArcSpec(radius_mm=radius, side=one, centre="sign" if centre == "sign" else "line"), True
    return None, False


def _is_filled(a: Asked) -> bool:
    """Whether something was asked for that only the filled layout knows."""
    return a.has("fit") or a.has("wrap")


def _check_whole(a: Asked, rows: Sequence[LineSpec]) -> None:
    """What goes for all lines together must have something to go for."""
    if a.text("layout") == "composed":
        for key in ("fit", "wrap"):
            if a.has(key):
                what = Message("spec.composed_layout_chooses_sizes_what")
                a.wrong(key, what, Message("spec.leave_out_use_layout_filled", key=key))
    if a.text("fit") == "each":
        if not any(row.is_fitted for row in rows):
            a.wrong("fit", Message("spec.height_given_so_there_nothing"), Message("spec.leave_fit_out_height"))
        if any(row.height_ratio != 1 for row in rows):
            a.wrong("fit", Message("spec.lines_same_width_no_ratio"), Message("spec.leave_fit_out_height_ratio"))
        if a.has("wrap"):
            a.wrong("wrap", Message("spec.lines_fitted_each_same_width"), Message("spec.leave_wrap_out"))
    if a.has("wrap") and all(row.arc is not None for row in rows):
        a.wrong("wrap", Message("spec.text_circle_not_broken"), Message("spec.leave_wrap_out_give_lines"))
