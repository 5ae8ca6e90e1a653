"""How a drawing is refused: the file and the line, what stands there, what to do."""

from __future__ import annotations

from signgen.errors import AskError
from signgen.messages import Message

SAVE_PLAIN = Message("art.save_plain")


def refused(file: str, line: int, what: Message, remedy: Message = SAVE_PLAIN) -> AskError:
    """`line` 0: nobody knows which."""
    return AskError.at(f"{file}:{line}" if line else file, what, remedy)
