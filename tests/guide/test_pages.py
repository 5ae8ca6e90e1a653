"""What can be explained: every option, check and word by its own name; recipes that make signs; a true reference."""

import tomllib

import pytest

from signgen.checks import EVERY_CHECK
from signgen.drawing.draw import draw
from signgen.guide.pages import explained, pages
from signgen.guide.recipes import RECIPES
from signgen.guide.sign_file import EXAMPLE, LINES_EXAMPLE, reference
from signgen.guide.topics import TOPICS
from signgen.meant import Meanings, options_meant, stems
from signgen.operations.plan import make_plan
from signgen.option import read_option
from signgen.pipeline import prove, read_sign
from signgen.shop.load import load_shop
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE_KEYS
from signgen.spec.read import read_spec
from signgen.spec.typed_lines import asked_lines


def test_every_page_is_found_by_its_name():
    for page in pages():
        assert page.text() in explained(page.name), page.name
        assert max(map(len, page.text().splitlines())) <= 79, page.name


def test_every_option_and_check_has_its_page():
    names = {page.name for page in pages()}
    assert {key.name for key in (*keys.KEYS, *LINE_KEYS)} <= names
    assert {check.code for check in EVERY_CHECK} <= names


def test_topics_name_options_that_are_there():
    known = {page.name for page in pages()} | {"batch"}
    for topic in TOPICS:
        assert set(topic.see) <= known, topic.name


def test_every_example_is_a_value_that_can_be_typed():
    often = [key for key in keys.KEYS if key.often]
    assert all(key.example for key in often)
    for key in keys.KEYS:
        if key.example and key.kind != "lines":
            read_option(key, key.example)


def sign_of(recipe):
    """What its command asks for."""
    words = recipe.arguments
    first = next(n for n, word in enumerate(words) if word.startswith("--"))
    asked = asked_lines(words[:first])
    options = words[first:]
    while options:
        name = options.pop(0).removeprefix("--")
        asked[name] = True if keys.KEY_BY_NAME[name].kind == "flag" else options.pop(0)
    return read_sign(asked)


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.name)
def test_a_recipe_asks_for_a_sign_that_can_be_drawn_and_planned(recipe):
    spec = sign_of(recipe)
    assert make_plan(draw(spec), spec).runs


@pytest.mark.sweep
@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.name)
def test_a_recipe_makes_a_sign_that_passes_every_check(recipe):
    assert prove(sign_of(recipe)).checks.passed


def test_the_sign_file_s_reference_names_every_key_and_its_examples_are_read():
    text = "\n".join(reference())
    assert max(map(len, text.splitlines())) <= 79
    for key in (*keys.KEYS, *LINE_KEYS):
        assert f"    {key.name} = " in text, key.name
    shop = load_shop(None)
    assert read_spec(tomllib.loads(EXAMPLE), shop).text.lines == ("17", "Larkspur Lane")
    big, small = read_spec(tomllib.loads(LINES_EXAMPLE), shop).text.rows
    assert (big.digit_height_mm, small.font, small.height_ratio) == (70, "pacifico", 0.3)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("colour", ["paint"]), ("color", ["paint"]), ("letter-height", ["cap-height"]), ("typeface", ["font"]),
        ("shape", ["border"]), ("bevel", ["edge-chamfer"]), ("thicknes", ["thickness"]), ("wood", ["material"]),
        ("hole-size", ["hole-diameter"]), ("double-frame", ["frame-lines"]), ("hieght", ["cap-height"]),
        ("tracking", ["letter-spacing"]), ("zzzz", []),
    ],
)  # fmt: skip
def test_an_option_that_is_none_is_known_by_what_it_means(typed, meant):
    assert options_meant(typed, keys.KEYS)[: len(meant)] == meant
    assert bool(options_meant(typed, keys.KEYS)) == bool(meant)


def test_no_two_options_go_by_the_same_words():
    """But for words that mean several on purpose."""
    shared = {"height", "stencil", "climb", "conventional", "left", "right"}
    seen = {}
    for key in keys.KEYS:
        for phrase in key.words:
            other = seen.setdefault(phrase, key.name)
            assert other == key.name or phrase in shared, (phrase, other, key.name)


def test_words_that_many_things_share_say_little():
    things = Meanings([("a", ("hole size",)), ("b", ("hole place",)), ("c", ("hole count", "number"))])
    assert things.meant_by("the place of a hole")[0].thing == "b"
    assert [each.thing for each in things.meant_by("numbers")] == ["c"]
    assert things.meant_by("nothing of it") == []
    assert stems("How bigger letters?") == ("big", "let")
