"""Where on a plate words may stand so that nothing crowds: the free part of the face, and what keeps them off."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct
from shapely import affinity
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.composition.fit import Box, Points, quads_within
from signgen.composition.placing import text_middles
from signgen.composition.proportions import LIFT_RATIO, WIDTH_RATIO
from signgen.geometry.paths import FloatArray
from signgen.spec.sign_spec import SignSpec

ACROSS_TRIED = 12
"""Places across, on plates that are not alike left and right."""

HEIGHT_WEIGHT = 3.0
"""On plates that are not alike left and right a block leaves its height less readily than its place across."""

HEIGHTS_TRIED = 41
"""Heights at which a block is tried when it has no room at its own."""


class Field(Struct, frozen=True, kw_only=True):
    """What is free of a plate.

    `free`: the face inside frame, bevel, panel's wall and rim, prepared. `keep_off`: holes with the gap that they want,
    ornaments, ground over keyholes. `room`: where letters may lie at all. `middles` (k, 2): places for the middle of
    the block, the natural one first. `sign_at_mm`: the middle of the sign. `whole`: the text may take all of what is
    free, for its margin was stated.
    """

    free: BaseGeometry
    keep_off: BaseGeometry
    room: BaseGeometry
    middles: Points
    sign_at_mm: tuple[float, float]
    whole: bool = False

    @property
    def level(self) -> Points:
        """The places at the natural height."""
        kept: Points = self.middles[np.isclose(self.middles[:, 1], self.middles[0, 1])]
        return kept

    @property
    def text_room(self) -> BaseGeometry:
        """As far as lines reach that stand to the left or the right."""
        if self.whole:
            return self.room
        narrow: BaseGeometry = self.room.intersection(affinity.scale(self.free, WIDTH_RATIO, 1.0))
        return narrow

    @property
    def width_mm(self) -> float:
        x0, _, x1, _ = self.free.bounds
        return float(x1 - x0)

    @property
    def height_mm(self) -> float:
        _, y0, _, y1 = self.free.bounds
        return float(y1 - y0)

    def places(
        self, inks: Sequence[Box | None], quads: Sequence[FloatArray], width_ratio: float, among: Points
    ) -> Points:
        """(m, 2) those of the places for the block's middle where every line keeps within its part of the free width
        and off what it must keep off. `inks` of straight lines, `quads` (n, 4, 2) of those on circles."""
        if self.free.is_empty:
            return among[:0]
        for ink in inks:
            if ink is not None and len(among):
                among = self._where_free(ink, width_ratio, among)
        for turned in quads:
            if len(among):
                among = quads_within(self.room, turned, among)
        return among

    def _where_free(self, box: Box, width_ratio: float, among: Points) -> Points:
        x0, y0, x1, y1 = box
        x, y = among.T
        ink = shapely.box(x + x0, y + y0, x + x1, y + y1)
        aside = (x1 - x0) * (1 / width_ratio - 1) / 2
        wide = shapely.box(x + x0 - aside, y + y0, x + x1 + aside, y + y1)
        kept: Points = among[
            shapely.covers(self.room, ink) & shapely.covers(self.free, wide) & ~shapely.intersects(self.keep_off, ink)
        ]
        return kept


def field_of(spec: SignSpec, edge: Polygon, room: BaseGeometry, free: BaseGeometry, off: BaseGeometry) -> Field:
    """The field of a plate. On one that is alike left and right the block stands on its middle line, a little above the
    middle; it moves up or down before it gets smaller, never sideways."""
    for area in (room, free, off):
        shapely.prepare(area)
    first = text_middles(edge, free)
    home = first[:1] + (0.0, LIFT_RATIO * spec.height_mm)
    _, y0, _, y1 = free.bounds if not free.is_empty else (0.0, 0.0, 0.0, 0.0)
    across = np.unique(first[:, 0])
    across = across[:: max(1, len(across) // ACROSS_TRIED)]
    places = np.stack(np.meshgrid(across, [*home[:, 1], *np.linspace(y0, y1, HEIGHTS_TRIED)]), axis=-1).reshape(-1, 2)
    near = np.argsort(np.hypot(*((places - home) * (1.0, HEIGHT_WEIGHT)).T), kind="stable")
    return Field(
        free=free,
        keep_off=off,
        room=room,
        middles=np.concatenate([home, places[near]]),
        sign_at_mm=(spec.width_mm / 2, spec.height_mm / 2),
        whole=spec.text.margin_stated,
    )
