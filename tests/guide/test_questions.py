"""Questions of newcomers, in their own words: `signgen explain` answers each by the page that they need."""

import pytest

from signgen.errors import AskError
from signgen.guide.pages import explained

QUESTIONS = {
    "how do I make the number bigger?": "--digit-height",
    "my board is already cut": "A blank that is to keep its own edge",
    "what is the smallest text?": "Capitals of 3 mm are the least",
    "can I engrave both sides?": "For text on both",
    "what colour can the letters have?": "--paint",
    "how high are the letters?": "--cap-height",
    "how deep does it cut?": "--depth",
    "how do I hang it on the wall?": "--holes keyholes",
    "which screws can I use?": "--screw ",
    "how do I make a round sign?": "--border",
    "which wood can I use?": "--material",
    "which bit do I need?": "Grooves, strokes and bevels are cut by a V-bit",
    "I only have one bit": "With an end mill alone",
    "can I make many signs from a list of names?": "signgen batch",
    "can I work in inches?": "Write the unit",
    "my plywood is thinner than it says": "--thickness",
    "how do I hold the board down?": "The setup sheet shows where screws and clamps",
    "how fast should the feed be?": "signgen feeds",
    "the wood is burning": "signgen feeds",
    "can I use a typeface of my own?": "--font ",
    "how do I get curved text?": "--arc ",
    "the letters are too close together": "--letter-spacing",
    "can the text stand on the left?": "--align",
    "how long does it take?": "The summary and the setup sheet give the time",
    "where is zero?": "--origin",
    "can I put a line around the text?": "--frame ",
    "the middle of the O falls out": "--bridges",
    "can I put my logo on it?": "--art FILE",
    "how do I change a sign that I made before?": "sign.toml with all that was asked for",
    "is it safe to press start?": "No program is written that has not been read back",
    "how do I make one line smaller than the other?": "+KEY=VALUE",
    "the holes should be nearer to the edge": "--inset",
    "can letters stand out of the background?": "--finish",
    "how do I switch on the dust collector?": "--extraction",
    "my letters have accents that are missing": "--font-fallback",
    "show me examples": "House number:",
}


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_question_is_answered(question):
    answer = explained(question)
    first = answer.split("\n\nSee also:")[0]
    assert QUESTIONS[question] in " ".join(first.split("\n"))
    assert max(map(len, answer.splitlines())) <= 79


@pytest.mark.parametrize("nonsense", ["xylophone", "?", "the of and"])
def test_what_nobody_knows_is_said(nonsense):
    with pytest.raises(AskError, match=r"Nothing is known of it\. Ask in other words"):
        explained(nonsense)
