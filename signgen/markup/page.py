"""The frame that every page stands in: one self-contained document that loads nothing."""

from __future__ import annotations

from importlib.resources import files

from signgen.markup.markup import Html, Part, el, raw, unparted


def page(title: str, style: str, *body: Part, language: str, policy: str | None = None) -> str:
    """The page, from the doctype on. `policy`: what the browser itself refuses to load."""
    document = el(
        "html",
        el(
            "head",
            el("meta", charset="utf-8"),
            el("meta", http_equiv="Content-Security-Policy", content=policy) if policy else None,
            el("meta", name="viewport", content="width=device-width, initial-scale=1"),
            el("title", title),
            el("style", raw(style)),
        ),
        el("body", *body),
        lang=language,
    )
    return f"<!doctype html>\n{document}\n"


def work_sheet(title: str, *sides: Html, language: str, density: str | None, style: str = "") -> str:
    """The page of a sheet that the operator holds, one element for each of its sides. It needs no script. `style`:
    what this sheet adds to `sheet.css`."""
    css = files("signgen.markup").joinpath("sheet.css").read_text("utf-8") + style
    return unparted(page(title, css, el("main", *sides, cls=density), language=language))
