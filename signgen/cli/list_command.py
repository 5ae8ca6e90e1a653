"""`signgen list`: what there is to choose from."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from signgen.cli.as_json import echo_json, json_option
from signgen.cli.tongue import language_option
from signgen.errors import AskError, said_in
from signgen.messages import Message, Mm, Num, Sides
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording

if TYPE_CHECKING:
    from signgen.schemas.answers import Figure

Rows = Iterable[tuple[str, ...]]
"""The word to type, what it is, and for the shop's data its figures and where they come from."""

COLUMNS = 100
"""Of a line that says where figures come from."""


def _fonts(_: Path | None, say: Wording) -> Rows:
    from signgen.lettering.catalogue import catalogue, stroke_catalogue
    from signgen.lettering.faces import open_face
    from signgen.pictures.specimen import figures_of

    for face in (*catalogue(), *stroke_catalogue()):
        about = f"{face.label}: {face.role}; {', '.join(face.scripts)}; {figures_of(open_face(face.name))}"
        yield face.name, f"{about}; {face.licence}"


def _borders(_: Path | None, say: Wording) -> Rows:
    from signgen.borders import BORDERS

    for border in BORDERS:
        yield (f"{border.name}:{border.argument}" if border.argument else border.name), border.summary


def _holes(_: Path | None, say: Wording) -> Rows:
    from signgen.holes import PATTERNS

    for pattern in PATTERNS:
        yield (f"{pattern.name}:{pattern.argument}" if pattern.argument else pattern.name), pattern.summary


def _tools(shop_file: Path | None, say: Wording) -> Rows:
    from signgen.shop.load import load_shop

    for tool in load_shop(shop_file).tools:
        yield (
            tool.name,
            say(
                Message(
                    "listing.tool_named" if tool.only_named else "listing.tool",
                    tool=tool.called,
                    deep=Mm(tool.cutting_length_mm),
                )
            ),
            say(
                Message(
                    "listing.flutes" if tool.can_plunge else "listing.flutes_no_plunge",
                    count=tool.flutes,
                    shank=Mm(tool.shank_mm),
                )
            ),
            tool.source,
        )


def _materials(shop_file: Path | None, say: Wording) -> Rows:
    from signgen.shop.load import load_shop

    for material in load_shop(shop_file).materials:
        yield (
            material.name,
            say(material.label),
            say(Message("listing.also", names=material.also)) if material.also else "",
            say(
                Message(
                    "listing.cuts",
                    chip=Num(material.chip_load_ratio),
                    stepdown=Num(material.stepdown_ratio),
                    entry=Num(material.entry_deg),
                )
            ),
            _by_source(material.source),
        )


def _machines(shop_file: Path | None, say: Wording) -> Rows:
    from signgen.shop.load import load_shop

    for machine in load_shop(shop_file).machines:
        x, y, z = machine.travel_mm
        yield (
            machine.name,
            say(Message("listing.machine", machine=machine.label, travel=Sides((x, y, z)))),
            say(Message("listing.spindle", least=Num(machine.spindle_min_rpm), most=Num(machine.spindle_max_rpm))),
            machine.source,
        )


def _figures(kind: str, shop_file: Path | None) -> dict[str, dict[str, Figure]]:
    """By names, what the shop's data tells of each row in figures."""
    from msgspec import to_builtins
    from msgspec.structs import asdict

    from signgen.shop.load import load_shop

    if kind not in ("tools", "materials", "machines"):
        return {}
    told = {"name", "label", "source", "cautions", "also", "manner", "dialect"}
    rows = getattr(load_shop(shop_file), kind)
    return {
        row.name: {key: to_builtins(value) for key, value in asdict(row).items() if key not in told} for row in rows
    }


def _by_source(sources: str) -> str:
    """'figure: where from; ...', with the figures of one source together."""
    figures: dict[str, list[str]] = {}
    for figure, source in re.findall(r"([a-z-]+): (.*?)(?:; (?=[a-z-]+: )|$)", sources):
        figures.setdefault(source, []).append(figure)
    return "; ".join(f"{', '.join(names)}: {source}" for source, names in figures.items())


def _dialects(_: Path | None, say: Wording) -> Rows:
    from signgen.dialects import DIALECTS

    for dialect in DIALECTS:
        yield dialect.name, dialect.about


def _checks(_: Path | None, say: Wording) -> Rows:
    from signgen.checks import EVERY_CHECK

    for check in EVERY_CHECK:
        yield check.code, f"{check.name} ({check.severity}): {_first_sentence(check.explanation)}"


def _examples(_: Path | None, say: Wording) -> Rows:
    from signgen.guide.examples import about, examples

    for example in examples():
        yield example.name, about(example)


def _pictograms(_: Path | None, say: Wording) -> Rows:
    from signgen.artwork.pictograms import pictograms

    for each in pictograms():
        yield each.name, f"{each.name.replace('-', ' ')}; {each.licence}", each.origin, each.sha256


def _first_sentence(text: str) -> str:
    paragraph = " ".join(text.split("\n\n")[0].split())
    return paragraph.split(". ")[0].rstrip(".") + "."


KINDS: dict[str, Callable[[Path | None, Wording], Rows]] = {
    "fonts": _fonts,
    "borders": _borders,
    "holes": _holes,
    "tools": _tools,
    "materials": _materials,
    "machines": _machines,
    "dialects": _dialects,
    "checks": _checks,
    "examples": _examples,
    "pictograms": _pictograms,
}


@click.command("list")
@click.argument("kind", type=click.Choice(tuple(KINDS)))
@click.option("--shop", "shop_file", metavar="FILE", help="Your own shop file, whose rows go before those that ship.")
@click.option(
    "--specimen",
    metavar="DIR",
    help="With fonts: draw a card of each face into a folder; with pictograms: a sheet of all.",
)
@click.option("--copy", "copies", metavar="DIR", help="With examples: write them into a folder.")
@click.option("--sources", is_flag=True, help="Of the shop: figures too, other words, and where they come from.")
@language_option
@json_option
def command(
    kind: str,
    shop_file: str | None,
    specimen: str | None,
    copies: str | None,
    sources: bool,
    language: str | None,
    as_json: bool,
) -> None:
    """List what there is to choose from, a line each: the word to type and what it is."""
    if specimen is not None:
        if kind == "pictograms":
            _draw_pictograms(Path(specimen))
            return
        if kind != "fonts":
            raise AskError.at("specimen", Message("listing.only_fonts", kind=kind), Message("listing.write_fonts"))
        _draw_specimens(Path(specimen))
        return
    if copies is not None:
        if kind != "examples":
            raise AskError.at("copy", Message("listing.only_examples", kind=kind), Message("listing.write_examples"))
        _copy_examples(Path(copies))
        return
    with said_in(language):
        rows = list(KINDS[kind](Path(shop_file) if shop_file else None, Wording(language or LANGUAGES[0])))
    if as_json:
        figures = _figures(kind, Path(shop_file) if shop_file else None)
        _echo_rows(kind, rows, figures)
        return
    width = max(len(name) for name, *_ in rows)
    for name, about, *more in rows:
        click.echo(f"{name:<{width}}  {about}")
        for source in filter(None, more if sources else ()):
            indent = " " * (width + 4)
            said = textwrap.wrap(source, COLUMNS - len(indent), break_on_hyphens=False)
            click.echo(textwrap.indent("\n".join(said), indent))


def _echo_rows(kind: str, rows: Iterable[tuple[str, ...]], figures: Mapping[str, dict[str, Figure]]) -> None:
    from signgen.schemas.answers import Listed, ListedRow

    listed = [
        ListedRow(name=name, about=about, more=[text for text in more if text], figures=figures.get(name, {}))
        for name, about, *more in rows
    ]
    echo_json(Listed(kind=kind, rows=listed))


def _draw_specimens(folder: Path) -> None:
    """Names of the files go to standard output as they are drawn."""
    from signgen.files import write_files
    from signgen.lettering.catalogue import catalogue, stroke_catalogue
    from signgen.pictures.specimen import specimens

    for name, content in specimens((*catalogue(), *stroke_catalogue())):
        write_files(folder, {name: content}, "specimen")
        click.echo(folder / name)


def _draw_pictograms(folder: Path) -> None:
    from signgen.files import write_files
    from signgen.pictures.pictogram_sheet import pictogram_sheet

    write_files(folder, {"pictograms.png": pictogram_sheet()}, "specimen")
    click.echo(folder / "pictograms.png")


def _copy_examples(folder: Path) -> None:
    """Names of the files go to standard output; a file of the same name is replaced only by itself."""
    from signgen.files import write_files
    from signgen.guide.examples import examples

    found = {example.name: example.read_bytes() for example in examples()}
    for name, content in found.items():
        path = folder / name
        if path.exists() and (not path.is_file() or path.read_bytes() != content):
            raise AskError.at("copy", Message("listing.another_file", path=path), Message("listing.choose_another"))
    write_files(folder, found, "copy")
    for name in found:
        click.echo(folder / name)
