from signgen.borders.rectangle import Rectangle


def test_is_the_rectangle_itself():
    outline = Rectangle().outline(220, 140, 0.0025)
    assert list(outline.exterior.coords) == [(0, 0), (220, 0), (220, 140), (0, 140), (0, 0)]
