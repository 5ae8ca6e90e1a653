"""The sheet as a PDF: two sides of A4, its words as text, the same bytes twice. Needs the extra `pdf`."""

from __future__ import annotations

import builtins
import re
import sys
import zlib
from collections.abc import Callable
from typing import Any

import pytest

from signgen.errors import AskError
from signgen.job.facts import JobFacts
from signgen.pages.setup_pdf import setup_pdf
from signgen.pages.setup_sheet import setup_html
from signgen.pipeline import make_job
from tests.asking import spec_of

Make = Callable[..., JobFacts]


def needs_weasyprint() -> None:
    try:
        import weasyprint

        assert weasyprint.__version__
    except (ImportError, OSError) as error:
        pytest.skip(f"WeasyPrint cannot be loaded: {error}")


def unpacked(pdf: bytes) -> bytes:
    """Every stream of the file, inflated where it is packed."""
    parts = [pdf]
    for match in re.finditer(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.DOTALL):
        try:
            parts.append(zlib.decompress(match[1]))
        except zlib.error:
            parts.append(match[1])
    return b"".join(parts)


def pages(pdf: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page\b", unpacked(pdf)))


@pytest.mark.parametrize("language", ["en", "de"])
def test_it_fits_two_sides_and_is_the_same_twice(language: str) -> None:
    needs_weasyprint()
    page = setup_html(make_job(spec_of(language=language)).facts)
    pdf = setup_pdf(page)
    assert pdf.startswith(b"%PDF-")
    assert pages(pdf) == 2
    assert len(pdf) < 600_000
    assert setup_pdf(page) == pdf


def test_a_full_sheet_is_set_closer_until_it_fits(make_facts: Make) -> None:
    needs_weasyprint()
    from tests.pages.test_print import full

    assert pages(setup_pdf(setup_html(full(make_facts)))) <= 2


@pytest.mark.parametrize(("word", "names"), [("html", {"setup.html"}), ("pdf", {"setup.pdf"}),
                                             ("both", {"setup.html", "setup.pdf"})])  # fmt: skip
def test_the_sheet_comes_in_the_formats_that_were_asked_for(word: str, names: set[str]) -> None:
    if word != "html":
        needs_weasyprint()
    files = make_job(spec_of(sheet_format=word)).files
    assert {name for name in files if name.startswith("setup.")} == names


def test_nothing_is_fetched(make_facts: Make) -> None:
    needs_weasyprint()
    from weasyprint.urls import FatalURLFetchingError

    page = setup_html(make_facts(cell=4.0)).replace("<body>", '<body><img src="file:///etc/hostname">')
    with pytest.raises(FatalURLFetchingError):
        setup_pdf(page)


def test_without_weasyprint_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def gone(name: str, *rest: Any) -> Any:
        if name.split(".")[0] == "weasyprint":
            raise ImportError("No module named 'weasyprint'")
        return real(name, *rest)

    for name in [name for name in sys.modules if name.split(".")[0] == "weasyprint"]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(builtins, "__import__", gone)
    with pytest.raises(AskError) as refused:
        setup_pdf("<html></html>")
    assert "signgen[pdf]" in str(refused.value.problems[0])
    assert refused.value.problems[0].where == "sheet-format"
