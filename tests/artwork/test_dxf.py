"""DXF drawings against closed forms: every entity, loose ends joined, blocks, units; refused by name."""

import io
import math

import pytest

from signgen.artwork import dxf
from signgen.artwork.dxf import read_dxf
from signgen.artwork.picture import Picture
from signgen.errors import AskError

ezdxf = pytest.importorskip("ezdxf", reason="the extra dxf is not installed")


def text_of(draw, units=4):
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = units
    draw(document.modelspace(), document)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue().encode()


def picture_of(draw, units=4):
    items, unit = read_dxf(text_of(draw, units), "trial.dxf")
    return Picture(file="trial.dxf", items=items, unit_mm=unit)


def area_of(picture):
    return sum(area.area for area in picture.seen(lambda _: "all", (1, 0, 0, 1, 0, 0), 1e-4).values())


def _block(space, document):
    block = document.blocks.new("B")
    block.add_circle((0, 0), 2)
    space.add_blockref("B", (10, 10), dxfattribs={"xscale": 2, "yscale": 3, "rotation": 30})
    space.add_blockref("B", (40, 10))


def _hatch(space, _):
    hatch = space.add_hatch()
    hatch.paths.add_polyline_path([(0, 0), (10, 0), (10, 10), (0, 10)], is_closed=True)
    hatch.paths.add_polyline_path([(2, 2), (4, 2), (4, 4), (2, 4)], is_closed=True, flags=16)


def _loose(space, _):
    """A slot of lines and half circles in no order, one line drawn backwards."""
    space.add_line((20, 5), (0, 5))
    space.add_arc((20, 0), 5, 270, 90)
    space.add_line((20, -5), (0, -5))
    space.add_arc((0, 0), 5, 90, 270)


MILLION = {"column_count": 1000, "row_count": 1000, "column_spacing": 3, "row_spacing": 3}

DRAWN = {
    "circle": (lambda s, _: s.add_circle((5, 5), 3), 9 * math.pi),
    "ring of circles": (lambda s, _: [s.add_circle((5, 5), r) for r in (3, 5)], 16 * math.pi),
    "ellipse": (lambda s, _: s.add_ellipse((0, 0), (6, 0), 0.5), 18 * math.pi),
    "polyline": (lambda s, _: s.add_lwpolyline([(0, 0), (4, 0), (4, 3)], close=True), 6),
    "bulges": (lambda s, _: s.add_lwpolyline([(0, 0, 1), (4, 0, 1)], format="xyb", close=True), 4 * math.pi),
    "old polyline": (lambda s, _: s.add_polyline2d([(0, 0), (4, 0), (4, 3)], close=True), 6),
    "loose lines and arcs": (_loose, 200 + 25 * math.pi),
    "closed spline": (lambda s, _: s.add_spline([(0, 0), (4, 0), (4, 4), (0, 4), (0, 0)]), None),
    "blocks": (_block, 4 * math.pi * 6 + 4 * math.pi),
    "hatch": (_hatch, 96),
}


@pytest.mark.parametrize("name", DRAWN)
def test_has_the_area_that_its_geometry_has(name):
    draw, area = DRAWN[name]
    found = area_of(picture_of(draw))
    if area is None:  # the curve through the corners of a square bulges out
        assert 16 < found < 28
    else:
        assert found == pytest.approx(area, rel=1e-3)


def test_an_open_line_is_drawn_with_a_pen_and_followed():
    picture = picture_of(lambda s, _: s.add_line((0, 0), (30, 40)))
    (lines,) = picture.seen_lines(lambda _: "all", (1, 0, 0, 1, 0, 0), 1e-3).values()
    assert lines.length == pytest.approx(50)
    assert area_of(picture) == pytest.approx(50 * 0.25 + math.pi * 0.125**2, rel=1e-3)


@pytest.mark.parametrize(("code", "unit"), [(0, None), (1, 25.4), (4, 1.0), (5, 10.0)])
def test_units_are_those_of_the_file(code, unit):
    assert picture_of(lambda s, _: s.add_circle((0, 0), 1), code).unit_mm == unit


def test_y_runs_up():
    picture = picture_of(lambda s, _: s.add_lwpolyline([(0, 10), (4, 10), (4, 13)], close=True))
    _, y0, _, y1 = picture.bounds(lambda _: "all")
    assert (y0, y1) == pytest.approx((-13, -10))


@pytest.mark.parametrize(
    ("raw", "key"),
    [
        (text_of(lambda s, _: s.add_text("Quince")), "art.not_said"),
        (text_of(lambda s, _: s.add_circle((1e9, 0), 1)), "art.too_far"),
        (b"AutoCAD Binary DXF\r\n\x1a\x00", "art.dxf_binary"),
        (b"Larkspur Lane", "art.dxf_broken"),
        (text_of(lambda s, _: s.add_circle((0, 0), 1))[:3000], "art.dxf_broken"),
        (b"\xff\xfe\x00" * 50, "art.dxf_broken"),
    ],
)
def test_is_refused_by_name(raw, key):
    with pytest.raises(AskError) as caught:
        area_of(Picture(file="x", items=read_dxf(raw, "trial.dxf")[0], unit_mm=1))
    assert caught.value.problems[0].what.key == key
    assert caught.value.problems[0].remedy


def test_a_block_that_repeats_a_million_times_and_one_in_itself_are_refused():
    def many(space, document):
        document.blocks.new("B").add_circle((0, 0), 1)
        space.add_blockref("B", (0, 0), dxfattribs=MILLION)

    def itself(space, document):
        block = document.blocks.new("B")
        block.add_blockref("B", (1, 1))
        space.add_blockref("B", (0, 0))

    for draw in (many, itself):
        with pytest.raises(AskError):
            read_dxf(text_of(draw), "trial.dxf")


def test_without_the_reader_it_is_said_how_to_get_it(monkeypatch):
    def without(name):
        raise ImportError(name)

    monkeypatch.setattr(dxf.importlib, "import_module", without)
    with pytest.raises(AskError, match="ezdxf"):
        read_dxf(b"", "trial.dxf")
