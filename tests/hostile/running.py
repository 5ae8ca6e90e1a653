"""A command run in a process of its own with bounds on time and memory; what became of it."""

from __future__ import annotations

import contextlib
import gc
import io
import os
import resource
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path

import click
import numpy  # noqa: F401 (all that is heavy is loaded before a process is copied)
import shapely  # noqa: F401

from signgen.cli import COMMANDS, group
from signgen.errors import SignGenError

MEMORY_BYTES = 1 << 30
"""More than the process had before."""

TIME_S = 10
"""Of the processor: five seconds, and as much again for the slowest machine that tests run on."""

CODES = range(6)

gc.freeze()  # copies of this process share what it has

for _name in COMMANDS:
    group.get_command(click.Context(group), _name)


class Fate:
    """How a command ended: its exit code, negative when a signal ended it, and all that it said."""

    def __init__(self, code: int, said: str) -> None:
        self.code, self.said = code, said

    def problem(self) -> str:
        """What is wrong with this end; '' when it is done, or is refused in a sentence."""
        if self.code in CODES and "Traceback" not in self.said:
            return "" if self.code == 0 or self.said.strip() else "it ended without a word"
        return {-9: "it took too long", -24: "it took too long"}.get(self.code, self.said[-2000:] or f"{self.code}")


def run(arguments: Sequence[str], folder: Path) -> Fate:
    """Run `signgen` with these words in a folder, in a copy of this process."""
    said = folder / "said"
    child = os.fork()
    if not child:
        code = 70
        try:
            with said.open("w", encoding="utf-8", errors="replace") as stream:
                code = _run_here(arguments, folder, stream)
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    return Fate(os.waitstatus_to_exitcode(status), said.read_text(encoding="utf-8", errors="replace"))


def _run_here(arguments: Sequence[str], folder: Path, stream: io.TextIOWrapper) -> int:
    os.chdir(folder)
    pages = int(Path("/proc/self/statm").read_text().split()[0]) if Path("/proc/self/statm").exists() else 0
    had = pages * resource.getpagesize()
    if had:
        resource.setrlimit(resource.RLIMIT_AS, (had + MEMORY_BYTES, had + MEMORY_BYTES))
    used = int(sum(resource.getrusage(resource.RUSAGE_SELF)[:2]))
    resource.setrlimit(resource.RLIMIT_CPU, (used + TIME_S, used + TIME_S + 1))
    with contextlib.redirect_stdout(stream), contextlib.redirect_stderr(stream):
        try:
            code = group.main(list(arguments), standalone_mode=False)
            return code if isinstance(code, int) else 0
        except (SignGenError, click.ClickException) as error:
            print(error, file=sys.stderr)
            return error.exit_code
        except BaseException:
            stream.write(traceback.format_exc())
            return 70
