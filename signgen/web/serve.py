"""The page put together: processes, people, addresses."""

from __future__ import annotations

import contextlib
import os
import secrets
import tempfile
from collections.abc import Iterator
from pathlib import Path

from signgen.batching.pool import PoolLimits
from signgen.errors import AskError
from signgen.messages import Message
from signgen.web.desk import Desk
from signgen.web.person import Person
from signgen.web.routes import Routes
from signgen.web.server import PageServer, WireRequest
from signgen.web.work import Answer, Request, answer

SKETCH_LIMITS = PoolLimits(time_s=20.0, memory_mb=700)
PROOF_LIMITS = PoolLimits(time_s=180.0, memory_mb=1500)
"""What a drawing and a proof may take; the largest sign that a machine in the shop holds takes a third of it."""

LOOPBACK = "127.0.0.1"


@contextlib.contextmanager
def served(port: int = 0) -> Iterator[tuple[PageServer, str]]:
    """A server for one person on this computer and the address to open; nobody is served before `serve_forever`.
    `port` 0: any that is free.

    Raises: AskError when the port cannot be had.
    """
    key = secrets.token_urlsafe(18)
    count = os.cpu_count() or 1
    with contextlib.ExitStack() as stack:
        folder = Path(stack.enter_context(tempfile.TemporaryDirectory(prefix="signgen-")))
        sketches: Desk[Request, Answer] = stack.enter_context(Desk(answer, count, SKETCH_LIMITS))
        proofs: Desk[Request, Answer] = stack.enter_context(Desk(answer, count, PROOF_LIMITS))
        me = Person(folder, proofs)

        def holder(token: str) -> Person | None:
            return me if secrets.compare_digest(token.encode(), me.token.encode()) else None

        def admitted(asked: WireRequest) -> Person | None:
            return me if secrets.compare_digest(asked.query.get("key", "").encode(), key.encode()) else None

        routes = Routes(sketches, holder, admitted)
        try:
            server = stack.enter_context(PageServer((LOOPBACK, port), (LOOPBACK, "localhost"), routes.answer))
        except (OSError, OverflowError) as error:
            why = getattr(error, "strerror", None) or str(error)
            what = Message("web.no_address", address=f"{LOOPBACK}:{port}", why=why)
            raise AskError.at("port", what, Message("web.other_port")) from error
        yield server, f"http://{LOOPBACK}:{server.port}/?key={key}"
