"""An outline drawn elsewhere, from its file to the sign's size."""

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from signgen.borders.path import PathOutline, own_size_mm
from signgen.errors import AskError, SignGenError
from signgen.spec.sign_file import dump_sign_file, load_sign_file
from tests.asking import read_border, spec_of

LEAF = "M0 40 C20 -10 110 -10 150 40 C110 90 20 90 0 40 z"


@pytest.fixture
def leaf(tmp_path):
    return drawn(tmp_path, LEAF)


def drawn(folder, data, unit="1mm"):
    file = folder / "leaf.svg"
    file.write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1" width="{unit}"><path d="{data}"/></svg>'
    )
    return file


def test_has_its_own_size(leaf):
    """By the cubic's greatest height: 3/4 of the way to its control points, 40 - 0.75 x 50 = 2.5 from the top."""
    assert own_size_mm(str(leaf)) == pytest.approx((150, 75))


@pytest.mark.parametrize("size", [(150.0, 75.0), (300.0, 150.0), (33.1, 16.55)])
def test_fills_its_rectangle_to_the_last_digit(leaf, size):
    outline = read_border(f"path:{leaf}", {}, *size).outline(*size, 0.0025)
    assert outline.bounds == pytest.approx((0, 0, *size), abs=1e-9)
    assert outline.exterior.is_ccw
    assert outline.is_valid
    fine = read_border(f"path:{leaf}", {}, *size).outline(*size, 0.0001)
    places = shapely.points(shapely.get_coordinates(shapely.segmentize(outline.exterior, 0.2)))
    assert shapely.distance(fine.exterior, places).max() <= 0.0026


def test_stands_the_way_it_was_drawn(tmp_path):
    file = drawn(tmp_path, "M0 0H60L30 40Z")
    outline = read_border(f"path:{file}", {}, 60, 40).outline(60, 40, 0.01)
    assert set(outline.exterior.coords) == {(0, 40), (60, 40), (30, 0)}


def test_keeps_its_proportions_unless_told_otherwise(leaf):
    with pytest.raises(AskError) as caught:
        read_border(f"path:{leaf}", {}, 200, 200)
    assert str(caught.value) == (
        "size: 200 x 200 mm has other proportions than the path, which is 150 x 75 mm. "
        "Use 200x100, 400x200, leave size out, or give path-stretch."
    )
    stretched = read_border(f"path:{leaf}", {"path-stretch": True}, 200, 200)
    assert stretched.outline(200, 200, 0.01).bounds == pytest.approx((0, 0, 200, 200))
    assert read_border(f"path:{leaf}", {}, 200, 100.4).outline(200, 100.4, 0.01).bounds[3] == pytest.approx(100.4)


def test_asked_gives_an_equal_border(leaf):
    for values in ({}, {"path-stretch": True}):
        made = read_border(f"path:{leaf}", values, 150, 75)
        asked = made.asked()
        assert read_border(asked.pop("border"), asked, 150, 75) == made


@pytest.mark.parametrize(
    ("data", "what"),
    [
        ("M0 0L40 30L40 0L0 30Z", "crosses or touches itself 20 mm from its left and 15 mm from its lower side"),
        ("M0 0H40V30H20V0V30H0Z", "crosses or touches itself"),
        ("M0 0H40H0Z", "no width or no height"),
        ("M0 0L40 30L20 15Z", "crosses or touches itself"),
    ],
)
def test_refuses_an_outline_that_crosses_itself_or_encloses_nothing(tmp_path, data, what):
    with pytest.raises(AskError) as caught:
        own_size_mm(str(drawn(tmp_path, data)))
    (problem,) = caught.value.problems
    assert what in str(problem.what) or "encloses nothing" in str(problem.what)
    assert "leaf.svg:1" in problem.where


def test_a_sign_takes_the_files_size_when_none_is_given(leaf):
    plain = {"holes": "none", "hole_diameter": None, "inset": None}
    spec = spec_of(border=f"path:{leaf}", size=None, **plain)
    assert (spec.width_mm, spec.height_mm) == (150, 75)
    assert isinstance(spec.border, PathOutline)
    spec = spec_of(border=f"path:{leaf}", size="300x150", **plain)
    assert spec.width_mm == 300


def test_a_bad_file_is_told_once_and_only(tmp_path):
    with pytest.raises(AskError) as caught:
        spec_of(border=f"path:{tmp_path / 'none.svg'}", size=None)
    (problem,) = caught.value.problems
    assert "none.svg cannot be read" in str(problem.what)


@pytest.mark.parametrize(("unit", "what"), [("0.01mm", "too little"), ("9m", None), ("1000cm", "too much")])
def test_a_files_size_keeps_to_the_limits_of_signs(tmp_path, unit, what):
    file = drawn(tmp_path, LEAF, unit)
    plain = {"holes": "none", "hole_diameter": None, "inset": None}
    if what is None:  # not a unit that SVG has: px are assumed
        assert spec_of(border=f"path:{file}", size=None, **plain).width_mm == pytest.approx(150 * 25.4 / 96, abs=0.001)
        return
    with pytest.raises(AskError, match=rf"^size: .*{what}"):
        spec_of(border=f"path:{file}", size=None, **plain)


def test_the_file_is_seen_from_the_folder_of_the_sign_file(tmp_path, leaf):
    sign = tmp_path / "sign.toml"
    sign.write_text('text = "Leaf"\nthickness = 12\nborder = "path: leaf.svg"\n')
    assert load_sign_file(sign)["border"] == f"path:{leaf}"


def test_the_resolved_sign_file_names_it_and_its_size(leaf):
    plain = {"holes": "none", "hole_diameter": None, "inset": None}
    text = dump_sign_file(spec_of(border=f"path:{leaf}", size="200x200", path_stretch="yes", **plain))
    assert f'border = "path:{leaf}"' in text
    assert "path-stretch = true" in text
    assert "size = [200, 200]" in text


def test_says_what_is_missing():
    with pytest.raises(AskError, match=r"^border: 'path' says too little\. Write path:FILE\.svg\.$"):
        read_border("path", {}, 100, 100)


FRAGMENTS = st.lists(
    st.one_of(
        st.sampled_from([*"MmLlHhVvCcSsQqTtAaZz", " ", ",", "-", ".", "e", "1e9", "1e-9", "00", "1.", "01", "\n"]),
        st.integers(-300, 300).map(str),
        st.floats(-300, 300).map(lambda value: f"{value:.3f} "),
    ),
    max_size=40,
).map("".join)


SHAPES = st.lists(
    st.tuples(st.floats(-200, 200), st.floats(-200, 200), st.sampled_from("LLTQCA")), min_size=3, max_size=8
)


def path_of(steps):
    """Path data of steps that each parser must take: lines, curves and arcs through random points."""
    words = ["M0 0"]
    for x, y, kind in steps:
        extra = {
            "Q": f"{y:.2f} {x:.2f} ",
            "C": f"{y:.2f} 0 0 {x:.2f} ",
            "A": f"{abs(x) + 1:.2f} {abs(y) + 1:.2f} 20 0 1 ",
        }
        words.append(f"{kind}{extra.get(kind, '')}{x:.2f} {y:.2f}")
    return " ".join(words) + "Z"


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.one_of(FRAGMENTS, SHAPES.map(path_of)))
def test_whatever_path_data_say_they_make_an_outline_or_a_clear_error(tmp_path, data):
    file = drawn(tmp_path, data)
    try:
        width, height = own_size_mm(str(file))
        outline = read_border(f"path:{file}", {}, width, height).outline(width, height, 0.01)
    except SignGenError as caught:
        error = caught
    else:
        assert outline.is_valid
        assert outline.bounds == pytest.approx((0, 0, width, height), rel=1e-6, abs=1e-6)
        return
    assert all(problem.where and problem.what and problem.remedy for problem in error.problems)


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    raw=st.one_of(
        st.binary(max_size=200),
        st.text(max_size=200).map(str.encode),
        st.text(alphabet='<>/="svgpathd M0L1Z&;!-').map(str.encode),
    )
)
def test_whatever_a_file_holds_it_is_read_or_refused(tmp_path, raw):
    file = tmp_path / "any.svg"
    file.write_bytes(raw)
    with pytest.raises(AskError):
        own_size_mm(str(file))
