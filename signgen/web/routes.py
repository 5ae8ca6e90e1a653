"""What there is to ask for: the page, its parts, drawings, proofs, and the files that were made."""

from __future__ import annotations

import base64
import binascii
import secrets
import threading
from collections.abc import Callable, Mapping
from importlib.resources import files
from typing import Any

import msgspec

from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.messages.language import LANGUAGES
from signgen.web.desk import Desk, LostError
from signgen.web.guard import MADE_POLICY
from signgen.web.page import page_html
from signgen.web.person import MOST_FILE_BYTES, SUFFIXES, FullError, Person
from signgen.web.reply import KINDS, Reply, said
from signgen.web.server import UPLOADS, WireRequest
from signgen.web.work import Answer, Request

SKETCH_PATIENCE_S = 30.0
"""How long a drawing waits for a free process before it is given up: the next letter asks again."""

WAIT_S = 20.0
"""How long a question for a proof is kept open before it is asked anew."""

TOKEN = "x-signgen-token"
"""The header with a person's token."""

PARTS = ("page.css", "page.js", "fields.js", "line.js")
"""Files of the page."""


class Routes:
    """Answers requests. `person_of`: who holds a token, or None; `admit`: the person for whom the page itself is
    written, or None when the address lacks its key."""

    def __init__(
        self,
        sketches: Desk[Request, Answer],
        person_of: Callable[[str], Person | None],
        admit: Callable[[WireRequest], Person | None],
    ) -> None:
        self._sketches = sketches
        self._person_of = person_of
        self._admit = admit
        self._faces: dict[str, bytes] = {}
        self._made: dict[str, Person] = {}
        self._lock = threading.Lock()

    def answer(self, asked: WireRequest) -> Reply:
        if asked.method == "POST":
            return self._post(asked)
        if asked.path == "/":
            return self._page(asked)
        head, _, name = asked.path.removeprefix("/").partition("/")
        if not name and head in PARTS:
            content = files("signgen.web").joinpath("parts", head).read_bytes()
            return Reply(kind=KINDS[head.rpartition(".")[2]], body=content)
        if head == "faces":
            return self._face(name)
        if head == "made":
            return self._file(*name.partition("/")[::2])
        return said(404, refused="web.refused.nothing")

    def _page(self, asked: WireRequest) -> Reply:
        person = self._admit(asked)
        if person is None:
            return said(403, refused="web.refused.key")
        wanted = asked.query.get("language") or _spoken(asked.headers.get("accept-language", ""))
        return Reply(kind=KINDS["html"], body=page_html(person.token, _known(wanted), asked.query).encode())

    def _post(self, asked: WireRequest) -> Reply:
        person = self._person_of(asked.headers.get(TOKEN, ""))
        if person is None:
            return said(403, refused="web.refused.token")
        try:
            body = msgspec.json.decode(asked.body)
        except (msgspec.DecodeError, RecursionError):
            return said(400, refused="web.refused.json")
        does: Mapping[str, Callable[[Person, dict[str, Any]], Reply]] = {
            "/api/sketch": self._sketch, "/api/prove": self._prove, "/api/wait": self._wait, "/api/open": self._open,
            UPLOADS: self._hand_over,
        }  # fmt: skip
        if asked.path not in does or not isinstance(body, dict):
            return said(404, refused="web.refused.nothing")
        return does[asked.path](person, body)

    def _ask(self, person: Person, body: dict[str, Any], kind: str, wanted: object) -> Answer:
        request = Request(kind=kind, wanted=wanted, language=_known(body.get("language")), own=person.own)
        try:
            return self._sketches.ask(request, SKETCH_PATIENCE_S)
        except LostError as error:
            return {"ok": False, "lost": str(error), "problems": []}

    def _sketch(self, person: Person, body: dict[str, Any]) -> Reply:
        return said(**self._ask(person, body, "sketch", body.get("wanted")))

    def _open(self, person: Person, body: dict[str, Any]) -> Reply:
        return said(**self._ask(person, body, "open", body.get("file")))

    def _prove(self, person: Person, body: dict[str, Any]) -> Reply:
        language = _known(body.get("language"))
        request = Request(kind="prove", wanted=body.get("wanted"), language=language, own=person.own)
        return said(number=person.prove(request))

    def _wait(self, person: Person, body: dict[str, Any]) -> Reply:
        number = body.get("number")
        if not isinstance(number, int):
            return said(400, refused="web.refused.json")
        done = person.wait(number, WAIT_S)
        if done is None:
            return said(running=True)
        made, answer = done
        if answer["ok"]:
            with self._lock:  # several people's proofs end at once
                self._made = {name: each for name, each in self._made.items() if each is not person} | {made: person}
        names = list(answer.get("files", ()))
        told = {name: value for name, value in answer.items() if name not in ("files", "zip")}
        return said(running=False, made=made, files=names, **told)

    def _hand_over(self, person: Person, body: dict[str, Any]) -> Reply:
        option, called, data = body.get("option"), body.get("name"), body.get("data")
        if option not in SUFFIXES or not isinstance(called, str) or not isinstance(data, str):
            return said(400, refused="web.refused.json")
        try:
            content = base64.b64decode(data, validate=True)
        except (binascii.Error, ValueError):
            return said(400, refused="web.refused.json")
        if len(content) > MOST_FILE_BYTES:
            return said(413, refused="web.refused.size")
        try:
            name = person.take(str(option), called, content)
        except FullError:
            return said(409, refused="web.refused.full")
        found = self._ask(person, body, "look", {"option": option, "name": name})
        if not found["ok"]:
            person.forget(name)
        return said(name=name, **found)

    def _face(self, name: str) -> Reply:
        stem = name.removesuffix(".svg")
        if not any(face.name == stem for face in (*catalogue(), *stroke_catalogue())):
            return said(404, refused="web.refused.nothing")
        if stem not in self._faces:
            request = Request(kind="face", wanted=stem, language=LANGUAGES[0])
            try:
                self._faces[stem] = str(self._sketches.ask(request, SKETCH_PATIENCE_S)["svg"]).encode()
            except LostError:
                return said(503, refused="web.refused.fault")
        return Reply(kind=KINDS["svg"], body=self._faces[stem], headers={"Cache-Control": "private, max-age=3600"})

    def _file(self, made: str, name: str) -> Reply:
        """A file that was made. Who knows its folder's random name is the one to whom it was told."""
        person = next(
            (each for known, each in self._made.items() if secrets.compare_digest(known.encode(), made.encode())), None
        )
        content = person.file(made, name) if person is not None else None
        if content is None:
            return said(404, refused="web.refused.nothing")
        suffix = name.rpartition(".")[2]
        headers = {"Content-Security-Policy": MADE_POLICY} if suffix in ("html", "svg") else {}
        if suffix in ("zip", "nc", "toml", "json"):
            headers["Content-Disposition"] = f'attachment; filename="{name}"'
        return Reply(kind=KINDS[suffix], body=content, headers=headers)


def _known(language: object) -> str:
    """The language that a page says it is in, which stands in each of its requests; English for any other."""
    return language if isinstance(language, str) and language in LANGUAGES else LANGUAGES[0]


def _spoken(header: str) -> str:
    """The first language of a browser's list (RFC 9110, 12.5.4) that there is here; browsers send the dearest first."""
    codes = [part.split(";")[0].strip().casefold()[:2] for part in header[:200].split(",")]
    return next((code for code in codes if code in LANGUAGES), LANGUAGES[0])
