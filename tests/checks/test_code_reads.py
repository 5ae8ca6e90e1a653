"""Codes are read back by a reader that knows nothing of the drawing; what would not read is refused with what would."""

import importlib
import itertools
import math

import numpy as np
import pytest
import shapely

from signgen.artwork.codes import LEVELS, QUIET, code_picture, dark_middles, modules_of
from signgen.checks.code_reads import DARK, LIGHT, CodeReads, _read
from signgen.checks.photographs import photographs
from signgen.drawing.codes import CUTTER_RATIO
from signgen.drawing.draw import draw
from signgen.errors import AskError, CannotMakeError
from signgen.job.codes import codes_report
from signgen.pipeline import prove
from signgen.shop.load import load_shop
from signgen.spec.read import read_spec

zxingcpp = pytest.importorskip("zxingcpp", reason="the extra codes is not installed")
SHOP = load_shop()
TEXT = "HTTPS://QUINCE.EXAMPLE"


def spec_of(**more):
    asked = {"text": "Quince Cottage", "size": "280x150", "thickness": "12", "code": TEXT, "code-place": "right"}
    return read_spec(asked | {key.replace("_", "-"): value for key, value in more.items()}, SHOP)


def seen(area, count, px=5):
    """A picture of an area of modules, Y down, with its quiet zone."""
    at = (np.arange((count + 2 * QUIET) * px) + 0.5) / px - QUIET
    x, y = np.meshgrid(at, at)
    return np.where(shapely.contains_xy(area, x, y), DARK, LIGHT)


def area_of(text, level):
    (area,) = code_picture(text, level).seen(lambda _: "all", (1, 0, 0, 1, 0, 0), 0.001).values()
    return area


@pytest.mark.parametrize(("length", "level"), [(8, "L"), (60, "M"), (90, "Q"), (100, "H")])
def test_a_code_says_what_was_ordered(length, level):
    text = "".join(itertools.islice(itertools.cycle("Quince Cottage, Mill Lane. "), length))
    image = seen(area_of(text, level), len(modules_of(text, level)))
    assert _read(zxingcpp, image) == text
    assert sum(_read(zxingcpp, each) == text for each in photographs(image)) >= 9


def test_lone_modules_that_a_round_cutter_loses_are_a_cliff():
    """A disc wider than a module leaves nothing of those that stand alone, and no level of correction helps."""
    for level in LEVELS:
        area, count = area_of(TEXT, level), len(modules_of(TEXT, level))
        for ratio, reads in ((CUTTER_RATIO, True), (1.2, False)):
            cut = shapely.buffer(shapely.buffer(area, -ratio / 2), ratio / 2)
            assert (_read(zxingcpp, seen(cut, count)) == TEXT) == reads, (level, ratio)


def test_dots_want_more_than_a_module():
    area = shapely.buffer(dark_middles(TEXT, "M"), 1.3 / 2)
    assert _read(zxingcpp, seen(area, len(modules_of(TEXT, "M")))) == TEXT


def test_a_photograph_is_always_the_same():
    image = seen(area_of(TEXT, "M"), len(modules_of(TEXT, "M")))
    first, again = list(photographs(image)), list(photographs(image))
    assert len(first) == 10
    assert all(np.array_equal(a, b) for a, b in zip(first, again, strict=True))


def test_a_code_is_read_back_from_the_board_and_reported():
    facts = prove(spec_of(code_finish="groove", code_module=2.5))
    (result,) = (each for each in facts.checks.results if each.code == CodeReads.code)
    assert result.passed
    assert codes_report(facts)["codes"] == [{"text": TEXT, "module_mm": 2.5, "read_back": True}]
    assert any("dark paint" in str(warning) for warning in facts.warnings)


def test_without_the_reader_it_is_said(monkeypatch):
    def without(name, *more):
        if name == "zxingcpp":
            raise ImportError
        return real(name, *more)

    real = importlib.import_module
    monkeypatch.setattr(importlib, "import_module", without)
    facts = prove(spec_of(code_finish="groove", code_module=2.5))
    (result,) = (each for each in facts.checks.results if each.code == CodeReads.code)
    assert not result.applies
    assert "not read back" in str(result.detail)
    assert codes_report(facts)["codes"][0]["read_back"] is None


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"code_finish": "recess", "code_module": 2}, "code"),
        ({"code_finish": "groove", "code_module": 1.2}, "code"),
        ({"paint": "yellow"}, "paint"),
        ({"code_finish": "recess", "end_mill": 6, "code_module": 4}, "code"),
    ],
)
def test_what_would_not_read_is_refused_with_what_would(more, where):
    with pytest.raises(CannotMakeError) as caught:
        draw(spec_of(**more))
    problem = next(each for each in caught.value.problems if each.where == where)
    if where == "code":
        least = problem.remedy.values["least"].value
        thinnest = more.get("end_mill") or 3
        wanted = math.ceil(100 * thinnest / CUTTER_RATIO) / 100 if more["code_finish"] == "recess" else 1.5
        assert least == pytest.approx(wanted, abs=0.011)


def test_a_text_that_is_too_long_and_a_raised_sign_are_refused():
    for more in ({"code": "Quince " * 40}, {"finish": "raised"}):
        with pytest.raises(AskError) as caught:
            draw(spec_of(**more))
        assert caught.value.problems[0].where.startswith("code")
