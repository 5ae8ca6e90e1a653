"""Slots for screws' heads, cut from the sign's back."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Self

import numpy as np
import shapely
from msgspec.structs import replace
from shapely.geometry import LineString, Point, Polygon
from shapely.geometry.polygon import orient

from signgen.features.feature import Feature, FloatArray
from signgen.geometry.motion import Motion
from signgen.messages import Message, Sentence
from signgen.numbers import rounded
from signgen.shop.tools import Tool

QUARTER = 32
"""Chords of a quarter circle."""


class Keyhole(Feature, frozen=True, kw_only=True):
    """A slot for a screw's head, cut from the sign's back: a round entry, and up from it a slot that is wider inside.

    (x, y) is where the screw hangs, `travel_mm` below it the middle of the entry. `entry_mm`, `slot_mm`,
    `undercut_mm`: diameter and widths. `depth_mm` from the back: that of entry and slot; the undercut ends `free_mm`
    higher and is `head_mm` high.
    """

    x_mm: float
    y_mm: float
    travel_mm: float
    entry_mm: float
    slot_mm: float
    undercut_mm: float
    depth_mm: float
    head_mm: float
    free_mm: float
    source: str = "holes"

    kind = "keyhole"
    own_picture = True
    side = "back"

    @property
    def entry_name(self) -> str:
        return f"{self.name}, entry"

    @property
    def slot_name(self) -> str:
        return f"{self.name}, slot"

    @property
    def parts_called(self) -> Mapping[str, Sentence]:
        return {
            self.entry_name: Message("name.keyhole_entry", keyhole=self.called),
            self.slot_name: Message("name.keyhole_slot", keyhole=self.called),
        }

    @property
    def entry_at_mm(self) -> tuple[float, float]:
        """The middle of the entry."""
        return self.x_mm, self.y_mm - self.travel_mm

    @property
    def middle_line(self) -> LineString:
        """From the middle of the entry to where the screw hangs."""
        return LineString([self.entry_at_mm, (self.x_mm, self.y_mm)])

    @property
    def footprint(self) -> Polygon:
        """All that it takes of the board, at whatever depth."""
        area = self.middle_line.buffer(self.undercut_mm / 2, quad_segs=QUARTER).union(self._entry)
        whole: Polygon = orient(area)
        return whole

    @property
    def opening(self) -> Polygon:
        """What is open to the back: entry and slot."""
        area = self.middle_line.buffer(self.slot_mm / 2, quad_segs=QUARTER).union(self._entry)
        whole: Polygon = orient(area)
        return whole

    @property
    def _entry(self) -> Polygon:
        entry: Polygon = Point(self.entry_at_mm).buffer(self.entry_mm / 2, quad_segs=QUARTER)
        return entry

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Of what is open to the back; nothing is seen of the undercut."""
        opening, places = self.opening, shapely.points(points_mm)
        inside = shapely.contains(opening, places)
        depth = np.where(inside, self.depth_mm, 0.0)
        depth[shapely.distance(opening.boundary, places) <= self.rim_mm] = np.nan
        return depth, depth

    def deepest_mm(self, tool: Tool) -> float:
        return self.depth_mm

    def moved(self, motion: Motion) -> Self:
        """Raises: ValueError for a motion that turns it: its screw hangs from above."""
        if motion.direction(0.0, 1.0) != (0.0, 1.0):
            raise ValueError("a keyhole hangs upright")
        x, y = motion.point(self.x_mm, self.y_mm)
        return replace(self, x_mm=x, y_mm=y)

    def facts(self) -> dict[str, Any]:
        return {
            "x_mm": rounded(self.x_mm, 4),
            "y_mm": rounded(self.y_mm, 4),
            "travel_mm": rounded(self.travel_mm, 4),
            "entry_mm": rounded(self.entry_mm, 4),
            "slot_mm": rounded(self.slot_mm, 4),
            "undercut_mm": rounded(self.undercut_mm, 4),
            "undercut_height_mm": rounded(self.head_mm, 4),
            "depth_mm": rounded(self.depth_mm, 4),
        }
