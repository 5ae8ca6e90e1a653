"""`signgen feeds`: speeds and feeds of any cutter in any material, step by step."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

import click

from signgen.cli.as_json import echo_json, json_option
from signgen.cli.completion import complete_key, complete_tool
from signgen.cli.tongue import language_option
from signgen.errors import AskError, Problem, said_in
from signgen.messages import Message, Mm
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording

T = TypeVar("T")


@click.command("feeds")
@click.argument("tool", shell_complete=complete_tool)
@click.argument("material", shell_complete=complete_key("material"))
@click.option(
    "--machine",
    metavar="NAME",
    help="The machine that cuts (signgen list machines). Default: the first.",
    shell_complete=complete_key("machine"),
)
@click.option("--depth", metavar="LENGTH", help="Depth of a pass. Default: the material's for this cutter.")
@click.option("--width", metavar="LENGTH", help="Width of the cut beside the cutter's way. Default: a slot.")
@click.option("--shop", "shop_file", metavar="FILE", help="Your own shop file, whose rows go before those that ship.")
@language_option
@json_option
def command(
    tool: str,
    material: str,
    machine: str | None,
    depth: str | None,
    width: str | None,
    shop_file: str | None,
    language: str | None,
    as_json: bool,
) -> None:
    """Show how fast a cutter runs in a material, and why, step by step.

    TOOL is a name (signgen list tools) or a kind with its figures, as in 'end-mill 6' or 'v-bit 60 diameter 12';
    MATERIAL a name (signgen list materials).
    """
    from msgspec import convert, to_builtins

    from signgen.pages.part_cutting import advice
    from signgen.schemas.answers import Feeds, FeedsCutting, FeedsStep
    from signgen.shop.feeds import cutting_data
    from signgen.shop.load import load_shop
    from signgen.shop.named import material_named
    from signgen.shop.strain import strain_warnings
    from signgen.shop.worked import worked
    from signgen.spec.read import one_of
    from signgen.spec.tool_words import tool_in_words
    from signgen.units import POSITIVE, length_mm
    from signgen.words.words import words_in

    shop = load_shop(Path(shop_file) if shop_file else None)
    problems: list[Problem] = []

    def read(make: Callable[[], T]) -> T | None:
        try:
            return make()
        except AskError as error:
            problems.extend(error.problems)
            return None

    cutter = read(lambda: tool_in_words(tool, shop))
    stuff = read(lambda: material_named(shop, material))
    router = read(lambda: one_of(shop.machines, machine, "machine")) if machine else shop.machines[0]
    depth_mm = read(lambda: length_mm(depth, "depth", POSITIVE)) if depth else None
    width_mm = read(lambda: length_mm(width, "width", POSITIVE)) if width else None
    if cutter and depth_mm and depth_mm > cutter.reach_mm:
        what = Message("feeding.too_deep", tool=cutter.called, reach=Mm(cutter.reach_mm), depth=Mm(depth_mm))
        problems.append(Problem(where="depth", what=what, remedy=Message("feeding.shallower")))
    if problems or cutter is None or stuff is None or router is None:
        with said_in(language):
            raise AskError(problems)
    data = cutting_data(cutter, stuff, router)
    steps = worked(cutter, stuff, router, depth_mm, width_mm)
    say = Wording(language or LANGUAGES[0])
    warnings = [say(text) for text in strain_warnings(cutter, stuff, router, data, depth_mm or data.stepdown_mm)]
    words = words_in(say.language.code)
    advised = [*(said for _, said in advice(words, {cutter.cut} if cutter.cut else set())), words("summary.care")]
    sources = [f"{cutter.name}: {cutter.source}", *re.split(r"; (?=[a-z-]+: )", stuff.source)]
    sources.append(f"{router.name}: {router.source}")
    if as_json:
        echo_json(
            Feeds(
                tool=say(cutter.called),
                material=say(stuff.label),
                machine=say(router.label),
                cutting=convert(to_builtins(data), FeedsCutting),
                steps=[
                    FeedsStep(
                        name=say(step.name),
                        working=step.working,
                        value=step.value,
                        result=step.result,
                        why=say(step.why),
                    )
                    for step in steps
                ],
                warnings=warnings,
                advice=advised,
                sources=sources,
            )
        )
        return
    click.echo(say(Message("feeding.of", tool=cutter.called, material=stuff.label, machine=router.label)))
    for step in steps:
        value = f"{step.value:.5g}"
        shown = step.working if step.working == value else f"{step.working} = {value}"
        click.echo(f"  {say(step.name):<26}{shown}")
        click.echo(f"  {'':<26}-> {step.result}" + (f" ({say(step.why)})" if step.why else ""))
    for text in warnings:
        _paragraph(f"{say(Message('feeding.warning'))}: ", text)
    click.echo(say(Message("feeding.while_it_cuts")))
    for said in advised:
        _paragraph("- ", said)
    click.echo(say(Message("feeding.sources")))
    for source in sources:
        _paragraph("- ", source)


def _paragraph(lead: str, text: str) -> None:
    click.echo(textwrap.fill(text, 79, initial_indent=f"  {lead}", subsequent_indent="  " + " " * len(lead)))
