"""Words that can stand behind an option, for editors and shells to offer; others may be right too."""

from __future__ import annotations

from collections.abc import Callable

from signgen.option import Option


def known_words(option: Option) -> tuple[str, ...]:
    """The words that ship for an option, in their usual order; () where anything may stand."""
    if option.kind == "choice":
        return option.choices
    if option.kind == "flag":
        return ("true", "false")
    offered = _OF_KIND.get(option.kind) or _OF_NAME.get(option.name)
    return offered() if offered else ()


def _faces() -> tuple[str, ...]:
    from signgen.lettering.catalogue import catalogue, stroke_catalogue

    return tuple(face.name for face in (*catalogue(), *stroke_catalogue()))


def _borders() -> tuple[str, ...]:
    from signgen.borders import BORDERS

    return tuple(f"{border.name}:" if border.argument else border.name for border in BORDERS)


def _patterns() -> tuple[str, ...]:
    from signgen.holes import PATTERNS

    return tuple(f"{pattern.name}:" if pattern.argument else pattern.name for pattern in PATTERNS)


def _materials() -> tuple[str, ...]:
    from signgen.shop.load import load_shop

    materials = load_shop(None).materials
    also = (word for material in materials for word in material.also if " " not in word)
    return tuple(dict.fromkeys((*(material.name for material in materials), *also)))


def _machines() -> tuple[str, ...]:
    from signgen.shop.load import load_shop

    return tuple(machine.name for machine in load_shop(None).machines)


def _mills() -> tuple[str, ...]:
    from signgen.shop.load import load_shop

    return tuple(tool.name for tool in load_shop(None).tools if tool.kind == "end-mill")


def _dialects() -> tuple[str, ...]:
    from signgen.dialects import DIALECTS

    return tuple(dialect.name for dialect in DIALECTS)


def _paints() -> tuple[str, ...]:
    from signgen.spec.paint import PAINTS

    return tuple(PAINTS)


_OF_KIND: dict[str, Callable[[], tuple[str, ...]]] = {"font": _faces, "border": _borders}
_OF_NAME: dict[str, Callable[[], tuple[str, ...]]] = {
    "holes": _patterns,
    "material": _materials,
    "machine": _machines,
    "end-mill-name": _mills,
    "dialect": _dialects,
    "paint": _paints,
}
