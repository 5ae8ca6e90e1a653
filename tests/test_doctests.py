"""Examples in docstrings run."""

from __future__ import annotations

import doctest
import importlib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
WITH_EXAMPLES = [path for path in sorted((ROOT / "signgen").rglob("*.py")) if ">>> " in path.read_text("utf-8")]


def name_of(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


@pytest.mark.parametrize("path", WITH_EXAMPLES, ids=name_of)
def test_examples_in_docstrings_say_what_comes_out(path: Path) -> None:
    options = doctest.ELLIPSIS | doctest.IGNORE_EXCEPTION_DETAIL
    done = doctest.testmod(importlib.import_module(name_of(path)), optionflags=options)
    assert done.attempted
    assert not done.failed
