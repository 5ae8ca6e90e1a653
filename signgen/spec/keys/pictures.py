"""What can be asked for of pictures. Each has a table of its own in a sign file, or is named alone."""

from __future__ import annotations

from signgen.option import Option
from signgen.units import Limits

PLACES = (
    "left", "right", "above", "below", "middle", "top-left", "top-right", "bottom-left", "bottom-right",
)  # fmt: skip
"""Beside, over and under the text, in the middle of the sign, in its corners."""

_FINISHES = ("groove", "recess", "raised", "stroke", "through")

_WHERE: tuple[Option, ...] = (
    Option(
        name="place", kind="word", metavar="PLACE", group="Pictures",
        help=f"Where it stands: {', '.join(PLACES)}, or X,Y of its middle.", otherwise="left of the text",
        words=("logo position", "where the logo goes", "beside the text"),
    ),
    Option(
        name="width", kind="length", metavar="LENGTH", group="Pictures", limits=Limits(least=2, greatest=3000),
        help="Its width; the height follows.", otherwise="by its place",
        words=("logo width",),
    ),
    Option(
        name="height", kind="length", metavar="LENGTH", group="Pictures", limits=Limits(least=2, greatest=3000),
        help="Its height; the width follows.", otherwise="by its place",
        words=("logo height", "logo size", "size of the logo"),
    ),
    Option(
        name="rotation", kind="angle", metavar="ANGLE", group="Pictures", limits=Limits(least=-360, greatest=360),
        help="Turned by this many degrees, counter-clockwise.", otherwise="0",
        words=("turn the logo", "rotate"),
    ),
)  # fmt: skip
_HOW: tuple[Option, ...] = (
    Option(
        name="finish", kind="choice", metavar="NAME", group="Pictures", choices=_FINISHES,
        help="How it is made.", otherwise="as the letters are",
        words=("engrave the logo", "carve the picture"),
    ),
    Option(
        name="depth", kind="length", metavar="LENGTH", group="Pictures", help="Its greatest depth.",
        otherwise="that of the letters, or what is usual for the finish",
        words=("how deep the logo",),
    ),
)  # fmt: skip

ART_KEYS: tuple[Option, ...] = (
    Option(
        name="file", kind="path", metavar="FILE", group="Pictures", help="The drawing: an SVG or a DXF file.",
        required=True,
    ),
    *_WHERE,
    Option(
        name="size", kind="choice", metavar="WORD", group="Pictures", choices=("fitted", "file"), default="fitted",
        help="fitted: by its place; file: as large as its file says, in the units that stand there.",
        words=("true size", "units of the file", "as large as drawn", "full scale"),
    ),
    *_HOW,
    Option(
        name="colours", kind="word", metavar="COLOURS", group="Pictures",
        help="Which colours are cut: dark, light, all, or colours with what becomes of each, as in "
        "'black=groove; red=recess 2; white=leave'.", otherwise="dark",
        words=("colours of the logo",),
    ),
)  # fmt: skip

PICTOGRAM_KEYS: tuple[Option, ...] = (
    Option(
        name="name", kind="word", metavar="NAME", group="Pictures",
        help="What it shows (signgen list pictograms); with no- before it in a ring and with a bar over it.",
        required=True,
    ),
    *_WHERE,
    *_HOW,
)  # fmt: skip

CODE_KEYS: tuple[Option, ...] = (
    Option(
        name="text", kind="word", metavar="TEXT", group="Pictures", required=True,
        help="What a telephone reads: a text or an address of the web.",
    ),
    _WHERE[0],
    Option(
        name="module", kind="length", metavar="LENGTH", group="Pictures", limits=Limits(least=0.5, greatest=50),
        help="Width of one small square of the code.", otherwise="as large as fits beside the text",
        words=("size of the code", "qr size"),
    ),
    Option(
        name="level", kind="choice", metavar="LEVEL", group="Pictures", choices=("L", "M", "Q", "H"), default="M",
        help="Error correction: L, M, Q or H; more of it makes more and smaller squares.",
        words=("error correction",),
    ),
    Option(
        name="finish", kind="choice", metavar="NAME", group="Pictures", choices=("groove", "recess", "dots"),
        help="How it is made: groove or dots (one plunge for each square) by the V-bit, recess by an end mill.",
        otherwise="recess with flat letters, else groove",
    ),
    _HOW[1],
)  # fmt: skip

OF_KIND: dict[str, tuple[Option, ...]] = {"art": ART_KEYS, "pictogram": PICTOGRAM_KEYS, "code": CODE_KEYS}
"""The keys of a table by the option that asks for such pictures; the first is what the option's bare value says."""

PICTURE_KINDS = frozenset(OF_KIND)


def _rows(name: str, metavar: str, help_text: str, words: tuple[str, ...], example: str) -> tuple[Option, ...]:
    """The option itself, and one for each key of its table."""
    main = Option(
        name=name, kind="pictures", metavar=metavar, group="Pictures", help=help_text, otherwise="none",
        table=OF_KIND[name], left_open="none", words=words, example=example,
        write=lambda spec: [picture.asked() for picture in spec.pictures if picture.kind == name] or None,
    )  # fmt: skip
    more = (
        Option(
            name=f"{name}-{key.name}", kind=key.kind, metavar=key.metavar, group=key.group, limits=key.limits,
            choices=key.choices, help=f"Of {name}: {key.help[0].lower()}{key.help[1:]}", otherwise=key.otherwise,
            needs=name, write=lambda spec: None, words=tuple(f"{name}: {each}" for each in key.words),
        )
        for key in OF_KIND[name][1:]
    )  # fmt: skip
    return (main, *more)


PICTURES: tuple[Option, ...] = (
    *_rows(
        "art", "FILE", "A drawing to cut beside the text: an SVG or a DXF file.",
        ("logo", "svg", "drawing", "picture", "image", "vector", "emblem", "own drawing"), "logo.svg",
    ),
    *_rows(
        "pictogram", "NAME", "A pictogram beside the text (signgen list pictograms); no-NAME is crossed out. It is no "
        "substitute for a regulated safety sign.",
        ("icon", "dog", "paw", "no dogs", "wheelchair", "no smoking"), "no-dog",
    ),
    *_rows(
        "code", "TEXT", "A QR code that telephones read, to be painted dark; read back from the simulated board.",
        ("qr", "qr code", "barcode", "scan", "link", "url", "web address", "website"), "HTTPS://QUINCE.EXAMPLE",
    ),
)  # fmt: skip
