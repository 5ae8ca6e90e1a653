"""Drawings of other people's programs, as areas and lines: SVG and DXF read exactly, safely, or refused by name."""
