"""`report.json`, version 1: a finished job in figures."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import UNSET, Meta, Struct, UnsetType

from signgen.instructions import Instructions
from signgen.schemas.lettering import Legibility, ReportLine, ReportText
from signgen.schemas.parts import (
    FormatAirCut,
    FormatCheck,
    FormatOutline,
    FormatProgram,
    FormatShares,
    Point,
)


class Countersink(Struct, frozen=True, kw_only=True):
    """The cone at a hole's mouth."""

    diameter_mm: float
    angle_deg: float
    depth_mm: float


class Figures(Struct, frozen=True, kw_only=True):
    """Figures of a feature; each kind has those that it needs. Places are in sign coordinates: (0, 0) is the bottom
    left corner of the sign's bounds, depths count from the face."""

    x_mm: float | UnsetType = UNSET
    y_mm: float | UnsetType = UNSET
    width_mm: float | UnsetType = UNSET
    height_mm: float | UnsetType = UNSET
    diameter_mm: float | UnsetType = UNSET
    length_mm: float | UnsetType = UNSET
    angle_deg: Annotated[float, Meta(description="A V-bit's full angle, or how a slot is turned.")] | UnsetType = UNSET
    countersink: Countersink | UnsetType = UNSET
    tip_mm: float | UnsetType = UNSET
    depth_mm: float | UnsetType = UNSET
    greatest_depth_mm: float | UnsetType = UNSET
    sharp_corners: bool | UnsetType = UNSET
    skin_mm: float | UnsetType = UNSET
    travel_mm: Annotated[float, Meta(description="How far a screw slides in a keyhole.")] | UnsetType = UNSET
    entry_mm: Annotated[float, Meta(description="Across a keyhole's entry.")] | UnsetType = UNSET
    slot_mm: Annotated[float, Meta(description="Across a keyhole's slot.")] | UnsetType = UNSET
    undercut_mm: Annotated[float, Meta(description="Across the room for the head.")] | UnsetType = UNSET
    undercut_height_mm: float | UnsetType = UNSET


class ReportFeature(Figures, frozen=True, kw_only=True):
    """One thing that the sign has: a groove, a hole, a tab ..."""

    kind: str
    name: Annotated[str, Meta(description="Unique in the sign.")]
    source: Annotated[str, Meta(description="The option that asked for it.")]
    text: Annotated[str, Meta(description="The letter that it is.")] | UnsetType = UNSET


class NamedFigures(Figures, frozen=True, kw_only=True):
    """A hole or a keyhole."""

    name: str


class Floor(Struct, frozen=True, kw_only=True):
    """A flat floor sunk into the face."""

    name: str
    depth_mm: float
    through: bool
    sharp_corners: bool


class Frame(Struct, frozen=True, kw_only=True):
    """Lines round the sign."""

    insets_mm: list[float]
    width_mm: float


class Ornament(Struct, frozen=True, kw_only=True):
    """The character in the corners."""

    character: str
    font: str
    size_mm: float


class EdgeChamfer(Struct, frozen=True, kw_only=True):
    """The bevel round the face."""

    width_mm: float
    depth_mm: float


class Rim(Struct, frozen=True, kw_only=True):
    """The line that stands in a sunk ground."""

    width_mm: float
    inset_mm: float


class Trim(Struct, frozen=True, kw_only=True):
    """What goes round the letters; null for what there is none of."""

    frame: Frame | None
    ornament: Ornament | None
    edge_chamfer: EdgeChamfer | None
    rim: Rim | None


class ReportCode(Struct, frozen=True, kw_only=True):
    """A QR code of the sign."""

    text: Annotated[str, Meta(description="What it says.")]
    module_mm: Annotated[float, Meta(description="Width of one of its squares.")]
    read_back: Annotated[
        bool | None, Meta(description="Whether it was read in the picture of the board; null: no reader was installed.")
    ]


class ReportSign(Struct, frozen=True, kw_only=True):
    """The sign as it will be."""

    width_mm: float
    height_mm: float
    thickness_mm: float
    units: Literal["mm", "in"]
    material: Annotated[str, Meta(description="Its name in the shop.")]
    lines: Annotated[list[str], Meta(description="The lines of lettering as they were asked for.")]
    cap_height_mm: float
    font: str
    lettering: Annotated[list[ReportLine], Meta(description="The lines as drawn, from the top.")]
    texts: list[ReportText]
    finish: str
    features: list[ReportFeature]
    floors: list[Floor]
    trim: Trim
    bridges: int
    holes: list[NamedFigures]
    tabs: int
    skin_mm: float


class ReportStock(Struct, frozen=True, kw_only=True):
    """The board that the job wants."""

    min_width_mm: float
    min_height_mm: float
    datum_x_mm: Annotated[float, Meta(description="X0 from the left of the least board.")]
    datum_y_mm: Annotated[float, Meta(description="Y0 from the bottom of the least board.")]
    board_mm: Annotated[Point | None, Meta(description="The board that was named; null where none was.")]
    z_zero: Literal["bottom", "top"]


class Fastening(Struct, frozen=True, kw_only=True):
    """Where screws hold the board."""

    screws_mm: Annotated[list[Point], Meta(description="Middles, in program coordinates.")]
    datum: Literal["sign", "stock"]


class Spot(Struct, frozen=True, kw_only=True):
    """A depth or a width, and where on the sign."""

    mm: float
    at_mm: Point
    feature: str
    letter: str | None


class IfThicker(Struct, frozen=True, kw_only=True):
    """What a board thicker than stated does to the letters."""

    by_mm: float
    deeper_mm: float
    wider_mm: float


class OtherCutter(Struct, frozen=True, kw_only=True):
    """Another end mill, and what it would save; less than 0: cost."""

    name: str
    diameter_mm: float
    minutes: float
    saves_minutes: float


class FloorTimes(Struct, frozen=True, kw_only=True):
    """How long clearing the flat floors takes."""

    cleared_by: str
    minutes: float
    other_cutters: list[OtherCutter]


class TrialGroove(Struct, frozen=True, kw_only=True, rename={"where": "in"}):
    """A groove in scrap that proves the bit's angle."""

    depth_mm: float
    width_mm: float
    where: str


class MeasureFirst(Struct, frozen=True, kw_only=True):
    """What to measure before the cut."""

    thickness_at: list[str]
    trial_groove: TrialGroove


class Engraving(Struct, frozen=True, kw_only=True):
    """What is engraved."""

    deepest: Spot
    narrowest_stroke: Spot
    widest_stroke: Spot
    wood_left_mm: float
    if_thicker: IfThicker
    floors: FloorTimes | None
    measure_first: MeasureFirst


class Template(Struct, frozen=True, kw_only=True):
    """The drilling template's paper."""

    paper: str
    sheets_across: int
    sheets_up: int


class Back(Struct, frozen=True, kw_only=True):
    """What is cut from behind before the face; programs count in their own coordinates."""

    programs: list[FormatProgram]
    outline: FormatOutline | None
    air_cut: FormatAirCut | None
    minutes: float
    checks: list[FormatCheck]
    screws_mm: list[Point]
    warnings: list[str]


class Piece(Struct, frozen=True, kw_only=True):
    """A sign of a whole sheet as it lies, from the corner of all signs together."""

    name: str
    row: int
    lines: list[str]
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    turned: bool


class ReportRoughing(Struct, frozen=True, kw_only=True):
    """Floors that a thicker cutter clears before a thinner one finishes them, and what that saves."""

    cleared_by: Annotated[str, Meta(description="Name of the cutter.")]
    finished_by: Annotated[str, Meta(description="Name of the cutter.")]
    minutes: float
    alone_minutes: Annotated[float, Meta(description="What the thinner one would take alone.")]
    saves_minutes: Annotated[float, Meta(description="The second fitting reckoned in.")]


class Report(Struct, frozen=True, kw_only=True):
    """A job that signgen made and proved. Lengths are millimetres, angles full angles in degrees, times minutes."""

    format: Literal["signgen-report"]
    version: Literal[1]
    sign: ReportSign
    stock: ReportStock
    programs: Annotated[list[FormatProgram], Meta(description="In the order to run them.")]
    outline: FormatOutline | None
    air_cut: FormatAirCut | None
    minutes: float
    shares: FormatShares
    checks: list[FormatCheck]
    fastening: Fastening
    instructions: Instructions
    engraving: Engraving | None
    legibility: Legibility
    warnings: Annotated[list[str], Meta(description="Whole sentences to read before cutting.")]
    files: list[str]
    sha256: Annotated[dict[str, str], Meta(description="Of the other files, by their names.")]
    template: Template | UnsetType = UNSET
    keyholes: list[NamedFigures] | UnsetType = UNSET
    back: Back | UnsetType = UNSET
    pieces: list[Piece] | UnsetType = UNSET
    codes: list[ReportCode] | UnsetType = UNSET
    roughing: ReportRoughing | UnsetType = UNSET
