"""The faces that ship with signgen, as `fonts_open/catalogue.toml` lists them. Opens no font: it is quick."""

from __future__ import annotations

import importlib
import tomllib
from functools import cache
from pathlib import Path

from msgspec import Struct


class CatalogueFace(Struct, frozen=True, kw_only=True):
    """One face of the catalogue; `name` is what a user types, the paths are absolute.

    `reserved_name`: the licence reserves the font's name, so its file must stay as it is. `scripts` are those
    whose everyday alphabet the face has complete.
    """

    name: str
    label: str
    role: str
    path: Path
    licence: str
    licence_path: Path
    reserved_name: bool
    origin: str
    sha256: str
    scripts: tuple[str, ...]


def fonts_folder() -> Path:
    """Where the open fonts lie, in a wheel as in an editable install."""
    # By name, for no folder signgen/fonts_open exists in the repository: the package's folder is mapped there.
    file = importlib.import_module("signgen.fonts_open").__file__
    assert file is not None, "signgen.fonts_open has an __init__.py"
    return Path(file).parent


@cache
def catalogue() -> tuple[CatalogueFace, ...]:
    """Every outline face that ships, in the order in which they are shown."""
    return _rows("face")


@cache
def stroke_catalogue() -> tuple[CatalogueFace, ...]:
    """Every face that ships whose letters are single lines."""
    return _rows("stroke")


def _rows(kind: str) -> tuple[CatalogueFace, ...]:
    folder = fonts_folder()
    with (folder / "catalogue.toml").open("rb") as file:
        rows = tomllib.load(file)[kind]
    return tuple(
        CatalogueFace(
            name=row["name"],
            label=row["label"],
            role=row["role"],
            path=folder / row["file"],
            licence=row["licence"],
            licence_path=folder / row["licence_file"],
            reserved_name=row["reserved_name"],
            origin=row["origin"],
            sha256=row["sha256"],
            scripts=tuple(row["scripts"]),
        )
        for row in rows
    )
