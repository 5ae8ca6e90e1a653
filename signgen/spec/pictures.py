"""Pictures asked for: drawings from files, each with its place, its size and how it is made."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from msgspec.structs import replace

from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import pick
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked
from signgen.spec.depths import letter_depth_of
from signgen.spec.finish import FINISHES, Finish, finish_of
from signgen.spec.keys.pictures import OF_KIND, PLACES
from signgen.spec.picture_spec import LEAVE, ColourUse, PictureSpec, Place
from signgen.units import Limits, length_mm, points_mm

WHICH = ("dark", "light", "all")

_SIZES = ("width", "height", "size")
"""Keys that say how large a picture is: who says one anew takes the others back."""

_DEPTHS = Limits(least=0.1, greatest=150)


def pictures_of(
    a: Asked, finish: Finish | None, depth_mm: float | None, thickness_mm: float | None, v_bit: Tool | None
) -> tuple[PictureSpec, ...]:
    """Every picture, those of one option after the other; problems are kept."""
    found: list[PictureSpec] = []
    for kind, keys in OF_KIND.items():
        by_name = {key.name: key for key in keys}
        usual = {key.name: a.raw(f"{kind}-{key.name}") for key in keys[1:] if a.has(f"{kind}-{key.name}")}
        for name in usual:
            a.value(f"{kind}-{name}")  # told under the word that was typed when it is wrong
        if not a.has(kind):
            continue
        tables = a.tables(kind) or ()
        bare = isinstance(a.raw(kind), str)
        for number, table in enumerate(tables, 1):
            own = Asked({**usual, **table}, by_name)
            picture = _picture(kind, own, finish, depth_mm, thickness_mm, v_bit, has_panel=a.has("panel"))
            if bare:
                own.rename({name: f"{kind}-{name}" for name in by_name} | {keys[0].name: kind})
                a.take_problems(own, "")
            else:
                a.take_problems(own, f"{kind} {number}")
            if picture is not None:
                found.append(picture)
    return tuple(found)


def _picture(
    kind: str, own: Asked, finish: Finish | None, depth_mm: float | None, thickness_mm: float | None,
    v_bit: Tool | None, *, has_panel: bool,
) -> PictureSpec | None:  # fmt: skip
    what = own.text(OF_KIND[kind][0].name)
    width, height, rotation, module = (
        own.number(key) if own.has(key) else None for key in ("width", "height", "rotation", "module")
    )
    level = own.text("level") if kind == "code" else "M"
    place = own.attempt(lambda: place_of(own.text("place") or "left")) if own.has("place") else "left"
    if width is not None and height is not None:
        own.wrong("height", Message("art.both_sizes"), Message("art.give_one_size"))
    own_size = kind == "art" and own.text("size") == "file"
    if own_size and (width is not None or height is not None):
        own.wrong("size", Message("art.own_and_stated_size"), Message("art.give_one_size"))
    made = finish_of(own) if own.has("finish") else finish
    if kind == "code" and finish is not None:
        made = _code_finish(own, finish)
    if made is None or finish is None:
        return None
    _must_go_together(own, made, finish, has_panel=has_panel)
    depth = letter_depth_of(own, made, thickness_mm, v_bit) if own.has("depth") or made != finish else depth_mm
    colours: str | tuple[ColourUse, ...] | None = "dark"
    if own.has("colours"):
        told = own.text("colours")
        colours = own.attempt(lambda: colours_of(told or "")) if told else None
        for use in colours if isinstance(colours, tuple) else ():
            _must_go_together(own, use.finish or made, finish, has_panel=has_panel, where="colours")
        if isinstance(colours, tuple) and depth is not None:
            colours = tuple(_with_depth(own, use, made, depth, thickness_mm, v_bit) for use in colours)
    if kind == "pictogram" and what is not None:
        from signgen.artwork.pictograms import known_name  # geometry, which --help does without

        name = what
        what = own.attempt(lambda: known_name(name, "name"))
    if what is None or place is None or depth is None or colours is None:
        return None
    return PictureSpec(
        kind=kind,
        what=_absolute(what) if kind == "art" else what,
        place=place,
        width_mm=width,
        height_mm=height,
        own_size=own_size,
        rotation_deg=rotation or 0.0,
        finish=made,
        depth_mm=0.0 if made == "through" else depth,
        colours=colours,
        module_mm=module,
        level=level or "M",
    )


def _code_finish(own: Asked, finish: Finish) -> Finish | None:
    """Dots are strokes without length. In letters that stand or are flat a code is flat."""
    name = own.text("finish") if own.has("finish") else "groove" if finish in ("groove", "stroke") else "recess"
    if finish == "raised":
        own.wrong("finish", Message("art.code_on_raised"), Message("art.code_with_other_finish"))
    return {"groove": "groove", "recess": "recess", "dots": "stroke"}.get(name or "")  # type: ignore[return-value]


def _with_depth(
    own: Asked, use: ColourUse, made: Finish, depth_mm: float, thickness_mm: float | None, v_bit: Tool | None
) -> ColourUse:
    """A colour's use with the depth that was written, else the picture's when it is made like it, else the usual."""
    if use.finish in (None, "through"):
        return replace(use, depth_mm=None)
    if use.depth_mm is None and use.finish == made:
        return replace(use, depth_mm=depth_mm)
    asked = Asked({"depth": use.depth_mm}, {key.name: key for key in OF_KIND["art"]})
    depth = letter_depth_of(asked, use.finish, thickness_mm, v_bit)
    asked.rename({"depth": "colours"})
    own.take_problems(asked, "")
    return replace(use, depth_mm=depth)


def _absolute(path: str) -> str:
    from signgen.spec.paths import resolved

    return resolved(path, Path())


def _must_go_together(own: Asked, made: Finish, finish: Finish, *, has_panel: bool, where: str = "finish") -> None:
    """What stands wants a ground round it, and in a sunk ground nothing is engraved."""
    if (made == "raised") != (finish == "raised"):
        own.wrong(where, Message("art.stands_with_letters"), Message("art.give_sign_the_same"))
    elif has_panel and made in ("groove", "stroke"):
        own.wrong(where, Message("spec.v_bit_engraves_board_s_2"), Message("spec.use_recess_through_leave_panel"))


def place_of(text: str) -> Place:
    """Raises: AskError."""
    if "," in text:
        points = points_mm(text, "place")
        if len(points) != 1:
            raise AskError.at("place", Message("art.no_place", text=text), Message("art.name_place", places=PLACES))
        return points[0]
    return pick(text, PLACES, "place")


def colours_of(text: str) -> str | tuple[ColourUse, ...]:
    """Raises: AskError."""
    from signgen.artwork.colours import colour_of

    if text.strip().casefold() in WHICH:
        return text.strip().casefold()
    remedy = Message("art.write_colours")
    found: dict[str, ColourUse] = {}
    for part in text.removesuffix(";").split(";"):
        colour, equals, use = (each.strip() for each in part.partition("="))
        words = use.split(maxsplit=1)
        if not equals or not words:
            raise AskError.at("colours", Message("art.no_colour_use", text=part.strip()), remedy)
        if colour_of(colour) is None:
            raise AskError.at("colours", Message("art.no_colour", name=colour), remedy)
        if colour in found:
            raise AskError.at("colours", Message("art.colour_twice", colour=colour), remedy)
        name = pick(words[0], (*FINISHES, LEAVE), "colours")
        depth = length_mm(words[1], "colours", _DEPTHS) if len(words) > 1 else None
        found[colour] = ColourUse(
            colour=colour, finish=next((each for each in FINISHES if each == name), None), depth_mm=depth
        )
    return tuple(found.values())


def with_own_keys(file: Mapping[str, object], given: Mapping[str, object]) -> dict[str, object]:
    """The tables of pictures in a file with what the command line says of all of them; what is no table comes back as
    it is, for `read_spec` to say so."""
    found: dict[str, object] = {}
    for kind, keys in OF_KIND.items():
        tables = file.get(kind)
        told = {key.name: given[f"{kind}-{key.name}"] for key in keys[1:] if f"{kind}-{key.name}" in given}
        if not told or kind in given or not isinstance(tables, list | tuple):
            continue
        if not told.keys().isdisjoint(_SIZES):
            tables = [
                {k: v for k, v in table.items() if k not in _SIZES} if isinstance(table, Mapping) else table
                for table in tables
            ]
        found[kind] = [{**table, **told} if isinstance(table, Mapping) else table for table in tables]
    return found
