"""The two picture files."""

from __future__ import annotations

import base64
import io
import re
import xml.etree.ElementTree as ET
from collections.abc import Callable

import numpy as np
import pytest
from PIL import Image

from signgen.features.hole import Hole
from signgen.job.facts import JobFacts
from signgen.pictures.preview import MOST_PX, preview_png, preview_svg, sign_relief

Make = Callable[..., JobFacts]
SVG = "{http://www.w3.org/2000/svg}"


def opened(png: bytes) -> Image.Image:
    image = Image.open(io.BytesIO(png))
    image.load()
    return image


def place(facts: JobFacts, image: Image.Image, x_mm: float, y_mm: float) -> tuple[int, int]:
    """Pixel of a point of the sign in the PNG, found by its stated resolution and its middle."""
    px = image.info["dpi"][0] / 25.4
    x = image.width / 2 + (x_mm - facts.drawing.width_mm / 2) * px
    y = image.height / 2 - (y_mm - facts.drawing.height_mm / 2) * px
    return round(x), round(y)


def test_the_groove_is_darker_than_the_face_and_holes_are_open(facts: JobFacts) -> None:
    image = opened(preview_png(facts))
    pixels = np.asarray(image)
    # the upright of the 1 of the fixture: a stroke 9.6 wide about x = 73.2, y = 40 to 80
    x0, y0 = place(facts, image, 73.2 - 4, 75)
    x1, y1 = place(facts, image, 73.2 + 4, 45)
    groove = pixels[y0:y1, x0:x1, :3].mean()
    fx, fy = place(facts, image, 40, 60)
    face = pixels[fy - 20 : fy + 20, fx - 20 : fx + 20, :3].mean()
    assert groove < 0.85 * face
    for hole in facts.drawing.of(Hole):
        x, y = place(facts, image, hole.x_mm, hole.y_mm)
        # only what its rim's shadow leaves lies there
        assert pixels[y, x, 3] < 50
    assert pixels[fy, fx, 3] == 255
    assert pixels[0, 0, 3] < 10


@pytest.mark.parametrize(("width", "height"), [(200.0, 120.0), (600.0, 100.0), (90.0, 240.0)])
def test_the_png_is_of_a_handy_size_and_states_its_scale(make_facts: Make, width: float, height: float) -> None:
    facts = make_facts(width=width, height=height, cell=1.0)
    lit = sign_relief(facts)
    assert max(lit.solid.shape) <= MOST_PX
    assert max(lit.solid.shape) >= 1000
    image = opened(preview_png(facts, lit))
    assert lit.solid.shape[1] / (image.info["dpi"][0] / 25.4) == pytest.approx(width, abs=0.2)
    assert lit.solid.shape[0] / (image.info["dpi"][1] / 25.4) == pytest.approx(height, abs=0.2)


def test_the_svg_has_the_signs_size_in_millimetres_and_its_exact_outline(make_facts: Make) -> None:
    facts = make_facts(width=187.5, height=93.25)
    root = ET.fromstring(preview_svg(facts))
    assert (root.get("width"), root.get("height")) == ("187.5mm", "93.25mm")
    assert root.get("viewBox") == "0 0 187.5 93.25"
    outline = root.findall(f"{SVG}path")[-1].get("d", "")
    assert "187.5 93.25" in outline
    assert len(re.findall("a3.5 3.5", outline)) == 2 * len(facts.drawing.of(Hole))


def test_the_svg_carries_its_picture_a_title_and_a_description(facts: JobFacts) -> None:
    root = ET.fromstring(preview_svg(facts))
    assert root.findtext(f"{SVG}title") == "Sign: 17"
    assert "200 mm by 120 mm" in (root.findtext(f"{SVG}desc") or "").replace("\u00a0", " ")
    image = root.find(f"{SVG}image")
    assert image is not None
    link = image.get("{http://www.w3.org/1999/xlink}href", "")
    assert link.startswith("data:image/jpeg;base64,")
    assert opened(base64.b64decode(link.partition(",")[2])).width >= 1000
    assert image.get("clip-path") == "url(#sign)"


def test_the_picture_in_the_svg_is_the_lit_board_to_the_pixel_and_nearly_to_the_shade(facts: JobFacts) -> None:
    lit = sign_relief(facts)
    link = re.search(r"base64,([^\"]*)", preview_svg(facts, lit))
    assert link is not None
    pixels = np.asarray(opened(base64.b64decode(link[1]))).astype(int)
    assert pixels.shape == lit.rgb.shape
    assert np.abs(pixels - lit.rgb).mean() < 1.5


def test_the_svg_escapes_the_text_of_the_sign(make_facts: Make) -> None:
    text = preview_svg(make_facts(lines=('<script>alert("1")</script>', "A & B"), cell=1.0))
    assert "<script" not in text
    assert ET.fromstring(text).findtext(f"{SVG}title") == 'Sign: <script>alert("1")</script> / A & B'


def test_pictures_are_the_same_bytes_twice(make_facts: Make) -> None:
    first, second = make_facts(), make_facts()
    assert preview_png(first) == preview_png(second)
    assert preview_svg(first) == preview_svg(second)
