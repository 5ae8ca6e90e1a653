"""`signgen doctor`: what is installed here, and whether signgen has all that it needs."""

from __future__ import annotations

import hashlib
import platform
import re
import sys
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, distribution, version
from pathlib import Path

import click

from signgen.version import __version__

EXTRAS = {
    "weasyprint": ("pdf", "setup sheets as PDF (--sheet-format pdf)"),
    "numba": ("fast", "a compiled simulation for large signs and long lists"),
    "distributed": ("cluster", "batches on a Dask cluster (--scheduler)"),
}
"""Library: the extra that brings it, and what that is for."""

_NEEDED = re.compile(r"([A-Za-z0-9_.-]+)\s*>=\s*([\d.]+)")


@click.command("doctor")
def command() -> int:
    """Say what is installed: versions, extras, faces, and what is amiss. The exit code is 3 when something is."""
    amiss = 0
    for name, said, good in _rows():
        click.echo(f"{name:<14}{said}{'' if good else '  <- amiss'}")
        amiss += not good
    click.echo("All that signgen needs is here." if not amiss else f"{amiss} amiss: install signgen again.")
    return 3 if amiss else 0


def _rows() -> Iterator[tuple[str, str, bool]]:
    """A name, what there is to say, and whether it is as it should be."""
    yield "signgen", f"{__version__} in {Path(__file__).parents[1]}", True
    yield "Python", f"{platform.python_version()} on {platform.platform()}", sys.version_info >= (3, 11)
    for line in distribution("signgen").requires or ():
        needed = _NEEDED.match(line)
        if needed and "extra ==" not in line:
            has = _version(needed[1])
            yield needed[1], f"{has or 'missing'} (needs {needed[2]})", has is not None and _at_least(has, needed[2])
    for library, (extra, use) in EXTRAS.items():
        has = _version(library)
        yield f"extra {extra}", f"{has}: {use}" if has else f"not installed (signgen[{extra}]): {use}", True
    yield _faces()
    yield _shop()


def _version(library: str) -> str | None:
    try:
        return version(library)
    except PackageNotFoundError:
        return None


def _at_least(has: str, least: str) -> bool:
    """Whether a version is no less than another, by their numbers: '10.1' < '10.3' < '11.0rc1'."""
    one, other = ([*map(int, re.findall(r"\d+", text)), 0, 0][:3] for text in (has, least))
    return one >= other


def _faces() -> tuple[str, str, bool]:
    """The faces whose files are as the catalogue has them."""
    from signgen.lettering.catalogue import catalogue, stroke_catalogue

    faces = [*catalogue(), *stroke_catalogue()]
    bad = [face.name for face in faces if _digest(face.path) != face.sha256]
    said = f"{len(faces) - len(bad)} of {len(faces)} are whole" + (f", not {', '.join(bad)}" if bad else "")
    return "faces", said, not bad


def _digest(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return ""


def _shop() -> tuple[str, str, bool]:
    from signgen.shop.load import load_shop

    shop = load_shop()
    return "shop", f"{len(shop.tools)} cutters, {len(shop.materials)} materials, {len(shop.machines)} machines", True
