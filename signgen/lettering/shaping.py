"""A line of text as glyphs in their places, by HarfBuzz: kerning, ligatures, joined scripts, both directions.

The line is cut into runs of one direction and one script first, for HarfBuzz takes a run as it is told: left to
guess, it reverses the digits in right-to-left text.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache

import uharfbuzz
from msgspec import Struct

from signgen.errors import AskError, Problem
from signgen.lettering import bidi
from signgen.lettering.face import Face
from signgen.lettering.faces import faces_with
from signgen.lettering.fallback import faces_of
from signgen.lettering.heights import LANGUAGE
from signgen.messages import Message

CURSIVE_SCRIPTS = frozenset(("Adlm", "Arab", "Mand", "Mong", "Nkoo", "Phag", "Rohg", "Syrc"))
"""Scripts whose letters join, so that space between them would break words.

Source: CSS Text Module Level 3, section 8.2.1, "Cursive scripts" (list from memory; Adlam joins likewise).
"""


class ShapedGlyph(Struct, frozen=True, kw_only=True):
    """One glyph: its origin (x, y) from the line's start on the baseline, in em of the line's face, without letter
    spacing.

    `start` and `end` are the characters that its cluster stands for; glyphs of one cluster (a letter and its
    marks) share them. `gaps` counts the places of letter spacing to its left. `face` is the glyph's own, which differs
    from the line's where that lacks the character; its capitals are as high. `pen_em` and `advance_em`: where on the
    baseline the glyph's room begins, and how long it is.
    """

    glyph: int
    face: Face
    x_em: float
    y_em: float
    pen_em: float
    advance_em: float
    start: int
    end: int
    gaps: int


class ShapedLine(Struct, frozen=True, kw_only=True):
    """Glyphs from left to right; `advance_em` is the line's whole advance, `gaps` all its places of letter spacing."""

    text: str
    glyphs: tuple[ShapedGlyph, ...]
    advance_em: float
    gaps: int


class _Run(Struct, frozen=True, kw_only=True):
    start: int
    end: int
    right_to_left: bool
    script: str | None
    face: Face


def shape(face: Face, text: str, *, spaced: bool = False, fallback: bool = False) -> ShapedLine:
    """One line shaped, with kerning, ligatures, marks and lining figures.

    `spaced`: letter spacing will be added, so letters stay apart instead of forming ligatures (common practice).
    `fallback`: what the face lacks is set in a face of the catalogue that has it.

    Raises: AskError naming every character that the face lacks and the catalogue faces that have it.
    """
    check_characters(face, (text,), fallback=fallback)
    return _shaped(face, text, spaced, fallback)


def check_characters(face: Face, lines: Sequence[str], *, fallback: bool = False) -> None:
    """Nothing when the face, with `fallback` and those of the catalogue, can set the lines.

    Raises: AskError with a problem for each group of characters that the same faces have.
    """
    missing: dict[str, None] = {}
    for text in lines:
        if any(0xD800 <= ord(character) <= 0xDFFF for character in text):
            raise AskError.at(
                "text", Message("lettering.holds_bytes_no_characters", text=text), Message("lettering.type_again_utf_8")
            )
        if any(unicodedata.category(character) == "Cc" for character in text):
            what = Message("lettering.holds_line_break_tab_another", text=text)
            raise AskError.at("text", what, Message("lettering.give_each_line_text_own"))
        missing.update(dict.fromkeys(_missing(face, text, fallback)))
    if missing:
        raise AskError(_missing_problems(face, tuple(missing)))


@lru_cache(maxsize=4096)
def _missing(face: Face, text: str, fallback: bool) -> tuple[str, ...]:
    """Characters for which the shaped line has only the glyph that says "not there"."""
    found: dict[str, None] = {}
    for glyph in sorted(_shaped(face, text, False, fallback).glyphs, key=lambda glyph: glyph.start):
        if glyph.glyph == 0:
            cluster = text[glyph.start : glyph.end]
            absent = [each for each in cluster if not glyph.face.has(each) and not _is_unseen(each)]
            found.update(dict.fromkeys(absent or cluster))
    return tuple(found)


def _missing_problems(face: Face, missing: Sequence[str]) -> Iterable[Problem]:
    groups: dict[tuple[str, ...], list[str]] = {}
    for character in missing:
        groups.setdefault(faces_with(character), []).append(character)
    for names, characters in groups.items():
        yield Problem(
            where="text",
            what=Message("lettering.lacks_characters", name=face.name, characters=tuple(map(described, characters))),
            remedy=Message("lettering.faces_font_fallback_they_lend", count=len(characters), names=tuple(names))
            if names
            else Message("lettering.no_face_catalogue_font_takes"),
        )


def described(character: str) -> str:
    """A character for a message: itself when it shows, its code, its name."""
    name = unicodedata.name(character, "")
    shown = f"{character!r} " if character.isprintable() else ""
    return f"{shown}(U+{ord(character):04X}{' ' + name if name else ''})"


def _is_unseen(character: str) -> bool:
    """Whether a character never shows ink: spaces, direction marks, joiners, variation selectors, blank braille."""
    return (
        unicodedata.category(character) in ("Zs", "Zl", "Zp", "Cf", "Cc")
        or 0xFE00 <= ord(character) <= 0xFE0F
        or 0xE0100 <= ord(character) <= 0xE01EF
        or character in "\u034f\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0"
    )


def has_ink_expected(text: str) -> bool:
    """Whether any of the characters should show."""
    return not all(map(_is_unseen, text))


@lru_cache(maxsize=4096)
def _script(character: str) -> str | None:
    """The character's script as a four-letter tag, None for one that all scripts share."""
    buffer = uharfbuzz.Buffer()
    buffer.add_str(character)
    buffer.guess_segment_properties()
    script: str | None = buffer.script
    return script


def _runs(text: str, faces: Sequence[Face]) -> list[_Run]:
    """Runs of one direction, one script and one face, from left to right.

    A shared character (space, digit, mark) belongs to the script before it, at a run's start to the one after.
    """
    found: list[_Run] = []
    for run in bidi.runs(text):
        pieces: list[_Run] = []
        for index in range(run.start, run.end):
            script, face = _script(text[index]), faces[index]
            last = pieces[-1] if pieces else None
            alike = last is not None and (script is None or last.script is None or script == last.script)
            if last is not None and alike and last.face is face:
                pieces[-1] = _Run(
                    start=last.start,
                    end=index + 1,
                    right_to_left=run.right_to_left,
                    script=last.script or script,
                    face=face,
                )
            else:
                pieces.append(
                    _Run(start=index, end=index + 1, right_to_left=run.right_to_left, script=script, face=face)
                )
        found += reversed(pieces) if run.right_to_left else pieces
    return found


@lru_cache(maxsize=4096)
def _shaped(face: Face, text: str, spaced: bool, fallback: bool) -> ShapedLine:
    features = {"kern": True, "lnum": True, "liga": not spaced, "clig": not spaced}
    codes = list(map(ord, text))
    glyphs: list[ShapedGlyph] = []
    x: float = 0
    gaps = 0
    last: tuple[int, bool] | None = None  # the cluster before, and whether it joins its neighbours
    em = face.units_per_em
    for run in _runs(text, _faces(face, text, fallback)):
        buffer = uharfbuzz.Buffer()
        buffer.add_codepoints(codes, run.start, run.end - run.start)
        buffer.direction = "rtl" if run.right_to_left else "ltr"
        buffer.script = run.script or "Zyyy"
        buffer.language = LANGUAGE
        uharfbuzz.shape(run.face.font, buffer, features)
        infos = buffer.glyph_infos
        ends = _cluster_ends([info.cluster for info in infos], run.end)
        joins = run.script in CURSIVE_SCRIPTS
        # A borrowed letter is set so that capitals of both faces are as high; its own units are turned into the line's.
        size = 1 if run.face is face else em * face.cap_height_em / (run.face.units_per_em * run.face.cap_height_em)
        for info, at in zip(infos, buffer.glyph_positions, strict=True):
            if last is not None and info.cluster != last[0] and not (joins and last[1]):
                gaps += 1
            last = (info.cluster, joins)
            glyphs.append(
                ShapedGlyph(
                    glyph=info.codepoint,
                    face=run.face,
                    x_em=(x + at.x_offset * size) / em,
                    y_em=at.y_offset * size / em,
                    pen_em=x / em,
                    advance_em=at.x_advance * size / em,
                    start=info.cluster,
                    end=ends[info.cluster],
                    gaps=gaps,
                )
            )
            x += at.x_advance * size
    return ShapedLine(text=text, glyphs=tuple(glyphs), advance_em=x / em, gaps=gaps)


def _faces(face: Face, text: str, fallback: bool) -> tuple[Face, ...]:
    """The face of every character."""
    missing = _missing(face, text, False) if fallback else ()
    return faces_of(face, text, missing, tuple(map(_script, text))) if missing else (face,) * len(text)


def _cluster_ends(clusters: Sequence[int], run_end: int) -> dict[int, int]:
    """Where the characters of each cluster end: at the next cluster, or with the run."""
    starts = sorted(set(clusters))
    return dict(zip(starts, [*starts[1:], run_end], strict=True))
