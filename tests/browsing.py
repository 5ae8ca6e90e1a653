"""Debian's Chromium through Playwright, for tests that open pages (apt-get install chromium, pip install playwright).

Playwright's own browsers are not needed. Where either is missing the tests skip and say so.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator

import pytest

CHROMIUM = shutil.which("chromium")
FLAGS = (
    "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--enable-unsafe-swiftshader",
)  # fmt: skip


@pytest.fixture(scope="module")
def browser() -> Iterator[object]:
    """A headless browser; a new profile each time."""
    if CHROMIUM is None:
        pytest.skip("chromium is not installed")
    playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    with playwright.sync_playwright() as driver:
        chromium = driver.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))
        yield chromium
        chromium.close()
