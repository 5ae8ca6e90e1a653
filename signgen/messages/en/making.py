"""English: what can be made, and how well it holds."""

from __future__ import annotations

WORDS = {
    "uncut.tip": "the flat of {tip} at the bit's tip",
    "uncut.bit": "the bit",
    "uncut.of": "{percent} % of {letter}",
    "uncut.of_a_part": "{percent} % of a part of {letter}",
    "uncut.more": "too much of {count} more",
    "uncut.letters": "Strokes of the letters are too narrow for {bit}: {letters} would not be cut, or less "
    "than {depth} deep. At most {most} % of a letter may be left.",
    "uncut.line": "The {line} is too narrow for {bit}: {percent} % of it would not be cut.",
    "uncut.use": "Use {ways:or}.",
    "uncut.wider_line": "Use a wider line, or {bit}.",
    "uncut.larger": "letters {times} times as high (on a larger sign)",
    "uncut.higher": "cap-height {height} or more",
    "uncut.higher_on_larger": "cap-height {height} or more (on a larger sign)",
    "uncut.finer_bit": "a finer bit, as {name} with a tip of {tip}",
    "uncut.finer_tip": "a bit with a tip of {tip} or less",
    "uncut.sharper": "a sharper bit",
    "uncut.face": "the face {face}",
}
