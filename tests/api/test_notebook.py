"""The lesson's notebook runs from its first cell to its last, and what it says is so."""

from __future__ import annotations

import ast
import contextlib
import io
import json
import math
from pathlib import Path
from typing import Any

import pytest

NOTEBOOK = Path(__file__).parents[2] / "examples" / "class.ipynb"


class Ran:
    """The cells of a notebook, run one after the other in one namespace as a kernel does: what each printed, and the
    value of its last expression."""

    def __init__(self, path: Path) -> None:
        self.names: dict[str, Any] = {"__name__": "__main__"}
        self.printed: list[str] = []
        self.shown: list[object] = []
        for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
            if cell["cell_type"] == "code":
                self._run("".join(cell["source"]), cell["id"])

    def _run(self, source: str, name: str) -> None:
        body = ast.parse(source, name).body
        last = ast.Expression(body.pop().value) if isinstance(body[-1], ast.Expr) else None  # type: ignore[attr-defined]
        out = io.StringIO()
        with contextlib.redirect_stdout(out):
            exec(compile(ast.Module(body, []), name, "exec"), self.names)
            value = eval(compile(last, name, "eval"), self.names) if last else None
        self.printed.append(out.getvalue())
        if value is not None:
            self.shown.append(value)


@pytest.fixture(scope="module")
def ran(tmp_path_factory: pytest.TempPathFactory) -> Ran:
    with contextlib.chdir(tmp_path_factory.mktemp("class")):
        return Ran(NOTEBOOK)


def test_jobs_are_shown_as_pages_that_play(ran: Ran) -> None:
    assert [type(value).__name__ for value in ran.shown] == ["Job", "Job"]
    assert all("<iframe" in value._repr_html_() for value in ran.shown)  # type: ignore[attr-defined]


def test_the_chip_is_what_the_shop_reckons(ran: Ran) -> None:
    from signgen.shop.load import load_shop

    tool = next(tool for tool in load_shop(None).tools if tool.name == ran.names["milling"]["tool"]["name"])
    assert tool.flutes == ran.names["EDGES"]
    assert 0.02 < ran.names["chip_mm"] < 0.2
    assert math.isclose(
        ran.names["feed_mm_per_min"] / 20000,
        ran.names["milling"]["feed_mm_per_min"] / ran.names["milling"]["spindle_rpm"],
    )


def test_the_formula_of_the_depth_is_what_is_cut(ran: Ran) -> None:
    """Half the width at 90 degrees; the report's figure of a thicker board is the reckoned one."""
    assert math.isclose(ran.names["depth_mm"](4, 90), 2)
    assert math.isclose(ran.names["wider_mm"], ran.names["told"]["if_thicker"]["wider_mm"])
    assert ran.names["depth_mm"](ran.names["told"]["widest_stroke"]["mm"], 90) > ran.names["told"]["deepest"]["mm"]


def test_the_program_is_read_as_the_text_says(ran: Ran) -> None:
    said = "".join(ran.printed)
    assert "first below the top: line " in said
    assert "so the cut goes 0.3 mm into the spoilboard" in said
    assert "is 118633 mm now" in said
    assert "passed" in said
    assert "not passed" not in said


def test_what_cannot_be_made_is_said_and_the_own_sign_is_saved(ran: Ran) -> None:
    said = "".join(ran.printed)
    assert "cap-height" in said
    assert "setup.html" in said


def test_nothing_that_ran_is_kept_in_the_file() -> None:
    """Notebook format 4.5: every cell has an id of its own; no outputs, so that a change is read like code."""
    data = json.loads(NOTEBOOK.read_text(encoding="utf-8"))
    assert (data["nbformat"], data["nbformat_minor"]) == (4, 5)
    assert len({cell["id"] for cell in data["cells"]}) == len(data["cells"])
    assert all(cell["outputs"] == [] and cell["execution_count"] is None for cell in data["cells"] if "outputs" in cell)
