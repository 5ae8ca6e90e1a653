"""Options of the command line on top of a sign file."""

import tomllib

import pytest

from signgen.spec.merge import merged
from signgen.spec.read import read_spec
from signgen.spec.sign_file import dump_sign_file


@pytest.mark.parametrize(
    ("file", "asked", "both"),
    [
        ({"size": "1x1", "align": "left"}, {"align": "right"}, {"size": "1x1", "align": "right"}),
        ({"align": "left"}, {"align": None}, {"align": "left"}),
        ({"holes": "corners", "inset": 14, "hole-diameter": 7}, {"holes": "none"}, {"holes": "none"}),
        ({"holes": "corners", "inset": 14}, {"holes": "top-pair"}, {"holes": "top-pair", "inset": 14}),
        ({"hole-diameter": 7}, {"screw": "M5"}, {"screw": "M5"}),
        ({"screw": "M5", "screw-fit": "fine"}, {"hole-diameter": "7"}, {"hole-diameter": "7"}),
        ({"border": "rounded", "corner-radius": 9}, {"border": "rectangle"}, {"border": "rectangle"}),
        ({"v-bit": 90, "v-bit-diameter": 12, "v-bit-tip": 0}, {"v-bit": "60"}, {"v-bit": "60"}),
        ({"end-mill": 6, "end-mill-length": 22}, {"end-mill": "4"}, {"end-mill": "4"}),
        ({"holes": "ring", "ring-diameter": 90}, {"inset": "9"}, {"holes": "ring", "inset": "9"}),
        ({"holes": "corners", "inset": 14}, {"holes": "cornrs"}, {"holes": "cornrs", "inset": 14}),
    ],
)
def test_what_is_replaced_takes_its_details_along(file, asked, both):
    assert merged(file, asked) == both


@pytest.mark.parametrize(
    "asked",
    [
        {"holes": "none"}, {"holes": "row"}, {"holes": "at:50,50"}, {"screw": "#8"}, {"v-bit": "60"}, {"end-mill": "4"},
        {"border": "rectangle"}, {"border": "rounded"}, {"thickness": "18"}, {"text": ["18"]}, {"size": "300x200"},
    ],
    ids=str,
)  # fmt: skip
def test_a_resolved_file_can_be_changed_in_any_one_way(house_number, shop, asked):
    spec = read_spec(house_number | {"corner-radius": "9", "end-mill": "6"}, shop)
    keys = tomllib.loads(dump_sign_file(spec))
    assert read_spec(merged(keys, asked), shop) != spec or asked == {"border": "rounded"}
