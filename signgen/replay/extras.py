"""What many controls take although the published rules refuse it, taken out of a text before it is read.

Common practice of controls: a semicolon begins a comment that goes on to the end of its line; a line may hold a
program's number (O and digits); G64 may have a tolerance (P, Q); line numbers may have more than five digits. None of
them changes a motion. The rules: NIST IR 6556, section 3.3.1.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from signgen.messages import Message
from signgen.replay.motion import Fault

_PARTS = re.compile(r"(?P<kept>(?:\([^)\n]*(?:\)|$)|[^;(\n])*)(?P<words>;[^\n]*)")
_NUMBER_OF_PROGRAM = re.compile(r"(?P<kept>[ \t]*)(?P<words>[oO][ \t]*\d+(?=[ \t]*(?:\(|$)))", re.MULTILINE)
_LONG_NUMBER = re.compile(r"(?P<kept>[ \t]*/?[ \t]*)(?P<words>[nN][ \t]*\d{6,})", re.MULTILINE)

_TOLERANCE = re.compile(
    r"(?P<kept>[^(;\n]*?[gG][ \t]*0*64(?![\d.])[ \t]*)(?P<words>[pP][ \t]*[\d.]+(?:[ \t]*[qQ][ \t]*[\d.]+)?)",
    re.MULTILINE,
)

EXTRAS: tuple[tuple[str, re.Pattern[str], Message], ...] = (
    (";", _PARTS, Message("reader.semicolon_begins_comment_on_many")),
    ("oO", _NUMBER_OF_PROGRAM, Message("reader.many_controls_take_program_s")),
    (
        "pP",
        _TOLERANCE,
        Message("reader.many_controls_take_with_g64"),
    ),
    ("nN", _LONG_NUMBER, Message("reader.many_controls_take_line_numbers")),
)
"""Characters without which nothing is looked for, what is looked for from a line's start, and what to say of it."""


def without_extras(text: str) -> tuple[str, tuple[Fault, ...]]:
    """The text with these blotted out, every line at its number, and a note for each kind with its first line."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    notes: list[Fault] = []
    for characters, pattern, message in EXTRAS:
        if not any(character in text for character in characters):
            continue
        found = _first(text, pattern)
        if found is not None:
            line, words = found
            notes.append(Fault(line=line, words=words, message=message))
            text = "\n".join(_blotted(pattern)(line) for line in text.split("\n"))
    return text, tuple(notes)


def _first(text: str, pattern: re.Pattern[str]) -> tuple[int, str] | None:
    for number, line in enumerate(text.split("\n"), 1):
        match = pattern.match(line)
        if match:
            return number, match["words"]
    return None


def _blotted(pattern: re.Pattern[str]) -> Callable[[str], str]:
    return lambda line: pattern.sub(r"\g<kept>", line, count=1) if pattern.match(line) else line
