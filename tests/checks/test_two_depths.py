"""Grooves of two depths on one sign, the deeper one so wide that its middle is far from every outline."""

import pytest

from signgen.pipeline import prove
from tests.asking import spec_of


@pytest.mark.parametrize("first", ["pictogram", "code"])
def test_the_depth_in_the_middle_of_a_wide_groove_is_its_own(first):
    """The finders of a code are shallow, the roof of a house is deep: neither is judged by the other's depth."""
    more = {"pictogram_place": "left", "code_place": "right"}
    if first == "code":
        more = {"pictogram_place": "right", "code_place": "left"}
    facts = prove(
        spec_of(
            text="Mill",
            size="250x110",
            layout="composed",
            holes="none",
            hole_diameter=None,
            inset=None,
            pictogram="house",
            pictogram_height=73,
            code="QUINCE",
            code_module=2,
            **more,
        )
    )
    (result,) = (each for each in facts.checks.results if each.code == "C116")
    assert result.passed
