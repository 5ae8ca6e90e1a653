"""The examples that ship: sign files, a list, a notebook, all of an invented village."""

from __future__ import annotations

import json
from pathlib import Path

KINDS = (".toml", ".csv", ".ipynb")
"""What of the folder is installed; its pictures stay in the repository."""

_PACKAGE = Path(__file__).parents[1]


def examples_folder() -> Path:
    """Where they lie: inside the package when it is installed, beside it in the repository."""
    inside = _PACKAGE / "examples"
    return inside if inside.is_dir() else _PACKAGE.parent / "examples"


def examples() -> tuple[Path, ...]:
    """Their files, sorted by name."""
    return tuple(sorted(path for path in examples_folder().iterdir() if path.suffix in KINDS))


def about(example: Path) -> str:
    """What an example is of, in a line: a sign file's first comment, a list's columns, a notebook's title."""
    text = example.read_text(encoding="utf-8")
    if example.suffix == ".ipynb":
        title: str = json.loads(text)["cells"][0]["source"][0]
        return f"a notebook: {title.strip('# ').rstrip()}"
    first = text.split("\n", 1)[0].strip()
    return first.removeprefix("#").strip() if example.suffix == ".toml" else f"a list with the columns {first}"
