"""What is to be cut from each side of a board: the drawing, who cuts what, and how the board lies."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from signgen.dialects import dialect_named
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.keyholes import face_down
from signgen.operations.plan import Plan, back_plan, make_plan
from signgen.program.heading import ONE_FILE, program_file
from signgen.program.trial import LIFTED, OUTLINE
from signgen.shop.stock import (
    Stock,
    WorkZero,
    blank_stock,
    least_stock,
    must_reach,
    stock_on_board,
    turned_over,
    work_zero,
    zero_turned_over,
)
from signgen.spec.sign_spec import SignSpec


class Setup(Struct, frozen=True, kw_only=True):
    """The board, the least board that would do, and the programs' zero on it."""

    stock: Stock
    least: Stock
    zero: WorkZero


class Side(Struct, frozen=True, kw_only=True):
    """One side of a board: a sign's, or that of a whole sheet of signs."""

    spec: SignSpec
    drawing: Drawing
    plan: Plan
    setup: Setup

    @property
    def program_names(self) -> tuple[str, ...]:
        """The file of each run; one file for all of them where the dialect wants that."""
        runs, prefix = self.plan.runs, self.plan.prefix
        if dialect_named(self.spec.dialect).one_file:
            return (f"{prefix}{ONE_FILE}",) * len(runs)
        return tuple(f"{prefix}{program_file(number, run.tool)}" for number, run in enumerate(runs, 1))

    @property
    def shows_place(self) -> bool:
        """Whether a program goes round the sign before: a blank lies where it lies, and clamps may stand on its rim."""
        return not self.drawing.is_blank

    @property
    def trial_names(self) -> tuple[str, ...]:
        """The files of the programs to try before the cut: round the outline, and lifted if that was asked for."""
        lifted = dict.fromkeys(self.program_names) if self.spec.air_cut_mm is not None else ()
        shown = (f"{self.plan.prefix}{OUTLINE}",) if self.shows_place else ()
        return (*shown, *(f"{LIFTED}{name}" for name in lifted))


def sides_of(spec: SignSpec) -> tuple[Side, ...]:
    """A sign's face, and its back where something is cut from there. Raises: CannotMakeError."""
    spec = with_chords(spec)
    drawing = draw(spec)
    plan = make_plan(drawing, spec, twice=may_fit_twice(spec))
    face = Side(spec=spec, drawing=drawing, plan=plan, setup=setup_of(spec, plan))
    turned = face_down(drawing)
    behind = back_plan(turned, spec)
    if behind is None:
        return (face,)
    return face, Side(spec=spec, drawing=turned, plan=behind, setup=_turned(face.setup, drawing.width_mm))


def may_fit_twice(spec: SignSpec) -> bool:
    """Whether a cutter may come back after another: in one file for all cutters each has one place."""
    return not dialect_named(spec.dialect).one_file


def with_chords(spec: SignSpec) -> SignSpec:
    """With a share of the tolerance for the chords of arcs, where the control does not know arcs."""
    straight = dialect_named(spec.dialect).straight
    return replace(spec, tolerances=replace(spec.tolerances, straight=True)) if straight else spec


def setup_of(spec: SignSpec, plan: Plan) -> Setup:
    """Raises: CannotMakeError when the board or the machine is too small."""
    cutter = plan.around_mm
    if spec.edge == "none":
        stock = blank_stock(spec.width_mm, spec.height_mm, spec.thickness_mm)
        return Setup(stock=stock, least=stock, zero=zero_of(spec, stock))
    must_reach((spec.width_mm, spec.height_mm), cutter, spec.machine.travel_mm[:2])
    least = least_stock(spec.width_mm, spec.height_mm, spec.thickness_mm, cutter)
    stock = stock_on_board(least, spec.board_mm, cutter) if spec.board_mm else least
    return Setup(stock=stock, least=least, zero=zero_of(spec, stock))


def zero_of(spec: SignSpec, stock: Stock) -> WorkZero:
    """Where it was asked for."""
    return work_zero(stock, on_board=spec.origin == "stock", at_top=spec.z_zero == "top")


def _turned(setup: Setup, sign_width_mm: float) -> Setup:
    """The same board, face down."""
    return Setup(
        stock=turned_over(setup.stock, sign_width_mm),
        least=turned_over(setup.least, sign_width_mm),
        zero=zero_turned_over(setup.zero, sign_width_mm),
    )
