"""Slips of the pen in a line that cannot be read: what was likely meant, and the line as it would then be.

Each rule mends one kind of slip. A mend counts only when the line can be read with it and could not without. The order
is that of how common they are (common practice of workshops, no count at hand).
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator

from msgspec import Struct

from signgen.messages.language import LANGUAGES, language
from signgen.replay.codes import G_GROUPS, M_GROUPS
from signgen.replay.expressions import Parameters
from signgen.replay.refusal import RefusedError
from signgen.replay.words import parse_line

_BOM = "\ufeff"
_COMMENT = re.compile(r"\([^()]*\)|;.*$")
_MINUS = str.maketrans(dict.fromkeys("\u2212\u2013\u2014\u2010\u2011", "-"))
_QUOTES = re.compile("[\u201c\u201d\u201e\u2018\u2019\u00b4\"'`]")
_DIGIT_LIKE = {"O": "0", "o": "0", "l": "1", "I": "1", "i": "1", "|": "1", "S": "5", "s": "5", "B": "8", "Z": "2"}
MOST_CHARACTERS = 256


class Slip(Struct, frozen=True, kw_only=True):
    """`kind` is the row of the tables; `wrong` and `right` the part of the line before and after; `mended` the whole
    line, '' where nobody can say what was meant."""

    kind: str
    line: int
    wrong: str
    right: str
    mended: str


def is_readable(line: str) -> bool:
    """Whether the grammar takes a line, whatever it would do."""
    try:
        parse_line(line, Parameters())
    except RefusedError:
        return False
    return True


def slip_in(line: str, number: int) -> Slip | None:
    """The first slip of a line that the grammar refuses; None where it is readable."""
    if is_readable(line):
        return None
    for kind, rule in _RULES:
        for wrong, right, mended in rule(line):
            if mended != line and (mended == "" or is_readable(mended)):
                return Slip(kind=kind, line=number, wrong=wrong, right=right, mended=mended)
    return None


def decoded(text: str) -> str:
    """A text that was read byte by byte, with its letters beyond ASCII as they were typed, where it is UTF-8."""
    try:
        return text.encode("latin-1").decode("utf-8")
    except (UnicodeEncodeError, UnicodeDecodeError):
        return text


def _code(line: str) -> str:
    return _COMMENT.sub("", line)


Found = Iterator[tuple[str, str, str]]


def _mark(line: str) -> Found:
    if line.startswith(_BOM):
        bare = line.lstrip(_BOM)
        yield "", "", bare if is_readable(bare) else (_again(bare) or bare)


def _again(line: str) -> str:
    slip = slip_in(line, 0)
    return slip.mended if slip else ""


def _minus(line: str) -> Found:
    code = _code(line)
    found = next((c for c in code if ord(c) in _MINUS), None)
    if found:
        yield found, "-", line.translate(_MINUS)


def _umlaut(line: str) -> Found:
    """Letters beyond ASCII in a comment and nowhere else."""
    strange = [c for c in line if not c.isascii()]
    if strange and _code(line).isascii():
        yield strange[0], "", _in_ascii(line)


def _in_ascii(text: str) -> str:
    """Letters spelled as they usually are where only ASCII may stand, accents dropped, the rest as '_'."""
    for code in LANGUAGES:
        text = language(code).in_ascii(text)
    plain = unicodedata.normalize("NFKD", text)
    return "".join(c if c.isascii() else "_" for c in plain if not unicodedata.combining(c))


def _quotes(line: str) -> Found:
    if (found := _QUOTES.search(_code(line))) is not None:
        yield found.group(), "", _QUOTES.sub("", line)


def _foreign(line: str) -> Found:
    code = _code(line)
    strange = [c for c in code if not c.isascii()]
    if strange:
        yield strange[0], "", "".join(c for c in line if c.isascii())


def _letters(line: str) -> Found:
    """A letter where a digit belongs, one kind of letter at a time."""
    spans = [match.span() for match in _COMMENT.finditer(line)]
    for letter, digit in _DIGIT_LIKE.items():
        places = [
            n for n, c in enumerate(line)
            if c == letter and n and not any(a <= n < b for a, b in spans)
            and (line[n - 1].isdigit() or line[n - 1] in "+-." or line[n - 1].isalpha())
        ]  # fmt: skip
        for chosen in ([places] if len(places) > 1 else []) + [[n] for n in places]:
            mended = "".join(digit if n in chosen else c for n, c in enumerate(line))
            yield letter, digit, mended


def _comma(line: str) -> Found:
    if (found := re.search(r"\d*,\d+", _code(line))) is not None:
        yield found.group(), found.group().replace(",", "."), re.sub(r"(?<=\d),(?=\d)", ".", line)


def _equals(line: str) -> Found:
    if (found := re.search(r"[A-Za-z]\s*[=:]\s*[-+\d.]", _code(line))) is not None:
        wrong = found.group()
        yield wrong, re.sub(r"[=:\s]", "", wrong), re.sub(r"(?<=[A-Za-z])\s*[=:]\s*(?=[-+\d.])", "", line)


def _two_points(line: str) -> Found:
    if (found := re.search(r"\d*\.\d*\.\d*", _code(line))) is not None:
        yield found.group(), "", ""


def _signs(line: str) -> Found:
    if (found := re.search(r"[-+]\s*[-+]\s*[\d.]+", _code(line))) is not None:
        yield found.group(), "", re.sub(r"([-+])\s*[-+]+", r"\1", line)


def _comment(line: str) -> Found:
    if line.count("(") != line.count(")") or re.search(r"\([^)]*\(", line):
        opened = line.find("(")
        if opened >= 0 and ")" not in line:
            yield line[opened:].strip(), f"{line[opened:].strip()})", f"{line})"
        elif opened < 0:
            yield line.strip(), f"({line.strip()}", f"({line.strip()}"
            yield line[line.find(")") :].strip(), "", line.replace(")", "")
        else:
            inner = line[opened + 1 : line.rfind(")")].replace("(", "[").replace(")", "]")
            yield line[opened:].strip(), f"({inner})", f"{line[:opened]}({inner}){line[line.rfind(')') + 1 :]}"


def _late_number(line: str) -> Found:
    if (found := re.search(r"(?<!^)[Nn]\d+", _code(line).strip())) is not None:
        yield found.group(), "", line.replace(found.group(), "", 1)


def _no_letter(line: str) -> Found:
    found = re.search(r"(?:(?<=\d)[ \t]+|^[ \t]*)([-+]?\d[\d.]*)", _code(line))
    if found is not None:
        yield found.group(1), "", ""


def _no_number(line: str) -> Found:
    found = re.search(r"([A-Za-z])[ \t]*(?=[A-Za-z]|$)", _code(line))
    if found is not None:
        yield found.group(1).upper(), "", ""


def _plain_words(line: str) -> Found:
    if re.search(r"[A-Za-z]{3,}", _code(line)):
        yield _code(line).strip(), f"({_code(line).strip()})", f"({re.sub('[()]', '', line).strip()})"


def _unknown(line: str) -> Found:
    for letter, number in re.findall(r"([GMgm])\s*(\d+(?:\.\d+)?)", _code(line)):
        value = float(number) * (10 if letter in "Gg" else 1)
        if round(value) not in (G_GROUPS if letter in "Gg" else M_GROUPS):
            yield f"{letter.upper()}{number}", "", ""


def _twice(line: str) -> Found:
    letters = [letter.upper() for letter in re.findall(r"[A-Za-z]", _code(line)) if letter.upper() not in "GM"]
    for letter in letters:
        if letters.count(letter) > 1:
            yield letter, "", ""


def _group(line: str) -> Found:
    for letter, groups, scale in (("G", G_GROUPS, 10), ("M", M_GROUPS, 1)):
        codes = [float(n) for n in re.findall(rf"{letter}\s*(\d+(?:\.\d+)?)", _code(line).upper())]
        seen: dict[int, float] = {}
        for code in codes:
            group = groups.get(round(code * scale))
            if group in seen and group is not None:
                yield f"{letter}{seen[group]:g} {letter}{code:g}", "", ""
            elif group is not None:
                seen[group] = code


def _long(line: str) -> Found:
    if len(line) > MOST_CHARACTERS:
        yield line[:12], "", ""


_RULES: tuple[tuple[str, Callable[[str], Found]], ...] = (
    ("byte_mark", _mark),
    ("umlaut", _umlaut),
    ("long_minus", _minus),
    ("quotes", _quotes),
    ("foreign", _foreign),
    ("decimal_comma", _comma),
    ("equals", _equals),
    ("comment_open", _comment),
    ("letter_digit", _letters),
    ("two_signs", _signs),
    ("two_points", _two_points),
    ("line_number", _late_number),
    ("words_group", _group),
    ("plain_words", _plain_words),
    ("letter_twice", _twice),
    ("unknown_code", _unknown),
    ("no_number", _no_number),
    ("no_letter", _no_letter),
    ("too_long", _long),
)
