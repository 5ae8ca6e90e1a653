"""What to change while the machine cuts, by what is heard and seen (`data/advice.toml`)."""

from __future__ import annotations

import tomllib
from collections.abc import Collection
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """`when` is what is noticed, '' for advice that always holds; `edges`: the cutters that it is for, () for all."""

    name: str
    when: str
    do: str
    edges: tuple[str, ...]

    @property
    def text(self) -> str:
        """Both as one text: 'It squeals: the cutter rubs. Feed up ...'."""
        return f"{self.when}: {self.do[0].lower()}{self.do[1:]}" if self.when else self.do


@cache
def all_advice() -> tuple[Advice, ...]:
    rows = tomllib.loads(files("signgen.shop").joinpath("data", "advice.toml").read_text("utf-8"))
    return tuple(
        Advice(name=name, when=row["when"], do=row["do"], edges=tuple(row.get("edges", ())))
        for name, row in rows.items()
    )


def advice_for(edges: Collection[str]) -> tuple[Advice, ...]:
    """What holds for cutters with these edges (`Tool.cut`), in order."""
    return tuple(row for row in all_advice() if not row.edges or set(row.edges) & set(edges))
