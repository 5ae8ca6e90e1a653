"""Areas of whole icon sets against what librsvg paints: a reader of SVG that knows nothing of this one.

The sets are not fetched here: unpack some (`npm pack` of an open set, those that DEVELOPERS.md names) and name their
folder in SIGNGEN_ICONS. `rsvg-convert` is Debian's librsvg2-bin.
"""

import io
import os
import random
import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from signgen.artwork.picture import Picture
from signgen.artwork.svg import read_svg
from signgen.errors import AskError
from tests.artwork.nasty import SHOWN

RSVG, ICONS = shutil.which("rsvg-convert"), os.environ.get("SIGNGEN_ICONS")
WIDE_PX, OF_A_SET, SEED = 1024, 170, 14

pytestmark = pytest.mark.skipif(RSVG is None, reason="no rsvg-convert here")


def painted_ratio(raw):
    """The share of the page that librsvg paints, and its height over its width."""
    made = subprocess.run([RSVG, "-w", str(WIDE_PX)], input=raw, capture_output=True, check=True, timeout=60)
    alpha = np.asarray(Image.open(io.BytesIO(made.stdout)).convert("RGBA"))[..., 3]
    return alpha.mean() / 255, alpha.shape[0] / alpha.shape[1]


def page_and_area(raw):
    drawn = read_svg(raw, "trial.svg")
    picture = Picture(file="trial.svg", items=drawn.items, unit_mm=1.0)
    seen = picture.seen(lambda _: "all", (1, 0, 0, 1, 0, 0), 0.002)
    return sum(area.area for area in seen.values())


def width_of(raw):
    """As the files of the sets say it: a width, else the view box's."""
    import re

    root = re.search(rb"<svg[^>]*>", raw, re.DOTALL)[0].decode()
    width = re.search(r'\bwidth="([\d.]+)', root)
    return float(width[1]) if width else float(re.search(r'viewBox="\S+ \S+ ([\d.]+)', root)[1])


OTHERWISE = {
    "symbol cuts off",  # librsvg 2.54 does not clip symbols, as SVG 2's own style sheet says
    "clip in a clip",  # nor a clip path's own clip path
    "often the same",  # three hundred blurred edges lie over each other in its picture
}
SAME_PAGE = [
    name
    for name, (text, area) in SHOWN.items()
    if name not in OTHERWISE and area and 'viewBox="0 0 100 100" width="100"' in text
]


@pytest.mark.sweep
@pytest.mark.parametrize("name", SAME_PAGE)
def test_nasty_drawings_agree(name):
    raw = SHOWN[name][0].encode()
    ratio, _ = painted_ratio(raw)
    assert page_and_area(raw) == pytest.approx(ratio * 100**2, rel=0.005)


@pytest.mark.sweep
@pytest.mark.skipif(not ICONS, reason="SIGNGEN_ICONS names no folder of icon sets")
def test_icons_of_open_sets_agree_or_are_refused_by_name():
    wrong, refused, agreed = [], {}, 0
    for folder in sorted(Path(ICONS).iterdir()):
        files = sorted(folder.rglob("*.svg"))
        for file in random.Random(SEED).sample(files, min(OF_A_SET, len(files))):
            raw = file.read_bytes()
            try:
                area = page_and_area(raw)
            except AskError as error:
                refused[file.name] = error.problems[0].what.key
                continue
            try:
                ratio, proportion = painted_ratio(raw)
            except subprocess.CalledProcessError:  # librsvg cannot: the font of a set as one file
                continue
            wanted = ratio * width_of(raw) ** 2 * proportion
            agreed += 1
            if abs(area - wanted) > 0.005 * wanted:
                wrong.append((file.name, round(area, 3), round(wanted, 3)))
    print(f"{agreed} agree but for {wrong}; refused: {refused}")
    assert agreed >= 1000
    assert wrong == []
    assert all(key.startswith("art.") for key in refused.values())
