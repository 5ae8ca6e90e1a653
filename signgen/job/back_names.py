"""What the files of a sign's back are called beside its programs."""

from __future__ import annotations

from typing import Literal

BACK, PNG = "setup-back", "preview-back.png"


def back_names(sheet_format: Literal["html", "pdf", "both"]) -> tuple[str, ...]:
    """The back's sheet in the formats that were asked for."""
    kinds = ("html", "pdf") if sheet_format == "both" else (sheet_format,)
    return tuple(f"{BACK}.{kind}" for kind in kinds)
