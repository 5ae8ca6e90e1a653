"""What there is to explain, each as a page of text, and the page that a question means."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterator
from functools import cache, partial

from msgspec import Struct

from signgen.checks import EVERY_CHECK
from signgen.errors import AskError
from signgen.guide import batch_page
from signgen.guide.glossary import Term, terms
from signgen.guide.recipes import RECIPES, GuideRecipe
from signgen.guide.rs274 import CODES, Code, code_text
from signgen.guide.schemas_page import schemas_page
from signgen.guide.sign_file import reference, value_form
from signgen.guide.topics import TOPICS, Topic
from signgen.meant import Meanings
from signgen.messages import Message
from signgen.messages.wording import Wording
from signgen.option import Option, close_to
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE_KEYS

WIDTH = 79
BESIDE_RATIO, MOST_BESIDE = 0.45, 4
"""Pages that a question may mean too are named when their score is at least this share of the best, and how many."""


class Page(Struct, frozen=True, kw_only=True):
    """`name` is what to type behind `signgen explain`; `exact` are words that mean nothing else, `words` those by which
    a question finds it."""

    name: str
    exact: tuple[str, ...]
    words: tuple[str, ...]
    text: Callable[[], str]


def pages(options: tuple[Option, ...] = keys.KEYS, language: str = "en") -> list[Page]:
    """All of them, options first, so that the order breaks ties."""
    wording = Wording(language)
    rows = {key.name: key for key in (*options, keys.OUT)} | {
        key.name: key for key in LINE_KEYS if key.name not in keys.KEY_BY_NAME
    }
    return [
        *map(_of_option, rows.values()),
        *map(_of_topic, TOPICS),
        *(_of_term(term, wording) for term in terms()),
        *(_of_code(code, language) for code in CODES),
        *map(_of_recipe, RECIPES),
        Page(
            name="recipes",
            exact=("recipes", "recipe", "examples"),
            words=("recipes", "examples", "show me examples", "where do i begin", "how do i start", "first sign"),
            text=lambda: "\n\n".join(_recipe_text(recipe) for recipe in RECIPES),
        ),
        Page(
            name="sign-file",
            exact=("sign-file", "sign file", "toml", "sign.toml"),
            words=("sign file", "file format", "toml", "keys of the sign file"),
            text=lambda: "\n".join(reference()),
        ),
        Page(
            name="batch",
            exact=("batch", "list", "csv", "columns", "batch list"),
            words=(
                "columns of a list",
                "batch",
                "header of the list",
                "which columns",
                "placeholders",
                "{row} {serial}",
            ),
            text=lambda: "\n".join(batch_page.reference()),
        ),
        Page(
            name="schema",
            exact=("schema", "schemas", "json schema"),
            words=("schema", "json schema", "format of the report", "keys of the report", "report.json", "batch.json"),
            text=lambda: "\n".join(schemas_page()),
        ),
        *_of_checks(),
    ]


@cache
def _index(options: tuple[Option, ...], language: str) -> tuple[list[Page], Meanings[Page]]:
    known = pages(options, language)
    return known, Meanings([(page, (page.name, *page.exact, *page.words)) for page in known])


class Answer(Struct, frozen=True, kw_only=True):
    """The pages that a question means, and the names of others that it may mean."""

    pages: tuple[Page, ...]
    beside: tuple[str, ...]


def explained(question: str, language: str = "en") -> str:
    """The page that a word, an option, a code or a question means, with the names of others that it may mean.
    English words are known in every language.

    Raises: AskError when nothing is known of it.
    """
    answer = answer_to(question, language)
    parts = [page.text() for page in answer.pages]
    if answer.beside:
        parts.append(_filled(f"See also: {', '.join(answer.beside)}."))
    return "\n\n".join(parts)


def answer_to(question: str, language: str = "en") -> Answer:
    """The same as pages.

    Raises: AskError when nothing is known of it.
    """
    asked = " ".join(question.split()).casefold().strip(" ?!.")
    known, meanings = _index(keys.KEYS, language)
    named = [page for page in known if asked.removeprefix("--") in (word.casefold() for word in page.exact)]
    found = meanings.meant_by(asked)
    likely = [each.thing for each in found if each.score >= BESIDE_RATIO * found[0].score]
    if not named and not likely:
        close = close_to(asked, [word for page in known for word in page.exact]) if " " not in asked else ()
        remedy = Message("option.did_you_mean", close=close) if close else Message("explain.other_words")
        raise AskError.at(question, Message("explain.nothing"), remedy)
    shown = named or likely[:1]
    beside = [page.name for page in likely if page not in shown][:MOST_BESIDE]
    return Answer(pages=tuple(shown), beside=tuple(beside))


def _of_option(key: Option) -> Page:
    line_key = key.name in {each.name for each in LINE_KEYS}
    return Page(
        name=key.name, exact=(key.name, key.name.replace("-", " ")), words=key.words,
        text=lambda: _option_text(key, line_key),
    )  # fmt: skip


def _option_text(key: Option, line_key: bool) -> str:
    on_its_own = key.name in keys.KEY_BY_NAME
    flag = f"--{key.name} or --no-{key.name}" if key.kind == "flag" else f"--{key.name} {key.metavar}"
    head = key.metavar + " ..." if key.name == "text" else flag if on_its_own else f"+{key.name}={key.metavar}"
    lines = [head, _filled(key.full_help)]
    if key.choices:
        lines.append(_filled(f"One of: {', '.join(key.choices)}."))
    if key.example:
        lines.append(f"Example: {key.example if key.name == 'text' else f'--{key.name} {key.example}'}")
    if on_its_own:
        lines.append(_filled(f"In a sign file: {key.name} = {value_form(key)}"))
    if line_key and key.name != "text":
        lines.append(
            _filled(f"For one line alone: +{key.name}={key.metavar} behind its text, or in its [[line]] table.")
        )
    if key.needs:
        lines.append(f"It goes with --{key.needs}.")
    return "\n".join(lines)


def _of_topic(topic: Topic) -> Page:
    def text() -> str:
        see = [_filled(f"More: signgen explain {', '.join(topic.see)}")] if topic.see else []
        return "\n".join([_filled(topic.answer), *see])

    return Page(name=topic.name, exact=(topic.name, *topic.words), words=topic.words, text=text)


def _of_term(term: Term, wording: Wording) -> Page:
    words = tuple(dict.fromkeys((*term.names(wording), *term.names(Wording()))))
    return Page(
        name=words[0], exact=words, words=words[1:],
        text=lambda: _paragraphs(wording(term.meaning)),
    )  # fmt: skip


def _of_code(code: Code, language: str) -> Page:
    return Page(name=code.words[0], exact=code.words, words=(), text=partial(code_text, code, language))


def _of_recipe(recipe: GuideRecipe) -> Page:
    return Page(
        name=recipe.name, exact=(recipe.name, *recipe.words), words=recipe.words, text=lambda: _recipe_text(recipe)
    )  # fmt: skip


def _recipe_text(recipe: GuideRecipe) -> str:
    lines = textwrap.wrap(
        f"signgen make {recipe.command}", WIDTH - 8, break_long_words=False, break_on_hyphens=False
    )  # fmt: skip
    command = " \\\n      ".join(lines)
    return f"{_filled(f'{recipe.name.capitalize()}: {recipe.about}')}\n    {command}"


def _of_checks() -> Iterator[Page]:
    for check in EVERY_CHECK:
        name = check.name.replace("_", " ")
        title = f"{check.code} {name} ({check.severity}). {check.explanation}"
        yield Page(
            name=check.code, exact=(check.code, check.name, name), words=(), text=partial(_paragraphs, title)
        )  # fmt: skip


def _paragraphs(text: str) -> str:
    return "\n\n".join(_filled(part) for part in text.split("\n\n"))


def _filled(text: str) -> str:
    return textwrap.fill(" ".join(text.split()), width=WIDTH, break_on_hyphens=False)
