"""The page: a form on one side, the sign on the other. Its script fills it; without script it says so."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from urllib.parse import urlencode

from signgen.borders import BORDERS
from signgen.borders.path import PathOutline
from signgen.holes import PATTERNS
from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.markup.markup import Html, el, raw
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import has_words
from signgen.option import Option
from signgen.shop.load import load_shop
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE, LINE_KEY_BY_NAME
from signgen.words.words import Words, words_in

FIRST: Mapping[str, tuple[str, ...]] = {
    "board": ("size", "thickness", "material"),
    "look": ("font", "border", "finish", "frame"),
    "fixing": ("holes", "screw"),
}
"""What stands first, in groups: a sign of one's own needs nothing else. Everything else is found below it."""

LIVE_MS, REST_MS = 90, 700
"""How long after the last letter the drawing is asked for, and the proof."""

START: Mapping[str, str] = {"size": "220x120", "thickness": "12", "border": "rounded", "holes": "none"}
"""What a fresh page begins with, so that there is a sign to look at."""

START_LINES = ("7", "Sorrel Lane")


def page_html(token: str, language: str, query: Mapping[str, str]) -> str:
    """The page for one person, who shows the token with each request. `query`: what the address held, for the links to
    the page in other languages."""
    words = words_in(language)
    head = el(
        "head",
        el("meta", charset="utf-8"),
        el("meta", name="viewport", content="width=device-width, initial-scale=1"),
        el("meta", name="token", content=token),
        el("title", words("web.title")),
        Html('<link rel="icon" href="data:,">'),
        Html('<link rel="stylesheet" href="page.css">'),
        el("script", "", src="line.js", defer=""),
        el("script", "", src="fields.js", defer=""),
        el("script", "", src="page.js", defer=""),
    )
    body = el(
        "body",
        el("a", words("web.skip"), href="#look", cls="skip"),
        _header(words, query),
        el("noscript", el("p", words("web.noscript"))),
        el("main", _form(words), _look(words)),
        el("footer", el("p", words("web.care"))),
        _data(words),
    )
    return f"<!doctype html>\n{el('html', head, body, lang=language)}\n"


def _header(words: Words, query: Mapping[str, str]) -> Html:
    links = [_link(words_in(code), query, is_here=code == words.language) for code in LANGUAGES]
    return el("header", el("h1", words("web.heading")), el("nav", *links, aria_label=words("web.languages")))


def _link(words: Words, query: Mapping[str, str], *, is_here: bool) -> Html:
    """To the page in a language, in its own name."""
    code = words.language
    href = "?" + urlencode({**query, "language": code})
    here = "true" if is_here else None
    return el("a", words("web.language"), href=href, lang=code, hreflang=code, aria_current=here)


def _form(words: Words) -> Html:
    groups = [
        el("fieldset", el("legend", words(f"web.group.{group}")), *(_field(words, keys.KEY_BY_NAME[n]) for n in names))
        for group, names in FIRST.items()
    ]
    first = {name for names in FIRST.values() for name in names}
    rest = [key for key in keys.KEYS if key.name not in first and key.kind not in ("lines", "tables")]
    return el(
        "form",
        el(
            "fieldset",
            el("legend", words("web.group.words")),
            el("ol", "", id="lines"),
            el("button", words("web.add_line"), type="button", id="add-line"),
        ),
        *groups,
        el(
            "details",
            el("summary", words("web.more")),
            el("p", el("label", words("web.search"), for_="search"),
               el("input", id="search", type="search", autocomplete="off"), cls="field"),
            el("p", "", id="found", role="status"),
            *(_field(words, key, hide=True) for key in rest),
            id="more",
        ),
        _files(words),
        id="form", novalidate="", autocomplete="off", aria_label=words("web.form"),
    )  # fmt: skip


def _field(words: Words, key: Option, *, hide: bool = False) -> Html:
    """A labelled control with its help, and room for what is wrong with it."""
    name = key.name
    has_label, has_hint = has_words(f"web.field.{name}"), has_words(f"web.field.{name}.hint")
    label = words(f"web.field.{name}") if has_label else name.replace("-", " ")
    hint = words(f"web.field.{name}.hint") if has_hint else key.full_help
    about = f"help-{name} wrong-{name}"
    is_english = not has_hint and words.language != LANGUAGES[0]
    return el(
        "div",
        el("label", label, for_=f"field-{name}"),
        _control(words, key, about),
        el("p", hint, id=f"help-{name}", cls="hint", lang=LANGUAGES[0] if is_english else None),
        el("p", "", id=f"wrong-{name}", cls="wrong"),
        cls="field",
        data_words=" ".join((label, name, key.help, *key.words)).casefold() if hide else None,
    )


def _control(words: Words, key: Option, about: str) -> Html:
    common = {"id": f"field-{key.name}", "name": key.name, "aria_describedby": about}
    start = START.get(key.name)
    if key.name == "font":
        return _faces(words, about)
    choices = dict(_choices(words, key))
    if choices:
        rows = [el("option", text, value=value, selected="" if value == start else None)
                for value, text in choices.items()]  # fmt: skip
        return el("select", *rows, **common)
    if key.kind == "path":
        return el("select", el("option", words("web.none_handed_over"), value=""), **common, data_own=key.name)
    mode = "decimal" if key.kind in ("length", "angle", "number", "count") else None
    return el("input", **common, type="text", inputmode=mode, value=start, placeholder=key.metavar.lower())


def _choices(words: Words, key: Option) -> Iterator[tuple[str, str]]:
    """Values with what they are called, '' first for what is not asked for; none for what is typed freely."""
    listed = dict(_listed(words, key))
    if key.kind == "flag":
        listed = {"true": words("web.yes"), "false": words("web.no")}
    elif key.kind == "choice":
        listed = {choice: choice for choice in key.choices}
    if listed:
        usual = str(key.default)
        yield "", words("web.usual_one", what=listed[usual]) if usual in listed else words("web.usual")
        yield from ((value, text) for value, text in listed.items() if value != usual or key.name in START)


def _listed(words: Words, key: Option) -> Iterable[tuple[str, str]]:
    """The members of open families by name."""
    match key.name:
        case "material":
            return [(each.name, _plain(each.name)) for each in load_shop().materials]
        case "machine":
            return [(each.name, _plain(each.name)) for each in load_shop().machines]
        case "border":
            return [(each.name, _plain(each.name)) for each in BORDERS if each is not PathOutline]
        case "holes":
            return [(each.name, _plain(each.name)) for each in PATTERNS if not each.argument]
        case "ornament-font":
            return [(each.name, each.label) for each in catalogue()]
    return []


def _plain(name: str) -> str:
    return name.replace("-", " ")


def _faces(words: Words, about: str) -> Html:
    """Every face, seen in itself, to choose from."""
    faces = (*catalogue(), *stroke_catalogue())
    usual = keys.KEY_BY_NAME["font"].default
    chosen = next(face for face in faces if face.name == usual)
    rows = [
        el(
            "label",
            el("input", type="radio", name="font", value="" if face.name == usual else face.name,
               checked="" if face.name == usual else None, aria_describedby=about),
            el("img", src=f"faces/{face.name}.svg", alt="", loading="lazy", height=30),
            el("span", face.label),
        )
        for face in faces
    ]  # fmt: skip
    return el(
        "details",
        el("summary", el("span", words("web.face_now")), " ", el("b", chosen.label, id="face-now")),
        el("div", *rows, cls="faces", role="radiogroup", aria_label=words("web.field.font"), id="field-font"),
        cls="picker",
    )


def _files(words: Words) -> Html:
    choices = [el("option", words(f"web.own.{option}"), value=option) for option in ("font", "border", "shop")]
    return el(
        "details",
        el("summary", words("web.files")),
        el("p", el("label", words("web.open_file"), for_="open-file"),
           el("input", id="open-file", type="file", accept=".toml"), cls="field"),
        el("p", words("web.open_hint"), cls="hint"),
        el("p", el("label", words("web.own_kind"), for_="own-kind"), el("select", *choices, id="own-kind"),
           cls="field"),
        el("p", el("label", words("web.own_file"), for_="own-file"), el("input", id="own-file", type="file"),
           cls="field"),
        el("p", words("web.own_hint"), cls="hint"),
        el("p", "", id="handed-over", role="status"),
    )  # fmt: skip


def _look(words: Words) -> Html:
    glance = el(
        "div",
        el("h2", words("web.your_sign")),
        el("figure", el("img", id="sketch", alt=""), el("figcaption", "", id="lettering")),
        el("p", words("web.opening"), id="status", role="status"),
        id="glance",
    )
    after = el(
        "div",
        el("ul", "", id="wrong"),
        el("ul", "", id="warned"),
        el("dl", "", id="facts"),
        el(
            "div",
            el("a", words("web.take_all"), id="zip", cls="button main", hidden=""),
            el("a", words("web.sheet"), id="sheet", cls="button", target="_blank", rel="noopener", hidden=""),
            el("a", words("web.moves"), id="moves", cls="button", target="_blank", rel="noopener", hidden=""),
            cls="actions",
        ),
        el("p", words("web.then"), id="then", hidden=""),
        el(
            "details",
            el("summary", words("web.same_in_the_terminal")),
            el("pre", el("code", "", id="command"), tabindex="0"),
            el("div", el("button", words("web.copy"), type="button", id="copy"),
               el("a", words("web.sign_file"), id="file", cls="button", download="sign.toml"), cls="actions"),
        ),
        id="after",
    )  # fmt: skip
    return el("section", glance, after, id="look", tabindex="-1", aria_label=words("web.your_sign"))


def _data(words: Words) -> Html:
    """What the script needs to know, as JSON in which no text can end its element."""
    line = [
        {"name": key.name, "label": key.name.replace("-", " "), "help": key.full_help, "choices": list(key.choices),
         "kind": key.kind}
        for key in LINE_KEY_BY_NAME.values()
        if key.name != "text"
    ]  # fmt: skip
    data = {
        "words": words.of("web.script"),
        "lines": START_LINES,
        "lineKeys": line,
        "lineTable": LINE.name,
        "faces": {face.name: face.label for face in (*catalogue(), *stroke_catalogue())},
        "live": LIVE_MS,
        "rest": REST_MS,
    }
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return el("script", raw(text), type="application/json", id="data")
