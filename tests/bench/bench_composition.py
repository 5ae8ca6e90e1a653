"""Composing: time of one to five lines on plates of several shapes. `python tests/bench/bench_composition.py`.

Four lines on a rectangle should take no more than 0.1 s on an idle machine.
"""

from __future__ import annotations

import time

from signgen.composition.asked_lines import AskedLines
from signgen.composition.compose import compose
from signgen.composition.field import field_of
from signgen.drawing.edge import edge_of
from signgen.drawing.holes import holes_of
from signgen.drawing.room import free_face, keep_off, letter_room
from signgen.drawing.words import line_roles
from signgen.pipeline import read_sign

TRIES = 7
SIGNS = (
    ["17"],
    ["17", "Larkspur Lane"],
    ["12", "Quince Cottage", "Larkspur Lane"],
    ["Dr. Ivy Marsh", "Dentist", "Mon-Fri 9:00-12:30", "Tel. 0123 456"],
    ["Library", "Reading room", "First floor", "Quiet please", "Mon-Fri 9:00-18:00"],
)
PLATES = ({}, {"holes": "corners"}, {"border": "oval"}, {"border": "shield"})


def main() -> None:
    print(f"{'lines':>5}  {'plate':<28}{'ms':>8}")
    for text in SIGNS:
        for more in PLATES:
            spec = read_sign({"text": text, "size": "300x240", "thickness": "12", "depth": "3", **more})
            edge, _ = edge_of(spec)
            holes = holes_of(spec)
            room = letter_room(spec, edge, holes, [])
            best = float("inf")
            for _ in range(TRIES):
                start = time.perf_counter()
                field = field_of(spec, edge, room, free_face(spec, edge), keep_off(holes, [], edge.buffer(-1e9)))
                compose(AskedLines.of(spec.text, [0.0] * len(text)), line_roles(spec.text), field)
                best = min(best, time.perf_counter() - start)
            print(f"{len(text):>5}  {more or 'rectangle'!s:<28}{1000 * best:8.1f}")


if __name__ == "__main__":
    main()
