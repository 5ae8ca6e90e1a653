"""One line of RS-274 taken apart into words.

Source: NIST IR 6556, section 3.3 and Appendix E.
"""

from __future__ import annotations

import re

from msgspec import Struct, field

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
        raise RefusedError(raw[:24] + "...", f"The line has {len(raw)} characters; {LONGEST_LINE} are allowed.")
    foreign = _FOREIGN.search(raw)
    if foreign:
        raise RefusedError(ascii(foreign.group())[1:-1], "Only the printable characters of ASCII may be used.")
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
        raise RefusedError(line.say(*(f"M{m}" for m in line.m)), f"A line may have {MOST_M_WORDS} M words at most.")
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
            raise RefusedError(raw[opening:].strip(), "The comment is not closed on its line.")
        if raw.find("(", opening + 1, closing) >= 0:
            raise RefusedError(raw[opening : closing + 1], "A comment may not hold an opening parenthesis.")
        at = closing + 1
    segments.append(raw[at:])
    return segments


def _after_line_number(text: str, at: int) -> int:
    number = _NUMBER_OF_LINE.match(text, at)
    if not number:
        return at
    if not 1 <= len(number.group(1)) <= 5:
        raise RefusedError(number.group(), "A line number has one to five digits.")
    return number.end()


def _item(text: str, at: int, line: Line, parameters: Parameters) -> int:
    """Takes one word or parameter setting into `line`; returns where the next begins."""
    word = _WORD.match(text, at)
    if word:
        letter, value, end = word.group(1), float(word.group(2)), word.end()
        if not abs(value) <= GREATEST_VALUE:
            raise RefusedError(word.group(), "This number is larger than any machine can use.")
    elif text[at] == "#":
        index, end = real_value(text, at + 1, parameters)
        if not text.startswith("=", end):
            raise RefusedError(text[at : end + 1], "A parameter setting needs an equals sign.")
        value, end = real_value(text, end + 1, parameters)
        line.settings[parameter_index(index, text[at:end])] = value
        return end
    elif text[at] in _LETTERS:
        letter = text[at]
        value, end = real_value(text, at + 1, parameters)
    elif text[at] == "N":
        raise RefusedError(text[at : at + 6], "A line number must come first on its line.")
    elif text[at] == "O":
        raise RefusedError(
            text[at : at + 24],
            "An O word: a subroutine, a loop or a condition in the language of some controls. The published rules have "
            "none, and what it does is not followed.",
        )
    else:
        raise RefusedError(text[at : at + 8], f"The character {text[at]} has no place here.")
    spelled = text[at:end]
    if letter == "G":
        _take_code(line, line.g, "G", value * 10, spelled)
    elif letter == "M":
        _take_code(line, line.m, "M", value, spelled)
    elif letter in line.values:
        raise RefusedError(f"{line.spelled[letter]} {spelled}", f"{letter} may stand only once on a line.")
    else:
        line.values[letter] = value
        line.spelled[letter] = spelled
    return end


def _take_code(line: Line, codes: list[int], letter: str, value: float, spelled: str) -> None:
    code = integer(value, spelled, "A G code times ten" if letter == "G" else "An M code")
    groups = G_GROUPS if letter == "G" else M_GROUPS
    if code not in groups or value < -1e-4:
        raise RefusedError(spelled, f"{spelled} is not a code of this language.")
    name = code_name(code) if letter == "G" else f"M{code}"
    for other in codes:
        if groups[other] == groups[code]:
            earlier = line.spelled[code_name(other) if letter == "G" else f"M{other}"]
            raise RefusedError(f"{earlier} {spelled}", "These two codes exclude each other and may not share a line.")
    codes.append(code)
    line.spelled[name] = spelled
