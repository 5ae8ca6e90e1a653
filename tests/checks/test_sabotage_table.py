"""The page about checks says what the code does."""

from __future__ import annotations

from tests.checks.sabotage_table import PATH, text


def test_the_page_about_checks_is_up_to_date() -> None:
    assert PATH.read_text(encoding="utf-8") == text(), "run python -m tests.checks.sabotage_table"
