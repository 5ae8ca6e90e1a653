"""How kinds of controllers want their RS-274 written. To add one: a file and its line in DIALECTS.

A dialect is a `Writing` (`writing.py`) that states where it differs from plain. What any of them can be asked for
beside (line numbers, % lines, M30, extraction, a warm-up) is a `Manner`.
"""

from __future__ import annotations

from signgen.dialects.changer import CHANGER
from signgen.dialects.cycles import CYCLES
from signgen.dialects.dialect import Dialect
from signgen.dialects.flat_arcs import FLAT_ARCS
from signgen.dialects.inch import INCH
from signgen.dialects.no_arcs import NO_ARCS
from signgen.dialects.one_file import ONE_FILE
from signgen.dialects.plain import PLAIN
from signgen.shop.manner import Manner

DIALECTS: tuple[Dialect, ...] = (PLAIN, INCH, NO_ARCS, FLAT_ARCS, CYCLES, ONE_FILE, CHANGER)


def dialect_named(name: str) -> Dialect:
    """Raises: KeyError for a name that is not in DIALECTS (the spec has refused it before)."""
    return {dialect.name: dialect for dialect in DIALECTS}[name]


__all__ = ["DIALECTS", "Dialect", "Manner", "dialect_named"]
