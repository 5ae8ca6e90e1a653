"""The one place where an area becomes a groove cut by the job's V-bit."""

from __future__ import annotations

from shapely.geometry import MultiPolygon, Polygon

from signgen.features.groove import Groove, Stroke
from signgen.lettering.layout import Letter
from signgen.spec.sign_spec import SignSpec


def groove(spec: SignSpec, name: str, source: str, area: Polygon | MultiPolygon) -> Groove:
    """Ornament, as deep as the sign has it; `source`: the option that asked for it."""
    return Groove(
        name=name,
        source=source,
        area=area,
        angle_deg=bit_angle_deg(spec),
        tip_mm=spec.v_bit.tip_mm,
        max_depth_mm=spec.depth_mm,
    )


def engraved(spec: SignSpec, name: str, letter: Letter, depth_mm: float) -> Groove:
    """A letter: a stroke where it is drawn in lines."""
    plain = Groove(
        name=name,
        source="text",
        text=letter.text,
        area=letter.area,
        angle_deg=bit_angle_deg(spec),
        tip_mm=spec.v_bit.tip_mm,
        max_depth_mm=depth_mm,
    )
    if letter.pen_lines is None:
        return plain
    return Stroke(**{name: getattr(plain, name) for name in plain.__struct_fields__}, lines=letter.pen_lines)


def bit_angle_deg(spec: SignSpec) -> float:
    """The angle of the job's V-bit."""
    angle = spec.v_bit.angle_deg
    if angle is None:
        raise ValueError(f"{spec.v_bit.name} is no V-bit")
    return angle
