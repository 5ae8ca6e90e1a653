"""Writes the figures and the page anew."""

from tests.golden.composed import FIGURES, PAGE, drawings, figures, page

drawn = list(drawings())
FIGURES.write_text(figures(drawn))
page(drawn).save(PAGE, optimize=True)
