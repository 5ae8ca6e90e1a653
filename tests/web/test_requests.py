"""The page's answers, as its script gets them."""

from __future__ import annotations

import base64
import io
import shlex
import subprocess
import sys
import zipfile
from pathlib import Path

from tests.web.asking import Site

WANTED = {"text": ["3", "Bellows Row"], "size": "200x110", "thickness": "10"}


def test_a_drawing_comes_with_its_words_and_its_command(page: Site) -> None:
    status, found = page.post("/api/sketch", {"wanted": WANTED})
    assert status == 200
    assert found["ok"]
    assert found["svg"].startswith("<svg")
    assert found["title"] == "3 / Bellows Row"
    assert "Bellows Row at" in found["lettering"]
    assert found["command"] == "signgen make --size 200x110 --thickness 10 3 'Bellows Row'"


def test_pages_in_two_languages_stand_side_by_side(page: Site) -> None:
    page.get(f"/{page.address.split('/', 3)[3]}&language=de")
    _, english = page.post("/api/sketch", {"wanted": WANTED, "language": "en"})
    _, german = page.post("/api/sketch", {"wanted": WANTED, "language": "de"})
    _, strange = page.post("/api/sketch", {"wanted": WANTED, "language": ["de"]})
    assert " at " in english["lettering"]
    assert " mit " in german["lettering"]
    assert "--language de" in german["command"]
    assert strange == english


def test_what_is_wrong_stands_at_its_option(page: Site) -> None:
    _, found = page.post("/api/sketch", {"wanted": {**WANTED, "thickness": "thick"}})
    assert not found["ok"]
    assert [problem["where"] for problem in found["problems"]] == ["thickness"]


def test_the_files_are_those_of_the_command_that_is_shown(page: Site, tmp_path: Path) -> None:
    wanted = {**WANTED, "line": [{"text": "3", "digit-height": "40"}, {"text": "-row"}], "holes": "corners"}
    del wanted["text"]
    _, drawn = page.post("/api/sketch", {"wanted": wanted})
    found = page.proved(wanted)
    assert found["ok"], found
    status, headers, content = page.get(f"/made/{found['made']}/sign.zip")
    assert status == 200
    assert headers["Content-Disposition"] == 'attachment; filename="sign.zip"'
    typed = shlex.split(drawn["command"])
    assert typed[:2] == ["signgen", "make"]
    made = subprocess.run(
        [sys.executable, "-m", "signgen", "make", "--out", str(tmp_path / "out"), *typed[2:]],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert made.returncode == 0, made.stderr
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        inside = {name: archive.read(name) for name in archive.namelist()}
    assert inside == {path.name: path.read_bytes() for path in (tmp_path / "out").iterdir()}


def test_a_later_proof_drops_an_earlier_one(page: Site) -> None:
    _, first = page.post("/api/prove", {"wanted": WANTED})
    _, second = page.post("/api/prove", {"wanted": {**WANTED, "text": ["4"]}})
    assert page.post("/api/wait", {"number": first["number"]})[1] == {"running": True}
    while (found := page.post("/api/wait", {"number": second["number"]})[1]).get("running"):
        pass
    assert found["ok"]


def test_a_sign_file_fills_the_form(page: Site) -> None:
    file = 'size = [200, 110]\nthickness = 10\nshop = "own.toml"\ncountersink = true\n'
    file += '[[line]]\ntext = "3"\nalign = "left"\n'
    _, found = page.post("/api/open", {"file": file})
    assert found["ok"]
    assert found["left_out"] == ["shop"]
    assert found["fields"] == {
        "size": ["200", "110"], "thickness": "10", "countersink": "true", "line": [{"text": "3", "align": "left"}],
    }  # fmt: skip


def test_the_file_that_the_page_shows_opens_again(page: Site) -> None:
    _, drawn = page.post("/api/sketch", {"wanted": WANTED})
    _, found = page.post("/api/open", {"file": drawn["file"]})
    assert found["ok"], found
    _, again = page.post("/api/sketch", {"wanted": found["fields"]})
    assert again["ok"], again
    assert again["svg"] == drawn["svg"]


def test_a_face_of_ones_own_is_handed_over_and_used(page: Site) -> None:
    content = next(Path("fonts_open/cinzel").glob("*.ttf")).read_bytes()
    body = {"option": "font", "name": "My face.ttf", "data": base64.b64encode(content).decode()}
    _, taken = page.post("/api/hand-over", body)
    assert taken == {"name": "My face.ttf", "ok": True}
    _, found = page.post("/api/sketch", {"wanted": {**WANTED, "font": "own:My face.ttf"}})
    assert found["ok"], found
    assert found["command"].count("'My face.ttf'") == 1
    assert "/" not in found["command"]
    _, usual = page.post("/api/sketch", {"wanted": WANTED})
    assert found["svg"] != usual["svg"]


def test_what_is_no_font_is_not_kept(page: Site) -> None:
    body = {"option": "font", "name": "x.ttf", "data": base64.b64encode(b"no font").decode()}
    _, taken = page.post("/api/hand-over", body)
    assert not taken["ok"]
    _, found = page.post("/api/sketch", {"wanted": {**WANTED, "font": "own:x.ttf"}})
    assert not found["ok"]


def test_a_face_is_shown_in_itself(page: Site) -> None:
    status, headers, content = page.get("/faces/pacifico.svg")
    assert status == 200
    assert headers["Content-Type"] == "image/svg+xml"
    assert b"<path" in content
