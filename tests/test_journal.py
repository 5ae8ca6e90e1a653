"""Lines are kept whole, whatever happens to the process that writes them."""

from __future__ import annotations

import resource
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.journal import Journal

LINES = st.lists(st.binary(max_size=40).filter(lambda line: b"\n" not in line), max_size=8)


def lines(path: Path) -> list[bytes]:
    journal = Journal(path)
    try:
        return [line for _, line in journal.lines()]
    finally:
        journal.close()


@given(first=LINES, second=LINES)
def test_lines_come_back_in_order_over_several_openings(
    tmp_path_factory: pytest.TempPathFactory, first: list[bytes], second: list[bytes]
) -> None:
    path = tmp_path_factory.mktemp("journal") / "lines"
    for part in (first, second):
        journal = Journal(path)
        offsets = [journal.add(line, sync=False) for line in part]
        assert [journal.line_at(offset) for offset in offsets] == part
        journal.close()
    assert lines(path) == first + second


@pytest.mark.parametrize("length", [0, 1, 100, 1 << 16, (1 << 17) + 5])
def test_a_line_that_was_cut_off_is_not_there(tmp_path: Path, length: int) -> None:
    path = tmp_path / "lines"
    path.write_bytes(b"whole\n" + b"x" * length)
    journal = Journal(path)
    journal.add(b"next")
    journal.close()
    assert path.read_bytes() == b"whole\nnext\n"


def test_only_one_process_holds_a_journal(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "lines")
    code = "import sys; from pathlib import Path; from signgen.journal import Journal; Journal(Path(sys.argv[1]))"
    found = subprocess.run([sys.executable, "-c", code, str(tmp_path / "lines")], capture_output=True, check=False)
    journal.close()
    assert b"Another batch is writing" in found.stderr
    again = subprocess.run([sys.executable, "-c", code, str(tmp_path / "lines")], capture_output=True, check=False)
    assert again.returncode == 0, again.stderr


def test_a_line_that_the_disk_refuses_leaves_no_part(tmp_path: Path) -> None:
    def limited() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))

    code = (
        "import sys; from pathlib import Path; from signgen.journal import Journal\n"
        "from signgen.errors import AskError\n"
        "journal = Journal(Path(sys.argv[1]))\n"
        "journal.add(b'a' * 60)\n"
        "try: journal.add(b'b' * 60)\n"
        "except AskError as error: print(error)\n"
        "journal.add(b'c' * 30)\n"
        "journal.close()\n"
    )
    found = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path / "lines")],
        capture_output=True, check=True, preexec_fn=limited, text=True,
    )  # fmt: skip
    assert "File too large" in found.stdout
    assert lines(tmp_path / "lines") == [b"a" * 60, b"c" * 30]


def test_a_journal_that_cannot_be_written_says_so(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(AskError) as error:
        Journal(tmp_path / "file" / "lines")
    assert error.value.problems[0].where == "out"
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_a_file_that_was_taken_away_is_not_written_on(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "out" / "ledger")
    journal.add(b"one")
    (tmp_path / "out").rename(tmp_path / "elsewhere")
    with pytest.raises(AskError, match="has gone"):
        journal.add(b"two")
    journal.close()
    assert (tmp_path / "elsewhere" / "ledger").read_bytes() == b"one\n"
    assert not (tmp_path / "out").exists()
