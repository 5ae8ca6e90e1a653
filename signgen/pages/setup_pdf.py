"""The setup sheet as a PDF, by WeasyPrint, which is an extra: `pip install signgen[pdf]`."""

from __future__ import annotations

from importlib.resources import files
from typing import Any

from signgen.errors import AskError

SIDES = 2
CLOSER = ("", "main { font-size: 7.4pt; line-height: 1.2; }", "main { font-size: 6.9pt; line-height: 1.15; }")
"""What is tried one after the other until the sheet fits its two sides: this typesetter's lines are not a browser's."""


def setup_pdf(page: str) -> bytes:
    """The page of `setup_html` as a PDF of A4; the same bytes for the same page.

    Raises: AskError when WeasyPrint, or a library that it needs, is not installed.
    """
    style = files("signgen.pages").joinpath("print.css").read_text("utf-8")
    for closer in CLOSER:
        document = _typeset(page.replace("</style>", f"{style}{closer}</style>", 1))
        if len(document.pages) <= SIDES:
            break
    pdf: bytes = document.write_pdf()
    return pdf


def plain_pdf(page: str) -> bytes:
    """Any page that says itself how it is to be printed, as a PDF. Raises: as `setup_pdf`."""
    pdf: bytes = _typeset(page).write_pdf()
    return pdf


def _typeset(page: str) -> Any:
    """The page laid out. Raises: AskError when WeasyPrint cannot be loaded."""
    try:
        import weasyprint
    except (ImportError, OSError) as error:  # OSError: Pango itself is missing
        raise AskError.at(
            "sheet-format",
            f"A PDF needs WeasyPrint, which cannot be loaded here ({error}).",
            "Install it (pip install signgen[pdf]; it needs Pango), or ask for html and print that.",
        ) from error
    from weasyprint.urls import URLFetcher

    # pictures inside the page; nothing else is ever fetched
    fetcher = URLFetcher(allowed_protocols=("data",), fail_on_errors=True)
    return weasyprint.HTML(string=page, url_fetcher=fetcher).render()
