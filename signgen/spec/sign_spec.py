"""What was asked for, complete: every default filled in, every name turned into a value that can work."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from signgen.borders import Border
from signgen.holes import HolePattern
from signgen.holes.form import HoleForm
from signgen.option import Value
from signgen.shop.manner import Manner
from signgen.shop.materials import Machine, Material
from signgen.shop.shop import Shop
from signgen.shop.tools import Tool
from signgen.spec.finish import BridgeSpec, Finish, PanelSpec
from signgen.spec.keyholes import KeyholeSpec
from signgen.spec.picture_spec import PictureSpec
from signgen.spec.roles import Role
from signgen.spec.trim import FrameSpec, OrnamentSpec, RimSpec
from signgen.spec.valid import must_be_valid
from signgen.tolerances import Tolerances

Align = Literal["left", "centre", "right"]


class ArcSpec(Struct, frozen=True, kw_only=True):
    """A circle that lines are set along. `centre`: its middle lies in the middle of the sign, or so that the text has
    the place that it would have as a straight line."""

    radius_mm: float
    side: Literal["above", "below", "ring"]
    centre: Literal["line", "sign"]


class LineSpec(Struct, frozen=True, kw_only=True):
    """One line of lettering, complete. At most one of `cap_height_mm` and `digit_height_mm` is given; neither: as large
    as fits, `height_ratio` times as high as other lines that are. `finish` None: as the sign has it, and then so is the
    depth. The rest is as in TextSpec."""

    text: str
    font: str
    font_axes: tuple[tuple[str, float], ...]
    cap_height_mm: float | None
    digit_height_mm: float | None
    height_ratio: float
    align: Align
    line_spacing: float | None
    letter_spacing_mm: float | None
    arc: ArcSpec | None
    finish: Finish | None = None
    depth_mm: float | None = None
    role: Role | None = None

    @property
    def is_fitted(self) -> bool:
        return self.cap_height_mm is None and self.digit_height_mm is None


class TextSpec(Struct, frozen=True, kw_only=True):
    """Lines of lettering and how they are set. `font` is a catalogue name or a path, `font_axes` settings of a
    variable font by their tags. `cap_height_mm` and `digit_height_mm` None: as large as fits, as `fit` says.

    `line_spacing` is baseline to baseline over cap height; `letter_spacing_mm` is added between letters; None: nobody
    said, and the `layout` chooses. `margin_mm` is kept between letters and edge; of a composed
    text `margin_stated` says whether somebody did.
    `font_fallback`: characters that the font lacks come from the catalogue. `wrap_mm`: lines that are wider are
    broken. `own_lines`: every line as set, when they differ in more than words.
    """

    lines: tuple[str, ...]
    font: str
    cap_height_mm: float | None
    align: Align
    line_spacing: float | None
    letter_spacing_mm: float | None
    margin_mm: float
    font_axes: tuple[tuple[str, float], ...] = ()
    font_fallback: bool = False
    digit_height_mm: float | None = None
    fit: Literal["together", "each"] = "together"
    wrap_mm: float | None = None
    arc: ArcSpec | None = None
    own_lines: tuple[LineSpec, ...] = ()
    layout: Literal["composed", "filled"] = "composed"
    margin_stated: bool = False

    @property
    def rows(self) -> tuple[LineSpec, ...]:
        """Every line, complete."""
        return self.own_lines or tuple(self.usual_line(text) for text in self.lines)

    def usual_line(self, text: str) -> LineSpec:
        """A line that is set as the sign has it."""
        return LineSpec(
            text=text,
            font=self.font,
            font_axes=self.font_axes,
            cap_height_mm=self.cap_height_mm,
            digit_height_mm=self.digit_height_mm,
            height_ratio=1.0,
            align=self.align,
            line_spacing=self.line_spacing,
            letter_spacing_mm=self.letter_spacing_mm,
            arc=self.arc,
        )


class TabSpec(Struct, frozen=True, kw_only=True):
    """`spacing_mm`: a tab for each such length of the edge, at least three; then `count` does not matter. `ramped`:
    with sides that fall, not upright ones."""

    count: int
    width_mm: float
    height_mm: float
    spacing_mm: float | None = None
    ramped: bool = False


class SignSpec(Struct, frozen=True, kw_only=True):
    """Millimetres throughout. `depth_mm` is the greatest depth of letters. `end_mill` None: the planner chooses; a
    Tool here was named by the user and is kept to. `board_mm` None: the least board. `skin_mm`: what stays under the
    outside cut instead of tabs, 0 for nothing. `finish_mm`: what the last pass takes off edge and bores, 0 for no
    such pass; `climb`: the way round them. `clamp_height_mm` None: nobody said. `cell_mm` None: chosen by the board
    and the letters. `air_cut_mm`: how much programs for the air are lifted, None for no such programs. `template`:
    the drilling template's paper (`paper.PAPERS_MM`), "none" for no template. `keyholes`: how they are cut, where
    `holes` are keyholes. `chamfer_mm`: how wide the bevel round the face is, 0 for none.
    `edge` "none": the board is a blank that is already to size.
    `more`: options that have no field of their own, by name (`asked`).

    Raises: AskError when a value is none that its option would read, also when `msgspec.structs.replace` changes it."""

    width_mm: float
    height_mm: float
    thickness_mm: float
    material: Material
    text: TextSpec
    border: Border
    holes: HolePattern
    hole_form: HoleForm
    finish: Finish
    depth_mm: float
    v_bit: Tool
    end_mill: Tool | None
    tabs: TabSpec
    skin_mm: float
    climb: bool
    frame: FrameSpec | None
    cusp_height_mm: float
    board_mm: tuple[float, float] | None
    machine: Machine
    dialect: str
    manner: Manner
    origin: Literal["sign", "stock"]
    z_zero: Literal["bottom", "top"]
    breakthrough_mm: float
    clearance_mm: float
    tolerances: Tolerances
    shop: Shop
    finish_mm: float = 0.0
    rule_width_mm: float | None = None
    clamp_height_mm: float | None = None
    cell_mm: float | None = None
    air_cut_mm: float | None = None
    language: str = "en"
    template: str = "none"
    sheet_format: Literal["html", "pdf", "both"] = "html"
    steps: bool = False
    paint: str | None = None
    keyholes: KeyholeSpec | None = None
    panel: PanelSpec | None = None
    sharp_corners: bool = False
    bridges: BridgeSpec | None = None
    ornament: OrnamentSpec | None = None
    rim: RimSpec | None = None
    chamfer_mm: float = 0.0
    edge: Literal["cut", "none"] = "cut"
    units: Literal["mm", "in"] = "mm"
    pictures: tuple[PictureSpec, ...] = ()
    more: tuple[tuple[str, Value], ...] = ()

    def __post_init__(self) -> None:
        must_be_valid(self)

    def asked(self, name: str) -> Value | None:
        """What was asked for by an option that has no field of its own (its default when nothing was); None when
        there is neither."""
        return dict(self.more).get(name)

    def finish_of(self, line: LineSpec) -> Finish:
        """How a line's letters are made."""
        return line.finish or self.finish

    def depth_of(self, line: LineSpec) -> float:
        """How deep: of grooves at the most, of letters in a panel from its floor."""
        return self.depth_mm if line.depth_mm is None else line.depth_mm

    @property
    def finishes(self) -> frozenset[Finish]:
        """Every way in which letters are made."""
        return frozenset(map(self.finish_of, self.text.rows))
