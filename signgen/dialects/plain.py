"""Plain RS-274 in millimetres, for controllers that know the common words and no more."""

from __future__ import annotations

from signgen.dialects.writing import Writing

PLAIN = Writing(name="plain", about="Plain RS-274 in millimetres: G0 to G3 with I and J, one file a cutter, no cycles.")
