"""Settings that all tests share."""

from __future__ import annotations

from hypothesis import settings

# Deadlines would assert wall-clock time, which belongs into tests/bench; derandomised, so that two runs test the same.
settings.register_profile("signgen", deadline=None, derandomize=True)
settings.load_profile("signgen")
