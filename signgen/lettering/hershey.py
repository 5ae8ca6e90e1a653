"""Single-stroke glyph data: centre lines of letters, as Dr. A. V. Hershey drew them, in the text format of James Hurt.

Each glyph is a record: five characters that number it, three with the count of its pairs, then the pairs. A pair is two
characters, each a coordinate as its distance from 'R', X to the right and Y down. The first pair holds the left and the
right side of the glyph's box; ' R' lifts the pen. Records may be broken over lines.

Source: the description that comes with the data (fonts_open/hershey/LICENSE.txt names its makers); capitals stand from
Y 9 at the baseline up to Y -12, that is 21 units high.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from msgspec import Struct

from signgen.errors import AskError
from signgen.messages import Message

CAP_UNITS, BASELINE_UNITS = 21, 9
FIRST_CODE = 32
"""The files hold their glyphs in the order of ASCII, from the space on."""

MOST_BYTES = 1_000_000

Point = tuple[float, float]


class StrokeGlyph(Struct, frozen=True, kw_only=True):
    """Lines with Y up from the baseline and X from the left side of the glyph's box, in units; capitals are 21."""

    advance: float
    lines: tuple[tuple[Point, ...], ...]


@lru_cache(maxsize=16)
def read_glyphs(path: Path) -> tuple[StrokeGlyph, ...]:
    """Every glyph of a file in its order. Raises: AskError with the place for a file that is no such data."""
    try:
        raw = path.read_bytes()[: MOST_BYTES + 1]
        text = raw.decode("ascii")
    except (OSError, UnicodeDecodeError) as error:
        raise AskError.at(
            "font",
            Message("lettering.cannot_read_glyph_data", path=path, error=str(error)),
            Message("lettering.use_another_face"),
        ) from None
    if len(raw) > MOST_BYTES:
        raise AskError.at(
            "font", Message("lettering.far_too_long_glyph_data", path=path), Message("lettering.use_another_face")
        )
    rows = iter(enumerate(text.splitlines(), start=1))
    glyphs = []
    for number, row in rows:
        if not row.strip():
            continue
        count = row[5:8].strip()
        if not count.isdigit() or int(count) < 1:
            raise _broken(path, number)
        data = row[8:]
        while len(data) < 2 * int(count):
            number, row = next(rows, (number, ""))
            if not row:
                raise _broken(path, number)
            data += row
        glyphs.append(_glyph(data[: 2 * int(count)]))
    if not glyphs:
        raise _broken(path, 1)
    return tuple(glyphs)


def _glyph(data: str) -> StrokeGlyph:
    pairs = [data[i : i + 2] for i in range(0, len(data), 2)]
    left, right = (ord(letter) - ord("R") for letter in pairs[0])
    lines: list[list[Point]] = [[]]
    for pair in pairs[1:]:
        if pair == " R":
            lines.append([])
        else:
            x, y = (ord(letter) - ord("R") for letter in pair)
            lines[-1].append((float(x - left), float(BASELINE_UNITS - y)))
    return StrokeGlyph(advance=float(right - left), lines=tuple(tuple(line) for line in lines if line))


def _broken(path: Path, line: int) -> AskError:
    return AskError.at(
        "font",
        Message("lettering.no_glyph_record", path=path, line=line),
        Message("lettering.file_damaged_use_another_face"),
    )
