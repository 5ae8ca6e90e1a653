"""Somebody at the page: what they handed over, and the proof that runs for them, one at a time."""

from __future__ import annotations

import itertools
import secrets
import threading
import time
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from signgen.web.desk import Desk, LostError
from signgen.web.work import Answer, Request

MOST_FILES, MOST_FILE_BYTES = 12, 4_000_000
"""Files that one person may hand over, and the size of each: the largest of our own faces has 0.6 MB."""

PATIENCE_S = 60.0
"""How long a proof waits for a free process: longer than a class of twenty needs."""

SUFFIXES: Mapping[str, str] = {"font": ".ttf", "border": ".svg", "shop": ".toml"}
"""Of files that can be handed over, by the option that takes them."""


class FullError(Exception):
    """No more files can be handed over."""


class Person:
    """Safe to use from many threads. `folder` is theirs alone; `token` is what their page shows with each request."""

    def __init__(self, folder: Path, desk: Desk[Request, Answer], name: str = "") -> None:
        self.name = name
        self.token = secrets.token_urlsafe(24)
        self._folder = folder
        self._desk = desk
        self._own: dict[str, str] = {}
        self._lock = threading.Condition()
        self._number = 0
        self._next: tuple[int, Request] | None = None
        self._begun: tuple[int, float] | None = None
        self._done: tuple[int, str, Answer] | None = None

    @property
    def own(self) -> dict[str, str]:
        """Paths of the files that were handed over, by the names that the page knows them by."""
        with self._lock:
            return dict(self._own)

    def take(self, option: str, called: str, content: bytes) -> str:
        """Keep a file; the name that it can be asked for by.

        Raises: FullError; KeyError for an option that takes no file.
        """
        suffix = SUFFIXES[option]
        stem = "".join(c for c in Path(called).stem if c.isalnum() or c in "-_ ")[:40] or option
        with self._lock:
            if len(self._own) >= MOST_FILES or len(content) > MOST_FILE_BYTES:
                raise FullError(called)
            name = f"{stem}{suffix}"
            for number in itertools.count(2):
                if name not in self._own:
                    break
                name = f"{stem}-{number}{suffix}"
            self._folder.mkdir(parents=True, exist_ok=True)
            path = self._folder / f"{len(self._own) + 1}-{secrets.token_hex(6)}{suffix}"
            path.write_bytes(content)
            self._own[name] = str(path)
            return name

    def forget(self, name: str) -> None:
        """Let go of a file that was not what it was said to be."""
        with self._lock:
            path = self._own.pop(name, None)
        if path:
            Path(path).unlink(missing_ok=True)

    def prove(self, request: Request) -> int:
        """Begin a proof; its number. One that still runs or waits for this person is dropped: nobody looks at it."""
        with self._lock:
            self._number += 1
            idle = self._next is None and self._begun is None
            self._next = (self._number, request)
            if idle:
                threading.Thread(target=self._work, daemon=True).start()
            self._lock.notify_all()
            return self._number

    def wait(self, number: int, time_s: float) -> tuple[str, Answer] | None:
        """The name under which the proof's files lie, and its answer; None when it is not there after `time_s`, or a
        later one was begun."""
        until = time.monotonic() + time_s
        with self._lock:
            while self._done is None or self._done[0] < number:
                left = until - time.monotonic()
                if left <= 0 or number < self._number or not self._lock.wait(left):
                    break
            if self._done is None or self._done[0] != number:
                return None
            return self._done[1], self._done[2]

    def file(self, made: str, name: str) -> bytes | None:
        """A file of the last proof; None when there is no such file, or another proof has come since."""
        with self._lock:
            if self._done is None or not secrets.compare_digest(self._done[1].encode(), made.encode()):
                return None
            answer: Any = self._done[2]
        if name == "sign.zip":
            content: bytes | None = answer.get("zip")
            return content
        found: bytes | None = answer.get("files", {}).get(name)
        return found

    def _work(self) -> None:
        while True:
            with self._lock:
                if self._next is None:
                    self._begun = None
                    return
                number, request = self._next
                self._next = None
                self._begun = (number, time.monotonic())
            answer = self._answer(request)
            with self._lock:
                self._done = (number, secrets.token_urlsafe(18), answer)
                self._lock.notify_all()

    def _answer(self, request: Request) -> Answer:
        try:
            return self._desk.ask(request, PATIENCE_S, lambda: self._next is None)
        except LostError as error:
            return {"ok": False, "lost": str(error), "problems": []}
