"""What a line of a program is refused for, on its way to becoming a Fault."""

from __future__ import annotations

from signgen.messages import Sentence


class RefusedError(Exception):
    """The published rules refuse the line. Never leaves `replay`: the reader turns it into a Fault with the
    line's number.

    `words` is what caused it, as it was written (white space taken out); `message` a whole sentence.
    """

    def __init__(self, words: str, message: Sentence) -> None:
        super().__init__(words, message)
        self.words = words
        self.message = message
