"""One line of RS-274 taken apart into words.

Source: NIST IR 6556, section 3.3 and Appendix E.
"""

from __future__ import annotations

import re

from msgspec import Struct, field

from signgen.messages import Message
from signgen.replay.codes import G_GROUPS, M_GROUPS, code_name
from signgen.replay.expressions import GREATEST_VALUE, Parameters, integer, parameter_index, real_value
from signgen.replay.refusal import RefusedError

LONGEST_LINE = 256
MOST_M_WORDS = 4
_LETTERS = frozenset("ABCDFGHIJKLMPQRSTXYZ")
_WORD = re.compile(r"([ABCDFGHIJKLMPQRSTXYZ])([+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+))")
_NUMBER_OF_LINE = re.compile(r"N([0-9]*)")
_FOREIGN = re.compile(r"[^\t\x20-\x7e]")
_WHITE = str.maketrans("", "", " \t")


class Line(Struct):
    """The words of one line. `values` has every letter but G and M; `g` codes times ten (G59.1 is 591);
    `spelled` how each word was written, by letter or by code ("X", "G2"); `settings` the parameters that the
    line sets."""

    values: dict[str, float] = field(default_factory=dict)
    g: list[int] = field(default_factory=list)
    m: list[int] = field(default_factory=list)
    spelled: dict[str, str] = field(default_factory=dict)
    settings: dict[int, float] = field(default_factory=dict)
    skippable: bool = False

    def say(self, *keys: str) -> str:
        """Those words of the line that are among `keys`, in the order of `keys`, as they were written."""
        return " ".join(self.spelled[key] for key in keys if key in self.spelled)

    @property
    def text(self) -> str:
        """All its words as they were written."""
        return " ".join(self.spelled.values())


def parse_line(raw: str, parameters: Parameters) -> Line:
    """The words of a line given without its end. Raises: RefusedError for the first thing that the grammar
    refuses."""
    if len(raw) > LONGEST_LINE:
        raise RefusedError(
            raw[:24] + "...",
            Message("reader.line_has_characters_are_allowed", count=len(raw), longest_line=LONGEST_LINE),
        )
    foreign = _FOREIGN.search(raw)
    if foreign:
        raise RefusedError(ascii(foreign.group())[1:-1], Message("reader.only_printable_characters_ascii_may"))
    line = Line()
    for position, segment in enumerate(_segments(raw)):
        text = segment.translate(_WHITE).upper()
        at = 0
        if position == 0:
            line.skippable = text.startswith("/")
            at = _after_line_number(text, int(line.skippable))
        while at < len(text):
            at = _item(text, at, line, parameters)
    if len(line.m) > MOST_M_WORDS:
        raise RefusedError(
            line.say(*(f"M{m}" for m in line.m)), Message("reader.line_may_have_m_words", most_m_words=MOST_M_WORDS)
        )
    return line


def _segments(raw: str) -> list[str]:
    """The stretches between the comments; no word reaches across one."""
    if "(" not in raw:
        return [raw]
    segments, at = [], 0
    while (opening := raw.find("(", at)) >= 0:
        segments.append(raw[at:opening])
        closing = raw.find(")", opening)
        if closing < 0:
            raise RefusedError(raw[opening:].strip(), Message("reader.comment_not_closed_on_line"))
        if raw.find("(", opening + 1, closing) >= 0:
            raise RefusedError(raw[opening : closing + 1], Message("reader.comment_may_not_hold_opening"))
        at = closing + 1
    segments.append(raw[at:])
    return segments


def _after_line_number(text: str, at: int) -> int:
    number = _NUMBER_OF_LINE.match(text, at)
    if not number:
        return at
    if not 1 <= len(number.group(1)) <= 5:
        raise RefusedError(number.group(), Message("reader.line_number_has_one_five"))
    return number.end()


def _item(text: str, at: int, line: Line, parameters: Parameters) -> int:
    """Takes one word or parameter setting into `line`; returns where the next begins."""
    word = _WORD.match(text, at)
    if word:
        letter, value, end = word.group(1), float(word.group(2)), word.end()
        if not abs(value) <= GREATEST_VALUE:
            raise RefusedError(word.group(), Message("reader.number_larger_than_any_machine"))
    elif text[at] == "#":
        index, end = real_value(text, at + 1, parameters)
        if not text.startswith("=", end):
            raise RefusedError(text[at : end + 1], Message("reader.parameter_setting_needs_equals_sign"))
        value, end = real_value(text, end + 1, parameters)
        line.settings[parameter_index(index, text[at:end])] = value
        return end
    elif text[at] in _LETTERS:
        letter = text[at]
        value, end = real_value(text, at + 1, parameters)
    elif text[at] == "N":
        raise RefusedError(text[at : at + 6], Message("reader.line_number_must_come_first"))
    elif text[at] == "O":
        raise RefusedError(
            text[at : at + 24],
            Message("reader.o_word_subroutine_loop_condition"),
        )
    else:
        raise RefusedError(text[at : at + 8], Message("reader.character_has_no_place_here", text=text[at]))
    spelled = text[at:end]
    if letter == "G":
        _take_code(line, line.g, "G", value * 10, spelled)
    elif letter == "M":
        _take_code(line, line.m, "M", value, spelled)
    elif letter in line.values:
        raise RefusedError(f"{line.spelled[letter]} {spelled}", Message("reader.may_stand_only_once_on", letter=letter))
    else:
        line.values[letter] = value
        line.spelled[letter] = spelled
    return end


_G_CODE, _M_CODE = Message("reader.g_code_times_ten"), Message("reader.m_code")


def _take_code(line: Line, codes: list[int], letter: str, value: float, spelled: str) -> None:
    code = integer(value, spelled, _G_CODE if letter == "G" else _M_CODE)
    groups = G_GROUPS if letter == "G" else M_GROUPS
    if code not in groups or value < -1e-4:
        raise RefusedError(spelled, Message("reader.not_code_language", spelled=spelled))
    name = code_name(code) if letter == "G" else f"M{code}"
    for other in codes:
        if groups[other] == groups[code]:
            earlier = line.spelled[code_name(other) if letter == "G" else f"M{other}"]
            raise RefusedError(f"{earlier} {spelled}", Message("reader.these_two_codes_exclude_each"))
    codes.append(code)
    line.spelled[name] = spelled
