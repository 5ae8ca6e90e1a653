"""How kinds of controllers want their RS-274 written. To add one: a file and its line in DIALECTS."""

from __future__ import annotations

from signgen.dialects.dialect import Dialect
from signgen.dialects.plain import PLAIN

DIALECTS: tuple[Dialect, ...] = (PLAIN,)


def dialect_named(name: str) -> Dialect:
    """Raises: KeyError for a name that is not in DIALECTS (the spec has refused it before)."""
    return {dialect.name: dialect for dialect in DIALECTS}[name]


__all__ = ["DIALECTS", "Dialect", "dialect_named"]
