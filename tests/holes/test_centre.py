from signgen.holes.centre import Centre


def test_stands_in_the_middle():
    assert Centre.from_options("", {"hole-diameter": 8.0}, 220, 140).centres(220, 140) == (("centre", 110, 70),)
