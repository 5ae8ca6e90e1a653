"""Keyholes: good programs pass, and every way of spoiling them is seen."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from msgspec.structs import replace

from signgen.checks import FROM_BEHIND, judge
from signgen.checks.case import make_case
from signgen.checks.check import Case
from signgen.drawing.drawing import Drawing
from signgen.features.keyhole import Keyhole
from signgen.job.facts import JobFacts
from signgen.pipeline import prove
from signgen.shop.tools import Tool
from tests.asking import spec_of


@pytest.fixture(scope="module")
def sign() -> JobFacts:
    return prove(spec_of(holes="keyholes", hole_diameter=None, inset=None, depth="1.5", size="140x90"))


def case_of(sign: JobFacts, **changes: Any) -> Case:
    """The case of the back as the pipeline makes it; `texts`, `tools`, `drawing` may be others."""
    back = sign.back
    assert back is not None
    texts = changes.get("texts", [program.text for program in back.programs])
    tools: list[Tool] = changes.get("tools", [program.tool for program in back.programs])
    drawing: Drawing = changes.get("drawing", back.drawing)
    case = make_case(
        drawing=drawing,
        stock=back.stock,
        zero=back.zero,
        machine=back.spec.machine,
        material=back.spec.material,
        programs=[(p.file, text, tool) for p, text, tool in zip(back.programs, texts, tools, strict=True)],
        breakthrough_mm=back.spec.breakthrough_mm,
        tolerance_mm=back.spec.tolerances.total_mm,
        cell_mm=0.15,
    )
    return replace(case, face=changes.get("face", sign.boards[-1]))


def failed(case: Case) -> dict[str, str]:
    """Code -> first finding of every check that stops."""
    return {each.code: str(each.findings[0].message) for each in judge(case, FROM_BEHIND).results if each.stops}


def texts(sign: JobFacts) -> tuple[str, str]:
    assert sign.back is not None
    opens, undercuts = (program.text for program in sign.back.programs)
    return opens, undercuts


def test_as_made_every_check_passes(sign: JobFacts) -> None:
    assert failed(case_of(sign)) == {}


def test_a_retract_at_the_slots_end_is_seen_twice(sign: JobFacts) -> None:
    opens, undercuts = texts(sign)
    lines = undercuts.split("\n")
    back = next(i for i, line in enumerate(lines) if line.startswith("G1 Y") and "F" not in line)
    del lines[back]
    found = failed(case_of(sign, texts=[opens, "\n".join(lines)]))
    assert {"C102", "C150"} <= set(found)
    assert "into the board" in found["C102"]


def test_a_retract_at_a_feed_is_seen_too(sign: JobFacts) -> None:
    opens, undercuts = texts(sign)
    lines = undercuts.split("\n")
    back = next(i for i, line in enumerate(lines) if line.startswith("G1 Y") and "F" not in line)
    lines[back] = "G1 Z22"
    found = failed(case_of(sign, texts=[opens, "\n".join(lines)]))
    assert "C150" in found


@pytest.mark.parametrize(
    ("old", "new", "program"),
    [
        ("Z3.2", "Z3.05", 1),  # too deep under the wood
        ("Z3.2", "Z3.4", 1),
        ("G0 X-25\n", "G0 X-25.4\n", 1),  # beside its slot
        ("Z3 ", "Z3.3 ", 0),  # the entry's floor
    ],
)
def test_a_tenth_too_deep_or_beside_is_seen(sign: JobFacts, old: str, new: str, program: int) -> None:
    changed = list(texts(sign))
    assert old in changed[program]
    changed[program] = changed[program].replace(old, new)
    assert "C150" in failed(case_of(sign, texts=changed))


def test_an_undercut_that_is_missing_or_too_short_is_seen(sign: JobFacts) -> None:
    opens, undercuts = texts(sign)
    start, end = undercuts.index("(keyhole 1)"), undercuts.rindex("G0 Z")
    assert "not undercut" in failed(case_of(sign, texts=[opens, undercuts[:start] + undercuts[end:]]))["C150"]
    short = undercuts.replace("G1 Y65 ", "G1 Y64.8 ")
    assert short != undercuts
    assert "C150" in failed(case_of(sign, texts=[opens, short]))


def test_a_keyhole_that_nobody_opened_is_seen(sign: JobFacts) -> None:
    opens, undercuts = texts(sign)
    start = opens.index("(keyhole 2")
    end = opens.rindex("G0 Z")
    found = failed(case_of(sign, texts=[opens[:start] + opens[end:], undercuts]))
    assert "C150" in found
    assert "C114" in found  # its blunt end is pressed on the wood


def test_another_cutter_is_seen(sign: JobFacts) -> None:
    assert sign.back is not None
    mill, cutter = (program.tool for program in sign.back.programs)
    for wrong in (replace(cutter, diameter_mm=10.5), replace(cutter, head_mm=3.0), replace(cutter, neck_mm=5.5)):
        assert "C150" in failed(case_of(sign, tools=[mill, wrong]))
    assert "No program has a keyhole cutter." in failed(case_of(sign, tools=[mill, mill]))["C150"]


def test_a_letter_cut_too_deep_over_a_keyhole_is_seen(sign: JobFacts) -> None:
    assert sign.back is not None
    face = sign.boards[-1]
    keyhole = sign.drawing.of(Keyhole)[0]
    z = face.z_mm.copy()
    i = round((keyhole.x_mm - face.x0_mm) / face.cell_mm)
    j = round((keyhole.y_mm - face.y0_mm) / face.cell_mm)
    z[j - 2 : j + 3, i - 2 : i + 3] = 10.3  # 1.7 mm deep: 1.3 mm over the keyhole's floor
    message = failed(case_of(sign, face=replace(face, z_mm=z)))["C151"]
    assert "1.30 mm" in message
    z[j - 2 : j + 3, i - 2 : i + 3] = 10.6
    assert failed(case_of(sign, face=replace(face, z_mm=z))) == {}


def test_the_face_is_laid_over_the_back_mirrored(sign: JobFacts) -> None:
    """A hole in the face beside the mirrored place of a single keyhole does no harm; at its own place it does."""
    assert sign.back is not None
    one = sign.drawing.of(Keyhole)[0]
    drawing = sign.back.drawing.having(Keyhole, sign.back.drawing.of(Keyhole)[:1])
    face = sign.boards[-1]
    for x, harm in ((one.x_mm, True), (sign.drawing.width_mm - one.x_mm, False)):
        z = face.z_mm.copy()
        i, j = round((x - face.x0_mm) / face.cell_mm), round((one.y_mm - face.y0_mm) / face.cell_mm)
        z[j, i] = 0.0
        assert ("C151" in failed(case_of(sign, drawing=drawing, face=replace(face, z_mm=z)))) is harm


def test_programs_swapped_are_seen(sign: JobFacts) -> None:
    assert sign.back is not None
    case = case_of(sign)
    mill, cutter = (program.tool for program in sign.back.programs)
    opens, undercuts = texts(sign)
    swapped = case_of(sign, texts=[undercuts, opens], tools=[cutter, mill])
    assert failed(case) == {}
    assert "C114" in failed(swapped)
    assert np.isfinite(swapped.boards[-1].z_mm).all()
