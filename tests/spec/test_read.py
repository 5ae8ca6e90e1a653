"""What was asked for becomes a complete spec, from texts and from values alike."""

from pathlib import Path

import pytest

from signgen.borders.rectangle import Rectangle
from signgen.borders.rounded import Rounded
from signgen.errors import AskError, CannotMakeError
from signgen.holes.corners import Corners
from signgen.holes.none import NoHoles
from signgen.spec.read import read_spec
from signgen.spec.sign_spec import TabSpec
from signgen.spec.trim import FrameSpec


def problems_of(error, asked, shop):
    with pytest.raises(error) as caught:
        read_spec(asked, shop)
    assert type(caught.value) is error
    return [str(problem) for problem in caught.value.problems]


def test_reads_the_house_number(house_number, shop):
    spec = read_spec(house_number, shop)
    assert (spec.width_mm, spec.height_mm, spec.thickness_mm) == (220, 140, 12)
    assert spec.text.lines == ("17", "Larkspur Lane")
    assert spec.material.name == "birch-plywood"
    assert spec.holes == Corners(diameter_mm=7, inset_mm=14)
    assert spec.border == Rectangle()
    assert (spec.v_bit.name, spec.end_mill) == ("v-bit-90", None)
    assert spec.depth_mm == 4.8
    assert spec.tabs == TabSpec(count=4, width_mm=6, height_mm=1.5)
    assert (spec.origin, spec.z_zero, spec.dialect, spec.finish) == ("sign", "bottom", "plain", "groove")
    assert (spec.breakthrough_mm, spec.clearance_mm, spec.board_mm, spec.frame) == (0.3, 10, None, None)
    assert (spec.text.cap_height_mm, spec.text.align, spec.text.margin_mm) == (None, "centre", 11.2)
    assert spec.tolerances.total_mm == 0.01


def test_values_of_a_file_mean_the_same_as_texts(house_number, shop):
    values = house_number | {"size": [220, 140], "thickness": 12, "hole-diameter": 7.0, "inset": "14 mm"}
    assert read_spec(values, shop) == read_spec(house_number, shop)


def test_none_means_not_given(house_number, shop):
    assert read_spec(house_number | {"depth": None, "border": None, "x": None}, shop) == read_spec(house_number, shop)


def test_needs_only_text_size_and_thickness(shop):
    spec = read_spec({"text": "17", "size": "100x60", "thickness": "10"}, shop)
    assert spec.holes == NoHoles()
    assert problems_of(AskError, {}, shop) == [
        "text: It is missing. Give text TEXT.",
        "size: It is missing. Give size WIDTHxHEIGHT.",
        "thickness: It is missing. Give thickness LENGTH.",
    ]


def test_a_corner_radius_alone_makes_the_border_rounded(house_number, shop):
    assert read_spec(house_number | {"corner-radius": "1/2in"}, shop).border == Rounded(radius_mm=12.7)
    assert read_spec(house_number | {"border": "rounded"}, shop).border == Rounded(radius_mm=14)


def test_the_usual_depth_follows_the_board_and_the_bit(house_number, shop):
    def depth(**more):
        return read_spec(house_number | {key.replace("_", "-"): value for key, value in more.items()}, shop).depth_mm

    assert depth(thickness="6") == 2.4
    assert depth(thickness="20") == 6  # as far as a 90 degree bit of 12 mm reaches: half its diameter
    assert depth(thickness="20", v_bit="60") == 8
    assert depth(thickness="1.5") == 0.5  # 1 mm must stay
    assert depth(thickness="20", v_bit_diameter="6") == 3


@pytest.mark.parametrize(
    ("more", "message"),
    [
        ({"depth": "6.5"}, "depth: 6.5 mm is deeper than the V-bit reaches (90 degree V-bit, 12 mm). Use at most 6"),
        ({"depth": "5.5", "thickness": "6"}, "depth: 5.5 mm leaves only 0.5 mm of a board of 6 mm. Use at most 4.8"),
        ({"depth": "4.9", "thickness": "6"}, "depth: 4.9 mm leaves only 1.1 mm"),
        ({"thickness": "1"}, "thickness: 1 mm is too thin to engrave."),
        (
            {"size": "450x100", "machine": "desktop-router"},
            "size: 450 x 100 mm is more than desktop-router travels: 400 x 400 mm.",
        ),
        ({"thickness": "95"}, "thickness: 95 mm with 10 mm of clearance needs 105.3 mm of travel in Z"),
        ({"end-mill": "12"}, "end-mill: The 12 mm shank of end-mill-12 does not go into the collets of desktop"),
    ],
)  # fmt: skip
def test_says_what_cannot_be_made(house_number, shop, more, message):
    (problem,) = problems_of(CannotMakeError, house_number | more, shop)
    assert problem.startswith(message)


def test_named_cutters_are_the_shops_own_or_made_from_the_figures(house_number, shop):
    spec = read_spec(house_number | {"v-bit": "60", "end-mill": "4"}, shop)
    assert (spec.v_bit.name, spec.end_mill.name) == ("v-bit-60", "end-mill-4")
    spec = read_spec(house_number | {"v-bit": "45", "v-bit-tip": "0.2", "end-mill": "1/8in"}, shop)
    assert (spec.v_bit.angle_deg, spec.v_bit.tip_mm, spec.end_mill.diameter_mm) == (45, 0.2, 3.175)
    assert "assumed" in spec.v_bit.source
    assert "assumed" in spec.end_mill.source


def test_the_name_of_a_cutter_in_place_of_a_diameter_is_shown_the_way(house_number, shop):
    (problem,) = problems_of(AskError, house_number | {"end-mill": "down-cut-6"}, shop)
    assert problem == "end-mill: 'down-cut-6' is the name of a cutter. Give a diameter, or the name as end-mill-name."
    assert read_spec(house_number | {"end-mill-name": "down-cut-6"}, shop).end_mill.cut == "down-cut"


def test_a_frame_pushes_the_letters_in(house_number, shop):
    spec = read_spec(house_number | {"frame": "8"}, shop)
    assert spec.frame == FrameSpec(inset_mm=8, width_mm=2, gap_mm=2)
    assert spec.text.margin_mm == pytest.approx(8 + 1 + 0.04 * 140)
    assert read_spec(house_number | {"frame": "8", "margin": "3"}, shop).text.margin_mm == 3


def test_dialects_are_those_of_the_caller(house_number, shop):
    assert read_spec(house_number | {"dialect": "inch"}, shop, ("plain", "inch")).dialect == "inch"
    with pytest.raises(AskError, match=r"^dialect: There is no dialect 'inch'\. Choose from: plain\.$"):
        read_spec(house_number | {"dialect": "inch"}, shop)


def test_a_fonts_path_becomes_absolute_and_a_name_stays(house_number, shop, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert read_spec(house_number | {"font": "pacifico"}, shop).text.font == "pacifico"
    assert read_spec(house_number | {"font": "own.ttf"}, shop).text.font == str(Path(tmp_path / "own.ttf").resolve())


def test_reports_every_problem_at_once_and_no_consequence(shop):
    got = problems_of(
        AskError,
        {
            "text": " ", "size": "0x140", "thickness": "thick", "material": "birch sponge", "border": "rund",
            "corner-radius": "-1", "holes": "corner", "inset": "x", "depth": "99", "v-bit": "5", "bordr": "rounded",
            "machine": "mine", "dialect": "mine", "tabs": "2.5", "margin": "80", "board": "10x10",
        },
        shop,
    )  # fmt: skip
    assert sorted(line.split(":")[0] for line in got) == [
        "border", "bordr", "corner-radius", "dialect", "holes", "inset", "machine", "material", "size", "tabs", "text",
        "thickness", "v-bit",
    ]  # fmt: skip


def test_what_cannot_be_made_is_told_along_with_what_is_wrong(house_number, shop):
    got = problems_of(AskError, house_number | {"depth": "6.5", "material": "sponge"}, shop)
    assert [line.split(":")[0] for line in got] == ["material", "depth"]


@pytest.mark.parametrize(
    ("more", "message"),
    [
        ({"text": ""}, "text: There is no text."),
        ({"text": []}, "text: There is no text."),
        ({"size": "0"}, "size: '0' is not a size."),
        ({"size": "0x0"}, "size: 0 mm is too little. Use at least 10 mm."),
        ({"size": "-220x140"}, "size: -220 mm is too little."),
        ({"size": "22000x140"}, "size: 22000 mm is too much. Use at most 5000 mm."),
        ({"size": "nanx140"}, "size: 'nan' is not a length."),
        ({"thickness": "0"}, "thickness: 0 mm is too little."),
        ({"thickness": "1200"}, "thickness: 1200 mm is too much."),
        ({"material": "birch-plywod"}, "material: There is no material 'birch-plywod'. Did you mean birch-plywood"),
        ({"border": "roundd"}, "border: There is no border 'roundd'. Did you mean rounded?"),
        ({"border": "rectangle", "corner-radius": "5"}, "corner-radius: The border 'rectangle' has no such option."),
        ({"holes": "at:50,50"}, "inset: The hole pattern 'at' has no such option."),
        ({"inset": "80"}, "inset: 80 mm from both ends leaves no wood between the holes of a sign 140 mm high."),
        ({"screw": "M5"}, "screw: hole-diameter is given too."),
        ({"hole-diameter": "0"}, "hole-diameter: 0 mm is too little."),
        ({"finish": "painted"}, "finish: There is no finish 'painted'."),
        ({"align": "middle"}, "align: There is no align 'middle'."),
        ({"v-bit": "180"}, "v-bit: 180 degrees is too much. Use at most 150 degrees."),
        ({"v-bit-tip": "7", "v-bit-diameter": "6"}, "v-bit-tip: A flat of 7 mm is no less than the diameter of 6 mm."),
        ({"v-bit-tip": "13"}, "v-bit-tip: A flat of 13 mm is no less than the diameter of 12 mm."),
        ({"end-mill": "-6"}, "end-mill: -6 mm is too little."),
        ({"end-mill-length": "20"}, "end-mill-length: There is no end mill for it."),
        ({"frame": "0.5"}, "frame: A line of 2 mm with its middle 0.5 mm inside runs over the edge."),
        ({"frame": "70"}, "frame: 70 mm leaves no room inside a sign 220 x 140 mm. Use less than 69 mm."),
        ({"frame-width": "3"}, "frame-width: There is no frame for it."),
        ({"margin": "70"}, "margin: 70 mm on both sides leaves no room on a sign 140 mm across."),
        ({"tab-height": "12"}, "tab-height: 12 mm is no less than the board's 12 mm."),
        ({"tabs": "-1"}, "tabs: -1 is too little."),
        ({"board": "200x200"}, "board: The board of 200 x 200 mm is smaller than the sign of 220 x 140 mm."),
        ({"board": "150x230"}, "board: The board of 150 x 230 mm is smaller than the sign of 220 x 140 mm. Turn it"),
        ({"tolerance": "0"}, "tolerance: 0 mm is too little."),
        ({"clearance": "0"}, "clearance: 0 mm is too little."),
        ({"origin": "middle"}, "origin: There is no origin 'middle'. Choose from: sign, stock."),
        ({"cap-hight": "40"}, "cap-hight: There is no such key. Did you mean cap-height"),
        ({"font": ""}, "font: Nothing stands here."),
        ({"text": {"a": 1}}, "text: {'a': 1} is not a text."),
    ],
)  # fmt: skip
def test_bad_input_is_named_by_the_word_that_was_typed(house_number, shop, more, message):
    (problem,) = problems_of(AskError, house_number | more, shop)
    assert problem.startswith(message)
