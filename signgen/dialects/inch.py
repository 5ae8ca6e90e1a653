"""The same in inches."""

from __future__ import annotations

from signgen.dialects.words import INCHES
from signgen.dialects.writing import Writing

INCH = Writing(name="inch", about="Plain RS-274 in inches, five decimals (G20).", unit=INCHES)
