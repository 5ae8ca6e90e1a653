"""The board on the machine, and where the programs' zero lies on it."""

from __future__ import annotations

from msgspec import Struct

from signgen.errors import CannotMakeError
from signgen.messages import Message, Mm, Sides


class Stock(Struct, frozen=True, kw_only=True):
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


class WorkZero(Struct, frozen=True, kw_only=True):
    """Where X0 Y0 Z0 of the programs lies, in sign coordinates (Z 0 of those is the stock's bottom).

    A point p in sign coordinates is written as p - zero in a program.
    """

    x_mm: float
    y_mm: float
    z_mm: float


GAP_MM = 2.0
"""Wood between the outside cut and a screw's head, so that neither meets the other (common practice)."""

SCREW_HEAD_MM = 9.0
"""Head of the screws that hold the board down: a 4 to 4.5 mm countersunk screw (common practice)."""

CLAMP_STANDS_MM = 30.0
"""How high a clamp with its bolt stands over the board: common practice for step clamps and cam clamps."""

HEAD_STANDS_MM = 2.0
"""How far a head may stand over the board without being met; it should sit flush or below (common practice)."""

SCREW_EDGE_MM = 2.5
"""Wood between a screw's head and the board's edge, so that the board, drilled before, does not split (common
practice)."""

LEAD_MM = 0.5
"""How far beside the edge's way the cutter comes on to it and leaves it: clear of the wall, and no more than a thin
cut into the waste (common practice)."""

LEAST_RIM_MM = 2.0
"""Wood beyond the outside cut on a board that is clamped or taped and takes no screws."""


def least_margin_mm(cutter_diameter_mm: float) -> float:
    """Board wanted around the sign on every side: the cut with its way in, a gap, a screw's head and wood beyond it."""
    return cutter_diameter_mm + LEAD_MM + GAP_MM + SCREW_HEAD_MM + SCREW_EDGE_MM


def least_stock(width_mm: float, height_mm: float, thickness_mm: float, cutter_diameter_mm: float) -> Stock:
    """The smallest board that holds the sign, its outside cut and hold-down screws all round."""
    margin = least_margin_mm(cutter_diameter_mm)
    return Stock(
        width_mm=width_mm + 2 * margin,
        height_mm=height_mm + 2 * margin,
        thickness_mm=thickness_mm,
        sign_x_mm=margin,
        sign_y_mm=margin,
    )


def blank_stock(width_mm: float, height_mm: float, thickness_mm: float) -> Stock:
    """A board that is already to size."""
    return Stock(width_mm=width_mm, height_mm=height_mm, thickness_mm=thickness_mm, sign_x_mm=0.0, sign_y_mm=0.0)


def stock_on_board(least: Stock, board_mm: tuple[float, float], cutter_diameter_mm: float) -> Stock:
    """The sign on a real board: in its bottom-left corner as far as the least margin, so that the offcut stays in one
    piece; in the middle of a board that is too narrow for screws.

    Raises: CannotMakeError when the board does not even hold the sign and its outside cut.
    """
    starts = []
    for axis, board, wanted, margin in (
        ("wide", board_mm[0], least.width_mm, least.sign_x_mm),
        ("high", board_mm[1], least.height_mm, least.sign_y_mm),
    ):
        size = wanted - 2 * margin
        needed = size + 2 * (cutter_diameter_mm + LEAST_RIM_MM)
        if board < needed:
            raise CannotMakeError.at(
                "board",
                Message(f"shop.board_is_too_small_{axis}", board=Mm(board), needed=Mm(needed), wanted=Mm(wanted)),
                Message("shop.use_larger_board_turn_quarter"),
            )
        starts.append(min(margin, (board - size) / 2))
    return Stock(
        width_mm=board_mm[0],
        height_mm=board_mm[1],
        thickness_mm=least.thickness_mm,
        sign_x_mm=starts[0],
        sign_y_mm=starts[1],
    )


def around_mm(cutter_diameter_mm: float) -> float:
    """Travel wanted beyond a sign on every side: the outline that is shown before goes as far as what is cut, and the
    outside cut begins and ends a little beside itself."""
    return cutter_diameter_mm + LEAD_MM


def must_reach(size_mm: tuple[float, float], cutter_diameter_mm: float, travel_mm: tuple[float, float]) -> None:
    """Raises: CannotMakeError when the machine does not go round the sign."""
    more = 2 * around_mm(cutter_diameter_mm)
    width, height = (size + more for size in size_mm)
    x, y = travel_mm
    if width <= x and height <= y:
        return
    most = Sides((x - more, y - more))
    raise CannotMakeError.at(
        "size",
        Message(
            "shop.needs_more_travel",
            size=Sides(size_mm),
            cutter=Mm(cutter_diameter_mm),
            needed=Sides((width, height)),
            travel=Sides(travel_mm),
        ),
        Message("shop.make_it_smaller_or_turn_it", most=most)
        if height <= x and width <= y
        else Message("shop.make_it_smaller", most=most),
    )


def work_zero(stock: Stock, *, on_board: bool, at_top: bool) -> WorkZero:
    """X0 Y0 at the sign's bottom-left corner, or at the board's; Z0 at the stock's bottom, or at its top."""
    return WorkZero(
        x_mm=-stock.sign_x_mm if on_board else 0.0,
        y_mm=-stock.sign_y_mm if on_board else 0.0,
        z_mm=stock.thickness_mm if at_top else 0.0,
    )


def turned_over(stock: Stock, sign_width_mm: float) -> Stock:
    """The board turned over about an upright line, as a page is: what lay left lies right, front stays front."""
    return Stock(
        width_mm=stock.width_mm,
        height_mm=stock.height_mm,
        thickness_mm=stock.thickness_mm,
        sign_x_mm=stock.width_mm - stock.sign_x_mm - sign_width_mm,
        sign_y_mm=stock.sign_y_mm,
    )


def zero_turned_over(zero: WorkZero, sign_width_mm: float) -> WorkZero:
    """The same corner of the sign or the board as zero, seen from behind: programs then count X to the left,
    negative."""
    return WorkZero(x_mm=sign_width_mm - zero.x_mm, y_mm=zero.y_mm, z_mm=zero.z_mm)
