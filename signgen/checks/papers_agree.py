"""C145: the report and the pages that lie beside the programs are those of these programs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.messages import Message, Sentence
from signgen.replay.measure import extents

REPORT = "report.json"

FIGURE = 0.006
"""Of what the report says in millimetres; the reports have four decimals, and inches are finer than that."""

REMEDY = Message("checks.make_sign_again_print_sheet")


class PapersAgree:
    code = "C145"
    name = "papers_agree"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
In a folder on disk: the report's figures for each program (its file, cutter, speed and feeds, where the tip goes, the
face of Z zero) against the programs themselves; and the setup sheet, the pictures and the template against the digests
(SHA-256) that the report keeps of what make wrote.

A failure means that a sheet of another job, or one that was changed, lies beside the programs: whoever follows it fits
another cutter, or sets another zero.

What to do: make the sign again, and print its sheet anew.

Least error seen: one byte of a page, 0.006 mm of a figure."""

    def run(self, case: Case) -> CheckResult:
        papers = case.papers
        if papers is None:
            return verdict(self, [], Message("papers_agree.no_report_lies_beside_these"))
        findings = [
            Finding(message=Message("papers_agree.not_what_make_wrote_with"), file=name, remedy=REMEDY)
            for name in papers.changed
        ]
        said = papers.programs
        if len(said) != len(case.programs):
            what = Message("papers_agree.report_tells_cutters_work_programs", told=len(said), is_so=len(case.programs))
            findings.append(Finding(message=what, file=REPORT, remedy=REMEDY))
        z_zero = "bottom" if case.zero.z_mm == 0 else "top"
        if papers.z_zero is not None and papers.z_zero != z_zero:
            what = Message(
                "papers_agree.report_says_z_zero_board",
                told=Message(f"papers_agree.at_{papers.z_zero}"),
                is_so=Message(f"papers_agree.at_{z_zero}"),
            )
            findings.append(Finding(message=what, file=REPORT, remedy=REMEDY))
        for one, program in zip(said, case.programs, strict=False):
            for name, told, is_so in _figures(one, program):
                if not _same(told, is_so):
                    message = Message(
                        "papers_agree.report_says", what=name, told=str(told), file=program.file, is_so=str(is_so)
                    )
                    findings.append(Finding(message=message, file=REPORT, remedy=REMEDY))
        return verdict(self, findings, Message("papers_agree.programs_report_says_all_pages", count=len(said)))


def _figures(said: Mapping[str, object], program: ProgramUnderTest) -> Iterator[tuple[Sentence, object, object]]:
    """(name, what the report says, what is so)."""
    tool = program.tool
    yield Message("papers_agree.file"), said.get("file"), program.file
    told = said.get("tool")
    told = told if isinstance(told, dict) else {}
    for name in ("name", "kind", "diameter_mm", "angle_deg", "tip_mm", "shank_mm"):
        yield Message("papers_agree.cutter_s", name=name), told.get(name), getattr(tool, name)
    if program.stated is not None:
        for name in ("spindle_rpm", "feed_mm_per_min", "plunge_mm_per_min"):
            yield name, said.get(name), getattr(program.stated.cutting, name)
    extent, ways = extents(program.replay.motions), said.get("extent")
    ways = ways if isinstance(ways, dict) else {}
    if extent is not None:
        for axis in ("x_mm", "y_mm", "z_mm"):
            yield Message("papers_agree.way_along", axis=axis[0].upper()), ways.get(axis), list(getattr(extent, axis))


def _same(told: object, is_so: object) -> bool:
    if isinstance(is_so, list):
        return isinstance(told, list) and len(told) == len(is_so) and all(map(_same, told, is_so))
    if isinstance(is_so, int | float):
        return isinstance(told, int | float) and abs(told - is_so) <= FIGURE
    return told == is_so
