"""A page that is served for a test, and requests to it as they go over the wire."""

from __future__ import annotations

import http.client
import json
import re
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import Any
from urllib.parse import urlsplit

from msgspec import Struct

from signgen.web.serve import served


class Site(Struct, frozen=True, kw_only=True):
    """`address`: as it is printed; `host`: name and port; `token`: what the page shows with each request."""

    address: str
    host: str
    token: str

    def headers(self) -> dict[str, str]:
        """Of a request that the page sends."""
        return {"Origin": f"http://{self.host}", "Content-Type": "application/json", "X-Signgen-Token": self.token}

    def get(self, path: str, headers: Mapping[str, str] | None = None) -> tuple[int, Mapping[str, str], bytes]:
        return self._send("GET", path, None, headers or {})

    def post(self, path: str, body: Any, headers: Mapping[str, str] | None = None) -> tuple[int, Any]:
        """Status and what came back, read as JSON."""
        content = body if isinstance(body, bytes) else json.dumps(body).encode()
        status, _, answer = self._send("POST", path, content, self.headers() if headers is None else headers)
        return status, json.loads(answer)

    def _send(
        self, method: str, path: str, body: bytes | None, headers: Mapping[str, str]
    ) -> tuple[int, Mapping[str, str], bytes]:
        connection = http.client.HTTPConnection(self.host, timeout=120)
        try:
            connection.request(method, path, body, dict(headers))
            answer = connection.getresponse()
            return answer.status, dict(answer.getheaders()), answer.read()
        finally:
            connection.close()

    def proved(self, wanted: object) -> Any:
        """What a proof that was asked for says in the end."""
        _, begun = self.post("/api/prove", {"wanted": wanted})
        while (found := self.post("/api/wait", {"number": begun["number"]})[1]).get("running"):
            pass
        return found


@contextmanager
def site() -> Iterator[Site]:
    """A page on a free port, ended with everything that it started."""
    with served() as (server, address):
        threading.Thread(target=server.serve_forever, daemon=True).start()
        host = urlsplit(address).netloc
        connection = http.client.HTTPConnection(host, timeout=60)
        connection.request("GET", "/" + address.split("/", 3)[3])
        page = connection.getresponse().read().decode()
        connection.close()
        token = re.search(r'name="token" content="([^"]+)"', page)
        assert token is not None
        try:
            yield Site(address=address, host=host, token=token[1])
        finally:
            server.shutdown()
