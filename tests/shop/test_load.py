"""The shop's files: what ships is complete and sourced; what a user adds is judged whole, all problems at once."""

import re
from pathlib import Path

import pytest

from signgen.errors import AskError, ShopError
from signgen.shop.load import load_shop

TOOL = """
[tool.my-bit]
kind = "v-bit"
diameter = "1/2in"
angle = 60
tip = 0.2
shank = "1/4in"
cutting-length = 10
flutes = 2
stick-out = 20
source = "measured"
"""

MATERIAL = """
[material.slate]
label = "Slate"
grain = false
colour = "#445566"
ground = "#8899aa"
cautions = ["Stone dust harms the lungs."]
chip-load-ratio = { value = 0.005, source = "tried" }
spindle-rpm = { value = 12000, source = "tried" }
stepdown-ratio = { value = 0.1, source = "tried" }
stepover-ratio = { value = 0.3, source = "tried" }
v-step = { value = 0.5, source = "tried" }
peck-ratio = { value = 0.5, source = "tried" }
entry-angle = { value = 2, source = "tried" }
plunge-ratio = { value = 0.2, source = "tried" }
ramp-ratio = { value = 0.3, source = "tried" }
"""


@pytest.fixture(scope="module")
def shop():
    return load_shop()


@pytest.fixture
def written(tmp_path):
    def write(text: str) -> Path:
        path = tmp_path / "shop.toml"
        path.write_text(text, encoding="utf-8")
        return path

    return write


def problems_of(path):
    with pytest.raises(ShopError) as caught:
        load_shop(path)
    assert caught.value.exit_code == 3
    return [str(problem) for problem in caught.value.problems]


def test_ships_what_a_house_number_needs(shop):
    """Two V-bits, three end mills, a drill; six materials; two machines."""
    kinds = [tool.kind for tool in shop.tools]
    assert kinds.count("v-bit") >= 2
    assert kinds.count("end-mill") >= 3
    assert kinds.count("drill") >= 1
    assert {"birch-plywood", "mdf", "softwood", "hardwood", "acrylic", "hdpe"} <= {m.name for m in shop.materials}
    assert len(shop.machines) >= 2


def test_every_row_names_its_source(shop):
    for row in (*shop.tools, *shop.machines):
        assert len(row.source) > 10, row.name
    numbers = 9
    for material in shop.materials:
        assert material.source.count("; ") >= numbers - 1, material.name
        assert all(
            f"{key}: " in material.source
            for key in ("chip-load-ratio", "stepdown-ratio", "stepover-ratio", "v-step", "entry-angle", "plunge-ratio")
        )


def test_names_can_stand_in_file_names(shop):
    names = [row.name for row in (*shop.tools, *shop.materials, *shop.machines)]
    assert all(re.fullmatch(r"[a-z0-9-]+", name) for name in names)
    assert len({tool.name for tool in shop.tools}) == len(shop.tools)


def test_a_six_mm_end_mill_goes_through_twelve_mm_of_plywood_and_the_thinnest_does_not(shop):
    """So holes beside a 12 mm edge take a cutter of their own when they are small, and in thin stock they do not."""
    through = 12 + 0.3
    reach = {tool.diameter_mm: tool.reach_mm for tool in shop.tools if tool.kind == "end-mill"}
    assert reach[6] >= through
    assert reach[3] < through
    assert reach[3] >= 6 + 0.3
    (drill,) = (tool for tool in shop.tools if tool.kind == "drill" and tool.diameter_mm == 5)
    assert drill.reach_mm >= through + drill.point_length_mm


def test_chip_loads_lie_in_the_sane_window(shop):
    """Common practice: 0.02 mm to 0.08 x D for wood at diameters of 3 to 6 mm; common practice, no published table."""
    for material in shop.materials:
        for diameter in (3, 4, 6):
            assert 0.02 <= material.chip_load_ratio * diameter <= 0.08 * diameter, material.name


def test_stepover_leaves_no_islands(shop):
    """Derived here: a step up to the radius less twice the tolerance covers all a cutter can reach."""
    smallest = min(tool.diameter_mm for tool in shop.tools if tool.kind == "end-mill")
    for material in shop.materials:
        assert material.stepover_ratio * smallest <= smallest / 2 - 2 * 0.05


def test_a_users_rows_come_first_and_replace_those_of_the_same_name(written, shop):
    text = TOOL + TOOL.replace("my-bit", "v-bit-90").replace("angle = 60", "angle = 90") + MATERIAL
    own = load_shop(written(text))
    assert [tool.name for tool in own.tools[:2]] == ["my-bit", "v-bit-90"]
    assert len(own.tools) == len(shop.tools) + 1
    bit = own.tools[0]
    assert (bit.diameter_mm, bit.shank_mm, bit.tip_mm, bit.angle_deg) == (12.7, 6.35, 0.2, 60)
    assert own.tools[1].diameter_mm == 12.7
    slate = own.materials[0]
    assert (slate.name, slate.colour_rgb) == ("slate", (0x44, 0x55, 0x66))
    assert slate.cautions == ("Stone dust harms the lungs.",)
    assert own.user_file is not None
    assert own.user_file.endswith("shop.toml")


def test_only_these_tools_leaves_out_those_that_ship(written, shop):
    own = load_shop(written("only-these-tools = true\n" + TOOL))
    assert [tool.name for tool in own.tools] == ["my-bit"]
    assert own.materials == shop.materials


def test_a_shop_may_be_without_a_v_bit(written):
    text = "only-these-tools = true\n" + TOOL.replace('"v-bit"', '"end-mill"').replace("angle = 60\n", "")
    assert [tool.kind for tool in load_shop(written(text.replace("tip = 0.2\n", ""))).tools] == ["end-mill"]


def test_reports_every_problem_of_a_file_at_once(written):
    text = (
        TOOL.replace('"1/2in"', '"wide"').replace("flutes = 2", "flutes = 0").replace("angle = 60", "angle = 10")
        + "fluts = 3\n"
        + MATERIAL.replace('{ value = 0.005, source = "tried" }', "0.005")
        .replace("#445566", "blue")
        .replace("grain = false", 'grain = "some"')
        + '[machine.mine]\nlabel = "Mine"\ntravel = [1, 2]\nspindle-rpm = [24000, 8000]\ncollet = 12\n'
        + "[widget.a]\nx = 1\n"
    )
    got = problems_of(written(text))
    for start in (
        "shop.toml: tool.my-bit.diameter: 'wide' is not a length.",
        "shop.toml: tool.my-bit.flutes: 0 is too little.",
        "shop.toml: tool.my-bit.angle: 10 degrees is too little.",
        "shop.toml: tool.my-bit.fluts: There is no such key. Did you mean flutes?",
        "shop.toml: material.slate.chip-load-ratio: A number needs its source beside it.",
        "shop.toml: material.slate.colour: 'blue' is not a colour.",
        "shop.toml: material.slate.grain: 'some' is neither yes nor no.",
        "shop.toml: machine.mine.travel: [1, 2] is not a list of 3 numbers.",
        "shop.toml: machine.mine.spindle-rpm: 24000 is more than 8000.",
        "shop.toml: machine.mine.collet: There is no collet size 12 in ISO 15488.",
        "shop.toml: machine.mine.top-feed: It is missing.",
        "shop.toml: machine.mine.source: It is missing.",
        "shop.toml: widget: There is no such table.",
    ):
        assert any(line.startswith(start) for line in got), start


@pytest.mark.parametrize(
    ("change", "where", "what"),
    [
        (("tip = 0.2", "tip = 13"), "tip", "13 mm is not less than the diameter"),
        (("stick-out = 20", "stick-out = 5"), "stick-out", "5 mm is less than the cutting length"),
        (("source", "# source"), "source", "It is missing."),
        (('"v-bit"', '"vbit"'), "kind", "There is no kind 'vbit'."),
        (("shank", "can-plunge = 1\nshank"), "can-plunge", "1 is neither yes nor no."),
        (("diameter", "diametre = 1\ndiameter"), "diametre", "There is no such key."),
    ],
)
def test_names_the_key_of_a_bad_cutter(written, change, where, what):
    (got,) = problems_of(written(TOOL.replace(*change, 1)))
    assert got.startswith(f"shop.toml: tool.my-bit.{where}: {what}")


@pytest.mark.parametrize("name", ['"My Bit"', '"a/b"', '"a--b"', '""'])
def test_refuses_names_that_cannot_stand_in_a_file_name(written, name):
    (got,) = problems_of(written(TOOL.replace("my-bit", name)))
    assert "is not a name." in got


@pytest.mark.parametrize("text", ["tool = 3", "[tool]\nx = 3", "only-these-tools = 1", "[tool.a", "tool = [1]"])
def test_refuses_files_of_another_shape(written, text):
    assert all(line.startswith("shop.toml") for line in problems_of(written(text)))


def test_refuses_a_file_that_is_not_text(tmp_path):
    path = tmp_path / "shop.toml"
    path.write_bytes(b"\xff\xfe\x00")
    assert "is not UTF-8" in problems_of(path)[0]


def test_a_missing_file_is_a_wrong_request(tmp_path):
    with pytest.raises(AskError, match=r"^shop: .*nowhere\.toml cannot be read") as caught:
        load_shop(tmp_path / "nowhere.toml")
    assert caught.value.exit_code == 2


@pytest.mark.parametrize(
    ("kind", "more", "plunges"),
    [
        ("end-mill", "", False),
        ("end-mill", "can-plunge = true", True),
        ("ball-nose", "", False),
        ("v-bit", "angle = 60", True),
        ("drill", "angle = 118", True),
        ("drill", "angle = 118\ncan-plunge = false", False),
    ],
)
def test_a_mill_of_ones_own_goes_down_ramps_unless_it_is_said_to_plunge(written, kind, more, plunges):
    row = TOOL.replace('"v-bit"', f'"{kind}"').replace("tip = 0.2\n", "").replace("angle = 60", more)
    own = load_shop(written(row)).tools[0]
    assert (own.name, own.can_plunge) == ("my-bit", plunges)


def test_what_presses_its_chips_down_is_not_pushed_straight_down(shop):
    assert not any(tool.can_plunge for tool in shop.tools if tool.cut not in (None, "up-cut"))
