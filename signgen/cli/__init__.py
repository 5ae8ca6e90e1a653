"""The command line: one short file a command, loaded only when it is asked for."""

from __future__ import annotations

import atexit
import contextlib
import gc
import importlib
import os
import sys
from functools import partial

import click

from signgen.cli.as_json import show
from signgen.cli.streams import patient_output, said_of
from signgen.errors import SignGenError
from signgen.version import __version__

COMMANDS: dict[str, str] = {
    "make": "Make one sign: programs, setup sheet, pictures and report.",
    "batch": "Make a sign for every row of a list.",
    "check": "Judge the program files in a folder that make wrote.",
    "page": "Make signs on a page in the browser.",
    "feeds": "Show how fast a cutter runs in a material, and why, step by step.",
    "list": "List what there is to choose from: fonts, borders, tools, checks ...",
    "explain": "Say what a check's code or a word of the trade means, and what to do.",
    "lesson": "Make a lesson of a sign: a booklet for the pupil, the answers for the teacher.",
    "doctor": "Say what is installed here, and whether anything is amiss.",
}
"""Name of a command and its line in the help; the module signgen.cli.<name>_command holds it as `command`."""


class _Commands(click.Group):
    """Commands whose modules are imported when they run, so that help costs nothing."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        command = importlib.import_module(f"signgen.cli.{cmd_name}_command").command
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.command(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="signgen")
def group() -> None:
    """From a text, a size and a hole pattern to verified router programs, a setup sheet and a picture of the sign."""


def _echo_lines(error: SignGenError) -> None:
    for line in error.lines():
        click.echo(line, err=True)


def _end(said: str, code: int) -> None:
    """The last line of a process whose standard output may be full: that is not tried again."""
    with contextlib.suppress(OSError):
        click.echo(said, err=True)
        sys.stderr.flush()
    os._exit(code)


def main() -> None:
    """Run the command line. What the user can mend goes to standard error, a line each, with its exit code."""
    # This process ends after its command: whatever is left then need not be looked through for garbage.
    atexit.register(gc.freeze)
    patient_output()
    try:
        code = group.main(standalone_mode=False)
        sys.stdout.flush() if sys.stdout else None
    except SignGenError as error:
        show(error, partial(_echo_lines, error))
        sys.exit(error.exit_code)
    except click.ClickException as error:
        show(error, error.show)
        sys.exit(error.exit_code)
    except click.Abort:
        click.echo("Stopped; nothing was written.", err=True)
        sys.exit(130)
    except MemoryError:
        _end("There is not enough memory for this. Make the sign smaller, or judge it with larger cells (cell).", 4)
    except OSError as error:  # what no reader or writer met: a full disk behind standard output, too few file handles
        _end(said_of(error), 2)
    sys.exit(code if isinstance(code, int) else 0)
