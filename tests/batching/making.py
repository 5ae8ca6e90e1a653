"""How tests run batches: small signs, in this process or as a user would."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from click.testing import CliRunner, Result

from signgen.batching.ledger import LEDGER
from signgen.cli import group

COMMAND = [sys.executable, "-c", "from signgen.cli import main; main()"]

SIGN = ["--text", "{name}", "--size", "60x30", "--thickness", "6", "--cap-height", "8", "--tabs", "2"]


def write_list(path: Path, names: list[str], header: str = "name") -> Path:
    path.write_text("\n".join([header, *names]) + "\n", encoding="utf-8")
    return path


def batch(*words: str | Path) -> Result:
    return CliRunner().invoke(group, ["batch", *map(str, words)])


def started(*words: str | Path, **how: object) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [*COMMAND, "batch", *map(str, words)],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, **how,
    )  # type: ignore[call-overload, no-any-return]  # fmt: skip


def tree(folder: Path) -> dict[str, bytes]:
    """Every file below a folder but the ledger, whose lines come in the order in which rows were done."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != LEDGER
    }


def children(process: int) -> list[int]:
    """Processes that a process has started and that still run."""
    try:
        return [int(word) for word in Path(f"/proc/{process}/task/{process}/children").read_text().split()]
    except FileNotFoundError:
        return []


def workers_of(process: int) -> list[int]:
    """Its workers: children that were spawned for work."""
    found = []
    for child in children(process):
        try:
            if b"spawn_main" in Path(f"/proc/{child}/cmdline").read_bytes():
                found.append(child)
        except OSError:
            continue
    return found


def lines_in_ledger(out: Path) -> int:
    """Rows whose outcome is on the disk."""
    try:
        return (out / LEDGER).read_bytes().count(b"\n") - 1
    except FileNotFoundError:
        return 0


def is_root() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0
