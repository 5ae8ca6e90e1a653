"""The table of keys: the contract's options are all there, each can be read, and looking at it costs nothing."""

import re
import subprocess
import sys
from itertools import pairwise

import pytest

from signgen.option import read_option
from signgen.spec.keys import KEY_BY_NAME, KEYS

CONTRACT = re.findall(
    r"\S+",
    """text size thickness material font cap-height align line-spacing letter-spacing border corner-radius holes
    hole-diameter screw inset finish depth v-bit v-bit-diameter v-bit-tip end-mill tabs tab-width tab-height board
    machine dialect origin z-zero out""",
)


def test_has_every_option_of_the_contract():
    assert set(CONTRACT) <= set(KEY_BY_NAME)


def test_names_are_unique_and_every_key_says_what_it_does():
    assert len({key.name for key in KEYS}) == len(KEYS)
    for key in KEYS:
        assert key.help.endswith("."), key.name
        assert key.metavar, key.name
        assert not key.required or key.default is None


def test_groups_stand_together():
    groups = [key.group for key in KEYS]
    assert len({*groups}) == 1 + sum(a != b for a, b in pairwise(groups))


@pytest.mark.parametrize("key", [key for key in KEYS if key.default is not None], ids=lambda key: key.name)
def test_every_default_is_a_value_that_could_be_typed(key):
    assert read_option(key, key.default) == read_option(key, str(key.default))


def test_importing_it_loads_nothing_heavy():
    heavy = ("numpy", "shapely", "fontTools", "uharfbuzz", "PIL")
    code = f"import sys, signgen.spec.keys; print([m for m in {heavy} if m in sys.modules])"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
