"""The moving picture as a browser runs it: nothing loaded, nothing wrong, and the same board as the simulation's."""

from __future__ import annotations

import base64
import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from msgspec.structs import replace

from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.job.facts import JobFacts
from signgen.pipeline import make_job
from signgen.playback.preview_html import MOST_CELLS, _tool, preview_html
from signgen.replay.heights import board
from signgen.replay.sweep import cut
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool
from tests.asking import spec_of
from tests.browsing import browser
from tests.by_hand import ARC_CCW, ARC_CW, FEED, NO_CENTRE, Step, replay_of

Make = Callable[..., JobFacts]
Page = Any
__all__ = ["browser"]

FAR_MM = 0.003
"""A chord may stray by 0.002 mm in either simulation, and places are packed to 0.0005 mm."""

HEIGHTS = """() => {
  const bytes = new Uint8Array(sign.board.z.buffer);
  let text = "";
  for (let i = 0; i < bytes.length; i += 32768) text += String.fromCharCode(...bytes.subarray(i, i + 32768));
  return btoa(text);
}"""


def heights(page: Page) -> np.ndarray:
    return np.frombuffer(base64.b64decode(page.evaluate(HEIGHTS)), np.float32)


def opened(browser: Any, path: Path, **options: Any) -> Page:
    """The page, offline, once it says that it is ready; its errors and requests are kept in `seen`."""
    context = browser.new_context(viewport={"width": 1200, "height": 1000}, offline=True, **options)
    page = context.new_page()
    page.seen = {"errors": [], "requests": []}
    page.on("console", lambda message: page.seen["errors"].append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: page.seen["errors"].append(str(error)))
    page.on("request", lambda request: page.seen["requests"].append(request.url))
    page.goto(f"file://{path}")
    page.wait_for_selector("html[data-ready=yes]", timeout=60_000)
    return page


@pytest.fixture(scope="module")
def house() -> JobFacts:
    return make_job(spec_of()).facts


@pytest.fixture(scope="module")
def file(house: JobFacts, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "preview.html"
    path.write_text(preview_html(house), encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def shared(browser: Any, file: Path) -> Iterator[Page]:
    page = opened(browser, file)
    yield page
    assert page.seen["errors"] == []
    assert page.seen["requests"] == [f"file://{file}"]
    page.context.close()


@pytest.fixture
def page(shared: Page) -> Page:
    """The page as it opens: everything shown, from above, finished, nothing pointed at."""
    shared.mouse.move(2, 2)
    shared.keyboard.press("Escape")
    shared.evaluate("document.activeElement.blur()")
    shared.select_option("#which", "")
    shared.uncheck("#air")
    if shared.get_attribute("#view", "aria-pressed") == "true":
        shared.click("#view")
    shared.evaluate("sign.seek(sign.course.lasts); sign.show()")
    return shared


def waited(page: Page, condition: str) -> None:
    """Playwright's own waiting evaluates text, which the page's policy forbids."""
    for _ in range(200):
        if page.evaluate(condition):
            return
        page.wait_for_timeout(25)
    raise AssertionError(f"never came true: {condition}")


def time_of(page: Page) -> float:
    page.evaluate("sign.show()")
    return float(page.evaluate("sign.now.time"))


def test_it_is_small(file: Path) -> None:
    assert file.stat().st_size < 500_000


def test_it_is_the_same_bytes_twice(house: JobFacts) -> None:
    assert preview_html(house) == preview_html(house)


def test_the_last_frame_is_the_simulated_board(page: Page, house: JobFacts) -> None:
    final = house.boards[-1].z_mm
    assert np.abs(heights(page).reshape(final.shape) - final).max() < FAR_MM


def test_the_frame_before_a_program_is_the_board_that_the_one_before_left(page: Page, house: JobFacts) -> None:
    page.evaluate("sign.seek(sign.moves.since(sign.moves.first[1])); sign.show()")
    engraved = house.boards[0].z_mm
    assert np.abs(heights(page).reshape(engraved.shape) - engraved).max() < FAR_MM


def test_the_first_frame_is_the_bare_board(page: Page, house: JobFacts) -> None:
    page.evaluate("sign.seek(0); sign.show()")
    assert (heights(page) == np.float32(house.drawing.thickness_mm)).all()


def test_a_moment_is_the_same_however_it_is_reached(page: Page) -> None:
    found = []
    for way in ([0.0, 0.37], [1.0, 0.37], [0.36, 0.365, 0.37], [0.8, 0.1, 0.37]):
        for share in way:
            page.evaluate(f"sign.seek({share} * sign.course.lasts); sign.show()")
        found.append(heights(page))
    # a move that is cut in two parts may differ in the last bits
    assert all(np.abs(found[0] - other).max() < 1e-4 for other in found[1:])


TOOLS = {
    "v-bit": {"kind": "v-bit", "angle_deg": 60.0, "tip_mm": 0.0},
    "flat tip": {"kind": "v-bit", "angle_deg": 90.0, "tip_mm": 1.0},
    "end-mill": {"kind": "end-mill"},
    "ball-nose": {"kind": "ball-nose"},
    "drill": {"kind": "drill", "angle_deg": 118.0},
}


@pytest.mark.parametrize("name", TOOLS)
def test_random_ways_of_every_cutter_leave_the_same_board_in_both_simulations(page: Page, name: str) -> None:
    shape: Any = TOOLS[name]
    tool = Tool(
        name="x", diameter_mm=6.0, shank_mm=6.0, cutting_length_mm=20.0, flutes=2, stickout_mm=25.0, source="x", **shape
    )
    rng = np.random.default_rng(len(name))
    steps: list[Step] = [(FEED, (10.0, 10.0, 12.0), NO_CENTRE)]
    for _ in range(60):
        x, y, z = steps[-1][1]
        if rng.random() < 0.3:
            cx, cy = (x + rng.uniform(-6, 6), y + rng.uniform(-6, 6))
            angle = rng.uniform(0, 2 * np.pi)
            radius = float(np.hypot(x - cx, y - cy))
            end = (cx + radius * np.cos(angle), cy + radius * np.sin(angle), float(rng.uniform(6, 12)))
            steps.append((int(rng.choice([ARC_CW, ARC_CCW])), end, (cx, cy)))
        else:
            end = (float(rng.uniform(-5, 45)), float(rng.uniform(-5, 35)), float(rng.choice([z, rng.uniform(6, 12)])))
            steps.append((FEED, end, NO_CENTRE))
    motions = replay_of(steps).motions
    stock = Stock(width_mm=40, height_mm=30, thickness_mm=10, sign_x_mm=0, sign_y_mm=0)
    start = board(stock, 0.25)
    left = cut(start, motions, tool, WorkZero(x_mm=0, y_mm=0, z_mm=0)).z_mm
    rows = [
        [int(kind), *motions.start_mm[k].tolist(), *end, *(centre if kind >= ARC_CW else (0.0, 0.0))]
        for k, (kind, end, centre) in enumerate(steps)
    ]
    grid = {"nx": left.shape[1], "ny": left.shape[0], "x0": start.x0_mm, "y0": start.y0_mm, "cell": 0.25}
    z = page.evaluate(
        """([grid, tool, rows]) => {
          const board = new Board(grid, 10), moves = Object.create(Moves.prototype);
          for (const [kind, x, y, z, u, v, w, cx, cy] of rows) {
            Object.assign(moves, { kind: [4, kind], x: [x, u], y: [y, v], z: [z, w], cx: [0, cx], cy: [0, cy] });
            moves.pieces(1, 0, 1, (from, to) => board.cut(tool, from, to));
          }
          return [...board.z];
        }""",
        [grid, _tool(tool), rows],
    )
    apart = np.abs(np.array(z, np.float32).reshape(left.shape) - left)
    assert (left < 10).mean() > 0.2
    # along the wall of a flat cutter a cell's centre may fall on either side of it
    assert np.mean(apart > 0.01) < 1e-3
    assert np.median(apart[left < 10]) < 1e-4


def test_it_plays_and_pauses(page: Page) -> None:
    page.click("#play")
    waited(page, "sign.now.time > 1 && sign.now.plays")
    assert page.inner_text("#play") == "Pause"
    page.click("#play")
    at = time_of(page)
    page.wait_for_timeout(120)
    assert time_of(page) == at
    assert 0 < at < page.evaluate("sign.course.lasts")
    assert page.inner_text("#status").startswith("Paused.")


def test_it_stops_at_the_end(page: Page) -> None:
    page.evaluate("sign.seek(sign.course.lasts - 0.5)")
    page.click("#play")
    waited(page, "!sign.now.plays")
    assert time_of(page) == page.evaluate("sign.course.lasts")


def test_keys_play_step_jump_and_set_the_speed(page: Page) -> None:
    page.keyboard.press("Home")
    assert time_of(page) == 0
    page.keyboard.press(" ")
    waited(page, "sign.now.plays && sign.now.time > 0")
    page.keyboard.press(" ")
    assert not page.evaluate("sign.now.plays")
    page.keyboard.press("Home")
    page.keyboard.press("Shift+ArrowRight")
    assert time_of(page) == 10
    page.keyboard.press("ArrowRight")
    stepped = time_of(page)
    assert stepped > 10
    assert page.evaluate("sign.moves.at(sign.now.time)[1]") in (0, 1)
    page.keyboard.press("ArrowLeft")
    assert time_of(page) < stepped
    page.keyboard.press("End")
    assert time_of(page) == page.evaluate("sign.course.lasts")
    before = page.evaluate("sign.now.speed")
    page.keyboard.press("+")
    assert page.evaluate("sign.now.speed") > before
    page.keyboard.press("-")
    assert page.evaluate("sign.now.speed") == before


def test_steps_walk_through_every_move(page: Page) -> None:
    page.keyboard.press("Home")
    ends = []
    for _ in range(30):
        page.keyboard.press("ArrowRight")
        ends.append(time_of(page))
    assert ends == sorted(ends)
    wanted = page.evaluate("[...new Set(sign.moves.until.slice(0, 40))]")
    assert set(ends) <= set(wanted)


def test_the_slider_scrubs(page: Page) -> None:
    page.focus("#when")
    page.keyboard.press("Home")
    assert time_of(page) == 0
    box = page.locator("#when").bounding_box()
    page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    lasts = page.evaluate("sign.course.lasts")
    assert time_of(page) == pytest.approx(lasts / 2, rel=0.02)
    assert " of 4:" in page.get_attribute("#when", "aria-valuetext")


def test_one_program_is_played_from_its_beginning_to_its_end(page: Page, house: JobFacts) -> None:
    page.select_option("#which", label="2-end-mill-6.nc")
    assert time_of(page) == page.evaluate("sign.moves.since(sign.moves.first[1])")
    engraved = house.boards[0].z_mm
    assert np.abs(heights(page).reshape(engraved.shape) - engraved).max() < FAR_MM
    page.keyboard.press("End")
    assert time_of(page) == page.evaluate("sign.course.lasts")
    page.select_option("#which", label="1-v-bit-90.nc")
    assert time_of(page) == 0
    page.evaluate("document.activeElement.blur()")
    page.keyboard.press("End")
    assert time_of(page) == page.evaluate("sign.moves.since(sign.moves.first[1])")


def over(page: Page, house: JobFacts, x_mm: float, y_mm: float) -> None:
    """Point at a place of the sign."""
    box, stock = page.locator("#stage").bounding_box(), house.stock
    page.mouse.move(
        box["x"] + box["width"] * (x_mm + stock.sign_x_mm) / stock.width_mm,
        box["y"] + box["height"] * (stock.height_mm - stock.sign_y_mm - y_mm) / stock.height_mm,
    )
    page.evaluate("sign.show()")


def test_the_depth_under_the_pointer_is_told(page: Page, house: JobFacts) -> None:
    hole = house.drawing.of(Hole)[0]
    over(page, house, hole.x_mm, hole.y_mm)
    assert "cut through" in page.inner_text("#depth")
    over(page, house, 110, 5)
    assert page.inner_text("#depth").endswith("not cut")
    # the middle of the L's upright: its groove is as deep as half its width
    letter = next(groove for groove in house.drawing.of(Groove) if groove.text == "L")
    low_x, low_y, _, high_y = letter.area.bounds
    row = letter.area.intersection(_level(low_x, (low_y + high_y) / 2))
    over(page, house, row.centroid.x, (low_y + high_y) / 2)
    depth = float(re.findall(r"([\d.]+) mm deep", page.inner_text("#depth"))[0])
    assert depth == pytest.approx(row.length / 2, abs=0.25)


def _level(x: float, y: float) -> Any:
    from shapely.geometry import LineString

    return LineString([(x - 1, y), (x + 200, y)])


def blue(page: Page) -> int:
    """Pixels of the ways through the air on the upper layer."""
    return int(
        page.evaluate(
            """() => {
              const canvas = document.getElementById("over");
              const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
              let count = 0;
              for (let i = 0; i < data.length; i += 4) count += data[i + 3] > 200 && data[i + 2] > data[i] + 60;
              return count;
            }"""
        )
    )


def test_ways_through_the_air_are_hidden_until_they_are_asked_for(page: Page) -> None:
    page.evaluate("sign.show()")
    assert blue(page) == 0
    page.keyboard.press("w")
    page.evaluate("sign.show()")
    all_ways = blue(page)
    assert all_ways > 300
    page.evaluate("sign.seek(sign.course.lasts / 4); sign.show()")
    assert 0 < blue(page) < all_ways


def seen(page: Page) -> np.ndarray:
    """The picture in space as (h, w, 4) pixels."""
    text = page.evaluate(
        """() => {
          sign.show();
          const canvas = document.getElementById("solid"), copy = document.createElement("canvas");
          Object.assign(copy, { width: 160, height: 110 });
          const pen = copy.getContext("2d");
          pen.drawImage(canvas, 0, 0, 160, 110);
          return JSON.stringify([...pen.getImageData(0, 0, 160, 110).data]);
        }"""
    )
    return np.array(json.loads(text)).reshape(110, 160, 4)


def test_the_picture_in_space_shows_the_board_and_turns(page: Page, house: JobFacts) -> None:
    page.click("#view")
    if page.is_disabled("#view"):
        pytest.skip("this browser has no WebGL 2")
    first = seen(page)
    wood = np.median(first[45:65, 60:100, :3], axis=(0, 1)) - np.array(house.spec.material.colour_rgb)
    assert np.abs(wood).max() < 40
    box = page.locator("#stage").bounding_box()
    page.mouse.move(box["x"] + 300, box["y"] + 200)
    page.mouse.down()
    page.mouse.move(box["x"] + 420, box["y"] + 230, steps=3)
    page.mouse.up()
    turned = seen(page)
    assert np.abs(first - turned).mean() > 5
    page.focus("#stage")
    page.keyboard.press("ArrowLeft")
    assert np.abs(turned - seen(page)).mean() > 1


def test_in_space_the_pointer_finds_the_same_places(page: Page, house: JobFacts) -> None:
    page.click("#view")
    if page.is_disabled("#view"):
        pytest.skip("this browser has no WebGL 2")
    found = page.evaluate(
        """() => {
          const solid = sign.solid(), { at, away, right, up, open, wide } = solid.eye();
          return [[20, 30, 12], [180, 20, 12], [150, 120, 12]].map((place) => {
            const from = place.map((value, i) => value - at[i]);
            const d = -dot(away, from), u = dot(right, from) / (d * open * wide), v = dot(up, from) / (d * open);
            return solid.pick((u + 1) / 2, (1 - v) / 2);
          });
        }"""
    )
    assert np.abs(np.array(found) - np.array([[20, 30], [180, 20], [150, 120]])).max() < 1.0


def test_a_finger_reads_the_depth_too(browser: Any, file: Path, house: JobFacts) -> None:
    page = opened(browser, file, has_touch=True)
    box = page.locator("#stage").bounding_box()
    hole, stock = house.drawing.of(Hole)[0], house.stock
    page.touchscreen.tap(
        box["x"] + box["width"] * (hole.x_mm + stock.sign_x_mm) / stock.width_mm,
        box["y"] + box["height"] * (stock.height_mm - stock.sign_y_mm - hole.y_mm) / stock.height_mm,
    )
    page.evaluate("sign.show()")
    assert "cut through" in page.inner_text("#depth")
    page.context.close()


def test_nothing_runs_over_on_a_narrow_screen(browser: Any, file: Path) -> None:
    page = opened(browser, file)
    page.set_viewport_size({"width": 360, "height": 700})
    page.wait_for_timeout(100)
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    page.context.close()


def test_who_wants_little_motion_gets_few_frames(browser: Any, file: Path) -> None:
    frames = {}
    for motion in ("no-preference", "reduce"):
        page = opened(browser, file, reduced_motion=motion)
        page.evaluate(
            """() => {
              window.frames_drawn = 0;
              const put = CanvasRenderingContext2D.prototype.putImageData;
              CanvasRenderingContext2D.prototype.putImageData = function (...rest) {
                window.frames_drawn++;
                return put.apply(this, rest);
              };
            }"""
        )
        page.keyboard.press("Home")
        page.keyboard.press(" ")
        page.wait_for_timeout(1800)
        frames[motion] = page.evaluate("window.frames_drawn")
        page.context.close()
    assert frames["reduce"] <= 6
    assert frames["no-preference"] > frames["reduce"]


CONTRAST = """() => {
  const channel = (value) => (value /= 255) <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  const light = (rgb) => 0.2126 * channel(rgb[0]) + 0.7152 * channel(rgb[1]) + 0.0722 * channel(rgb[2]);
  const parsed = (text) => text.match(/[\\d.]+/g).map(Number);
  const rows = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const element = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || element.closest("script, noscript, option")) continue;
    let behind = element, ground = [0, 0, 0, 0];
    while (behind && (ground.length > 3 && ground[3] === 0)) {
      ground = parsed(getComputedStyle(behind).backgroundColor);
      behind = behind.parentElement;
    }
    const [a, b] = [light(parsed(getComputedStyle(element).color)), light(ground)].sort((x, y) => y - x);
    rows.push([walk.currentNode.data.trim(), (a + 0.05) / (b + 0.05)]);
  }
  return rows;
}"""


def test_every_text_stands_out_enough(page: Page) -> None:
    """4.5 to 1 and more. Source: WCAG 2.2, success criterion 1.4.3 and the definition of contrast ratio."""
    rows = page.evaluate(CONTRAST)
    assert len(rows) > 15
    assert [row for row in rows if row[1] < 4.5] == []


def test_every_control_has_a_name_and_room_for_a_thumb(page: Page) -> None:
    """Targets of 24 px and more. Source: WCAG 2.2, success criterion 2.5.8; names: 4.1.2."""
    controls = page.evaluate(
        """() => [...document.querySelectorAll("button, input, select")].map((e) => {
          const label = e.labels?.[0], box = (label ?? e).getBoundingClientRect();
          const name = e.getAttribute("aria-label") || label?.textContent || e.textContent;
          return [e.id, name.trim(), box.height, box.width];
        })"""
    )
    assert {row[0] for row in controls} == {"play", "back", "on", "when", "speed", "which", "air", "grid", "view"}
    for name, label, height, width in controls:
        assert label, name
        assert min(height, width) >= 24, name
    assert page.get_attribute("html", "lang") == "en"


def test_controls_are_reached_by_the_tab_key_in_the_order_in_which_they_stand(page: Page) -> None:
    page.evaluate("document.getElementById('stage').focus()")
    order = []
    for _ in range(9):
        page.keyboard.press("Tab")
        order.append(page.evaluate("document.activeElement.id"))
    assert order == ["play", "back", "on", "when", "speed", "which", "air", "grid", "view"]


def test_the_users_text_is_text(browser: Any, make_facts: Make, tmp_path: Path) -> None:
    evil = '</script><script>window.evil = 1</script><img src=x onerror="window.evil = 1">'
    path = tmp_path / "preview.html"
    path.write_text(preview_html(make_facts(lines=(evil,), cell=2.0)), encoding="utf-8")
    page = opened(browser, path)
    assert page.evaluate("window.evil") is None
    assert "<script>" in page.inner_text("h1")
    assert page.seen["errors"] == []
    page.context.close()


def test_a_large_board_is_simulated_on_some_of_its_cells(make_facts: Make) -> None:
    facts = make_facts(cell=0.5)
    board = facts.boards[-1]
    grid = replace(board.grid, cell_mm=0.1, nx=4000, ny=3000)
    fine = replace(board, z_mm=np.broadcast_to(np.float32(12), (3000, 4000)), grid=grid)
    text = preview_html(replace(facts, boards=(fine,)))
    grid = json.loads(re.findall(r'"grid":(\{.*?\})', text)[0])
    assert grid["nx"] * grid["ny"] <= MOST_CELLS
    assert grid["cell"] == pytest.approx(0.3)
    assert (grid["nx"], grid["ny"]) == (1334, 1000)


def test_a_browser_without_what_it_needs_says_so(browser: Any, file: Path) -> None:
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.add_init_script("delete window.DecompressionStream")
    page.goto(f"file://{file}")
    page.wait_for_selector("html[data-ready=failed]", timeout=30_000)
    assert "preview.png" in page.inner_text("#status")
    context.close()
