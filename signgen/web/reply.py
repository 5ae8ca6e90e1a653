"""What the server sends back."""

from __future__ import annotations

from collections.abc import Mapping

import msgspec
from msgspec import Struct

KINDS: Mapping[str, str] = {
    "html": "text/html; charset=utf-8", "css": "text/css; charset=utf-8", "js": "text/javascript; charset=utf-8",
    "json": "application/json", "svg": "image/svg+xml", "png": "image/png", "pdf": "application/pdf",
    "zip": "application/zip", "nc": "text/plain; charset=us-ascii", "toml": "text/plain; charset=utf-8",
}  # fmt: skip
"""Media types by suffix."""


class Reply(Struct, frozen=True, kw_only=True):
    """`headers` go before those that every reply has."""

    status: int = 200
    kind: str = KINDS["json"]
    body: bytes = b""
    headers: Mapping[str, str] = {}


def said(status: int = 200, /, **values: object) -> Reply:
    """A reply in JSON."""
    return Reply(status=status, body=msgspec.json.encode(values))
