"""The server: the standard library's, one thread a connection, with an end to every patience."""

from __future__ import annotations

import socket
import threading
import time
from collections.abc import Callable
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any
from urllib.parse import parse_qs, urlsplit

from msgspec import Struct

from signgen.web.guard import MOST_BODY_BYTES, MOST_UPLOAD_BYTES, SECURITY_HEADERS, refused_host, refused_post
from signgen.web.reply import Reply, said

ASKING_S, IDLE_S = 15.0, 75.0
"""How long a request may take to arrive, and how long a connection stays open between two."""

MOST_CONNECTIONS = 200
"""At once: a class of thirty with six each. More are closed at once."""

LOOK_S = 1.0
"""How often the connections are looked at."""

UPLOADS = "/api/hand-over"
"""The one path that takes a large body."""


class WireRequest(Struct, frozen=True, kw_only=True):
    """A request that the guard has let pass. `query`: the first value of each name; `body`: as it came; `headers` by
    their names in small letters."""

    method: str
    path: str
    query: dict[str, str]
    headers: dict[str, str]
    body: bytes = b""


class PageServer(ThreadingHTTPServer):
    """Serves `answer`. `hosts`: the names by which it may be called, with the port.

    Raises: OSError when the address cannot be had.
    """

    daemon_threads = True
    request_queue_size = 64

    def __init__(
        self, address: tuple[str, int], names: tuple[str, ...], answer: Callable[[WireRequest], Reply]
    ) -> None:
        super().__init__(address, _Handler)
        port = self.server_address[1]
        self.hosts = frozenset(f"{name}:{port}".casefold() for name in names)
        self.answer = answer
        self._deadlines: dict[socket.socket, float] = {}
        self._lock = threading.Lock()
        self._closed = threading.Event()
        threading.Thread(target=self._watch, daemon=True).start()

    @property
    def port(self) -> int:
        return int(self.server_address[1])

    def allow(self, connection: socket.socket, time_s: float | None) -> None:
        """How long from now a connection may go without being looked at again; None for as long as it takes."""
        with self._lock:
            if time_s is None:
                self._deadlines[connection] = float("inf")
            else:
                self._deadlines[connection] = time.monotonic() + time_s

    def verify_request(self, request: Any, client_address: Any) -> bool:
        with self._lock:
            return len(self._deadlines) < MOST_CONNECTIONS

    def shutdown_request(self, request: Any) -> None:
        with self._lock:
            self._deadlines.pop(request, None)
        super().shutdown_request(request)

    def server_close(self) -> None:
        self._closed.set()
        super().server_close()

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A connection that breaks is the other side's business; nothing of it reaches the terminal."""

    def _watch(self) -> None:
        while not self._closed.wait(LOOK_S):
            now = time.monotonic()
            with self._lock:
                late = [connection for connection, until in self._deadlines.items() if until < now]
            for connection in late:
                try:
                    connection.shutdown(socket.SHUT_RDWR)
                except OSError:
                    continue


class _Handler(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    server_version, sys_version = "signgen", ""
    server: PageServer

    timeout = IDLE_S

    def setup(self) -> None:
        super().setup()
        self.connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, True)

    def handle_one_request(self) -> None:
        self.server.allow(self.connection, IDLE_S)
        super().handle_one_request()

    def parse_request(self) -> bool:
        self.server.allow(self.connection, ASKING_S)
        return super().parse_request()

    def do_GET(self) -> None:
        self._serve(is_post=False)

    def do_POST(self) -> None:
        self._serve(is_post=True)

    def log_message(self, format: str, *args: Any) -> None:
        """Nothing: what people type is nobody's business."""

    def _serve(self, *, is_post: bool) -> None:
        url = urlsplit(self.path)
        headers = {name.casefold(): value for name, value in self.headers.items()}
        refusal = refused_host(self.server.hosts, headers)
        if refusal is None and len(self.headers.get_all("host", [])) != 1:
            refusal = refused_host(frozenset(), headers)
        if refusal is None and is_post:
            refusal = refused_post(headers, MOST_UPLOAD_BYTES if url.path == UPLOADS else MOST_BODY_BYTES)
        if refusal is not None:
            self.close_connection = True  # its body was not read
            self._send(said(refusal.status, refused=refusal.key))
            return
        try:
            body = self.rfile.read(int(headers["content-length"])) if is_post else b""
        except OSError:
            self.close_connection = True
            return
        self.server.allow(self.connection, None)
        query = {name: values[0] for name, values in parse_qs(url.query, max_num_fields=20).items()}
        asked = WireRequest(method=self.command, path=url.path, query=query, headers=headers, body=body)
        try:
            reply = self.server.answer(asked)
        except Exception:  # the border of the server: whatever one request does, the others go on
            reply = said(500, refused="web.refused.fault")
        self._send(reply)

    def _send(self, reply: Reply) -> None:
        self.send_response(reply.status)
        for name, value in {**SECURITY_HEADERS, **reply.headers}.items():
            self.send_header(name, value)
        self.send_header("Content-Type", reply.kind)
        self.send_header("Content-Length", str(len(reply.body)))
        if self.close_connection:
            self.send_header("Connection", "close")
        self.end_headers()
        self.wfile.write(reply.body)
