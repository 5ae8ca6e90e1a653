"""Whatever the dialect, the machine does the same."""

from __future__ import annotations

import itertools
import re
from pathlib import Path

import numpy as np
import pytest
from msgspec.structs import replace

from signgen.dialects import DIALECTS, dialect_named
from signgen.program.blocks import ToolProgram
from signgen.replay.motion import ARC_CCW, ARC_CW, Motions
from signgen.replay.reader import read_program
from signgen.shop.load import load_shop
from signgen.shop.manner import USUAL, Manner
from signgen.spec.read import read_spec
from tests.asking import HOUSE_NUMBER, spec_of
from tests.dialects.jobs import example, first_difference, house_number, motions_of, programs_of

NAMES = [dialect.name for dialect in DIALECTS]
WITHIN_MM = {"inch": 0.0005, "no-arcs": 0.0042, "flat-arcs": 0.0042}
"""The rest is exact: 1e-9. Inches have five decimals, 0.000254 mm; two of their roundings apart is 0.0005. Chords have
0.4 of the tolerance of 0.01 mm, and decimals."""

ALL_ON = Manner(line_numbers=True, percent_lines=True, program_end="m30", extraction="m8", warm_up_s=60)


def joined(files: list[Motions]) -> Motions:
    columns = {name: np.concatenate([getattr(m, name) for m in files]) for name in files[0].__struct_fields__}
    return Motions(**columns)


def same(dialect: str, plain: list[Motions], other: list[Motions]) -> None:
    for one, two in zip(plain, other, strict=True):
        assert first_difference(one, two, WITHIN_MM.get(dialect, 1e-9)) == ""


@pytest.mark.parametrize("name", [name for name in NAMES if not dialect_named(name).one_file])
def test_every_dialect_replays_to_the_motions_of_the_plain_one(name: str) -> None:
    # Where arcs become chords, lines and arcs are fitted more closely.
    programs = house_number(name)
    plain = programs if dialect_named(name).straight else house_number()
    same(name, motions_of("plain", plain), motions_of(name, programs))


def test_chords_take_the_share_of_the_tolerance_that_is_theirs() -> None:
    # Source: sagitta of a chord, s = R (1 - cos(turn / 2n)): its number goes with the root of 1 / s.
    counts = []
    for tolerance in ("0.01", "0.04"):
        programs = programs_of(spec_of(dialect="no-arcs", hole_diameter=5, tolerance=tolerance))
        counts.append(sum(len(text.splitlines()) for text in dialect_named("no-arcs").write(programs, USUAL)))
    assert counts[1] < 0.65 * counts[0]


@pytest.mark.parametrize("name", ["one-file", "changer"])
def test_all_cutters_in_one_file_do_what_they_do_in_several(name: str) -> None:
    together_as_apart(name, house_number())


def together_as_apart(name: str, programs: tuple[ToolProgram, ...]) -> None:
    (together,) = motions_of(name, programs)
    for n, alone in enumerate(motions_of("plain", programs), 1):
        own = together.tool == n
        part = Motions(**{field: getattr(together, field)[own] for field in together.__struct_fields__})
        # The way to the first place differs: from where the cutter was changed, not from anywhere.
        own_way = Motions(**{field: getattr(part, field)[1:] for field in part.__struct_fields__})
        assert first_difference(_without_start(alone), _without_start(own_way), 1e-9) == ""


def _without_start(motions: Motions) -> Motions:
    """From the first move down on."""
    first = int(np.argmax(motions.end_mm[:, 2] < motions.start_mm[:, 2]))
    return Motions(**{field: getattr(motions, field)[first:] for field in motions.__struct_fields__})


@pytest.mark.parametrize("name", NAMES)
def test_line_numbers_percent_lines_extraction_and_a_warm_up_move_nothing(name: str) -> None:
    programs = house_number(name)
    same("plain", motions_of(name, programs), motions_of(name, programs, ALL_ON))


def test_a_program_that_does_something_else_is_told_apart() -> None:
    plain = joined(motions_of("plain", house_number()))
    for change in ("end_mm", "centre_mm", "feed_mm_per_min"):
        spoilt = {field: getattr(plain, field).copy() for field in plain.__struct_fields__}
        row = int(np.flatnonzero(np.isin(plain.kind, (ARC_CW, ARC_CCW)))[40])
        spoilt[change][row] += 0.002 if change != "feed_mm_per_min" else 200
        assert first_difference(plain, Motions(**spoilt), 0.001)


def test_inches_say_inches_and_keep_five_decimals() -> None:
    (text, *_) = dialect_named("inch").write(house_number("inch"), USUAL)
    assert " G20 " in text
    assert "G21" not in text
    numbers = re.findall(r"[XYZIJ]-?\d+(?:\.(\d+))?", text)
    assert max(map(len, numbers)) == 5


def test_without_arcs_there_are_none_and_without_helices_only_level_ones() -> None:
    straight = "".join(dialect_named("no-arcs").write(house_number("no-arcs"), USUAL))
    assert not re.search(r"^G[23] ", straight, re.MULTILINE)
    level = "".join(dialect_named("flat-arcs").write(house_number(), USUAL))
    arcs = re.findall(r"^G[23] .*$", level, re.MULTILINE)
    assert arcs
    assert not any("Z" in arc for arc in arcs)


def test_cycles_drill_what_the_shop_drills() -> None:
    texts = dialect_named("cycles").write(house_number(), USUAL)
    cycles = [line for text in texts for line in text.splitlines() if re.search(r"G8[13]\b", line)]
    assert len(cycles) == 4
    assert all(re.fullmatch(r"G99 G83 X\S+ Y\S+ Z\S+ R13 Q\S+ F\d+", line) for line in cycles)
    # A cycle is modal: the next line would drill again. Source: NIST IR 6556 section 3.5.16.
    lines = texts[1].splitlines()
    assert all(after == "G80" for line, after in itertools.pairwise(lines) if "G83" in line)


def test_a_shallow_hole_is_one_go_down_and_up(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    row = 'shank = 6\ncutting-length = 22\nflutes = 2\nstick-out = 26\nsource = "test"\n'
    rows = [
        ("end-mill", "diameter = 6"),
        ("drill", "diameter = 5\nangle = 118"),
        ("v-bit", "diameter = 12\nangle = 90"),
    ]
    tools = "".join(f'[tool.my-{kind}]\nkind = "{kind}"\n{size}\n{row}' for kind, size in rows)
    shop.write_text(f"only-these-tools = true\n{tools}", encoding="utf-8")
    asked = {**HOUSE_NUMBER, "thickness": "2", "depth": "0.3", "breakthrough": "0", "hole-diameter": "5"}
    programs = programs_of(read_spec(asked, load_shop(shop), dialects=tuple(NAMES)))
    texts = dialect_named("cycles").write(programs, USUAL)
    assert sum(text.count("G99 G81 ") for text in texts) == 4
    same("cycles", motions_of("plain", programs), motions_of("cycles", programs))


def test_one_file_stops_for_each_further_cutter_and_a_changer_takes_its_length() -> None:
    (text,) = dialect_named("one-file").write(house_number(), USUAL)
    lines = text.splitlines()
    assert [line for line in lines if "M6" in line] == ["T1 M6", "T2 M6", "T3 M6"]
    assert lines.count("M0") == 2
    for at in (k for k, line in enumerate(lines) if line in ("T2 M6", "T3 M6")):
        assert lines[at - 1] == "M5"  # Source: NIST IR 6556, 3.6.3: it would be stopped by M6 anyway
        assert lines[at + 1].startswith("(MSG, fit the ")
        assert lines[at + 2].startswith("(MSG, set Z on the ")
        assert lines[at + 3] == "M0"
    (text,) = dialect_named("changer").write(house_number(), USUAL)
    assert re.findall(r"^T(\d) M6\nG43 H(\d)$", text, re.MULTILINE) == [("1", "1"), ("2", "2"), ("3", "3")]


def test_lines_are_numbered_upwards_within_five_digits() -> None:
    # Source: NIST IR 6556 section 3.3.1: N and one to five digits.
    for text in dialect_named("no-arcs").write(house_number(), Manner(line_numbers=True)):
        numbers = [re.match(r"N(\d{1,5}) ", line) for line in text.splitlines()]
        assert all(numbers)
        values = [int(found[1]) for found in numbers if found]
        assert values == sorted(set(values))


def test_percent_lines_are_the_first_and_the_last() -> None:
    for text in dialect_named("plain").write(house_number(), Manner(percent_lines=True)):
        lines = text.splitlines()
        assert lines[0] == lines[-1] == "%"
        assert lines.count("%") == 2


def test_extraction_runs_before_the_first_cut_and_stops_after_the_spindle() -> None:
    for text in dialect_named("plain").write(house_number(), Manner(extraction="m7")):
        lines = text.splitlines()
        assert lines.index("M7") < next(k for k, line in enumerate(lines) if line.startswith("G1 "))
        assert lines[-3:] == ["M5", "M9", "M2"]


def test_the_spindle_warms_up_once_and_in_rising_steps() -> None:
    first, *others = dialect_named("plain").write(house_number(), Manner(warm_up_s=60))
    speeds = [float(speed) for speed in re.findall(r"^S(\d+) M3$", first, re.MULTILINE)]
    waits = [float(wait) for wait in re.findall(r"^G4 P(\S+)$", first, re.MULTILINE)]
    assert speeds == sorted(speeds)
    assert len(speeds) == 3
    assert speeds[-1] == house_number()[0].cutting.spindle_rpm
    assert waits == [20, 20, 20]
    assert all(text.count("M3") == 1 for text in others)
    assert read_program(first).dwell_s == 60
    assert speeds == [8000, 12000, 16000]  # the desktop router's spindle turns no slower than 8000


def test_a_spindle_that_works_at_its_slowest_warms_up_at_that() -> None:
    slow = replace(house_number()[0], spindle_least_rpm=16000.0)
    (text,) = dialect_named("plain").write([slow], Manner(warm_up_s=60))
    assert re.findall(r"^S(\d+) M3$", text, re.MULTILINE) == ["16000"]
    assert read_program(text).dwell_s == 60


@pytest.mark.sweep
@pytest.mark.parametrize("machine", [machine.name for machine in load_shop(None).machines])
@pytest.mark.parametrize("path", sorted((Path(__file__).parents[2] / "examples").glob("*.toml")), ids=lambda p: p.stem)
def test_every_example_in_every_dialect_on_every_machine(path: Path, machine: str) -> None:
    spec = example(path, machine=machine)
    plain, inch = programs_of(spec), programs_of(example(path, machine=machine, dialect="inch"))
    wanted = motions_of("plain", plain)
    for name in NAMES:
        if not dialect_named(name).one_file:
            same(name, wanted, motions_of(name, inch if name == "inch" else plain))
        else:
            together_as_apart(name, plain)
