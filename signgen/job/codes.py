"""The codes of a sign for its report: what they say, how large, and whether they were read back."""

from __future__ import annotations

from typing import Any

from signgen.job.facts import JobFacts
from signgen.numbers import rounded

READS = "C170"


def codes_report(facts: JobFacts) -> dict[str, Any]:
    """Nothing for a sign without codes. `read_back` None: the reader is not installed."""
    codes = [picture for picture in facts.drawing.pictures if picture.code_text]
    if not codes:
        return {}
    result = next((each for each in facts.checks.results if each.code == READS), None)
    read_back = result.passed if result is not None and result.applies else None
    return {
        "codes": [
            {"text": code.code_text, "module_mm": rounded(code.module_mm, 4), "read_back": read_back} for code in codes
        ]
    }
