"""`signgen.make`: a sign from Python."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Unpack

from signgen.api.asked import read_options
from signgen.api.job import Job, made_of
from signgen.api.options import Options
from signgen.pipeline import gather


def make(*text: str, sign_file: str | os.PathLike[str] | None = None, **options: Unpack[Options]) -> Job:
    """Make one sign and prove it; nothing is written. Each text is a line of lettering.

    Options are those of `signgen make`, hyphens as underscores; lengths are millimetres as numbers, or texts with a
    unit ("3 1/2 in"), sizes texts or pairs. An option of None counts as not given. `sign_file` is a TOML file of the
    same keys, over which options go.

    >>> import signgen
    >>> signgen.make("17", size=(90, 60), thickness="6mm", border="rounded", corner_radius=8)
    <signgen.Job '17', 90 x 60 x 6 mm, 2 programs, all ... checks passed>
    >>> signgen.make("17", size="90x60", thicknes=6)
    Traceback (most recent call last):
        ...
    signgen.errors.AskError: thicknes: ...

    Raises: AskError with every problem at once, by the option's name; ShopError; CannotMakeError;
        CheckFailedError, whose `picture()` shows where.
    """
    asked = read_options(text, options)
    return made_of(gather(asked, Path(sign_file) if sign_file is not None else None))
