"""What somebody may try who is not the person at the page, and what it must be answered: a table.

Sources: RFC 9110 (7.4 misdirected requests, 15.5 statuses), RFC 6454 (origins), RFC 6585; what is tried is common
practice against local servers, from memory.
"""

from __future__ import annotations

import base64
import json
import socket
import time
import zlib
from pathlib import Path
from typing import Any

import pytest

from signgen.web import server as serving
from tests.web.asking import Site

WANTED = {"text": ["3"], "size": "120x70", "thickness": "10"}


def wire(page: Site, request: bytes, time_s: float = 30) -> bytes:
    """What comes back for bytes that are sent as they are, as far as the server closes or answers."""
    host, port = page.host.split(":")
    with socket.create_connection((host, int(port)), timeout=time_s) as connection:
        connection.sendall(request.replace(b"HOST", page.host.encode()).replace(b"TOKEN", page.token.encode()))
        found = b""
        try:
            while b"\r\n\r\n" not in found and (more := connection.recv(65536)):
                found += more
        except ConnectionResetError:
            pass
        return found


def post(headers: str, body: bytes = b'{"wanted":{}}', path: str = "/api/sketch") -> bytes:
    return f"POST {path} HTTP/1.1\r\n{headers}".encode() + b"\r\n\r\n" + body


GOOD = (
    "Host: HOST\r\nOrigin: http://HOST\r\nX-Signgen-Token: TOKEN\r\nContent-Type: application/json\r\n"
    "Content-Length: 13"
)

REFUSED = {
    "another host": (b"GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n", 421),
    "a host that was made to point here": (b"GET / HTTP/1.1\r\nHost: evil.example:80\r\n\r\n", 421),
    "our host with another port": (b"GET / HTTP/1.1\r\nHost: 127.0.0.1:1\r\n\r\n", 421),
    "our host with a dot behind": (b"GET / HTTP/1.1\r\nHost: localhost.:80\r\n\r\n", 421),
    "no host": (b"GET / HTTP/1.1\r\n\r\n", 421),
    "two hosts": (b"GET / HTTP/1.1\r\nHost: HOST\r\nHost: evil.example\r\n\r\n", 421),
    "all addresses as host": (b"GET / HTTP/1.1\r\nHost: 0.0.0.0:80\r\n\r\n", 421),
    "no key": (b"GET / HTTP/1.1\r\nHost: HOST\r\n\r\n", 403),
    "a guessed key": (b"GET /?key=AAAA HTTP/1.1\r\nHost: HOST\r\n\r\n", 403),
    "a key in letters beyond ASCII": (b"GET /?key=%C3%A9 HTTP/1.1\r\nHost: HOST\r\n\r\n", 403),
    "a page of another site": (b"GET / HTTP/1.1\r\nHost: HOST\r\nSec-Fetch-Site: cross-site\r\n\r\n", 403),
    "no origin": (post(GOOD.replace("Origin: http://HOST\r\n", "")), 403),
    "a foreign origin": (post(GOOD.replace("http://HOST", "http://evil.example")), 403),
    "the origin null": (post(GOOD.replace("http://HOST", "null")), 403),
    "our origin with s": (post(GOOD.replace("http://HOST", "https://HOST")), 403),
    "an origin that begins like ours": (post(GOOD.replace("http://HOST", "http://HOST.evil.example")), 403),
    "no token": (post(GOOD.replace("X-Signgen-Token: TOKEN\r\n", "")), 403),
    "a token of another day": (post(GOOD.replace("TOKEN", "A" * 32)), 403),
    "a token cut short": (post(GOOD.replace("Token: TOKEN", "Token: T")), 403),
    "a form": (post(GOOD.replace("application/json", "application/x-www-form-urlencoded")), 415),
    "plain text": (post(GOOD.replace("application/json", "text/plain")), 415),
    "no kind": (post(GOOD.replace("Content-Type: application/json\r\n", "")), 415),
    "no length": (post(GOOD.replace("\r\nContent-Length: 13", "")), 411),
    "a negative length": (post(GOOD.replace("13", "-1")), 411),
    "a length in words": (post(GOOD.replace("13", "1e3")), 411),
    "chunks": (post(GOOD + "\r\nTransfer-Encoding: chunked"), 411),
    "a gigabyte": (post(GOOD.replace("13", "1000000000")), 413),
    "a length of many digits": (post(GOOD.replace("13", "9" * 400)), 411),
    "more than a sign": (post(GOOD.replace("13", "70000")), 413),
    "no JSON": (post(GOOD, b"wanted=1&a=bb"), 400),
    "a list": (post(GOOD, b"[1, 2, 3, 45]"), 404),
    "another path": (post(GOOD, path="/api/nothing"), 404),
    "up and away": (b"GET /../../etc/passwd HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "up and away in per cent": (b"GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "up from the faces": (b"GET /faces/../../etc/passwd HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "a face by its path": (b"GET /faces//etc/passwd.svg HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "the module itself": (b"GET /serve.py HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "a part by its folder": (b"GET /parts/page.js HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "files of a guessed proof": (b"GET /made/AAAA/sign.zip HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "files beyond ASCII": (b"GET /made/\xc3\xa9/sign.zip HTTP/1.1\r\nHost: HOST\r\n\r\n", 404),
    "another method": (b"PUT / HTTP/1.1\r\nHost: HOST\r\n\r\n", 501),
    "a line without end": (b"GET /" + b"a" * 70_000 + b" HTTP/1.1\r\n\r\n", 414),
    "headers without number": (b"GET / HTTP/1.1\r\n" + b"A: b\r\n" * 300 + b"\r\n", 431),
    "a blank before the colon": (b"GET / HTTP/1.1\r\nHost: HOST\r\nHost : evil.example\r\n\r\n", 403),
    "no HTTP": (b"\x16\x03\x01\x02\x00\x01\r\n\r\n", 400),
}  # fmt: skip


@pytest.mark.parametrize("attack", REFUSED)
def test_a_request_of_somebody_else_is_refused(page: Site, attack: str) -> None:
    request, status = REFUSED[attack]
    head = wire(page, request).split(b"\r\n")[0]
    if attack == "no HTTP" and not head.startswith(b"HTTP"):
        assert b"400" in head or head.startswith(b"<") or not head  # what is no HTTP gets no HTTP back (HTTP/0.9)
        return
    assert int(head.split()[1]) == status, head


VALUES: dict[str, dict[str, Any]] = {
    "a font by its path": {"font": "/usr/share/fonts/x.ttf"},
    "a font that lies where signgen was started": {"font": "README.md"},
    "a font from a home": {"font": "~/x.ttf"},
    "an outline by its path": {"border": "path:/etc/passwd"},
    "an outline by its path in capitals": {"border": " PATH : /etc/passwd"},
    "a shop by its path": {"shop": "/etc/passwd"},
    "a folder to write into": {"out": "/tmp/elsewhere"},
    "a file of nobody": {"font": "own:other.ttf"},
    "a path behind own": {"font": "own:/etc/passwd"},
    "a path behind own in an outline": {"border": "path:own:../../etc/passwd"},
    "a font of a line": {"line": [{"text": "3", "font": "/etc/passwd"}]},
    "a font of ornaments": {"ornament": "*", "ornament-font": "/etc/passwd"},
    "a key that there is not": {"__class__": "x"},
    "a table where a word belongs": {"material": {"a": 1}},
    "lists in lists": {"text": [["3"]]},
}


@pytest.mark.parametrize("attack", VALUES)
def test_no_value_names_a_file(page: Site, attack: str) -> None:
    status, found = page.post("/api/sketch", {"wanted": {**WANTED, **VALUES[attack]}})
    assert status == 200
    assert not found["ok"]
    assert found["problems"]
    assert "passwd" not in json.dumps([problem["what"] for problem in found["problems"]]).replace("'/etc/passwd'", "")


SCRIPT = "</script><script>alert(1)</script><img src=x onerror=alert(1)>\"'&"


def test_script_in_words_stays_words(page: Site) -> None:
    _, found = page.post("/api/sketch", {"wanted": {**WANTED, "text": [SCRIPT], "size": "900x70"}})
    for text in (found.get("svg", ""), found.get("command", "")):
        assert "<script" not in text.replace("'\"'\"'", "") or "&lt;script" in text or text == found.get("command")
    made = page.proved({**WANTED, "text": [SCRIPT], "size": "900x70", "font": "atkinson"})
    assert made["ok"], made
    status, headers, content = page.get(f"/made/{made['made']}/setup.html")
    assert status == 200
    assert "sandbox" in headers["Content-Security-Policy"]
    assert b"<script>alert" not in content


def test_script_in_the_address_stays_in_it(page: Site) -> None:
    _, headers, content = page.get(
        f"/{page.address.split('/', 3)[3]}&x=%3Cscript%3Ealert(1)%3C/script%3E&language=%22%3E"
    )
    assert b"<script>alert" not in content
    assert "script-src 'self'" in headers["Content-Security-Policy"]
    assert "unsafe" not in headers["Content-Security-Policy"]


HANDED: dict[str, tuple[str, str, bytes]] = {
    "a path as a name": ("font", "../../../tmp/x.ttf", b"x"),
    "a name of markup": ("font", "<img src=x onerror=alert(1)>.ttf", b"x"),
    "a font of noughts": ("font", "x.ttf", bytes(100_000)),
    "entities without end": (
        "border", "x.svg",
        b'<!DOCTYPE a [<!ENTITY b "bbbbbbbbbb">' + b"".join(
            b'<!ENTITY %c "&%c;&%c;&%c;&%c;&%c;&%c;&%c;&%c;">' % (c, *[c - 1] * 8) for c in range(99, 122)
        ) + b"]><svg xmlns='http://www.w3.org/2000/svg'><path d='&y;'/></svg>",
    ),
    "an outside entity": (
        "border", "x.svg", b'<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]><svg><path d="&b;"/></svg>',
    ),
    "groups without end": ("border", "x.svg", b'<svg xmlns="http://www.w3.org/2000/svg">' + b"<g>" * 100_000),
    "a shop that is deep": ("shop", "x.toml", b"a=" + b"[" * 50_000),
    "a shop that names files": ("shop", "x.toml", b'include = "/etc/passwd"'),
    "a zip as a font": ("font", "x.ttf", b"PK\x03\x04" + zlib.compress(bytes(1_000_000))),
}  # fmt: skip


@pytest.mark.parametrize("attack", HANDED)
def test_what_is_handed_over_is_looked_at_and_not_kept(page: Site, attack: str, tmp_path: Path) -> None:
    option, name, content = HANDED[attack]
    body = {"option": option, "name": name, "data": base64.b64encode(content).decode()}
    status, found = page.post("/api/hand-over", body)
    assert status == 200
    assert not found["ok"]
    assert "/" not in found["name"]
    assert "<" not in found["name"]
    assert not Path("/tmp/x.ttf").exists()


def test_no_more_is_handed_over_than_there_is_room_for(page: Site) -> None:
    body = {"option": "font", "name": "x.ttf", "data": base64.b64encode(bytes(4_100_000)).decode()}
    assert page.post("/api/hand-over", body)[0] == 413
    for wrong in ({**body, "option": "out"}, {**body, "data": "é"}, {**body, "name": 3}):
        assert page.post("/api/hand-over", wrong)[0] == 400


def test_who_sends_slowly_is_shown_out(page: Site, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(serving, "ASKING_S", 0.5)
    host, port = page.host.split(":")
    with socket.create_connection((host, int(port)), timeout=30) as connection:
        connection.sendall(b"POST /api/sketch HTTP/1.1\r\nHost: ")
        with pytest.raises(OSError, match=r"pipe|reset"):
            drip(connection, 100)


def drip(connection: socket.socket, count: int) -> None:
    for _ in range(count):
        connection.sendall(b"a")
        time.sleep(0.2)


def test_many_silent_connections_keep_nobody_out_for_long(page: Site) -> None:
    host, port = page.host.split(":")
    silent = [socket.create_connection((host, int(port)), timeout=30) for _ in range(60)]
    try:
        assert page.post("/api/sketch", {"wanted": WANTED})[1]["ok"]
    finally:
        for each in silent:
            each.close()


def test_deep_and_strange_bodies_are_answered(page: Site) -> None:
    for body in (
        b"[" * 30_000,
        b'{"wanted":' * 3000,
        b"\xff\xfe",
        b'{"wanted":1e999}',
        b'{"wanted":{"text":"\\ud800"}}',
    ):
        status, _ = page.post("/api/sketch", body)
        assert status in (200, 400)


def test_nothing_is_left_of_a_page_that_ends(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from tests.web.asking import site

    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    with site() as own:
        data = base64.b64encode(b"no font").decode()
        own.post("/api/hand-over", {"option": "font", "name": "x.ttf", "data": data})
        assert own.post("/api/sketch", {"wanted": WANTED})[1]["ok"]
    assert not list(tmp_path.iterdir())
