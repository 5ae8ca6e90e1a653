"""What is left of a sheet when its signs are cut out: the share that is signs, and the largest piece that is
whole."""

from __future__ import annotations

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.shop.stock import Stock


class Leftover(Struct, frozen=True, kw_only=True):
    """`used_ratio`: the signs' area over the sheet's. `offcut_mm`: width and height of the larger strip that no cut
    touches, beside the signs or behind them, as wide or as high as the sheet; `beside`: which one it is."""

    used_ratio: float
    offcut_mm: tuple[float, float]
    beside: bool

    def offcut_ratio(self, stock: Stock) -> float:
        """The offcut's area over the sheet's."""
        return self.offcut_mm[0] * self.offcut_mm[1] / (stock.width_mm * stock.height_mm)

    def waste_ratio(self, stock: Stock) -> float:
        """What is neither sign nor offcut, over the sheet."""
        return 1.0 - self.used_ratio - self.offcut_ratio(stock)


def leftover(drawing: Drawing, stock: Stock, cutter_mm: float) -> Leftover:
    """`cutter_mm`: the diameter of the outside cut, which goes round the signs."""
    right = max(0.0, stock.width_mm - stock.sign_x_mm - drawing.width_mm - cutter_mm)
    behind = max(0.0, stock.height_mm - stock.sign_y_mm - drawing.height_mm - cutter_mm)
    beside = right * stock.height_mm >= behind * stock.width_mm
    return Leftover(
        used_ratio=drawing.edge.area / (stock.width_mm * stock.height_mm),
        offcut_mm=(right, stock.height_mm) if beside else (stock.width_mm, behind),
        beside=beside,
    )
