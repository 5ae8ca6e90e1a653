"""The board on the machine, and where the programs' zero lies on it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """A board lying with its width along X. `sign_x_mm`, `sign_y_mm`: where the finished sign's bottom-left corner
    lies, measured from the board's bottom-left corner."""

    width_mm: float
    height_mm: float
    thickness_mm: float
    sign_x_mm: float
    sign_y_mm: float

    @property
    def bounds_mm(self) -> tuple[float, float, float, float]:
        """(min x, min y, max x, max y) of the board in sign coordinates."""
        return (-self.sign_x_mm, -self.sign_y_mm, self.width_mm - self.sign_x_mm, self.height_mm - self.sign_y_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkZero:
    """Where X0 Y0 Z0 of the programs lies, in sign coordinates (Z 0 of those is the stock's bottom).

    A point p in sign coordinates is written as p - zero in a program.
    """

    x_mm: float
    y_mm: float
    z_mm: float
