"""The options of `signgen.make`, so that editors complete and type checkers check them: the table of keys once more,
which a test holds equal."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from typing import TypedDict

Path = str | os.PathLike[str]
Length = str | float
"""Millimetres, or a text with a unit."""
Number = str | float
Size = str | tuple[Length, Length] | list[Length]
"""'WIDTHxHEIGHT' or a pair of lengths."""


class Options(TypedDict, total=False):
    """Every key of a sign file but the text, hyphens as underscores; `signgen explain KEY` says what each is."""

    size: Size | None
    thickness: Length | None
    material: str | None
    board: Size | None
    edge: str | None
    border: Path | None
    corner_radius: Length | None
    corner_cut: Length | None
    arch_rise: Length | None
    roof_height: Length | None
    point_length: Length | None
    side_length: Length | None
    arrow_to: str | None
    barb: Length | None
    eye_diameter: Length | None
    eye_inset: Length | None
    path_stretch: bool | None
    font: Path | None
    font_axes: str | None
    font_fallback: bool | None
    cap_height: Length | None
    digit_height: Length | None
    fit: str | None
    wrap: Length | None
    align: str | None
    line_spacing: Number | None
    letter_spacing: Length | None
    arc: Length | None
    arc_side: str | None
    arc_centre: str | None
    margin: Length | None
    layout: str | None
    holes: str | None
    hole_diameter: Length | None
    screw: str | None
    screw_fit: str | None
    inset: Length | None
    hole_count: Number | None
    row_height: Length | None
    column_place: Length | None
    ring_diameter: Length | None
    ring_start: Number | None
    keyhole_travel: Length | None
    keyhole_depth: Length | None
    slot_length: Length | None
    slot_angle: Number | None
    countersink: bool | None
    screw_head: str | None
    head_diameter: Length | None
    head_angle: Number | None
    finish: str | None
    depth: Length | None
    sharp_corners: bool | None
    panel: Length | None
    panel_depth: Length | None
    panel_radius: Length | None
    bridges: Number | None
    bridge_width: Length | None
    ridge: Length | None
    frame: Length | None
    frame_width: Length | None
    frame_lines: Number | None
    frame_gap: Length | None
    rule_width: Length | None
    ornament: str | None
    ornament_font: Path | None
    ornament_size: Length | None
    ornament_inset: Length | None
    rim: Length | None
    rim_inset: Length | None
    edge_chamfer: Length | None
    tolerance: Length | None
    art: Path | Sequence[Mapping[str, object]] | None
    art_place: str | None
    art_width: Length | None
    art_height: Length | None
    art_rotation: Number | None
    art_size: str | None
    art_finish: str | None
    art_depth: Length | None
    art_colours: str | None
    pictogram: str | Sequence[Mapping[str, object]] | None
    pictogram_place: str | None
    pictogram_width: Length | None
    pictogram_height: Length | None
    pictogram_rotation: Number | None
    pictogram_finish: str | None
    pictogram_depth: Length | None
    code: str | Sequence[Mapping[str, object]] | None
    code_place: str | None
    code_module: Length | None
    code_level: str | None
    code_finish: str | None
    code_depth: Length | None
    v_bit: Number | None
    v_bit_diameter: Length | None
    v_bit_tip: Length | None
    end_mill: Length | None
    end_mill_length: Length | None
    end_mill_name: str | None
    shop: Path | None
    tabs: Number | None
    tab_spacing: Length | None
    tab_shape: str | None
    tab_width: Length | None
    tab_height: Length | None
    onion_skin: Length | None
    breakthrough: Length | None
    finish_pass: Length | None
    milling: str | None
    machine: str | None
    dialect: str | None
    line_numbers: bool | None
    percent_lines: bool | None
    program_end: str | None
    extraction: str | None
    warm_up: Number | None
    comments: str | None
    origin: str | None
    z_zero: str | None
    clamp_height: Length | None
    clearance: Length | None
    air_cut: Length | None
    cell: Length | None
    language: str | None
    template: str | None
    sheet_format: str | None
    units: str | None
    steps: bool | None
    paint: str | None
    line: Sequence[Mapping[str, object]] | None
