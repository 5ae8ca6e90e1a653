"""Records come out one by one, in bounded memory, whatever the file holds."""

from __future__ import annotations

import csv
import io
import tracemalloc

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.batching.guard import guarded, unguarded
from signgen.batching.records import LONGEST_RECORD, MOST_LINES, records

CELLS = st.text(st.characters(exclude_characters="\r\n", exclude_categories=["Cs"]), max_size=12).map(str.lstrip)
ROWS = st.lists(st.lists(CELLS, min_size=2, max_size=4), min_size=1, max_size=6)


def read(text: str, delimiter: str = ",") -> list[tuple[str, ...]]:
    return [record.cells for record in records(io.StringIO(text, newline=""), delimiter)]


@given(rows=ROWS, delimiter=st.sampled_from([",", ";", "\t"]), end=st.sampled_from(["\n", "\r\n", "\r"]))
def test_what_the_standard_library_writes_is_read(rows: list[list[str]], delimiter: str, end: str) -> None:
    stream = io.StringIO(newline="")
    csv.writer(stream, delimiter=delimiter, lineterminator=end, quoting=csv.QUOTE_ALL).writerows(rows)
    assert read(stream.getvalue(), delimiter) == [tuple(row) for row in rows]


@given(st.text(max_size=200))
def test_any_text_at_all_is_read_to_its_end(text: str) -> None:
    found = list(records(io.StringIO(text, newline=""), ","))
    assert [record.row for record in found] == list(range(1, len(found) + 1))
    assert [record.line for record in found] == sorted(record.line for record in found)


@given(st.text(max_size=20))
def test_a_guarded_cell_is_no_formula_and_comes_back(cell: str) -> None:
    assert unguarded(guarded(cell)) == cell
    first = guarded(cell)[:1]
    assert first not in "=@\t\r\n" or not first
    assert first not in "+-" or cell.strip("+-.,").isdigit() or not first


def test_rows_after_a_quote_that_is_never_closed_are_not_lost() -> None:
    rows = [f"name {n},{n}" for n in range(3 * MOST_LINES)]
    rows[5] = '"never closed,5'
    found = list(records(io.StringIO("\n".join(rows)), ","))
    assert len(found) == len(rows)
    assert [record.row for record in found if record.problem] == [6]
    assert found[6].cells == ("name 6", "6")
    assert found[6].line == 7


def test_a_line_of_megabytes_is_one_bad_row() -> None:
    text = "a,b\n" + "x" * (3 * LONGEST_RECORD) + ",1\nc,d\n"
    found = list(records(io.StringIO(text), ","))
    assert [record.problem is None for record in found] == [True, False, True]
    assert found[2].cells == ("c", "d")
    assert found[2].line == 3


def test_a_line_of_megabytes_after_an_open_quote_does_not_swallow_the_next() -> None:
    text = 'a,"b\n' + "x" * (2 * LONGEST_RECORD) + "\nc,d\ne,f\n"
    found = list(records(io.StringIO(text), ","))
    assert [record.problem is None for record in found] == [False, False, True, True]
    assert [record.cells for record in found[2:]] == [("c", "d"), ("e", "f")]


@pytest.mark.parametrize("row", ['"open,{n}\n', "{n},x\n", '{n},"two\nlines"\n', "x" * 5000 + ",{n}\n"])
def test_memory_does_not_grow_with_the_list(row: str) -> None:
    class Endless(io.TextIOBase):
        """Forty megabytes, never there at once."""

        def __init__(self, size: int) -> None:
            self.left = size
            self.stream = io.StringIO(newline="")

        def readline(self, limit: int | None = -1, /) -> str:  # type: ignore[override]
            line = self.stream.readline()
            if not line and self.left > 0:
                block = "".join(row.format(n=n) for n in range(20))
                self.left -= len(block)
                self.stream = io.StringIO(block, newline="")
                line = self.stream.readline()
            return line

    def peak(size: int) -> int:
        tracemalloc.start()
        assert sum(1 for _ in records(Endless(size), ",")) > 0  # type: ignore[arg-type]
        reached = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return reached

    assert peak(400_000) < 1.3 * peak(100_000) + 1_000_000
