"""How low each kind of cutter cuts at a point beside a straight move: closed forms.

A point lies u along the move (from its start) and d across it; the move has length L, rises by m for each
millimetre and starts at height z. A cutter's underside is f(r) above its tip at distance r from its axis, up
to its radius R. The height left is the least of z + m s + f(hypot(s - u, d)) over 0 <= s <= L with hypot(s -
u, d) <= R. For every cutter here f is convex, so the best s is the stationary one, held within its interval.

Source: geometry.md section 6; derived by setting the derivative to 0.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.shop.tools import Tool

Block = NDArray[np.float32]
_NOWHERE = np.float32(np.inf)
FAR = np.float32(1e6)
STEEP_RATIO = np.float32(1e-6)
"""Slopes this near to the cone's own count as steeper: single precision cannot tell, and the height is the
same."""


class Profile(Struct, frozen=True, kw_only=True):
    """The underside of a cutter: a flat disc of radius `tip_mm`, from its rim a cone rising by `rise` for
    each millimetre, up to the radius. A flat end mill is all tip. `ball` instead: a hemisphere of that
    radius."""

    radius_mm: float
    tip_mm: float
    rise: float
    ball: bool

    @classmethod
    def of(cls, tool: Tool) -> Profile:
        """The profile of a tool. Above its cone a V-bit or drill is a cylinder of its diameter; of a keyhole cutter
        it is its head's."""
        if tool.kind in ("v-bit", "drill"):
            tip = min(tool.tip_mm / 2, tool.radius_mm) if tool.kind == "v-bit" else 0.0
            return cls(radius_mm=tool.radius_mm, tip_mm=tip, rise=1 / tool.slope, ball=False)
        return cls(radius_mm=tool.radius_mm, tip_mm=tool.radius_mm, rise=0.0, ball=tool.kind == "ball-nose")

    @classmethod
    def flat_of(cls, radius_mm: float) -> Profile:
        """A flat disc."""
        return cls(radius_mm=radius_mm, tip_mm=radius_mm, rise=0.0, ball=False)

    @property
    def flat(self) -> bool:
        return not self.ball and self.tip_mm >= self.radius_mm

    def reach_mm(self, depth_mm: NDArray[np.float64]) -> NDArray[np.float64]:
        """How far from its axis the cutter touches a surface that its tip lies `depth_mm` below."""
        if self.flat:
            return np.full(len(depth_mm), self.radius_mm)
        if self.ball:
            held = np.clip(depth_mm, 0.0, self.radius_mm)
            return np.sqrt(held * (2 * self.radius_mm - held))
        return np.minimum(self.radius_mm, self.tip_mm + np.maximum(depth_mm, 0.0) / self.rise)

    def height(self, r2: Block) -> Block:
        """f of the squared distance from the axis, which is at most the squared radius (more counts as that);
        may reuse `r2`."""
        if self.ball:
            radius = np.float32(self.radius_mm)
            np.subtract(radius * radius, r2, out=r2)
            np.maximum(r2, 0, out=r2)
            np.sqrt(r2, out=r2)
            return np.subtract(radius, r2, out=r2)
        np.sqrt(r2, out=r2)
        if self.tip_mm:
            np.subtract(r2, np.float32(self.tip_mm), out=r2)
            np.maximum(r2, 0, out=r2)
        return np.multiply(r2, np.float32(self.rise), out=r2)


class SweptMoves(Struct, frozen=True, kw_only=True):
    """n straight moves as columns (n, 1, 1): direction in the plane, length, height of the start and rise m."""

    tx: Block
    ty: Block
    length: Block
    z: Block
    rise: Block


def level(profile: Profile, moves: SweptMoves, dx: Block, dy: Block) -> Block:
    """(n, h, w) heights that level moves leave; infinite out of the cutter's reach. dx (n, 1, w), dy (n, h,
    1) from the start."""
    u = dx * moves.tx + dy * moves.ty
    d = dx * moves.ty - dy * moves.tx
    np.multiply(d, d, out=d)
    held = np.minimum(u, moves.length)
    np.maximum(held, 0, out=held)
    np.subtract(u, held, out=u)
    np.multiply(u, u, out=u)
    r2 = np.add(u, d, out=u)
    out_of_reach = r2 > np.float32(profile.radius_mm**2)
    if profile.flat:
        return np.where(out_of_reach, _NOWHERE, moves.z)
    z = profile.height(r2)
    np.add(z, moves.z, out=z)
    z[out_of_reach] = _NOWHERE
    return z


def sloped(profile: Profile, moves: SweptMoves, dx: Block, dy: Block) -> Block:
    """The same for moves that rise or fall."""
    u = dx * moves.tx + dy * moves.ty
    d = dx * moves.ty - dy * moves.tx
    d2 = np.multiply(d, d)
    w2 = np.subtract(np.float32(profile.radius_mm**2), d2)
    out_of_reach = w2 < 0
    w = np.sqrt(np.maximum(w2, 0, out=w2), out=w2)
    least, most = np.subtract(u, w), np.add(u, w)
    out_of_reach |= least > moves.length
    out_of_reach |= most < 0
    np.maximum(least, 0, out=least)
    np.minimum(most, moves.length, out=most)

    s = _stationary(profile, moves, d, d2, w)
    np.add(s, u, out=s)
    np.minimum(np.maximum(s, least, out=s), most, out=s)
    z = np.multiply(moves.rise, s, out=least)
    np.add(z, moves.z, out=z)
    if not profile.flat:
        np.subtract(s, u, out=s)
        np.multiply(s, s, out=s)
        np.add(s, d2, out=s)
        np.add(z, profile.height(s), out=z)
    z[out_of_reach] = _NOWHERE
    return z


def _stationary(profile: Profile, moves: SweptMoves, d: Block, d2: Block, w: Block) -> Block:
    """Best s - u without regard to the move's ends (beyond the cutter's radius where the move is steeper than
    its cone)."""
    m = moves.rise
    if profile.flat:
        return np.multiply(-np.sign(m), w)
    if profile.ball:
        lag: Block = m / np.sqrt(1 + m * m)
        return np.multiply(-lag, w)
    k = np.float32(profile.rise)
    margin = k * k - m * m
    steep = margin <= STEEP_RATIO * k * k
    factor = np.abs(m) / np.sqrt(np.where(steep, 1, margin))
    away = np.multiply(np.where(steep, 0, factor), np.abs(d, out=d))
    np.add(away, np.where(steep, FAR, 0), out=away)
    if profile.tip_mm:
        rim = np.subtract(np.float32(profile.tip_mm**2), d2)
        np.maximum(rim, 0, out=rim)
        np.maximum(away, np.sqrt(rim, out=rim), out=away)
    return np.multiply(-np.sign(m), away, out=away)


Kernel = Callable[[Profile, SweptMoves, Block, Block], Block]
