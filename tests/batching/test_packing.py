"""The packing list and the labels: what is on them, and that labels meet their sheets."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from signgen.batching.outcome import RowOutcome
from signgen.batching.packing_page import LABEL_SHEETS, labels_html, packing_html
from signgen.errors import Problem
from tests.batching.making import SIGN, batch, write_list
from tests.batching.test_quote import row, told

FAILED = RowOutcome(row=9, cells=("Ferry <House>", ""), problems=(Problem(where="size", what="It is too small."),))


@pytest.mark.parametrize(
    ("paper", "label", "count"),
    [("a4", (70.0, 37.0), 24), ("letter", (66.675, 25.4), 30)],  # as packs state them (common practice, from memory)
)
def test_labels_fill_their_sheet_evenly(paper: str, label: tuple[float, float], count: int) -> None:
    sheet = LABEL_SHEETS[paper]
    assert sheet.label_mm == pytest.approx(label)
    assert sheet.across * sheet.down == count
    for axis, number in ((0, sheet.across), (1, sheet.down)):
        used = (number - 1) * sheet.pitch_mm[axis] + sheet.label_mm[axis]
        assert sheet.pitch_mm[axis] >= sheet.label_mm[axis]
        assert used + 2 * sheet.first_mm[axis] == pytest.approx(sheet.paper_mm[axis])  # the same rim at both ends


@pytest.mark.parametrize("paper", list(LABEL_SHEETS))
def test_every_copy_has_a_label_inside_the_paper(paper: str) -> None:
    sheet = LABEL_SHEETS[paper]
    rows = [row(number, {**told(1, 1), "lines": [f"House <{number}>"]}, copies=3) for number in range(2, 14)]
    text = b"".join(labels_html("n.csv", [*rows, FAILED], None, paper, "en")).decode()
    places = [(float(x), float(y)) for x, y in re.findall(r"left:([\d.]+)mm;top:([\d.]+)mm", text)]
    assert len(places) == 36
    assert text.count("<section>") == 2
    assert len(set(places[: sheet.across * sheet.down])) == sheet.across * sheet.down
    for x, y in places:
        assert x + sheet.label_mm[0] <= sheet.paper_mm[0] + 0.01
        assert y + sheet.label_mm[1] <= sheet.paper_mm[1] + 0.01
    assert "House &lt;2&gt;" in text
    assert "Ferry" not in text


def test_the_packing_list_has_every_row_in_order() -> None:
    rows = [row(2, told(1, 1), copies=2), row(5, told(1, 1)), FAILED]
    text = b"".join(packing_html("n.csv", rows, None, "de")).decode()
    assert [int(number) for number in re.findall(r"<td>(\d+)</td>", text)] == [2, 5, 9]
    assert "2 ×" in text
    assert "Ferry &lt;House&gt;" in text
    assert "nicht gemacht" in text


def test_pieces_on_sheets_are_named_by_sheet_and_number(tmp_path: Path) -> None:
    path, out = write_list(tmp_path / "n.csv", ["A,2", "B,1"], "name,copies"), tmp_path / "out"
    result = batch(path, *SIGN, "--sheet", "300x200", "--labels", "letter", "--out", out, "--workers", "1")
    assert result.exit_code == 0, result.output
    labels, packing = ((out / f"{name}.html").read_text("utf-8") for name in ("labels", "packing"))
    assert len(re.findall(r"<small>sheet-01, no. \d</small>", labels)) == 3
    assert len(set(re.findall(r"sheet-01, no. \d", packing))) == 3
    again = batch(path, *SIGN, "--sheet", "300x200", "--out", out, "--workers", "1", "--resume")
    assert again.exit_code == 0
    assert not (out / "labels.html").exists()
