"""What was asked for, from the command line, a sign file or a row of a table, into a complete SignSpec.

All of them come here as one mapping of keys (`spec/keys/`) to texts or values, so that they are read alike.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Protocol, TypeVar

from msgspec.structs import replace

from signgen.messages import Message
from signgen.option import pick
from signgen.shop.bores import next_bore_mm
from signgen.shop.materials import Machine, Material
from signgen.shop.named import material_named
from signgen.shop.shop import Shop
from signgen.shop.tools import Tool
from signgen.spec import keys
from signgen.spec.amounts import air_cut_of, board_of, clearance_of, margin_of, must_suit_blank, skin_of, tabs_of
from signgen.spec.asked import Asked
from signgen.spec.control import dialect_of, manner_of
from signgen.spec.cutters import named_end_mill, named_v_bit
from signgen.spec.depths import letter_depth_of
from signgen.spec.finish import Finish, bridges_of, finish_of, panel_inset_of, panel_of, sharp_of
from signgen.spec.keyholes import keyholes_of
from signgen.spec.line_finish import finishes_of, with_finishes
from signgen.spec.lines import text_of
from signgen.spec.machine_fit import goes_round, must_fit_collet, must_fit_height, must_fit_travel
from signgen.spec.paint import paint_rgb
from signgen.spec.paper import template_of
from signgen.spec.pictures import pictures_of
from signgen.spec.said_units import units_of
from signgen.spec.shape import Band, border_of, form_of, holes_of, size_of
from signgen.spec.sign_spec import SignSpec, TextSpec
from signgen.spec.trim import FrameSpec, chamfer_of, clear_of_lines_mm, frame_of, ornament_of, rim_of
from signgen.tolerances import Tolerances


class _Named(Protocol):
    @property
    def name(self) -> str: ...


N = TypeVar("N", bound=_Named)
T = TypeVar("T")


def read_spec(asked: Mapping[str, object], shop: Shop, dialects: Sequence[str] = ("plain",)) -> SignSpec:
    """The complete spec; a key that is None counts as not given. `dialects` are the names that can be asked for.

    Raises: AskError with every problem at once, each with the key that the user typed; CannotMakeError when the
    only problems are that the cutters, the board or the machine cannot do it.
    """
    a = Asked(asked)
    text, size, thickness = text_of(a), size_of(a), a.number("thickness")
    material, machine = _material(a, shop), _machine(a, shop, size)
    v_bit, end_mill = _v_bit(a, shop), _end_mill(a, shop)
    border, frame = border_of(a, size), frame_of(a, size)
    finish = finish_of(a)
    holes = holes_of(a, size, border, _lines_round(a, frame, finish, size), _bore(a, shop, end_mill, thickness))
    hole_form = form_of(a, holes)
    keyholes = keyholes_of(a, holes, shop, machine, thickness, end_mill)
    margin = margin_of(a, size, frame)
    depth = letter_depth_of(a, finish, thickness, v_bit)
    text = with_finishes(a, text, finish, thickness, v_bit)
    sunk = _sunk_depth(text, finish, depth)
    panel = panel_of(a, finish, size, thickness, depth, sunk)
    sharp = sharp_of(a, finishes_of(text, finish), panel.depth_mm if panel and finish == "raised" else sunk, v_bit)
    bridges = bridges_of(a, finishes_of(text, finish), thickness)
    pictures = pictures_of(a, finish, depth, thickness, v_bit)
    tolerance = a.number("tolerance")
    a.text("units")
    must_suit_blank(a)
    tabs, board = tabs_of(a, thickness), board_of(a, size)
    skin, breakthrough, clearance = skin_of(a, thickness), a.number("breakthrough"), clearance_of(a)
    milling = a.text("milling")
    air_cut = air_cut_of(a, thickness, breakthrough)
    template = template_of(a, size, border, holes)
    paint = a.text("paint")
    if paint is not None:
        a.attempt(lambda: paint_rgb(paint, "paint"))
    rim = rim_of(a, size, panel, finish)
    clear = clear_of_lines_mm(size, finish, frame, panel, rim)
    ornament = ornament_of(a, size, clear, text.font if text else None, finish)
    chamfer = chamfer_of(a, thickness, v_bit, skin or (tabs.height_mm if tabs and tabs.count else 0.0), size)
    dialect, manner = dialect_of(a, machine, dialects), manner_of(a, machine)
    for path in ("shop", "out"):  # read by whoever opens them; here only that they are texts
        a.text(path)
    plain, more = a.plain_fields(keys.KEYS), a.kept_by_name(keys.KEYS)
    if machine and v_bit:
        must_fit_collet(a, "v-bit", v_bit, machine)
    if machine and end_mill:
        must_fit_collet(a, "end-mill", end_mill, machine)
    if machine and size:
        must_fit_travel(a, machine, size, shop)
    if machine and thickness is not None and clearance is not None and breakthrough is not None:
        must_fit_height(a, machine, thickness, clearance, breakthrough)
    a.raise_problems()
    return SignSpec(
        width_mm=_had(size)[0],
        height_mm=_had(size)[1],
        material=_had(material),
        text=replace(_had(text), margin_mm=_had(margin)),
        border=_had(border),
        holes=_had(holes),
        hole_form=_had(hole_form),
        keyholes=keyholes,
        finish=_had(finish),
        panel=panel,
        sharp_corners=sharp,
        bridges=bridges,
        ornament=ornament,
        rim=rim,
        chamfer_mm=chamfer,
        pictures=pictures,
        depth_mm=_had(depth),
        v_bit=_had(v_bit),
        end_mill=end_mill,
        tabs=_had(tabs),
        skin_mm=_had(skin),
        climb=_had(milling) == "climb",
        frame=frame,
        board_mm=board,
        machine=_had(machine),
        dialect=_had(dialect),
        manner=_had(manner),
        clearance_mm=_had(clearance),
        template=template,
        paint=paint,
        air_cut_mm=air_cut,
        tolerances=Tolerances(total_mm=_had(tolerance)),
        shop=shop,
        units=units_of({key: a.raw(key) for key in ("units", "size", "thickness")}),
        more=more,
        **plain,
    )


def _lines_round(
    a: Asked, frame: FrameSpec | None, finish: Finish | None, size: tuple[float, float] | None
) -> tuple[Band, ...]:
    """What runs round inside the edge, so that holes keep off it: the frame's lines, the panel's wall."""
    inset = panel_inset_of(a, finish, size)
    lines = [(frame.inset_mm - frame.width_mm, frame.reach_mm)] if frame else []
    return (*lines, *([(inset, inset)] if inset is not None else []))


def _bore(a: Asked, shop: Shop, end_mill: Tool | None, thickness_mm: float | None) -> Callable[[float], float | None]:
    """The next hole that can be made right through the board."""
    through = a.number("breakthrough")
    if thickness_mm is None or through is None:
        return lambda diameter_mm: diameter_mm
    tools = [end_mill] if end_mill else [tool for tool in shop.tools if not tool.only_named]
    return lambda diameter_mm: next_bore_mm(diameter_mm, tools, thickness_mm + through)


def _had(value: T | None) -> T:
    """A value that can only be missing where a problem was kept, and then nobody comes here."""
    if value is None:
        raise AssertionError("a value is missing without a problem")
    return value


def _sunk_depth(text: TextSpec | None, finish: Finish | None, depth_mm: float | None) -> float | None:
    """The depth of the deepest letters with flat floors; None when there are none, or a problem."""
    rows = [row for row in text.rows if (row.finish or finish) == "recess"] if text else []
    depths = [depth_mm if row.depth_mm is None else row.depth_mm for row in rows]
    return max((depth for depth in depths if depth is not None), default=None)


def one_of(rows: Iterable[N], name: str, where: str) -> N:
    """The row of a name. Raises: AskError that offers close matches."""
    by_name = {row.name: row for row in rows}
    return by_name[pick(name, by_name, where)]


def _material(a: Asked, shop: Shop) -> Material | None:
    name = a.text("material")
    return a.attempt(lambda: material_named(shop, name)) if name else None


def _machine(a: Asked, shop: Shop, size: tuple[float, float] | None) -> Machine | None:
    """The machine named, or the first of the shop that goes round the sign."""
    if not a.has("machine"):
        large = (each for each in shop.machines if size is None or goes_round(each, size))
        return next(large, None) or max(shop.machines, key=lambda each: each.travel_mm[0] * each.travel_mm[1])
    name = a.text("machine")
    return a.attempt(lambda: one_of(shop.machines, name, "machine")) if name else None


def _v_bit(a: Asked, shop: Shop) -> Tool | None:
    angle, diameter, tip = a.number("v-bit"), a.number("v-bit-diameter"), a.number("v-bit-tip")
    given = {"v-bit": angle, "v-bit-diameter": diameter, "v-bit-tip": tip}
    if any(value is None and a.has(key) for key, value in given.items()):
        return None
    return a.attempt(lambda: named_v_bit(shop, angle, diameter, tip))


def _end_mill(a: Asked, shop: Shop) -> Tool | None:
    if a.has("end-mill-name"):
        return _end_mill_by_name(a, shop)
    raw = a.raw("end-mill")
    if any(tool.name == raw for tool in shop.tools):
        a.wrong("end-mill", Message("spec.name_cutter", text=str(raw)), Message("spec.give_diameter_name_end_mill"))
        return None
    diameter, length = a.number("end-mill"), a.number("end-mill-length")
    if diameter is None or (length is None and a.has("end-mill-length")):
        return None
    return named_end_mill(shop, diameter, length)


def _end_mill_by_name(a: Asked, shop: Shop) -> Tool | None:
    for key in ("end-mill", "end-mill-length"):
        if a.has(key):
            a.wrong(key, Message("spec.end_mill_name_already"), Message("spec.give_name_diameter_not_both"))
    name = a.text("end-mill-name")
    mills = [tool for tool in shop.tools if tool.kind == "end-mill"]
    return a.attempt(lambda: one_of(mills, name, "end-mill-name")) if name else None
