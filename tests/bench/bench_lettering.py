"""How long lettering takes: `python tests/bench/bench_lettering.py`. Prints a table; asserts nothing."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

PLAQUE = ["The Old Quarry House", "No. 17", "Larkspur Lane", "Wayfield", "built by the village", "in 1893"]


def seconds(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def fresh(code: str) -> float:
    """Seconds that a new interpreter needs for the code, its own start taken off."""
    run = [sys.executable, "-c"]
    bare = min(seconds(lambda: subprocess.run([*run, "pass"], check=True)) for _ in range(3))
    return min(seconds(lambda: subprocess.run([*run, code], check=True)) for _ in range(3)) - bare


def main() -> None:
    sys.path.insert(0, str(Path(__file__).parents[2]))
    from signgen.drawing.draw import draw
    from signgen.lettering.areas import grid_areas, stroke_ratio
    from signgen.lettering.catalogue import catalogue
    from signgen.lettering.faces import open_face
    from signgen.lettering.layout import alike, measure_lines, set_lines, stacked
    from tests.asking import spec_of

    rows: list[tuple[str, float, str]] = [
        ("catalogue() in a fresh interpreter", fresh("from signgen.lettering.faces import catalogue; catalogue()"), ""),
        (
            "a house number in a fresh interpreter",
            fresh(
                "from signgen.lettering.faces import open_face; from signgen.lettering.layout import set_lines;"
                "set_lines(['17', 'Larkspur Lane'], open_face('barlow'), cap_height_mm=30)"
            ),
            "imports included",
        ),
    ]
    for entry in catalogue():
        face = open_face(entry.name)
        count = min(1000, face.font.face.glyph_count)
        taken = seconds(lambda f=face, n=count: grid_areas(f, range(n), scale_mm_per_em=30 / 0.7, chord_mm=0.01))
        what = f"{entry.name}: {count} glyphs filled, 30 mm caps, chord 0.01"
        rows.append((what, taken, f"{taken / count * 1e6:.0f} us each"))
    face = open_face("roboto-slab")
    rows.append(
        ("six-line plaque laid out, first time", seconds(lambda: set_lines(PLAQUE, face, cap_height_mm=20)), "")
    )
    rows.append(("the same again", seconds(lambda: set_lines(PLAQUE, face, cap_height_mm=20)), ""))
    lines = measure_lines(alike(PLAQUE, face))
    taken = seconds(lambda: [stacked(lines, [10 + i * 0.01] * 6) for i in range(1000)])
    rows.append(("its boxes at 1000 sizes", taken, f"{taken * 1e3:.0f} us each"))
    plaque = {"text": PLAQUE, "font": "atkinson", "size": "300x300"}
    words = " ".join(PLAQUE)
    for what, asked in (
        ("a plaque drawn, as large as fits", {}),
        ("the same, each line as wide as the others", {"fit": "each"}),
        ("the same, to the left", {"align": "left"}),
        ("the same as one text, broken at the width", {"text": [words], "wrap": "280"}),
        ("the same on a circle", {"text": [words], "arc": "120", "arc-side": "ring", "margin": "5"}),
    ):
        spec = spec_of(**{key.replace("-", "_"): value for key, value in (plaque | asked).items()})
        rows.append((what, seconds(lambda s=spec: draw(s)), f"again {seconds(lambda s=spec: draw(s)) * 1e3:.1f} ms"))
    taken = seconds(lambda: [stroke_ratio(open_face(entry.name)) for entry in catalogue()])
    rows.append(("all faces opened and measured", taken, f"{len(catalogue())} faces"))
    for what, taken, note in rows:
        print(f"{what:<66}{taken * 1e3:9.1f} ms   {note}")


if __name__ == "__main__":
    main()
