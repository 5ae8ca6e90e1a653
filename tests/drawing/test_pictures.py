"""Pictures on signs: their size, their place beside the text, what they are made of, and what is refused."""

import tomllib

import pytest
import shapely
from msgspec.structs import replace

from signgen.checks.text_as_ordered import against_the_files
from signgen.drawing.draw import draw
from signgen.drawing.pictures import _thin_walls
from signgen.errors import AskError, CannotMakeError
from signgen.features.groove import Groove, Stroke
from signgen.features.recess import Recess
from signgen.pipeline import gather, prove, read_sign
from signgen.shop.load import load_shop
from signgen.spec.read import read_spec
from signgen.spec.sign_file import dump_sign_file

SHOP = load_shop()
ARROW = '<path d="M0 10h30v-10l20 20-20 20v-10h-30z"/>'
ARROW_AREA, ARROW_SIZE = 30 * 20 + 20 * 20, (50, 40)
ASKED = {"text": "Mill Lane", "size": "220x120", "thickness": "12"}


@pytest.fixture
def svg(tmp_path):
    def written(inside, name="picture.svg"):
        file = tmp_path / name
        file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 50 40">{inside}</svg>')
        return str(file)

    return written


def spec_of(**more):
    return read_spec(ASKED | {key.replace("_", "-"): value for key, value in more.items()}, SHOP)


def area_of(drawing, source="art"):
    return shapely.union_all([each.footprint for each in drawing.features if each.source == source])


def ink_of(drawing):
    return shapely.total_bounds([each.footprint for each in drawing.letters])


@pytest.mark.parametrize("place", ["left", "right", "above", "below"])
def test_stands_beside_the_text_and_both_in_the_middle(svg, place):
    drawing = draw(spec_of(art=svg(ARROW), art_place=place))
    x0, y0, x1, y1 = area_of(drawing).bounds
    a0, b0, a1, b1 = ink_of(drawing)
    apart = {"left": a0 - x1, "right": x0 - a1, "above": y0 - b1, "below": b0 - y1}[place]
    assert 3 < apart < 30
    if place in ("left", "right"):
        assert (min(x0, a0) + max(x1, a1)) / 2 == pytest.approx(110, abs=0.05)
        assert (y0 + y1) / 2 == pytest.approx((b0 + b1) / 2, abs=0.05)
    else:
        assert (x0 + x1) / 2 == pytest.approx((a0 + a1) / 2, abs=0.05)
        assert (min(y0, b0) + max(y1, b1)) / 2 == pytest.approx(60, abs=6)


@pytest.mark.parametrize("place", ["top-left", "bottom-right", "180,25"])
def test_text_keeps_clear_of_one_in_a_corner_or_where_it_was_put(svg, place):
    drawing = draw(spec_of(art=svg(ARROW), art_place=place, art_height=24))
    area = area_of(drawing)
    assert all(shapely.distance(area, letter.footprint) > 1 for letter in drawing.letters)
    if "," in place:
        assert area.envelope.centroid.coords[0] == pytest.approx((180, 25), abs=1e-4)


@pytest.mark.parametrize(("key", "value"), [("art_height", 30), ("art_width", 45)])
def test_has_the_size_that_was_asked_for_and_the_area_of_its_file(svg, key, value):
    drawing = draw(spec_of(**{"art": svg(ARROW), key: value}))
    scale = value / (ARROW_SIZE[1] if "height" in key else ARROW_SIZE[0])
    assert area_of(drawing).area == pytest.approx(ARROW_AREA * scale**2, rel=1e-6)
    assert drawing.pictures[0].area_mm2 == pytest.approx(ARROW_AREA * scale**2, rel=1e-6)


@pytest.mark.parametrize(
    ("head", "unit_mm"),
    [
        ('width="60mm" height="40mm" viewBox="0 0 60 40"', 1.0),
        ('width="60mm" height="40mm" viewBox="0 0 120 80"', 0.5),
        ('width="2in" height="1in" viewBox="0 0 100 50"', 25.4 / 50),
        ('width="96" height="96" viewBox="0 0 96 96"', 25.4 / 96),  # CSS 2.1, 4.3.2: 96 px are an inch
    ],
)
def test_is_as_large_as_its_file_says(tmp_path, head, unit_mm):
    file = tmp_path / "own.svg"
    file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" {head}><rect x="5" y="5" width="40" height="20"/></svg>')
    spec = spec_of(art=str(file), art_size="file", size="400x200")
    x0, y0, x1, y1 = area_of(draw(spec)).bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((40 * unit_mm, 20 * unit_mm), abs=1e-3)
    assert read_spec(tomllib.loads(dump_sign_file(spec)), SHOP) == spec


@pytest.mark.parametrize(("units", "unit_mm"), [(4, 1.0), (1, 25.4), (5, 10.0)])
def test_is_as_large_as_a_dxf_file_says_in_its_units(tmp_path, units, unit_mm):
    ezdxf = pytest.importorskip("ezdxf")
    document = ezdxf.new(units=units)
    corners = [(0, 0), (50 / unit_mm, 0), (50 / unit_mm, 25 / unit_mm), (0, 25 / unit_mm)]
    document.modelspace().add_lwpolyline(corners, close=True)
    document.saveas(tmp_path / "own.dxf")
    x0, y0, x1, y1 = area_of(draw(spec_of(art=str(tmp_path / "own.dxf"), art_size="file", size="400x200"))).bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((50, 25), abs=1e-3)


def test_a_file_that_does_not_say_how_large_it_is_has_no_size_of_its_own(tmp_path):
    file = tmp_path / "unsaid.svg"
    file.write_text('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40"><rect width="60" height="30"/></svg>')
    with pytest.raises(AskError, match=r"unsaid\.svg does not say how large"):
        draw(spec_of(art=str(file), art_size="file"))


def test_is_turned_counter_clockwise(svg):
    """An arrow to the right points up after a quarter."""
    area = area_of(draw(spec_of(art=svg(ARROW), art_rotation=90, art_height=40)))
    x0, y0, x1, y1 = area.bounds
    assert (x1 - x0, y1 - y0) == pytest.approx((32, 40), abs=1e-4)
    assert (
        area.intersection(shapely.box(x0, y1 - 1, x1, y1)).area
        < area.intersection(shapely.box(x0, y0, x1, y0 + 1)).area
    )


def test_each_colour_is_made_in_its_own_way(svg):
    file = svg('<rect width="20" height="40"/><rect x="30" width="20" height="40" fill="red"/>'
               '<rect x="35" y="10" width="10" height="10" fill="#00f"/>')  # fmt: skip
    drawing = draw(spec_of(art=file, art_height=40, art_colours="black=groove; red=recess 2; blue=leave"))
    (groove,) = (each for each in drawing.of(Groove) if each.source == "art")
    (recess,) = drawing.of(Recess)
    assert groove.area.area == pytest.approx(800, rel=1e-6)
    assert (recess.area.area, recess.depth_mm) == (pytest.approx(700, rel=1e-6), 2)
    assert dump_sign_file(spec_of(art=file, art_colours="black=recess;#f00=leave")).count("black=recess 3") == 1


def test_lines_of_a_stroke_are_the_middle_of_the_pen(svg):
    file = svg('<path d="M10 20H40" stroke="black" stroke-width="8" fill="none"/>')
    drawing = draw(spec_of(art=file, art_width=60, finish="stroke"))
    (stroke,) = (each for each in drawing.of(Stroke) if each.source == "art")
    assert stroke.lines.length == pytest.approx(60, rel=1e-6)


def test_tables_of_a_sign_file_hold_several_and_are_written_back(svg, tmp_path):
    svg(ARROW, "one.svg")
    svg('<circle cx="25" cy="20" r="20"/>', "two.svg")
    file = tmp_path / "mill.toml"
    file.write_text(
        'text = "Mill Lane"\nsize = "260x120"\nthickness = 12\n[[art]]\nfile = "one.svg"\nrotation = 180\n'
        '[[art]]\nfile = "two.svg"\nplace = "right"\nheight = 30\nfinish = "recess"\n'
    )
    spec = read_sign(gather({}, file))
    assert [picture.place for picture in spec.pictures] == ["left", "right"]
    assert read_spec(tomllib.loads(dump_sign_file(spec)), SHOP) == spec
    again = read_sign(gather({"art-height": "25"}, file))
    assert [picture.height_mm for picture in again.pictures] == [25, 25]
    names = {each.name for each in draw(spec).features if each.source == "art"}
    assert names == {"art 1", "art 2"}


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"art_place": "everywhere"}, "art-place"),
        ({"art_width": 30, "art_height": 20}, "art-height"),
        ({"art_width": 30, "art_size": "file"}, "art-size"),
        ({"art_size": "huge"}, "art-size"),
        ({"art_finish": "raised"}, "art-finish"),
        ({"art_colours": "black=gold"}, "art-colours"),
        ({"art_colours": "larkspur=groove"}, "art-colours"),
        ({"art_depth": 40}, "art-depth"),
    ],
)
def test_what_makes_no_sense_is_refused_under_the_word_that_was_typed(svg, more, where):
    with pytest.raises((AskError, CannotMakeError)) as caught:
        spec_of(art=svg(ARROW), **more)
    assert {problem.where for problem in caught.value.problems} == {where}


def test_a_file_that_is_not_there_or_shows_nothing_is_refused(svg, tmp_path):
    for file in (str(tmp_path / "none.svg"), svg('<rect width="9" height="9" fill="white"/>')):
        with pytest.raises(AskError) as caught:
            draw(spec_of(art=file))
        assert caught.value.problems[0].where == "art"


def test_one_that_runs_off_the_sign_or_into_a_hole_is_refused(svg):
    block = svg('<rect width="50" height="40"/>')
    for more in ({"art_place": "10,10"}, {"art_place": "30,25", "holes": "corners"}):
        with pytest.raises(CannotMakeError) as caught:
            draw(spec_of(art=block, art_height=40, **more))
        assert "art" in {problem.where for problem in caught.value.problems}


def test_thin_wood_between_parts_is_said_with_the_height_that_holds(svg):
    file = svg('<rect width="24.8" height="40"/><rect x="25" width="25" height="40"/>')
    (said,) = (
        each for each in draw(spec_of(art=file, art_height=40)).warnings if "art.thin" in getattr(each, "key", "")
    )
    assert said.values["thin"].value == pytest.approx(0.2, abs=0.02)
    assert said.values["height"].value == pytest.approx(100, abs=8)
    assert not _thin_walls(shapely.box(0, 0, 10, 3).union(shapely.box(0, 0, 3, 10)), 0.5)


@pytest.mark.parametrize("finish", ["groove", "recess", "raised", "stroke"])
def test_what_is_cut_is_what_the_file_shows(svg, finish):
    facts = prove(spec_of(art=svg(ARROW), art_place="right", finish=finish, text="Mill", size="180x90"))
    (result,) = (each for each in facts.checks.results if each.code == "C125")
    assert result.passed
    assert "pictures as their files say" in str(result.detail)


def test_a_picture_of_another_size_than_its_file_says_is_found(svg):
    drawing = draw(spec_of(art=svg(ARROW), text="Mill", size="120x70"))
    assert not list(against_the_files(drawing))
    (picture,) = drawing.pictures
    for wrong in (replace(picture, area_mm2=picture.area_mm2 * 1.02), replace(picture, name="art 2")):
        (finding,) = against_the_files(replace(drawing, pictures=(wrong,)))
        assert "its file says" in str(finding.message)
