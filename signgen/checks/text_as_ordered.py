"""C125: the letters that are cut are those that were ordered."""

from __future__ import annotations

import unicodedata
from collections import Counter
from collections.abc import Iterator

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.ideal import BODY
from signgen.checks.places import at, beside_walls, deepest_line, feature_at, nearest_line
from signgen.drawing.drawing import Drawing, OrderedPicture
from signgen.features.feature import Feature
from signgen.features.groove import Stroke
from signgen.features.raised import Raised
from signgen.geometry.components import connected
from signgen.geometry.distance import IntArray
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm2, Num, Sentence
from signgen.tolerances import CHECK_MM

CUT_MM = 0.05
"""A place that is lower than the face by more has been cut."""

THERE_RATIO, WHOLE_RATIO, ROUND_RATIO = 0.5, 0.97, 0.8
"""Shares of a letter's area that must be made for it to be there, to be there as a whole, and to be there as a whole
when a round cutter makes it, which leaves corners standing (C126 says how much, and what it must reach)."""

OUTLINE_RATIO = 0.85
"""Share of an engraved letter's outline that must be cut, whatever the bit's tip leaves uncut: with less it is another
letter. The drawing refuses from 0.9 down; the rest is for cells."""

ALIKE_RATIO = 0.75
"""Common area over joint area from which on two shapes are the same letter: those of one face differ by more, but for
pairs like I and l."""

LEAST_EXTRA_MM2 = 0.5
"""Smaller patches outside every letter are scratches, which are other checks' matter."""

AREA_RATIO, BRIDGED_RATIO = 0.005, 0.5
"""How far a picture's area as drawn may be from what its file says: chords of curves at two sizes differ by less; bars
of wood that hold its insides take more."""

MOST_CELLS = 400_000
"""Of one shape when it is compared; larger ones are thinned out first."""

UNSEEN = ("Cc", "Cf", "Zs")
BRAILLE_BLANK = "\u2800"
"""Categories of characters that leave no ink, and one that leaves none although it is a sign."""

Mask = NDArray[np.bool_]
REMEDY = Message("text_as_ordered.make_programs_again_look_whether")


class OrderedShape(Struct, frozen=True, kw_only=True):
    """Cells of something, cropped to its bounds: mask (h, w), and its text where it is a letter."""

    text: str
    mask: Mask


class OrderedLetter(Struct, frozen=True, kw_only=True):
    """A letter of the drawing: the cells by which it is judged, the share of them that is as it should be (cut, or of a
    raised letter standing), and the share that makes it whole. `of_outline`: the share that is cut of what a sharp bit
    would cut."""

    name: str
    called: Sentence
    text: str
    area: Polygon | MultiPolygon
    cells: IntArray
    share: float
    whole_ratio: float
    is_raised: bool = False
    of_outline: float = 1.0

    @property
    def is_whole(self) -> bool:
        return self.share >= self.whole_ratio and self.of_outline >= OUTLINE_RATIO


class TextAsOrdered:
    code = "C125"
    name = "text_as_ordered"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
First, the drawing must hold every character of the lines that were ordered, and no other. Then the areas that are cut
on the virtual board are laid over the letters: of each letter half must be cut for it to be there and 97 % to be
whole (80 % of a flat letter, whose corners a round cutter leaves; of a raised letter 97 % must stand), and nothing
larger than 0.5 mm2 may be cut where no letter, hole or edge is. What the flat tip of a V-bit is too wide for counts as
well: 85 % of what a sharp bit would cut inside a letter's outline must be cut. What is cut at a wrong place or in a
letter's stead is compared with the sign's letters, so that it can be named.

Of a picture, what is drawn must have the area that its file says (to 0.5 %), and what is made is judged as a letter is.

A failure means that letters are missing, doubled, or those of another sign.

What to do: make the programs again; look whether they belong to this sign.

Least error seen: 3 % of a letter's area, an extra patch of 0.5 mm2; C108, C109 and C116 see less."""

    def run(self, case: Case) -> CheckResult:
        findings = list(_against_the_order(case))
        findings += against_the_files(case.drawing)
        letters = [*_letters(case)] if case.boards else []
        if not letters:
            return verdict(
                self,
                findings,
                Message("text_as_ordered.no_letters_drawn") if case.boards else Message("checks.nothing_cut"),
            )
        gone = _gone(case)
        shapes = _shapes(case, letters)
        extra = list(_extras(case, gone, shapes))
        findings += [_not_whole(case, letter, gone, shapes) for letter in letters if not letter.is_whole]
        findings += extra
        pictured = [letter for letter in letters if _is_pictured(case, letter.name)]
        letters = [letter for letter in letters if letter not in pictured]
        if pictured and not letters:
            return verdict(self, findings, _said_of(pictured))
        there = sum(letter.is_whole for letter in letters)
        least = min(min(letter.share, letter.of_outline) for letter in letters)
        ordered = " / ".join(line.text for line in case.drawing.lines)
        of_text = Message("text_as_ordered.of_text", text=ordered) if ordered else ""
        made = "stand" if all(letter.is_raised for letter in letters) else "are_cut"
        told = Message(
            f"text_as_ordered.letters_{made}",
            there=there,
            count=len(letters),
            of_text=of_text,
            least=Num(100 * least, 1),
            shapes=len(extra),
        )
        if pictured:
            told = Message("art.letters_and_pictures", letters=told, pictures=_said_of(pictured))
        return verdict(self, findings, told)


def _against_the_order(case: Case) -> Iterator[Finding]:
    """Characters that were ordered and not drawn, or the other way round. Sheets of several signs have no lines."""
    if not case.drawing.lines:
        return
    ordered = _characters(line.text for line in case.drawing.lines)
    drawn = _characters(letter.text for letter in case.drawing.letters)
    for what, more in (
        ("ordered_not_drawn", ordered - drawn),
        ("drawn_not_ordered", drawn - ordered),
    ):
        if more:
            said = tuple(f"'{character}'" for character in sorted(more.elements()))
            yield Finding(
                message=Message(f"text_as_ordered.order.{what}", characters=said),
                remedy=REMEDY,
            )


def against_the_files(drawing: Drawing) -> Iterator[Finding]:
    """Pictures whose areas as drawn are not those that their files say, reckoned at the files' own sizes."""
    for picture in drawing.pictures:
        own = [each for each in drawing.features if each.source == picture.source and _is_of(each.name, picture)]
        drawn = sum(each.footprint.area for each in own if not isinstance(each, Stroke))
        most = picture.area_mm2 * (1 + AREA_RATIO)
        least = picture.area_mm2 * (1 - (BRIDGED_RATIO if picture.has_bridges else AREA_RATIO))
        if not own or not least - LEAST_EXTRA_MM2 <= drawn <= most + LEAST_EXTRA_MM2:
            message = Message("art.other_area", name=picture.name, drawn=Mm2(drawn, 1), said=Mm2(picture.area_mm2, 1))
            yield Finding(message=message, remedy=REMEDY)


def _is_of(name: str, picture: OrderedPicture) -> bool:
    return name == picture.name or name.startswith(f"{picture.name} part ")


def _is_pictured(case: Case, name: str) -> bool:
    return any(_is_of(name, picture) for picture in case.drawing.pictures)


def _said_of(pictured: list[OrderedLetter]) -> Message:
    least = min(min(each.share, each.of_outline) for each in pictured)
    return Message("art.pictures_made", least=Num(100 * least, 1))


def _characters(texts: Iterator[str]) -> Counter[str]:
    """What can be seen of some texts, letters and marks one by one."""
    whole = unicodedata.normalize("NFKD", "".join(texts))
    return Counter(c for c in whole if not c.isspace() and unicodedata.category(c) not in UNSEEN and c != BRAILLE_BLANK)


def _letters(case: Case) -> Iterator[OrderedLetter]:
    """Every letter, and whatever else stands in a sunk floor."""
    heights, top, grid = case.boards[-1].z_mm.ravel(), case.stock.thickness_mm, case.ideal.grid
    for feature in case.drawing.upward:
        if feature.takes and (feature.is_letter or _is_pictured(case, feature.name)):
            yield _cut_letter(case, feature)
        elif not feature.takes and isinstance(feature, Raised):
            cells = cells_inside(feature.footprint.buffer(-CHECK_MM), grid)
            yield OrderedLetter(
                name=feature.name, called=feature.called, text=feature.text,
                area=feature.footprint, cells=cells, is_raised=True,
                share=_share(heights[cells] >= np.float32(top - CUT_MM)), whole_ratio=WHOLE_RATIO,
            )  # fmt: skip


def _cut_letter(case: Case, letter: Feature) -> OrderedLetter:
    """By the cells that the bit can cut to more than CUT_MM, and by those that a sharp one could; where a round cutter
    leaves corners, by the cells that lie on the floor."""
    drawn, top = case.ideal.of(letter), case.stock.thickness_mm
    heights = case.boards[-1].z_mm.ravel()[drawn.cell]
    is_round = bool(np.isnan(drawn.least_mm).any())
    floor = np.where(np.isnan(drawn.least_mm), top - np.minimum(drawn.most_mm, top) + CUT_MM, top - CUT_MM)
    cut = (heights <= floor.astype(np.float32)) if is_round else heights < floor.astype(np.float32)
    wanted = np.isnan(drawn.least_mm) | (drawn.least_mm > 2 * CUT_MM)
    return OrderedLetter(
        name=letter.name, called=letter.called, text=letter.text, area=letter.footprint, cells=drawn.cell[wanted],
        share=_share(cut[wanted]), whole_ratio=ROUND_RATIO if is_round else WHOLE_RATIO,
        of_outline=1.0 if is_round else _share(cut[drawn.most_mm > 2 * CUT_MM]),
    )  # fmt: skip


def _gone(case: Case) -> Mask:
    """(ny, nx) what is cut, less what lies beside a steep wall that is where the job's tolerance lets it be."""
    deep = case.stock.thickness_mm - case.boards[-1].z_mm.astype(np.float64)
    gone: Mask = deep > CUT_MM
    face = np.flatnonzero(gone.ravel() & (case.ideal.zone == BODY))
    gone.ravel()[face[beside_walls(case, face, deep.ravel()[face])]] = False
    return gone


def _share(right: Mask) -> float:
    return float(right.mean()) if len(right) else 1.0


def _shapes(case: Case, letters: list[OrderedLetter]) -> list[OrderedShape]:
    """One of each text that is cut, as drawn."""
    shapes: dict[str, OrderedShape] = {}
    for letter in letters:
        if letter.text and letter.text not in shapes and not letter.is_raised:
            cells = cells_inside(letter.area, case.ideal.grid)
            if len(cells):
                shapes[letter.text] = OrderedShape(text=letter.text, mask=_cropped(case, cells))
    return list(shapes.values())


def _cropped(case: Case, cells: IntArray) -> Mask:
    row, column = np.divmod(cells, case.ideal.grid.nx)
    mask = np.zeros((int(np.ptp(row)) + 1, int(np.ptp(column)) + 1), np.bool_)
    mask[row - row.min(), column - column.min()] = True
    step = int(np.ceil(np.sqrt(mask.size / MOST_CELLS)))
    return mask[::step, ::step]


def _not_whole(case: Case, letter: OrderedLetter, gone: Mask, shapes: list[OrderedShape]) -> Finding:
    grid, share = case.ideal.grid, letter.share
    x0, y0, x1, y1 = letter.area.bounds
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    columns = slice(max(0, int((x0 - grid.x0_mm) / grid.cell_mm)), int((x1 - grid.x0_mm) / grid.cell_mm) + 2)
    rows = slice(max(0, int((y0 - grid.y0_mm) / grid.cell_mm)), int((y1 - grid.y0_mm) / grid.cell_mm) + 2)
    here = gone[rows, columns]
    seen = ""
    if share < THERE_RATIO and here.any() and not letter.is_raised:
        inside = np.flatnonzero(here)
        row, column = np.divmod(inside, here.shape[1])
        seen = _recognised(
            _cropped(case, (row + rows.start) * grid.nx + column + columns.start), shapes, but=letter.text
        )
    made = "stands" if letter.is_raised else "is_cut"
    message = Message(f"text_as_ordered.missing.{made}", letter=letter.called, share=Num(100 * share, 0))
    if seen:
        message = Message("text_as_ordered.where_drawn_what_cut_looks", letter=letter.called, seen=seen)
    elif share >= letter.whole_ratio:
        message = Message(
            "text_as_ordered.cut_outline_bit_s_tip", letter=letter.called, share=Num(100 * letter.of_outline, 0)
        )
    elif share >= THERE_RATIO:
        message = Message(f"text_as_ordered.in_part.{made}", letter=letter.called, share=Num(100 * share, 1))
    file, line = nearest_line(case, *middle)
    return Finding(message=message, file=file, line=line, place_mm=middle, remedy=REMEDY)


def _extras(case: Case, gone: Mask, shapes: list[OrderedShape]) -> Iterator[Finding]:
    """What is cut into the face where nothing is drawn, each piece by itself, the largest first."""
    zone = case.ideal.zone.reshape(gone.shape)
    if not (gone & (zone == BODY)).any():
        return
    # By the number of a feature; what is below 0 takes the last.
    engraved = np.array([not each.feature.rim_mm for each in case.ideal.drawn] + [False] * 4)
    # What a stray letter shares with a drawn one belongs to it as well.
    pieces = connected(gone & ((zone == BODY) | engraved[zone]))
    cell = case.ideal.grid.cell_mm
    outside = _counted(pieces.start, pieces.stop, zone.ravel() == BODY)
    area = np.bincount(pieces.piece, weights=outside, minlength=pieces.count) * cell**2
    for piece in np.argsort(-area):
        if area[piece] < LEAST_EXTRA_MM2:
            return
        own = np.flatnonzero(pieces.piece == piece)
        cells = np.concatenate(
            [np.arange(a, b) for a, b in zip(pieces.start[own].tolist(), pieces.stop[own].tolist(), strict=True)]
        )
        stray = cells[zone.ravel()[cells] == BODY]
        x, y = (float(value) for value in case.ideal.grid.centres_mm(stray[len(stray) // 2 :][:1])[0])
        seen = _recognised(_cropped(case, cells), shapes)
        what = (
            Message("text_as_ordered.that_nobody_ordered", seen=seen)
            if seen
            else Message("text_as_ordered.shape_that_no_letter", area=Mm2(area[piece], 1))
        )
        file, line = deepest_line(case, x, y)
        yield Finding(
            message=Message("text_as_ordered.extra", what=what, place=at(x, y), where=feature_at(case.drawing, x, y)),
            file=file,
            line=line,
            place_mm=(x, y),
            remedy=REMEDY,
        )


def _counted(start: IntArray, stop: IntArray, flat: Mask) -> IntArray:
    """(runs,) how many cells of each run are in a mask."""
    total = np.concatenate([[0], np.cumsum(flat)])
    counted: IntArray = total[stop] - total[start]
    return counted


def _recognised(mask: Mask, shapes: list[OrderedShape], but: str = "") -> str:
    """The text of the letter that a shape is most like, by common over joint area with their lower left corners and
    their middles laid over each other; '' when it is like none."""
    best, found = ALIKE_RATIO, ""
    for shape in shapes:
        if shape.text == but:
            continue
        alike = _alike(mask, shape.mask)
        if alike > best:
            best, found = alike, shape.text
    return found


def _alike(one: Mask, other: Mask) -> float:
    h, w = max(one.shape[0], other.shape[0]), max(one.shape[1], other.shape[1])
    if min(one.size, other.size) < ALIKE_RATIO * ALIKE_RATIO * h * w:
        return 0.0
    best = 0.0
    for share in (0.0, 0.5):
        laid = []
        for mask in (one, other):
            field = np.zeros((h, w), np.bool_)
            row, column = int(share * (h - mask.shape[0])), int(share * (w - mask.shape[1]))
            field[row : row + mask.shape[0], column : column + mask.shape[1]] = mask
            laid.append(field)
        best = max(best, float((laid[0] & laid[1]).sum() / max((laid[0] | laid[1]).sum(), 1)))
    return best
