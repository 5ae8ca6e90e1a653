"""A finished job, as Python and notebooks see it."""

from __future__ import annotations

import base64
import html
import json
from collections.abc import Mapping
from functools import cached_property
from os import PathLike
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Unpack

from msgspec import Struct

from signgen.api.asked import read_options, shown
from signgen.api.options import Options
from signgen.checks.check import Finding
from signgen.errors import CheckFailedError
from signgen.features.edge import Edge
from signgen.files import write_folder
from signgen.numbers import figure
from signgen.pipeline import REPORT, make_job, read_sign
from signgen.pipeline import MadeJob as Made
from signgen.replay.motion import Motions
from signgen.spec.merge import merged

if TYPE_CHECKING:
    from shapely.geometry import MultiPolygon, Polygon

PLAYER_PX = 640
"""Height of the player in a notebook."""


class Program(Struct, frozen=True, kw_only=True):
    """One program of a job: its file's name, its text (RS-274, ASCII), the cutter that it wants in words, the estimate
    of its time in minutes, and its n motions as they were read back from the text: arrays in millimetres, program
    coordinates (`end_mm` (n, 3), `kind` (n,) ...), read-only.

    Source of the reading: NIST IR 6556, The NIST RS274NGC Interpreter - Version 3.

    >>> import signgen
    >>> program = signgen.make("7", size="60x40", thickness=6).programs[0]
    >>> program.file, program.tool, program.motions.end_mm.shape[1]
    ('1-v-bit-90.nc', '90 degree V-bit, 12 mm', 3)
    """

    file: str
    text: str
    tool: str
    minutes: float
    motions: Motions

    def __repr__(self) -> str:
        return f"<signgen.Program {self.file!r}, {self.tool}, {self.minutes:.1f} min, {len(self.motions)} motions>"


class Job:
    """A sign that was made and proved. Nothing is on disk before `save`. Lengths are millimetres, times minutes.

    >>> import signgen
    >>> job = signgen.make("7", size="60x40", thickness=6)
    >>> round(job.drawing["edge"].area), sorted(job.files)[:2]
    (2400, ['0-outline.nc', '1-v-bit-90.nc'])
    >>> job.report["sign"]["lines"], job.preview[1:4]
    (['7'], b'PNG')
    >>> job.changed(border="oval").drawing["edge"].area < job.drawing["edge"].area
    True
    """

    def __init__(self, made: Made, asked: Mapping[str, object]) -> None:
        self._made = made
        self._asked = dict(asked)

    @property
    def text(self) -> tuple[str, ...]:
        """The lines of lettering."""
        return self._made.facts.spec.text.lines

    @cached_property
    def drawing(self) -> Mapping[str, Polygon | MultiPolygon]:
        """The sign before any tool: shapely areas in millimetres by the name of each feature, seen from above, (0, 0)
        the lower left corner of the sign's bounds; "edge" is its outline. Valid, shells counter-clockwise."""
        features = self._made.facts.drawing.features
        named = {feature.name: feature.footprint for feature in features if not isinstance(feature, Edge)}
        return MappingProxyType({"edge": self._made.facts.drawing.edge, **named})

    @cached_property
    def programs(self) -> tuple[Program, ...]:
        """In the order to run them; those from the board's back first, where there are such."""
        return tuple(
            Program(
                file=each.file,
                text=each.text,
                tool=each.tool.label,
                minutes=each.minutes,
                motions=each.replay.motions,
            )
            for each in self._made.facts.every_program
        )

    @cached_property
    def report(self) -> dict[str, Any]:
        """What report.json holds, by the schema of `signgen explain schema report`; its names carry their units. Typed:
        `msgspec.json.decode(job.files["report.json"], type=signgen.schemas.report.Report)`."""
        report: dict[str, Any] = json.loads(self.files[REPORT])
        return report

    @property
    def preview(self) -> bytes:
        """A PNG of the finished sign, drawn from the simulated cut."""
        return self.files["preview.png"]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What the checks found that is to be read before cutting; errors never get this far."""
        return tuple(finding for result in self._made.facts.checks.results for finding in result.findings)

    @property
    def warnings(self) -> tuple[str, ...]:
        """Whole sentences to read before cutting."""
        return tuple(str(warning) for warning in self._made.facts.warnings)

    @property
    def files(self) -> Mapping[str, bytes]:
        """Every file of the job by its name, the same bytes as `signgen make` writes."""
        return MappingProxyType(dict(self._made.files))

    def changed(self, *text: str, **options: Unpack[Options]) -> Job:
        """The same sign with other words or options, made and proved anew; this job stays as it is. Options are those
        of `signgen.make`, and go before what was asked for; what was left open is chosen
        anew.

        Raises: as `signgen.make`.
        """
        return made_of(merged(self._asked, read_options(text, options)))

    def save(self, folder: str | PathLike[str]) -> Path:
        """Write the files into a folder, as a whole or not at all; its path. Files of an earlier make there are
        replaced or removed, anything else is left alone.

        Raises: AskError when the folder cannot be written, or something that is not signgen's is in the way.
        """
        out = Path(folder)
        write_folder(out, self._made.files)
        return out

    def __repr__(self) -> str:
        facts = self._made.facts
        size = " x ".join(
            figure(side, 2) for side in (facts.drawing.width_mm, facts.drawing.height_mm, facts.drawing.thickness_mm)
        )
        count, checks = len(facts.every_program), len(facts.checks.results)
        programs = f"{count} program{'s' if count > 1 else ''}"
        return f"<signgen.Job {' / '.join(self.text)!r}, {size} mm, {programs}, all {checks} checks passed>"

    def _repr_png_(self) -> bytes:
        """What a notebook shows."""
        return self.preview

    def _repr_html_(self) -> str:
        """The same where pages may be shown: the player of every move."""
        page = base64.b64encode(self.files["preview.html"]).decode("ascii")
        title = html.escape(" / ".join(self.text), quote=True)
        return (
            f'<iframe title="{title}" sandbox="allow-scripts" style="width:100%;height:{PLAYER_PX}px;border:0" '
            f'src="data:text/html;base64,{page}"></iframe>'
        )


def made_of(asked: Mapping[str, object]) -> Job:
    """The job of what was asked for, whole. Raises: as `signgen.make`."""
    try:
        return Job(make_job(read_sign(asked)), asked)
    except CheckFailedError as error:
        raise shown(error) from None
