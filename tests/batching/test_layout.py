"""Which signs share a sheet, where they lie, and what is refused."""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import box

from signgen.batching.asked_sheet import read_sheet
from signgen.batching.layout import FREE, STRIP_MM, Group, SheetHow, alike, lay_out, must_fit, sheet_figures
from signgen.batching.outcome import RowOutcome
from signgen.drawing.draw import draw
from signgen.errors import AskError, CannotMakeError
from signgen.operations.choose import may_clear
from signgen.shop.load import load_shop
from signgen.spec.sign_spec import SignSpec
from signgen.whole_sheet import cutters_of, laid_out
from tests.asking import spec_of

BASE: dict[str, object] = {"text": ["A"], "thickness": 9, "cap-height": 8, "origin": "stock"}
EDGE_MM = 6.0
"""The cutter that the planner takes for these signs, which have no holes."""


def row(number: int, size: str, copies: int = 1, **more: Any) -> tuple[RowOutcome, dict[str, object]]:
    """A row as it was proved, and what it asks for."""
    asked = {**BASE, "size": size, **{name.replace("_", "-"): value for name, value in more.items()}}
    spec = spec_of(**{"holes": None, "hole-diameter": None, "inset": None, **asked})
    told = sheet_figures(spec, [], _clearers(spec), spec.tabs.count, spec.width_mm * spec.height_mm)
    return RowOutcome(row=number, copies=copies, figures={"sheet": told}), asked


def _clearers(spec: SignSpec) -> list[str]:
    return [tool.name for tool in may_clear(draw(spec), spec)] if spec.finish == "recess" else []


def laid(rows: list[tuple[RowOutcome, dict[str, object]]], how: SheetHow) -> tuple[Group, ...]:
    return lay_out([outcome for outcome, _ in rows], {outcome.row: asked for outcome, asked in rows}, how)


def tool_of(spec: SignSpec) -> str:
    assert spec.end_mill is not None
    return spec.end_mill.name


def boxes(group: Group, sizes: dict[int, tuple[float, float]]) -> list[list[Any]]:
    return [
        [
            box(
                piece.x_mm,
                piece.y_mm,
                piece.x_mm + sizes[piece.row][int(piece.turned)],
                piece.y_mm + sizes[piece.row][1 - int(piece.turned)],
            )
            for piece in sheet.pieces
        ]
        for sheet in group.sheets
    ]


@settings(max_examples=12)
@given(
    sizes=st.lists(st.tuples(st.integers(40, 150), st.integers(30, 120)), min_size=1, max_size=6),
    border=st.sampled_from([0.0, 15.0]),
    turn=st.booleans(),
)
def test_signs_keep_the_border_the_cuts_and_the_gap(sizes: list[tuple[int, int]], border: float, turn: bool) -> None:
    how = SheetHow(size_mm=(380, 330), border_mm=border, turn=turn)
    rows = [row(n, f"{width}x{height}", copies=2) for n, (width, height) in enumerate(sizes, 2)]
    (group,) = laid(rows, how)
    rim = border + EDGE_MM
    count = 0
    for sheet in boxes(group, {n: (float(w), float(h)) for n, (w, h) in enumerate(sizes, 2)}):
        for piece in sheet:
            assert piece.within(box(rim - 1e-6, rim - 1e-6, 380 - rim + 1e-6, 330 - rim + 1e-6))
        for a, b in itertools.combinations(sheet, 2):
            assert a.distance(b) >= 2 * EDGE_MM + 3 - 1e-6
        count += len(sheet)
    assert count == 2 * len(sizes)
    assert turn or not any(piece.turned for sheet in group.sheets for piece in sheet.pieces)


def test_pieces_are_numbered_as_one_reads() -> None:
    (group,) = laid([row(2, "100x40", copies=6)], SheetHow(size_mm=(380, 330), turn=False))
    (sheet,) = group.sheets
    places = [(-piece.y_mm, piece.x_mm) for piece in sheet.pieces]
    assert places == sorted(places)
    assert [piece.name for piece in sheet.pieces] == ["1", "2", "3", "4", "5", "6"]
    assert sheet.title == "Sheet 1 of 1: 6 signs"


def test_signs_that_are_not_cut_alike_go_on_different_sheets() -> None:
    rows = [row(2, "60x40"), row(3, "60x40", thickness=6), row(4, "50x30"), row(5, "60x40", material="mdf")]
    groups = laid(rows, SheetHow(size_mm=(380, 330)))
    assert [[piece.row for sheet in group.sheets for piece in sheet.pieces] for group in groups] == [[2, 4], [3], [5]]
    assert [sheet.number for group in groups for sheet in group.sheets] == [1, 2, 3]
    assert {sheet.count for group in groups for sheet in group.sheets} == {3}
    assert [group.apart and str(group.apart) for group in groups] == [
        None, "row 3 asks for thickness 6", "row 5 asks for material mdf",
    ]  # fmt: skip


def test_why_sheets_are_apart_is_said_by_the_options_that_differ() -> None:
    mill = tool_of(spec_of(end_mill="4"))
    rows = [row(2, "60x40"), row(3, "60x40", end_mill=4, v_bit=60)]
    _, other = laid(rows, SheetHow(size_mm=(380, 330)))
    assert str(other.apart) == f"row 3 asks for v-bit v-bit-60 and end-mill {mill}"


def test_languages_do_not_part_sheets() -> None:
    rows = [row(2, "60x40", language="de"), row(3, "60x40"), row(4, "60x90")]
    (group,) = laid(rows, SheetHow(size_mm=(380, 330)))
    assert laid_out(group.sheets[0], load_shop)[0].spec.language == "de"  # the first row's


def test_signs_that_differ_in_looks_alone_share_a_sheet() -> None:
    rows = [
        row(2, "60x40"), row(3, "80x50", text=["B", "C"], font="cinzel"), row(4, "60x40", frame=3, tabs=2),
        row(5, "60x40", border="rounded", corner_radius=5), row(6, "60x40", holes="corners", hole_diameter=4, inset=6),
    ]  # fmt: skip
    assert len(laid(rows, SheetHow(size_mm=(380, 330)))) == 1


def test_all_sheets_of_a_group_are_cut_with_the_cutters_that_the_gap_is_for() -> None:
    """Narrow letters take a thin end mill, which then is the edge's too; wide ones alone would take a stout one."""
    rows = [
        row(2, "150x70", finish="recess", thickness=6, cap_height=30, text=["ab"], depth=2),
        row(3, "150x70", finish="recess", thickness=6, cap_height=45, text=["III"], depth=2, copies=4),
    ]
    how = SheetHow(size_mm=(380, 220))
    alone = [cutters_of(spec, draw(spec), ()).edge for spec in (spec_of(**asked) for _, asked in rows)]
    assert alone[0] != alone[1]
    (group,) = laid(rows, how)
    assert [sorted({piece.row for piece in sheet.pieces}) for sheet in group.sheets] == [[2, 3], [3]]
    edges = {laid_out(sheet, load_shop)[0].plan.edge for sheet in group.sheets}
    assert edges == {alone[0]}
    assert group.gap_mm == 2 * alone[0].diameter_mm + STRIP_MM


def test_rows_that_no_cutter_could_clear_together_go_on_different_sheets() -> None:
    rows = [row(number, "150x70") for number in (2, 3, 4)]
    for (outcome, _), names in zip(rows, (["a"], ["b"], ["a", "c"]), strict=True):
        outcome.figures["sheet"]["clear_with"] = names
    groups = laid(rows, SheetHow(size_mm=(380, 330)))
    assert [[piece.row for piece in group.sheets[0].pieces] for group in groups] == [[2, 4], [3]]
    assert str(groups[1].apart) == "row 3 has recesses that no end mill of the others clears (b)"


def test_more_signs_than_fit_take_more_sheets() -> None:
    (group,) = laid([row(2, "100x60", copies=20)], SheetHow(size_mm=(300, 250)))
    assert sum(len(sheet.pieces) for sheet in group.sheets) == 20
    assert len(group.sheets) == -(-20 // group.holds)
    assert group.holds_size_mm == (100.0, 60.0)


@pytest.mark.parametrize(("material", "keep", "turns"), [("birch-plywood", False, True), ("mdf", True, True)])
def test_signs_are_turned_where_that_helps(material: str, keep: bool, turns: bool) -> None:
    (group,) = laid([row(2, "130x60", material=material)], SheetHow(size_mm=(150, 250), keep_grain=keep))
    assert [piece.turned for sheet in group.sheets for piece in sheet.pieces] == [turns]


def test_grain_is_kept_when_asked() -> None:
    with pytest.raises(CannotMakeError):
        laid([row(2, "130x60")], SheetHow(size_mm=(150, 250), keep_grain=True))
    (group,) = laid([row(2, "130x60", copies=5)], SheetHow(size_mm=(300, 400), keep_grain=True))
    assert not any(piece.turned for sheet in group.sheets for piece in sheet.pieces)


def test_a_sign_larger_than_the_sheet_is_a_problem_of_its_row() -> None:
    spec = spec_of(size="300x200")
    must_fit(spec, SheetHow(size_mm=(342, 242)), 6.0)
    with pytest.raises(CannotMakeError) as error:
        must_fit(spec, SheetHow(size_mm=(341, 242)), 6.0)
    assert error.value.problems[0].where == "size"
    assert "300 x 200 mm is larger than the 299 x 200 mm" in str(error.value)
    must_fit(spec, SheetHow(size_mm=(242, 342)), 6.0)
    with pytest.raises(CannotMakeError, match="Let signs be turned"):
        must_fit(spec, SheetHow(size_mm=(242, 342), turn=False), 6.0)


def test_a_gap_that_tabs_could_not_bear_is_refused() -> None:
    assert SheetHow(size_mm=(400, 300), gap_mm=20).gap_for(6.0, 4) == 20
    assert SheetHow(size_mm=(400, 300)).gap_for(6.0, 4) == 15
    assert SheetHow(size_mm=(400, 300)).gap_for(6.0, 0) == 7
    with pytest.raises(AskError, match="Use 15 mm or more"):
        SheetHow(size_mm=(400, 300), gap_mm=14.9).gap_for(6.0, 4)
    with pytest.raises(AskError, match="Use 7 mm or more"):
        SheetHow(size_mm=(400, 300), gap_mm=6).gap_for(6.0, 0)


def test_a_sheet_that_the_machine_cannot_reach_is_refused() -> None:
    machine = spec_of().machine  # reaches 400 x 400
    SheetHow(size_mm=(429, 429)).must_reach(machine, 6.0)  # 15 of border each side, 0.5 beside the cuts
    with pytest.raises(AskError, match="reaches 400 x 400 mm"):
        SheetHow(size_mm=(500, 430)).must_reach(machine, 6.0)
    bench = spec_of(machine="bench-router").machine  # reaches 800 x 1200
    with pytest.raises(AskError, match="Turn the sheet"):
        SheetHow(size_mm=(1220, 610)).must_reach(bench, 6.0)
    SheetHow(size_mm=(610, 1220)).must_reach(bench, 6.0)
    with pytest.raises(AskError, match="leave no room"):
        SheetHow(size_mm=(60, 60), border_mm=25).must_reach(machine, 6.0)


def test_every_field_of_a_spec_is_the_same_on_a_sheet_or_known_to_be_free() -> None:
    """A new field is taken to be the same for all signs until it is named in FREE."""
    assert set(SignSpec.__struct_fields__) >= FREE
    spec = spec_of()
    assert alike(spec) == alike(spec_of(text=["Another"], size="300x200", depth="2"))
    assert alike(spec) != alike(spec_of(thickness="9"))
    assert alike(spec) != alike(spec_of(v_bit="60"))


def test_too_many_signs_are_refused_before_they_are_laid_out() -> None:
    with pytest.raises(AskError, match="30,000 signs are too many"):
        laid([row(n, "60x40", copies=10_000) for n in (2, 3, 4)], SheetHow(size_mm=(380, 330)))


def test_what_is_asked_about_sheets_is_read_with_all_its_problems() -> None:
    assert read_sheet(None, None, None, turn=True, keep_grain=False) is None
    assert read_sheet("4x2ft", "1in", "0", turn=False, keep_grain=True) == SheetHow(
        size_mm=(1219.2, 609.6), border_mm=0, gap_mm=25.4, turn=False, keep_grain=True
    )
    with pytest.raises(AskError) as error:
        read_sheet("big", "-1", "x", turn=True, keep_grain=False)
    assert [problem.where for problem in error.value.problems] == ["sheet", "gap", "clamp-border"]
    with pytest.raises(AskError) as error:
        read_sheet(None, "9", "9", turn=False, keep_grain=True)
    assert [problem.where for problem in error.value.problems] == ["gap", "clamp-border", "no-turn", "keep-grain"]
