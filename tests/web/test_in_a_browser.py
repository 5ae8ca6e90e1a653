"""The page as somebody uses it who has never seen it: in a real browser, with mouse, keyboard, thumb and ears."""

from __future__ import annotations

import shlex
import zipfile
from pathlib import Path
from typing import Any

import pytest

from tests.web.asking import Site

PROVED = "#look[data-state=proved]"
AXE = Path(__file__).parents[2] / ".axe" / "node_modules" / "axe-core" / "axe.min.js"
"""Rules for WCAG 2.2, from the npm registry: `npm install --prefix .axe axe-core`."""


@pytest.fixture
def tab(browser: Any, page: Site) -> Any:
    """A new window on the page, as if nobody had been there; script errors fail the test."""
    context = browser.new_context(viewport={"width": 1280, "height": 900}, accept_downloads=True)
    found = context.new_page()
    wrong: list[str] = []
    found.on("pageerror", lambda error: wrong.append(str(error)))
    found.on("console", lambda message: wrong.append(message.text) if message.type == "error" else None)
    found.goto(page.address)
    yield found
    context.close()
    assert not wrong


def test_a_house_number_in_eight_steps(tab: Any, tmp_path: Path) -> None:
    tab.get_by_label("Line 1", exact=True).fill("21")
    tab.get_by_label("Line 2", exact=True).fill("Cooper's Row")
    tab.get_by_label("Width and height of the sign").fill("240x130")
    tab.get_by_label("Thickness of the board").fill("15")
    tab.get_by_label("Material").select_option("hardwood")
    tab.get_by_label("Outline").select_option("ogee")
    tab.get_by_label("Holes to hang it by").select_option("side-pair")
    tab.wait_for_selector(PROVED)
    with tab.expect_download() as download:
        tab.get_by_role("link", name="Take all files (zip)").click()
    download.value.save_as(tmp_path / "sign.zip")
    with zipfile.ZipFile(tmp_path / "sign.zip") as archive:
        assert {"setup.html", "preview.png", "sign.toml", "report.json"} <= set(archive.namelist())
        assert b"COOPER'S ROW" in b"".join(archive.read(n) for n in archive.namelist() if n.endswith(".nc")).upper()
    typed = shlex.split(tab.locator("#command").text_content())
    assert typed[-2:] == ["21", "Cooper's Row"]


def test_by_keyboard_alone(tab: Any) -> None:
    tab.wait_for_selector(PROVED)
    for _ in range(3):
        tab.keyboard.press("Tab")
    tab.keyboard.press("Tab")
    assert tab.evaluate("document.activeElement.id") == "line-1"
    tab.keyboard.press("Control+A")
    tab.keyboard.type("44")
    tab.keyboard.press("Enter")
    tab.keyboard.type("Reed")
    for _ in range(40):
        if tab.evaluate("document.activeElement.id") == "field-size":
            break
        tab.keyboard.press("Tab")
    tab.keyboard.press("Control+A")
    tab.keyboard.type("230x150")
    tab.wait_for_selector("#look[data-state=busy]")
    tab.wait_for_selector(PROVED)
    for _ in range(120):
        if tab.evaluate("document.activeElement.id") == "sheet":
            break
        tab.keyboard.press("Tab")
    with tab.context.expect_page() as opened:
        tab.keyboard.press("Enter")
    opened.value.wait_for_load_state()
    assert "44" in opened.value.title()


def test_what_is_wrong_is_said_at_its_field_and_goes_when_it_is_mended(tab: Any) -> None:
    field = tab.get_by_label("Thickness of the board")
    field.fill("thick")
    tab.wait_for_selector("#look[data-state=wrong]")
    assert field.get_attribute("aria-invalid") == "true"
    assert "is not a length" in tab.locator("#wrong-thickness").text_content()
    field.fill("9")
    tab.wait_for_selector(PROVED)
    assert field.get_attribute("aria-invalid") is None
    assert tab.locator("#wrong-thickness").text_content() == ""


def test_every_option_is_found_by_search_and_does_something(tab: Any) -> None:
    tab.get_by_text("Everything else").click()
    tab.get_by_label("What would you like to change?").fill("drill cabinet")
    assert tab.locator("#found").text_content() == "0 things to change"
    tab.get_by_label("What would you like to change?").fill("onion")
    tab.get_by_label("onion skin", exact=True).fill("0.5")
    tab.wait_for_selector(PROVED)
    assert "--onion-skin 0.5" in tab.locator("#command").text_content()


def test_a_line_has_settings_of_its_own(tab: Any) -> None:
    tab.get_by_text("Only this line").first.click()
    tab.get_by_label("digit height", exact=True).first.fill("31")
    tab.wait_for_selector("#look[data-state=busy]")
    tab.wait_for_selector(PROVED)
    assert "+digit-height=31" in tab.locator("#command").text_content()
    assert tab.locator("#lettering").text_content().startswith("7 at ")


def test_what_stood_there_is_there_again_after_a_reload(tab: Any) -> None:
    tab.get_by_label("Line 1", exact=True).fill("Wheelwright")
    tab.wait_for_selector(PROVED)
    tab.reload()
    tab.wait_for_selector(PROVED)
    assert tab.get_by_label("Line 1", exact=True).input_value() == "Wheelwright"


def test_in_german(tab: Any) -> None:
    tab.get_by_role("link", name="Deutsch").click()
    tab.wait_for_selector(PROVED)
    assert "Prüfungen der Programme bestanden" in tab.locator("#status").text_content()
    assert tab.locator("html").get_attribute("lang") == "de"
    assert "--language de" in tab.locator("#command").text_content()


@pytest.mark.sweep
@pytest.mark.parametrize("width", [360, 768, 1280])
@pytest.mark.parametrize("language", ["en", "de"])
def test_nothing_runs_out_of_the_window(tab: Any, page: Site, width: int, language: str) -> None:
    tab.set_viewport_size({"width": width, "height": 740})
    tab.goto(f"{page.address}&language={language}")
    tab.wait_for_selector(PROVED)
    for details in tab.locator("details").all():
        details.evaluate("(each) => { each.open = true; }")
    assert tab.evaluate("document.documentElement.scrollWidth") <= width
    small = tab.evaluate(
        """[...document.querySelectorAll("button, .button, input:not([type=radio]), select")]
        .filter((each) => each.offsetParent && each.getBoundingClientRect().height < 24).map((each) => each.id)"""
    )
    assert small == []  # WCAG 2.2, 2.5.8: targets of 24 by 24 CSS pixels at least


@pytest.mark.sweep
@pytest.mark.parametrize("language", ["en", "de"])
def test_the_accessibility_rules_find_nothing(browser: Any, page: Site, language: str) -> None:
    if not AXE.exists():
        pytest.skip("axe-core is not installed (npm install --prefix .axe axe-core)")
    context = browser.new_context(bypass_csp=True, viewport={"width": 1280, "height": 900})
    tab = context.new_page()
    tab.goto(f"{page.address}&language={language}")
    tab.get_by_label("Thickness of the board" if language == "en" else "Dicke des Bretts").fill("thick")
    tab.wait_for_selector("#look[data-state=wrong]")
    for details in tab.locator("details").all():
        details.evaluate("(each) => { each.open = true; }")
    tab.add_script_tag(path=str(AXE))
    found = tab.evaluate("axe.run()")
    context.close()
    assert [(each["id"], [node["html"][:200] for node in each["nodes"]][:3]) for each in found["violations"]] == []
