"""Words and files that somebody careless or somebody bad might give, by seed."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence
from pathlib import Path

from signgen.lettering.catalogue import catalogue
from signgen.spec.keys import KEYS

ROOT = Path(__file__).parents[2]
SIGN = ("--size", "90x60", "--thickness", "6", "--out", "out", "--quiet")

STRANGE = (
    "", " ", "0", "-0", "-1", "1e-320", "1e400", "nan", "inf", "-inf", "9" * 400, "0x10", "1/0", "1/3in", "½",
    "٣", "1,5",
    "x", "3x", "x3", "1x1x1", "220x140", "90", "6", "12mm", "~nobody/x", "~", "/", ".", "..", "/dev/null", "/dev/zero",
    "a" * 300, "é" * 200, "\u202e17", "\ud800", "\n", "a\tb", "%s%n", "{0}", "{x.__class__}", "<script>", "--",
    "-", "#2",
    "path:", "path:/dev/zero", "path:out", "at:", "at:1,1", "at:1,1;" * 50, "row", "row:3", "ring", "corners",
    "M5", "#8",
    "true", "false", "none", "groove", "through", "raised", "recess", "stroke", "atkinson", "hershey-sans",
    "1e3", "１７",
)  # fmt: skip
"""Values that are wrong for most options and right for some."""

TOML_VALUES = (
    '""', "0", "-1", "1e-320", "inf", "nan", "true", "[]", "[[[[1]]]]", "{}", "{a = {b = 1}}", "1979-05-27",
    "07:32:00",
    '"\\u0000"', "'''\n\n'''", "[1, 2]", "[nan, 1]", "0xffffffffffffffffffff", "9" * 250, '["a", 1]', "[{}]",
    '"~nobody/x"',
)  # fmt: skip

PIECES = (
    b"G0", b"G1", b"G2", b"G3", b"G83", b"G91", b"G20", b"G41", b"G92", b"G53", b"G10 L2 P1", b"M6 T2",
    b"M98 P1", b"O100",
    b"X1e9", b"X-", b"Z-999999", b"I0 J0", b"R0", b"R-1e-9", b"F0", b"F1e99", b"S0", b"#1=[1/0]", b"#[#1]=1",
    b"[" * 300,
    b"atan[1]/[0]", b"%", b"\x00", b"\xff\xfe", b"(((", b"/", b"N" + b"9" * 300, b"G5.1", b"L99999", b"Q0", b"P1e9",
)  # fmt: skip


def mutated(raw: bytes, rng: random.Random, pieces: Sequence[bytes] = ()) -> bytes:
    """A file with a few bytes, lines or stretches changed, doubled, taken away or put in."""
    found = bytearray(raw)
    for _ in range(rng.choice((1, 1, 2, 4, 16))):
        at = rng.randrange(len(found) + 1)
        upto = min(len(found), at + rng.choice((1, 2, 8, 100, 4000)))
        match rng.randrange(6):
            case 0:
                found[at:upto] = rng.randbytes(upto - at)
            case 1:
                del found[at:upto]
            case 2:
                found[at:at] = found[at:upto] * rng.choice((1, 2, 50))
            case 3:
                found[at:at] = rng.choice(pieces or (b"\x00", b"\xff" * 4))
            case 4:
                found[at : at + 1] = bytes((rng.randrange(256),))
            case _:
                number = rng.choice((b"1e-320", b"-1", b"0", b"9" * 60, b"nan", b"1e308", b".", b"-"))
                found[at : at + rng.randrange(5)] = number
    return bytes(found)


NUMBERS = (
    "1e-320", "-1", "0", "9" * 60, "1e308", ".5", "-0.0", "1e9", "0.0001", "360", "12mm", "1/3in", "3.", "+7",
    "1_0", "",
)  # fmt: skip
_NUMBER = re.compile(r"(?<![\w.])[-+]?\d+(?:\.\d+)?")


def miswritten(raw: bytes, rng: random.Random, pieces: Sequence[bytes] = ()) -> bytes:
    """A text in which a few numbers, words or lines are others: still a text of its kind, most often. One in eight is
    `mutated` instead."""
    if not rng.randrange(8):
        return mutated(raw, rng, pieces)
    lines = raw.decode("utf-8", "replace").split("\n")
    for _ in range(rng.choice((1, 1, 2, 5))):
        at = rng.randrange(len(lines))
        match rng.randrange(5):
            case 0 if len(lines) > 3:
                del lines[at]
            case 1:
                lines.insert(rng.randrange(len(lines) + 1), lines[at])
            case 2 if pieces:
                lines.insert(at, rng.choice(pieces).decode("latin-1"))
            case _:
                found = list(_NUMBER.finditer(lines[at]))
                if found:
                    one = rng.choice(found)
                    lines[at] = lines[at][: one.start()] + rng.choice(NUMBERS) + lines[at][one.end() :]
    return "\n".join(lines).encode("utf-8", "replace")


def words(rng: random.Random, folder: Path) -> list[str]:
    """A make with options of any kind."""
    keys = rng.sample(KEYS, rng.choice((1, 1, 2, 3)))
    given = [word for key in keys for word in (f"--{key.name}", rng.choice((*STRANGE, *map(str, key.choices))))]
    return ["make", rng.choice(("17", "A", *STRANGE)), *SIGN, *given]


def sign_file(rng: random.Random, folder: Path) -> list[str]:
    if rng.random() < 0.5:
        raw = miswritten(rng.choice(sorted((ROOT / "examples").glob("*.toml"))).read_bytes(), rng)
    else:
        rows = [f"{rng.choice(KEYS).name} = {rng.choice(TOML_VALUES)}" for _ in range(rng.randrange(1, 4))]
        raw = ('text = "A"\nsize = "90x60"\nthickness = 6\n' + "\n".join(rows)).encode()
    (folder / "sign.toml").write_bytes(raw)
    return ["make", "--from", "sign.toml", "--out", "out", "--quiet"]


def shop_file(rng: random.Random, folder: Path) -> list[str]:
    data = ROOT / "signgen" / "shop" / "data"
    raw = miswritten((data / rng.choice(("tools.toml", "materials.toml", "machines.toml"))).read_bytes(), rng)
    (folder / "shop.toml").write_bytes(raw)
    if rng.random() < 0.5:
        return ["feeds", "end-mill-6", "mdf", "--shop", "shop.toml"]
    return ["make", "1", *SIGN, "--shop", "shop.toml"]


def listed(rng: random.Random, folder: Path) -> list[str]:
    rows = "name,text,size,font\n" + "".join(f"{n},{rng.choice(STRANGE)},90x60,\n" for n in range(2))
    (folder / "list.csv").write_bytes(
        miswritten(rows.encode("utf-8", "replace"), rng, (b'"', b",", b"\r", b"\n\n", b";"))
    )
    # Bad rows only: a good one would be made by another process.
    return ["batch", "list.csv", "--thickness", "-1", "--out", "out", "--workers", "1", "--ignore-columns"]


def font(rng: random.Random, folder: Path) -> list[str]:
    (folder / "face.ttf").write_bytes(mutated(rng.choice(catalogue()).path.read_bytes(), rng))
    return ["make", rng.choice(("17", "Ag", "ffi")), *SIGN, "--font", "face.ttf"]


SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60" width="90mm"><style>.a{fill:none}</style>'
    '<g transform="translate(1 2) rotate(0.1)"><path class="a" style="fill:red" d="M5 0H85a5 5 0 0 1 5 5V55q0 5 -5 5'
    'c-20 1 -60 0 -80 0a5 5 0 0 1 -5 -5V5a5 5 0 0 1 5 -5z"/></g></svg>'
)
SVG_PIECES = (
    b'transform="scale(1e300)"',
    b"<g>" * 90,
    b"A1e9 1 0 0 1 1 1",
    b"display:none",
    b"&#0;",
    b"<!--",
    b"M0 0z",
)


def svg(rng: random.Random, folder: Path) -> list[str]:
    (folder / "edge.svg").write_bytes(miswritten(SVG.encode(), rng, SVG_PIECES))
    return ["make", "1", *SIGN, "--border", "path:edge.svg", "--path-stretch", "true"]


def program(rng: random.Random, folder: Path) -> list[str]:
    found = sorted((ROOT / "tests" / "golden" / "heron-weir-9").glob("*.nc"))
    (folder / "p.nc").write_bytes(miswritten(rng.choice(found).read_bytes(), rng, PIECES))
    tool = rng.choice(("end-mill 6", "v-bit 90", "drill 3") if rng.randrange(6) else STRANGE)
    stock = "250x170x12" if rng.randrange(6) else rng.choice(STRANGE)
    return ["check", "p.nc", "--stock", stock, "--tool", tool, "--cell", "0.5"]


def other(rng: random.Random, folder: Path) -> list[str]:
    one, two = rng.choice(STRANGE), rng.choice(STRANGE)
    return rng.choice((["feeds", one, two], ["explain", one], ["list", one], ["check", one], ["make", one], [one, two]))


ENTRIES: tuple[Callable[[random.Random, Path], list[str]], ...] = (
    words, sign_file, shop_file, listed, font, svg, program, other,
)  # fmt: skip
"""Each writes its files into a folder and gives the words of a command there."""
