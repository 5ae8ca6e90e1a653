"""For controllers with the drilling cycles of the standard."""

from __future__ import annotations

from signgen.dialects.writing import Writing

CYCLES = Writing(name="cycles", about="As plain, with drilled holes as canned cycles G81 and G83.", cycles=True)
