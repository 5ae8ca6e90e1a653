"""C145: the report and the pages that lie beside the programs are those of these programs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.replay.measure import extents

REPORT = "report.json"

FIGURE = 0.006
"""Of what the report says in millimetres; the reports have four decimals, and inches are finer than that."""

REMEDY = "Make the sign again, and print its sheet anew."


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
            return verdict(self, [], "no report lies beside these programs yet")
        findings = [
            Finding(message="It is not what make wrote with these programs.", file=name, remedy=REMEDY)
            for name in papers.changed
        ]
        said = papers.programs
        if len(said) != len(case.programs):
            what = f"The report tells of {len(said)} cutters at work, the programs have {len(case.programs)}."
            findings.append(Finding(message=what, file=REPORT, remedy=REMEDY))
        z_zero = "bottom" if case.zero.z_mm == 0 else "top"
        if papers.z_zero is not None and papers.z_zero != z_zero:
            what = f"The report says Z zero at the board's {papers.z_zero}; the programs have it at the {z_zero}."
            findings.append(Finding(message=what, file=REPORT, remedy=REMEDY))
        for one, program in zip(said, case.programs, strict=False):
            for what, told, is_so in _figures(one, program):
                if not _same(told, is_so):
                    message = f"The report says {what} {told} of {program.file}; it is {is_so}."
                    findings.append(Finding(message=message, file=REPORT, remedy=REMEDY))
        return verdict(self, findings, f"{len(said)} programs as the report says, all pages as they were made")


def _figures(said: Mapping[str, object], program: ProgramUnderTest) -> Iterator[tuple[str, object, object]]:
    """(name, what the report says, what is so)."""
    tool = program.tool
    yield "the file", said.get("file"), program.file
    told = said.get("tool")
    told = told if isinstance(told, dict) else {}
    for name in ("name", "kind", "diameter_mm", "angle_deg", "tip_mm", "shank_mm"):
        yield f"the cutter's {name}", told.get(name), getattr(tool, name)
    if program.stated is not None:
        for name in ("spindle_rpm", "feed_mm_per_min", "plunge_mm_per_min"):
            yield name, said.get(name), getattr(program.stated.cutting, name)
    extent, ways = extents(program.replay.motions), said.get("extent")
    ways = ways if isinstance(ways, dict) else {}
    if extent is not None:
        for axis in ("x_mm", "y_mm", "z_mm"):
            yield f"the way along {axis[0].upper()}", ways.get(axis), list(getattr(extent, axis))


def _same(told: object, is_so: object) -> bool:
    if isinstance(is_so, list):
        return isinstance(told, list) and len(told) == len(is_so) and all(map(_same, told, is_so))
    if isinstance(is_so, int | float):
        return isinstance(told, int | float) and abs(told - is_so) <= FIGURE
    return told == is_so
