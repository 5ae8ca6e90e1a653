"""HTML by nested calls: text is escaped because it is a plain str; only what was built here passes as it is."""

from __future__ import annotations

import html
import re
from typing import Final


class Html(str):
    """Markup that is safe to stand in a page."""

    __slots__ = ()


class Foreign(str):
    """Text in another language than the page's; in markup it says so to whoever reads it aloud."""

    __slots__ = ("code",)
    code: str

    def __new__(cls, text: str, code: str) -> Foreign:
        made = super().__new__(cls, text)
        made.code = code
        return made


Part = str | Html | None
VOID: Final = frozenset({"img", "br", "meta", "input"})


def el(tag: str, *parts: Part, **attributes: str | int | None) -> Html:
    """An element with its children in order; None is left out. `cls` writes class, `for_` for; None leaves an
    attribute out.

    >>> el("p", "a < b", el("b", "!"), id="x", cls=None)
    '<p id="x">a &lt; b<b>!</b></p>'
    """
    words = [tag]
    for name, value in attributes.items():
        if value is not None:
            key = {"cls": "class", "for_": "for"}.get(name, name.replace("_", "-"))
            words.append(f'{key}="{html.escape(str(value), quote=True)}"')
    opening = f"<{' '.join(words)}>"
    return Html(opening) if tag in VOID else Html(f"{opening}{joined(*parts)}</{tag}>")


def joined(*parts: Part) -> Html:
    """The parts side by side, without an element around them."""
    return Html("".join(_marked(part) for part in parts if part))


def _marked(part: str) -> str:
    if isinstance(part, Html):
        return part
    text = html.escape(part, quote=False)
    return f'<span lang="{part.code}">{text}</span>' if isinstance(part, Foreign) else text


def unparted(page: str) -> str:
    """The page with its figures never parted from their per cent signs at a line's end.

    >>> unparted("80 % of 12 boards") == "80\\N{NO-BREAK SPACE}% of 12 boards"
    True
    """
    return re.sub(r"(?<=\d) (?=%)", "\N{NO-BREAK SPACE}", page)


def item(name: str, label: str, *parts: Part, tick: bool = False) -> Html:
    """A paragraph that opens with its label in bold; `tick` puts a box to tick in front of it."""
    return el("p", el("b", label), " ", *parts, id=name, cls="tick" if tick else None)


def raw(markup: str) -> Html:
    """Markup made by another writer that escapes by itself (the drawings), or that is ours word for word (the
    style)."""
    return Html(markup)
