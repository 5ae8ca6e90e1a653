"""What the checks say, for people at a terminal and for programs."""

from __future__ import annotations

from signgen.checks.check import CheckReport, Finding


def verdict_text(path: str, report: CheckReport) -> str:
    """The verdict in one line, then every check with what it compared, then the findings of those that failed."""
    failed = [result for result in report.results if not result.passed and result.severity == "error"]
    warned = [result for result in report.results if not result.passed and result.severity == "warning"]
    if failed:
        verdict = f"do not run: {len(failed)} of {len(report.results)} checks failed"
    elif warned:
        verdict = f"all checks passed, {len(warned)} with a warning"
    else:
        verdict = f"all {len(report.results)} checks passed"
    lines = [f"{path}: {verdict}."]
    for result in report.results:
        word = "passed" if result.passed else "FAILED" if result.severity == "error" else "warning"
        lines.append(f"  {result.code} {result.name:<18} {word:<8} {result.detail}")
        lines += [f"       {finding_text(finding)}" for finding in result.findings]
    return "\n".join(lines)


def finding_text(finding: Finding) -> str:
    """One finding as a sentence with its place and its remedy."""
    where = ", ".join(
        part
        for part in (
            finding.file,
            f"line {finding.line}" if finding.line else "",
            f"at X{finding.place_mm[0]:.2f} Y{finding.place_mm[1]:.2f} on the sign" if finding.place_mm else "",
        )
        if part
    )
    return " ".join(part for part in (f"{where}:" if where else "", finding.message, finding.remedy) if part)


def verdict_data(path: str, report: CheckReport) -> dict[str, object]:
    """The same as data: the keys of a report's checks, and the findings of each."""
    return {
        "path": path,
        "passed": report.passed,
        "checks": [
            {
                "code": result.code,
                "name": result.name,
                "severity": result.severity,
                "passed": result.passed,
                "detail": result.detail,
                "findings": [finding_text(finding) for finding in result.findings],
            }
            for result in report.results
        ],
    }
