"""Signs with keyholes from words to files: two set-ups, each with its own programs and sheet, mirrored."""

from __future__ import annotations

import json
import re
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from msgspec.structs import replace
from shapely.geometry import Point, Polygon

from signgen.checks import CHECKS, OF_KEYHOLES
from signgen.cli import group
from signgen.drawing.draw import draw
from signgen.drawing.keyholes import face_down
from signgen.errors import CannotMakeError
from signgen.features.edge import Edge
from signgen.features.groove import Groove
from signgen.features.keyhole import Keyhole
from signgen.job.summary import summary_text
from signgen.operations.plan import back_plan
from signgen.pipeline import MadeJob, make_job
from signgen.replay.reader import read_program
from tests.asking import spec_of
from tests.pages.test_print import CHROMIUM, printed
from tests.words.test_words import ENGLISH, page_words

KEYHOLES = {"holes": "keyholes", "hole_diameter": None, "inset": None}


@pytest.fixture(scope="module")
def job() -> MadeJob:
    return make_job(spec_of(**KEYHOLES, template="a4"))


@pytest.fixture(scope="module")
def german() -> MadeJob:
    return make_job(spec_of(**KEYHOLES, language="de", origin="stock", z_zero="top"))


def test_the_folder_has_the_backs_programs_sheet_and_picture(job: MadeJob) -> None:
    wanted = {
        "back-0-outline.nc",
        "back-1-end-mill-4.nc",
        "back-2-keyhole-9.5.nc",
        "setup-back.html",
        "preview-back.png",
    }
    assert wanted <= set(job.files)
    assert {"1-v-bit-90.nc", "2-end-mill-6.nc", "setup.html"} <= set(job.files)
    report = json.loads(job.files["report.json"])
    assert set(report["files"]) == set(job.files)
    assert [program["file"] for program in report["programs"]] == ["1-v-bit-90.nc", "2-end-mill-6.nc"]
    assert [program["tool"]["kind"] for program in report["back"]["programs"]] == ["end-mill", "keyhole"]
    assert {check["code"] for check in report["back"]["checks"] if check["passed"]} >= {"C102", "C150", "C151"}
    assert [(hole["x_mm"], hole["y_mm"]) for hole in report["keyholes"]] == [(25, 115), (195, 115)]


@pytest.mark.parametrize("name", ["job", "german"])
def test_the_back_is_cut_at_the_mirrored_places(name: str, request: pytest.FixtureRequest) -> None:
    """From the same corner as the face's programs, X to the left: what lies at X there lies at -X here."""
    made: MadeJob = request.getfixturevalue(name)
    motions = read_program(made.files["back-2-keyhole-9.5.nc"].decode()).motions
    low = motions.end_mm[:, 2] < motions.end_mm[:, 2].min() + 0.01
    places = {(round(-float(x), 3), round(float(y), 3)) for x, y in motions.end_mm[low, :2]}
    zero = made.facts.zero
    wanted = set()
    for keyhole in made.facts.drawing.of(Keyhole):
        for x, y in ((keyhole.x_mm, keyhole.y_mm), keyhole.entry_at_mm):
            wanted.add((round(x - zero.x_mm, 3), round(y - zero.y_mm, 3)))
    assert places == wanted


def test_the_heading_says_how_the_board_lies(job: MadeJob) -> None:
    head = job.files["back-1-end-mill-4.nc"].decode().split("G17")[0]
    assert "board face down, turned over like a page" in head
    assert "bottom-right corner of the finished sign as it lies now, 20 mm left of" in head


def test_screws_go_into_the_same_holes(job: MadeJob) -> None:
    back = job.facts.back
    assert back is not None
    np.testing.assert_allclose(np.array(back.screws_mm) * [-1, 1], np.array(job.facts.screws_mm))


def test_turning_over_twice_is_nothing() -> None:
    drawing = draw(spec_of(**KEYHOLES))
    area = Polygon([(0, 0), (220, 0), (220, 140), (10, 140)])
    drawing = drawing.having(Edge, (replace(drawing.of(Edge)[0], area=area),))
    once = face_down(drawing)
    assert face_down(once).edge.equals(drawing.edge)
    assert replace(face_down(once), side="face").of(Keyhole) == drawing.of(Keyhole)
    assert not once.edge.equals(drawing.edge)
    for keyhole in once.of(Keyhole):
        assert once.edge.contains(keyhole.footprint)
        assert keyhole.footprint.contains(Point(keyhole.entry_at_mm))


def test_the_cutter_goes_out_and_back_on_one_line_from_the_entry() -> None:
    spec = spec_of(**KEYHOLES)
    drawing = face_down(draw(spec))
    plan = back_plan(drawing, spec)
    assert plan is not None
    (toolpath,) = plan.runs[1].toolpaths()
    for keyhole, cut in zip(drawing.of(Keyhole), toolpath.cuts, strict=True):
        entry, seat, again = cut.path.points_mm.tolist()
        assert entry == again
        assert entry[:2] == list(keyhole.entry_at_mm)
        assert seat[:2] == [keyhole.x_mm, keyhole.y_mm]
        assert entry[2] == seat[2] == pytest.approx(12 - keyhole.depth_mm + keyhole.free_mm)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"inset": "5"}, "keyhole 1 .* does not lie inside the sign with 2 mm of wood"),
        ({"finish": "raised", "panel": "5", "depth": "3"}, "wood between them"),
        (
            {"size": "120x70", "cap_height": "50", "text": ["W"], "inset": "35"},
            "of wood between them; 1.5 mm is the least",
        ),
    ],
)
def test_says_why_there_is_no_room(changes: dict[str, object], message: str) -> None:
    with pytest.raises(CannotMakeError, match=message):
        draw(spec_of(**{**KEYHOLES, **changes}))


def test_letters_that_are_fitted_keep_clear_of_keyholes_that_are_too_deep_for_them() -> None:
    deep, shallow = (
        draw(spec_of(**{**KEYHOLES, "size": "80x120"}, text=["H"], depth=depth)) for depth in ("4.8", "1.5")
    )
    assert shallow.cap_height_mm > deep.cap_height_mm
    holes = [keyhole.footprint for keyhole in deep.of(Keyhole)]
    assert not any(groove.area.intersects(area) for groove in deep.of(Groove) for area in holes)


def test_the_sheets_say_what_comes_first(job: MadeJob) -> None:
    face, back = (re.sub(" +", " ", page_words(job.files[name].decode())) for name in ("setup.html", "setup-back.html"))
    assert "The back first: this sign hangs on keyholes. Do all of setup-back.html before anything here" in face
    assert "corner of the sign that lies front right now" in back
    assert "20\u00a0mm from the right edge and one 20\u00a0mm from the front edge" in back
    assert "4.8\u00a0mm of the board carry each screw" in back
    assert "Open out/setup-back.html" in summary_text(job.facts, "out")


def test_the_german_sheet_of_the_back_has_no_english(german: MadeJob) -> None:
    page = re.sub(r'<span lang="en">.*?</span>', " ", german.files["setup-back.html"].decode(), flags=re.DOTALL)
    assert ENGLISH.findall(page_words(page).replace("17 / Larkspur Lane", "")) == []
    assert "Zuerst die Rückseite:" in german.files["setup.html"].decode()


@pytest.mark.skipif(CHROMIUM is None, reason="chromium is not installed")
@pytest.mark.parametrize("name", ["job", "german"])
def test_the_backs_sheet_prints_on_two_sides(name: str, request: pytest.FixtureRequest, tmp_path: Path) -> None:
    made: MadeJob = request.getfixturevalue(name)
    assert printed(tmp_path, made.files["setup-back.html"].decode()) <= 2


def test_the_template_marks_where_screws_hang(job: MadeJob) -> None:
    svg = job.files["template.svg"].decode()
    assert "2 screws to hang it on" in svg
    assert ">25 / 115<" in svg
    assert ">195 / 115<" in svg


def test_a_folder_is_judged_on_both_sides(job: MadeJob, tmp_path: Path) -> None:
    for name, content in job.files.items():
        (tmp_path / name).write_bytes(content)
    good = CliRunner().invoke(group, ["check", str(tmp_path)])
    assert "C150 keyholes_made" in good.output
    assert "from behind:" in good.output
    assert good.output.splitlines()[0].endswith(f"all {len(CHECKS) + len(OF_KEYHOLES)} checks passed.")
    path = tmp_path / "back-2-keyhole-9.5.nc"
    path.write_text(path.read_text().replace("G1 Y115", "G1 Y116"))
    bad = CliRunner().invoke(group, ["check", str(tmp_path)])
    assert "C150" in bad.output
    assert "do not run" in bad.output


def test_a_whole_sheet_refuses_them_with_a_reason(tmp_path: Path) -> None:
    rows = tmp_path / "names.csv"
    rows.write_text("name\nA\n")
    words = ["batch", str(rows), "--text", "{name}", "--size", "100x60", "--thickness", "12", "--holes", "keyholes"]
    result = CliRunner().invoke(group, [*words, "--sheet", "300x200", "--out", str(tmp_path / "out")])
    assert "a whole sheet of signs is not turned over" in result.output + (tmp_path / "out" / "errors.csv").read_text()


@pytest.mark.parametrize(
    "changes", [{"dialect": "one-file"}, {"air_cut": "20"}, {"material": "mdf", "thickness": "18"}]
)
def test_other_ways_of_writing_hold_for_the_back_too(changes: dict[str, object]) -> None:
    files = make_job(spec_of(**{**KEYHOLES, **changes})).files
    backs = sorted(name for name in files if "back-" in name and name.endswith(".nc"))
    assert backs[0] in ("air-back-1-end-mill-4.nc", "back-0-outline.nc")
    assert any(name.startswith("back-1-") for name in backs)
