"""`check --page`: any program played, with its lines and what is in force, by keys and by touch."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.replay.steps import trace
from tests.browsing import browser
from tests.lesson.beginners import GOOD
from tests.playback.test_preview_html import opened

__all__ = ["browser"]
BOARD = ["--stock", "200x100x12", "--z-zero", "top", "--material", "softwood", "--tool", "end-mill-6"]


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("any")
    (folder / "own.nc").write_text(GOOD)
    out = folder / "own.html"
    CliRunner().invoke(group, ["check", str(folder / "own.nc"), *BOARD, "--page", str(out)])
    return out


def test_every_line_shows_the_modal_words_that_the_reader_knows(browser: Any, file: Path) -> None:
    page = opened(browser, file)
    states = page.evaluate(
        "new Listing(JSON.parse(document.getElementById('job').textContent).programs[0].text).states"
    )
    steps = trace(GOOD).steps
    assert len(states) == len(steps)
    for state, step in zip(states, steps, strict=True):
        if step.number >= 5:  # before, the reader knows what a machine starts with, and the page shows what was said
            assert set(step.modal) <= set(state["modal"].split()) | {"M5"}, step.number
        assert state["feed"] == (f"{step.feed:g}" if step.feed else "")
    page.context.close()


def settled(page: Any) -> None:
    """Two pictures later."""
    page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")


def test_keys_and_buttons_step_forwards_and_back(browser: Any, file: Path) -> None:
    page = opened(browser, file)
    page.keyboard.press("Home")
    for _ in range(6):
        page.keyboard.press("ArrowRight")
    settled(page)
    at = page.inner_text("#line-now")
    assert at in [f"{n}  {line}" for n, line in enumerate(GOOD.splitlines(), 1)]
    page.click("#on")
    settled(page)
    assert int(page.inner_text("#line-now").split()[0]) > int(at.split()[0])
    page.click("#back")
    page.click("#back")
    settled(page)
    assert int(page.inner_text("#line-now").split()[0]) <= int(at.split()[0])
    assert page.inner_text("#at-f") in ("", "300", "1200")
    assert page.seen["errors"] == []
    page.context.close()


def test_the_controls_stand_in_sight_and_a_finger_is_told_to_touch(browser: Any, file: Path) -> None:
    for options, word in (({}, "Point at"), ({"has_touch": True, "is_mobile": True}, "Touch")):
        page = opened(browser, file, **options)
        page.set_viewport_size({"width": 1280, "height": 900})
        box = page.locator(".controls").bounding_box()
        assert box["y"] + box["height"] <= 900
        assert page.evaluate("document.documentElement.scrollWidth") <= 1280
        assert page.inner_text("#depth").startswith(word)
        if word == "Touch":
            page.tap("#stage")
            settled(page)
            assert re.search("mm|cut", page.inner_text("#depth"))
        page.context.close()


def test_programs_that_move_nothing_are_not_played(tmp_path: Path) -> None:
    (tmp_path / "a.nc").write_text("(nothing)\nM2\n")
    run = CliRunner().invoke(group, ["check", str(tmp_path / "a.nc"), *BOARD, "--page", str(tmp_path / "a.html")])
    assert "nothing to play" in str(run.exception)
    assert not (tmp_path / "a.html").exists()
