"""Who may ask, and how: looked at before a request's body is read.

A page of another site that is open in the same browser can send requests here too. What keeps it out: the host's name
is one of ours (RFC 9110, 7.4: answer 421 for any other, also after a name was made to point here), the origin is ours
(RFC 6454), requests are JSON, which a form cannot send, and carry a token that only our own page knows.
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

MOST_BODY_BYTES = 64_000
"""Of a sign as it is typed."""

MOST_UPLOAD_BYTES = 5_600_000
"""Of a file that is handed over, in base64 within JSON."""

SECURITY_HEADERS: Mapping[str, str] = {
    "Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
}
MADE_POLICY = (
    "sandbox allow-scripts allow-modals; default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; "
    "img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""Of pages that were made: they hold their own script, and know nothing of the page that they came from."""


class Refusal(Struct, frozen=True):
    """A status of HTTP and the key of the words that say why."""

    status: int
    key: str


def refused_host(hosts: frozenset[str], headers: Mapping[str, str]) -> Refusal | None:
    """For every request. `headers` by their names in small letters; `hosts`: 'name:port' of this server."""
    if headers.get("host", "").casefold() not in hosts:
        return Refusal(421, "web.refused.host")
    if headers.get("sec-fetch-site", "none") not in ("same-origin", "none"):
        return Refusal(403, "web.refused.origin")
    return None


def refused_post(headers: Mapping[str, str], most_bytes: int) -> Refusal | None:
    """For a request that brings something, after `refused_host`."""
    if headers.get("origin", "").casefold() != f"http://{headers.get('host', '').casefold()}":
        return Refusal(403, "web.refused.origin")
    if headers.get("content-type", "").split(";")[0].strip().casefold() != "application/json":
        return Refusal(415, "web.refused.kind")
    if "transfer-encoding" in headers:
        return Refusal(411, "web.refused.length")
    length = headers.get("content-length", "")
    if not (length.isascii() and length.isdigit()) or len(length) > 12:
        return Refusal(411, "web.refused.length")
    if int(length) > most_bytes:
        return Refusal(413, "web.refused.size")
    return None
