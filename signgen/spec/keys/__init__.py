"""The one table of everything that can be asked for.

The command line builds its options from KEYS, and a sign file has the same words as its keys, so that neither knows
something that the other does not. Borders and hole patterns bring their own. Importing this must stay cheap:
`signgen make --help` reads it.
"""

from __future__ import annotations

from signgen.option import Option
from signgen.spec.keys.cutters import CUTTERS
from signgen.spec.keys.engraving import ENGRAVING
from signgen.spec.keys.families import HOLES, SHAPE
from signgen.spec.keys.holding import HOLDING, PASSES
from signgen.spec.keys.lettering import LETTERING, LINE
from signgen.spec.keys.machine import CELL, MACHINE
from signgen.spec.keys.papers import PAPERS
from signgen.spec.keys.pictures import PICTURES
from signgen.spec.keys.sign import SIGN

KEYS: tuple[Option, ...] = (
    *SIGN, *SHAPE, *LETTERING, *HOLES, *ENGRAVING, *PICTURES, *CUTTERS, *HOLDING, *PASSES, *MACHINE, CELL, *PAPERS,
)  # fmt: skip

OUT = Option(
    name="out", kind="path", metavar="DIR", group="Files", help="Folder to write into.",
    otherwise="./ and a safe form of the first line",
)  # fmt: skip
"""A key of a sign file too, but none of the sign's own: the resolved sign file leaves it out."""

KEY_BY_NAME: dict[str, Option] = {key.name: key for key in (*KEYS, OUT, LINE)}
