"""The one place where an area becomes a groove cut by the job's V-bit."""

from __future__ import annotations

from shapely.geometry import MultiLineString, MultiPolygon, Polygon

from signgen.drawing.drawing import Groove
from signgen.spec.sign_spec import SignSpec


def groove(
    spec: SignSpec,
    name: str,
    text: str,
    area: Polygon | MultiPolygon,
    depth_mm: float | None = None,
    lines: MultiLineString | None = None,
) -> Groove:
    """`text` is the letter, or '' for ornament, which is as deep as the sign has it; `lines` those of a stroke."""
    angle = spec.v_bit.angle_deg
    if angle is None:
        raise ValueError(f"{spec.v_bit.name} is no V-bit")
    return Groove(
        name=name,
        text=text,
        area=area,
        angle_deg=angle,
        tip_mm=spec.v_bit.tip_mm,
        lines=lines,
        max_depth_mm=spec.depth_mm if depth_mm is None else depth_mm,
    )
