"""Files that draw one path, and files that must not be trusted."""

import math

import pytest

from signgen.artwork.matrix import IDENTITY, times
from signgen.borders.svg_file import GREATEST_BYTES, read_svg_path
from signgen.errors import AskError

SVG = '<svg xmlns="http://www.w3.org/2000/svg"{0}>{1}</svg>'
PATH = '<path d="M0 0h10v10z"/>'


@pytest.fixture
def read(tmp_path):
    def _read(text):
        file = tmp_path / "outline.svg"
        file.write_bytes(text if isinstance(text, bytes) else text.encode())
        return read_svg_path(file)

    return _read


def refused(read, text):
    with pytest.raises(AskError) as caught:
        read(text)
    (problem,) = caught.value.problems
    assert problem.remedy
    return problem


def applied(matrix, x, y):
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


@pytest.mark.parametrize(
    ("root", "mm"),
    [
        ("", 25.4 / 96),  # CSS: a px is 1/96 in
        (' width="50mm" height="40mm"', 25.4 / 96),
        (' viewBox="0 0 100 80" width="50mm" height="40mm"', 0.5),
        (' viewBox="0 0 100 80" width="2in"', 0.508),
        (' viewBox="0 0 100 80" width="7.2pt" height="100cm"', 0.0254),
        (' viewBox="0 0 100 80" width="96" height="96px"', 0.254),
        (' viewBox="0,0,100,80" width="100%" height="100%"', 25.4 / 96),
    ],
)
def test_a_number_is_as_many_millimetres_as_the_file_says(read, root, mm):
    x0, y0 = applied(read(SVG.format(root, PATH)).matrix, 0, 0)
    x1, y1 = applied(read(SVG.format(root, PATH)).matrix, 10, 10)
    assert (x1 - x0, y1 - y0) == pytest.approx((10 * mm, 10 * mm))


@pytest.mark.parametrize(
    ("transform", "image"),
    [
        ("translate(3)", (4, 2)),
        ("translate(3, 4)", (4, 6)),
        ("scale(2)", (2, 4)),
        ("scale(2 -1)", (2, -2)),
        ("rotate(90)", (-2, 1)),
        ("rotate(90, 1, 1)", (0, 1)),
        ("skewX(45)", (3, 2)),
        ("skewY(45)", (1, 3)),
        ("matrix(1 2 3 4 5 6)", (12, 16)),
        ("translate(10,0) scale(2)", (12, 4)),
        ("scale(2),translate(10 0)", (22, 4)),
    ],
)
def test_transforms_move_a_point_as_svg_defines_them(read, transform, image):
    """(1, 2) by SVG 1.1, 7.6; several are applied from right to left (7.4)."""
    found = read(SVG.format("", f'<g transform="{transform}">{PATH}</g>'))
    x, y = applied(found.matrix, 1, 2)
    assert (x * 96 / 25.4, y * 96 / 25.4) == pytest.approx(image)


def test_groups_transform_from_the_inside_out(read):
    text = '<g transform="scale(2)"><g transform="translate(1 0)">' + PATH + "</g></g>"
    assert applied(read(SVG.format(' viewBox="0 0 1 1" width="1mm"', text)).matrix, 0, 0) == pytest.approx((2, 0))
    assert times(IDENTITY, (1, 2, 3, 4, 5, 6)) == (1, 2, 3, 4, 5, 6)
    assert math.isclose(times((2, 0, 0, 2, 0, 0), (1, 0, 0, 1, 1, 0))[4], 2)


def test_what_is_not_drawn_does_not_count(read):
    text = (
        "<title>A leaf</title><defs><path d='M0 0h1v1z'/><clipPath><rect/></clipPath></defs><metadata><x/></metadata>"
        "<notes xmlns='urn:editor'><path d='M0 0z'/></notes><path d=''/>" + PATH
    )
    assert read(SVG.format("", text)).data == "M0 0h10v10z"


def test_other_encodings_and_no_namespace_are_read(read):
    assert read("<svg>" + PATH + "</svg>").data == "M0 0h10v10z"
    text = '<?xml version="1.0" encoding="UTF-16"?>' + SVG.format("", PATH)
    assert read(text.encode("utf-16")).data == "M0 0h10v10z"


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ('<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]>' + SVG.format("", PATH), "document type"),
        ('<!DOCTYPE svg SYSTEM "http://larkspur.example/x.dtd">' + SVG.format("", PATH), "document type"),
        ('<!DOCTYPE svg [<!ENTITY f SYSTEM "file:///etc/passwd">]><svg><path d="&f;"/></svg>', "document type"),
        ('<?xml-stylesheet href="x.css"?>' + SVG.format("", PATH), "instruction 'xml-stylesheet'"),
        (SVG.format("", "<script>alert(1)</script>" + PATH), "<script>"),
        (SVG.format("", "<defs><script/></defs>" + PATH), "<script>"),
        (SVG.format("", "<foreignObject/>" + PATH), "<foreignObject>"),
        (SVG.format(' onload="go()"', PATH), "script 'onload'"),
        (SVG.format("", '<a href="http://larkspur.example">' + PATH + "</a>"), "outside itself"),
        (
            SVG.format("", '<a xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="//x">' + PATH + "</a>"),
            "outside itself",
        ),
        (SVG.format("", '<use href="#a"/>' + PATH), "<use>"),
        (SVG.format("", '<image href="#a"/>' + PATH), "<image>"),
        (SVG.format("", "<rect width='2' height='1'/>" + PATH), "2 paths"),
        (SVG.format("", "<text/>" + PATH), "<text>"),
        (SVG.format("", "<circle r='2em'/>"), "'2em' is no length"),
        (SVG.format("", "<polygon points='1 2 3'/>"), "points of the polygon"),
        (SVG.format("", "<svg>" + PATH + "</svg>"), "<svg>"),
        (SVG.format("", PATH + PATH), "2 paths"),
        (SVG.format("", "<g/>"), "no path"),
        ("<html><path d='M0 0z'/></html>", "begins with <html>"),
        (SVG.format("", "<path d='M0 0z'>"), "well-formed"),
        ("", "well-formed"),
        (b"\x89PNG\r\n\x1a\n", "well-formed"),
        (SVG.format(' viewBox="0 0 0 10"', PATH), "is no box"),
        (SVG.format("", '<g transform="turn(3)">' + PATH + "</g>"), "transform 'turn(3)'"),
        (SVG.format("", '<g transform="scale(1 2 3)">' + PATH + "</g>"), "transform 'scale(1 2 3)'"),
        (
            SVG.format("", '<path style="fill:red;transform:scale(2)" d="M0 0h1v1z"/>'),
            "A style says 'transform: scale(2)'",
        ),
    ],
)
def test_refuses_what_is_active_elsewhere_or_more_than_one_path(read, text, what):
    assert what in str(refused(read, text).what)


def test_names_the_line(read):
    problem = refused(read, "<svg>\n<path d='M0 0z'/>\n<text/>\n</svg>")
    assert problem.where.endswith("outline.svg:3")


def test_a_harmless_style_is_no_reason_to_refuse(read):
    style = "fill:none;text-transform:none;stroke:#000"
    assert read(SVG.format("", f'<path style="{style}" d="M0 0h1v1z"/>')).data


def test_refuses_an_enormous_file_without_reading_it(tmp_path):
    file = tmp_path / "huge.svg"
    with file.open("wb") as stream:
        stream.truncate(GREATEST_BYTES + 1)
    with pytest.raises(AskError, match=r"^border: .*huge\.svg is larger than 4 MB"):
        read_svg_path(file)


def test_says_that_a_file_is_not_there(tmp_path):
    with pytest.raises(AskError, match=r"^border: .*none\.svg cannot be read: No such file"):
        read_svg_path(tmp_path / "none.svg")
    with pytest.raises(AskError, match=r"cannot be read: it is a folder"):
        read_svg_path(tmp_path)


HIDDEN = [
    ('<path style="display:none" d="M0 0h1v1z"/>', ""),
    ('<g display="none"><path d="M0 0h1v1z"/><g><path d="M0 0h1v1z"/></g></g>', ""),
    ('<g style="fill:red; display : none !important"><path d="M0 0h1v1z"/></g>', ""),
]


@pytest.mark.parametrize(("before", "after"), [*HIDDEN, *((after, before) for before, after in HIDDEN)])
def test_what_is_not_displayed_is_not_drawn(read, before, after):
    assert read(SVG.format("", before + PATH + after)).data == "M0 0h10v10z"


@pytest.mark.parametrize(
    "style",
    [
        "path{d:path('M0 0h5v5z')}", ".a{transform:scale(2)}", "path { display: none }", "@import url(x.css);",
        "@media print{path{d:none}}", "g{visibility:hidden}", "path{clip-path:url(#c)}",
        "/**/path{/*;*/ translate: 3px}",
        "a{fill:red;scale:2}",
    ],
)  # fmt: skip
def test_a_style_sheet_that_changes_what_is_drawn_is_refused_by_name(read, style):
    problem = refused(read, SVG.format("", f"<style>{style}</style>{PATH}"))
    assert "which may change what is drawn" in str(problem.what)


@pytest.mark.parametrize(
    "style", [".a{fill:none;stroke:#000;stroke-width:.25px}", "", "/* transform:none */ a{fill:red}"]
)
def test_a_style_sheet_of_looks_alone_is_taken(read, style):
    assert read(SVG.format("", f"<defs><style><![CDATA[{style}]]></style></defs>{PATH}")).data == "M0 0h10v10z"


@pytest.mark.parametrize(
    "more",
    [
        'clip-path="url(#c)"', 'mask="url(#m)"', 'systemLanguage="de"', 'visibility="hidden"', 'transform-origin="9 9"',
        'transform="scale(1e300)"',
    ],
)  # fmt: skip
def test_attributes_that_change_what_is_seen_are_refused(read, more):
    assert refused(read, SVG.format("", f'<path {more} d="M0 0h10v10z"/>')).remedy


def test_an_element_that_is_not_known_and_ten_thousand_in_each_other_are_refused(read):
    assert "<hatch>" in str(refused(read, SVG.format("", f"<hatch>{PATH}</hatch>")).what)
    assert "too deep" in str(refused(read, SVG.format("", "<g>" * 10_000 + PATH + "</g>" * 10_000)).what)
