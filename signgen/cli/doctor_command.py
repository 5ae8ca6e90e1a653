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

from signgen.cli.tongue import language_option
from signgen.messages import Message, Sentence
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording
from signgen.version import __version__

EXTRAS = {"weasyprint": "pdf", "numba": "fast", "distributed": "cluster"}
"""Library: the extra that brings it."""

_NEEDED = re.compile(r"([A-Za-z0-9_.-]+)\s*>=\s*([\d.]+)")


@click.command("doctor")
@language_option
def command(language: str | None) -> int:
    """Say what is installed: versions, extras, faces, and what is amiss. The exit code is 3 when something is."""
    amiss = 0
    say = Wording(language or LANGUAGES[0])
    for name, said, good in _rows():
        click.echo(f"{say(name):<14}{say(said)}{'' if good else say(Message('doctor.mark'))}")
        amiss += not good
    click.echo(say(Message("doctor.amiss", count=amiss) if amiss else Message("doctor.all_here")))
    return 3 if amiss else 0


def _rows() -> Iterator[tuple[Sentence, Sentence, bool]]:
    """A name, what there is to say, and whether it is as it should be."""
    yield "signgen", Message("doctor.is_in", version=__version__, place=Path(__file__).parents[1]), True
    python = Message("doctor.runs_on", version=platform.python_version(), system=platform.platform())
    yield "Python", python, sys.version_info >= (3, 11)
    for line in distribution("signgen").requires or ():
        needed = _NEEDED.match(line)
        if needed and "extra ==" not in line:
            has = _version(needed[1])
            is_here = Message("doctor.needs", has=has or Message("doctor.missing"), least=needed[2])
            yield needed[1], is_here, has is not None and _at_least(has, needed[2])
    for library, extra in EXTRAS.items():
        has = _version(library)
        use = Message(f"doctor.use.{extra}")
        said = (
            Message("doctor.has_extra", version=has, use=use)
            if has
            else Message("doctor.lacks_extra", extra=extra, use=use)
        )
        yield Message("doctor.extra", name=extra), said, True
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


def _faces() -> tuple[Sentence, Sentence, bool]:
    """The faces whose files are as the catalogue has them."""
    from signgen.lettering.catalogue import catalogue, stroke_catalogue

    faces = [*catalogue(), *stroke_catalogue()]
    bad = [face.name for face in faces if _digest(face.path) != face.sha256]
    said = Message("doctor.faces_whole", count=len(faces) - len(bad), faces=len(faces))
    if bad:
        said = Message("doctor.faces_bad", said=said, names=tuple(bad))
    return Message("doctor.faces"), said, not bad


def _digest(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return ""


def _shop() -> tuple[Sentence, Sentence, bool]:
    from signgen.shop.load import load_shop

    shop = load_shop()
    cutters, materials, machines = len(shop.tools), len(shop.materials), len(shop.machines)
    said = Message("doctor.shop_has", cutters=cutters, materials=materials, machines=machines)
    return Message("doctor.shop"), said, True
