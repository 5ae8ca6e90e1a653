"""One table of options: a row more is read everywhere and written back, and nothing that is given is ignored."""

import tomllib

import pytest
from click.testing import CliRunner

from signgen.batching.recipe import make_recipe
from signgen.batching.table import open_table
from signgen.cli import group
from signgen.dialects import DIALECTS
from signgen.errors import AskError, SignGenError
from signgen.option import Option, read_option
from signgen.pipeline import gather, read_sign
from signgen.shop.load import load_shop
from signgen.spec import keys
from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.sign_file import dump_sign_file
from signgen.units import Limits
from tests.schemas import strict

SHOP, NAMES = load_shop(), tuple(dialect.name for dialect in DIALECTS)

DIMPLES = Option(
    name="dimple-depth", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.5, greatest=4),
    help="Depth of the dimples that this test asks for.", left_open="no dimples",
)  # fmt: skip


@pytest.fixture
def dimples(monkeypatch):
    """The table with one row more; schemas are read from the table when they are first asked for."""
    strict._validator.cache_clear()
    rows = list(keys.KEYS)
    rows.insert(next(n for n, row in enumerate(rows) if row.name == "ridge"), DIMPLES)
    monkeypatch.setattr(keys, "KEYS", tuple(rows))
    monkeypatch.setitem(keys.KEY_BY_NAME, DIMPLES.name, DIMPLES)
    yield
    strict._validator.cache_clear()


HOUSE = 'text = ["17", "Larkspur Lane"]\nsize = "220x140"\nthickness = 12\n'


@pytest.mark.usefixtures("dimples")
def test_a_row_more_is_an_option_of_the_command_line(tmp_path):
    for command in ("make", "batch"):
        assert DIMPLES.help in " ".join(CliRunner().invoke(group, [command, "--help-all"]).output.split())
    out = tmp_path / "out"
    args = ["make", "A", "--size", "60x40", "--thickness", "10", "--dimple-depth", "3/32in", "--out", str(out)]
    CliRunner().invoke(group, args, standalone_mode=False, catch_exceptions=False)
    assert tomllib.loads((out / "sign.toml").read_text(encoding="utf-8"))["dimple-depth"] == 2.38125
    with pytest.raises(AskError, match=r"^dimple-depth: 9 mm is too much\. Use at most 4 mm\.$"):
        CliRunner().invoke(group, [*args, "--dimple-depth", "9"], standalone_mode=False, catch_exceptions=False)


@pytest.mark.usefixtures("dimples")
def test_a_row_more_is_a_key_of_a_sign_file_and_written_back(tmp_path):
    file = tmp_path / "house.toml"
    file.write_text(HOUSE + 'dimple-depth = "1.5mm"\n', encoding="utf-8")
    spec = read_sign(gather({}, file))
    assert spec.asked("dimple-depth") == 1.5
    text = dump_sign_file(spec)
    assert "dimple-depth = 1.5\nridge = 0.1\n" in text
    assert read_spec(tomllib.loads(text), SHOP, dialects=NAMES) == spec
    file.write_text(HOUSE, encoding="utf-8")
    left_out = read_sign(gather({}, file))
    assert left_out.asked("dimple-depth") is None
    assert "# dimple-depth: no dimples\n" in dump_sign_file(left_out)


@pytest.mark.usefixtures("dimples")
def test_a_row_more_is_a_column_of_a_list(tmp_path):
    file, table = tmp_path / "house.toml", tmp_path / "houses.csv"
    file.write_text(HOUSE, encoding="utf-8")
    table.write_text("text,dimple-depth\n17,2mm\n18,\n19,7\n", encoding="utf-8")
    opened = open_table(table, None)
    recipe = make_recipe(opened, gather({}, file))
    first, second, third = (recipe.task(record).asked for record in opened.rows())
    assert read_sign(first).asked("dimple-depth") == 2
    assert read_sign(second).asked("dimple-depth") is None
    with pytest.raises(AskError, match=r"^dimple-depth: 7 mm is too much"):
        read_sign(third)


def test_without_the_row_nobody_knows_the_word():
    with pytest.raises(AskError, match=r"^dimple-depth: There is no such key"):
        read_spec({"text": "A", "size": "60x40", "thickness": 10, "dimple-depth": 2}, SHOP)


BASE = {"text": ["17", "Larkspur Lane"], "size": "220x140", "thickness": "12"}
SIGNS = {
    "plain": {},
    "holes": {"holes": "corners"},
    "ring of holes": {"holes": "ring"},
    "keyholes": {"holes": "keyholes", "thickness": 18},
    "panel": {"finish": "recess", "panel": 8},
    "raised": {"finish": "raised"},
    "stroke": {"finish": "stroke"},
    "through": {"finish": "through", "bridges": 2},
    "frame": {"frame": 8},
    "skin": {"onion-skin": 0.4},
    "no tabs": {"tabs": 0},
    "height given": {"cap-height": 20},
    "arc": {"arc": 90},
    "scalloped": {"border": "scalloped"},
}
WORDS = {
    "material": "oak", "border": "oval", "holes": "row", "screw": "M5", "font": "pacifico", "font-axes": "wght=600",
    "ornament": "*", "ornament-font": "pacifico", "end-mill-name": "down-cut-6", "machine": "bench-router",
    "dialect": "inch", "paint": "red", "art": "tests/borders/leaf.svg", "art-place": "right", "art-colours": "all",
    "pictogram": "dog", "pictogram-place": "right", "code": "QUINCE", "code-place": "right",
}  # fmt: skip
OPTIONS = [key for key in keys.KEYS if key.name not in ("text", "shop")]


def resolved(more):
    """The resolved sign file, or what is wrong."""
    try:
        return dump_sign_file(read_spec({**BASE, **more}, SHOP, dialects=NAMES))
    except SignGenError as error:
        return error


def right_values(key):
    """Values that the option's own reader takes."""
    low, high = (key.limits.least, key.limits.greatest) if key.limits else (0, 100)
    tried = {
        "length": (3, 12, 25, low + 0.07), "number": (2.3, 3.1), "count": (2, 3), "angle": (60, 45, 90, 30),
        "size": ("300x200", "260x180"), "choice": key.choices, "flag": (True, False),
    }.get(key.kind, (WORDS.get(key.name),))  # fmt: skip
    return [value for value in tried if not isinstance(value, float | int) or low <= value <= high]


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("key", OPTIONS, ids=lambda key: key.name)
def test_what_is_given_is_read_or_refused_by_its_name(key, sign):
    """No value that the option cannot have is passed over, whatever else is asked; and one that it can have changes the
    sign, or is refused."""
    if key.name in SIGNS[sign]:
        return
    for wrong in ("abc", -1, [], "\0"):
        try:
            read_option(key, wrong)
        except AskError:
            refused = resolved(SIGNS[sign] | {key.name: wrong})
            assert isinstance(refused, SignGenError), wrong
            assert key.name in {problem.where for problem in refused.problems}, wrong
    usual = resolved(SIGNS[sign])
    assert isinstance(usual, str)
    assert any(resolved(SIGNS[sign] | {key.name: value}) != usual for value in right_values(key))


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"tabs": 0, "tab-width": 8}, "tab-width"),
        ({"tabs": 0, "tab-shape": "ramped"}, "tab-shape"),
        ({"onion-skin": 0.4, "tab-height": 1}, "tab-height"),
        ({"finish": "through", "depth": 3}, "depth"),
        ({"finish": "raised", "edge-chamfer": "abc"}, "edge-chamfer"),
        ({"slot-length": 20}, "slot-length"),
        ({"countersink": True}, "countersink"),
        ({"hole-diameter": []}, "hole-diameter"),
        ({"corner-cut": 9}, "corner-cut"),
        ({"cell": -1}, "cell"),
        ({"end-mill-length": 20}, "end-mill-length"),
    ],
)
def test_nothing_is_asked_of_a_thing_that_is_not_there(more, where):
    refused = resolved(more)
    assert isinstance(refused, SignGenError)
    assert {problem.where for problem in refused.problems} == {where}
    assert all(problem.remedy for problem in refused.problems)


def test_the_law_has_a_value_for_every_option():
    for key in OPTIONS:
        assert any(right_values(key)), key.name
        for value in right_values(key):
            read_option(key, value)


@pytest.mark.parametrize("asked", [{"tabs": "0"}, {"onion-skin": "0.4"}, {"finish": "through"}, {"holes": "none"}])
def test_a_resolved_file_lets_go_of_what_an_option_leaves_without_a_reader(asked):
    full = read_spec(BASE | {"holes": "corners", "screw": "M5", "tab-shape": "ramped"}, SHOP)
    again = read_spec(merged(tomllib.loads(dump_sign_file(full)), asked), SHOP)
    assert read_spec(tomllib.loads(dump_sign_file(again)), SHOP) == again
