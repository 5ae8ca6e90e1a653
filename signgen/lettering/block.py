"""Lines put together: where each stands beside the others, before any outline is made."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from signgen.geometry.paths import FloatArray
from signgen.lettering.arcs import CarriedLetter, carried
from signgen.lettering.measure import Box, LineMeasure


class PlacedLine(Struct, frozen=True, kw_only=True):
    """A line in its block. (x, y): where its text starts on its baseline, or the middle of its circle. `baseline_mm`:
    height of its baseline, on a circle that of the text's middle.

    `box_mm` is the ink of a straight line, None when it shows nothing or stands on a circle; `quads_mm` (n, 4, 2) the
    ink boxes of the glyphs on a circle. `about_sign`: seen from the middle of the sign, whatever the block does.
    """

    measured: LineMeasure
    cap_height_mm: float
    x_mm: float
    y_mm: float
    baseline_mm: float
    box_mm: Box | None
    on_circle: CarriedLetter | None
    quads_mm: FloatArray | None

    @property
    def about_sign(self) -> bool:
        arc = self.measured.line.arc
        return arc is not None and arc.about_sign

    def moved(self, dx_mm: float, dy_mm: float) -> PlacedLine:
        box, quads = self.box_mm, self.quads_mm
        return PlacedLine(
            measured=self.measured,
            cap_height_mm=self.cap_height_mm,
            x_mm=self.x_mm + dx_mm,
            y_mm=self.y_mm + dy_mm,
            baseline_mm=self.baseline_mm + dy_mm,
            box_mm=None if box is None else (box[0] + dx_mm, box[1] + dy_mm, box[2] + dx_mm, box[3] + dy_mm),
            on_circle=self.on_circle,
            quads_mm=None if quads is None else quads + (dx_mm, dy_mm),
        )

    @property
    def ink_mm(self) -> Box | None:
        """Bounds of its ink, those of the turned boxes when it stands on a circle."""
        if self.quads_mm is None:
            return self.box_mm
        (x0, y0), (x1, y1) = self.quads_mm.min(axis=(0, 1)), self.quads_mm.max(axis=(0, 1))
        return float(x0), float(y0), float(x1), float(y1)


def stacked(
    lines: Sequence[LineMeasure], heights_mm: Sequence[float], half_mm: float | None = None
) -> tuple[PlacedLine, ...] | None:
    """The lines at these cap heights, one below the other; None when one on a circle has no room there.

    The middle of the ink of all lines that are not about the sign is at the height y = 0. Straight lines are aligned by
    their ink: centred on x = 0, or with an end at `half_mm` left or right of it, by default so that the widest of them
    is centred. Circles stand above and below x = 0, or (about the sign) around (0, 0).
    """
    rows: list[PlacedLine] = []
    low = 0.0  # feet of the line above
    above_mm = 0.0  # its cap height
    first = True
    straight = [
        measured.width_mm(height)
        for measured, height in zip(lines, heights_mm, strict=True)
        if measured.line.arc is None
    ]
    half = max(straight, default=0.0) / 2 if half_mm is None else half_mm
    for measured, height in zip(lines, heights_mm, strict=True):
        line = measured.line
        on_circle = None
        if line.arc is not None:
            on_circle = carried(measured, line.arc, height)
            if on_circle is None and measured.shows:
                return None
        if line.arc is not None and line.arc.about_sign:
            baseline = -line.arc.radius_mm if line.arc.side == "below" else line.arc.radius_mm
            rows.append(_on_circle(measured, height, on_circle, 0.0, baseline))
            continue
        rise, drop = (on_circle.rise_mm, on_circle.drop_mm) if on_circle else (height, 0.0)
        baseline = 0.0 if first else low - (line.line_spacing - 1) * (above_mm + height) / 2 - rise
        low, above_mm, first = baseline - drop, height, False
        if line.arc is None:
            rows.append(_straight(measured, height, half, baseline))
        else:
            up = 1 if line.arc.side == "below" else -1
            rows.append(_on_circle(measured, height, on_circle, baseline + up * line.arc.radius_mm, baseline))
    inks = [ink for row in rows if not row.about_sign and (ink := row.ink_mm) is not None]
    if not inks:
        return tuple(rows)
    dy = -(min(ink[1] for ink in inks) + max(ink[3] for ink in inks)) / 2
    return tuple(row if row.about_sign else row.moved(0.0, dy) for row in rows)


def _straight(measured: LineMeasure, height: float, half: float, baseline: float) -> PlacedLine:
    box = measured.box_mm(height)
    x = 0.0
    if box is not None:
        match measured.line.align:
            case "left":
                x = -half - box[0]
            case "right":
                x = half - box[2]
            case "centre":
                x = -(box[0] + box[2]) / 2
        box = (box[0] + x, box[1] + baseline, box[2] + x, box[3] + baseline)
    return PlacedLine(
        measured=measured,
        cap_height_mm=height,
        x_mm=x,
        y_mm=baseline,
        baseline_mm=baseline,
        box_mm=box,
        on_circle=None,
        quads_mm=None,
    )


def _on_circle(
    measured: LineMeasure, height: float, on_circle: CarriedLetter | None, y: float, baseline: float
) -> PlacedLine:
    return PlacedLine(
        measured=measured,
        cap_height_mm=height,
        x_mm=0.0,
        y_mm=y,
        baseline_mm=baseline,
        box_mm=None,
        on_circle=on_circle,
        quads_mm=None if on_circle is None else on_circle.quads_mm + (0.0, y),
    )
