"""One of every kind of feature, on a board of 60 x 40 x 9 mm."""

from __future__ import annotations

from shapely.geometry import LineString, MultiLineString, box

from signgen.features.edge import Bevel, Edge, ReadyEdge
from signgen.features.feature import Feature
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Countersink, Hole
from signgen.features.keyhole import Keyhole
from signgen.features.raised import Raised
from signgen.features.recess import Panel, Recess
from signgen.features.tab import Tab

WIDTH_MM, HEIGHT_MM, THICKNESS_MM = 60.0, 40.0, 9.0
SIGN = box(0, 0, WIDTH_MM, HEIGHT_MM)
_LINE = LineString([(12, 14), (26, 19), (26, 28)])

SAMPLES: tuple[Feature, ...] = (
    Edge(name="edge", area=SIGN),
    ReadyEdge(name="ready edge", area=SIGN),
    Groove(name="frame", source="frame", area=box(10, 12, 30, 18), angle_deg=90, tip_mm=0.2, max_depth_mm=2),
    Stroke(
        name="line 1 letter 1 'L'", source="text", text="L", area=_LINE.buffer(1), angle_deg=60, tip_mm=0,
        max_depth_mm=3**0.5, lines=MultiLineString([_LINE]),
    ),
    Recess(name="line 1 letter 2 'I'", source="text", text="I", area=box(33, 10, 39, 31), depth_mm=3),
    Panel(name="panel", source="panel", area=box(5, 6, 52, 33), depth_mm=2),
    Raised(name="line 1 letter 3 'l'", source="text", text="l", area=box(20, 11, 23, 30)),
    Hole(name="hole", x_mm=45, y_mm=21, diameter_mm=8),
    Hole(name="slot", x_mm=17, y_mm=19, diameter_mm=5, span_mm=10, angle_deg=30),
    Hole(name="sunk hole", x_mm=42, y_mm=19, diameter_mm=5, sink=Countersink(diameter_mm=9, angle_deg=90)),
    Keyhole(
        name="keyhole", x_mm=31, y_mm=26, travel_mm=10, entry_mm=8, slot_mm=4, undercut_mm=7, depth_mm=5, head_mm=2,
        free_mm=0.2,
    ),
    Bevel(name="bevel", edge=SIGN, width_mm=2, angle_deg=90),
    Tab(name="tab 1", x_mm=30, y_mm=0, along_x=1, along_y=0, width_mm=5, height_mm=1.5),
)  # fmt: skip
