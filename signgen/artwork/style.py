"""What a style says of an element: attributes, the style sheet, the style attribute, and what is inherited.

Source: W3C, SVG 1.1 (second edition), 6 styling; CSS 2.1, 6 cascading. Selectors by name, class and id are read;
anything else is refused by name.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from signgen.artwork.element import Element
from signgen.artwork.refused import refused
from signgen.messages import Message

INHERITED: dict[str, str] = {
    "fill": "black", "fill-rule": "nonzero", "fill-opacity": "1", "stroke": "none", "stroke-width": "1",
    "stroke-linecap": "butt", "stroke-linejoin": "miter", "stroke-miterlimit": "4", "stroke-dasharray": "none",
    "stroke-dashoffset": "0", "stroke-opacity": "1", "color": "black", "visibility": "visible", "clip-rule": "nonzero",
    "marker-start": "none", "marker-mid": "none", "marker-end": "none", "paint-order": "normal",
}  # fmt: skip
"""With their first values."""

OWN: dict[str, str] = {
    "opacity": "1", "display": "inline", "clip-path": "none", "mask": "none", "filter": "none", "overflow": "",
    "mix-blend-mode": "normal", "vector-effect": "none", "clip": "auto",
}  # fmt: skip
"""Not inherited, with their usual values."""

_KNOWN = {**INHERITED, **OWN}

CHANGES = frozenset(
    ("transform", "translate", "rotate", "scale", "zoom", "perspective", "offset-path", "d", "x", "y", "cx", "cy", "r",
     "rx", "ry", "width", "height", "mask-image", "-webkit-mask", "-webkit-mask-image", "backdrop-filter", "content")
)  # fmt: skip
"""What a style can set besides, by which a shape is another one or lies elsewhere."""

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_RULE = re.compile(r"([^{}]*)\{([^{}]*)\}")
_AT = re.compile(r"@\s*([-\w]+)")
_FONT_FACE = re.compile(r"@font-face\s*\{[^{}]*\}|@(?:charset|namespace)[^;{}]*;", re.IGNORECASE)
_SELECTOR = re.compile(r"(\*|[A-Za-z][-\w]*)?((?:[.#][-\w]+)*)")

_MOST_RULES = 2000


class StyleRule(Struct, frozen=True, kw_only=True):
    """`name` '' for any element; `weight` as CSS counts ids, classes and names."""

    name: str
    ids: tuple[str, ...]
    classes: tuple[str, ...]
    weight: tuple[int, int, int]
    declarations: tuple[tuple[str, str, bool], ...]

    def is_about(self, element: Element, classes: Sequence[str]) -> bool:
        return (
            (not self.name or self.name == element.name)
            and all(one == element.id for one in self.ids)
            and all(one in classes for one in self.classes)
        )


def declarations(text: str) -> Iterator[tuple[str, str, bool]]:
    """(property, value, whether it is important)."""
    for part in _COMMENT.sub(" ", text).split(";"):
        name, colon, value = part.partition(":")
        if colon:
            plain = value.strip()
            important = plain.casefold().endswith("!important")
            yield name.strip().casefold(), plain[: -len("!important")].strip() if important else plain, important


def style_rules(root: Element, file: str) -> tuple[StyleRule, ...]:
    """The rules of all style sheets of a file, the weakest first. Raises: AskError for what is not read."""
    found: list[StyleRule] = []
    for element in root.walked():
        if element.name == "style":
            found += _rules_of(element, file)
    if len(found) > _MOST_RULES:
        raise refused(file, 0, Message("art.too_many_styles", most=_MOST_RULES), Message("art.apply_styles"))
    return tuple(sorted(found, key=lambda rule: rule.weight))


def _rules_of(element: Element, file: str) -> Iterator[StyleRule]:
    text = _FONT_FACE.sub(" ", _COMMENT.sub(" ", element.text)).replace("<!--", " ").replace("-->", " ")
    if rule := _AT.search(text):
        raise refused(
            file, element.line, Message("art.style_rule", name=f"@{rule[1]}"[:40]), Message("art.apply_styles")
        )
    for selectors, body in _RULE.findall(text):
        told = tuple(declarations(body))
        for selector in selectors.split(","):
            match = _SELECTOR.fullmatch(selector.strip())
            if not match or not selector.strip():
                raise refused(
                    file,
                    element.line,
                    Message("art.style_selector", name=selector.strip()[:40]),
                    Message("art.apply_styles"),
                )
            marks = re.findall(r"([.#])([-\w]+)", match[2])
            ids = tuple(name for mark, name in marks if mark == "#")
            classes = tuple(name for mark, name in marks if mark == ".")
            name = "" if match[1] in (None, "*") else match[1]
            yield StyleRule(
                name=name, ids=ids, classes=classes, weight=(len(ids), len(classes), bool(name)), declarations=told
            )


def styled(element: Element, above: Mapping[str, str], rules: Sequence[StyleRule], file: str) -> dict[str, str]:
    """Every property of an element that matters, complete. `above`: those of the element that it lies in.

    Raises: AskError for a property that makes it another shape.
    """
    values = {name: above.get(name, first) for name, first in INHERITED.items()} | OWN
    told: list[tuple[str, str, bool]] = [
        (name, value.strip(), False) for name, value in element.attributes.items() if name in _KNOWN
    ]
    classes = element.attributes.get("class", "").split()
    for rule in rules:
        if rule.is_about(element, classes):
            told += rule.declarations
    told += declarations(element.attributes.get("style", ""))
    for important in (False, True):
        for name, value, is_important in told:
            if is_important == important:
                _set(values, name, value, above, element, file)
    return values


def _set(values: dict[str, str], name: str, value: str, above: Mapping[str, str], element: Element, file: str) -> None:
    folded = value.casefold()
    if name == "marker":
        for each in ("marker-start", "marker-mid", "marker-end"):
            values[each] = value
    elif name in CHANGES or name.startswith(("mask-", "transform-")):
        if folded not in ("none", "auto", "normal"):
            raise refused(file, element.line, Message("art.style_changes", name=name[:40]), Message("art.apply_styles"))
    elif name not in _KNOWN:
        return
    elif folded == "inherit":
        values[name] = above.get(name, _KNOWN[name])
    elif folded in ("initial", "unset", "revert"):
        values[name] = above.get(name, _KNOWN[name]) if folded == "unset" and name in INHERITED else _KNOWN[name]
    elif value:
        values[name] = value
