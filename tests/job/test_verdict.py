"""What the checks say: the verdict first, then what was compared, then each finding with all that helps to mend it."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from signgen.checks import judge
from signgen.checks.check import CheckReport, CheckResult, Finding
from signgen.job.judged import Judged
from signgen.job.verdict import verdict_data, verdict_line, verdict_text
from signgen.shop.stock import WorkZero
from tests.checks.plate import CUT_OUT, Plate


def judged(plate: Plate) -> Judged:
    case = plate.case()
    return Judged(path="plate", case=case, report=judge(case))


def result(code: str, *findings: Finding, **other: bool | str) -> CheckResult:
    fields = {"name": "some_check", "severity": "error", "detail": "1 of 1", **other}
    return CheckResult(code=code, findings=findings, **fields)  # type: ignore[arg-type]


BAD, ODD = Finding(message="Bad."), Finding(message="Odd.", warns=True)
GOOD_ONE, FAILED = result("C901"), result("C902", BAD)
WARNED = result("C903", ODD, severity="warning")
SKIPPED = result("C904", skipped=True)
LEFT_OUT = result("C905", skipped=True, applies=False)


@pytest.mark.parametrize(
    ("results", "line", "passed"),
    [
        ((GOOD_ONE, GOOD_ONE), "all 2 checks passed.", True),
        ((GOOD_ONE, WARNED), "1 of 2 checks passed, 1 with a warning: read on before you start.", True),
        ((GOOD_ONE, FAILED, WARNED), "do not run: 1 of 3 checks failed.", False),
        ((FAILED, SKIPPED, SKIPPED), "do not run: 1 of 3 checks failed, and 2 could not be made.", False),
        ((GOOD_ONE, LEFT_OUT), "all 1 checks passed; 1 need a drawing and were left out.", True),
        ((WARNED, LEFT_OUT), None, True),
    ],
)
def test_the_verdict_in_a_line(results: tuple[CheckResult, ...], line: str | None, passed: bool) -> None:
    report = CheckReport(results=results)
    assert report.passed == passed
    assert line is None or verdict_line(report) == line


def test_a_good_plate_says_what_was_compared_and_nothing_else() -> None:
    lines = verdict_text(judged(Plate())).splitlines()
    assert lines[0].startswith("plate: all ")
    assert lines[1:3] == ["", "What was compared"]
    assert all(line.startswith("  C1") for line in lines[3:])
    assert "Before you start" not in "\n".join(lines)


def test_a_finding_shows_the_line_as_it_stands() -> None:
    text = verdict_text(judged(Plate().cutting((60, "G1 X-3 Y20 Z-1.3 F400"))))
    found = text[text.index("What was found") :].splitlines()
    where = next(n for n, line in enumerate(found) if "C107" in line)
    assert found[where].strip().endswith("2-end-mill-6.nc, line 60, at (-3.00, 20.00) on the sign")
    assert found[where + 1].strip() == "G1 X-3 Y20 Z-1.3 F400"
    assert found[where + 2].strip().startswith("The tip goes to 1.300 mm below the board")
    assert found[where + 3].strip().startswith("To do: ")


def test_the_place_is_told_as_the_program_counts_too_where_that_differs() -> None:
    shifted = replace(Plate(), zero=WorkZero(x_mm=-12, y_mm=-12, z_mm=0))
    assert "which is X" in verdict_text(judged(shifted))
    assert "which is X" not in verdict_text(judged(Plate().cutting((60, "G1 X-3 Y20 Z-1.3 F400"))))


def test_lines_are_counted_as_the_reader_counts_them_and_shown_without_control_characters() -> None:
    deep = Plate().cutting((60, "G1 X-3 Y20 Z-1.3 F400"))
    lines_of_windows = replace(deep, cut_out=deep.cut_out.replace("\n", "\r\n"))
    assert "G1 X-3 Y20 Z-1.3 F400" in verdict_text(judged(lines_of_windows))
    odd = verdict_text(judged(replace(Plate(), cut_out=CUT_OUT.replace("(Z0", "(\x0c\x1bZ0"))))
    assert "C103" in odd[odd.index("What was found") :]
    assert "\x1b" not in odd
    assert "\x0c" not in odd


def test_warnings_come_after_what_stops_the_program_and_are_called_so() -> None:
    thin = Plate().case()
    report = CheckReport(results=(result("C903", ODD, severity="warning"), result("C902", BAD)))
    text = verdict_text(Judged(path="plate", case=thin, report=report))
    assert text.index("1. C902") < text.index("2. C903 some_check (warning)")


def test_data_holds_every_finding_with_its_place() -> None:
    data = verdict_data(judged(Plate().cutting((60, "G1 X-3 Y20 Z-1.3 F400"))))
    assert data["passed"] is False
    checks = data["checks"]
    assert isinstance(checks, list)
    (deep,) = (check for check in checks if check["code"] == "C107")
    assert deep["findings"][0] == {
        "file": "2-end-mill-6.nc",
        "line": 60,
        "place_mm": [-3.0, 20.0],
        "message": deep["findings"][0]["message"],
        "remedy": deep["findings"][0]["remedy"],
        "warns": False,
    }
