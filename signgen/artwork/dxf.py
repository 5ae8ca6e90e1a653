"""A DXF drawing as what it shows: closed outlines filled by the even-odd rule, open lines with a pen.

ezdxf (an extra) reads the file: polylines with bulges, circles, arcs, ellipses, splines, lines, hatches, blocks. Loose
lines and arcs that meet end to end are one outline. Texts, pictures and solids are refused by name.
"""

from __future__ import annotations

import importlib
import io
from collections.abc import Iterator, Sequence
from typing import Any

from signgen.artwork.matrix import Matrix
from signgen.artwork.outline import CUBIC, LINE, QUADRATIC, outline_of
from signgen.artwork.painted import Painted
from signgen.artwork.path_data import Quad
from signgen.artwork.pen import Pen
from signgen.artwork.refused import refused
from signgen.errors import AskError
from signgen.messages import Message

MOST_ENTITIES, MOST_SEGMENTS, DEEPEST = 20_000, 100_000, 20
"""With all that blocks repeat; blocks in each other."""

MEET_RATIO = 1e-5
"""Ends that lie nearer to each other than this, over the drawing's extent, meet."""

LINE_WIDTH_MM = 0.25
"""Of an open line that has no weight: the format's own default. Source: DXF reference, line weights."""

FURTHEST = 1e7

_DRAWN = frozenset(("LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "POLYLINE", "SPLINE", "HATCH", "INSERT"))
_SKIPPED = frozenset(("POINT", "VIEWPORT", "ATTDEF"))
_DOWN: Matrix = (1, 0, 0, -1, 0, 0)
_BLACK = (0, 0, 0)

Part = list[tuple[int, Quad]]


def read_dxf(raw: bytes, file: str) -> tuple[tuple[Painted, ...], float | None]:
    """What is painted, Y down, and how many millimetres a unit is, None where the file does not say.

    Raises: AskError; it tells how to get the reader when it is not installed.
    """
    try:
        ezdxf: Any = importlib.import_module("ezdxf")
        paths: Any = importlib.import_module("ezdxf.path")
    except ImportError:
        raise refused(file, 0, Message("art.dxf_reader"), Message("art.install_dxf")) from None
    if raw.startswith(b"AutoCAD Binary DXF"):
        raise refused(file, 0, Message("art.dxf_binary"), Message("art.save_dxf"))
    try:
        document = ezdxf.read(io.StringIO(raw.decode("utf-8", "surrogateescape")))
        closed, open_parts = _parts(document.modelspace(), paths, file)
        code = int(document.header.get("$INSUNITS", 0))
    except AskError:
        raise
    except (ezdxf.DXFError, ValueError, TypeError, KeyError, IndexError, ArithmeticError, AttributeError):
        raise refused(file, 0, Message("art.dxf_broken"), Message("art.save_dxf")) from None
    except RecursionError:
        raise refused(file, 0, Message("art.too_deep", most=DEEPEST), Message("art.save_dxf")) from None
    unit = _MM_OF_UNIT.get(code)
    items = [_painted(closed, filled=True, width=0.0)] if closed else []
    width = LINE_WIDTH_MM / (unit or 1.0)
    items += [_painted(open_parts, filled=False, width=width)] if open_parts else []
    return tuple(items), unit


_MM_OF_UNIT = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 8: 2.54e-5, 9: 0.0254, 10: 914.4, 13: 0.001, 14: 100.0}
"""Of $INSUNITS. Source: DXF reference, header section: 1 inches, 2 feet, 4 millimetres, 5 centimetres, 6 metres,
8 microinches, 9 mils, 10 yards, 13 microns, 14 decimetres."""


def _parts(space: Any, paths: Any, file: str) -> tuple[list[Part], list[Part]]:
    """Closed and open parts, loose ones joined."""
    closed: list[Part] = []
    loose: list[Part] = []
    segments = 0
    for entity in _entities(space, file, 0, [0]):
        drawn = paths.from_hatch(entity) if entity.dxftype() == "HATCH" else [paths.make_path(entity)]
        for path in drawn:
            for one in path.sub_paths() if path.has_sub_paths else (path,):
                part = _segments(one)
                segments += len(part)
                if segments > MOST_SEGMENTS:
                    raise refused(file, 0, Message("art.draws_too_much", most=MOST_SEGMENTS), Message("art.simplify"))
                if part:
                    (closed if one.is_closed or entity.dxftype() == "HATCH" else loose).append(part)
    points = [abs(value) for part in (*closed, *loose) for _, quad in part for p in quad for value in (p.real, p.imag)]
    if not all(value < FURTHEST for value in points):
        raise refused(file, 0, Message("art.too_far"), Message("art.look_at_numbers"))
    more, left = _joined(loose, MEET_RATIO * max(points, default=1.0))
    return closed + more, left


def _entities(space: Any, file: str, depth: int, count: list[int]) -> Iterator[Any]:
    if depth > DEEPEST:
        raise refused(file, 0, Message("art.too_deep", most=DEEPEST), Message("art.save_dxf"))
    for entity in space:
        count[0] += 1
        name = entity.dxftype()
        if count[0] > MOST_ENTITIES or (name == "INSERT" and entity.mcount > MOST_ENTITIES):
            raise refused(file, 0, Message("art.draws_too_much", most=MOST_ENTITIES), Message("art.simplify"))
        if name in _SKIPPED or entity.dxf.get("invisible", 0):
            continue
        if name not in _DRAWN:
            raise refused(file, 0, Message("art.not_said", name=name[:40]), Message("art.text_to_paths"))
        if name == "INSERT":
            for copy in entity.multi_insert() if entity.mcount > 1 else (entity,):
                yield from _entities(copy.virtual_entities(), file, depth + 1, count)
        else:
            yield entity


def _segments(path: Any) -> Part:
    """Lines and curves of a path, as complex numbers; those of no length left out."""
    found: Part = []
    here = complex(path.start.x, path.start.y)
    for command in path.commands():
        end = complex(command.end.x, command.end.y)
        controls = [complex(point.x, point.y) for point in command[1:]]
        if len(controls) == 2:
            found.append((CUBIC, (here, controls[0], controls[1], end)))
        elif len(controls) == 1:
            found.append((QUADRATIC, (here, controls[0], controls[0], end)))
        elif end != here:
            found.append((LINE, (here, here, end, end)))
        here = end
    return found


def _joined(loose: Sequence[Part], apart: float) -> tuple[list[Part], list[Part]]:
    """Parts that meet end to end as one: those that come back to their start, and the others."""
    closed: list[Part] = []
    left: list[Part] = []
    ends: dict[tuple[int, int], list[int]] = {}
    step = max(apart, 1e-9) * 4

    def cells(point: complex) -> Iterator[tuple[int, int]]:
        x, y = round(point.real / step), round(point.imag / step)
        yield from ((x + i, y + j) for i in (-1, 0, 1) for j in (-1, 0, 1))

    for number, part in enumerate(loose):
        for point in (part[0][1][0], part[-1][1][3]):
            ends.setdefault((round(point.real / step), round(point.imag / step)), []).append(number)
    free = set(range(len(loose)))
    for number in range(len(loose)):
        if number not in free:
            continue
        free.discard(number)
        chain = list(loose[number])
        for _ in range(2):  # on from its end, then on from its start
            while abs(chain[-1][1][3] - chain[0][1][0]) > apart:
                end = chain[-1][1][3]
                near = {n for cell in cells(end) for n in ends.get(cell, ()) if n in free}
                found = next((n for n in sorted(near) if _beside(loose[n], end, apart)), None)
                if found is None:
                    break
                free.discard(found)
                part = loose[found]
                chain += part if abs(part[0][1][0] - end) <= apart else _turned(part)
            chain = _turned(chain)
        (closed if abs(chain[-1][1][3] - chain[0][1][0]) <= apart else left).append(chain)
    return closed, left


def _beside(part: Part, point: complex, apart: float) -> bool:
    return min(abs(part[0][1][0] - point), abs(part[-1][1][3] - point)) <= apart


def _turned(part: Part) -> Part:
    return [(kind, (quad[3], quad[2], quad[1], quad[0])) for kind, quad in reversed(part)]


def _painted(parts: Sequence[Part], *, filled: bool, width: float) -> Painted:
    kinds = [kind for part in parts for kind, _ in part]
    quads = [quad for part in parts for _, quad in part]
    begins, total = [], 0
    for part in parts:
        begins.append(total)
        total += len(part)
    outline = outline_of(kinds, quads, begins, [part[0][1][0] for part in parts], [filled] * len(parts))
    return Painted(
        outline=outline,
        matrix=_DOWN,
        how="evenodd" if filled else Pen(width=width, cap="round", join="round"),
        colour=_BLACK,
    )
