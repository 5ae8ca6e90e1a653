"""A card for each face: its letters and figures, drawn from the outlines that are cut, and what they measure.

SVG and PNG are drawn from the same areas, labels too, so that both look alike on every computer.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from itertools import chain
from typing import TYPE_CHECKING

from msgspec import Struct, field

from signgen.lettering.areas import stroke_ratio
from signgen.lettering.catalogue import CatalogueFace, catalogue, stroke_catalogue
from signgen.lettering.face import Face
from signgen.lettering.faces import open_face
from signgen.lettering.wrap import wrapped
from signgen.numbers import figure
from signgen.pictures.plate import ACCENT, FAINT, INK, SOFT, area_path

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

WIDE_MM, EDGE_MM = 240.0, 12.0
LABEL_FACE = "atkinson-regular"
LABEL_MM, HERO_MM, LETTER_MM, PHRASE_MM = 2.6, 30.0, 5.6, 9.0
"""Cap heights of labels, of the large letters with their measures, of the alphabet and of the phrases."""
GUIDE_MM, GUIDE_LABEL_MM = 0.2, 32.0
CHORD_MM = 0.01
PX_PER_MM, FINER = 5, 3
"""Pixels of the PNG, and how many times finer it is drawn before it is shrunk, so that edges are smooth."""

PEN_RATIO = 1 / 12
"""Width of single lines over the height of capitals: light, as V-bits cut them."""

ALPHABETS = {
    "Latin": (
        "A B C D E F G H I J K L M N O P Q R S T U V W X Y Z",
        "a b c d e f g h i j k l m n o p q r s t u v w x y z",
    ),
    "Greek": ("Α Β Γ Δ Ε Ζ Η Θ Ι Κ Λ Μ Ν Ξ Ο Π Ρ Σ Τ Υ Φ Χ Ψ Ω", "α β γ δ ε ζ η θ ι κ λ μ ν ξ ο π ρ σ ς τ υ φ χ ψ ω"),
    "Cyrillic": (
        "А Б В Г Д Е Ж З И Й К Л М Н О П Р С Т У Ф Х Ц Ч Ш Щ Ъ Ы Ь Э Ю Я",
        "а б в г д е ж з и й к л м н о п р с т у ф х ц ч ш щ ъ ы ь э ю я",
    ),
    "Arabic": ("ا ب ت ث ج ح خ د ذ ر ز س ش ص ض ط ظ ع غ ف ق ك ل م ن ه و ي",),
    "Hebrew": ("א ב ג ד ה ו ז ח ט י כ ך ל מ ם נ ן ס ע פ ף צ ץ ק ר ש ת",),
    "Devanagari": ("अ आ इ ई उ ऊ ए ऐ ओ औ", "क ख ग घ च छ ज झ ट ठ ड ढ त थ द ध न प फ ब भ म य र ल व श ष स ह"),
}
FIGURES = ("0 1 2 3 4 5 6 7 8 9 & . , ' - / ( ) ! ? # № °", "٠ ١ ٢ ٣ ٤ ٥ ٦ ٧ ٨ ٩", "० १ २ ३ ४ ५ ६ ७ ८ ९")
PHRASES = {
    "Latin": "17 Larkspur Lane",
    "Greek": "Οδός Λεβάντας 17",
    "Cyrillic": "Васильковая улица 17",
    "Arabic": "زقاق الزنبق ١٧",
    "Hebrew": "רחוב הדרדר 17",
    "Devanagari": "गुलमोहर गली १७",
}


class _Card(Struct):
    """Marks in millimetres, Y down, in the order in which they cover each other."""

    areas: list[tuple[BaseGeometry, str]] = field(default_factory=list)
    guides: list[tuple[tuple[float, float], tuple[float, float]]] = field(default_factory=list)
    high_mm: float = EDGE_MM


def specimens(faces: Sequence[CatalogueFace]) -> Iterator[tuple[str, bytes]]:
    """The files of the cards by name, an SVG and a PNG for each face, as they are finished."""
    for entry in faces:
        card = _card(entry)
        yield f"{entry.name}.svg", _svg(entry, card).encode()
        yield f"{entry.name}.png", _png(card)


def sample_svg(name: str) -> str:
    """A few words of a face by its name in the catalogue, as SVG no larger than they are.

    Raises: AskError when there is no such face.
    """
    entry = next((each for each in (*catalogue(), *stroke_catalogue()) if each.name == name.casefold()), None)
    face = open_face(name)
    script = entry.scripts[0] if entry else "Latin"
    text = " ".join("".join(filter(face.has, word)) for word in PHRASES.get(script, PHRASES["Latin"]).split()).strip()
    card = _Card(high_mm=0.0)
    _line(card, face, text, PHRASE_MM, INK)
    return _svg_of(card, EDGE_MM + _width(face, text, PHRASE_MM) + EDGE_MM, text, name)


def figures_of(face: Face) -> str:
    """What a face measures, in words: all over the height of a capital, which is given in em."""
    words = [f"capitals {face.cap_height_em:.3f} em"]
    if face.x_height_em is not None:
        words.append(f"x {face.x_height_em / face.cap_height_em:.2f} of that")
    if face.digit_height_ratio is not None:
        words.append(f"figures {face.digit_height_ratio:.2f}")
    if stroke_ratio(face) is not None:
        words.append(f"stroke {stroke_ratio(face):.3f}")
    return ", ".join(words)


def _card(entry: CatalogueFace) -> _Card:
    face, label = open_face(entry.name), open_face(LABEL_FACE)
    card = _Card()
    _line(card, label, entry.name, 2 * LABEL_MM, INK)
    _line(card, label, f"{entry.label}: {entry.role}; {', '.join(entry.scripts)}; {entry.licence}", LABEL_MM, SOFT)
    _line(card, label, figures_of(face), LABEL_MM, SOFT)
    card.high_mm += 4
    _hero(card, entry, face, label)
    card.high_mm += 5
    rows = chain(*(ALPHABETS[script] for script in entry.scripts), FIGURES)
    for row in rows:
        letters = " ".join(part for part in row.split() if all(map(face.has, part)))
        for line in _fitted(face, letters, LETTER_MM):
            _line(card, face, line, LETTER_MM, INK)
    card.high_mm += 3
    for script in entry.scripts:
        phrase = "".join(part for part in PHRASES[script] if face.has(part))
        _line(card, face, phrase.strip(), PHRASE_MM, INK)
    card.high_mm += EDGE_MM / 2
    return card


def _hero(card: _Card, entry: CatalogueFace, face: Face, label: Face) -> None:
    """A few letters in large, with lines at the heights that are measured on them."""
    text = "".join(filter(face.has, "Hxg17"))
    if entry.scripts[0] != "Latin":
        word = "".join(filter(face.has, PHRASES[entry.scripts[0]].split()[0]))
        text = f"{word} {text}"
    room = WIDE_MM - 2 * EDGE_MM - GUIDE_LABEL_MM - LABEL_MM
    size = min(HERO_MM, HERO_MM * room / _width(face, text, HERO_MM))
    baseline = _line(card, face, text, size, INK)
    cap = face.cap_height_em
    heights = [("baseline", 0.0), (f"capitals {cap:.3f} em", 1.0)]
    if face.x_height_em is not None:
        heights.append((f"x {face.x_height_em / cap:.2f}", face.x_height_em / cap))
    if face.digit_height_ratio is not None:
        heights.append((f"figures {face.digit_height_ratio:.2f}", face.digit_height_ratio))
    left = WIDE_MM - EDGE_MM - GUIDE_LABEL_MM
    taken: list[float] = []
    for words, ratio in heights:
        y = baseline - ratio * size
        card.guides.append(((EDGE_MM, y), (left - LABEL_MM, y)))
        at = y + LABEL_MM / 2
        while any(abs(at - other) < 1.5 * LABEL_MM for other in taken):
            at += 1.5 * LABEL_MM
        taken.append(at)
        _words(card, label, words, LABEL_MM, ACCENT, left, at)


def _width(face: Face, text: str, cap_mm: float) -> float:
    """The ink of a text from left to right."""
    from signgen.lettering.layout import alike, measure_lines

    (line,) = measure_lines(alike([text], face, pen_mm=_pen_mm(face, cap_mm)))
    return line.width_mm(cap_mm)


def _pen_mm(face: Face, cap_mm: float) -> float:
    """How wide the lines are drawn of a face that has no outlines."""
    return PEN_RATIO * cap_mm if face.lines_of is not None else 0.0


def _fitted(face: Face, text: str, cap_mm: float) -> tuple[str, ...]:
    """The text in as many lines as the card's width asks for."""
    if not text:
        return ()
    return wrapped(text, WIDE_MM - 2 * EDGE_MM, lambda part: _width(face, part, cap_mm)) or (text,)


def _line(card: _Card, face: Face, text: str, cap_mm: float, ink: str) -> float:
    """Set a line below what the card holds; its baseline comes back."""
    baseline = card.high_mm + 1.25 * cap_mm
    bottom = _words(card, face, text, cap_mm, ink, EDGE_MM, baseline)
    card.high_mm = max(baseline + 0.35 * cap_mm, bottom)
    return baseline


def _words(card: _Card, face: Face, text: str, cap_mm: float, ink: str, left: float, baseline: float) -> float:
    """Set text with its ink from `left`; the lower end of the ink comes back."""
    from shapely.affinity import affine_transform

    from signgen.lettering.layout import set_lines

    if not text:
        return baseline
    lettering = set_lines([text], face, cap_height_mm=cap_mm, chord_mm=CHORD_MM, pen_mm=_pen_mm(face, cap_mm))
    x0, y0, _, _ = lettering.ink_bounds_mm
    down = baseline + lettering.baselines_mm[0]
    card.areas += [(affine_transform(letter.area, [1, 0, 0, -1, left - x0, down]), ink) for letter in lettering.letters]
    return down - y0


def _svg(entry: CatalogueFace, card: _Card) -> str:
    about = f"{entry.name}: {figures_of(open_face(entry.name))}"
    return _svg_of(card, WIDE_MM, f"Specimen: {entry.label}", about)


def _svg_of(card: _Card, wide_mm: float, title: str, about: str) -> str:
    import svgwrite

    wide, high = figure(wide_mm, 2), figure(card.high_mm, 2)
    svg = svgwrite.Drawing(size=(f"{wide}mm", f"{high}mm"), viewBox=f"0 0 {wide} {high}", debug=False)
    svg["role"] = "img"
    svg.set_desc(title=title, desc=about)
    svg.add(svg.rect((0, 0), (wide, high), fill="#fff"))
    for a, b in card.guides:
        svg.add(svg.line(_rounded(a), _rounded(b), stroke=FAINT, stroke_width=GUIDE_MM))
    for ink in dict.fromkeys(ink for _, ink in card.areas):
        data = "".join(area_path(area, 3) for area, own in card.areas if own == ink)
        svg.add(svg.path(d=data, fill=ink, fill_rule="evenodd"))
    return str(svg.tostring()) + "\n"


def _rounded(point: tuple[float, float]) -> tuple[float, float]:
    return round(point[0], 3), round(point[1], 3)


def _png(card: _Card) -> bytes:
    from PIL import Image, ImageDraw

    scale = PX_PER_MM * FINER
    size = (round(WIDE_MM * PX_PER_MM) * FINER, round(card.high_mm * PX_PER_MM) * FINER)
    image = Image.new("RGB", size, "#fff")
    pen = ImageDraw.Draw(image)
    for a, b in card.guides:
        pen.line([(x * scale, y * scale) for x, y in (a, b)], FAINT, round(GUIDE_MM * scale))
    for area, ink in card.areas:
        parts = getattr(area, "geoms", [area])
        rings = chain.from_iterable(
            [(part.exterior, ink), *((hole, "#fff") for hole in part.interiors)] for part in parts
        )
        # The larger first: whatever lies inside a ring comes after it.
        for ring, fill in sorted(rings, key=lambda each: -each[0].envelope.area):
            pen.polygon([(x * scale, y * scale) for x, y in ring.coords], fill)
    buffer = io.BytesIO()
    dots = PX_PER_MM * 25.4
    image.reduce(FINER).save(buffer, format="PNG", dpi=(dots, dots))
    return buffer.getvalue()
