"""Lengths and turned angles of motions, to compare with what the program says of them."""

from __future__ import annotations

import numpy as np

from signgen.replay.measure import arc_frame
from signgen.replay.motion import RAPID, FloatArray, Motions


def sweeps_rad(motions: Motions) -> FloatArray:
    """(n,) angle that each motion turns in its plane, positive counter-clockwise seen from the end of the
    upright axis; 0 for lines."""
    sweeps = np.zeros(len(motions))
    frame = arc_frame(motions)
    sweeps[frame.index] = frame.sweep_rad
    return sweeps


def lengths_mm(motions: Motions) -> FloatArray:
    """(n,) length of the tip's way, along the helix for arcs."""
    step = motions.end_mm - motions.start_mm
    lengths: FloatArray = np.sqrt(np.einsum("ij,ij->i", step, step))
    frame = arc_frame(motions)
    lengths[frame.index] = np.hypot(frame.sweep_rad * frame.radius_mm, frame.rise_mm)
    return lengths


def cut_length_mm(motions: Motions) -> float:
    """Length of everything that moves at a feed rate."""
    return float(lengths_mm(motions)[motions.kind != RAPID].sum())


def travel_length_mm(motions: Motions) -> float:
    """Length of all rapids."""
    return float(lengths_mm(motions)[motions.kind == RAPID].sum())
