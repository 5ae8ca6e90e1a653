"""What is wrong is said once, and by the word that was typed."""

import pytest

from signgen.errors import AskError, CannotMakeError, Problem, gathered
from signgen.messages import Message
from signgen.messages.values import Mm
from signgen.spec.as_typed import named_as_typed, typed_for


def near(name, where="inset"):
    return Problem(where=where, what=Message("units.too_little", value=name), remedy=Message("units.use_positive"))


def test_what_is_alike_is_said_once_with_what_it_is_about():
    three = [near("a"), near("b"), near("c")]
    (one,) = gathered(three)
    assert str(one) == "inset: a is too little. The same of b and c. Use a positive number."
    (many,) = gathered([near(name) for name in "abcdefghij"])
    assert str(many) == "inset: a is too little. The same of b, c, d and 6 more. Use a positive number."
    error = AskError(three)
    assert list(error.lines()) == [str(one)]
    assert len(error.problems) == 3


def test_what_differs_is_said_by_itself():
    problems = [
        near("a"), near("a", where="depth"), Problem(where="x", what="One."), Problem(where="x", what="Two."),
        Problem(where="inset", what=Message("units.too_much", value=Mm(3)), remedy=Message("units.use_positive")),
    ]  # fmt: skip
    assert list(gathered(problems)) == problems


def test_the_very_same_is_said_once():
    assert list(gathered([near("a"), near("a")])) == [near("a")]


@pytest.mark.parametrize(
    ("name", "asked", "said"),
    [
        ("hole-diameter", {"screw": "#6"}, "screw"),
        ("hole-diameter", {"screw": "#6", "hole-diameter": 3}, "hole-diameter"),
        ("hole-diameter", {}, "hole-diameter"),
        ("cap-height", {"digit-height": 90, "text": "17"}, "digit-height"),
        ("cap-height", {"digit-height": 90, "fit": "each"}, "cap-height"),
        ("line 1.font", {"font": "x"}, "line 1.font"),
    ],
)
def test_a_problem_is_named_by_the_option_that_was_typed(name, asked, said):
    assert typed_for(name, asked) == said
    with pytest.raises(CannotMakeError) as caught, named_as_typed(asked):
        raise CannotMakeError.at(name, "No.")
    assert caught.value.problems[0].where == said
