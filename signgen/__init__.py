"""A text, a size and a hole pattern to verified RS-274 programs, a setup sheet and a picture of a sign.

    >>> import signgen
    >>> job = signgen.make("17", size="120x80", thickness=12, border="oval")
    >>> job
    <signgen.Job '17', 120 x 80 x 12 mm, 2 programs, all ... checks passed>
    >>> [program.file for program in job.programs]
    ['1-v-bit-90.nc', '2-end-mill-6.nc']

What `__all__` names is stable: it changes only with the first number of the version (Semantic Versioning 2.0.0), and so
does the meaning of the reports' keys. Everything else is the inside. Importing this loads nothing heavy.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

from signgen.errors import AskError, CannotMakeError, CheckFailedError, Problem, ShopError, SignGenError
from signgen.version import __version__

if TYPE_CHECKING:
    from signgen.api.batching import Batch, batch
    from signgen.api.checking import Verdict, check, read_program
    from signgen.api.job import Job, Program
    from signgen.api.making import make

__all__ = [
    "AskError",
    "Batch",
    "CannotMakeError",
    "CheckFailedError",
    "Job",
    "Problem",
    "Program",
    "ShopError",
    "SignGenError",
    "Verdict",
    "__version__",
    "batch",
    "check",
    "make",
    "read_program",
]

_HOMES = {
    "make": "making", "Job": "job", "Program": "job", "check": "checking", "Verdict": "checking",
    "read_program": "checking", "batch": "batching", "Batch": "batching",
}  # fmt: skip
"""Where what is loaded when it is asked for lives in `signgen.api`."""


def __getattr__(name: str) -> object:
    if name not in _HOMES:
        raise AttributeError(f"module 'signgen' has no attribute {name!r}")
    return getattr(import_module(f"signgen.api.{_HOMES[name]}"), name)


def __dir__() -> list[str]:
    return sorted({*globals(), *_HOMES})
