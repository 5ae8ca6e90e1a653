"""What the shell completes: words that ship, where one is wanted. They are read when a shell asks."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

import click

from signgen.option import Option

if TYPE_CHECKING:
    from click.shell_completion import CompletionItem

    Completer = Callable[[click.Context, click.Parameter, str], list[CompletionItem]]


def starting(words: Iterable[str], begun: str) -> list[CompletionItem]:
    """Those of the words that go on as was begun, whatever its case."""
    from click.shell_completion import CompletionItem

    return [CompletionItem(word) for word in words if word.casefold().startswith(begun.casefold())]


def completer(option: Option) -> Completer:
    """For an option: its words, or files where it may be one."""

    def complete(_: click.Context, __: click.Parameter, begun: str) -> list[CompletionItem]:
        from signgen.schemas.known_words import known_words

        found = starting(known_words(option), begun)
        return found or (_files() if option.kind in ("font", "path") else [])

    return complete


def complete_key(name: str) -> Completer:
    """As the key of a sign file of that name."""

    def complete(ctx: click.Context, param: click.Parameter, begun: str) -> list[CompletionItem]:
        from signgen.spec.keys import KEY_BY_NAME

        return completer(KEY_BY_NAME[name])(ctx, param, begun)

    return complete


def complete_line(_: click.Context, __: click.Parameter, begun: str) -> list[CompletionItem]:
    """Behind a line's text: +KEY=, and the words of that key."""
    from signgen.schemas.known_words import known_words
    from signgen.spec.keys.lettering import LINE_KEY_BY_NAME

    key, equals, value = begun.removeprefix("+").partition("=")
    if not begun.startswith("+"):
        return []
    if not equals:
        return starting((f"+{name}=" for name in LINE_KEY_BY_NAME if name != "text"), begun)
    option = LINE_KEY_BY_NAME.get(key)
    return starting((f"+{key}={word}" for word in known_words(option)), f"+{key}={value}") if option else []


def complete_tool(_: click.Context, __: click.Parameter, begun: str) -> list[CompletionItem]:
    """Every cutter of the shop that ships."""
    from signgen.shop.load import load_shop

    return starting((tool.name for tool in load_shop(None).tools), begun)


def complete_page(_: click.Context, __: click.Parameter, begun: str) -> list[CompletionItem]:
    """What explain knows by one word."""
    from signgen.guide.pages import pages

    return starting(dict.fromkeys(page.name for page in pages() if " " not in page.name), begun)


def complete_file(_: click.Context, __: click.Parameter, ___: str) -> list[CompletionItem]:
    """A file."""
    return _files()


def _files() -> list[CompletionItem]:
    """Has the shell complete names of files."""
    from click.shell_completion import CompletionItem

    return [CompletionItem("", type="file")]
