"""Lines of lettering as they are typed, each with its own settings behind it: `"17" +digit-height=90 "Quince Lane"`.

A word of the form +KEY=VALUE is a key of the table of the line before it, as it would stand under `[[line]]` in a sign
file. A text that looks like one is typed with two plus signs.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from signgen.errors import AskError, Problem
from signgen.messages import Message
from signgen.spec.keys.lettering import LINE, LINE_KEY_BY_NAME

SETTING = re.compile(r"\+(?P<key>[a-z][a-z-]*)=(?P<value>.*)", re.DOTALL)


def asked_lines(words: Sequence[str]) -> dict[str, object]:
    """What the words ask for: `text` when no line has settings of its own, else `line` with a table for each.

    Raises: AskError for a setting before any line, or one that is given twice.
    """
    tables: list[dict[str, object]] = []
    problems: list[Problem] = []
    for word in words:
        match = SETTING.fullmatch(word)
        if match is None:
            tables += [{"text": line} for line in _unescaped(word).splitlines() or [""]]
            continue
        key, value = match["key"], match["value"]
        where = f"+{key}"
        if not tables:
            problems.append(
                Problem(where=where, what=Message("line.before_any"), remedy=Message("line.text_first", setting=word))
            )
        elif key in tables[-1]:
            problems.append(Problem(where=where, what=Message("line.twice"), remedy=Message("line.leave_one")))
        else:
            tables[-1][key] = value
    if problems:
        raise AskError(problems)
    if all(table.keys() == {"text"} for table in tables):
        return {"text": [table["text"] for table in tables]} if tables else {}
    return {LINE.name: tables}


def _unescaped(word: str) -> str:
    return word[1:] if word.startswith("+") and SETTING.fullmatch(word[1:]) else word


def settings_help() -> str:
    """Names of all settings of a line, for the help."""
    return ", ".join(name for name in LINE_KEY_BY_NAME if name != "text")
