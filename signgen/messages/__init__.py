"""Every sentence for people: made as a `Message` where it is known, worded in one table for each language.

    Message("holes.made", count=4, diameter=Mm(7))

`en/` and `de/` are a language each, complete in its folder; `wording.py` puts messages into words. Lowest of all rooms,
so that everything may say something; importing it loads no table.
"""

from __future__ import annotations

from signgen.messages.values import Mm, Mm2, MmPerMin, Num, Sides, Typed
from signgen.messages.wording import Message, Sentence

__all__ = ["Message", "Mm", "Mm2", "MmPerMin", "Num", "Sentence", "Sides", "Typed"]
